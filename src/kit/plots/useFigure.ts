/** A live figure's settings and what it shows for them; reckoned anew only when something is turned. */
import { useMemo, useState } from 'preact/hooks';
import { type AnyFigure, figureOf } from '../../present/handbook/figures.ts';
import type { FigureKind } from '../../words/handbook.ts';

export function useFigure(kind: FigureKind) {
  const figure: AnyFigure = figureOf(kind);
  const [settings, setSettings] = useState<Readonly<Record<string, number>>>(() => startOf(figure));
  const drawn = useMemo(() => figure.draw(settings), [figure, settings]);
  const set = (control: string, value: number): void => setSettings((old) => ({ ...old, [control]: value }));
  return { figure, settings, drawn, set };
}

const startOf = ({ controls }: AnyFigure): Record<string, number> =>
  Object.fromEntries(Object.entries(controls).map(([name, { start }]) => [name, start]));

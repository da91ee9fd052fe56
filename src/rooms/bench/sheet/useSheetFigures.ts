/**
 * The figures of the sheet: of the response that the bench is set up for, and of the one that the paper lies open at. The paper follows the bench until the
 * learner turns to another curve, and follows again from the next change of the bench's own.
 */
import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { usePort } from '../../../kit/hooks/usePort.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { type SheetFigures, sheetFigures } from '../../../present/sheetFigures.ts';
import { stageFigures, stageSwept } from '../../../present/stageFigure.ts';
import { responseById } from '../../../receiver/responses.ts';

export interface OpenSheet {
  /** of the response on the bench */
  readonly figures: SheetFigures;
  /** of the response on the paper */
  readonly paper: SheetFigures;
  /** of the response on the bench from where the sweep goes in, while that is farther on than the sheet's own point */
  readonly stage: SheetFigures | null;
  readonly turnTo: (response: string) => void;
}

export function useSheetFigures(port: BenchPort): OpenSheet {
  const known = useRef(new Map<string, SheetFigures>());
  const figuresOf = useMemo(() => {
    known.current.clear();
    return (id: string): SheetFigures => {
      const found = known.current.get(id) ?? sheetFigures(port.setup, responseById(port.receiver, id));
      known.current.set(id, found);
      return found;
    };
  }, [port]);
  const onBench = usePort(port, () => port.facts().response);
  const [turned, setTurned] = useState<{ readonly to: string; readonly from: string } | null>(null);
  const turnTo = useCallback((response: string) => setTurned({ to: response, from: onBench }), [onBench]);
  const onPaper = turned !== null && turned.from === onBench ? turned.to : onBench;
  const figures = figuresOf(onBench);
  const at = usePort(port, () => stageSwept(port.receiver, figures.response, port.state().leads.rf));
  // Stage by stage the figure follows the generator's lead, where the paper lies open at what the bench is set up for. The lead is seen where it was put first.
  const [stage, setStage] = useState<SheetFigures | null>(null);
  useEffect(() => {
    setStage(null);
    if (at === null) return;
    const later = setTimeout(() => setStage(stageFigures(port.setup, figures, at)));
    return () => clearTimeout(later);
  }, [port, figures, at]);
  return { figures, paper: figuresOf(onPaper), stage: onPaper === onBench ? stage : null, turnTo };
}

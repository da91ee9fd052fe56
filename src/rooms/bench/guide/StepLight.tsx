/** In practice: corners round the part that the step to do now is waiting for; where the part has slid out of sight, round the tab that brings it. */
import { useMemo } from 'preact/hooks';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { GuideSpot } from '../../../present/guide.ts';
import { spotNow } from '../../../present/liveSpot.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { GuideLight } from './GuideLight.tsx';
import { partsMeant } from './partsMeant.ts';
import './guide.css';

export function StepLight({ port }: { readonly port: BenchPort }) {
  const words = useWords();
  const key = usePort(port, () => JSON.stringify(spotNow(port)));
  const find = useMemo(() => {
    const spot = JSON.parse(key) as GuideSpot | null;
    return () => (spot === null ? [] : partsMeant(words, spot).map(inSightOrTab));
  }, [words, key]);
  return key === 'null' ? null : <GuideLight port={port} find={find} />;
}

function inSightOrTab(part: HTMLElement): HTMLElement {
  const slide = part.closest('.shelf-slide');
  if (slide === null) return part;
  const [box, room] = [part.getBoundingClientRect(), slide.getBoundingClientRect()];
  if (box.left >= room.left && box.right <= room.right) return part;
  const at = [...slide.querySelectorAll('[data-item]')].indexOf(part.closest('[data-item]')!);
  return document.querySelectorAll<HTMLElement>('.shelf-tabs > button:not(.shelf-arrow)')[at] ?? part;
}

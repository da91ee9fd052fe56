/** Says what a reader would otherwise miss: a phase that has just been done. */

import { useEffect, useState } from 'preact/hooks';
import { useWords } from '../../kit/hooks/useWords.ts';
import type { BenchPort } from '../../present/ports.ts';
import { PHASES } from '../../session/phase.ts';

export function Announcer({ port }: { readonly port: BenchPort }) {
  const { live: liveWords, phases: phaseNames } = useWords();
  const [words, setWords] = useState('');
  useEffect(() => {
    let before = port.session().done;
    return port.subscribe(() => {
      const now = port.session().done;
      if (now === before) return;
      const fresh = PHASES.filter((phase) => now[phase] && !before[phase]);
      before = now;
      if (fresh.length > 0) setWords(fresh.map((phase) => liveWords.phaseDone(phaseNames[phase])).join('. '));
    });
  }, [port]);
  return (
    <div class="unseen" role="status" aria-live="polite">
      {words}
    </div>
  );
}

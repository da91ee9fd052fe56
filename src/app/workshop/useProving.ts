/** Has the open draft certified beside the page: the certifier, then the technician, or the search for the nearest that works. It can be called off, and a draft that has changed since is no longer the one that was certified. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { LoadedReceiver } from '../../files/library.ts';
import type { Proving, ProvingPort } from '../../rooms/workshop/scenario/provingPort.ts';
import { JobFailed } from '../../services/jobs/jobPool.ts';
import { pageJobs } from '../../services/jobs/pageJobs.ts';
import { onBench } from '../../services/library/onBench.ts';
import type { Draft } from '../../workshop/draft.ts';

const NOTHING: Proving = {
  step: null,
  share: 0,
  certification: null,
  technician: null,
  nearest: null,
  failure: null,
};

type Given = Pick<ProvingPort, 'canStart' | 'take' | 'saveCertificate'>;

export function useProving(draft: Draft, design: LoadedReceiver | null, given: Given): ProvingPort {
  const [proved, setProved] = useState<{ readonly of: Draft; readonly proving: Proving } | null>(null);
  const call = useRef<AbortController | null>(null);
  const cancel = (): void => {
    call.current?.abort();
    call.current = null;
  };
  useEffect(() => cancel, []);
  const start = async (): Promise<void> => {
    if (design === null) return;
    cancel();
    const controller = new AbortController();
    call.current = controller;
    const { signal } = controller;
    let proving: Proving = NOTHING;
    const tell = (more: Partial<Proving>): void => {
      if (signal.aborted) return;
      proving = { ...proving, ...more };
      setProved({ of: draft, proving });
    };
    const onShare = (share: number): void => tell({ share });
    const jobs = pageJobs();
    try {
      tell({ step: 'certify' });
      const certification = await jobs.run('certify', { scenario: draft, design }, { signal, onShare });
      tell({ certification, share: 0, step: certification.ok ? 'technician' : 'nearest' });
      if (!certification.ok) {
        const order = { draft, problems: certification.problems, design };
        tell({ nearest: (await jobs.run('nearest', order, { signal, onShare })) ?? 'none' });
      } else {
        const setup = await onBench(design, { ...draft, par: certification.certificate.par }, null);
        if (!setup.ok) throw new Error('a set that was dealt a moment ago');
        const shown = await jobs.run('demonstrate', { setup: setup.value }, { signal, onShare });
        const report = await jobs.run('grade', { setup: setup.value, events: shown.events }, { signal });
        tell({ technician: { total: report.total, passed: report.passed } });
      }
      tell({ step: null });
    } catch (error) {
      if (!(error instanceof JobFailed)) throw error;
      tell({ step: null, failure: error.failure === 'noWorker' ? 'noWorker' : 'threw' });
    }
  };
  const of = proved?.of ?? null;
  const state = proved?.proving ?? NOTHING;
  return {
    ...given,
    state,
    isOfThis: of === draft,
    start: () => void start(),
    cancel() {
      cancel();
      if (proved !== null) setProved({ of: proved.of, proving: { ...state, step: null } });
    },
  };
}

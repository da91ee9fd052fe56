/** Round each room: where it fails, the learner sees so, can save what is here, and goes on. */
import { Component, type ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useFirstWords } from '../kit/hooks/useWords.ts';
import { SlipPage } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import type { Library } from '../services/library/library.ts';
import { setupOfOpen } from '../services/library/library.ts';
import type { Logbook } from '../services/store/logbook.ts';
import { download } from './download.ts';
import type { Route } from './routes.ts';

interface RoomBoundaryProps {
  readonly route: Route;
  readonly library: Library;
  readonly logbook: Logbook;
  readonly go: (route: Route) => void;
  readonly children: ComponentChildren;
}

interface Failed {
  readonly failure: { readonly error: unknown } | null;
}

export class RoomBoundary extends Component<RoomBoundaryProps, Failed> {
  override state: Failed = { failure: null };

  static override getDerivedStateFromError(error: unknown): Failed {
    return { failure: { error } };
  }

  override componentDidCatch(error: unknown): void {
    // A programmer's error is not hushed up.
    console.error(error);
  }

  override render({ route, library, logbook, go, children }: RoomBoundaryProps, { failure }: Failed) {
    if (failure === null) return children;
    const goOn = (): void => {
      this.setState({ failure: null });
      go({ page: 'course' });
    };
    const again = (): void => this.setState({ failure: null });
    return <FailedRoom {...{ error: failure.error, route, library, logbook, goOn, again }} />;
  }
}

interface FailedRoomProps {
  readonly error: unknown;
  readonly route: Route;
  readonly library: Library;
  readonly logbook: Logbook;
  readonly goOn: () => void;
  readonly again: () => void;
}

function FailedRoom({ error, library, route, logbook, goOn, again }: FailedRoomProps) {
  const { shell, store } = useFirstWords();
  const words = store.broken;
  const [here, setHere] = useState<RunHere | null>(null);
  useEffect(() => {
    void runHere(library, logbook, route).then(setHere, () => setHere(null));
  }, []);
  const clearBench = async (runId: string, text: string): Promise<void> => {
    const scenarioId = route.page === 'bench' ? route.scenarioId : null;
    await logbook.setAside({ reason: 'putAside', scenarioId, text }, { runId, run: null });
    again();
  };
  return (
    <SlipPage
      product={shell.product}
      title={words.title}
      buttons={
        <>
          <Button primary onClick={goOn}>
            {words.goOn}
          </Button>
          {here === null ? null : (
            <Button onClick={() => download(`haystack-${here.name}.json`, here.text)}>{words.saveRun}</Button>
          )}
          <Button onClick={() => void saveAll(logbook)}>{words.saveAll}</Button>
          {here === null || route.page !== 'bench' ? null : (
            <Button onClick={() => void clearBench(here.runId, here.text)}>{words.clearBench}</Button>
          )}
        </>
      }
    >
      <p>{words.body}</p>
      <p class="slip-said">{words.what(error instanceof Error ? error.message : String(error))}</p>
    </SlipPage>
  );
}

/** The run that the room was about, ready to be saved. */
interface RunHere {
  readonly runId: string;
  readonly name: string;
  readonly text: string;
}

async function runHere(library: Library, logbook: Logbook, route: Route): Promise<RunHere | null> {
  if (route.page !== 'report' && route.page !== 'bench') return null;
  if (route.page === 'report') {
    const text = await logbook.readText(route.runId);
    return text === null ? null : { runId: route.runId, name: route.runId, text };
  }
  const open = await logbook.readOpen(route.scenarioId);
  if (open === null) return null;
  // What reads runs comes only when one is to be saved: the first page does without it.
  const { fileOfOpen } = await import('./takeUp.ts');
  const { scenario } = open.run;
  const text = open.text ?? fileOfOpen(scenario === null ? null : await setupOfOpen(library, scenario), open.run);
  return { runId: open.run.runId, name: route.scenarioId, text };
}

async function saveAll(logbook: Logbook): Promise<void> {
  download('haystack-everything.json', await logbook.everything());
}

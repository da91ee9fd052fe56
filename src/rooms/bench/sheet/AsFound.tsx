/** The levels as the tube shows them before a slug is turned: recorded when the learner asks for it, and kept for the report. */
import { isAsFound } from '../../../bench/asFound.ts';
import { tubeReadings } from '../../../bench/tubeReadings.ts';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import type { BenchPort } from '../../../present/ports.ts';

export function AsFound({ port, response }: { readonly port: BenchPort; readonly response: string }) {
  const { asFound: say, format, rack } = useWords();
  const recorded = usePort(port, () => port.state().asFound[response] ?? null);
  const open = usePort(port, () => isAsFound(port.state()));
  if (recorded === null && !open) return null;
  return (
    <div class="as-found">
      {recorded === null ? null : (
        <p role="status">
          {say.recorded(format.clock(recorded.seconds))}{' '}
          {tubeReadings(port.setup, recorded, response)
            .map(({ hz, percent }) => say.reading(rack.canLabel(hz), percent))
            .join(', ')}
        </p>
      )}
      {open ? (
        <Button onClick={() => port.act({ type: 'asFoundRecorded', response })}>
          {recorded === null ? say.record : say.again}
        </Button>
      ) : null}
    </div>
  );
}

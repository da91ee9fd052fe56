/** The lines of the sheet as the tube showed them: as found, beside as left. */
import { useWords } from '../../kit/hooks/useWords.ts';
import { Told } from '../../kit/Told.tsx';
import { Frame } from '../../kit/theme/art.tsx';
import type { ReadingsKept } from '../../present/ports.ts';
import type { Receiver } from '../../receiver/receiver.ts';
import { responseById } from '../../receiver/responses.ts';
import './readings.css';

export interface ReadingsPanelProps {
  readonly readings: readonly ReadingsKept[];
  readonly receiver: Receiver;
}

export function ReadingsPanel({ readings, receiver }: ReadingsPanelProps) {
  const { asFound, report } = useWords();
  const { report: say } = asFound;
  return (
    <section class="paper tube-readings" aria-labelledby="readings-title">
      <Frame kind="sheet" />
      <h2 id="readings-title">{say.title}</h2>
      {readings.map(({ response, found, left }) => (
        <table key={response}>
          <caption>
            <Told of={receiver}>{responseById(receiver, response).title}</Told>
          </caption>
          <thead>
            <tr>
              <th scope="col">{say.columns.hz}</th>
              <th scope="col">{say.columns.found}</th>
              <th scope="col">{say.columns.left}</th>
            </tr>
          </thead>
          <tbody>
            {found.map(({ hz, percent }) => (
              <tr key={hz}>
                <th scope="row">{report.frequency(hz)}</th>
                <td>{say.percent(percent)}</td>
                <td>{say.percent(left?.find((one) => one.hz === hz)?.percent ?? null)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      <p class="si">{say.note}</p>
    </section>
  );
}

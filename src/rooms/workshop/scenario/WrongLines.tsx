/** The lines of the sheet that are wrong as the set is handed out, the worst first. */
import type { Standing } from '../../../certify/demands.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { wrongLines } from '../../../workshop/looks.ts';

interface WrongLinesProps {
  readonly lines: readonly Standing[];
  readonly titleOf: (response: string) => string;
}

export function WrongLines({ lines, titleOf }: WrongLinesProps) {
  const { workshop: say, format } = useWords();
  const wrong = wrongLines(lines);
  const amount = (value: number, unit: Standing['item']['unit']): string =>
    unit === 'ratio' ? say.level(value) : unit === 'db' ? say.decibels(value) : say.hertz(value);
  const limits = ({ low, high, unit }: Standing['item']): string => {
    if (low !== null && high !== null) return say.between(amount(low, unit), amount(high, unit));
    return high !== null ? say.atMost(amount(high, unit)) : say.atLeast(amount(low ?? 0, unit));
  };
  return (
    <>
      <p class="seen-count" aria-live="polite">
        {wrong.length === 0 ? say.noneWrong : say.wrongCount(wrong.length, lines.length)}
      </p>
      {wrong.length === 0 ? null : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys too
        <section class="wrong-place" tabIndex={0} aria-label={say.wrongCount(wrong.length, lines.length)}>
          <table class="wrong-lines">
            <thead class="unseen">
              <tr>
                <th scope="col">{say.columns.line}</th>
                <th scope="col">{say.columns.where}</th>
                <th scope="col">{say.columns.measured}</th>
                <th scope="col">{say.columns.wants}</th>
              </tr>
            </thead>
            <tbody>
              {wrong.map(({ response, item }) => (
                <tr key={`${response} ${item.id}`}>
                  <td>
                    {say.lineKinds[item.kind]}
                    {titleOf(response) === '' ? null : <span class="l2"> {titleOf(response)}</span>}
                  </td>
                  <td class="m">{format.frequency(item.hz)}</td>
                  <td class="bad">{item.kind === 'polarity' ? say.senseWrong : amount(item.measured, item.unit)}</td>
                  <td>{say.wants(item.kind === 'polarity' ? say.senseRight : limits(item))}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </>
  );
}

/** What each candidate of an exam is dealt: a row for each number, a column for each scenario. The figure is what the set is made from, as it stands in the run file. */

import { useEffect, useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { Frame } from '../../../kit/theme/art.tsx';
import type { Deals, EveningDraft, EveningPort, ExamTerms } from './eveningPort.ts';
import './deals.css';

export interface DealGridProps {
  readonly port: Pick<EveningPort, 'deals'>;
  readonly draft: EveningDraft;
  readonly terms: ExamTerms;
  /** of the scenarios, in their order */
  readonly codes: readonly string[];
  /** how many numbers */
  readonly candidates: number;
  /** the sheet could be handed out, but for its phrase */
  readonly complete: boolean;
}

/** Each letter that is typed makes another sheet, with other deals. */
const SETTLE_MS = 500;

export function DealGrid({ port, draft, terms, codes, candidates, complete }: DealGridProps) {
  const { deals: say } = useWords().workshop.evening;
  const [found, setFound] = useState<Deals | readonly string[] | null>(null);
  const wanted = complete && terms.ownDeal && terms.candidates === 'numbers';
  useEffect(() => {
    setFound(null);
    if (!wanted) return;
    let here = true;
    const timer = setTimeout(() => {
      const numbers = Array.from({ length: candidates }, (_, i) => `${i + 1}`);
      void port.deals(draft, terms, numbers).then((deals) => {
        if (here) setFound(deals);
      });
    }, SETTLE_MS);
    return () => {
      here = false;
      clearTimeout(timer);
    };
  }, [port, draft, wanted, candidates]);
  const why = !terms.ownDeal
    ? say.sameForAll
    : terms.candidates === 'names'
      ? say.names
      : complete
        ? null
        : say.lacking;
  return (
    <section class="paper evening-deals" aria-labelledby="evening-deals">
      <Frame kind="card" seed={5} />
      <PlateTitle id="evening-deals" no={5}>
        {say.title}
      </PlateTitle>
      <p class="evening-note">{why ?? say.note}</p>
      {why !== null ? null : found === null ? (
        <p role="status">{say.working}</p>
      ) : 'rows' in found ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
        <section class="deal-scroll" aria-label={say.title} tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">{say.candidate}</th>
                {codes.map((code) => (
                  <th scope="col" key={code} class="m">
                    {code}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {found.rows.map(({ candidate, numbers }) => (
                <tr key={candidate}>
                  <th scope="row" class="m">
                    {candidate}
                  </th>
                  {numbers.map((number, i) => (
                    <td key={codes[i]} class={number === null ? 's' : 'm'}>
                      {number ?? say.same}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ) : (
        <ul class="evening-lacks">
          {found.map((problem) => (
            <li key={problem}>{problem}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

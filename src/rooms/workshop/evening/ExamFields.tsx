/** Whether the sheet is an exam, by which phrase it is sealed, and on which terms it is done. */

import { useWords } from '../../../kit/hooks/useWords.ts';
import { PhraseField } from '../../../kit/PhraseField.tsx';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { Frame } from '../../../kit/theme/art.tsx';
import type { ExamTerms } from './eveningPort.ts';

export interface ExamFieldsProps {
  readonly terms: ExamTerms | null;
  readonly phrase: string;
  /** how many of the scenarios are sealed, and so can be dealt anew */
  readonly sealed: number;
  readonly all: number;
  readonly change: (terms: ExamTerms | null) => void;
  readonly changePhrase: (phrase: string) => void;
}

const USUAL: ExamTerms = { candidates: 'numbers', attempts: 'one', ownDeal: true, results: 'atEnd' };

export function ExamFields({ terms, phrase, sealed, all, change, changePhrase }: ExamFieldsProps) {
  const say = useWords().workshop.evening.exam;
  return (
    <section class="paper evening-exam" aria-labelledby="evening-exam">
      <Frame kind="card" />
      <PlateTitle id="evening-exam" no={2}>
        {say.title}
      </PlateTitle>
      <label class="evening-tick">
        <input
          type="checkbox"
          checked={terms !== null}
          onChange={({ currentTarget }) => change(currentTarget.checked ? USUAL : null)}
        />
        {say.seal}
      </label>
      {terms === null ? null : (
        <>
          <PhraseField
            label={say.phrase}
            value={phrase}
            onWrite={changePhrase}
            class="evening-phrase"
            note="evening-phrase-note"
          />
          <p class="evening-note" id="evening-phrase-note">
            {say.phraseNote}
          </p>
          <label class="evening-tick">
            <input
              type="checkbox"
              checked={terms.candidates === 'names'}
              onChange={({ currentTarget }) =>
                change({ ...terms, candidates: currentTarget.checked ? 'names' : 'numbers' })
              }
            />
            {say.names}
          </label>
          <label class="evening-tick">
            <input
              type="checkbox"
              checked={terms.attempts === 'several'}
              onChange={({ currentTarget }) =>
                change({ ...terms, attempts: currentTarget.checked ? 'several' : 'one' })
              }
            />
            {say.several}
          </label>
          <label class="evening-tick">
            <input
              type="checkbox"
              checked={terms.ownDeal}
              onChange={({ currentTarget }) => change({ ...terms, ownDeal: currentTarget.checked })}
            />
            {say.ownDeal}
          </label>
          <p class="evening-note">{say.dealt(sealed, all)}</p>
          <label class="evening-tick">
            <input
              type="checkbox"
              checked={terms.results === 'each'}
              onChange={({ currentTarget }) => change({ ...terms, results: currentTarget.checked ? 'each' : 'atEnd' })}
            />
            {say.results}
          </label>
        </>
      )}
    </section>
  );
}

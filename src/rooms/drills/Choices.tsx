/** The answers to choose from, on the keys 1 to 4. Once answered they show which was right and which was given. */
import { useWords } from '../../kit/hooks/useWords.ts';
import { Told } from '../../kit/Told.tsx';
import { Frame } from '../../kit/theme/art.tsx';
import { choiceName, type NamedPart, partPlace } from './said.ts';
import { Tick } from './Tick.tsx';
import type { Looked } from './useLook.ts';

export interface ChoicesProps {
  readonly looked: Looked;
  readonly locked: boolean;
  readonly onChoose: (at: number) => void;
}

export function Choices({ looked, locked, onChoose }: ChoicesProps) {
  const all = useWords();
  const { question, answer } = looked;
  const { ask, drill } = question;
  if (ask.kind !== 'choice') return null;
  const given = answer !== null && answer.given.kind === 'choice' ? answer.given.at : null;
  const marks = (at: number): string => {
    if (answer === null) return '';
    if (at === ask.right) return ' right';
    return at === given ? ' wrong' : '';
  };
  return (
    <fieldset class="choices" aria-label={all.drills.asks[drill]}>
      <span class="l" aria-hidden="true">
        {all.drills.asks[drill]}
      </span>
      {ask.choices.map((choice, at) => {
        const name = choiceName(all, question, choice);
        return (
          <button
            key={name}
            type="button"
            class={`choice${marks(at)}`}
            disabled={locked || answer !== null}
            onClick={() => onChoose(at)}
          >
            <Frame kind="button" />
            <span class="key" aria-hidden="true">
              {at + 1}
            </span>
            <span class="choice-name">
              {name}
              {choice.kind === 'part' ? <PartPlace looked={looked} part={choice.part} /> : null}
            </span>
            {answer === null || (at !== ask.right && at !== given) ? null : <Tick right={at === ask.right} />}
            {answer !== null && at === given ? <span class="unseen">{all.drills.yours}</span> : null}
          </button>
        );
      })}
    </fieldset>
  );
}

/** Where the part sits, under its name. */
function PartPlace({ looked, part }: { readonly looked: Looked; readonly part: NamedPart }) {
  const place = partPlace(useWords(), looked.question, part);
  if (place === null) return null;
  return (
    <span class="choice-place">
      {place.ofSet ? <Told of={looked.question.scene.setup.receiver}>{place.text}</Told> : place.text}
    </span>
  );
}

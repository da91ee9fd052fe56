/** Chooses a scenario for the sheet, of one's own or of the course. */
import { useMemo, useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import { tracksOf } from '../../../present/courseTracks.ts';
import type { ScenarioEntry } from '../../../present/scenarioEntry.ts';

/** scenarios of one sheet */
export const MOST = 20;

interface AddOneProps {
  readonly offered: readonly ScenarioEntry[];
  readonly full: boolean;
  readonly add: (id: string) => void;
}

export function AddOne({ offered, full, add }: AddOneProps) {
  const { workshop, track, course } = useWords();
  const say = workshop.evening;
  const [chosen, setChosen] = useState('');
  const groups = useMemo(() => {
    const cards = offered.map((scenario) => ({ scenario, best: null, passed: false, onBench: null, early: false }));
    const tracks = tracksOf(cards.filter(({ scenario }) => scenario.own === undefined));
    const own = cards.filter(({ scenario }) => scenario.own !== undefined);
    return [
      ...(own.length === 0 ? [] : [{ title: course.own.title, cards: own }]),
      ...tracks.map(({ id, cards: held }) => ({ title: track(id).title, cards: held })),
    ];
  }, [offered]);
  const id = offered.some((one) => one.id === chosen) ? chosen : '';
  return (
    <div class="evening-add">
      <label>
        <span class="l">{say.addOne}</span>
        <select class="written" value={id} onChange={({ currentTarget }) => setChosen(currentTarget.value)}>
          <option value="">{say.choose}</option>
          {groups.map(({ title, cards }) => (
            <optgroup key={title} label={title}>
              {cards.map(({ scenario }) => (
                <option key={scenario.id} value={scenario.id}>
                  {`${scenario.code} ${scenario.title}`}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </label>
      <Button
        disabled={id === '' || full}
        onClick={() => {
          add(id);
          setChosen('');
        }}
      >
        {say.add}
      </Button>
      {full ? <p class="s">{say.full(MOST)}</p> : null}
    </div>
  );
}

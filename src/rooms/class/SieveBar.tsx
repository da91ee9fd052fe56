/** Whose runs and of which scenario the list shows, and whether only the best of each. */
import { useMemo } from 'preact/hooks';
import type { ClassRow, Sieve } from '../../judge/classList.ts';
import { useWords } from '../../kit/hooks/useWords.ts';

interface SieveBarProps {
  readonly rows: readonly ClassRow[];
  readonly sieve: Sieve;
  readonly onSieve: (sieve: Sieve) => void;
}

export function SieveBar({ rows, sieve, onSieve }: SieveBarProps) {
  const { classroom: say, language } = useWords();
  const letters = useMemo(() => new Intl.Collator(language, { numeric: true }), [language]);
  const { learners, scenarios } = useMemo(() => {
    const named = new Map(
      rows.flatMap(({ title }) => (title === null ? [] : [[title.id, `${title.code} ${title.title}`]])),
    );
    return {
      learners: [...new Set(rows.flatMap(({ learner }) => learner ?? []))].sort(letters.compare),
      scenarios: [...named].sort(([, a], [, b]) => letters.compare(a, b)),
    };
  }, [rows, letters]);
  return (
    <div class="sieve">
      <select
        aria-label={say.learnerFilter}
        value={sieve.learner === null ? '' : `=${sieve.learner}`}
        onChange={({ currentTarget: { value } }) =>
          onSieve({ ...sieve, learner: value === '' ? null : value.slice(1) })
        }
      >
        <option value="">{say.allLearners}</option>
        {learners.map((learner) => (
          <option key={learner} value={`=${learner}`}>
            {learner}
          </option>
        ))}
      </select>
      <select
        aria-label={say.scenarioFilter}
        value={sieve.scenario ?? ''}
        onChange={({ currentTarget: { value } }) => onSieve({ ...sieve, scenario: value === '' ? null : value })}
      >
        <option value="">{say.allScenarios}</option>
        {scenarios.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
      <button
        type="button"
        class="best"
        aria-pressed={sieve.bestOnly}
        onClick={() => onSieve({ ...sieve, bestOnly: !sieve.bestOnly })}
      >
        {say.best}
      </button>
    </div>
  );
}

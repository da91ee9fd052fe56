/** Everything that is wrong with the draft's file, with its place, as the command line would say it. */
import { saidProblem } from '../../../describe/problem.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { unwritten } from '../../../workshop/unwritten.ts';
import { hasField, toField } from './toField.ts';
import type { WorkshopPort } from './workshopPort.ts';

/** What the desk calls the place: the name of the nearest key above it that has one; null: none has. */
function fieldAt(names: Readonly<Record<string, string>>, place: string): string | null {
  const keys = Object.keys(names).filter((key) => place === key || place.startsWith(`${key}/`));
  const [nearest] = keys.sort((a, b) => b.length - a.length);
  return nearest === undefined ? null : names[nearest]!;
}

export function ProblemsPanel({ port }: { readonly port: WorkshopPort }) {
  const words = useWords();
  const { workshop: say, shell } = words;
  const { standing } = port;
  const blank: readonly string[] = unwritten(port.draft);
  const own = standing.kind === 'cannot' ? standing.problems : [];
  const problems = [...own, ...port.problems].map((problem) => ({
    ...saidProblem(words, problem),
    key: problem.place,
    field: fieldAt(say.problemFields, problem.place),
  }));
  return (
    <section class="problems" aria-labelledby="problems-title">
      <h2 class="plate-title" id="problems-title">
        {say.problemsTitle}
      </h2>
      <p class="desk-note" aria-live="polite">
        {problems.length === 0 ? say.noProblems : say.problemCount(problems.length)}
      </p>
      {problems.length === 0 ? null : (
        <ul>
          {problems.map(({ field, key, place, found, wanted }) => (
            <li key={`${place} ${found}`}>
              {field === null ? null : hasField(key) ? (
                <button type="button" class="link" onClick={() => toField(key)}>
                  {say.problemIn(field)}
                </button>
              ) : (
                <b>{say.problemIn(field)}</b>
              )}{' '}
              {blank.includes(key) ? say.unwritten : shell.problem(place, found, wanted)}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

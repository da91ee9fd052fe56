/** Everything that is wrong with the draft's file, with its place, as the command line would say it. */
import { saidProblem } from '../../../describe/problem.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { WorkshopPort } from './workshopPort.ts';

export function ProblemsPanel({ port }: { readonly port: WorkshopPort }) {
  const words = useWords();
  const { workshop: say, shell } = words;
  const { standing } = port;
  const own = standing.kind === 'cannot' ? standing.problems : [];
  const problems = [...own, ...port.problems].map((problem) => saidProblem(words, problem));
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
          {problems.map(({ place, found, wanted }) => (
            <li key={`${place} ${found}`}>{shell.problem(place, found, wanted)}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

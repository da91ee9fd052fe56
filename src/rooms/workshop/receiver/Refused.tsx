/** What was brought and cannot be taken, each with its place. */
import { useWords } from '../../../kit/hooks/useWords.ts';

export function Refused({ lines }: { readonly lines: readonly string[] }) {
  const { ownReceiver: say } = useWords();
  if (lines.length === 0) return null;
  return (
    <div class="made-refused" role="alert">
      <b class="l">{say.refused}</b>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}

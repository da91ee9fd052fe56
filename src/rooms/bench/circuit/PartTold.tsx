/** What is said of the part that is pointed at: what it does, what is seen if it fails, how to be sure. */
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Told } from '../../../kit/Told.tsx';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { PartRole } from '../../../words/partRole.ts';

export function PartTold({
  role,
  slug,
  receiver,
}: {
  readonly role: PartRole;
  /** the slug that it carries, by id */
  readonly slug: string | null;
  readonly receiver: Receiver;
}) {
  const { heads, roles } = useWords().circuit;
  const { does, fails, sure } = roles[role];
  const adjuster = receiver.adjusters.find(({ id }) => id === slug);
  return (
    <dl>
      <div>
        <dt class="l">{heads.does}</dt>
        <dd>
          {does} {adjuster === undefined ? null : <Told of={receiver}>{adjuster.does}</Told>}
        </dd>
      </div>
      {fails === '' ? null : (
        <div>
          <dt class="l">{heads.fails}</dt>
          <dd>{fails}</dd>
        </div>
      )}
      {sure === '' ? null : (
        <div>
          <dt class="l">{heads.sure}</dt>
          <dd>{sure}</dd>
        </div>
      )}
    </dl>
  );
}

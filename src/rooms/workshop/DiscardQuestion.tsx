/** Asks before something in the making is thrown away. */
import { Modal } from '../../kit/dialogs/Modal.tsx';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Button } from '../../kit/theme/art.tsx';

interface Props {
  readonly name: string;
  readonly onDiscard: () => void;
  readonly onKeep: () => void;
}

export function DiscardQuestion({ name, onDiscard, onKeep }: Props) {
  const { workshop: say } = useWords();
  return (
    <Modal title={say.removeDraft} onCancel={onKeep}>
      <p>{say.removeAsk(name)}</p>
      <div class="modal-buttons">
        <Button onClick={onDiscard}>{say.remove}</Button>
        <Button primary onClick={onKeep}>
          {say.keepIt}
        </Button>
      </div>
    </Modal>
  );
}

/** Laid over a bench that another tab has taken over: here nothing more is recorded. */
import { Modal } from '../kit/dialogs/Modal.tsx';
import { useWords } from '../kit/hooks/useWords.ts';
import { Button } from '../kit/theme/art.tsx';

export interface LostBenchProps {
  /** the other tab has been asked for it */
  readonly asking: boolean;
  readonly takeBack: () => void;
  readonly toCourse: () => void;
}

export function LostBench({ asking, takeBack, toCourse }: LostBenchProps) {
  const words = useWords().store;
  return (
    <Modal title={words.lost.title} onCancel={null}>
      <p>{words.lost.body}</p>
      <div class="modal-buttons">
        <Button primary disabled={asking} onClick={takeBack}>
          {asking ? words.elsewhere.asking : words.lost.takeBack}
        </Button>
        <Button onClick={toCourse}>{words.toCourse}</Button>
      </div>
    </Modal>
  );
}

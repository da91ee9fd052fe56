/** Where the circuit diagram opens over the bench: what draws it comes only then. */
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Modal } from '../../../kit/dialogs/Modal.tsx';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import type { BenchPort } from '../../../present/ports.ts';

interface CircuitProps {
  readonly port: BenchPort;
  readonly onClose: () => void;
  readonly onSlug: (slug: string) => void;
}

export function CircuitPlace({ port, onClose, onSlug }: CircuitProps) {
  const { circuit: words, dialogs } = useWords();
  const [Sheet, setSheet] = useState<{ readonly of: ComponentType<CircuitProps> } | null>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let here = true;
    import('./CircuitPanel.tsx').then(
      (module) => here && setSheet({ of: module.CircuitPanel }),
      () => here && setFailed(true),
    );
    return () => {
      here = false;
    };
  }, []);
  if (Sheet !== null) return <Sheet.of port={port} onClose={onClose} onSlug={onSlug} />;
  return (
    <Modal title={words.title} onCancel={onClose}>
      <p role="status">{failed ? words.failed : words.opening}</p>
      <div class="modal-buttons">
        <Button onClick={onClose}>{dialogs.close}</Button>
      </div>
    </Modal>
  );
}

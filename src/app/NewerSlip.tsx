/** Says that a newer build of the page has been fetched, and takes it when asked. What is on the bench is written down first and is there again afterwards. */
import { useEffect, useState } from 'preact/hooks';
import { useFirstWords } from '../kit/hooks/useWords.ts';
import { Slip, SlipStack } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import { type Newer, pageOffline, watchForNewer } from '../services/offline/offline.ts';

export function NewerSlip() {
  const { store: words } = useFirstWords();
  const [newer, setNewer] = useState<Newer | null>(null);
  useEffect(() => void watchForNewer(pageOffline(), setNewer), []);
  if (newer === null) return null;
  return (
    <SlipStack name={words.notices}>
      <Slip
        buttons={
          <>
            <Button onClick={newer.take}>{words.takeNewer}</Button>
            <Button onClick={() => setNewer(null)}>{words.later}</Button>
          </>
        }
      >
        <p>{words.newer}</p>
      </Slip>
    </SlipStack>
  );
}

/** Make safe: isolating transformer, mains switch, cautions. Only for sets on the mains. */

import { memo } from 'preact/compat';
import { useCallback } from 'preact/hooks';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import { Switch } from '../../../kit/widgets/Switch.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import { useOffOn } from '../portWidgets.tsx';

function SafeStripBase({ port, onCautions }: { readonly port: BenchPort; readonly onCautions: () => void }) {
  const { safe: safeWords } = useWords();
  const offOn = useOffOn();
  const isolated = usePort(port, () => port.state().isolated);
  const powered = usePort(port, () => port.state().powered);
  const isolate = useCallback((on: boolean) => void port.act({ type: 'isolationSwitched', on }), [port]);
  const power = useCallback((on: boolean) => void port.act({ type: 'powerSwitched', on }), [port]);
  const { mains } = port.receiver;
  if (mains === null) return <p class="s safe-note">{safeWords.noMains}</p>;
  return (
    <>
      <Switch label={safeWords.isolation} positions={offOn} value={isolated} onChange={isolate} />
      <Switch label={safeWords.mains} positions={offOn} value={powered} onChange={power} />
      <div class="safe-words">
        <span class="s">{mains.hotChassis ? safeWords.hot : safeWords.cold}</span>
        <Button onClick={onCautions} class="low">
          {safeWords.read}
        </Button>
      </div>
    </>
  );
}

export const SafeStrip = memo(SafeStripBase);

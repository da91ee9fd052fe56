/** What may be done to a part of the tray, wherever it is asked: replaced, bridged, metered; and what is said of it. */
import { useMemo, useState } from 'preact/hooks';
import type { PartReading } from '../../../bench/partMeter.ts';
import { printedTray } from '../../../bench/parts.ts';
import { refusalSentence } from '../../../describe/sentence.ts';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Part } from '../../../receiver/faults/partsTray.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';

export interface PartActs {
  readonly tray: readonly Part[];
  readonly nameOf: (part: Part) => string;
  /** the part that is bridged; undefined: none */
  readonly hanging: Part | undefined;
  /** of the last act, what came of it */
  readonly said: string;
  readonly replace: (part: Part) => void;
  readonly bridge: (part: Part, on: boolean) => void;
  readonly meter: (part: Part) => void;
  readonly forget: () => void;
}

export function usePartActs(port: BenchPort): PartActs {
  const words = useWords();
  const { parts: say } = words;
  const { receiver, setup } = port;
  const tray = useMemo(() => printedTray(setup), [setup]);
  const letters = useMemo(() => slugLetters(receiver), [receiver]);
  const bridged = usePort(port, () => port.state().bridged);
  const [said, setSaid] = useState('');
  const nameOf = (part: Part): string => say.name(part, part.slug === null ? null : (letters.get(part.slug) ?? null));
  const readSentence = (name: string, read: PartReading): string => {
    if (read.kind === 'ohms') return say.ohms(name, read.ohms);
    if (read.kind === 'diode') return say.bothWays(name, read.ohms, read.turnedOhms);
    if (read.kind === 'volts') return say.volts(name, read.volts);
    return receiver.mains !== null && port.state().powered ? say.nothingLive(name) : say.nothing(name);
  };
  return {
    tray,
    nameOf,
    hanging: tray.find((part) => part.name === bridged),
    said,
    replace(part) {
      const event = { type: 'partReplaced', element: part.name } as const;
      const applied = port.act(event);
      setSaid(applied.ok ? say.done(nameOf(part)) : refusalSentence(words, applied.reason, event, receiver));
    },
    bridge(part, on) {
      const event = { type: 'partBridged', element: on ? part.name : null } as const;
      const applied = port.act(event);
      const told = on ? say.bridgeOn : say.bridgeOff;
      setSaid(applied.ok ? told(nameOf(part)) : refusalSentence(words, applied.reason, event, receiver));
    },
    meter(part) {
      const event = { type: 'partMetered', element: part.name } as const;
      const applied = port.act(event);
      setSaid(
        applied.ok
          ? readSentence(nameOf(part), port.partReading(part.name))
          : refusalSentence(words, applied.reason, event, receiver),
      );
    },
    forget: () => setSaid(''),
  };
}

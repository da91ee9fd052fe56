/** Clips that somebody else put on: each is taken off and put on again, and what the tube shows before and after is compared. */
import { apartDiv } from './diagnosis.ts';
import { extent, SWEEPS, see } from './eyes.ts';
import { clip, type Hands, set } from './hands.ts';
import type { PrintedSheet } from './sheet.ts';

/** Each by itself on a set that is off: one of them may make no contact. Those after which the tube shows something else. */
export function clipAfresh(hands: Hands, sheet: PrintedSheet): readonly ('rf' | 'earth')[] {
  const found: ('rf' | 'earth')[] = [];
  const switched = (on: boolean): void => {
    if (sheet.mains) hands.act({ type: 'powerSwitched', on });
  };
  const strap = sheet.testPoints.find(({ role }) => role === 'earth');
  for (const lead of ['rf', 'earth'] as const) {
    const at = hands.leads()[lead];
    if (at === null) continue;
    hands.note({ kind: 'clips' });
    const switchOff = (): void => {
      switched(false);
      // No clip goes on a set without its strap.
      if (strap !== undefined) clip(hands, 'earth', strap.id);
    };
    // Where somebody says that a part has failed it is looked for first.
    const byProbe = lead === 'rf' && sheet.sealed && sheet.chart.length > 0 && isBlank(hands);
    const putBack = byProbe ? probe(hands, at, switchOff, () => switched(true)) : null;
    const before = [see(hands), see(hands, SWEEPS)];
    switchOff();
    clip(hands, lead, null);
    clip(hands, lead, at);
    switched(true);
    const after = [see(hands), see(hands, SWEEPS)];
    const grass = Math.max(apartDiv(before[0]!, before[1]!), apartDiv(after[0]!, after[1]!));
    const apart = Math.min(...before.flatMap((was) => after.map((is) => apartDiv(was, is))));
    if (apart > Math.max(LEAST_DIV, GRASS_TIMES * grass)) found.push(lead);
    putBack?.();
  }
  switched(false);
  return found;
}

/** Another picture, in divisions on the average: by more than that, and by so many times what grass alone makes of two looks at the same one. */
const LEAST_DIV = 0.04;
const GRASS_TIMES = 1.5;

/** A trace that is no taller stands for nothing that came through. */
const BLANK_DIV = 0.3;

function isBlank(hands: Hands): boolean {
  const { low, high } = extent(see(hands).forward);
  return hands.leads().x !== null && high - low < BLANK_DIV;
}

/** Where nothing comes through the set the sweep is looked at where it goes in, with the probe and turned up. Gives what puts the bench back. */
function probe(hands: Hands, at: string, switchOff: () => void, switchOn: () => void): () => void {
  const { yTip, levelDb, yVoltsPerDiv } = hands.knobs();
  const { y } = hands.leads();
  const place = (to: string | null): void => {
    switchOff();
    clip(hands, 'y', null);
    clip(hands, 'y', to);
    switchOn();
  };
  set(hands, 'yTip', 'probe');
  place(at);
  set(hands, 'levelDb', hands.scale('levelDb').high);
  for (const gain of hands.scale('yVoltsPerDiv').clicks) {
    set(hands, 'yVoltsPerDiv', gain);
    if (extent(see(hands).forward).whole) break;
  }
  return () => {
    set(hands, 'yTip', yTip);
    set(hands, 'levelDb', levelDb);
    set(hands, 'yVoltsPerDiv', yVoltsPerDiv);
    place(y);
  };
}

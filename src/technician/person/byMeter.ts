/** What the meter tells before a slug is touched: whether the set sings, and whether a bias line gives what the sheet says. */
import { grassOnLine } from './eyes.ts';
import { type Fitter, replacePart } from './faultFinding.ts';
import { clip, set } from './hands.ts';
import type { PrintedSheet } from './sheet.ts';

/** A line that gives less than this share of what the sheet says leaks. */
const SAGS = 0.9;
/** And one that stands as far on the other side is dragged there. */
const PAST_NOTHING = -0.2;
/** Volts at a detector with the source turned right down, beyond which the set makes them itself. */
const SINGS_VOLTS = 0.1;
const SONG_RANGE_VOLTS = 3;
/** Noise stands on a detector too, and is seen as grass: a line that is lifted by no more than so many times as far as it strays is lifted by noise. */
const NOISE_LIFTS = 30;

const isScreen = (part: string): boolean => part === 'shield';
const isDecoupling = (part: string): boolean => part.startsWith('decoupling:');
/** What has failed in a set that sings. */
export const keepsQuiet = (part: string): boolean => isScreen(part) || isDecoupling(part);

/**
 * A set that sings holds its detector up without any signal, and the needle tells: the parts that keep a stage's output from getting back, the screen first. None where it
 * is quiet.
 */
export function feedingBack({ hands, sheet }: Pick<Fitter, 'hands' | 'sheet'>): readonly string[] {
  const parts = [...new Set(sheet.chart.map(({ part }) => part))];
  const keepers = [...parts.filter(isScreen), ...parts.filter(isDecoupling)];
  const detector = sheet.testPoints.find(({ id, role }) => role === 'detector' && id === hands.leads().y);
  if (keepers.length === 0 || detector === undefined || hands.leads().meter !== null) return [];
  const { levelDb, meterMode, meterRangeVolts } = hands.knobs();
  clip(hands, 'meter', detector.id);
  set(hands, 'meterMode', 'dc');
  set(hands, 'meterRangeVolts', SONG_RANGE_VOLTS);
  set(hands, 'levelDb', hands.scale('levelDb').low);
  const volts = Math.abs(hands.look().meterVolts);
  const sings = volts > Math.max(SINGS_VOLTS, NOISE_LIFTS * grassOnLine(hands));
  set(hands, 'levelDb', levelDb);
  set(hands, 'meterMode', meterMode);
  set(hands, 'meterRangeVolts', meterRangeVolts);
  clip(hands, 'meter', null);
  return sings ? keepers : [];
}

/** Before any supply is clipped to them: what the lines give of their own, with the meter on each. */
export function tryLines(fitter: Fitter): void {
  for (const line of fitter.sheet.lines) {
    const { at, restVolts, valves } = line;
    const meterVolts = lineVolts(fitter, line);
    if (restVolts === 0 || meterVolts / restVolts >= SAGS) continue;
    fitter.hands.note({ kind: 'line', at, volts: meterVolts, wantedVolts: restVolts });
    // No leak takes a line past nothing: a grid that hangs on it draws current.
    for (const part of meterVolts / restVolts < PAST_NOTHING ? valves : [at]) {
      replacePart(fitter, part);
      if (lineVolts(fitter, line) / restVolts >= SAGS) break;
    }
  }
}

/** What a line gives by itself, with the meter on it and nothing else. */
function lineVolts({ hands, sheet }: Fitter, { at, meterRangeVolts }: PrintedSheet['lines'][number]): number {
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: false });
  for (const lead of ['biasA', 'biasB'] as const) if (hands.leads()[lead] === at) clip(hands, lead, null);
  if (hands.leads().rf !== null) clip(hands, 'rf', null);
  clip(hands, 'meter', at);
  set(hands, 'meterMode', 'dc');
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: true });
  set(hands, 'meterRangeVolts', meterRangeVolts);
  const { meterVolts } = hands.look();
  clip(hands, 'meter', null);
  return meterVolts;
}

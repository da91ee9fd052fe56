/** Draws curves as an ink plate: ruled frame, tolerance brackets and trap marks from the sheet, one line for each curve. SVG 1.1, no script, no outside font. */
import type { Specification } from '../receiver/receiver.ts';
import type { TerminalWords } from '../words/words.ts';

/** Levels relative to each curve's own peak inside the sheet's range (an S-curve: half the distance between its peaks), linear. */
export interface Curves {
  readonly title: string;
  readonly setName: string;
  readonly specification: Specification;
  readonly hz: Float64Array;
  readonly start: Float64Array;
  /** null for a scenario: nobody has worked on it */
  readonly after: Float64Array | null;
  readonly wanted: Float64Array;
}

type CurveWords = TerminalWords['cli']['curve'];

const WIDTH = 860;
const HEIGHT = 520;
const FRAME = { left: 64, top: 76, width: 760, height: 384 } as const;
/** The top of the frame stands a little above the peak. */
const TOP_LEVEL = 1.1;

const INK = '#1f2d38';
const SECOND_INK = '#46535e';
const PAPER = '#fcf7ea';
const FAINT = '#dfd2b3';
const RUST = '#963820';
const PETROL = '#1f5a58';

export function curveSvg({ cli }: TerminalWords, curves: Curves): string {
  const scale = scaleOf(curves.specification);
  const after = curves.after === null ? '' : line(curves.hz, curves.after, scale, `stroke="${INK}" stroke-width="2.4"`);
  const start = `stroke="${RUST}" stroke-width="${curves.after === null ? 2 : 1.4}" stroke-dasharray="7 4"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" font-family="'Barlow Condensed', 'Arial Narrow', sans-serif" fill="${INK}">
<title>${escaped(curves.title)}</title>
<rect width="${WIDTH}" height="${HEIGHT}" fill="${PAPER}"/>
<text x="${FRAME.left}" y="34" font-size="20" font-weight="600">${escaped(curves.title)}</text>
<text x="${FRAME.left}" y="54" font-size="14" fill="${SECOND_INK}">${escaped(curves.setName)}</text>
${legend(cli.curve, curves.after !== null)}
${rulings(cli.curve, curves.specification, scale)}
${sheetMarks(curves.specification, scale)}
${line(curves.hz, curves.wanted, scale, `stroke="${PETROL}" stroke-width="1.2" stroke-dasharray="2 3"`)}
${line(curves.hz, curves.start, scale, start)}
${after}
${frame()}
</svg>
`;
}

interface Scale {
  x(hz: number): number;
  y(level: number): number;
}

function scaleOf({ fromHz, toHz, sCurve }: Specification): Scale {
  const bottom = sCurve === null ? 0 : -TOP_LEVEL;
  const height = TOP_LEVEL - bottom;
  return {
    x: (hz) => round(FRAME.left + (FRAME.width * (hz - fromHz)) / (toHz - fromHz)),
    y: (level) =>
      round(FRAME.top + FRAME.height * ((TOP_LEVEL - Math.max(Math.min(level, TOP_LEVEL), bottom)) / height)),
  };
}

function line(hz: Float64Array, levels: Float64Array, scale: Scale, stroke: string): string {
  const points = Array.from(hz, (f, i) => `${scale.x(f)},${scale.y(levels[i]!)}`);
  return `<polyline points="${points.join(' ')}" fill="none" stroke-linejoin="round" ${stroke}/>`;
}

/** Four lines that overshoot their corners, as drawn with a pen along a rule. */
function frame(): string {
  const { left, top, width, height } = FRAME;
  const over = 3;
  const path = [
    `M${left - over} ${top}H${left + width + over}`,
    `M${left - over} ${top + height}H${left + width + over}`,
    `M${left} ${top - over}V${top + height + over}`,
    `M${left + width} ${top - over}V${top + height + over}`,
  ];
  return `<path d="${path.join('')}" fill="none" stroke="${INK}" stroke-width="1.5" stroke-linecap="round"/>`;
}

function rulings(say: CurveWords, specification: Specification, scale: Scale): string {
  const { fromHz, toHz } = specification;
  const inMega = toHz >= 1e6;
  const unitHz = inMega ? 1e6 : 1e3;
  const stepHz = niceStep((toHz - fromHz) / 8);
  const digits = Math.max(0, Math.ceil(-Math.log10(stepHz / unitHz) - 1e-9));
  const bottom = FRAME.top + FRAME.height;
  const parts: string[] = [];
  for (let k = Math.ceil(fromHz / stepHz - 1e-9); k * stepHz <= toHz * (1 + 1e-9); k++) {
    const x = scale.x(k * stepHz);
    parts.push(`<path d="M${x} ${FRAME.top}V${bottom}" stroke="${FAINT}" stroke-width="0.8"/>`);
    parts.push(
      `<text x="${x}" y="${bottom + 20}" font-size="13" text-anchor="middle">${((k * stepHz) / unitHz).toFixed(digits)}</text>`,
    );
  }
  for (let percent = specification.sCurve === null ? 20 : -100; percent <= 100; percent += 20) {
    const y = scale.y(percent / 100);
    const pen = percent === 0 ? `stroke="${INK}" stroke-width="1"` : `stroke="${FAINT}" stroke-width="0.8"`;
    parts.push(`<path d="M${FRAME.left} ${y}H${FRAME.left + FRAME.width}" ${pen}/>`);
    parts.push(`<text x="${FRAME.left - 8}" y="${y + 4}" font-size="13" text-anchor="end">${percent}%</text>`);
  }
  const unit = inMega ? say.megahertz : say.kilohertz;
  parts.push(
    `<text x="${FRAME.left + FRAME.width}" y="${bottom + 40}" font-size="13" text-anchor="end" fill="${SECOND_INK}">${unit}</text>`,
  );
  return parts.join('\n');
}

/** Brackets where a level must lie, bars under which a skirt or a trap must stay. */
function sheetMarks({ points, skirts, traps }: Specification, scale: Scale): string {
  const mark = (path: string): string => `<path d="${path}" fill="none" stroke="${PETROL}" stroke-width="1.6"/>`;
  const brackets = points.map(({ hz, low, high }) => {
    const x = scale.x(hz);
    return mark(`M${x - 5} ${scale.y(high)}h10M${x} ${scale.y(high)}V${scale.y(low)}M${x - 5} ${scale.y(low)}h10`);
  });
  const ceilings = skirts.map(({ fromHz, toHz, max }) => mark(`M${scale.x(fromHz)} ${scale.y(max)}H${scale.x(toHz)}`));
  const notches = traps.map(({ hz, maxDb }) => {
    const y = scale.y(10 ** (maxDb / 20));
    return mark(`M${scale.x(hz) - 7} ${y}h14M${scale.x(hz)} ${y}l-4 -7h8z`);
  });
  return [...brackets, ...ceilings, ...notches].join('\n');
}

function legend(say: CurveWords, withAfter: boolean): string {
  const entries = [
    [say.start, `stroke="${RUST}" stroke-width="2" stroke-dasharray="7 4"`],
    ...(withAfter ? [[say.after, `stroke="${INK}" stroke-width="2.4"`]] : []),
    [say.wanted, `stroke="${PETROL}" stroke-width="1.2" stroke-dasharray="2 3"`],
  ] as const;
  return entries
    .map(([label, stroke], i) => {
      const x = FRAME.left + FRAME.width - 120 * (entries.length - i);
      return `<path d="M${x} 50h28" fill="none" ${stroke}/><text x="${x + 34}" y="54" font-size="14">${label}</text>`;
    })
    .join('\n');
}

/** The next of 1, 2, 5 times a power of ten. */
function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((f) => f * power >= rough * (1 - 1e-9)) ?? 10;
  return factor * power;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);
}

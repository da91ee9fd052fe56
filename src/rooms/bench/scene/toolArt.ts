/** A trimming tool lying on its side, tip to the right, in a box of w x 18. */
import type { ToolId } from '../../../bench/benchState.ts';
import { C, hatch, r1 } from '../../../kit/theme/ink.ts';
import { TOOL_COLOUR } from './slugArt.ts';

export function toolArt(tool: ToolId, w: number): string {
  const y = 9;
  const grip = w * 0.44;
  const handle = `M4 ${y - 7}H${r1(grip - 8)}Q${r1(grip - 3)} ${y - 7} ${r1(grip)} ${y - 4}V${y + 4}Q${r1(grip - 3)} ${y + 7} ${r1(grip - 8)} ${y + 7}H4Q0 ${y + 7} 0 ${y}Q0 ${y - 7} 4 ${y - 7}Z`;
  let ribs = '';
  for (let i = 0; i < 5; i++) ribs += `M${r1(10 + (i * (grip - 22)) / 4)} ${y - 7}V${y + 7}`;
  const tip = w - 13;
  return (
    `<path d="${handle}" fill="${TOOL_COLOUR[tool]}" stroke="${C.ink}" stroke-width="1.4"/>` +
    hatch(handle, [0, y + 1, grip, 7], { a: 0, gap: 2.1, sw: 0.8, op: 0.8 }) +
    `<path d="${ribs}" stroke="${C.ink}" stroke-width=".8"/>` +
    `<path d="M${r1(grip)} ${y - 3.2}H${r1(tip)}V${y + 3.2}H${r1(grip)}Z" fill="${tool === 'steel' ? '#b9c0c2' : C.sheet}" stroke="${C.ink}" stroke-width="1.2"/>` +
    `<path d="M${r1(grip + 2)} ${y + 1.5}H${r1(tip - 2)}" stroke="${C.ink}" stroke-width=".7"/>` +
    TIPS[tool](r1(tip), y)
  );
}

const TIPS: Readonly<Record<ToolId, (x: number, y: number) => string>> = {
  hex: (x, y) =>
    `<path d="M${x} ${y - 3.2}L${x + 3} ${y - 4.2}H${x + 12}V${y + 4.2}H${x + 3}L${x} ${y + 3.2}Z" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.2"/>` +
    `<path d="M${x + 3} ${y - 1.4}H${x + 12}M${x + 3} ${y + 1.6}H${x + 12}" stroke="${C.ink}" stroke-width=".8"/>`,
  blade: (x, y) =>
    `<path d="M${x} ${y - 3.2}L${x + 5} ${y - 4.6}H${x + 12}V${y + 4.6}H${x + 5}L${x} ${y + 3.2}Z" fill="${C.wash2}" stroke="${C.ink}" stroke-width="1.2"/>`,
  // Metal is drawn with its own shine line, so that it is not told by colour alone.
  steel: (x, y) =>
    `<path d="M${x} ${y - 3.2}L${x + 4} ${y - 5}H${x + 12}V${y + 5}H${x + 4}L${x} ${y + 3.2}Z" fill="#8f999e" stroke="${C.ink}" stroke-width="1.2"/>` +
    `<path d="M${x + 2} ${y + 1}L${x + 11} ${y - 3.4}M${x + 5} ${y + 3.4}L${x + 11} ${y + 0.4}" stroke="${C.ink}" stroke-width=".8"/>`,
};

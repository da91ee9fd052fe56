/** The full bench, from 1424 x 880: sheet, tube over two panels, chassis over slug, tools and bias. */
import { clamp } from '../../base/rounding.ts';
import { type BenchLayout, cellThatFits, hoodSize, PLAN } from './layoutTypes.ts';

const MARGIN = 16;
const GAP = 16;
/** between the panels' jacks and the pan: the leads run here */
const GULLY = 38;
const TOP = 77;
const RAIL = 116;

export function fullLayout(width: number, height: number): BenchLayout {
  const bottom = height - 18;
  const available = bottom - TOP;
  const spare = width - 1440;

  const scale = clamp(Math.min((available - 395) / PLAN.height, 1 + (0.4 * spare) / PLAN.width), 1, 1.25);
  const rightWidth = Math.round(PLAN.width * scale) + 4;
  const sheetWidth = 300 + Math.round(clamp(spare * 0.12, 0, 60));
  const centreX = MARGIN + sheetWidth + GAP;
  const rightX = width - 14 - rightWidth;
  const centreWidth = rightX - GULLY - centreX;

  const cell = cellThatFits(centreWidth - 17 - RAIL, available - 373, 36, 100);
  const hood = hoodSize(cell);
  const tube = { x: centreX, y: TOP, ...hood };
  const railX = tube.x + hood.width + 17;
  const sweepY = TOP + hood.height + 17;
  const slack = Math.max(0, bottom - sweepY - 156 - 15 - 185);
  const sweepHeight = 156 + Math.min(40, Math.round(slack * 0.3));
  const rackY = sweepY + sweepHeight + 15;
  const panels = {
    tube: { x: railX, y: TOP + 1, width: centreX + centreWidth - railX, height: hood.height - 2 },
    sweep: { x: centreX, y: sweepY, width: centreWidth, height: sweepHeight },
    rack: { x: centreX, y: rackY, width: centreWidth, height: bottom - rackY },
    bias: { x: rightX, y: 0, width: rightWidth - 4, height: 0 },
  };

  const chassis = {
    x: rightX,
    y: TOP + 32,
    width: Math.round(PLAN.width * scale),
    height: Math.round(PLAN.height * scale),
    scale,
  };
  const insetY = chassis.y + chassis.height + 14;
  const rightSlack = Math.max(0, bottom - insetY - 196 - 12 - 143);
  const insetHeight = 196 + Math.min(44, Math.round(rightSlack * 0.4));
  const biasY = insetY + insetHeight + 12;
  panels.bias.y = biasY;
  panels.bias.height = bottom - biasY;
  const toolsWidth = 124;

  const edge = centreX + centreWidth;
  const row = (panelY: number, panelHeight: number, part: number) => Math.round(panelY + panelHeight * part);
  const right = (y: number) => ({ x: edge, y, side: 'right' as const, hidden: false });
  const left = (y: number) => ({ x: rightX, y, side: 'left' as const, hidden: false });
  return {
    form: 'full',
    page: { width, height },
    header: { x: 0, y: 0, width, height: 64 },
    headerRows: 1,
    sheet: { x: MARGIN, y: TOP, width: sheetWidth, height: available },
    sheetFolds: false,
    sheetTab: null,
    strip: null,
    tube,
    cell,
    panels,
    shelf: null,
    tabs: null,
    menu: null,
    atHand: null,
    chassisHead: { x: rightX, y: TOP, width: rightWidth, height: 28 },
    chassis,
    slugInset: { x: rightX, y: insetY, width: rightWidth - toolsWidth - 8, height: insetHeight },
    tools: { x: rightX + rightWidth - toolsWidth, y: insetY, width: toolsWidth, height: insetHeight },
    leader: 'cone',
    jacks: {
      xIn: right(row(panels.tube.y, panels.tube.height, 0.47)),
      y: right(panels.tube.y + panels.tube.height - 84),
      rf: right(row(sweepY, sweepHeight, 0.27)),
      xOut: right(row(sweepY, sweepHeight, 0.53)),
      earth: right(row(sweepY, sweepHeight, 0.79)),
      biasA: left(row(biasY, panels.bias.height, 0.32)),
      biasB: left(row(biasY, panels.bias.height, 0.59)),
      meter: left(row(biasY, panels.bias.height, 0.86)),
    },
    leadTray: { x: edge + 2, y: TOP, width: GULLY - 4, height: available },
  };
}

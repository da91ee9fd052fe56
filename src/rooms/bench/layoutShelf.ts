/** The two forms whose instruments stand on a shelf that slides sideways: low or small screens, and upright ones. */
import { clamp } from '../../base/rounding.ts';
import type { Rect } from '../../kit/px.ts';
import { type BenchLayout, cellThatFits, hoodSize, type Jack, type JackId, PLAN } from './layoutTypes.ts';

const SHELF_HEIGHT = 152;
const TABS_HEIGHT = 46;
const TRAY_HEIGHT = 28;
/** three tools side by side with their title */
export const TOOLS_IN_ROW = 84;
const NO_PANELS = { tube: null, sweep: null, rack: null, bias: null } as const;

/** A sentence, and below it a row of buttons as high as the pointer needs them, px. */
function tallStrip(finger: boolean): number {
  return finger ? 82 : 68;
}

/** From 1000 wide: tube left, chassis middle, tools and slug right, shelf below. For a finger the tools lie side by side, since one on the other they would be too low. */
export function shelfLayout(width: number, windowHeight: number, finger: boolean, tall: boolean): BenchLayout {
  const height = Math.max(windowHeight, 596);
  const top = 64;
  const left = 60;
  const right = width - 14;
  const gully = 36;
  const column = 155;
  const tabs = { x: left, y: height - TABS_HEIGHT, width: width - left - 14, height: TABS_HEIGHT };
  const lowest = tabs.y - 12 - SHELF_HEIGHT - 14;

  const widest = right - left - gully - 18 - column - Math.round(PLAN.width * 0.76);
  const cell = cellThatFits(widest, lowest - top, 28, 56);
  const hood = hoodSize(cell);
  const shelfTop = top + hood.height + 14;
  const shelfHeight = tabs.y - 12 - shelfTop;
  const shelf = { x: left, y: shelfTop, width: width - left, height: shelfHeight, rows: rowsFor(shelfHeight) };

  const tube = { x: left, y: top, ...hood };
  const edge = left + hood.width;
  const stripX = edge + gully;
  const strip = { x: stripX, y: top, width: right - stripX, height: tall ? tallStrip(finger) : finger ? 46 : 36 };
  const chassisY = top + strip.height + 10;
  const trayY = shelfTop - TRAY_HEIGHT - 2;
  const scale = clamp(
    Math.min((trayY - 3 - chassisY) / PLAN.height, (right - stripX - 18 - column) / PLAN.width),
    0.5,
    1.25,
  );
  const chassis = panOf(stripX, chassisY, scale);
  const columnX = chassis.x + chassis.width + 18;
  const bottom = shelfTop - 6;
  const toolsHeight = finger ? TOOLS_IN_ROW : clamp((bottom - chassisY) * 0.39, 120, 168);
  const tray = { x: stripX - gully + 4, y: trayY, width: chassis.width + gully - 4, height: TRAY_HEIGHT };
  const jackAt = (y: number): Jack => ({ x: edge, y, side: 'right', hidden: false });
  return {
    form: 'shelf',
    page: { width, height },
    header: { x: 0, y: 0, width, height: 52 },
    headerRows: 1,
    sheet: { x: 0, y: top, width: 348, height: height - top - 8 },
    sheetFolds: true,
    sheetTab: { x: 0, y: top, width: 48, height: hood.height },
    strip,
    tube,
    cell,
    panels: NO_PANELS,
    shelf,
    tabs,
    menu: { x: 0, y: tabs.y, width: 52, height: TABS_HEIGHT },
    atHand: { x: 0, y: top + hood.height + 4, width: 52, height: tabs.y - top - hood.height - 4 },
    chassisHead: null,
    chassis,
    tools: { x: columnX, y: chassisY, width: right - columnX, height: Math.round(toolsHeight) },
    slugInset: {
      x: columnX,
      y: Math.round(chassisY + toolsHeight + 8),
      width: right - columnX,
      height: Math.round(bottom - chassisY - toolsHeight - 8),
    },
    leader: 'line',
    jacks: {
      y: jackAt(Math.round(top + hood.height * 0.72)),
      xIn: jackAt(Math.round(top + hood.height * 0.86)),
      ...behindShelf(tray, shelfTop),
    },
    leadTray: tray,
  };
}

/** 680 to 999 wide, or taller than wide: tube and its controls, chassis with slug and tools beside it, shelf at the thumbs. */
export function uprightLayout(width: number, windowHeight: number, tall: boolean, finger: boolean): BenchLayout {
  const roomy = windowHeight >= 1120;
  const headerHeight = roomy ? 122 : 100;
  const stripY = headerHeight + (roomy ? 14 : 10);
  const stripHeight = tall ? tallStrip(finger) : roomy ? 54 : 48;
  const top = stripY + stripHeight + 14;
  const shelfHeight = roomy ? SHELF_HEIGHT : 146;
  const fixed = top + 84 + 14 + 8 + TRAY_HEIGHT + 4 + shelfHeight + 8 + TABS_HEIGHT;
  const height = Math.max(windowHeight, fixed + 8 * 28 + Math.ceil(PLAN.height * 0.72));

  const free = height - fixed;
  const widest = Math.max(0.72, (width - 52 - 30 - 22 - 290) / PLAN.width);
  const scale = clamp((0.48 * free) / PLAN.height, 0.72, Math.min(1.1, widest));
  const cell = cellThatFits(width - 20 - 22 - 22 - 236, free + 84 - PLAN.height * scale, 28, 66);
  const hood = hoodSize(cell);
  const tube = { x: 20, y: top, ...hood };
  const panelX = tube.x + hood.width + 22;
  const chassisY = Math.round(top + hood.height + 14);
  const chassis = panOf(52, chassisY, scale);
  const columnX = chassis.x + chassis.width + 30;
  const columnWidth = width - 22 - columnX;
  const tray = { x: 20, y: chassisY + chassis.height + 8, width: chassis.x + chassis.width - 20, height: TRAY_HEIGHT };
  const shelfTop = tray.y + TRAY_HEIGHT + 4;
  const tabsY = height - TABS_HEIGHT;
  const shelf = {
    x: 20,
    y: shelfTop,
    width: width - 20,
    height: tabsY - 8 - shelfTop,
    rows: rowsFor(tabsY - 8 - shelfTop),
  };
  const columnBottom = shelfTop - 8;
  const toolsHeight = 82;
  return {
    form: 'upright',
    page: { width, height },
    header: { x: 0, y: 0, width, height: headerHeight },
    headerRows: 2,
    sheet: {
      x: 16,
      y: stripY + stripHeight + 6,
      width: Math.min(460, width - 32),
      height: height - stripY - stripHeight - 14,
    },
    sheetFolds: true,
    sheetTab: null,
    strip: { x: 16, y: stripY, width: width - 38, height: stripHeight },
    tube,
    cell,
    panels: { ...NO_PANELS, tube: { x: panelX, y: top + 1, width: width - 22 - panelX, height: hood.height - 2 } },
    shelf,
    tabs: { x: 16, y: tabsY, width: width - 32, height: TABS_HEIGHT },
    menu: null,
    atHand: null,
    chassisHead: null,
    chassis,
    slugInset: { x: columnX, y: chassisY, width: columnWidth, height: columnBottom - toolsHeight - 8 - chassisY },
    tools: { x: columnX, y: columnBottom - toolsHeight, width: columnWidth, height: toolsHeight },
    leader: 'line',
    jacks: {
      y: { x: tube.x, y: Math.round(top + hood.height - 34), side: 'left', hidden: false },
      xIn: { x: tube.x, y: Math.round(top + hood.height - 84), side: 'left', hidden: false },
      ...behindShelf(tray, shelfTop),
    },
    leadTray: tray,
  };
}

function rowsFor(shelfHeight: number): 1 | 2 {
  return shelfHeight >= 2 * SHELF_HEIGHT + 14 ? 2 : 1;
}

function panOf(x: number, y: number, scale: number): BenchLayout['chassis'] {
  return { x, y, width: Math.round(PLAN.width * scale), height: Math.round(PLAN.height * scale), scale };
}

/** Leads of the sliding instruments rise side by side at the left of the tray, the nearest test points first. */
function behindShelf(tray: Rect, shelfTop: number): Record<Exclude<JackId, 'y' | 'xIn'>, Jack> {
  const order = ['xOut', 'rf', 'biasA', 'biasB', 'meter', 'earth'] as const;
  const jack = (i: number): Jack => ({ x: tray.x + 6 + 7 * i, y: shelfTop, side: 'top', hidden: true });
  return Object.fromEntries(order.map((id, i) => [id, jack(i)])) as Record<Exclude<JackId, 'y' | 'xIn'>, Jack>;
}

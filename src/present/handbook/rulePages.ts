/** Which page of the handbook explains what a rule of the score asks for. Rules that explain themselves have none. */

const ROWS: Readonly<Record<string, readonly string[]>> = {
  reading: ['G3', 'G4', 'G5', 'G8', 'G9', 'G10', 'G11', 'G48'],
  traps: ['G6', 'G7'],
  's-curve': ['G49', 'G50', 'G51', 'G52', 'G53'],
  phasing: ['G13', 'G14'],
  bias: ['G15', 'G61'],
  overload: ['G16'],
  detectors: ['G17'],
  tube: ['G18', 'G19', 'G55', 'G56'],
  markers: ['G20', 'G21', 'G22', 'G59'],
  leads: ['G23', 'G24', 'G25'],
  earth: ['G26', 'G57'],
  order: ['G27'],
  'too-fast': ['G60'],
  slug: ['G30', 'G31', 'G32', 'G58'],
  safety: ['G28', 'G29', 'G38', 'G39', 'G69'],
  'when-not': ['G33', 'G66'],
  faults: ['G62', 'G65'],
  sweep: ['G54'],
};

const PAGES: ReadonlyMap<string, string> = new Map(
  Object.entries(ROWS).flatMap(([page, rules]) => rules.map((rule) => [rule, page] as const)),
);

export const pageOfRule = (rule: string): string | null => PAGES.get(rule) ?? null;

/** The trimming tools: which head each has, and what it bites into. Steel bites into anything, and harms it. */
import type { ToolHead } from '../receiver/receiver.ts';
import type { BenchState, ToolId } from './benchState.ts';

const TOOLS: Readonly<Record<ToolId, { readonly fits: readonly ToolHead[] }>> = {
  hex: { fits: ['hex'] },
  blade: { fits: ['blade'] },
  steel: { fits: ['hex', 'blade'] },
};

/** Whether a slug goes round with the tool; else the tool slips in it. */
export const fits = (tool: ToolId, head: ToolHead): boolean => TOOLS[tool].fits.includes(head);

/** The tool that is made for a head. */
export const toolFor = (head: ToolHead): ToolId => head;

/** The slug that steel stands in; null where none does. */
export const steelIn = ({ tool, toolIn }: Pick<BenchState, 'tool' | 'toolIn'>): string | null =>
  tool === 'steel' ? toolIn : null;

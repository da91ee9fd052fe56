/** What a line of the score says of the learner's skill: by its block, and by its own number where the block says too little. */
import type { Block } from '../grading/report.ts';

export const SKILL_IDS = ['safe', 'leads', 'setUp', 'traps', 'curve', 'faults', 'proofs', 'slugs', 'economy'] as const;
export type SkillId = (typeof SKILL_IDS)[number];

const OF_BLOCK: Readonly<Record<Block, SkillId>> = {
  response: 'curve',
  truth: 'setUp',
  proofs: 'proofs',
  care: 'slugs',
  economy: 'economy',
};

const OF_RULE: Readonly<Record<string, SkillId>> = {
  ...{ G6: 'traps', G7: 'traps' },
  ...{ G23: 'leads', G24: 'leads', G25: 'leads', G26: 'leads' },
  ...{ G28: 'safe', G29: 'safe', G69: 'safe' },
  ...{ G33: 'faults', G62: 'faults' },
};

export function skillOf({ rule, block }: { readonly rule: string; readonly block: Block }): SkillId {
  return OF_RULE[rule] ?? OF_BLOCK[block];
}

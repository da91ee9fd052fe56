/** Files that are brought to the desk for receivers: one alone that is no deck is told what is wrong with it. Source: the house's own promises. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readBrought } from '../../src/app/workshop/broughtReceiver.ts';
import { en } from '../../src/words/en/index.ts';

const receiver = readFileSync('scenarios/receivers/loose-can-10m7/receiver.json', 'utf8');
const deck = readFileSync('scenarios/receivers/loose-can-10m7/network.cir', 'utf8');
const scenario = readFileSync('scenarios/first-sweep/first-curve.json', 'utf8');
const brought = (name: string, text: string) => new File([text], name);
const refusedOf = async (...files: readonly File[]): Promise<readonly string[]> => {
  const read = await readBrought(en, files);
  return 'refused' in read ? read.refused : [];
};
const { noDeck } = en.ownReceiver.begin;

it.each([
  [
    'a scenario',
    scenario,
    ['a.json, line 2, column 13, /format: found a file of format "haystack-scenario", wanted "haystack-receiver"'],
  ],
  ['nothing', '', ['a.json, line 1, column 1: found the end of the text, wanted a value']],
  [
    'half a receiver',
    receiver.slice(0, 300),
    [expect.stringMatching(/^a\.json, line \d+, column \d+: found the end of the text/)],
  ],
  ['a list', '[]', ['a.json: found a list, wanted an object']],
  [
    'one of a newer bench',
    receiver.replace('"version": 1', '"version": 7'),
    [expect.stringMatching(/\/version: found version 7, wanted version 1/)],
  ],
])('%s alone is told what it is, and not that a deck is missing', async (_, text, told) => {
  expect(await refusedOf(brought('a.json', text))).toEqual(told);
});

it('a receiver file alone is told what is wrong with it, and that its deck is missing', async () => {
  expect(await refusedOf(brought('a.json', receiver))).toEqual([noDeck]);
  const told = await refusedOf(brought('a.json', receiver.replace('"setName": "', '"setName": 7, "x-was": "')));
  expect(told).toEqual([expect.stringMatching(/^a\.json, line \d+, column \d+, \/setName: found 7/), noDeck]);
});

it('both together are taken', async () => {
  expect(await readBrought(en, [brought('a.json', receiver), brought('network.cir', deck)])).toEqual({
    deck: { file: 'network.cir', text: deck },
    receiver: { file: 'a.json', text: receiver },
  });
});

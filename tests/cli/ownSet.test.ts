/** Commands on a scenario whose receiver is one's own: named, passed over, or impossible by its own design. Common practice, no source. */
import { mkdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { eveningText } from '../../src/files/evening.ts';
import { scenarioFrom } from '../../src/files/library.ts';
import { insideByKey as inside, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

const SHIPPED = 'scenarios/receivers/loose-can-10m7';
const receiverText = readFileSync(`${SHIPPED}/receiver.json`, 'utf8');
const scenarioText = readFileSync('scenarios/first-sweep/both-ways.json', 'utf8');

/** A folder with the scenario, and beside it a receiver of the same name. */
function folder(name: string, receiver: string, scenario = scenarioText): { scenario: string; receiver: string } {
  mkdirSync(files.place(name));
  files.file(`${name}/network.cir`, readFileSync(`${SHIPPED}/network.cir`, 'utf8'));
  return {
    receiver: files.file(`${name}/receiver.json`, receiver),
    scenario: files.file(`${name}/both-ways.json`, scenario),
  };
}

const start = (table: string): string => table.split('\n')[1]!;

describe('a receiver of one\u2019s own beside a scenario', () => {
  it('is told of where the project\u2019s stands on the bench, and taken where it is named', () => {
    // A coil's nominal place two turns farther out leaves other slugs to turn.
    const edited = folder('edited', receiverText.replaceAll('"travelTurns": 20', '"travelTurns": 18'));
    const plain = inside('curve', edited.scenario);
    expect(plain.code).toBe(0);
    expect(plain.err).toBe(
      `note  ${edited.receiver}  (a receiver "loose-can-10m7", other than the one in scenarios/receivers, which is used: --receiver ${edited.receiver} takes it)\n`,
    );
    const own = inside('curve', edited.scenario, '--receiver', edited.receiver);
    expect([own.code, own.err]).toEqual([0, '']);
    expect(start(own.out)).not.toBe(start(plain.out));
    expect(start(plain.out)).toBe(start(inside('curve', 'scenarios/first-sweep/both-ways.json').out));
    for (const command of ['certify', 'demonstrate']) expect(inside(command, edited.scenario).err).toContain('note  ');
    expect(inside('deck', edited.scenario, '--hz', '10.7Meg').err).toContain('note  ');
  });

  it('is nothing to tell of where it is the project\u2019s own', () => {
    const same = folder('same', receiverText);
    const said = inside('curve', same.scenario);
    expect([said.code, said.err]).toEqual([0, '']);
  });

  it('is refused by every command where its own design misses its sheet', () => {
    const missed = receiverText.replace('"low": 0.387, "high": 0.567', '"low": 0.497, "high": 0.567');
    expect(missed).not.toBe(receiverText);
    const { scenario, receiver } = folder('missed', missed.replaceAll('"target": 0.477', '"target": 0.5'));
    const refusal = /^\S+receiver\.json, \/responses\/0\/specification: found a design whose point at 10\.5 MHz/;
    expect(inside('check', receiver).err).toMatch(refusal);
    for (const command of [['certify'], ['curve'], ['deck', '--hz', '10.7Meg'], ['demonstrate']]) {
      const said = inside(...command, scenario, '--receiver', receiver);
      expect([said.code, said.out], command[0]).toEqual([1, '']);
      expect(said.err, command[0]).toMatch(refusal);
    }
  });

  it('of another name is not taken', () => {
    const other = 'scenarios/receivers/video-valve-45m/receiver.json';
    const said = inside('curve', 'scenarios/first-sweep/both-ways.json', '--receiver', other);
    expect([said.code, said.out]).toEqual([1, '']);
    expect(said.err).toBe(`${other}, /id: found receiver "video-valve-45m", wanted receiver "loose-can-10m7"\n`);
  });
});

describe('a scenario whose tolerances leave out the design itself', () => {
  it('is refused by check, and none that ships is', () => {
    // The design stands at 0.90 there: inside 0.88 to 1, and outside of half of that.
    const narrow = receiverText.replaceAll(
      '"target": 0.9, "low": 0.81, "high": 0.99',
      '"target": 0.94, "low": 0.88, "high": 1',
    );
    expect(narrow).not.toBe(receiverText);
    const half = scenarioText.replace('"toleranceFactor": 1.4', '"toleranceFactor": 0.5');
    const { scenario, receiver } = folder('narrow', narrow, half);
    expect(inside('check', receiver).err).toBe('');
    const said = inside('check', scenario, receiver);
    expect(said.code).toBe(1);
    expect(said.err).toMatch(/both-ways\.json, \/toleranceFactor: found a design whose point at 10\.\d MHz is 0\.9/);
    expect(inside('check', folder('wide', narrow).scenario, receiver).code).toBe(0);
    const scenarios = [scenarioText, half].map((text, i) => {
      const read = scenarioFrom(
        text.replaceAll('loose-can-10m7', 'club-can').replace('"both-ways"', `"way-${i}"`),
        'a.json',
      );
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      return read.value;
    });
    const sheet = { title: 'Evening', order: 'any', minutes: null, exam: null, scenarios } as const;
    const texts = {
      deck: { file: 'network.cir', text: readFileSync(`${SHIPPED}/network.cir`, 'utf8') },
      receiver: { file: 'receiver.json', text: narrow.replaceAll('loose-can-10m7', 'club-can') },
    };
    const evening = inside('check', files.file('evening.json', eveningText(sheet, [texts])));
    expect(evening.code).toBe(1);
    expect(evening.err).toMatch(
      /^\S+evening\.json, \/scenarios\/1\/toleranceFactor: found a design whose point at 10\.\d MHz/,
    );
  });
});

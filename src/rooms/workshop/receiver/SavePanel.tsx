/** What is left to do before the receiver can be saved, and the ways to keep it: its two files, and this browser. */
import { saidProblem } from '../../../describe/problem.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button, Ink } from '../../../kit/theme/art.tsx';
import { C } from '../../../kit/theme/ink.ts';
import { cross, tick } from '../../../kit/theme/pieces.ts';
import { deckName, type Making } from '../../../making/standing.ts';
import { AREAS, type Area, areaOf, areasLeft, areasUnknown } from './areas.ts';
import type { ReceiverPort } from './receiverPort.ts';

type Known = 'yes' | 'no' | 'unknown';

const TOLD = 12;
const disc = (col: string, inside: string, dashes = ''): string =>
  `<circle cx="10" cy="10" r="8.5" fill="none" stroke="${col}" stroke-width="1.8"${dashes}/>${inside}`;
const SIGNS: Readonly<Record<Known, string>> = {
  yes: disc(C.petrol, tick(10, 10.5, 0.8)),
  no: disc(C.rust, cross(10, 10, 0.8)),
  unknown: disc(C.ink2, '', ' stroke-dasharray="3 3"'),
};

export function SavePanel({ port, making }: { readonly port: ReceiverPort; readonly making: Making }) {
  const words = useWords();
  const { save: say } = words.ownReceiver;
  const { left } = port;
  const open = areasLeft(port);
  const unknown = areasUnknown(port);
  const known = (area: Area): Known => (open.has(area) ? 'no' : unknown.has(area) ? 'unknown' : 'yes');
  const { yes, no } = words.classroom;
  const labels: Readonly<Record<Known, string>> = { yes, no, unknown: say.notKnown };
  const elsewhere = (left ?? []).filter((problem) => areaOf(problem, deckName(making)) !== 'deck');
  return (
    <section class="made-save" aria-labelledby="made-save">
      <h2 class="l" id="made-save">
        {say.title}
      </h2>
      {left === null ? (
        <p role="status">{say.checking}</p>
      ) : (
        <ul class="made-checks">
          {AREAS.map((area) => (
            <li key={area}>
              <Ink svg={SIGNS[known(area)]} width={20} height={20} label={labels[known(area)]} />
              {say.checks[area]}
            </li>
          ))}
        </ul>
      )}
      {elsewhere.length === 0 ? null : (
        <ul class="made-left-to-do" aria-label={say.left}>
          {elsewhere.slice(0, TOLD).map((problem) => {
            const said = saidProblem(words, problem);
            return (
              <li key={JSON.stringify([problem.place, problem.found, problem.wanted])}>
                <span class="m">{said.place}</span> {words.ownReceiver.deck.found(said.found, said.wanted)}
              </li>
            );
          })}
        </ul>
      )}
      <div class="made-row">
        <Button disabled={!port.canSave} onClick={port.saveDeck}>
          {say.deck}
        </Button>
        <Button disabled={!port.canSave} onClick={port.saveReceiver}>
          {say.receiver}
        </Button>
        <Button primary disabled={!port.canSave} onClick={port.keep}>
          {say.keep}
        </Button>
      </div>
      <p class="l2">{say.keepNote}</p>
      <p role="status">{port.told}</p>
      {port.scenarioOn === null ? null : <Button onClick={port.scenarioOn}>{say.scenarioOn}</Button>}
    </section>
  );
}

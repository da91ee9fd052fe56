/** The tube as the set will be handed out, with the curve that the sheet wants in wax, and the lines of the sheet that will be wrong; all of it live. */

import { useMemo, useRef, useState } from 'preact/hooks';
import type { BenchSetup } from '../../../bench/setup.ts';
import { useSize } from '../../../kit/hooks/useSize.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { ghostPath } from '../../../kit/tube/ghosts.ts';
import { TUBE_HOOD, TubeFace } from '../../../kit/tube/TubeFace.tsx';
import { responseById } from '../../../receiver/responses.ts';
import { wrongLines } from '../../../workshop/looks.ts';
import { useLook } from './useLook.ts';
import { WrongLines } from './WrongLines.tsx';
import type { WorkshopPort } from './workshopPort.ts';
import '../../../kit/tabs/tabs.css';

interface SeenPanelProps {
  readonly port: WorkshopPort;
  readonly set: Omit<BenchSetup, 'scenario'>;
}

const MOST_CELL = 44;
const LEAST_CELL = 17;

export function SeenPanel({ port, set }: SeenPanelProps) {
  const { workshop: say } = useWords();
  const { draft } = port;
  const asked = set.receiver.responses.filter(({ id }) => draft.responses?.includes(id) ?? true);
  const responses = asked.length > 0 ? asked : set.receiver.responses;
  const [chosen, setChosen] = useState<string | null>(null);
  const response = responses.find(({ id }) => id === chosen) ?? responses[0]!;
  const { look, behind } = useLook(port, set, response.id);
  const outline = useMemo(() => (look === null ? undefined : ghostPath(look.wanted.beam)), [look?.wanted]);
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const across = Math.min((width - 2 * TUBE_HOOD) / 10.76, (width - 2 * TUBE_HOOD - 24) / 10);
  const cell = Math.max(LEAST_CELL, Math.min(MOST_CELL, Math.floor(across)));
  const lines = look?.lines ?? null;
  const wrong = useMemo(
    () =>
      lines === null ? null : (
        <WrongLines
          lines={lines}
          titleOf={(id) => (set.receiver.responses.length < 2 ? '' : responseById(set.receiver, id).title)}
        />
      ),
    [lines, set],
  );
  const label = useMemo(
    () => say.tube(lines === null ? 0 : wrongLines(lines).length, lines?.length ?? 0),
    [say, lines],
  );
  return (
    <section class="seen" aria-labelledby="seen-title" aria-busy={behind}>
      <PlateTitle id="seen-title" no={3}>
        {say.seenTitle}
        <span class="l2">{say.seenWhen}</span>
      </PlateTitle>
      {responses.length < 2 ? null : (
        <fieldset class="tabs" aria-label={say.curve}>
          {responses.map(({ id, title }) => (
            <button key={id} type="button" aria-pressed={id === response.id} onClick={() => setChosen(id)}>
              {title}
            </button>
          ))}
        </fieldset>
      )}
      <div class="seen-tube" ref={place}>
        {width === 0 || look === null ? null : (
          <TubeFace display={look.display} label={label} cell={cell} phosphor="P31" outline={outline} />
        )}
      </div>
      <p class="seen-key">
        <span class="handed">{say.asHandedOut}</span>
        <span class="wanted">{say.asWanted}</span>
      </p>
      {look === null && port.problems.length > 0 ? <p class="desk-note">{say.notShown}</p> : null}
      {wrong}
    </section>
  );
}

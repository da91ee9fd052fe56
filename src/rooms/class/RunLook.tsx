/** What an opened run looks like: the curve as it was found and as it was left against the sheet, and the tube as it stood at the end. */
import { useMemo } from 'preact/hooks';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Fit } from '../../kit/theme/art.tsx';
import { TubeFace } from '../../kit/tube/TubeFace.tsx';
import { responseById } from '../../receiver/responses.ts';
import { widenSpecification } from '../../receiver/specification.ts';
import type { OpenedRun } from './classPort.ts';
import { lookFigure } from './lookFigure.ts';

/** px to a division */
const CELL = 17;

export function RunLook({ opened }: { readonly opened: OpenedRun }) {
  const { classroom: say, report: words } = useWords();
  const { report, receiver, scenario, state, display } = opened;
  const set = report.curves[0];
  const sheet = useMemo(
    () =>
      set === undefined
        ? null
        : widenSpecification(responseById(receiver, set.response).specification, scenario.toleranceFactor),
    [set, receiver, scenario],
  );
  return (
    <div class="run-look">
      {set === undefined || sheet === null ? null : (
        <Fit
          class="look-figure"
          of={set}
          label={words.figure(scenario.title)}
          draw={(w, h) => lookFigure(w, h, set, sheet, words)}
        />
      )}
      <TubeFace
        mini
        cell={CELL}
        display={display}
        label={say.tubeAtEnd}
        phosphor={state.controls.phosphor}
        focus={state.controls.focus}
        brightness={state.controls.brightness}
        turnsMade={state.turnsMade}
      />
    </div>
  );
}

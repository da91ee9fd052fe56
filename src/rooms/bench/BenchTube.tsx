/** The tube in its place: hands the picture to the face, says in words what it shows, lays the wax marks. */

import { memo } from 'preact/compat';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { BenchDisplay } from '../../bench/display.ts';
import { curveSentence, pipName, readCurve } from '../../describe/sentence.ts';
import { usePort } from '../../kit/hooks/usePort.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { place } from '../../kit/px.ts';
import { createRest } from '../../kit/rest.ts';
import { TubeFace } from '../../kit/tube/TubeFace.tsx';
import type { BenchPort } from '../../present/ports.ts';
import type { SheetFigures } from '../../present/sheetFigures.ts';
import { partOnGlass, waxOn } from '../../present/wax.ts';
import type { Words } from '../../words/words.ts';
import type { BenchLayout } from './layout.ts';
import type { PartShown } from './useSlugPart.ts';

interface BenchTubeProps {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  readonly figures: SheetFigures;
  readonly wax: boolean;
  readonly part: PartShown | null;
}

/** Words follow once the hand rests: nobody can listen thirty times a second. */
const REST_MS = 350;

function BenchTubeBase({ port, layout, figures, wax, part }: BenchTubeProps) {
  const words = useWords();
  const { tubeTalk } = words;
  const display = usePort(port, () => port.display());
  const controls = usePort(port, () => port.state().controls);
  const turns = usePort(port, () => port.state().turnsMade);
  const quiet = useQuiet(port, display);
  const reading = useRestedReading(words, port);
  const marks = useMemo(
    () => (wax ? waxOn(port.setup, controls, figures, port.facts()) : NO_WAX),
    // A new picture may have another peak, and the marks follow the peak.
    [port, controls, figures, wax, display],
  );
  const slugs = usePort(port, () => port.state().slugs);
  // Of a picture that noise alone changes it is not worked out anew.
  const scale = usePort(port, () => {
    const { yAtSheetPoint, sweeping, detectedPeakVolts } = port.facts();
    return `${yAtSheetPoint} ${sweeping} ${detectedPeakVolts.toPrecision(2)}`;
  });
  const moved = useMemo(
    // While the slug turns it would be of the curve before.
    () =>
      wax && part !== null && part.part !== null && part.slugs === slugs
        ? partOnGlass(port.setup, controls, figures, port.facts(), part.part)
        : null,
    [port, controls, figures, wax, part, slugs, scale],
  );
  return (
    <section class="bench-tube placed" style={place(layout.tube)} aria-label={tubeTalk.name} tabIndex={-1}>
      <TubeFace
        display={display}
        label={reading.sentence}
        cell={layout.cell}
        phosphor={controls.phosphor}
        brightness={controls.brightness}
        focus={controls.focus}
        turnsMade={turns}
        wax={marks}
        part={moved}
        quiet={quiet}
      />
      <PipTable pips={reading.pips} />
      {display.note === 'none' ? null : <p class="tube-note l">{tubeTalk.note[display.note]}</p>}
    </section>
  );
}

/** Whether time alone has made this picture another than the last: nothing has been done since. */
function useQuiet(port: BenchPort, display: BenchDisplay): boolean {
  const last = useRef({ display, state: port.state(), quiet: false });
  if (last.current.display !== display) {
    const state = port.state();
    last.current = { display, state, quiet: last.current.state === state };
  }
  return last.current.quiet;
}

const NO_WAX: ReturnType<typeof waxOn> = [];

interface Reading {
  readonly sentence: string;
  readonly pips: ReturnType<typeof readCurve>['pips'];
}

function useRestedReading(words: Words, port: BenchPort): Reading {
  const [reading, setReading] = useState(() => read(words, port));
  useEffect(() => {
    let seen = port.display();
    const rest = createRest(REST_MS, () => setReading(read(words, port)));
    const stop = port.subscribe(() => {
      const now = port.display();
      if (now === seen) return;
      seen = now;
      rest.stir();
    });
    return () => {
      stop();
      rest.stop();
    };
  }, [words, port]);
  return reading;
}

function read(words: Words, port: BenchPort): Reading {
  const display = port.display();
  return { sentence: curveSentence(words, display), pips: readCurve(display).pips };
}

/** The same as the picture, as a table: for those who do not see it. */
const PipTable = memo(function PipTable({ pips }: { readonly pips: Reading['pips'] }) {
  const words = useWords();
  const { tubeTalk } = words;
  if (pips.length === 0) return null;
  return (
    <table class="unseen" tabIndex={-1}>
      <caption>{tubeTalk.table}</caption>
      <thead>
        <tr>
          <th scope="col">{tubeTalk.columns.pip}</th>
          <th scope="col">{tubeTalk.columns.level}</th>
        </tr>
      </thead>
      <tbody>
        {pips.map(({ tag, share }) => (
          <tr key={`${tag.kind}${tag.hz}${tag.number}`}>
            <th scope="row">{tubeTalk.row(pipName(words, tag))}</th>
            <td>{tubeTalk.level(share)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
});

export const BenchTube = memo(BenchTubeBase);

/** What is turned for an answer: the phasing, or the core of one slug; and the button that says it is right now. */
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { withControls, withSlug } from '../../drills/scene.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Button, Frame } from '../../kit/theme/art.tsx';
import { Knob } from '../../kit/widgets/Knob.tsx';
import { type KnobScale, linearScale } from '../../present/knobScale.ts';
import type { LookActs, Looked } from './useLook.ts';

export interface TurnPanelProps {
  readonly looked: Looked;
  readonly acts: LookActs;
}

const STEP_TURNS = 1 / 32;
const REACH_TURNS = 2.5;
const MOST_DEGREES = 90;

interface Turned {
  readonly value: number;
  readonly resting: number;
  readonly scale: KnobScale;
  readonly shown: (value: number) => string;
  put(value: number): void;
}

export function TurnPanel({ looked, acts }: TurnPanelProps) {
  const { drills: words, format } = useWords();
  const { question, state, answer } = looked;
  const turned = useTurned(looked, acts);
  const panel = useRef<HTMLDivElement>(null);
  // From the second look on the hand is at the keys: what is turned has the focus at once.
  useLayoutEffect(() => {
    if (looked.no > 0) panel.current?.querySelector('input')?.focus({ preventScroll: true });
  }, []);
  if (turned === null) return null;
  return (
    <div class="turn-panel" ref={panel}>
      <Frame kind="panel" />
      <Knob
        label={words.asks[question.drill]}
        value={turned.value}
        scale={turned.scale}
        shown={turned.shown}
        spoken={(value) => format.aloud(turned.shown(value))}
        onChange={turned.put}
        resting={turned.resting}
        r={27}
        signed
        disabled={answer !== null}
      />
      {answer === null ? (
        <Button primary onClick={() => acts.answer({ kind: 'turned', state })}>
          {words.done}
        </Button>
      ) : null}
    </div>
  );
}

function useTurned({ question, state }: Looked, acts: LookActs): Turned | null {
  const { drills: words, format } = useWords();
  const { ask, scene } = question;
  const scale = useMemo(
    () =>
      ask.kind === 'turn' && ask.turn.kind === 'slug'
        ? linearScale(-REACH_TURNS, REACH_TURNS, STEP_TURNS)
        : linearScale(-MOST_DEGREES, MOST_DEGREES, 1),
    [question],
  );
  if (ask.kind !== 'turn') return null;
  const { turn } = ask;
  const now = { setup: scene.setup, state };
  if (turn.kind === 'phasing')
    return {
      value: state.controls.phasingDegrees,
      resting: scene.state.controls.phasingDegrees,
      scale,
      shown: format.knob.degrees,
      put: (phasingDegrees) => acts.turn(withControls(now, { phasingDegrees }).state),
    };
  const found = scene.state.slugs[turn.slug]!.coreTurns;
  return {
    value: state.slugs[turn.slug]!.coreTurns - found,
    resting: 0,
    scale,
    shown: words.turned,
    put: (turns) => acts.turn(withSlug(now, turn.slug, found + turns).state),
  };
}

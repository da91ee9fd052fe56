/** The chassis from above, with everything that stands on it: dragged, or moved by the arrow keys, never onto anything else. */

import { useMemo, useRef, useState } from 'preact/hooks';
import { outline, type Thing } from '../../../files/planOverlaps.ts';
import { useSize } from '../../../kit/hooks/useSize.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { Button, Frame, Ink } from '../../../kit/theme/art.tsx';
import {
  freePlace,
  type Hindrance,
  hindranceOf,
  keyOf,
  moved,
  type Rectangle,
  thingsOf,
} from '../../../making/moving.ts';
import { setOut } from '../../../making/setOut.ts';
import type { Draft, Json } from '../../../making/wholeReceiver.ts';
import type { PlanPart } from '../../../receiver/receiver.ts';
import type { DeskProps } from './DeckPanel.tsx';
import { planArt } from './planArt.ts';
import './plan.css';

const STEP = 6;
const FINE_STEP = 1;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface Drag {
  readonly key: string;
  readonly fromX: number;
  readonly fromY: number;
  readonly dx: number;
  readonly dy: number;
}

export function PlanPanel({ port, making, standing }: DeskProps) {
  const { ownReceiver: say } = useWords();
  const { draft } = making;
  const whole = standing.deck.ok && draft.adjusters.length > 0 && typeof draft.plan === 'object';
  return (
    <section class="paper made-card" aria-labelledby="made-plan">
      <Frame kind="card" />
      <PlateTitle id="made-plan" no={4}>
        {say.plan.title}
        <span class="l2">{say.plan.how}</span>
      </PlateTitle>
      {whole ? <Plan {...{ port, making, standing }} /> : <p>{say.plan.waits}</p>}
    </section>
  );
}

function Plan({ port, making, standing }: DeskProps) {
  const { ownReceiver, scene } = useWords();
  const { plan: say } = ownReceiver;
  const { draft } = making;
  const place = useRef<HTMLDivElement>(null);
  const { width: room } = useSize(place);
  const plan = draft.plan as { readonly width: number; readonly height: number };
  const scale = room / plan.width;
  const [drag, setDrag] = useState<Drag | null>(null);
  const [told, setTold] = useState<string | null>(null);
  const things = thingsOf(draft);
  const held = drag === null ? undefined : things.find((one) => keyOf(one) === drag.key);
  const shown = held === undefined || drag === null ? draft : moved(draft, held, drag.dx, drag.dy);
  const hindered = held === undefined ? null : hindranceOf(shown, keyOf(held));
  const art = useMemo(() => (room === 0 ? '' : planArt(scene, shown, scale)), [scene, shown, scale, room]);
  const why = (thing: Thing, { ...by }: Hindrance): string =>
    by.kind === 'edge' ? say.edge(thing.what, thing.name) : say.on(thing.what, thing.name, by.what, by.name);
  const move = (thing: Thing, dx: number, dy: number): void => {
    if (dx === 0 && dy === 0) return;
    const next = moved(draft, thing, dx, dy);
    const by = hindranceOf(next, keyOf(thing));
    setTold(by === null ? null : why(thing, by));
    if (by === null) port.change(next);
  };
  const name = (thing: Thing): string => say.move(thing.what, thing.name, Math.round(thing.x), Math.round(thing.y));
  const shownThings = thingsOf(shown);
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing whose parts are named one by one */}
      <div
        class="made-plan"
        ref={place}
        role="group"
        aria-label={say.chassis}
        style={{ aspectRatio: `${plan.width} / ${plan.height}` }}
      >
        {room === 0 ? null : (
          <Ink svg={art} width={room} height={plan.height * scale} viewBox={`0 0 ${plan.width} ${plan.height}`} />
        )}
        {held === undefined || hindered === null ? null : (
          <>
            <i class="made-back" style={placed(boxOf(held), scale)} />
            {hindered.kind === 'on' ? <i class="made-clash" style={placed(hindered.both, scale)} /> : null}
          </>
        )}
        {shownThings.map((thing) => {
          const key = keyOf(thing);
          const [w, h] = typeof thing.half === 'number' ? [thing.half, thing.half] : thing.half;
          const wide = Math.max(2 * w * scale, 28);
          const high = Math.max(2 * h * scale, 28);
          const state = drag?.key !== key ? '' : hindered === null ? ' held' : ' held hindered';
          return (
            <button
              key={key}
              type="button"
              class={`made-thing${typeof thing.half === 'number' ? ' round' : ''}${state}`}
              aria-label={name(thing)}
              style={{
                left: `${thing.x * scale - wide / 2}px`,
                top: `${thing.y * scale - high / 2}px`,
                width: `${wide}px`,
                height: `${high}px`,
              }}
              onKeyDown={(event) => {
                const arrow = ARROWS[event.key];
                if (event.key === 'Delete' && thing.path[0] === 'plan') {
                  event.preventDefault();
                  port.change(withoutPart(draft, thing.path[2] as number));
                }
                if (arrow === undefined) return;
                event.preventDefault();
                const by = event.shiftKey ? FINE_STEP : STEP;
                move(thing, arrow[0] * by, arrow[1] * by);
              }}
              onPointerDown={(event) => {
                if (event.button !== 0) return;
                event.currentTarget.setPointerCapture(event.pointerId);
                setTold(null);
                setDrag({ key, fromX: event.clientX, fromY: event.clientY, dx: 0, dy: 0 });
              }}
              onPointerMove={(event) => {
                if (drag?.key !== key) return;
                const [dx, dy] = [(event.clientX - drag.fromX) / scale, (event.clientY - drag.fromY) / scale];
                setDrag({ ...drag, dx: Math.round(dx), dy: Math.round(dy) });
              }}
              onPointerUp={() => {
                const at = things.find((one) => keyOf(one) === key);
                if (drag?.key === key && at !== undefined) move(at, drag.dx, drag.dy);
                setDrag(null);
              }}
              onPointerCancel={() => setDrag(null)}
            />
          );
        })}
      </div>
      <p class={told === null && hindered === null ? 'unseen' : 'made-refused'} role="status">
        {told !== null ? (
          <>
            <b class="l">{say.notThere}</b> {told}
          </>
        ) : hindered !== null && held !== undefined ? (
          <>
            <b class="l">{say.notThere}</b> {why(held, hindered)}
          </>
        ) : null}
      </p>
      <div class="made-row">
        {standing.deck.ok ? (
          <Button onClick={() => standing.deck.ok && port.change(setOut(draft, standing.deck.value))}>
            {say.setOut}
          </Button>
        ) : null}
        <Button idle={port.undoSteps === 0} onClick={port.undo}>
          {say.undo}
        </Button>
      </div>
      <Parts draft={draft} change={port.change} full={() => setTold(say.full)} />
    </>
  );
}

const placed = ({ x, y, width, height }: Rectangle, scale: number) => ({
  left: `${x * scale}px`,
  top: `${y * scale}px`,
  width: `${width * scale}px`,
  height: `${height * scale}px`,
});

function boxOf({ x, y, half }: Thing): Rectangle {
  const [w, h] = typeof half === 'number' ? [half, half] : half;
  return { x: x - w, y: y - h, width: 2 * w, height: 2 * h };
}

const KINDS = ['valve', 'box', 'transformer', 'electrolytic'] as const;
type AddedKind = (typeof KINDS)[number];

interface PartsProps {
  readonly draft: Draft;
  readonly change: (draft: Draft) => void;
  readonly full: () => void;
}

/** Parts that stand on the plan for the eye: put there, named, taken away. */
function Parts({ draft, change, full }: PartsProps) {
  const { ownReceiver } = useWords();
  const { plan: say } = ownReceiver;
  const [kind, setKind] = useState<AddedKind>('valve');
  const parts = (draft.plan as Json).parts as readonly PlanPart[];
  const add = (): void => {
    const part = fresh(kind, say.parts[kind]);
    const { half } = outline(part);
    const at = freePlace(draft, half, 100);
    if (at === null) {
      full();
      return;
    }
    const [w, h] = typeof half === 'number' ? [0, 0] : half;
    const placed = kind === 'box' ? { ...part, x: at.x - w, y: at.y - h } : { ...part, ...at };
    change({ ...draft, plan: { ...(draft.plan as Json), parts: [...parts, placed] } });
  };
  return (
    <div class="made-parts">
      <ul>
        {parts.map((part, i) => (
          <li key={i} class="made-row">
            {part.kind === 'resistor' ? null : (
              <input
                class="written"
                aria-label={say.label(part.kind)}
                maxLength={16}
                value={part.label}
                onChange={(event) => {
                  const text = event.currentTarget.value.trim();
                  if (text !== '') change(withPart(draft, i, { ...part, label: text }));
                }}
              />
            )}
            <Button
              class="made-small"
              label={`${say.remove}: ${part.kind === 'resistor' ? '' : part.label}`}
              onClick={() => change(withoutPart(draft, i))}
            >
              {'\u00d7'}
            </Button>
          </li>
        ))}
      </ul>
      <div class="made-row">
        <select
          class="written"
          aria-label={say.addPart}
          value={kind}
          onChange={(event) => setKind(event.currentTarget.value as AddedKind)}
        >
          {KINDS.map((one) => (
            <option key={one} value={one}>
              {say.parts[one]}
            </option>
          ))}
        </select>
        <Button onClick={add}>{say.addPart}</Button>
      </div>
    </div>
  );
}

const fresh = (kind: AddedKind, label: string): PlanPart => {
  const at = { x: 0, y: 0, label: label.slice(0, 16) };
  return kind === 'box' ? { kind, ...at, width: 56, height: 36, sub: '-' } : { kind, ...at };
};

function withPart(draft: Draft, i: number, part: PlanPart): Draft {
  const plan = draft.plan as Json;
  return {
    ...draft,
    plan: { ...plan, parts: (plan.parts as readonly PlanPart[]).map((one, k) => (k === i ? part : one)) },
  };
}

function withoutPart(draft: Draft, i: number): Draft {
  const plan = draft.plan as Json;
  return { ...draft, plan: { ...plan, parts: (plan.parts as readonly PlanPart[]).filter((_, k) => k !== i) } };
}

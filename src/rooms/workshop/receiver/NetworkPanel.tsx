/** What has been understood of the deck: its circuit drawn, which coils are turned, where one may touch. */
import { useMemo, useState } from 'preact/hooks';
import { SymbolMark } from '../../../kit/circuit/SymbolMark.tsx';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button, Frame } from '../../../kit/theme/art.tsx';
import {
  moveDetector,
  put,
  putSetUp,
  removePoint,
  removeSlug,
  renamePoint,
  renameSlug,
  sameNode,
} from '../../../making/edits.ts';
import { tunedHz } from '../../../making/firstDraft.ts';
import { addPoint, addSlug } from '../../../making/more.ts';
import type { Json } from '../../../making/wholeReceiver.ts';
import type { Deck, TwoTerminal } from '../../../physics/deck.ts';
import { nodesOf } from '../../../physics/deckProblems.ts';
import { circuitDiagram } from '../../../present/circuit/circuitDiagram.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import { type DeskProps, Disc } from './DeckSheet.tsx';
import { Field, hertzOf, kilohertz, numberOf } from './Field.tsx';

export function NetworkPanel(props: DeskProps) {
  const { ownReceiver: say } = useWords();
  const { standing, making } = props;
  const { made, deck } = standing;
  const couplings = deck.ok ? deck.value.elements.filter((e) => e.kind === 'K').length : 0;
  const stages = deck.ok ? deck.value.elements.filter((e) => e.kind === 'G').length : 0;
  return (
    <section class="paper made-card" aria-labelledby="made-network">
      <Frame kind="card" />
      <h2 class="plate-title" id="made-network">
        <Disc n={2} />
        {say.network.title}
        {deck.ok ? (
          <span class="l2">{say.network.counts(making.draft.adjusters.length, stages, couplings)}</span>
        ) : null}
      </h2>
      {made?.ok && deck.ok ? <Diagram receiver={made.value.receiver} deck={deck.value} /> : null}
      {deck.ok ? (
        <>
          <Names {...props} made={made?.ok ? made.value.receiver : null} />
          <Coils {...props} deck={deck.value} made={made?.ok ? made.value.receiver : null} />
          <Points {...props} deck={deck.value} />
        </>
      ) : (
        <p>{say.network.waits}</p>
      )}
    </section>
  );
}

function Diagram({ receiver, deck }: { readonly receiver: Receiver; readonly deck: Deck }) {
  const { circuit, ownReceiver: say } = useWords();
  const diagram = useMemo(
    () => circuitDiagram(receiver, deck, { own: circuit.own, coupledWith: circuit.coupledWith, hertz: circuit.hertz }),
    [receiver, deck, circuit],
  );
  const { box } = diagram;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls can be scrolled by key
    <section class="made-net" aria-label={say.network.diagram} tabIndex={0}>
      <svg
        class="circuit-page"
        role="img"
        aria-label={say.network.diagram}
        viewBox={`${box.x - 12} ${box.y - 18} ${box.width + 24} ${box.height + 26}`}
        width={box.width + 24}
        height={box.height + 26}
      >
        {diagram.wires.map((wire) => {
          const points = wire.map(({ x, y }) => `${x},${y}`).join(' ');
          return <polyline key={points} class="wire" points={points} />;
        })}
        {diagram.dots.map(({ x, y }) => (
          <circle key={`${x},${y}`} class="dot" cx={x} cy={y} r={2.8} />
        ))}
        {diagram.symbols.map((symbol) => (
          <g key={symbol.key} class="symbol">
            <SymbolMark symbol={{ ...symbol, name: null }} name="" pointed={false} onPoint={NOTHING} />
          </g>
        ))}
      </svg>
    </section>
  );
}

/** The lists below the drawing do by name what could be pointed at. */
const NOTHING = (): void => {};

type WithMade = DeskProps & { readonly made: Receiver | null };

function Names({ port, making, made }: WithMade) {
  const { ownReceiver: say } = useWords();
  const { draft } = making;
  return (
    <div class="made-grid">
      <Labelled name={say.network.setName}>
        <Field
          label={say.network.setName}
          value={String(draft.setName ?? made?.setName ?? '')}
          take={(text) => done(() => port.change(put(draft, ['setName'], text)))}
        />
      </Labelled>
      <Labelled name={say.network.id}>
        <Field
          plain
          label={say.network.id}
          value={String(draft.id)}
          take={(text) => done(() => port.change({ ...draft, id: text, deck: `${text}.cir` }))}
        />
      </Labelled>
    </div>
  );
}

function Coils({ port, making, deck, made }: WithMade & { readonly deck: Deck }) {
  const { ownReceiver: say } = useWords();
  const { network } = say;
  const { draft } = making;
  const coils = deck.elements.filter((e): e is TwoTerminal => e.kind === 'L');
  return (
    <fieldset class="made-list">
      <legend class="l">{network.coils}</legend>
      <ul>
        {coils.map((coil) => {
          const i = draft.adjusters.findIndex((a) => String(a.element).toLowerCase() === coil.name.toLowerCase());
          const slug = draft.adjusters[i];
          const full = made?.adjusters[i];
          const hz = tunedHz(deck, coil);
          return (
            <li key={coil.name} class="made-coil">
              <label class="made-tick">
                <input
                  type="checkbox"
                  checked={slug !== undefined}
                  aria-label={network.turned(coil.name)}
                  onChange={() =>
                    port.change(slug === undefined ? addSlug(draft, deck, coil.name) : removeSlug(draft, i))
                  }
                />
                <span>
                  <b class="m">{coil.name}</b>{' '}
                  <span class="l2">{hz === null ? network.noCapacitor : network.alone(hz)}</span>
                </span>
              </label>
              {slug === undefined ? null : (
                <span class="made-row">
                  <Short name={network.nameShort}>
                    <Field
                      plain
                      label={network.slugName(coil.name)}
                      value={String(slug.id)}
                      take={(text) => done(() => port.change(renameSlug(draft, i, text)))}
                    />
                  </Short>
                  <Short name={network.travelShort}>
                    <Field
                      plain
                      class="figure"
                      label={network.travel(String(slug.id))}
                      value={String(slug.travelTurns ?? full?.travelTurns ?? '')}
                      take={(text) => {
                        const value = numberOf(text);
                        if (value === null) return say.response.unread;
                        return done(() => port.change(put(draft, ['adjusters', i, 'travelTurns'], value)));
                      }}
                    />
                  </Short>
                  <Short name={network.trapShort}>
                    <Field
                      plain
                      class="figure"
                      label={network.trap(String(slug.id))}
                      value={typeof slug.trapHz === 'number' ? kilohertz(slug.trapHz) : ''}
                      take={(text) => {
                        const value = text === '' ? null : hertzOf(text);
                        if (text !== '' && value === null) return say.response.unread;
                        const trap = put(
                          put(draft, ['adjusters', i, 'trapHz'], value),
                          ['adjusters', i, 'kind'],
                          value === null ? 'slug' : 'trap',
                        );
                        return done(() => port.change(value === null ? trap : aloneInCan(trap, i)));
                      }}
                    />
                  </Short>
                  <Short name={network.toolShort}>
                    <select
                      class="written"
                      aria-label={network.tool(String(slug.id))}
                      value={String(slug.head ?? full?.head ?? 'hex')}
                      onChange={(event) => port.change(put(draft, ['adjusters', i, 'head'], event.currentTarget.value))}
                    >
                      {(['hex', 'blade'] as const).map((head) => (
                        <option key={head} value={head}>
                          {network.tools[head]}
                        </option>
                      ))}
                    </select>
                  </Short>
                </span>
              )}
            </li>
          );
        })}
      </ul>
    </fieldset>
  );
}

/** A trap is drawn by itself where no other core shares its can. */
function aloneInCan(draft: DeskProps['making']['draft'], i: number): typeof draft {
  const plan = draft.adjusters[i]!.plan as Json;
  const shared = draft.adjusters.some((a, k) => k !== i && (a.plan as Json).can === plan.can);
  return shared ? draft : put(draft, ['adjusters', i, 'plan', 'shape'], 'trap');
}

function Points({ port, making, deck }: DeskProps & { readonly deck: Deck }) {
  const { ownReceiver: say } = useWords();
  const { network } = say;
  const { draft } = making;
  const nodes = nodesOf(deck);
  const [at, setAt] = useState('');
  const detector = ((draft.detectors ?? []) as readonly Json[])[0];
  const setUp = draft.responses[0]?.setUp;
  const used = new Set([setUp?.injectAt, setUp?.observeAt]);
  const free = at === '' ? (nodes[0] ?? '') : at;
  const pointsWith = (fits: (point: Json) => boolean): string[] =>
    draft.testPoints.filter(fits).map((p) => String(p.id));
  return (
    <fieldset class="made-list">
      <legend class="l">{network.points}</legend>
      <ul class="made-points">
        {draft.testPoints.map((point, i) => {
          const where = typeof point.node === 'string' ? point.node : network.earth;
          return (
            <li key={i} class="made-row">
              <Field
                plain
                label={network.pointName(where)}
                value={String(point.id)}
                take={(text) => done(() => port.change(renamePoint(draft, i, text)))}
              />
              <span class="m" dir="ltr">
                {where}
              </span>
              {point.role === 'earth' || used.has(point.id) ? null : (
                <Button
                  class="made-small"
                  label={network.takeAway(String(point.id))}
                  onClick={() => port.change(removePoint(draft, i))}
                >
                  {'\u00d7'}
                </Button>
              )}
            </li>
          );
        })}
      </ul>
      <div class="made-grid">
        <Choice name={network.addAt} value={free} from={nodes} onChange={setAt} />
        <Button onClick={() => port.change(addPoint(draft, deck, free))}>{network.add}</Button>
        {detector !== undefined && typeof detector.node === 'string' ? (
          <Choice
            name={network.detectorAt}
            value={nodes.find((node) => sameNode(detector.node, node)) ?? ''}
            from={nodes}
            onChange={(node) => port.change(moveDetector(draft, node))}
          />
        ) : null}
        <Choice
          name={network.inAt}
          value={String(setUp?.injectAt ?? '')}
          from={pointsWith((p) => p.inject !== undefined && p.inject !== null)}
          onChange={(id) => port.change(putSetUp(draft, 'injectAt', id))}
        />
        <Choice
          name={network.outAt}
          value={String(setUp?.observeAt ?? '')}
          from={pointsWith((p) =>
            setUp?.observeWith === 'probe' ? p.role === 'signal' : typeof p.detector === 'string',
          )}
          onChange={(id) => port.change(putSetUp(draft, 'observeAt', id))}
        />
      </div>
    </fieldset>
  );
}

interface ChoiceProps {
  readonly name: string;
  readonly value: string;
  readonly from: readonly string[];
  readonly onChange: (value: string) => void;
}

function Choice({ name, value, from, onChange }: ChoiceProps) {
  return (
    <Labelled name={name}>
      <select
        class="written"
        dir="ltr"
        aria-label={name}
        value={value}
        onChange={(event) => onChange(event.currentTarget.value)}
      >
        {from.includes(value) ? null : <option value={value}>{value}</option>}
        {from.map((one) => (
          <option key={one} value={one}>
            {one}
          </option>
        ))}
      </select>
    </Labelled>
  );
}

/** The field has the name for ears already. */
function Labelled({ name, children }: { readonly name: string; readonly children: preact.ComponentChildren }) {
  return (
    <div class="made-labelled">
      <span class="ls" aria-hidden="true">
        {name}
      </span>
      {children}
    </div>
  );
}
const Short = Labelled;

function done(change: () => void): null {
  change();
  return null;
}

/** What has been understood of the deck: its circuit drawn, which coils are turned, where one may touch. */

import { useMemo } from 'preact/hooks';
import { SymbolMark } from '../../../kit/circuit/SymbolMark.tsx';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { Frame } from '../../../kit/theme/art.tsx';
import { put } from '../../../making/edits.ts';
import type { Deck } from '../../../physics/deck.ts';
import { circuitDiagram } from '../../../present/circuit/circuitDiagram.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import { Coils } from './CoilList.tsx';
import type { DeskProps } from './DeckPanel.tsx';
import { done, Field } from './Field.tsx';
import { Labelled } from './Labelled.tsx';
import { Points } from './PointList.tsx';

export function NetworkPanel(props: DeskProps) {
  const { ownReceiver: say } = useWords();
  const { standing, making } = props;
  const { made, deck } = standing;
  const couplings = deck.ok ? deck.value.elements.filter((e) => e.kind === 'K').length : 0;
  const stages = deck.ok ? deck.value.elements.filter((e) => e.kind === 'G').length : 0;
  return (
    <section class="paper made-card" aria-labelledby="made-network">
      <Frame kind="card" />
      <PlateTitle id="made-network" no={2}>
        {say.network.title}
        {deck.ok ? (
          <span class="l2">{say.network.counts(making.draft.adjusters.length, stages, couplings)}</span>
        ) : null}
      </PlateTitle>
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
        {diagram.symbols
          .filter(({ kind }) => kind !== 'shield')
          .map((symbol) => (
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
          class="name"
          label={say.network.setName}
          value={String(draft.setName ?? made?.setName ?? '')}
          take={(text) => done(() => port.change(put(draft, ['setName'], text)))}
        />
      </Labelled>
      <Labelled name={say.network.id}>
        <Field
          plain
          class="short-name"
          label={say.network.id}
          value={String(draft.id)}
          take={(text) => done(() => port.change({ ...draft, id: text, deck: `${text}.cir` }))}
        />
      </Labelled>
    </div>
  );
}

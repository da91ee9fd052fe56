/** The test points, and which of them the leads go to. */
import { useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import { asDetector, moveDetector, putSetUp, removePoint, renamePoint, sameNode } from '../../../making/edits.ts';
import { addPoint } from '../../../making/more.ts';
import type { Json } from '../../../making/wholeReceiver.ts';
import { type Deck, nodeKey } from '../../../physics/deck.ts';
import { nodesOf } from '../../../physics/deckProblems.ts';
import type { DeskProps } from './DeckPanel.tsx';
import { done, Field } from './Field.tsx';
import { Labelled } from './Labelled.tsx';

const DETECTOR_KINDS = ['envelope', 'discriminator', 'ratio'] as const;
type DetectorKind = (typeof DETECTOR_KINDS)[number];

export function Points({ port, making, deck }: DeskProps & { readonly deck: Deck }) {
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
          const where =
            typeof point.node === 'string'
              ? point.node
              : typeof point.detector === 'string'
                ? network.detectorOut
                : network.earth;
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
        {detector === undefined ? null : (
          <Labelled name={network.detectorKind}>
            <select
              class="written"
              aria-label={network.detectorKind}
              value={String(detector.kind)}
              onChange={({ currentTarget }) => {
                const kind = currentTarget.value as DetectorKind;
                const from = String(detector.node ?? detector.plus);
                const other = detector.minus ?? nodes.find((node) => !sameNode(from, node) && nodeKey(node) !== '0');
                port.change(asDetector(draft, kind, [from, String(other ?? from)]));
              }}
            >
              {DETECTOR_KINDS.map((kind) => (
                <option key={kind} value={kind}>
                  {network.detectorKinds[kind]}
                </option>
              ))}
            </select>
          </Labelled>
        )}
        {detector !== undefined && detector.kind !== 'envelope'
          ? (['plus', 'minus'] as const).map((end) => (
              <Choice
                key={end}
                name={network.diodeAt[end]}
                value={nodes.find((node) => sameNode(detector[end], node)) ?? ''}
                from={nodes}
                onChange={(node) => {
                  const ends = { plus: String(detector.plus), minus: String(detector.minus), [end]: node };
                  port.change(asDetector(draft, detector.kind as DetectorKind, [ends.plus, ends.minus]));
                }}
              />
            ))
          : null}
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

/** The response of the design, and the sheet that is made of it: each line with its limit, which may be changed; more lines put on, any taken off. */

import { useMemo, useRef, useState } from 'preact/hooks';
import { useSize } from '../../../kit/hooks/useSize.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { Button, Frame, Ink } from '../../../kit/theme/art.tsx';
import { put, withoutSheet } from '../../../making/edits.ts';
import { canBeTakenOff, limitOf, withLimit, withoutLine } from '../../../making/sheetLimits.ts';
import { addLine, type NewLine } from '../../../making/sheetLines.ts';
import type { Drawn } from '../../../making/standing.ts';
import type { Deck } from '../../../physics/deck.ts';
import type { Receiver, Specification } from '../../../receiver/receiver.ts';
import type { SpecItem } from '../../../receiver/specification.ts';
import { AddLine } from './AddLine.tsx';
import type { DeskProps } from './DeckPanel.tsx';
import { Field, hertzOf, kilohertz, numberOf } from './Field.tsx';
import { givenOf, lineName } from './lineWords.ts';
import { hzAt, responseArt, responseGeometry } from './responseArt.ts';
import { Stands } from './Stands.tsx';

export function ResponsePanel({ port, making, standing }: DeskProps) {
  const { ownReceiver: say } = useWords();
  const { deck, made, drawn } = standing;
  return (
    <section class="paper made-card" aria-labelledby="made-response">
      <Frame kind="card" />
      <PlateTitle id="made-response" no={3}>
        {say.response.title}
      </PlateTitle>
      {deck.ok && made?.ok && drawn !== null ? (
        <Sheet {...{ port, making, standing, drawn }} deck={deck.value} receiver={made.value.receiver} />
      ) : (
        <p>{say.response.waits}</p>
      )}
      {deck.ok && making.draft.responses.length > 0 ? <Stands {...{ port, making, standing }} /> : null}
    </section>
  );
}

interface SheetProps extends DeskProps {
  readonly drawn: Drawn;
  readonly deck: Deck;
  readonly receiver: Receiver;
}

function Sheet({ port, making, drawn, deck, receiver }: SheetProps) {
  const words = useWords();
  const { response: say } = words.ownReceiver;
  const response = receiver.responses[0]!;
  const spec = response.specification;
  const [refusal, setRefusal] = useState<string | null>(null);
  const keep = (next: Specification): void => port.change(put(making.draft, ['responses', 0, 'specification'], next));
  const add = (line: NewLine): void => {
    const next = addLine(receiver, deck, response, line);
    setRefusal(typeof next === 'string' ? say.refusals[next] : null);
    if (typeof next !== 'string') keep(next);
  };
  const slack = port.slack;
  return (
    <>
      {spec.sCurve === null ? <AddLine add={add} middleHz={Math.round((spec.fromHz + spec.toHz) / 2)} /> : null}
      {refusal === null ? null : (
        <p class="made-why" role="alert">
          {refusal}
        </p>
      )}
      <div class="made-response">
        <Tube
          spec={spec}
          drawn={drawn}
          title={response.title}
          onPick={spec.sCurve === null ? (hz) => add({ kind: 'point', at: hz, to: hz }) : null}
        />
        <div>
          <h3 class="l">{say.list}</h3>
          <ul class="made-sheet">
            {drawn.items.map((item) => (
              <Line key={item.id} item={item} spec={spec} keep={keep} />
            ))}
          </ul>
          {slack === null ? null : (
            <p class="made-slack">
              {slack.share < 1
                ? say.holds(lineName(words, slack.item), words.format.percent(slack.share))
                : say.breaks(lineName(words, slack.item))}
            </p>
          )}
          <Button onClick={() => port.change(withoutSheet(making.draft))}>{say.anew}</Button>
        </div>
      </div>
    </>
  );
}

interface TubeProps {
  readonly spec: Specification;
  readonly drawn: Drawn;
  readonly title: string;
  readonly onPick: ((hz: number) => void) | null;
}

function Tube({ spec, drawn, title, onPick }: TubeProps) {
  const { format, ownReceiver: say } = useWords();
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const g = useMemo(() => responseGeometry(width), [width]);
  const art = useMemo(() => responseArt(g, spec, drawn), [g, spec, drawn]);
  const at = drawn.curve.volts.reduce((best, v, i) => (Math.abs(v) > Math.abs(drawn.curve.volts[best]!) ? i : best), 0);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the form over the tube does the same by key
    // biome-ignore lint/a11y/useKeyWithClickEvents: the form over the tube does the same by key
    <div
      class="made-tube"
      ref={place}
      onClick={(event) => {
        const box = event.currentTarget.getBoundingClientRect();
        const hz = hzAt(g, spec, event.clientX - box.left);
        if (hz !== null) onPick?.(Math.round(hz / step(spec)) * step(spec));
      }}
    >
      {width === 0 ? null : (
        <Ink
          svg={art}
          width={g.width}
          height={g.height}
          label={say.response.figure(title, format.frequency(drawn.curve.hz[at]!))}
        />
      )}
    </div>
  );
}

/** A pick is rounded to what can be read on the tube: about a two-hundredth of its width, as a 1, 2 or 5. */
function step({ fromHz, toHz }: Specification): number {
  const raw = (toHz - fromHz) / 200;
  const power = 10 ** Math.floor(Math.log10(raw));
  return power * (raw / power < 2 ? 1 : raw / power < 5 ? 2 : 5);
}

interface LineProps {
  readonly item: SpecItem;
  readonly spec: Specification;
  readonly keep: (next: Specification) => void;
}

function Line({ item, spec, keep }: LineProps) {
  const words = useWords();
  const { response: say } = words.ownReceiver;
  const limit = limitOf(item);
  const name = lineName(words, item);
  const sign = limit?.sign === 'either' ? '\u00b1' : limit?.sign === 'most' ? '\u2264' : '\u2265';
  const unit = limit === null ? '' : limit.unit === 'percent' ? '%' : limit.unit === 'dB' ? 'dB' : 'kHz';
  const shown =
    limit === null ? '' : limit.unit === 'Hz' ? kilohertz(limit.value) : String(Number(limit.value.toFixed(2)));
  return (
    <li>
      <span class="made-line">
        <span class="m">{name}</span> <b>{givenOf(words, item, spec)}</b>
      </span>
      {limit === null ? null : (
        <span class="made-limit" dir="ltr">
          <span aria-hidden="true">{sign}</span>
          <Field
            plain
            class="figure"
            label={`${say.limit(name)}, ${unit}`}
            value={shown}
            take={(text) => {
              const value = limit.unit === 'Hz' ? hertzOf(text) : numberOf(text);
              if (value === null || (limit.sign === 'either' && value <= 0)) return say.unread;
              keep(withLimit(spec, item, value));
              return null;
            }}
          />
          <span aria-hidden="true">{unit}</span>
        </span>
      )}
      {limit === null || !canBeTakenOff(item) ? null : (
        <Button class="made-small" label={say.takeOff(name)} onClick={() => keep(withoutLine(spec, item.id))}>
          {'\u00d7'}
        </Button>
      )}
    </li>
  );
}

/** Under the circuit: of the part that is pointed at what the curve would be without it, what may be done to it here, and the way to the next part. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { canBeBridged } from '../../../bench/bridge.ts';
import { canBeMetered } from '../../../bench/partMeter.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { curvesFig } from '../../../kit/plots/curvesFig.ts';
import { Button, Ink } from '../../../kit/theme/art.tsx';
import { createFailedParts, type FailedPart } from '../../../present/circuit/failedPart.ts';
import { highest } from '../../../present/curves.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Part } from '../../../receiver/faults/partsTray.ts';
import { responseById } from '../../../receiver/responses.ts';
import { offersParts } from '../../../scenario/diagnosis.ts';
import { usePartActs } from '../dialogs/usePartActs.ts';

const WIDTH = 220;
const HEIGHT = 124;
/** A pointer that only passes over a part is not answered. */
const REST_MS = 120;

interface FailedFigureProps {
  readonly port: BenchPort;
  readonly part: string | null;
}

/** A sealed job has no such help: it would be a list of what each failure looks like. */
export function FailedFigure(props: FailedFigureProps) {
  return props.port.scenario.sealed ? null : <Failed {...props} />;
}

function Failed({ port, part }: FailedFigureProps) {
  const { circuit: say, workshop } = useWords();
  const failedParts = useMemo(() => createFailedParts(port.setup), [port]);
  const [shown, setShown] = useState<FailedPart | null>(null);
  useEffect(() => {
    if (part === null) return setShown(null);
    const timer = setTimeout(
      () => setShown(failedParts(part, responseById(port.receiver, port.facts().response))),
      REST_MS,
    );
    return () => clearTimeout(timer);
  }, [port, part, failedParts]);
  const svg = useMemo(
    () =>
      shown === null
        ? ''
        : curvesFig(WIDTH, HEIGHT, 0.6, [
            { curve: shown.whole, line: 'dashed' },
            { curve: shown.failed, line: 'now' },
          ]).svg,
    [shown],
  );
  if (part === null || shown === null) return <div class="circuit-failed" />;
  const name = workshop.faults[shown.kind];
  return (
    <figure class="circuit-failed">
      <Ink svg={svg} width={WIDTH} height={HEIGHT} label={say.failedSpoken(name, highest(shown.failed.relative))} />
      <figcaption>
        <span class="whole">{say.whole}</span> <span class="failed">{name}</span>
      </figcaption>
    </figure>
  );
}

interface PartButtonsProps {
  readonly port: BenchPort;
  /** null: what is pointed at is no part of the tray */
  readonly part: Part | null;
  /** the letter of the slug that it carries */
  readonly letter: string | null;
  /** puts the tool's place at this slug: the circuit is put away */
  readonly onSlug: () => void;
  readonly onNext: () => void;
}

export function PartButtons({ port, part, letter, onSlug, onNext }: PartButtonsProps) {
  const { circuit: say, parts: partsWords } = useWords();
  const { hanging, said, nameOf, ...acts } = usePartActs(port);
  const [fitting, setFitting] = useState<string | null>(null);
  const name = part?.name ?? null;
  useEffect(() => {
    setFitting(null);
    acts.forget();
  }, [name]);
  const fits = part !== null && fitting === part.name;
  return (
    <>
      <p class="circuit-done" role="status">
        {fits ? say.fitAsk(nameOf(part)) : said}
      </p>
      <div class="circuit-acts">
        {part === null || !offersParts(port.scenario) ? null : fits ? (
          <>
            <Button
              onClick={() => {
                acts.replace(part);
                setFitting(null);
              }}
            >
              {partsWords.replace}
            </Button>
            <Button onClick={() => setFitting(null)}>{partsWords.keep}</Button>
          </>
        ) : (
          <>
            {!canBeBridged(part) ? null : hanging?.name === part.name ? (
              <Button onClick={() => acts.bridge(part, false)}>{partsWords.unbridge}</Button>
            ) : (
              <Button onClick={() => acts.bridge(part, true)}>{partsWords.bridge}</Button>
            )}
            {canBeMetered(part) ? <Button onClick={() => acts.meter(part)}>{say.meter}</Button> : null}
            <Button onClick={() => setFitting(part.name)}>{say.fit}</Button>
          </>
        )}
        {letter === null ? null : <Button onClick={onSlug}>{say.takeSlug(letter)}</Button>}
        <button type="button" class="link circuit-next" aria-keyshortcuts="P" onClick={onNext}>
          <kbd>P</kbd> {say.next}
        </button>
      </div>
    </>
  );
}

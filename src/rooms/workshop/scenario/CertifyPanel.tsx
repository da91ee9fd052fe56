/** Certification of the open draft: running, passed with its slip and stamp, or refused with the reason and the nearest that works. */

import { partCalled } from '../../../describe/partCalled.ts';
import { levelsBeside } from '../../../files/difficultyBands.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { Button, Frame } from '../../../kit/theme/art.tsx';
import type { SetParts } from '../../../receiver/individualSet.ts';
import { countedPar } from '../../../scenario/par.ts';
import { BOUNDS } from '../../../workshop/formBounds.ts';
import { unwritten, withPlainTexts } from '../../../workshop/unwritten.ts';
import { letterOf, partsToReplace, saidChange, saidReason, shortLine } from './certifySaid.ts';
import { HandOut } from './HandOut.tsx';
import type { Proving, ProvingPort } from './provingPort.ts';
import { toField } from './toField.ts';
import type { WorkshopPort } from './workshopPort.ts';

interface CertifyPanelProps {
  readonly port: WorkshopPort;
  readonly proving: ProvingPort;
}

export function CertifyPanel({ port, proving }: CertifyPanelProps) {
  const { workshop } = useWords();
  const say = workshop.proof;
  const { state, isOfThis, canStart } = proving;
  const { certification, step, failure } = state;
  const design = port.standing.kind === 'stands' ? (port.standing.set.design ?? port.standing.set) : null;
  const told = isOfThis && design !== null;
  return (
    <section class="certify paper" aria-labelledby="certify-title">
      <Frame kind="panel" />
      <div class="certify-acts">
        <PlateTitle id="certify-title" no={4}>
          {say.title}
          <span class="l2">{say.why}</span>
        </PlateTitle>
        <div class="certify-buttons">
          {step !== null && isOfThis ? (
            <Button onClick={proving.cancel}>{say.cancel}</Button>
          ) : (
            <Button primary disabled={!canStart} onClick={proving.start}>
              {certification === null ? say.start : say.again}
            </Button>
          )}
          <p aria-live="polite">{saidState(say, proving)}</p>
        </div>
        {step === null || !isOfThis ? null : (
          <>
            <progress aria-label={say.steps[step]} value={state.share} max={1} />
            <p class="desk-note">{say.free}</p>
          </>
        )}
        {canStart ? null : <Unwritten port={port} />}
        {failure === null || !isOfThis ? null : (
          <p class="desk-note" role="alert">
            {say[failure]}
          </p>
        )}
      </div>
      {told && certification?.ok ? <Passed {...{ port, proving, state, set: design }} /> : null}
      {told && certification !== null && !certification.ok ? (
        <Refused {...{ port, proving, state, set: design }} />
      ) : null}
    </section>
  );
}

/** A draft that nobody has written a word to: which texts are missing, and two ways to go on. */
function Unwritten({ port }: { readonly port: WorkshopPort }) {
  const { workshop, format } = useWords();
  const { proof: say, problemFields } = workshop;
  const { draft, change, receivers } = port;
  const missing = unwritten(draft);
  const [first] = missing;
  if (first === undefined) return null;
  const set = receivers.find(({ id }) => id === draft.receiver)?.name ?? workshop.untitled;
  const plain = say.plainTexts(set);
  return (
    <div class="certify-unwritten">
      <p>{say.unwritten(format.list(missing.map((place) => problemFields[place] ?? place)))}</p>
      <button type="button" class="small-button" onClick={() => toField(first)}>
        {say.write}
      </button>
      <button
        type="button"
        class="small-button"
        onClick={() => change(withPlainTexts(draft, { ...plain, title: plain.title.slice(0, BOUNDS.title.most) }))}
      >
        {say.plain}
      </button>
    </div>
  );
}

function saidState(say: ReturnType<typeof useWords>['workshop']['proof'], proving: ProvingPort): string {
  const { state, isOfThis, canStart } = proving;
  if (!canStart) return say.first;
  if (state.step !== null && isOfThis) return say.steps[state.step];
  if (state.certification === null) return say.idle;
  return isOfThis ? '' : say.stale;
}

interface OutcomeProps {
  readonly port: WorkshopPort;
  readonly proving: ProvingPort;
  readonly state: Proving;
  readonly set: SetParts;
}

function Passed({ port, proving, state, set }: OutcomeProps) {
  const words = useWords();
  const { format } = words;
  const say = words.workshop.proof;
  const { certification, technician, step } = state;
  if (!certification?.ok) return null;
  const { certificate } = certification;
  const { route, reached, difficulty } = certificate;
  const par = countedPar(certificate.par);
  const levels = levelsBeside(port.draft, certificate);
  const parts = partsToReplace(port.draft, set).map((part) => partCalled(words, set.receiver, part));
  const verdict =
    technician === null
      ? step === 'technician'
        ? say.trying
        : say.notTried
      : technician.passed
        ? say.passed(technician.total)
        : say.failed(technician.total);
  return (
    <div class="certify-passed paper">
      <Frame kind="card" />
      <h3 class="l">{say.passedTitle}</h3>
      <dl>
        <dt>{say.met}</dt>
        <dd>{say.worst(shortLine(words, reached), -reached.excess)}</dd>
        <dt>{say.route}</dt>
        <dd>{say.routeOf(route.map(({ slug }) => letterOf(set.receiver, slug)))}</dd>
        <dt>{say.parts}</dt>
        <dd>{parts.length === 0 ? say.noParts : format.list(parts)}</dd>
        <dt>{say.difficulty}</dt>
        <dd>{say.ofTen(difficulty)}</dd>
        <dt>{say.technician}</dt>
        <dd>{verdict}</dd>
      </dl>
      {levels === null ? null : <p class="desk-note">{say.levelBeside(port.draft.difficulty, levels)}</p>}
      {technician?.passed === false ? <p class="desk-note">{say.failedNote}</p> : null}
      <p class="draft-stamp">
        <b>{say.solvable}</b>
        <span>{say.par(format.turnsLong(par.turns), par.seconds / 60)}</span>
      </p>
      <Button onClick={() => proving.saveCertificate(certificate)}>{say.saveCertificate}</Button>
      <HandOut port={port} />
    </div>
  );
}

function Refused({ port, proving, state, set }: OutcomeProps) {
  const words = useWords();
  const say = words.workshop.proof;
  const { certification, nearest } = state;
  if (certification === null || certification.ok) return null;
  return (
    <div class="certify-refused">
      <h3 class="l">{say.refusedTitle}</h3>
      {certification.problems.map((problem) => {
        const said = saidReason(words, problem, set);
        return <p key={said}>{said}</p>;
      })}
      {nearest === null ? null : nearest === 'none' ? (
        <p class="desk-note">{say.none}</p>
      ) : (
        <div class="certify-nearest">
          <p>
            {say.nearest}: <b>{saidChange(words, nearest.change, port.draft, set)}</b>
          </p>
          <Button onClick={() => proving.take(nearest.draft)}>{say.take}</Button>
        </div>
      )}
    </div>
  );
}

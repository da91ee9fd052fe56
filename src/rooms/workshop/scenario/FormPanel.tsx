/** The draft's words and rules: what the learner reads, the name of the file, aids, proofs, points, time. */

import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { PROOFS } from '../../../scenario/proofId.ts';
import type { ScenarioWeights } from '../../../scenario/scenario.ts';
import { BOUNDS } from '../../../workshop/formBounds.ts';
import { CardSign } from './Card.tsx';
import { FileKeys } from './FileKeys.tsx';
import { NumberField } from './NumberField.tsx';
import { TextField } from './TextField.tsx';
import { Tick } from './Tick.tsx';
import type { WorkshopPort } from './workshopPort.ts';

const TOLERANCES = [1, 1.25, 1.5, 2, 3] as const;
const MINUTES = [5, 10, 15, 20, 30, 45, 60, 90] as const;

export function FormPanel({ port }: { readonly port: WorkshopPort }) {
  const { workshop } = useWords();
  const say = workshop.form;
  return (
    <section class="form-panel" aria-labelledby="form-title">
      <PlateTitle id="form-title" no={5}>
        {say.title}
      </PlateTitle>
      <div class="form-columns">
        <Texts port={port} />
        <div>
          <FileKeys port={port} />
          <Points port={port} />
        </div>
        <Rules port={port} />
      </div>
    </section>
  );
}

function Texts({ port }: { readonly port: WorkshopPort }) {
  const { workshop } = useWords();
  const say = workshop.form;
  const { draft, change, pause } = port;
  const { hints } = draft;
  const written = (name: 'brief' | 'story' | 'lesson', rows: number) => (
    <TextField
      label={say[name]}
      value={draft.words[name]}
      most={BOUNDS[name].most}
      rows={rows}
      place={`/words/${name}`}
      onValue={(value) => change({ ...draft, words: { ...draft.words, [name]: value } }, `words ${name}`)}
      onLetGo={pause}
    />
  );
  return (
    <fieldset>
      <legend class="l">{say.texts}</legend>
      <TextField
        label={say.name}
        value={draft.title}
        most={BOUNDS.title.most}
        rows={1}
        place="/title"
        onValue={(title) => change({ ...draft, title }, 'title')}
        onLetGo={pause}
      />
      {written('brief', 2)}
      {written('story', 5)}
      {written('lesson', 3)}
      <h3 class="l">{say.hints}</h3>
      {hints.map((hint, at) => (
        <div key={at} class="hint-row">
          <TextField
            label={say.hint(at + 1)}
            value={hint}
            most={BOUNDS.hint.most}
            rows={2}
            onValue={(value) => change({ ...draft, hints: hints.with(at, value) }, `hint ${at}`)}
            onLetGo={pause}
          />
          <CardSign label={say.dropHint(at + 1)} onAct={() => change({ ...draft, hints: hints.toSpliced(at, 1) })} />
        </div>
      ))}
      {hints.length >= BOUNDS.hints.most ? null : (
        <button type="button" class="small-button" onClick={() => change({ ...draft, hints: [...hints, ''] })}>
          {say.addHint}
        </button>
      )}
    </fieldset>
  );
}

function Points({ port }: { readonly port: WorkshopPort }) {
  const { workshop, format } = useWords();
  const say = workshop.form;
  const { draft, change } = port;
  const { weights } = draft;
  const blocks = Object.keys(weights) as readonly (keyof ScenarioWeights)[];
  const sum = blocks.reduce((points, block) => points + weights[block], 0);
  return (
    <fieldset>
      <legend class="l">{say.weights}</legend>
      <div class="set-choices">
        {blocks.map((block) => (
          <NumberField
            key={block}
            label={say.weightNames[block]}
            value={weights[block]}
            {...BOUNDS.weight}
            onValue={(points) => change({ ...draft, weights: { ...weights, [block]: points } }, `weight ${block}`)}
          />
        ))}
      </div>
      <p class={sum === 100 ? 'desk-note' : 'desk-note bad'}>{say.sum(Number(format.atMost(sum, 2)))}</p>
    </fieldset>
  );
}

function Rules({ port }: { readonly port: WorkshopPort }) {
  const { workshop, format } = useWords();
  const say = workshop.form;
  const { draft, change, standing } = port;
  const { aids, proofs, start, timeLimitSeconds, toleranceFactor, bench } = draft;
  const responses = standing.kind === 'stands' ? standing.set.receiver.responses : [];
  const judged = draft.responses ?? responses.map(({ id }) => id);
  const limits = [...new Set([...MINUTES, ...(timeLimitSeconds === null ? [] : [timeLimitSeconds / 60])])];
  const put = <T,>(list: readonly T[], item: T, on: boolean, order: readonly T[]): readonly T[] =>
    order.filter((one) => (one === item ? on : list.includes(one)));
  return (
    <fieldset class="form-rules">
      <legend class="l">{say.rules}</legend>
      <Tick label={say.sealed} on={draft.sealed} onTick={(sealed) => change({ ...draft, sealed })} />
      <Tick label={say.hintsOn} on={aids.hints} onTick={(hints) => change({ ...draft, aids: { ...aids, hints } })} />
      <Tick
        label={say.marksOn}
        on={aids.toleranceMarks}
        onTick={(toleranceMarks) => change({ ...draft, aids: { ...aids, toleranceMarks } })}
      />
      {(['safe', 'connect'] as const).map((phase) => (
        <Tick
          key={phase}
          label={say[phase]}
          on={start.prepared.includes(phase)}
          onTick={(on) =>
            change({
              ...draft,
              start: { ...start, prepared: put(start.prepared, phase, on, ['safe', 'connect']) },
            })
          }
        />
      ))}
      {draft.sealed && draft.set !== undefined ? (
        <Tick
          label={say.dealsFaults}
          on={draft.dealsFaults === true}
          onTick={(on) => {
            const { dealsFaults: _, ...rest } = draft;
            change(on ? { ...rest, dealsFaults: true } : rest);
          }}
        />
      ) : null}
      <Tick
        label={say.slugsRight}
        on={draft.slugsRight === true}
        onTick={(on) => {
          const { slugsRight: _, ...rest } = draft;
          change(on ? { ...rest, slugsRight: true } : rest);
        }}
      />
      <div class="set-choices">
        <label class="desk-field">
          <span class="l">{say.mains}</span>
          <select
            value={String(bench.mainsHz)}
            onChange={({ currentTarget: { value } }) =>
              change({ ...draft, bench: { ...bench, mainsHz: value === '50' ? 50 : 60 } })
            }
          >
            {[50, 60].map((hz) => (
              <option key={hz} value={String(hz)}>
                {say.hertz(hz)}
              </option>
            ))}
          </select>
        </label>
        <label class="desk-field">
          <span class="l">{say.tolerance}</span>
          <select
            value={String(toleranceFactor)}
            onChange={({ currentTarget: { value } }) => change({ ...draft, toleranceFactor: Number(value) })}
          >
            {[...new Set([...TOLERANCES, toleranceFactor])].map((factor) => (
              <option key={factor} value={String(factor)}>
                {factor === 1 ? say.asPrinted : say.times(format.atMost(factor, 2))}
              </option>
            ))}
          </select>
        </label>
        <label class="desk-field">
          <span class="l">{say.limit}</span>
          <select
            value={timeLimitSeconds === null ? '' : String(timeLimitSeconds / 60)}
            onChange={({ currentTarget: { value } }) =>
              change({ ...draft, timeLimitSeconds: value === '' ? null : Math.round(Number(value) * 60) })
            }
          >
            <option value="">{say.limitNone}</option>
            {limits.map((minutes) => (
              <option key={minutes} value={String(minutes)}>
                {format.atMost(minutes, 2)}
              </option>
            ))}
          </select>
        </label>
      </div>
      {responses.length < 2 ? null : (
        <>
          <h3 class="l">{say.responses}</h3>
          {responses.map(({ id, title }) => (
            <Tick
              key={id}
              label={title}
              on={judged.includes(id)}
              onTick={(on) => {
                const { responses: _, ...rest } = draft;
                const all = responses.map((one) => one.id);
                const next = put(judged, id, on, all);
                // One is asked for at least; all of them need not be named.
                if (next.length > 0) change(next.length === all.length ? rest : { ...rest, responses: next });
              }}
            />
          ))}
        </>
      )}
      <h3 class="l">{say.proofs}</h3>
      {PROOFS.map((proof) => (
        <Tick
          key={proof}
          label={say.proofNames[proof]}
          on={proofs.includes(proof)}
          onTick={(on) => change({ ...draft, proofs: put(proofs, proof, on, PROOFS) })}
        />
      ))}
    </fieldset>
  );
}

/** At signing: what was wrong with the set as it was found. Nothing is filled in, and the choices stand as sheet and tray have them. */
import { useMemo } from 'preact/hooks';
import { partsAsked } from '../../../bench/diagnosis.ts';
import { slugNameFirst } from '../../../describe/slugName.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Part, PartKind } from '../../../receiver/faults/partsTray.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';
import { type Diagnosis, SET_UP_MATTERS } from '../../../scenario/diagnosis.ts';
import './diagnosis.css';
import './parts.css';

export interface DiagnosisFormProps {
  readonly port: BenchPort;
  /** null: nothing has been said */
  readonly said: Diagnosis | null;
  readonly onSay: (said: Diagnosis | null) => void;
}

const NOTHING: Diagnosis = { slugs: [], parts: [], setUp: [] };
type Kind = keyof Diagnosis;

export function DiagnosisForm({ port, said, onSay }: DiagnosisFormProps) {
  const words = useWords();
  const { diagnosis: say, parts: partWords } = words;
  const { receiver, setup } = port;
  const tray = useMemo(() => partsAsked(setup), [setup]);
  const letters = useMemo(() => slugLetters(receiver), [receiver]);
  const nothing = said !== null && said.slugs.length + said.parts.length === 0;
  const has = (kind: Kind, name: string): boolean => said !== null && (said[kind] as readonly string[]).includes(name);
  const toggle = (kind: Kind, name: string): void => {
    const before = (said ?? NOTHING)[kind] as readonly string[];
    const after = before.includes(name) ? before.filter((one) => one !== name) : [...before, name];
    const next = { ...(said ?? NOTHING), [kind]: after };
    // With everything taken back nothing has been said: that nothing was wrong has its own choice.
    onSay(next.slugs.length + next.parts.length + next.setUp.length === 0 ? null : next);
  };
  const choice = (kind: Kind, name: string, text: string) => (
    <label key={name}>
      <input type="checkbox" checked={has(kind, name)} onChange={() => toggle(kind, name)} />
      <span>{text}</span>
    </label>
  );
  const partName = (part: Part): string =>
    partWords.name(part, part.slug === null ? null : (letters.get(part.slug) ?? null));
  return (
    <section class="diagnosis" aria-labelledby="diagnosis-asked">
      <h3 id="diagnosis-asked">{say.title}</h3>
      <p>{say.intro}</p>
      <div class="diagnosis-choices">
        <label class="diagnosis-nothing">
          <input
            type="checkbox"
            checked={nothing}
            onChange={() =>
              onSay(nothing && said!.setUp.length === 0 ? null : { ...NOTHING, setUp: said?.setUp ?? [] })
            }
          />
          <span>{say.nothing}</span>
        </label>
        <fieldset>
          <legend class="l">{say.slugs}</legend>
          <div>{receiver.adjusters.map(({ id }) => choice('slugs', id, slugNameFirst(words, receiver, id)))}</div>
        </fieldset>
        {tray.length === 0 ? null : (
          <fieldset>
            <legend class="l">{say.parts}</legend>
            {(Object.keys(partWords.kinds) as PartKind[]).map((kind) => {
              const held = tray.filter((part) => part.kind === kind);
              if (held.length === 0) return null;
              return <div key={kind}>{held.map((part) => choice('parts', part.name, partName(part)))}</div>;
            })}
          </fieldset>
        )}
        <fieldset>
          <legend class="l">{say.setUp}</legend>
          <div>{SET_UP_MATTERS.map((matter) => choice('setUp', matter, say.matters[matter]))}</div>
        </fieldset>
      </div>
    </section>
  );
}

/** How it stands, beside the signature, where it stays in sight: whoever signs without a word knows what that means. */
export function DiagnosisSaid({ said }: { readonly said: Diagnosis | null }) {
  const { diagnosis: say } = useWords();
  const count = said === null ? 0 : said.slugs.length + said.parts.length + said.setUp.length;
  return (
    <p class="diagnosis-said" role="status">
      {said === null ? say.unsaid : count === 0 ? say.nothing : say.chosen(count)}
    </p>
  );
}

/** What the file says of itself: its names, its place in a track, author and language, and what is best done before. */
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { Draft } from '../../../workshop/draft.ts';
import { BOUNDS } from '../../../workshop/formBounds.ts';
import { CardSign } from './Card.tsx';
import { NumberField } from './NumberField.tsx';
import { TextField } from './TextField.tsx';
import type { WorkshopPort } from './workshopPort.ts';

export function FileKeys({ port }: { readonly port: WorkshopPort }) {
  const { workshop } = useWords();
  const say = workshop.form;
  const { draft, change, pause } = port;
  const named = (name: 'id' | 'code' | 'track') => (
    <TextField
      label={say[name]}
      value={draft[name]}
      most={BOUNDS[name].most}
      rows={1}
      place={`/${name}`}
      onValue={(value) => change({ ...draft, [name]: value }, name)}
      onLetGo={pause}
    />
  );
  const optional = (name: 'author' | 'language') => (
    <TextField
      label={say[name]}
      value={draft[name] ?? ''}
      most={BOUNDS[name].most}
      rows={1}
      place={`/${name}`}
      onValue={(value) => {
        const { [name]: _, ...rest } = draft;
        change(value === '' ? rest : { ...rest, [name]: value }, name);
      }}
      onLetGo={pause}
    />
  );
  return (
    <fieldset>
      <legend class="l">{say.file}</legend>
      {named('id')}
      {named('code')}
      {named('track')}
      {optional('author')}
      {optional('language')}
      <div class="set-choices">
        <NumberField
          label={say.order}
          value={draft.order}
          {...BOUNDS.order}
          onValue={(order) => change({ ...draft, order }, 'order')}
        />
        <label class="desk-field">
          <span class="l">{say.difficulty}</span>
          <select
            value={String(draft.difficulty)}
            onChange={({ currentTarget: { value } }) =>
              change({ ...draft, difficulty: Number(value) as Draft['difficulty'] })
            }
          >
            {say.difficulties.map((name, i) => (
              <option key={name} value={String(i + 1)}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </div>
      <After port={port} />
    </fieldset>
  );
}

/** Scenarios that are best done before this one; they lock nothing. */
function After({ port }: { readonly port: WorkshopPort }) {
  const { workshop } = useWords();
  const say = workshop.form;
  const { draft, change, shipped, drafts, openKey } = port;
  const { recommendedAfter: after } = draft;
  const others = drafts.filter(({ key }) => key !== openKey).map((one) => one.draft);
  const offered = [
    ...shipped,
    ...others.map(({ id, code, title }) => ({
      id,
      name: workshop.named(code, title === '' ? workshop.untitled : title),
    })),
  ];
  const nameOf = (id: string): string => offered.find((one) => one.id === id)?.name ?? id;
  return (
    <div class="after-list">
      <h3 class="l">{say.after}</h3>
      {after.length === 0 ? null : (
        <ul>
          {after.map((id) => (
            <li key={id} class="hint-row">
              <span>{nameOf(id)}</span>
              <CardSign
                label={say.dropAfter(nameOf(id))}
                onAct={() => change({ ...draft, recommendedAfter: after.filter((one) => one !== id) })}
              />
            </li>
          ))}
        </ul>
      )}
      {after.length >= BOUNDS.after.most ? null : (
        <label class="desk-field">
          <span class="l">{say.addAfter}</span>
          <select
            value=""
            onChange={({ currentTarget }) => {
              const { value } = currentTarget;
              currentTarget.value = '';
              if (value !== '') change({ ...draft, recommendedAfter: [...after, value] });
            }}
          >
            <option value="">{say.chooseAfter}</option>
            {offered
              .filter(({ id }) => !after.includes(id) && id !== draft.id)
              .map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
          </select>
        </label>
      )}
    </div>
  );
}

/** Which draft is on the desk, where new ones come from, and the file. */
import { Fragment } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { problemSentence } from '../../../describe/problem.ts';
import { FilesField } from '../../../kit/FilesField.tsx';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import { DiscardQuestion } from '../DiscardQuestion.tsx';
import type { WorkshopPort } from './workshopPort.ts';

export function DraftBar({ port }: { readonly port: WorkshopPort }) {
  const words = useWords();
  const { workshop: say } = words;
  const { drafts, openKey, shipped, draft, refused } = port;
  const input = useRef<HTMLInputElement>(null);
  const [asking, setAsking] = useState(false);
  const nameOf = ({ code, title }: typeof draft): string => say.named(code, title === '' ? say.untitled : title);
  return (
    <div class="draft-bar">
      <label class="desk-field">
        <span class="l">{say.drafts}</span>
        <select value={openKey} onChange={({ currentTarget: { value } }) => port.choose(value)}>
          {drafts.map(({ key, draft: one }) => (
            <option key={key} value={key}>
              {nameOf(one)}
            </option>
          ))}
        </select>
      </label>
      <Button onClick={port.addNew}>{say.newDraft}</Button>
      <label class="desk-field">
        <span class="l">{say.copyOf}</span>
        <select
          value=""
          onChange={({ currentTarget }) => {
            const { value } = currentTarget;
            currentTarget.value = '';
            if (value !== '') port.duplicate(value);
          }}
        >
          <option value="">{say.chooseShipped}</option>
          {shipped.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <Button onClick={() => input.current?.click()}>{say.openFile}</Button>
      <FilesField innerRef={input} accept=".json,application/json" multiple onFiles={port.openFiles} />
      <Button label={say.saveLong(`${draft.id}.json`)} onClick={port.saveFile}>
        {say.saveFile}
      </Button>
      <Button onClick={() => setAsking(true)}>{say.removeDraft}</Button>
      <p class="desk-what">{say.what}</p>
      {refused.length === 0 ? null : (
        <div class="desk-brought" role="alert">
          {refused.map(({ file, problems }, i) => (
            <Fragment key={i}>
              <p>{say.brought(file)}</p>
              <ul>
                {problems.map((problem) => (
                  <li key={problemSentence(words, problem)}>{problemSentence(words, problem)}</li>
                ))}
              </ul>
            </Fragment>
          ))}
        </div>
      )}
      {asking ? (
        <DiscardQuestion
          name={nameOf(draft)}
          onDiscard={() => {
            setAsking(false);
            port.remove(openKey);
          }}
          onKeep={() => setAsking(false)}
        />
      ) : null}
    </div>
  );
}

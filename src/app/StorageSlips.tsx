/** What the store has to tell, as slips of paper: trouble with the storage, and what was set aside. Each stays until it is dismissed. */
import { useEffect, useReducer, useState } from 'preact/hooks';
import { useFirstWords } from '../kit/hooks/useWords.ts';
import { Slip, SlipStack } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import type { Aside } from '../services/store/keptRuns.ts';
import type { Logbook, StorageTrouble } from '../services/store/logbook.ts';
import { download } from './download.ts';
import type { Dismissed } from './roomProps.ts';

export interface StorageSlipsProps {
  readonly logbook: Logbook;
  readonly dismissed: Dismissed;
  /** only what was set aside of this scenario is told; left out: everything is */
  readonly scenarioId?: string;
  /** the browser cannot tell tabs apart, and this is a bench */
  readonly unguarded?: boolean;
  /** over the page, or in it */
  readonly over?: boolean;
  /** the page says itself what the trouble means for it */
  readonly saidAlready?: boolean;
}

export function StorageSlips(props: StorageSlipsProps) {
  const { logbook, dismissed, scenarioId, unguarded = false, over = false, saidAlready = false } = props;
  const words = useFirstWords().store;
  const [, redraw] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => logbook.subscribe(() => redraw()), [logbook]);
  const dismiss = (...all: readonly string[]): void => {
    for (const what of all) dismissed.add(what);
    redraw();
  };
  const trouble = logbook.trouble();
  // A trouble that has passed and comes again is told again.
  for (const what of dismissed) if (isTrouble(what) && what !== troubleKey(trouble)) dismissed.delete(what);
  const asides = logbook
    .asides()
    .filter((one) => !dismissed.has(one.id) && (scenarioId === undefined || one.scenarioId === scenarioId));
  const slips = [
    ...(trouble === null || saidAlready || dismissed.has(troubleKey(trouble))
      ? []
      : [
          <TroubleSlip
            key="trouble"
            trouble={trouble}
            logbook={logbook}
            dismiss={() => dismiss(troubleKey(trouble))}
          />,
        ]),
    ...byReason(asides).map((some) => (
      <AsideSlip
        key={some[0]!.reason}
        some={some}
        logbook={logbook}
        dismiss={() => dismiss(...some.map(({ id }) => id))}
      />
    )),
    ...(!unguarded || dismissed.has('unguarded')
      ? []
      : [
          <Slip key="unguarded" buttons={<Button onClick={() => dismiss('unguarded')}>{words.seen}</Button>}>
            <p>{words.unguarded}</p>
          </Slip>,
        ]),
  ];
  if (slips.length === 0) return null;
  return over ? <SlipStack name={words.notices}>{slips}</SlipStack> : slips;
}

/** A room whose run is still being read: empty, but for what keeps it from being read. */
export function Reading(props: Pick<StorageSlipsProps, 'logbook' | 'dismissed'>) {
  return (
    <>
      <main aria-busy="true" />
      <StorageSlips {...props} over />
    </>
  );
}

interface Dismissible {
  readonly logbook: Logbook;
  readonly dismiss: () => void;
}

function TroubleSlip({ trouble, logbook, dismiss }: Dismissible & { readonly trouble: StorageTrouble }) {
  const words = useFirstWords().store;
  const again = trouble === 'full' || trouble === 'failing';
  return (
    <Slip
      urgent
      buttons={
        <>
          {again ? <Button onClick={() => void logbook.storeAgain()}>{words.tryAgain}</Button> : null}
          {trouble === 'outdated' ? <Button onClick={() => location.reload()}>{words.reload}</Button> : null}
          <Button onClick={dismiss}>{words.seen}</Button>
        </>
      }
    >
      <p>{words.trouble[trouble]}</p>
    </Slip>
  );
}

/** Things set aside for one reason. They can be removed only once they have been saved. */
function AsideSlip({ some, logbook, dismiss }: Dismissible & { readonly some: readonly Aside[] }) {
  const words = useFirstWords().store;
  const [saved, setSaved] = useState<readonly string[]>([]);
  const save = (): void => {
    const name = some.length === 1 ? (some[0]!.scenarioId ?? 'record') : 'records';
    download(`haystack-${name}-set-aside.json`, asideFile(some));
    setSaved(some.map(({ id }) => id));
  };
  const remove = (): void => {
    for (const { id } of some) void logbook.dropAside(id);
  };
  return (
    <Slip
      buttons={
        <>
          <Button onClick={save}>{words.saveAside(some.length)}</Button>
          {some.every(({ id }) => saved.includes(id)) ? <Button onClick={remove}>{words.removeAside}</Button> : null}
          <Button onClick={dismiss}>{words.seen}</Button>
        </>
      }
    >
      <p>{words.aside[some[0]!.reason](some.length)}</p>
    </Slip>
  );
}

function byReason(asides: readonly Aside[]): readonly (readonly Aside[])[] {
  const groups = new Map<Aside['reason'], Aside[]>();
  for (const one of asides) groups.set(one.reason, [...(groups.get(one.reason) ?? []), one]);
  return [...groups.values()];
}

/** One thing as it is; several as a list of texts. */
function asideFile(some: readonly Aside[]): string {
  return some.length === 1 ? some[0]!.text : JSON.stringify(some, null, 1);
}

const TROUBLE = 'trouble ';
const troubleKey = (trouble: StorageTrouble | null): string => `${TROUBLE}${trouble ?? 'none'}`;
const isTrouble = (what: string): boolean => what.startsWith(TROUBLE);

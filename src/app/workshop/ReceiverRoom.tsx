/** The workshop's place for receivers of one's own: reads what is brought, keeps the receiver in the making, and saves what is whole. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Problem } from '../../base/result.ts';
import { problemSentence } from '../../describe/problem.ts';
import type { ReceiverPair } from '../../files/readReceiverPair.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { beginWithBoth, beginWithDeck, withDeckText } from '../../making/begin.ts';
import { followDeck } from '../../making/edits.ts';
import { EXAMPLE_DECK, EXAMPLE_NAME } from '../../making/exampleDeck.ts';
import { type Slack, slackOf } from '../../making/slack.ts';
import { type Making, problemsLeft, type Standing, savedFiles, standingOf } from '../../making/standing.ts';
import type { Draft } from '../../making/wholeReceiver.ts';
import { ReceiverPage } from '../../rooms/workshop/receiver/ReceiverPage.tsx';
import type { ReceiverPort } from '../../rooms/workshop/receiver/receiverPort.ts';
import { pageOwnReceivers } from '../../services/library/pageOwnReceivers.ts';
import { SHIPPED_RECEIVERS } from '../../services/library/shippedTexts.ts';
import type { OwnReceivers } from '../../services/store/ownReceivers.ts';
import { download } from '../download.ts';
import type { RoomProps } from '../roomProps.ts';
import { useRoomLinks } from '../useRoomLinks.ts';
import { readBrought } from './broughtReceiver.ts';
import { createReceiverDesk, type ReceiverDesk } from './receiverDesk.ts';
import { deskPlace, useDesk } from './useDesk.ts';
import { useBroughtReceivers, useOwnReceivers } from './useOwnReceivers.ts';

/** Changes come in a row while somebody types or drags; the checks that solve the whole design wait for the last. */
const CHECK_AFTER_MS = 200;

/** Stays while the page does, so that a look into another room costs no step of undo. */
let desk: ReceiverDesk | null = null;

function openDesk(): ReceiverDesk {
  desk ??= createReceiverDesk(deskPlace('receiverDraft'));
  return desk;
}

interface Checked {
  readonly of: Standing;
  readonly left: readonly Problem[];
  readonly slack: Slack | null;
}

export default function ReceiverRoom({ logbook, go }: RoomProps) {
  const words = useWords();
  const links = useRoomLinks('workshop', { logbook, go });
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [told, setTold] = useState<string | null>(null);
  const [keptId, setKeptId] = useState<string | null>(null);
  const kept = useOwnReceivers();
  const brought = useBroughtReceivers();
  const [checked, setChecked] = useState<Checked | null>(null);
  const desk = useMemo(openDesk, []);
  useDesk(desk);
  const open = desk.open();
  const making = open?.history.now ?? null;
  const standing = useMemo(() => (making === null ? null : standingOf(making, words.maker)), [making, words]);
  useEffect(() => {
    if (making === null || standing === null) return;
    const timer = setTimeout(
      () => setChecked({ of: standing, left: problemsLeft(making, standing, words.maker), slack: slackIn(standing) }),
      CHECK_AFTER_MS,
    );
    return () => clearTimeout(timer);
  }, [standing]);
  const begin = (next: Making): void => {
    setRefused([]);
    setTold(null);
    desk.begin(next);
  };
  const openPair = (of: (shelf: OwnReceivers) => Promise<ReceiverPair | null>): void => {
    void pageOwnReceivers()
      .then(of)
      .then((pair) => {
        const both = pair === null ? null : beginWithBoth(pair.deck, pair.receiver);
        if (both?.ok) begin(both.value);
        else if (both !== null) setRefused(both.problems.map((problem) => problemSentence(words, problem)));
      });
  };
  const dropped = (name: string, drop: (shelf: OwnReceivers) => Promise<void>): void => {
    void pageOwnReceivers()
      .then(drop)
      .then(() => setTold(words.ownReceiver.save.dropped(name)));
  };
  const now = checked !== null && checked.of === standing ? checked : null;
  const made = standing?.made?.ok ? standing.made.value : null;
  const canSave = now !== null && now.left.length === 0 && made !== null;
  const port: ReceiverPort = {
    ...{ making, standing, refused, kept, brought, told, canSave },
    scenarioOn:
      keptId === null || keptId !== made?.receiver.id ? null : () => go({ page: 'workshop', place: null, on: keptId }),
    left: now?.left ?? null,
    makings: desk.all().map(({ key, history }) => ({ key, name: nameOf(history.now) })),
    openKey: open?.key ?? null,
    isKept: desk.isKept(),
    undoSteps: open?.history.past.length ?? 0,
    redoSteps: open?.history.future.length ?? 0,
    slack: now?.slack ?? null,
    bring: (files) => {
      void readBrought(words, files).then((read) => {
        if ('refused' in read) setRefused(read.refused);
        else if (read.receiver === null) begin(beginWithDeck(read.deck, words.maker));
        else {
          const both = beginWithBoth(read.deck, read.receiver);
          if (both.ok) begin(both.value);
          else setRefused(both.problems.map((problem) => problemSentence(words, problem)));
        }
      });
    },
    beginExample: () => begin(beginWithDeck({ file: EXAMPLE_NAME, text: EXAMPLE_DECK }, words.maker)),
    openKept: (id) => openPair((shelf) => shelf.texts(id)),
    openBrought: (id, hash) => openPair((shelf) => shelf.textsOf(id, hash)),
    dropKept: (id) => dropped(kept.find((one) => one.id === id)?.setName ?? id, (shelf) => shelf.drop(id)),
    dropBrought: (id, hash) =>
      dropped(brought.find((one) => one.hash === hash)?.setName ?? id, (shelf) => shelf.dropBrought(hash)),
    clear: () => {
      setRefused([]);
      setTold(null);
      desk.choose(null);
    },
    deckText: (text) => {
      if (making === null || standing === null) return;
      const next = withDeckText(making, text, words.maker);
      const read = standingOf(next, words.maker).deck;
      const before = standing.deck.ok ? standing.deck.value : null;
      desk.change(read.ok ? { ...next, draft: followDeck(next.draft, before, read.value) } : next);
    },
    change: (draft: Draft, mark) => {
      if (making === null) return;
      setTold(null);
      desk.change({ ...making, draft }, mark ?? null);
    },
    undo: desk.undo,
    redo: desk.redo,
    choose: (key) => {
      setRefused([]);
      setTold(null);
      desk.choose(key);
    },
    discard: desk.remove,
    saveDeck: () => {
      if (making !== null && made !== null) save(savedFiles(making, made).deck, 'text/plain');
    },
    saveReceiver: () => {
      if (making !== null && made !== null) save(savedFiles(making, made).receiver, 'application/json');
    },
    keep: () => {
      if (making === null || made === null) return;
      const say = words.ownReceiver.save;
      const { id, setName } = made.receiver;
      if (SHIPPED_RECEIVERS.has(id)) {
        setTold(say.taken(id));
        return;
      }
      pageOwnReceivers()
        .then((shelf) => shelf.keep(savedFiles(making, made)))
        .then(
          (read) => {
            setTold(read.ok ? say.kept(setName) : say.notKept);
            setKeptId(read.ok ? id : null);
          },
          () => setTold(say.notKept),
        );
    },
  };
  return <ReceiverPage links={links} onPlace={(place) => go({ page: 'workshop', place })} port={port} />;
}

const nameOf = ({ draft }: Making): string => (typeof draft.setName === 'string' ? draft.setName : String(draft.id));

function slackIn({ deck, made }: Standing): Slack | null {
  if (!deck.ok || made === null || !made.ok) return null;
  const response = made.value.receiver.responses[0];
  return response === undefined ? null : slackOf(made.value.receiver, deck.value, response);
}

function save({ file, text }: { readonly file: string; readonly text: string }, type: string): void {
  download(file, new Blob([text], { type }));
}

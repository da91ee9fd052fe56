/** What a link brings: a scenario that is looked at like any file, told of, and opened only when the user says so. */
import { useEffect, useState } from 'preact/hooks';
import { harmless } from '../base/harmless.ts';
import { useWords } from '../kit/hooks/useWords.ts';
import { SlipPage } from '../kit/slips/Slip.tsx';
import { Told } from '../kit/Told.tsx';
import { Button, Frac } from '../kit/theme/art.tsx';
import { toldPar } from '../scenario/par.ts';
import { scenarioIn } from '../scenario/scenarioIn.ts';
import { textOfLink } from '../services/handing/scenarioLink.ts';
import { pageJobs } from '../services/jobs/pageJobs.ts';
import { type HandedScenario, readHanded } from '../services/library/ownReading.ts';
import type { OwnCertificate } from '../services/store/ownScenario.ts';
import type { RoomProps } from './roomProps.ts';
import { certifyHanded, reasonsOf, surroundingsOf, takeText } from './takeFiles.ts';

export type OpenRoomProps = RoomProps & { readonly data: string };

type Arrived =
  | { readonly kind: 'refused'; readonly reasons: readonly string[] }
  | { readonly kind: 'read'; readonly handed: HandedScenario; readonly text: string };

export default function OpenRoom({ data, library, own: shelf, go }: OpenRoomProps) {
  const words = useWords();
  const { shell, store, course } = words;
  const say = course.own.link;
  const [arrived, setArrived] = useState<Arrived | null>(null);
  const [reasons, setReasons] = useState<readonly string[]>([]);
  const [busy, setBusy] = useState(false);
  const [certificate, setCertificate] = useState<OwnCertificate | 'notHere' | null>(null);
  useEffect(() => {
    let here = true;
    const calledOff = new AbortController();
    const arrive = async (): Promise<void> => {
      const text = await textOfLink(data, say.name);
      const handed = text.ok ? await readHanded(text.value, say.name, surroundingsOf(library)) : text;
      if (!here) return;
      if (!handed.ok || !text.ok) {
        setArrived({ kind: 'refused', reasons: handed.ok ? [] : reasonsOf(words, handed.problems) });
        return;
      }
      setArrived({ kind: 'read', handed: handed.value, text: text.value });
      const { signal } = calledOff;
      const tried = await certifyHanded(handed.value, pageJobs(), { signal }).catch(() => null);
      if (here) setCertificate(tried ?? 'notHere');
    };
    void arrive();
    return () => {
      here = false;
      calledOff.abort();
    };
  }, [data]);
  const toCourse = <Button onClick={() => go({ page: 'course' })}>{store.toCourse}</Button>;
  if (arrived === null) return <SlipPage product={shell.product} title={say.reading} busy />;
  const refused = arrived.kind === 'refused' ? arrived.reasons : reasons;
  if (arrived.kind === 'refused' || refused.length > 0)
    return (
      <SlipPage product={shell.product} title={say.refused} buttons={toCourse}>
        <ul class="slip-said">
          {refused.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      </SlipPage>
    );
  const { scenario, design } = arrived.handed;
  const told = scenarioIn(words.language, scenario);
  const take = async (then: () => void): Promise<void> => {
    setBusy(true);
    const taken = await takeText(library, shelf, arrived.text, say.name);
    setBusy(false);
    if (!taken.ok) {
      setReasons(reasonsOf(words, taken.problems));
      return;
    }
    if (certificate !== null && certificate !== 'notHere') await shelf.put({ ...taken.value, certificate });
    then();
  };
  return (
    <SlipPage
      product={shell.product}
      title={say.title}
      busy={busy}
      buttons={
        <>
          <Button
            primary
            disabled={busy}
            onClick={() => void take(() => go({ page: 'bench', scenarioId: scenario.id }))}
          >
            {say.toBench}
          </Button>
          <Button disabled={busy} onClick={() => void take(() => go({ page: 'course' }))}>
            {say.keep}
          </Button>
          {toCourse}
        </>
      }
    >
      <dl class="slip-facts">
        <dt>{say.scenario}</dt>
        <dd>
          {scenario.code} <Told of={told}>{harmless(told.title)}</Told>
        </dd>
        <dt>{say.set}</dt>
        <dd>{harmless(design.receiver.setName)}</dd>
        <dt>{say.author}</dt>
        <dd>{scenario.author === undefined ? say.noAuthor : <bdi>{harmless(scenario.author)}</bdi>}</dd>
        <dt>{say.certificate}</dt>
        <dd>
          <span role="status">
            <Frac>{certificateLine(words, certificate, scenario.sealed)}</Frac>
          </span>
        </dd>
      </dl>
      <p>{say.note}</p>
    </SlipPage>
  );
}

function certificateLine(
  { course }: ReturnType<typeof useWords>,
  certificate: OwnCertificate | 'notHere' | null,
  sealed: boolean,
): string {
  const say = course.own.link;
  if (certificate === null) return say.certifying;
  if (certificate === 'notHere') return say.notHere;
  if (certificate.kind === 'refused') return say.notCertified;
  const par = toldPar({ sealed, par: certificate.par });
  return say.certified(par === null ? null : course.par(course.turns(par.turns), course.minutes(par.seconds)));
}

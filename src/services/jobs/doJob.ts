/** Each job as a plain function: what a worker does, and what a test can do without one. */
import { problemLine } from '../../base/result.ts';
import { attemptSetup, firstIdea } from '../../certify/attempt.ts';
import { benchSetup } from '../../certify/benchSetup.ts';
import { withPar } from '../../certify/certifiedPar.ts';
import { certifyScenario } from '../../certify/certifyScenario.ts';
import { endlessScenario, IDEAS_OF_SEED } from '../../certify/endless.ts';
import type { KnownSet } from '../../certify/knownSet.ts';
import type { LoadedReceiver, ScenarioFolder } from '../../files/library.ts';
import { createWorkedOut, designIn, heldOnOwn } from '../../judge/handedOut.ts';
import { heldAgainst } from '../../judge/heldAgainst.ts';
import { judgedOf } from '../../judge/judged.ts';
import { judgeRun, readToJudge } from '../../judge/judgeRun.ts';
import type { OwnText, OwnVersion } from '../../judge/ownHeld.ts';
import { readEndlessId } from '../../scenario/endlessId.ts';
import type { Par } from '../../scenario/par.ts';
import { nearestThatCertifies } from '../../workshop/nearest.ts';
import type { JobName, JobTable, OnShare, Order, Outcome } from './jobTable.ts';
import { PLAIN_JOBS, shownRun } from './plainJobs.ts';

/** What the jobs know of the world. The library is asked for only by those that need it. */
export interface JobWorld {
  readonly library: () => Promise<ScenarioFolder>;
  /** the set that the certificate of a shipped scenario knows */
  readonly knownSet: (scenarioId: string) => Promise<KnownSet | null>;
  /** and the par */
  readonly par: (scenarioId: string) => Promise<Par | null>;
  /** the versions of a scenario of the user's own, by its id; left out: there are none */
  readonly own?: (scenarioId: string) => Promise<readonly OwnOnShelf[]>;
  /** a receiver of the user's own, by its id, and by its hash where the very one is known; left out: there are none */
  readonly ownReceiver?: (receiverId: string, hash?: string) => Promise<LoadedReceiver | null>;
}

export interface OwnOnShelf extends OwnText {
  /** of the receiver that a sheet brought with it */
  readonly receiverHash?: string | undefined;
}

/** Whatever stands on one's own scenarios and receivers: the same for every run of a class. */
const WORKED_OUT = createWorkedOut();

type Job<N extends JobName> = (order: Order<N>, world: JobWorld, onShare: OnShare) => Promise<Outcome<N>>;

const JOBS: { readonly [N in keyof JobTable]: Job<N> } = {
  async endless({ id }, { library }, onShare) {
    const { receivers } = await library();
    return endlessScenario(receivers, id, (idea) => onShare(idea / IDEAS_OF_SEED));
  },
  async certify({ scenario, design }, { library, ownReceiver }, onShare) {
    const loaded =
      design ?? (await library()).receivers.get(scenario.receiver) ?? (await ownReceiver?.(scenario.receiver)) ?? null;
    if (loaded === null) throw new Error(`no receiver ${scenario.receiver}`);
    const setup = benchSetup(loaded, scenario);
    if (!setup.ok) throw new Error(setup.problems.map(problemLine).join('\n'));
    return certifyScenario(setup.value, { onShare });
  },
  nearest: async ({ draft, problems, design }, _world, onShare) =>
    nearestThatCertifies(draft, problems, design, onShare),
  setUp: async (order) => PLAIN_JOBS.setUp(order),
  attempt: async ({ design, scenario, attempt }, _world, onShare) => attemptSetup(design, scenario, attempt, onShare),
  ideas: async ({ design, scenario, attempt, first, step }, _world, onShare) =>
    firstIdea(design, scenario, attempt, { first, step, onShare }),
  grade: async (order) => PLAIN_JOBS.grade(order),
  demonstrate: async ({ setup }, _world, onShare) => shownRun(setup, onShare),
  drill: async (order) => PLAIN_JOBS.drill(order),
  report: async (order) => PLAIN_JOBS.report(order),
  async judge({ text, file, handedOut = [] }, { library, knownSet, par, own: ownOf, ownReceiver }) {
    const run = readToJudge(text, file);
    if (!run.ok) return judgedOf(run.judgement);
    const { receivers, scenarios } = await library();
    const known = await knownSet(run.value.scenario.id);
    const certified = await par(run.value.scenario.id);
    const named = run.value.scenario.receiver;
    const designOf = async (hash?: string): Promise<LoadedReceiver | null> =>
      receivers.get(named) ?? (await ownReceiver?.(named, hash)) ?? null;
    const ownDesign = await designOf(run.value.receiverHash);
    const versions: OwnVersion[] = [];
    for (const one of (await ownOf?.(run.value.scenario.id)) ?? []) {
      // It is held against the receiver that it was handed out on, not against any that bears its name.
      const design = await designOf(one.receiverHash);
      if (design !== null) versions.push({ ...one, design });
    }
    for (const one of handedOut) {
      if (one.id !== run.value.scenario.id) continue;
      const design = one.receiver === null ? await designOf() : designIn(one.receiver, WORKED_OUT);
      if (design !== null) versions.push({ text: one.text, par: null, design });
    }
    const judgement = judgeRun(run.value, file, (scenario) => {
      const shipped = scenarios.find((one) => one.id === scenario.id);
      const own =
        (shipped && withPar(shipped, certified)) ??
        (readEndlessId(scenario.id) === null ? null : endlessScenario(receivers, scenario.id));
      const held = own === null && versions.length > 0 ? heldOnOwn(versions, scenario, WORKED_OUT) : null;
      if (held !== null) return { ok: true, value: held };
      return ownDesign === null ? null : { ok: true, value: heldAgainst(ownDesign, own, scenario, known) };
    });
    return judgedOf(judgement);
  },
};

/** Does a job. What it throws is a programmer's error. */
export async function doJob<N extends JobName>(
  name: N,
  order: Order<N>,
  world: JobWorld,
  onShare: OnShare = () => {},
): Promise<Outcome<N>> {
  const job: Job<N> = JOBS[name];
  const outcome = await job(order, world, onShare);
  onShare(1);
  return outcome;
}

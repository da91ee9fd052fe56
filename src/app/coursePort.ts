/** Feeds the course page: cards with their solved curves, best scores and what lies open on the bench. */
import { firstResponse, initialState } from '../bench/setup.ts';
import { relativeTo } from '../bench/truth.ts';
import type { Library } from '../files/library.ts';
import type { CourseCard, CoursePort } from '../present/ports.ts';
import type { ResponseCurve } from '../receiver/curveReading.ts';
import type { Specification } from '../receiver/receiver.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { endlessId } from '../scenario/endlessId.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { setupFor } from '../services/library/shippedLibrary.ts';
import type { Logbook } from '../services/store/logbook.ts';

/** Points of a card's curve: enough for a thumbnail and for the figure on the sheet. */
const CURVE_POINTS = 161;

type Curve = CourseCard['start'];

export function createCoursePort(library: Library, logbook: Logbook, open: (scenarioId: string) => void): CoursePort {
  const curves = new Map<string, { readonly start: Curve; readonly wanted: Curve }>();
  const curvesOf = (scenario: Scenario): { readonly start: Curve; readonly wanted: Curve } => {
    const known = curves.get(scenario.id);
    if (known !== undefined) return known;
    const made = solveCurves(library, scenario);
    curves.set(scenario.id, made);
    return made;
  };
  return {
    cards() {
      const kept = logbook.keptRuns();
      const onBench = new Map(logbook.openRuns().map((run) => [run.scenarioId, run]));
      const passed = new Set(kept.filter((run) => run.passed).map((run) => run.scenarioId));
      return library.scenarios.map((scenario) => {
        const totals = kept.filter((run) => run.scenarioId === scenario.id).map((run) => run.total);
        const open = onBench.get(scenario.id);
        return {
          scenario,
          receiverName: library.receivers.get(scenario.receiver)?.receiver.setName ?? scenario.receiver,
          ...curvesOf(scenario),
          best: totals.length === 0 ? null : Math.max(...totals),
          onBench: open === undefined ? null : { turns: open.turns, seconds: open.elapsedMs / 1000 },
          early: totals.length === 0 && open === undefined && scenario.after.some((id) => !passed.has(id)),
        };
      });
    },
    open,
    newSeed: () => crypto.randomUUID().slice(0, 6),
    openEndless: (difficulty, seed) => open(endlessId(difficulty, seed)),
    subscribe: (listener) => logbook.subscribe(listener),
  };
}

function solveCurves(library: Library, scenario: Scenario): { readonly start: Curve; readonly wanted: Curve } {
  const setup = setupFor(library, scenario);
  if (setup === null) throw new Error(`no receiver ${scenario.receiver}`);
  const response = firstResponse(setup);
  const { fromHz, toHz } = response.specification;
  const hz = Float64Array.from({ length: CURVE_POINTS }, (_, i) => fromHz + ((toHz - fromHz) * i) / (CURVE_POINTS - 1));
  const stated = createStatedResponse(setup.receiver, setup.deck, response, hz);
  const cores: Record<string, number> = {};
  for (const [id, slug] of Object.entries(initialState(setup).slugs)) cores[id] = slug.coreTurns;
  const wanted = relative(stated.nominal, response.specification);
  return { start: relative(stated.solve(cores), response.specification), wanted };
}

function relative(curve: ResponseCurve, spec: Specification): Curve {
  return { hz: Float64Array.from(curve.hz), relative: relativeTo(curve, spec) };
}

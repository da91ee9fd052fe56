/** What is lit in practice: done at the lit part, each thing that is missing of the connections goes, the earth strap first as the sheets have it. The sheet of the scenario itself; no other source. */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import { initialState } from '../../src/bench/setup.ts';
import { spotOfMissing } from '../../src/present/liveSpot.ts';
import type { MissingCode } from '../../src/session/missing.ts';
import { createSession } from '../../src/session/session.ts';
import { stateAfter } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

const setup = setupOf('off-centre');
const bench = createBench(setup);

describe('the part that is lit in practice', () => {
  it('is the lead and the point, or the switch, that the step is waiting for', () => {
    let state = stateAfter(setup, [{ type: 'cautionsAcknowledged' }], initialState(setup));
    const lit: string[] = [];
    for (let act = 0; act < 12; act++) {
      const facts = bench.facts(state);
      const session = createSession(setup);
      session.send({ type: 'BEGIN' });
      session.send({ type: 'FACTS', facts, atSeconds: state.seconds, slugs: null, findings: {} });
      const [code] = session.view().missing.connect;
      if (code === undefined) break;
      const spot = spotOfMissing(setup, facts, code as MissingCode);
      lit.push(spot?.kind === 'lead' ? spot.lead : spot?.kind === 'control' ? spot.control : code);
      if (spot?.kind === 'lead')
        state = stateAfter(setup, [{ type: 'leadConnected', lead: spot.lead, to: spot.to }], state);
      else if (spot?.kind === 'control') {
        const value = spot.control === 'yTip' ? 'probe' : true;
        state = stateAfter(setup, [{ type: 'controlSet', control: spot.control, value }], state);
      }
    }
    expect(lit).toEqual(['earth', 'rf', 'rfTerminated', 'rfCapacitor', 'y', 'yTip', 'x']);
  });

  it('is the first crystal that is missing, and nothing where no one part is meant', () => {
    const facts = bench.facts(initialState(setup));
    expect(facts.markersMissingHz.length).toBeGreaterThan(1);
    expect(spotOfMissing(setup, facts, 'markersMissing')).toEqual({ kind: 'crystal', hz: facts.markersMissingHz[0] });
    expect(spotOfMissing(setup, facts, 'notIsolated')).toEqual({ kind: 'isolation' });
    expect(spotOfMissing(setup, facts, 'linesOutside')).toBeNull();
    expect(spotOfMissing(setup, facts, 'levelNotSaid')).toBeNull();
  });
});

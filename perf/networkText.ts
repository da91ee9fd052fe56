/** Writes an assembled network as the plain numbers that perf/solve.c reads. */

import type { Solver } from '../src/physics/solver.ts';

export function networkText(solver: Solver, repeats: number): string {
  const { system, network, hz } = solver;
  const words: (number | string)[] = [system.plans.length, hz.length, repeats, ...hz];
  for (const [b, plan] of system.plans.entries()) {
    const n = plan.nodes.length;
    const [g, c, l] = [new Float64Array(n * n), new Float64Array(n * n), new Float64Array(n * n)];
    system.assemble(b, g, c, l);
    words.push(n, plan.places.length, plan.inputs.length, ...plan.nodes);
    words.push(...plan.places.map((place) => place.plus), ...plan.places.map((place) => place.minus));
    for (const input of plan.inputs) {
      const value = system.values[input.element]!;
      const phase = ((network.elements[input.element]?.phaseDegrees ?? 0) * Math.PI) / 180;
      const [re, im] = input.kind === 'I' ? [value * Math.cos(phase), value * Math.sin(phase)] : [value, 0];
      words.push(input.place, input.kind === 'I' ? 0 : 1, input.controlPlus, input.controlMinus, re, im);
    }
    words.push(...g, ...c, ...l);
  }
  return words.join(' ');
}

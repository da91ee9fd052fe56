/**
 * Versions of everything that decides what the bench shows; run files carry theirs and are done again by it (`src/bench/benchModel.ts`). 0.4.0: the Y lead's resistor draws of the carrier
 * that is left on a detector's load; under a fast sweep both loads of an FM detector charge as they do; a narrow set
 * under a sweep of too many lines is reckoned exactly. 0.5.0: either diode of an FM detector has
 * the circuit, the load and the leak of its own end, and goes by what the other's pulses leave of its crest; its loads charge under every sweep. 0.6.0: a sweep that hurries
 * the circuits before an FM detector is reckoned with limiters and loads as they stand at the moment. 0.7.0: the probe's diode has the pulses of its own current on its load and on the
 * circuit that it rests on.
 */
export const ENGINES = ['0.3.0', '0.4.0', '0.5.0', '0.6.0', '0.7.0'] as const;
export type Engine = (typeof ENGINES)[number];
export const ENGINE: Engine = '0.7.0';
/** The bench on which numbers and names are dealt, and scenarios certified: they have been handed out, and are to go on meaning the same. */
export const DEALS_ON: Engine = '0.6.0';
/** Of everything that decides which set a number deals, and what a certificate says of it; certificates carry it. */
export const CERTIFYING = '0.3.0';

/**
 * Of the rules that runs are graded by: 1, a pass was a number of points; 2, four verdicts, and the points beside them; 3, what was wrong is to be said at signing; 4, no capacitor is
 * left clipped across a part, and a good part that is replaced in a sealed job costs care too; 5, on a set that may be live the earth strap goes on before the other leads; 6, a proof is read
 * where the card asks and on a picture that can be read, and two turns are free where par has fewer; 7, in a sealed job that picture covers the band, stands three divisions tall and is
 * halved when it is halved, and hum stands two; in practice, too, it can be read.
 */
export const RULES_VERSIONS = [1, 2, 3, 4, 5, 6, 7] as const;
export type RulesVersion = (typeof RULES_VERSIONS)[number];
/** The rules of today; run files carry it beside the engine's. */
export const RULES_VERSION: RulesVersion = 7;

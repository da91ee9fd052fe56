/** The version of everything that decides a curve or a score; run files and certificates carry it. */

/** The version of the rules that points are given by; run files carry it beside the engine's. */
export const RULES_VERSION = 1;
export const ENGINE = '0.3.0';

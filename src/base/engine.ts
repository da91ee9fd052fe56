/** The version of everything that decides a curve or a score; run files and certificates carry it. */
export const ENGINE = '0.3.0';

/** The version of the rules that points are given by; run files carry it beside the engine's. */
export const RULES_VERSION = 1;

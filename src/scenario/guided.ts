/** The scenario that the guide through a first bench goes through. */
export const GUIDED_SCENARIO = 'first-curve';

/** The places of the workshop beside the desk for scenarios, and which of all there is something to be seen at. */

export type WorkshopPlace = 'receiver' | 'evening';

/** In their order; null: the desk for scenarios. A place that is not named here has no tab. */
export const OPEN_PLACES: readonly (WorkshopPlace | null)[] = [null, 'receiver', 'evening'];

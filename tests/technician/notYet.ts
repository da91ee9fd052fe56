/**
 * Scenarios that are certified, by a hand that knows the set, but that the technician, who sees only tube, meter and dials, does not bring inside every limit yet. Each name
 * is a fault of the technician's eye or patience, not of the scenario as far as is known. `scripts/certify-course.ts` also fails where one of these is passed.
 */
export const NOT_YET: ReadonlySet<string> = new Set<string>();

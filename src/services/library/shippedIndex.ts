/**
 * The entries of the scenarios that come with the page. The text of this file never reaches the page: whoever builds or tests it makes the entries from the scenarios
 * folder and puts them in its place (scripts/vite/courseIndex.ts), so that no copy of them can grow old.
 */
export const SHIPPED_INDEX: unknown = [];

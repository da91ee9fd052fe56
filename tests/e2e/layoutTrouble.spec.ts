/** What is met seldom lies as well as what is met every day: rooms that fail, benches in two tabs, no storage, sealed reports, paper; in the same sizes and languages as every room. */
import { layoutFaults } from './layoutFaults.ts';
import { expect, test } from './page.ts';
import { visitFailures, visitNoStorage, visitPrints, visitSealedReport, visitTwoTabs } from './troubleVisits.ts';
import type { Look } from './visits.ts';

/** What keeps code or storage from a page stays in its window: that one is not handed on. */
const ROUNDS = {
  'a sealed report': { visit: visitSealedReport, sharesWindow: true },
  'rooms that fail': { visit: visitFailures, sharesWindow: false },
  'two tabs': { visit: visitTwoTabs, sharesWindow: true },
  'no storage': { visit: visitNoStorage, sharesWindow: false },
  paper: { visit: visitPrints, sharesWindow: true },
} as const;
/** What the browser complains of where code is kept from coming. */
const KEPT_AWAY = /ERR_FAILED|Failed to fetch dynamically imported module/;

for (const [language, search] of [
  ['in English', ''],
  ['in longer words', '?words=pseudo'],
] as const) {
  for (const [name, { visit, sharesWindow }] of Object.entries(ROUNDS))
    test.describe(() => {
      test.use({ sharesWindow });

      test(`${name} ${language}`, async ({ page, watch }) => {
        const places: string[] = [];
        const found: string[] = [];
        const look: Look = async (place, within, at) => {
          places.push(place);
          for (const { kind, what } of await at.evaluate(layoutFaults, within))
            found.push(`${place}: ${kind}: ${what}`);
        };
        await visit(page, search, look);
        expect(places.length).toBeGreaterThan(3);
        expect(found).toEqual([]);
        const others = watch.complaints.splice(0).filter((said) => name !== 'rooms that fail' || !KEPT_AWAY.test(said));
        expect(others).toEqual([]);
      });
    });
}

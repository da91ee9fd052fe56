/** Every room and state in every size of window: all text large enough and whole, nothing on anything else, every target large enough to hit; in English, and in made-up words that are longer. */

import { visitFindings, visitSigning } from './askedVisits.ts';
import { type LayoutFault, layoutFaults } from './layoutFaults.ts';
import { expect, test } from './page.ts';
import {
  type Look,
  visitBench,
  visitClass,
  visitCourse,
  visitDemonstration,
  visitDrills,
  visitEvening,
  visitHandbook,
  visitOwnReceiver,
  visitPapers,
  visitReport,
  visitStrip,
  visitWorkshop,
} from './visits.ts';

test.use({ sharesWindow: true });

const LANGUAGES = [
  ['in English', ''],
  ['in longer words', '?words=pseudo'],
] as const;
const ROUNDS = {
  course: visitCourse,
  report: visitReport,
  drills: visitDrills,
  handbook: visitHandbook,
  classroom: visitClass,
  workshop: visitWorkshop,
  bench: visitBench,
  strip: visitStrip,
  findings: visitFindings,
  signing: visitSigning,
  'own receiver': visitOwnReceiver,
  evening: visitEvening,
  papers: visitPapers,
  demonstration: visitDemonstration,
} as const;

for (const [language, search] of LANGUAGES) {
  for (const [name, visit] of Object.entries(ROUNDS)) {
    test(`${name} ${language}`, async ({ page }) => {
      const places: string[] = [];
      const found: string[] = [];
      const look: Look = async (place, within) => {
        places.push(place);
        for (const { kind, what } of await page.evaluate(layoutFaults, within))
          found.push(`${place}: ${kind}: ${what}`);
      };
      await visit(page, search, look);
      expect(places.length).toBeGreaterThan(3);
      expect(found).toEqual([]);
    });
  }
}

test('the layers of the style sheets come in their order in every room', async ({ page }) => {
  const order = () =>
    page.evaluate(() => {
      const rules = [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]);
      const names = rules.flatMap((rule) => {
        if (rule instanceof CSSLayerStatementRule) return [...rule.nameList];
        return rule instanceof CSSLayerBlockRule ? [rule.name] : [`unlayered ${rule.cssText.slice(0, 40)}`];
      });
      return [...new Set(names)];
    });
  for (const [address, there] of [
    ['/', '.card-open'],
    ['/#/bench/first-curve', 'dialog[open]'],
  ] as const) {
    await page.goto(address);
    await expect(page.locator(there).first()).toBeVisible();
    expect(await order()).toEqual(['tokens', 'kit', 'room']);
  }
});

test('each fault would be seen', async ({ page }) => {
  await page.goto('/');
  await expect(page.locator('.card-open').first()).toBeVisible();
  const planted: Readonly<Record<LayoutFault['kind'], string>> = {
    'small text': '<p style="font: 11px/16px serif">planted</p>',
    'small target': '<button style="width: 20px; height: 40px; padding: 0">x</button>',
    'cut text': '<p style="width: 40px; overflow: hidden; white-space: nowrap; font-size: 16px">planted and cut</p>',
    outside:
      '<svg width="60" height="30" style="overflow: visible; display: block"><text x="30" y="20" font-size="14">planted</text></svg>',
    overlap: '<p style="height: 0; font-size: 16px">planted</p><p style="font-size: 16px">planted too</p>',
    sideways: '<div style="width: calc(100vw + 40px); height: 4px"></div>',
  };
  for (const [kind, html] of Object.entries(planted)) {
    await page.evaluate((inside) => {
      const place = document.createElement('div');
      place.id = 'planted';
      // The page's policy lets no element bring a style; one that a script sets is allowed.
      place.innerHTML = inside.replaceAll(' style=', ' data-style=');
      for (const each of place.querySelectorAll<HTMLElement>('[data-style]')) each.style.cssText = each.dataset.style!;
      document.body.append(place);
    }, html);
    const kinds = (await page.evaluate(layoutFaults, '#planted')).map((fault) => fault.kind);
    expect([...new Set(kinds)], kind).toEqual([kind]);
    await page.evaluate(() => document.getElementById('planted')?.remove());
  }
});

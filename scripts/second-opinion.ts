/** Asks another search than the certifier's of every scenario whose failed part no slug may make good for. Run: `npx tsx scripts/second-opinion.ts`, or with the scenarios named; takes minutes. */
import { certificateOf, secondOpinion } from '../tests/certify/secondOpinion.ts';
import { shippedLibrary } from '../tests/files/shipped.ts';

const LOOKS = 6000;

const named = process.argv.slice(2);

for (const { id } of shippedLibrary().scenarios) {
  if (named.length > 0 && !named.includes(id)) continue;
  const { uncured } = certificateOf(id);
  if (uncured === null) continue;
  const least = secondOpinion(id, 1, LOOKS);
  console.log(
    `${id}: certificate ${uncured.excess}, second opinion ${least.toFixed(3)}${least > 0 ? '' : ': CAN BE MET'}`,
  );
  if (least <= 0) process.exitCode = 1;
}

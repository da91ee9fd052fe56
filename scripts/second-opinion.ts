/** Asks another search than the certifier's of every scenario whose failed part no slug may make good for. It leaves with an error where it meets a sheet, or comes nearer than a certificate says by more than a fiftieth of a tolerance. Run: `npx tsx scripts/second-opinion.ts`, or with the scenarios named; takes minutes. */
import { certificateOf, secondOpinion } from '../tests/certify/secondOpinion.ts';
import { shippedLibrary } from '../tests/files/shipped.ts';

const LOOKS = 6000;
/** Tolerances by which it may come lower. */
const BEATEN_BY = 0.02;

const named = process.argv.slice(2);

for (const { id } of shippedLibrary().scenarios) {
  if (named.length > 0 && !named.includes(id)) continue;
  const { uncured } = certificateOf(id);
  if (uncured === null) continue;
  const least = secondOpinion(id, 1, LOOKS);
  const told = least <= 0 ? ': CAN BE MET' : least < uncured.excess - BEATEN_BY ? ': NEARER' : '';
  console.log(`${id}: certificate ${uncured.excess}, second opinion ${least.toFixed(3)}${told}`);
  if (told !== '') process.exitCode = 1;
}

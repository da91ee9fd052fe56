/** Second page of the sheet: levels with their tolerances and what they look like on the tube, the other demands, the set-up, the crystals. */

import { useWords } from '../../../kit/hooks/useWords.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { type LevelReading, levelReading, type SheetFigures } from '../../../present/sheetFigures.ts';
import type { SheetResponse } from '../../../receiver/receiver.ts';
import type { Words } from '../../../words/words.ts';
import { AsFound } from './AsFound.tsx';

export function LevelsPage({ port, figures }: { readonly port: BenchPort; readonly figures: SheetFigures }) {
  const { setup } = port;
  const { rack: rackWords, sheet: sheetWords } = useWords();
  const { specification: spec, setUp } = figures.response;
  const s = spec.sCurve;
  const unit = rackWords.unit(setUp.centreHz);
  const demands = [
    ...spec.windows.map((w) => sheetWords.ripple(w.fromHz, w.toHz, w.maxRippleDb)),
    ...spec.tilts.map((t) => sheetWords.tilt(t.lowHz, t.highHz, t.maxDb)),
    ...spec.traps.map((t) => sheetWords.trap(t.hz, t.maxDb)),
    ...spec.skirts.map((s) => sheetWords.skirt(s.fromHz, s.toHz, s.max)),
    ...spec.peaks.map((p) =>
      p.oscillator === true ? sheetWords.oscillator(p.hz, p.toleranceHz) : sheetWords.peak(p.hz, p.toleranceHz),
    ),
    ...(s === null
      ? []
      : [
          sheetWords.zero(s.centreHz, s.zero.toleranceHz, s.risesWithFrequency),
          sheetWords.peaksApart(s.separation.minHz, s.separation.maxHz),
          sheetWords.evenPeaks(s.symmetry.low, s.symmetry.high),
          ...(s.linearity === null ? [] : [sheetWords.straight(s.linearity.withinHz, s.linearity.max)]),
        ]),
    ...spec.bandwidths.map((b) => sheetWords.bandwidth(b.levelDb, b.minHz, b.maxHz)),
    ...(spec.gain === null ? [] : [sheetWords.gain(spec.gain.hz, spec.gain.minDb)]),
  ];
  const level = levelReading(setup, figures);
  const wanted = new Set(setUp.markersHz);
  return (
    <>
      <h3>{sheetWords.levels}</h3>
      {figures.levels.length === 0 ? null : (
        <table class="levels">
          <caption class="si">{sheetWords.levelsCaption}</caption>
          <thead>
            <tr>
              <th scope="col">
                {sheetWords.columns.hz} {unit}
              </th>
              <th scope="col">{sheetWords.columns.wanted}</th>
              <th scope="col">{sheetWords.columns.tube}</th>
            </tr>
          </thead>
          <tbody>
            {figures.levels.map((row) => (
              <tr key={row.hz}>
                <th scope="row" class="m">
                  {rackWords.canLabel(row.hz)}
                </th>
                <td class="m">{sheetWords.percent(row.target, row.low, row.high)}</td>
                <td class="m">{sheetWords.tubePercent(row.onTube)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {figures.levels.length === 0 ? null : <AsFound port={port} response={figures.response.id} />}
      <ul class="demands">
        {demands.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <h3>{sheetWords.setUp}</h3>
      <ul class="demands">
        {setUpLines(sheetWords.setUpLines, figures.response, level).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <h3>
        {sheetWords.box}, {unit}
      </h3>
      <ul class="box-list">
        {setup.receiver.crystalsHz.map((hz) => (
          <li key={hz} class={wanted.has(hz) ? 'm wanted' : 'm'}>
            {rackWords.canLabel(hz)}
          </li>
        ))}
      </ul>
      <p class="si">{sheetWords.boxWanted}</p>
    </>
  );
}

function setUpLines(
  words: Words['sheet']['setUpLines'],
  { setUp, specification }: SheetResponse,
  level: LevelReading,
): string[] {
  return [
    words.inject(setUp.injectAt, words.injectWith),
    words.observe(setUp.observeAt, setUp.observeWith === 'probe'),
    ...(setUp.biases.length === 0 ? [words.noBias] : []),
    ...setUp.biases.map((bias) => words.bias(bias.at, bias.volts, bias.toleranceVolts)),
    ...(setUp.carrierHz === null ? [] : [words.carrier(setUp.carrierHz)]),
    words.sweep(setUp.centreHz, setUp.spanHz),
    ...(setUp.slowSweep === true ? [words.slow] : []),
    levelLine(words, specification, level),
    words.direction(setUp.lowFrequencyAtLeft),
  ];
}

/** In detected volts, which are the same whatever the source's attenuator says and whichever lead is on it; a beat has none of its own. */
function levelLine(
  words: Words['sheet']['setUpLines'],
  { peaks, sCurve, referenceHz }: SheetResponse['specification'],
  { volts, voltsPerDiv, div }: LevelReading,
): string {
  if (peaks.some(({ oscillator }) => oscillator === true)) return words.beatLevel;
  return words.level(volts, voltsPerDiv, div, sCurve !== null ? 'eitherPeak' : (referenceHz ?? 'top'));
}

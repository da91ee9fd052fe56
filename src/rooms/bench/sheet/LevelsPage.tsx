/** Second page of the sheet: levels with their tolerances and what they look like on the tube, the other demands, the set-up, the crystals. */

import { useWords } from '../../../kit/hooks/useWords.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { levelReading, type SheetFigures } from '../../../present/sheetFigures.ts';
import { demandLines, setUpLines } from '../../../present/sheetLines.ts';
import { AsFound } from './AsFound.tsx';

export function LevelsPage({ port, figures }: { readonly port: BenchPort; readonly figures: SheetFigures }) {
  const { setup } = port;
  const words = useWords();
  const { rack: rackWords, sheet: sheetWords } = words;
  const { setUp } = figures.response;
  const unit = rackWords.unit(setUp.centreHz);
  const demands = demandLines(words, figures.response);
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
        {setUpLines(words, figures.response, level).map((line) => (
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

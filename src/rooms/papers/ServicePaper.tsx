/** The service sheet on paper: cautions, every curve of the job with its levels and demands, the procedure, slugs and points. */
import type { BenchSetup } from '../../bench/setup.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { SlugsAndPoints } from '../../kit/SlugsAndPoints.tsx';
import { Told } from '../../kit/Told.tsx';
import { cautionsOf } from '../../present/cautions.ts';
import { levelReading, type SheetFigures } from '../../present/sheetFigures.ts';
import { demandLines, setUpLines } from '../../present/sheetLines.ts';
import { jobSheet } from '../../receiver/jobSheet.ts';
import { slugLetters } from '../../receiver/slugLetters.ts';
import { toldPar } from '../../scenario/par.ts';
import { Paper, PaperCaution, PaperFigure } from './paperPieces.tsx';

export interface PaperOf {
  readonly setup: BenchSetup;
  /** of each curve that the job asks for */
  readonly figures: readonly SheetFigures[];
}

export function ServicePaper({ setup, figures }: PaperOf) {
  const words = useWords();
  const { papers: say, sheet } = words;
  const { receiver, scenario } = setup;
  const { procedure } = jobSheet(receiver, scenario);
  const letters = slugLetters(receiver);
  return (
    <Paper
      name={say.names.sheet}
      sub={say.subs.sheet}
      title={<Told of={receiver}>{`${receiver.title}, ${receiver.setName}`}</Told>}
      foot={say.practised(scenario.code, toldPar(scenario)?.turns ?? null)}
    >
      <PaperCaution lead={say.caution(receiver.mains === null ? sheet.care : sheet.cautions)}>
        {cautionsOf(words, receiver)
          .map(({ text }) => text)
          .join(' ')}
      </PaperCaution>
      {figures.map((one) => (
        <Curve key={one.response.id} setup={setup} figures={one} />
      ))}
      <h3>{sheet.pages[0]}</h3>
      <ol class="paper-steps">
        {procedure.map((step) => (
          <li key={step.text}>
            <Told of={receiver}>{step.text}</Told>
          </li>
        ))}
      </ol>
      <SlugsAndPoints
        receiver={receiver}
        letter={(slug) => <b>{`${letters.get(slug)} `}</b>}
        slugClass="paper-list-of"
        pointClass="paper-list-of"
      />
    </Paper>
  );
}

const listed = (line: string) => <li key={line}>{line}</li>;

function Curve({ setup, figures }: { readonly setup: BenchSetup; readonly figures: SheetFigures }) {
  const words = useWords();
  const { papers: say, sheet, rack } = words;
  const { receiver } = setup;
  const { response, levels } = figures;
  const unit = rack.unit(response.setUp.centreHz);
  const demands = demandLines(words, response);
  const setUp = setUpLines(words, response, levelReading(setup, figures));
  return (
    <section class="paper-curve">
      <h3>
        <Told of={receiver}>{response.title}</Told>
      </h3>
      <PaperFigure figures={figures} label={say.figure(response.title)} width={700} height={150} style="wanted" />
      {levels.length === 0 ? (
        // Without a table beside it one list would stand alone in half the paper.
        <div class="paper-halves even">
          <ul>{demands.map(listed)}</ul>
          <ul>{setUp.map(listed)}</ul>
        </div>
      ) : (
        <div class="paper-halves">
          <table>
            <thead>
              <tr>
                <th scope="col">{`${sheet.columns.hz} ${unit}`}</th>
                <th scope="col">{sheet.columns.wanted}</th>
                <th scope="col">{sheet.columns.tube}</th>
              </tr>
            </thead>
            <tbody>
              {levels.map((row) => (
                <tr key={row.hz}>
                  <th scope="row">{rack.canLabel(row.hz)}</th>
                  <td>{sheet.percent(row.target, row.low, row.high)}</td>
                  <td>{sheet.tubePercent(row.onTube)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <ul>{[...demands, ...setUp].map(listed)}</ul>
        </div>
      )}
    </section>
  );
}

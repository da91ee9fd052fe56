/** A blank record card: what the tube showed as found and as left, level by level, the proofs, the parts, who signs. One card for each curve; more levels than fit take a second one. */
import { useWords } from '../../kit/hooks/useWords.ts';
import { Told } from '../../kit/Told.tsx';
import type { SheetFigures } from '../../present/sheetFigures.ts';
import type { Receiver } from '../../receiver/receiver.ts';
import { PROOFS, WHERE_ASKED } from '../../scenario/proofId.ts';
import { Blank, Paper, PaperFigure, TickBox } from './paperPieces.tsx';
import type { PaperOf } from './ServicePaper.tsx';

/** Rows on one card, of levels and bias lines: so many fit a sheet of Letter, the shorter of the two papers, and rows are not made smaller. */
const MOST_ROWS = 11;

export function RecordCards({ setup, figures }: PaperOf) {
  const { receiver } = setup;
  return (
    <>
      {figures.flatMap((one) =>
        cardsOf(one).map((levels, i) => (
          <Card key={`${one.response.id} ${i}`} receiver={receiver} figures={one} levels={levels} />
        )),
      )}
    </>
  );
}

/** Shared out evenly: a second card with one level on it is easily lost. */
function cardsOf({ levels, response }: SheetFigures): readonly SheetFigures['levels'][] {
  const count = Math.max(1, Math.ceil(levels.length / (MOST_ROWS - response.setUp.biases.length)));
  const each = Math.ceil(levels.length / count);
  return Array.from({ length: count }, (_, i) => levels.slice(i * each, (i + 1) * each));
}

interface CardProps {
  readonly receiver: Receiver;
  readonly figures: SheetFigures;
  readonly levels: SheetFigures['levels'];
}

function Card({ receiver, figures, levels }: CardProps) {
  const { papers: say, sheet, rack } = useWords();
  const { response } = figures;
  const unit = rack.unit(response.setUp.centreHz);
  const { biases } = response.setUp;
  return (
    <Paper name={say.names.card} sub={say.subs.card} title={say.title2} foot={say.strap}>
      <p class="blanks">
        <Blank name={say.blanks.set} wide />
        <Blank name={say.blanks.owner} wide />
        <Blank name={say.blanks.card} />
      </p>
      <p>
        <Told of={receiver}>{response.title}</Told>. {say.draw} {say.dotted}
      </p>
      <div class="paper-halves even">
        {[say.asFound, say.asLeft].map((name) => (
          <section key={name}>
            <h3>{name}</h3>
            <PaperFigure figures={figures} label={say.figure(response.title)} width={340} height={150} style="dotted" />
          </section>
        ))}
      </div>
      <table class="ruled levels">
        <thead>
          <tr>
            <th scope="col">{`${say.columns.at} ${unit}`}</th>
            <th scope="col">{say.columns.wanted}</th>
            <th scope="col">{say.columns.found}</th>
            <th scope="col">{say.columns.left}</th>
            <th scope="col">{say.columns.inside}</th>
          </tr>
        </thead>
        <tbody>
          {levels.map(({ hz, target, low, high }) => (
            <tr key={hz}>
              <th scope="row">{rack.canLabel(hz)}</th>
              <td>{sheet.percent(target, low, high)}</td>
              <td />
              <td />
              <td>
                <TickBox />
              </td>
            </tr>
          ))}
          {biases.map(({ at, volts, toleranceVolts }) => (
            <tr key={at}>
              <th scope="row">{at}</th>
              <td>{sheet.setUpLines.bias(at, volts, toleranceVolts)}</td>
              <td />
              <td />
              <td>
                <TickBox />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>{say.proofs}</h3>
      <p class="ticks">
        {PROOFS.filter((proof) => !WHERE_ASKED.includes(proof)).map((proof) => (
          <span key={proof}>
            <TickBox /> {say.proofNames[proof]}
          </span>
        ))}
      </p>
      <h3>{say.parts}</h3>
      <div class="writing">
        <i />
        <i />
        <i />
      </div>
      <p class="blanks signed">
        <Blank name={say.signed.aligned} wide />
        <Blank name={say.signed.checked} wide />
        <Blank name={say.signed.date} />
      </p>
    </Paper>
  );
}

/** A blank record card: what the tube showed as found and as left, line by line of what its sheet asks, the proofs, the parts, who signs. One card for each curve; more lines than fit take a second one. */
import { useWords } from '../../kit/hooks/useWords.ts';
import { Told } from '../../kit/Told.tsx';
import { type CardRow, cardLines } from '../../present/cardRows.ts';
import type { SheetFigures } from '../../present/sheetFigures.ts';
import type { Receiver } from '../../receiver/receiver.ts';
import { PROOFS, WHERE_ASKED } from '../../scenario/proofId.ts';
import { Blank, Paper, PaperFigure, TickBox } from './paperPieces.tsx';
import type { PaperOf } from './ServicePaper.tsx';

/** Rows on one card, with those of the bias lines: so many fit a sheet of Letter, the shorter of the two papers, and rows are not made smaller. */
const MOST_ROWS = 11;

export function RecordCards({ setup, figures }: PaperOf) {
  const words = useWords();
  return (
    <>
      {figures.flatMap((one) => {
        const { measured, biases } = cardLines(words, setup.receiver, one);
        return shared(measured, MOST_ROWS - biases.length).map((rows, i) => (
          <Card key={`${one.response.id} ${i}`} receiver={setup.receiver} figures={one} rows={[...rows, ...biases]} />
        ));
      })}
    </>
  );
}

/** Shared out evenly: a second card with one line on it is easily lost. */
function shared(rows: readonly CardRow[], most: number): readonly (readonly CardRow[])[] {
  const count = Math.max(1, Math.ceil(rows.length / most));
  const each = Math.ceil(rows.length / count);
  return Array.from({ length: count }, (_, i) => rows.slice(i * each, (i + 1) * each));
}

interface CardProps {
  readonly receiver: Receiver;
  readonly figures: SheetFigures;
  readonly rows: readonly CardRow[];
}

function Card({ receiver, figures, rows }: CardProps) {
  const { papers: say, rack } = useWords();
  const { response } = figures;
  const unit = rack.unit(response.setUp.centreHz);
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
          {rows.map(({ at, wanted }) => (
            <tr key={`${at} ${wanted}`}>
              <th scope="row">{at}</th>
              <td>{wanted}</td>
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

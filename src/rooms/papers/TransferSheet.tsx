/** The transfer sheet: the job's procedure taken to a real set, with the cautions first, and room for what is read and for where every slug stood. */
import type { BenchSetup } from '../../bench/setup.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Told } from '../../kit/Told.tsx';
import { jobSheet } from '../../receiver/jobSheet.ts';
import type { ProcedureStep } from '../../receiver/receiver.ts';
import { slugLetters } from '../../receiver/slugLetters.ts';
import { toldPar } from '../../scenario/par.ts';
import { Blank, Paper, PaperCaution, PaperFigure, TickBox } from './paperPieces.tsx';
import type { PaperOf } from './ServicePaper.tsx';

export function TransferSheet({ setup, figures }: PaperOf) {
  const { papers: say } = useWords();
  const { receiver, scenario } = setup;
  const { procedure } = jobSheet(receiver, scenario);
  const letters = slugLetters(receiver);
  const [first] = figures;
  return (
    <Paper
      name={say.names.transfer}
      sub={say.subs.transfer}
      title={<Told of={receiver}>{`${receiver.title}, ${receiver.setName}`}</Told>}
      foot={say.practised(scenario.code, toldPar(scenario)?.turns ?? null)}
    >
      <p class="blanks">
        <Blank name={say.blanks.set} wide />
        <Blank name={say.blanks.serial} />
        <Blank name={say.blanks.date} />
        <Blank name={say.blanks.by} />
      </p>
      <PaperCaution lead={say.realSet}>{say.realCautions}</PaperCaution>
      {first === undefined ? null : (
        <PaperFigure figures={first} label={say.figure(first.response.title)} width={700} height={130} style="wanted" />
      )}
      <ol class="transfer-steps">
        {procedure.map((step) => (
          <li key={step.text}>
            <TickBox />
            <p>
              <Told of={receiver}>{step.text}</Told>
            </p>
            <p class="to-read">
              <Reading step={step} setup={setup} />
            </p>
          </li>
        ))}
      </ol>
      <section class="start-positions">
        <h3>{say.startPositions}</h3>
        <table class="ruled starts">
          <thead>
            <tr>
              <th scope="col">{say.slug}</th>
              {receiver.adjusters.map(({ id }) => (
                <th scope="col" key={id}>
                  {letters.get(id)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row" />
              {receiver.adjusters.map(({ id }) => (
                <td key={id}>{id}</td>
              ))}
            </tr>
            {[say.found, say.left].map((name) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {receiver.adjusters.map(({ id }) => (
                  <td key={id} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </Paper>
  );
}

/** What is read and written down at a step: the sheet cannot know, the hand on the set does. */
function Reading({
  step: { phase, parts = [], slugs },
  setup,
}: {
  readonly step: ProcedureStep;
  readonly setup: BenchSetup;
}) {
  const { papers: say } = useWords();
  const { readings: name, units } = say;
  const letters = slugLetters(setup.receiver);
  switch (phase) {
    case 'safe':
      return <Blank name={name.panToEarth} unit={units.volts} />;
    case 'connect':
      return <Blank name={name.earth} unit={units.ohms} />;
    case 'setUp':
      return (
        <>
          {parts.includes('bias') ? <Blank name={name.bias} unit={units.volts} /> : null}
          {parts.includes('level') ? <Blank name={name.level} unit={units.decibels} /> : null}
          {parts.includes('phasing') ? <Blank name={name.phasing} unit={units.degrees} /> : null}
        </>
      );
    case 'align':
      return (
        <>
          {slugs.map((id, i) => (
            <Blank
              key={id}
              short
              name={letters.get(id) ?? id}
              {...(i === slugs.length - 1 ? { unit: units.turns } : {})}
            />
          ))}
        </>
      );
    case 'prove':
      return <span>{name.onCard}</span>;
  }
}

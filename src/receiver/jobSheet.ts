/**
 * The sheet as a job has it: of its procedure only the steps that are about the curves that the job asks for. A step of connecting or setting up that names a response is for
 * jobs that begin with that one, and stands there in the place of those that name none.
 */
import type { ProcedureStep, Receiver } from './receiver.ts';
import { mainResponse, workResponses } from './responses.ts';

type Job = { readonly responses?: readonly string[] };

const known = new WeakMap<Receiver, Map<string, Receiver>>();

/** The same object for the same job; the receiver itself where all of its steps are wanted. */
export function jobSheet(receiver: Receiver, { responses }: Job): Receiver {
  const jobs = known.get(receiver) ?? new Map<string, Receiver>();
  known.set(receiver, jobs);
  const key = responses === undefined ? '' : responses.join();
  const found = jobs.get(key) ?? sheetFor(receiver, responses === undefined ? {} : { responses });
  jobs.set(key, found);
  return found;
}

function sheetFor(receiver: Receiver, job: Job): Receiver {
  const work = workResponses(receiver, job).map(({ id }) => id);
  const main = mainResponse(receiver).id;
  const lead = work[0] ?? main;
  const named = (phase: ProcedureStep['phase']): boolean =>
    receiver.procedure.some((step) => step.phase === phase && step.response === lead);
  const wanted = (step: ProcedureStep): boolean => {
    if (step.phase === 'align') return work.includes(step.response ?? main);
    return step.response === undefined ? !named(step.phase) : step.response === lead;
  };
  const procedure = receiver.procedure.filter(wanted);
  // A job about a curve that no step turns anything for keeps the whole sheet.
  if (procedure.length === receiver.procedure.length || !procedure.some(({ phase }) => phase === 'align'))
    return receiver;
  return { ...receiver, procedure };
}

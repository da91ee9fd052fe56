/** The names by which the words of a look speak of slugs and parts. */
import { partCalled } from '../../describe/partCalled.ts';
import { slugName, slugNameFirst } from '../../describe/sentence.ts';
import type { Choice, Question } from '../../drills/drill.ts';
import { findElement, nodeKey } from '../../physics/deck.ts';
import { slugLetters } from '../../receiver/slugLetters.ts';
import type { Words } from '../../words/words.ts';

/** What helps to place a part in the circuit; `ofSet`: in the words of the receiver's own file. */
export function partPlace(words: Words, question: Question, part: NamedPart) {
  const { receiver } = question.scene.setup;
  const coil = receiver.adjusters.find(({ element }) => same(element, part.name));
  if (coil !== undefined) return { text: coil.label, ofSet: true };
  const stage = receiver.stages.find(({ element }) => same(element, part.at ?? part.name));
  if (stage !== undefined) return { text: stage.device, ofSet: true };
  const near = coilBeside(question, part.name);
  return near === undefined ? null : { text: words.drills.atCoil(slugName(words, receiver, near.id)), ofSet: false };
}

/** The adjuster whose coil has an end in common with a part. */
function coilBeside({ scene }: Question, part: string) {
  const { receiver, deck } = scene.setup;
  const nodesOf = (name: string): readonly string[] => {
    const found = findElement(deck, name);
    return found === undefined || found.kind === 'K' ? [] : found.nodes.map(nodeKey).filter((node) => node !== EARTH);
  };
  const nodes = nodesOf(part);
  return receiver.adjusters.find(({ element }) => nodesOf(element).some((node) => nodes.includes(node)));
}

const EARTH = '0';
const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

const receiverIn = ({ scene }: Question) => scene.setup.receiver;

/** The slug that the question is about; nothing where it is about none. */
export function askedSlug(words: Words, question: Question): string {
  const { slug } = question.subject;
  return slug === undefined ? '' : slugName(words, receiverIn(question), slug);
}

export function toldNames(words: Words, question: Question) {
  const { told } = question;
  const receiver = receiverIn(question);
  const first = told.drill === 'zero';
  const slug = 'slug' in told && told.slug !== null ? told.slug : null;
  const called = first ? slugNameFirst : slugName;
  return {
    slug: slug === null ? '' : called(words, receiver, slug),
    other: told.drill === 'which-way' && told.other !== null ? slugName(words, receiver, told.other) : '',
    part: told.drill === 'which-part' ? partCalled(words, receiver, told.part.name) : '',
    ofTrap: told.drill === 'which-part' && (coilBeside(question, told.part.name)?.trapHz ?? null) !== null,
  };
}

export function choiceName(words: Words, question: Question, choice: Choice): string {
  const part = choice.kind === 'part' ? partName(words, question, choice.part, choice.slug) : '';
  return words.drills.choice(choice, askedSlug(words, question), part);
}

export type NamedPart = Extract<Choice, { kind: 'part' }>['part'];

function partName(words: Words, question: Question, part: NamedPart, slug: string | null): string {
  const letter = slug === null ? null : (slugLetters(receiverIn(question)).get(slug) ?? null);
  return words.parts.name(part, letter);
}

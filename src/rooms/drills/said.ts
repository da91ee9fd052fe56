/** The names by which the words of a look speak of slugs and parts. */
import { slugName, slugNameFirst } from '../../describe/sentence.ts';
import type { Choice, Question } from '../../drills/drill.ts';
import { slugLetters } from '../../receiver/slugLetters.ts';
import type { Words } from '../../words/words.ts';

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
    part: told.drill === 'which-part' ? partName(words, question, told.part, told.slug) : '',
  };
}

export function choiceName(words: Words, question: Question, choice: Choice): string {
  const part = choice.kind === 'part' ? partName(words, question, choice.part, choice.slug) : '';
  return words.drills.choice(choice, askedSlug(words, question), part);
}

type NamedPart = Extract<Choice, { kind: 'part' }>['part'];

function partName(words: Words, question: Question, part: NamedPart, slug: string | null): string {
  const letter = slug === null ? null : (slugLetters(receiverIn(question)).get(slug) ?? null);
  return words.parts.name(part, letter);
}

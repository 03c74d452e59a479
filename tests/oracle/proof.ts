import type { Answer, Member as Cited, Refusal } from '../../src/plan/answer.ts';
import type { Book } from './book.ts';
import { rulesOf } from './builds.ts';
import { type Choice, choicesOf, type Range, someBuild } from './choices.ts';
import { keyOf, type Member, speakingOf, type Value, wish } from './member.ts';
import { neighbourRules } from './rules.ts';
import { type Scene, sceneOf } from './scene.ts';
import { stockRules } from './stock-rules.ts';
import { checkWaysOut } from './ways-out.ts';
import { towardTravel, wishes } from './wishes.ts';

/**
 * What is wrong with the reasons that an answer gives for a refusal; nothing where each stands.
 * `range` says what stands without being named: nothing, or also what complete lists leave out.
 */
export function checkProof(
  book: Book,
  answer: Pick<Answer, 'question' | 'status' | 'refusal'>,
  range: Range,
): readonly string[] {
  const { refusal, status } = answer;
  const scene = sceneOf(book, answer.question);
  if (refusal === null) return [];
  if (scene === null) return ['a refusal of a question that does not settle which fork it is'];
  const proof: Proof = { scene, status, choices: choicesOf(scene, range), members: membersOf(scene) };
  return [
    ...refusal.conflicts.flatMap((conflict) => checkConflict(proof, conflict)),
    ...(refusal.smallest ? checkSmallest(proof, refusal.conflicts) : []),
    ...checkWaysOut(scene, refusal),
  ];
}

interface Proof {
  readonly scene: Scene;
  readonly status: Answer['status'];
  readonly choices: readonly Choice[];
  readonly members: readonly Member[];
}

const membersOf = (scene: Scene): readonly Member[] => {
  const { onto, wants } = scene.question;
  return [
    ...wishes(scene),
    ...(onto === undefined ? [] : [wish({ code: 'want-onto', looksAt: [], holds: () => true })]),
    ...(wants.travel === undefined ? [] : [towardTravel(scene, wants.travel)]),
    ...rulesOf(scene),
    ...stockRules(scene),
  ];
};

/** The members that a cited one speaks of: same code, and the same values where both name one. */
const citedBy = (members: readonly Member[], { code, params }: Cited): readonly Member[] =>
  members.filter(
    (member) =>
      member.code === code && Object.entries(member.names).every(([name, value]) => agrees(params, name, value)),
  );

const agrees = (params: Cited['params'], name: string, value: Value): boolean =>
  !(name in params) || params[name] === value;

/** Whether members can stand together. */
function canStand({ scene, choices }: Proof, members: readonly Member[]): boolean {
  return someBuild(scene, choices, speakingOf(members)) !== null;
}

/** Each member is true, together they cannot stand, and without any one of them they can. */
function checkConflict(proof: Proof, conflict: readonly Cited[]): readonly string[] {
  const said = [...proof.members, ...neighbourRules(proof.scene)];
  const cited = conflict.map((one) => citedBy(said, one));
  const unknown = conflict.filter((_, at) => cited[at]?.length === 0);
  if (unknown.length > 0) return unknown.map((one) => `nothing in the catalogue says ${textOf(one)}`);
  const without = (left: number): readonly Member[] => cited.filter((_, at) => at !== left).flat();
  return [
    ...conflict.flatMap((one, at) => falseValues(one, cited[at] ?? [])),
    ...(canStand(proof, cited.flat()) ? [`these can stand together: ${textOfAll(conflict)}`] : []),
    ...conflict
      .filter((_, at) => !canStand(proof, without(at)))
      .map((one) => `${textOf(one)} is not needed in ${textOfAll(conflict)}`),
  ];
}

/** An impossible thing is so whatever nobody says; a conflict that hangs on silence does not prove it. */
export function restsOnSilence(
  book: Book,
  { question, status, refusal }: Pick<Answer, 'question' | 'status' | 'refusal'>,
): readonly string[] {
  const scene = sceneOf(book, question);
  if (scene === null || refusal === null || status !== 'impossible') return [];
  const members = membersOf(scene);
  const isProof = (conflict: readonly Cited[]): boolean =>
    conflict.every((one) => citedBy(members, one).every(({ isSilence }) => !isSilence));
  return refusal.conflicts.some(isProof)
    ? []
    : refusal.conflicts.map((conflict) => `impossible, because nobody says: ${textOfAll(conflict)}`);
}

/** Values shown beside a member that are not those of the catalogue. */
const falseValues = (one: Cited, members: readonly Member[]): readonly string[] =>
  Object.entries(one.params)
    .filter(([name, value]) => members.every(({ shows }) => name in shows && shows[name] !== value))
    .map(([name]) => `${textOf(one)} shows a ${name} that the catalogue does not`);

/** No conflict has fewer members. Later conflicts are sought among what the earlier ones leave. */
function checkSmallest(proof: Proof, conflicts: Refusal['conflicts']): readonly string[] {
  const [first] = conflicts;
  if (first === undefined) return [];
  const shorter = conflictWithin(proof, allAtoms(proof), [], first.length - 1);
  return shorter === null ? [] : [`${shorter.map(({ code }) => code).join(' + ')} is shorter than ${textOfAll(first)}`];
}

/** Members that have a say by themselves. Silence has none where all that is not known is allowed. */
function allAtoms({ members, status, scene }: Proof): Atoms {
  const isSilenceAllowed = status === 'impossible' || scene.question.allowUnknown;
  const all = members.filter(
    ({ code, isSilence }) =>
      code !== 'toward-travel' &&
      !(isSilence && isSilenceAllowed) &&
      (status === 'not-obtainable' || code !== 'not-obtainable'),
  );
  const over = new Set(all.map(({ under }) => under));
  return { all, openers: all.filter((one) => over.has(keyOf(one))) };
}

interface Atoms {
  readonly all: readonly Member[];
  /** Wishes that others stand under: a build may meet them, and then those speak. */
  readonly openers: readonly Member[];
}

/**
 * A conflict that holds `chosen` and at most `more` other members, or null.
 * Some build meets what is chosen, or it is a conflict; and every conflict has a member that this build does not meet.
 */
function conflictWithin(proof: Proof, atoms: Atoms, chosen: readonly Member[], more: number): readonly Member[] | null {
  const { scene, choices } = proof;
  const build = someBuild(scene, choices, speakingOf(chosen));
  if (build === null) return chosen;
  if (more === 0) return null;
  const opening = atoms.openers.filter((one) => !chosen.includes(one));
  const broken = speakingOf(atoms.all, chosen).filter((one) => !one.holds(build));
  for (const member of new Set([...opening, ...broken])) {
    const found = conflictWithin(proof, atoms, [...chosen, member], more - 1);
    if (found !== null) return found;
  }
  return null;
}

export const textOf = ({ code, params }: Pick<Cited, 'code' | 'params'>): string => `${code} ${JSON.stringify(params)}`;
const textOfAll = (members: readonly Cited[]): string => members.map(({ code }) => code).join(' + ');

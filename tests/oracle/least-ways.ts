import type { Answer, Refusal } from '../../src/plan/answer.ts';
import type { Question } from '../../src/plan/question.ts';
import type { Book } from './book.ts';
import { buildsMeeting, underWishes } from './builds.ts';
import { keyOf, type Member } from './member.ts';
import { type Draft, type Scene, sceneOf } from './scene.ts';
import { isObtainable } from './stock-rules.ts';
import { towardTravel, wishes } from './wishes.ts';
import { workOf } from './work.ts';

/** Least sets of wishes to give up that an answer leaves out although it says that all are there. */
export function missingWays(
  book: Book,
  { question, refusal }: Pick<Answer, 'question' | 'refusal'>,
): readonly string[] {
  const scene = sceneOf(book, question);
  if (scene === null || refusal === null || !refusal.complete) return [];
  const shown = refusal.instead.map(({ drop }) =>
    wishes(scene).filter((one) => drop.some((given) => isNamedBy(one, given))),
  );
  const said = new Set(shown.map(setKey));
  return leastWays(scene).filter((way) => !said.has(way));
}

const isNamedBy = (member: Member, { code, params }: Refusal['instead'][number]['drop'][number]): boolean =>
  member.code === code && Object.entries(member.names).every(([name, value]) => params[name] === value);

const setKey = (members: readonly Member[]): string => members.map(keyOf).sort().join(' + ');

/** A set of wishes to give up: whether something is left to do then that can be had. */
type Ways = Map<string, { readonly given: readonly string[]; isSomething: boolean; isNothing: boolean }>;

function leastWays(scene: Scene): readonly string[] {
  const all = wishes(scene);
  const wants = all.filter(({ code }) => code !== 'kept-trait');
  const ways: Ways = new Map();
  for (const given of subsetsOf(wants)) addWays(scene, all, given, ways);
  const able = [...ways].filter(([, { isSomething, isNothing }]) => isSomething || isNothing);
  return able
    .filter(([, { given }]) => !able.some(([, other]) => isProperPart(other.given, given)))
    .filter(([, { isNothing }]) => !isNothing)
    .map(([key]) => key);
}

const subsetsOf = <T>(items: readonly T[]): readonly (readonly T[])[] =>
  items.reduce<readonly (readonly T[])[]>((sets, item) => sets.flatMap((set) => [set, [...set, item]]), [[]]);

const isProperPart = (part: readonly string[], whole: readonly string[]): boolean =>
  part.length < whole.length && part.every((name) => whole.includes(name));

/** With some wants left out of the question, every set of kept traits that a build then breaks. */
function addWays(scene: Scene, all: readonly Member[], given: readonly Member[], ways: Ways): void {
  const asked: Scene = { ...scene, question: askedWithout(scene.question, given) };
  const kept = new Set(all.filter(({ code }) => code === 'kept-trait').map(keyOf));
  const left = wishesLeft(scene, asked, given);
  const mayBreak = left.filter((one) => kept.has(keyOf(one)));
  const held = left.filter((one) => !kept.has(keyOf(one)));
  const silent = underWishes(asked);
  const isBroken = (wish: Member, draft: Draft): boolean =>
    !wish.holds(draft) || silent.some((one) => one.under === keyOf(wish) && !one.holds(draft));
  for (const { draft, unknowns } of buildsMeeting(asked, held)) {
    if (unknowns > 0) continue;
    const names = [...given, ...mayBreak.filter((one) => isBroken(one, draft))].map(keyOf).sort();
    const key = names.join(' + ');
    const way = ways.get(key) ?? { given: names, isSomething: false, isNothing: false };
    ways.set(key, way);
    if (way.isNothing) continue;
    if (workOf(asked, draft).steps.length === 0) way.isNothing = true;
    else way.isSomething ||= isObtainable(asked, draft);
  }
}

/** A travel that is given up still goes the wanted way, and is not kept. */
function wishesLeft(scene: Scene, asked: Scene, given: readonly Member[]): readonly Member[] {
  const { travel } = scene.question.wants;
  const left = wishes(asked);
  if (travel === undefined || !given.some(({ code }) => code === 'want-travel')) return left;
  return [...left.filter(({ names }) => names.trait !== 'travel'), towardTravel(scene, travel)];
}

function askedWithout(question: Question, given: readonly Member[]): Question {
  const has = (code: string): boolean => given.some((one) => one.code === code);
  const named = (code: string, name: string): readonly unknown[] =>
    given.filter((one) => one.code === code).map(({ names }) => names[name]);
  const { travel, wheel, spacers, coilRate, axleToCrown, offset, traits, ...lists } = question.wants;
  return {
    ...question,
    wants: {
      ...(travel === undefined || has('want-travel') ? {} : { travel }),
      ...(wheel === undefined || has('want-wheel') ? {} : { wheel }),
      ...(spacers === undefined || has('want-spacers') ? {} : { spacers }),
      ...(coilRate === undefined || has('want-coil-rate') ? {} : { coilRate }),
      ...(axleToCrown === undefined || has('want-axle-to-crown') ? {} : { axleToCrown }),
      ...(offset === undefined || has('want-offset') ? {} : { offset }),
      ...lists,
      traits: Object.fromEntries(
        Object.entries(traits).filter(([trait]) => !named('want-trait', 'trait').includes(trait)),
      ),
      use: lists.use.filter((sku) => !named('want-use', 'sku').includes(sku)),
      keep: lists.keep.filter((slot) => !named('want-keep', 'slot').includes(slot)),
      renew: lists.renew.filter((slot) => !named('want-renew', 'slot').includes(slot)),
    },
  };
}

import type { Refusal } from '../../src/plan/answer.ts';
import { parseMoney } from '../../src/quantity/money.ts';
import { known } from './book.ts';
import { buildsMeeting } from './builds.ts';
import type { Member } from './member.ts';
import { solve } from './oracle.ts';
import { inOrderOf } from './plans.ts';
import { type Draft, type Scene, sceneOf } from './scene.ts';
import { isObtainable } from './stock-rules.ts';
import { towardTravel, wishes } from './wishes.ts';
import { workOf } from './work.ts';

type WayOut = Refusal['instead'][number];
type Drop = WayOut['drop'];

/** Each way out, asked as a question, gives what it says, and gives up no more than it must. */
export const checkWaysOut = (scene: Scene, { instead }: Refusal): readonly string[] =>
  instead.flatMap((way) => [...checkAskedAgain(scene, way), ...checkLeast(scene, way)]);

function checkAskedAgain({ book, question }: Scene, { wants, money, minutes, days, drop }: WayOut): readonly string[] {
  const { onto, ontoSize, ...elsewhere } = question;
  const isElsewhere = drop.some(({ code }) => code === 'want-onto');
  const place = isElsewhere || onto === undefined ? {} : { onto, ...(ontoSize === undefined ? {} : { ontoSize }) };
  const again = sceneOf(book, { ...elsewhere, ...place, wants });
  const first = again === null ? undefined : inOrderOf(question.prefer, solve(again).front)[0];
  const said = `${textOfDrop(drop)} given up: ${money}, ${minutes} min, ${days ?? '?'} days`;
  if (first === undefined) return [`${said}; asked again there is no plan`];
  const { vector } = first;
  const isSo =
    vector.total === parseMoney(money, book.digits) &&
    vector.minutes === minutes &&
    vector.days === (days ?? Number.POSITIVE_INFINITY);
  return isSo ? [] : [`${said}; asked again it is ${vector.total}, ${vector.minutes} min, ${vector.days} days`];
}

const textOfDrop = (drop: Drop): string =>
  drop.map(({ code, params }) => `${code} ${JSON.stringify(params)}`).join(', ');

/** With any one of the given up wishes held after all, nothing is left to do that way. */
const checkLeast = (scene: Scene, { drop }: WayOut): readonly string[] =>
  drop
    .filter(
      (kept) =>
        drop.length > 1 &&
        canStandWithout(
          scene,
          drop.filter((one) => one !== kept),
        ),
    )
    .map((kept) => `${textOfDrop([kept])} need not be given up in ${textOfDrop(drop)}`);

/** Whether the rest stands when these wishes are given up, and something is left to do and can be had. */
function canStandWithout(scene: Scene, drop: Drop): boolean {
  const left = wishes(scene).filter((one) => !drop.some((given) => isNamedBy(one, given)));
  const travel = drop.some(({ code }) => code === 'want-travel') ? scene.question.wants.travel : undefined;
  const toward = travel === undefined ? [] : [towardTravel(scene, travel)];
  const asked = withoutWishes(scene, drop);
  return buildsMeeting(asked, [...left, ...toward]).some(
    ({ draft, unknowns }) => unknowns === 0 && isSomething(asked, draft),
  );
}

const isSomething = (scene: Scene, draft: Draft): boolean =>
  workOf(scene, draft).steps.length > 0 && isObtainable(scene, draft);

const isNamedBy = (member: Member, { code, params }: Drop[number]): boolean =>
  member.code === code && Object.entries(member.names).every(([name, value]) => params[name] === value);

/** The rule of volume spacers heeds two wishes, silence the wish that asks; the bike's rules heed whether the fork goes onto it. */
function withoutWishes(scene: Scene, drop: Drop): Scene {
  const { spacers, coilRate, axleToCrown, offset, traits, ...wants } = scene.question.wants;
  const isDropped = (code: string, trait?: string): boolean =>
    drop.some((one) => one.code === code && (trait === undefined || one.params.trait === trait));
  const keep = isDropped('want-keep')
    ? wants.keep.filter((slot) => !drop.some(({ code, params }) => code === 'want-keep' && params.slot === slot))
    : wants.keep;
  const kept = {
    ...(spacers === undefined || isDropped('want-spacers') ? {} : { spacers }),
    ...(coilRate === undefined || isDropped('want-coil-rate') ? {} : { coilRate }),
    ...(axleToCrown === undefined || isDropped('want-axle-to-crown') ? {} : { axleToCrown }),
    ...(offset === undefined || isDropped('want-offset') ? {} : { offset }),
    traits: Object.fromEntries(Object.entries(traits).filter(([trait]) => !isDropped('want-trait', trait))),
  };
  const { onto, ontoSize, ...asked } = { ...scene.question, wants: { ...wants, ...kept, keep } };
  const place = {
    ...(onto === undefined || isDropped('want-onto') ? {} : { onto }),
    ...(ontoSize === undefined || isDropped('want-onto') ? {} : { ontoSize }),
  };
  return known(sceneOf(scene.book, { ...asked, ...place }), 'the fork, whatever is wished');
}

import { millimetres } from '../../src/quantity/brands.ts';
import { type Content, chassisOfFamily, partsFor, sameContent } from './book.ts';
import { partsInPlay } from './in-play.ts';
import { along } from './measures.ts';
import type { Member } from './member.ts';
import type { Chassis } from './records.ts';
import { choiceOf, type Draft, nowIn, type Scene, slotsOf } from './scene.ts';
import { givenTravel } from './spring.ts';

/** One choice that makes a build, and what can be chosen. */
export interface Choice {
  readonly name: string;
  readonly options: readonly ((draft: Draft) => void)[];
}

/**
 * How much can be chosen: any part of the catalogue and any travel that someone speaks of,
 * or only parts that are in play as far as the catalogue says, and travels that a spring gives.
 */
export type Range = 'everything' | 'what is listed';

/** Everything that a build chooses; each choice is free of the others until a rule ties them. */
export function choicesOf(scene: Scene, range: Range): readonly Choice[] {
  const { now } = scene;
  const ordered = [...slotsOf(scene)].sort((a, b) => firstOf(scene, a) - firstOf(scene, b));
  return [
    choice('chassis', chassisOfFamily(scene.book, now.family), (draft, chassis) => {
      draft.chassis = chassis;
    }),
    choice('travel', travels(scene, range), (draft, travel) => {
      draft.travel = travel;
    }),
    ...Object.entries(now.family.settings).map(([name, marks]) =>
      choice(name, marksOf(marks, now.settings.get(name)), (draft, mark) => {
        draft.settings.set(name, mark);
      }),
    ),
    ...ordered
      .filter((slot) => choiceOf(slot) === slot)
      .map((slot) =>
        choice(slot, contentsFor(scene, slot, range), (draft, content) => {
          draft.contents.set(slot, content);
        }),
      ),
  ];
}

/** What is bound most by what is chosen before it comes first: the bike, then what gives travel. */
function firstOf({ now }: Scene, slot: string): number {
  if (!(slot in now.family.slots)) return 0;
  const at = ['spring', 'travel-spacers', 'volume-spacers'].indexOf(slot);
  return at < 0 ? 4 : at + 1;
}

const choice = <T>(name: string, values: readonly T[], put: (draft: Draft, value: T) => void): Choice => ({
  name,
  options: values.map((value) => (draft: Draft) => put(draft, value)),
});

function marksOf(
  { least, greatest, step }: { least: number; greatest: number; step: number },
  now: number | undefined,
): readonly number[] {
  const marks = now === undefined ? [] : [now];
  for (let mark = least; mark <= greatest; mark += step) if (mark !== now) marks.push(mark);
  return marks;
}

/** Everything that a slot can hold: any part of the role in the pieces that the slot takes, and what it holds now. */
function contentsFor(scene: Scene, slot: string, range: Range): readonly Content[] {
  const { family } = scene.now;
  const now = nowIn(scene, slot);
  const counts = countsOf(scene, slot);
  const parts =
    range === 'everything' || !(slot in family.slots) ? partsFor(scene.book, family, slot) : partsInPlay(scene, slot);
  const contents: Content[] = parts.flatMap(({ sku }) => counts.map((quantity) => ({ sku, quantity })));
  if (mayBeEmpty(scene, slot)) contents.push(null);
  return contents.some((content) => sameContent(content, now)) ? contents : [now, ...contents];
}

function countsOf(scene: Scene, slot: string): readonly number[] {
  const rule = scene.now.family.slots[slot];
  if (rule === undefined) return countsOnBike(scene, slot);
  if (rule.most === undefined) return [rule.pieces];
  return upTo(rule.most);
}

const upTo = (most: number): readonly number[] => Array.from({ length: most }, (_, at) => at + 1);

/** Spacers under the stem may come out; all else on the bike is held in the same number as now. */
function countsOnBike(scene: Scene, slot: string): readonly number[] {
  const now = nowIn(scene, slot)?.quantity ?? 1;
  return slot === 'stem-spacers' ? upTo(now) : [now];
}

function mayBeEmpty(scene: Scene, slot: string): boolean {
  const rule = scene.now.family.slots[slot];
  if (rule === undefined) return slot === 'stem-spacers' || slot === 'adaptor';
  return rule['may-be-empty'] || rule.most !== undefined;
}

/** Every travel that a spring gives, less spacers, the travel of now and the one wanted; and those that limits and wishes speak of. */
function travels(scene: Scene, range: Range): readonly number[] {
  const { book, now, question } = scene;
  const all = new Set<number>([now.travel]);
  for (const chassis of chassisOfFamily(book, now.family)) {
    for (const part of partsFor(book, now.family, 'spring')) {
      const given = givenTravel(part, chassis, now.when);
      if (given !== null) for (const less of lessens(scene)) all.add(given - less);
    }
    if (range === 'everything') for (const travel of travelsSpokenOf(scene, chassis)) all.add(travel);
  }
  if (question.wants.travel !== undefined) all.add(millimetres(question.wants.travel));
  return [...all].filter((travel) => travel >= 0).sort((a, b) => a - b);
}

/** Ends of what is allowed, and the travel at which the chassis has a length that is wished for or allowed. */
function travelsSpokenOf({ now, question: { wants } }: Scene, chassis: Chassis): readonly number[] {
  const limits = now.bike?.limits ?? [];
  const lengths = limits.flatMap(({ 'axle-to-crown': length }) => [length?.least, length?.greatest]);
  const wanted =
    wants.axleToCrown === undefined
      ? []
      : [millimetres(wants.axleToCrown.least), millimetres(wants.axleToCrown.greatest)];
  return [
    ...[chassis.travel, ...limits.map(({ travel }) => travel)].flatMap((limit) => [limit?.least, limit?.greatest]),
    ...[...lengths, ...wanted].map((length) =>
      travelForLength(chassis, length, now.settings.get('stanchion-height') ?? 0),
    ),
  ].filter((travel) => travel !== undefined);
}

/** What travel spacers can take away. */
function lessens(scene: Scene): readonly number[] {
  const { book, now } = scene;
  const most = now.family.slots['travel-spacers']?.most ?? 0;
  if (now.family['travel-set-by'] !== 'travel-spacers') return [0];
  const lengths = partsFor(book, now.family, 'travel-spacers').map(({ dimensions }) => dimensions.length ?? 0);
  return [0, ...lengths.flatMap((length) => upTo(most).map((count) => count * length))];
}

function travelForLength(chassis: Chassis, length: number | undefined, height: number): number | undefined {
  const stated = chassis['axle-to-crown'];
  if (length === undefined || stated?.compressed === undefined) return undefined;
  const offset = stated.measured === 'straight' ? (chassis.offset ?? 0) : 0;
  return Math.round(along(length, offset) - along(stated.compressed, offset) + height);
}

const emptyDraft = (): Draft => ({ chassis: null, travel: null, contents: new Map(), settings: new Map() });

/** Looks at every way to choose, and leaves a choice as soon as a member that it completes fails. */
export function visitBuilds(
  choices: readonly Choice[],
  members: readonly Member[],
  visit: (draft: Draft) => 'more' | 'enough',
): void {
  const names = choices.map(({ name }) => name);
  const lastLook = (member: Member): number => Math.max(-1, ...member.looksAt.map((name) => names.indexOf(name)));
  if (members.some((member) => lastLook(member) === -1 && !member.holds(emptyDraft()))) return;
  const due = choices.map((_, at) => members.filter((member) => lastLook(member) === at));
  const draft = emptyDraft();
  const descend = (at: number): 'more' | 'enough' => {
    const here = choices[at];
    if (here === undefined) return visit(draft);
    for (const put of here.options) {
      put(draft);
      if ((due[at] ?? []).every((member) => member.holds(draft)) && descend(at + 1) === 'enough') return 'enough';
    }
    return 'more';
  };
  descend(0);
}

/** Only the choices that some member looks at: what nobody looks at can be chosen at will. */
export function choicesLookedAt(choices: readonly Choice[], members: readonly Member[]): readonly Choice[] {
  const looked = new Set(members.flatMap(({ looksAt }) => looksAt));
  return choices.filter(({ name }) => looked.has(name));
}

/** Some build that meets the members; what none of them looks at is left as it is now. */
export function someBuild(scene: Scene, choices: readonly Choice[], members: readonly Member[]): Draft | null {
  let found: Draft | null = null;
  const looking = members.map((member) => member.beside?.(members) ?? member);
  visitBuilds(choicesLookedAt(choices, looking), looking, (draft) => {
    found = withTheRestAsNow(scene, draft);
    return 'enough';
  });
  return found;
}

export const withTheRestAsNow = ({ now }: Scene, draft: Draft): Draft => ({
  chassis: draft.chassis ?? now.chassis,
  travel: draft.travel ?? now.travel,
  contents: new Map([...now.contents, ...draft.contents]),
  settings: new Map([...now.settings, ...draft.settings]),
});

export const copyOf = (draft: Draft): Draft => ({
  chassis: draft.chassis,
  travel: draft.travel,
  contents: new Map(draft.contents),
  settings: new Map(draft.settings),
});

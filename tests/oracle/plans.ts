import { multiplyDivide } from '../../src/quantity/money.ts';
import { byCodeUnit } from '../../src/quantity/order.ts';
import { type Content, isRenewable, known, operationsOf, sameContent } from './book.ts';
import { buildsMeeting, type Ruled } from './builds.ts';
import { costsOf, purchaseOf } from './buying.ts';
import type { Cost } from './cost.ts';
import { contentOf, isChanged, nowIn, type Scene, slotsOf } from './scene.ts';
import type { Packs } from './shopping.ts';
import { money } from './stock.ts';
import { wishes } from './wishes.ts';
import { sum, type Work, wantedServices, workOf } from './work.ts';

/** What plans are measured by. */
export interface Vector {
  /** Minor units. */
  readonly total: number;
  readonly minutes: number;
  /** Infinity where nobody knows. */
  readonly days: number;
  readonly unpriced: number;
  readonly unknowns: number;
}

/** A build with the work for it; nothing is bought yet. */
export interface Build extends Ruled {
  readonly work: Work;
}

export interface OraclePlan {
  readonly vector: Vector;
  readonly build: Build;
  readonly packs: Packs;
}

/** Every build that meets the wishes and the rules; what is not known may be allowed, and is counted. */
export const buildsOf = (scene: Scene, allowUnknown: boolean): readonly Build[] =>
  buildsMeeting(scene, wishes(scene))
    .filter(({ unknowns }) => allowUnknown || unknowns === 0)
    .map((ruled) => ({ ...ruled, work: workOf(scene, ruled.draft) }));

/** Every unbeaten vector of any plan, once, with its chosen build and purchase. */
export function frontOf(scene: Scene, builds: readonly Build[]): readonly OraclePlan[] {
  const priced = builds.map((build) => ({ build, vectors: vectorsOf(scene, build) }));
  const front = unbeaten(priced.flatMap(({ vectors }) => vectors));
  return front.map((vector) => {
    const able = priced.filter(({ vectors }) => vectors.some((one) => isSame(one, vector))).map(({ build }) => build);
    const build = known([...able].sort((a, b) => inChoosing(scene, a, b))[0], 'a build of the vector');
    const cost: Cost = {
      money: vector.total - (labour(scene, build.work) ?? 0),
      days: vector.days,
      unpriced: vector.unpriced,
    };
    return { vector, build, packs: known(purchaseOf(scene, build.work, cost), 'a purchase of the vector') };
  });
}

function vectorsOf(scene: Scene, { work, unknowns }: Build): readonly Vector[] {
  const bench = labour(scene, work) ?? 0;
  return costsOf(scene, work).map(({ money: cost, days, unpriced }) => ({
    total: cost + bench,
    minutes: work.minutes,
    days,
    unpriced,
    unknowns,
  }));
}

const PARTS = ['total', 'minutes', 'days', 'unpriced', 'unknowns'] as const;
export const isSame = (a: Vector, b: Vector): boolean => PARTS.every((part) => a[part] === b[part]);
const beats = (a: Vector, b: Vector): boolean => PARTS.every((part) => a[part] <= b[part]) && !isSame(a, b);

/** What beats a vector comes before it in this order, and is itself unbeaten or beaten by one that is. */
function unbeaten(vectors: readonly Vector[]): readonly Vector[] {
  const kept: Vector[] = [];
  for (const vector of [...vectors].sort(partByPart))
    if (!kept.some((other) => isSame(other, vector) || beats(other, vector))) kept.push(vector);
  return kept;
}

function partByPart(a: Vector, b: Vector): number {
  const part = PARTS.find((one) => a[one] !== b[one]);
  return part === undefined ? 0 : a[part] < b[part] ? -1 : 1;
}

/** Flat prices of the services asked for, and the other minutes by the hour; null where no shop says. */
export function labour(scene: Scene, { steps }: Work): number | null {
  const { book, now } = scene;
  if (book.shop === null) return null;
  const { rate, flat } = book.shop.labour;
  const flatly = wantedServices(scene).filter(({ id }) => flat[id] !== undefined);
  const covered = new Set(flatly.flatMap(({ operations }) => operations));
  const hourly = operationsOf(book, now.family).filter(({ id }) => steps.includes(id) && !covered.has(id));
  const byTheHour = multiplyDivide(known(money(book, rate), 'a rate'), sum(hourly.map(({ minutes }) => minutes)), 60);
  return byTheHour + sum(flatly.map(({ id }) => known(money(book, flat[id]), id)));
}

/** Fewest changed slots, renewable ones not counted; then slot by slot. */
function inChoosing(scene: Scene, a: Build, b: Build): number {
  const [one, other] = [countedChanges(scene, a), countedChanges(scene, b)];
  if (one !== other) return one - other;
  for (const slot of slotsOf(scene)) {
    const order = byContent(nowIn(scene, slot), contentOf(a.draft, slot), contentOf(b.draft, slot));
    if (order !== 0) return order;
  }
  for (const [name, mark] of a.draft.settings) {
    const order = mark - (b.draft.settings.get(name) ?? mark);
    if (order !== 0) return order;
  }
  return 0;
}

const countedChanges = (scene: Scene, { draft }: Build): number =>
  slotsOf(scene).filter((slot) => !isRenewable(scene.now.family, slot) && isChanged(scene, draft, slot)).length +
  [...draft.settings].filter(([name, mark]) => scene.now.settings.get(name) !== mark).length;

/** The content of now first, then by SKU, then by count; nothing after something. */
function byContent(now: Content, a: Content, b: Content): number {
  if (sameContent(a, b)) return 0;
  if (sameContent(a, now)) return -1;
  if (sameContent(b, now)) return 1;
  if (a === null || b === null) return a === null ? 1 : -1;
  return byCodeUnit(a.sku, b.sku) || a.quantity - b.quantity;
}

const ORDERS = {
  money: ['total', 'minutes', 'days', 'unpriced', 'unknowns'],
  time: ['minutes', 'total', 'days', 'unpriced', 'unknowns'],
  wait: ['days', 'total', 'minutes', 'unpriced', 'unknowns'],
} as const;

/** By what is preferred, then by the other parts of the vector. */
export function inOrderOf(prefer: keyof typeof ORDERS, front: readonly OraclePlan[]): readonly OraclePlan[] {
  return [...front].sort(({ vector: a }, { vector: b }) => {
    const part = ORDERS[prefer].find((one) => a[one] !== b[one]);
    return part === undefined ? 0 : a[part] < b[part] ? -1 : 1;
  });
}

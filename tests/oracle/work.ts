import { byCodeUnit } from '../../src/quantity/order.ts';
import { type Content, known, operationsOf, servicesOf } from './book.ts';
import type { Dose, Operation, Service, Used } from './records.ts';
import { remembering } from './remember.ts';
import { lastReplacements } from './replaced.ts';
import { chassisOf, contentOf, type Draft, isChanged, nowIn, partIn, type Scene, slotsOf } from './scene.ts';
import { areLeft } from './stock.ts';

/** What a job takes at the bench, and what it needs. */
export interface Work {
  readonly steps: readonly string[];
  readonly minutes: number;
  /** Slots that change, by SKU or count. */
  readonly changed: readonly string[];
  readonly renewed: ReadonlySet<string>;
  /** Pieces by SKU: of these so many must be new. */
  readonly pieces: ReadonlyMap<string, { readonly count: number; readonly fresh: number }>;
  /** Held units (µL, mg, pieces) by specification, rounded up. */
  readonly supplies: ReadonlyMap<string, number>;
}

/** What a job takes at the bench by what changes, whatever comes instead. */
interface Bench {
  readonly done: readonly Operation[];
  readonly steps: readonly string[];
  readonly minutes: number;
  readonly renewed: ReadonlySet<string>;
}

export function workOf(scene: Scene, draft: Draft): Work {
  const changed = slotsOf(scene).filter((slot) => isChanged(scene, draft, slot));
  const settings = [...draft.settings].filter(([name, value]) => scene.now.settings.get(name) !== value);
  const { done, steps, minutes, renewed } = benchFor(scene, [...changed, ...settings.map(([name]) => name)]);
  return {
    steps,
    minutes,
    changed,
    renewed,
    pieces: neededPieces(scene, draft, renewed),
    supplies: neededSupplies(scene, draft, done),
  };
}

const benches = remembering<Bench>(10_000);

/** Worked out once for each family, slots and settings that change, and wishes for work. */
function benchFor(scene: Scene, changed: readonly string[]): Bench {
  const { renew, service } = scene.question.wants;
  return benches(scene.book, JSON.stringify([scene.now.family.id, changed, renew, service]), () => {
    const services = wantedServices(scene);
    const done = closure(operationsOf(scene.book, scene.now.family), new Set([...changed, ...renew]), services);
    return {
      done,
      steps: inOrder(done).map(({ id }) => id),
      minutes: sum(done.map(({ minutes }) => minutes)),
      renewed: renewedSlots(scene, done, services),
    };
  });
}

export const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);

export const wantedServices = (scene: Scene): readonly Service[] =>
  servicesOf(scene.book, scene.now.family).filter(({ id }) => scene.question.wants.service.includes(id));

/** True where an operation gets at a slot by itself: it changes it, or puts new pieces into it whenever it is done. */
const reaches = ({ changes, renews }: Operation, slot: string): boolean =>
  changes.includes(slot) || renews.some((entry) => entry.slot === slot && entry.when === 'always');

/** True where some operation gets at a slot: by itself, or by renewing it in a wanted service that lists the operation. */
export function isReached(scene: Scene, slot: string): boolean {
  const listed = new Set(wantedServices(scene).flatMap(({ operations }) => operations));
  return operationsOf(scene.book, scene.now.family).some(
    (operation) =>
      reaches(operation, slot) || (listed.has(operation.id) && operation.renews.some((entry) => entry.slot === slot)),
  );
}

/** Every operation that reaches an asking slot, every one of a wanted service, what these require, and what closes them. */
function closure(
  operations: readonly Operation[],
  asking: ReadonlySet<string>,
  services: readonly Service[],
): readonly Operation[] {
  const byId = new Map(operations.map((operation) => [operation.id, operation]));
  const done = new Set<string>();
  const add = (id: string): void => {
    if (done.has(id)) return;
    done.add(id);
    const { requires, 'closed-by': closer } = known(byId.get(id), id);
    for (const required of requires) add(required);
    if (closer !== undefined) add(closer);
  };
  for (const operation of operations) if ([...asking].some((slot) => reaches(operation, slot))) add(operation.id);
  for (const service of services) for (const id of service.operations) add(id);
  return operations.filter(({ id }) => done.has(id));
}

/** A step is ready when all that goes before it is done; of several ready ones the least `order` goes first, then the id. */
export function inOrder(done: readonly Operation[]): readonly Operation[] {
  const left = [...done].sort((a, b) => a.order - b.order || byCodeUnit(a.id, b.id));
  const before = new Map(done.map((operation) => [operation.id, goesBefore(done, operation)]));
  const ordered: Operation[] = [];
  while (left.length > 0) {
    const at = left.findIndex(({ id }) => !left.some((other) => before.get(other.id)?.has(id)));
    if (at < 0) throw new Error('a circle of operations');
    ordered.push(...left.splice(at, 1));
  }
  return ordered;
}

/** The ids that `first` goes before. */
function goesBefore(done: readonly Operation[], first: Operation): ReadonlySet<string> {
  const later = done.filter(
    (other) =>
      other.requires.includes(first.id) ||
      other.after.includes(first.id) ||
      first['closed-by'] === other.id ||
      closesSomethingThatHolds(done, other, first),
  );
  return new Set(later.map(({ id }) => id));
}

/** What opens stays open until everything that requires it, and what closes that, is done. */
const closesSomethingThatHolds = (done: readonly Operation[], closer: Operation, first: Operation): boolean =>
  done.some(
    (opener) =>
      opener['closed-by'] === closer.id &&
      first.id !== closer.id &&
      done.some(
        (within) =>
          within.id !== closer.id &&
          requires(done, within, opener) &&
          !requires(done, within, closer) &&
          (within.id === first.id || within['closed-by'] === first.id),
      ),
  );

/** Directly, or through others. */
const requires = (done: readonly Operation[], one: Operation, other: Operation): boolean =>
  one.requires.includes(other.id) ||
  done.some((between) => one.requires.includes(between.id) && requires(done, between, other));

function renewedSlots(scene: Scene, done: readonly Operation[], services: readonly Service[]): ReadonlySet<string> {
  const listed = new Set(services.flatMap(({ operations }) => operations));
  const byWork = done.flatMap(({ id, renews }) =>
    renews.filter(({ when }) => when === 'always' || listed.has(id)).map(({ slot }) => slot),
  );
  return new Set([...byWork, ...scene.question.wants.renew]);
}

function neededPieces(scene: Scene, draft: Draft, renewed: ReadonlySet<string>): Work['pieces'] {
  const needed = new Map<string, { count: number; fresh: number }>();
  const add = (sku: string, count: number, isFresh: boolean): void => {
    const before = needed.get(sku) ?? { count: 0, fresh: 0 };
    if (count > 0) needed.set(sku, { count: before.count + count, fresh: before.fresh + (isFresh ? count : 0) });
  };
  for (const slot of slotsOf(scene)) {
    const content = contentOf(draft, slot);
    if (content === null) continue;
    const [isRenewed, changes] = [renewed.has(slot), isChanged(scene, draft, slot)];
    if (!isRenewed && !changes) continue;
    const rule = scene.now.family.slots[slot];
    const isFresh = isRenewed || rule?.wears === true || rule?.['single-use'] === true;
    const pieces = content.quantity - (isRenewed ? 0 : goesBack(nowIn(scene, slot), content));
    add(content.sku, pieces, isFresh);
    for (const [sku, count] of companions(scene, content.sku, pieces, changes ? 'all' : 'with-renewal'))
      add(sku, count, false);
  }
  return needed;
}

/** Pieces of the same SKU that were in the slot and go back. */
const goesBack = (before: Content, after: NonNullable<Content>): number =>
  before?.sku === after.sku ? Math.min(before.quantity, after.quantity) : 0;

/** Parts without a slot that come along with a part, and with those in turn; with one renewed by the same SKU only what cannot be taken over. */
function companions(
  scene: Scene,
  sku: string,
  pieces: number,
  which: 'all' | 'with-renewal',
): readonly (readonly [string, number])[] {
  if (pieces === 0) return [];
  return (scene.book.parts.get(sku)?.needs ?? [])
    .flatMap((need) =>
      'slot' in need || (which === 'with-renewal' && !need['with-renewal'])
        ? []
        : meant(scene, need.sku, need.quantity * pieces),
    )
    .flatMap((one) => [[one.sku, one.quantity] as const, ...companions(scene, one.sku, one.quantity, 'all')]);
}

/** So many pieces of a number, or of what stands for it where they cannot be had. */
const meant = (scene: Scene, sku: string, pieces: number): ReturnType<typeof lastReplacements> =>
  areLeft(scene, sku, pieces)
    ? [{ sku, quantity: pieces }]
    : lastReplacements(scene.book, scene.now, sku).map((last) => ({ ...last, quantity: last.quantity * pieces }));

function neededSupplies(scene: Scene, draft: Draft, done: readonly Operation[]): ReadonlyMap<string, number> {
  const total = new Map<string, number>();
  for (const used of done.flatMap(({ uses }) => uses)) {
    const taken = takenBy(scene, draft, used);
    if (taken !== null && taken.amount > 0)
      total.set(taken.specification, (total.get(taken.specification) ?? 0) + taken.amount);
  }
  const unitOf = (id: string): string =>
    known(
      scene.book.catalog.specifications.find((one) => one.id === id),
      id,
    ).unit;
  return new Map([...total].map(([id, amount]) => [id, roundedUp(amount, unitOf(id))]));
}

/** To 0.1 mL or 0.1 g. */
const roundedUp = (amount: number, unit: string): number => (unit === 'piece' ? amount : Math.ceil(amount / 100) * 100);

function takenBy(scene: Scene, draft: Draft, used: Used): { specification: string; amount: number } | null {
  if (used.dose === undefined) return { specification: used.specification ?? '', amount: used.amount ?? 0 };
  const stated = used.of === 'chassis' ? chassisOf(draft).doses : partIn(scene, draft, used.of)?.doses;
  const dose = stated?.[used.dose];
  return dose === undefined ? null : { specification: dose.specification, amount: doseAmount(dose, used.side) };
}

/** A side's own amount, else the amount; without a side the amount, else both legs together. */
function doseAmount(dose: Dose, side: Used['side']): number {
  if (side !== undefined) return dose[side] ?? dose.amount ?? 0;
  return dose.amount ?? (dose.left ?? 0) + (dose.right ?? 0);
}

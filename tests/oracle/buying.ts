import { byCodeUnit } from '../../src/quantity/order.ts';
import { type Cost, FREE, isSameCost, plus, unbeatenCosts } from './cost.ts';
import type { Kit } from './records.ts';
import type { Scene } from './scene.ts';
import { amountOf, isAskedFor, kitsOf, type Packs, piecesOf, range, type Ways } from './shopping.ts';
import type { Work } from './work.ts';

/** Things that are bought apart: one way of each group is taken. */
type Groups = readonly Ways[];

/** All costs of buying what a job needs that no other one is as good as. */
export const costsOf = (scene: Scene, work: Work): readonly Cost[] =>
  unbeatenCosts(
    everyWanted(scene, work).flatMap((wanted) =>
      sums(
        costsOfGroups(groupsOf(scene, onlySold(scene, wanted, 'singly'), [])),
        costsWithKits(scene, onlySold(scene, wanted, 'in kits too')),
      ),
    ),
  );

/** Every sum of two costs that no other sum is as good as. */
const sums = (some: readonly Cost[], others: readonly Cost[]): readonly Cost[] =>
  unbeatenCosts(some.flatMap((one) => others.map((other) => plus(one, other))));

const costsOfGroups = (groups: Groups): readonly Cost[] =>
  groups.reduce<readonly Cost[]>((total, { costs }) => sums(total, costs), [FREE]);

const memo = new WeakMap<Scene, Map<string, readonly Cost[]>>();

/** Worked out once for each list of what is wanted. */
function costsWithKits(scene: Scene, wanted: Wanted): readonly Cost[] {
  const here = memo.get(scene) ?? new Map<string, readonly Cost[]>();
  memo.set(scene, here);
  const text = JSON.stringify([[...wanted.pieces], [...wanted.amounts]]);
  const before = here.get(text);
  if (before) return before;
  const costs = unbeatenCosts(
    kitChoices(scene, wanted).flatMap((kits) => costsOfGroups(groupsOf(scene, wanted, kits))),
  );
  here.set(text, costs);
  return costs;
}

/** Of all purchases of one cost: fewest packs, then by the list of SKU and packs. */
export function purchaseOf(scene: Scene, work: Work, cost: Cost): Packs | null {
  const found = everyWanted(scene, work)
    .flatMap((wanted) => kitChoices(scene, wanted).map((kits) => groupsOf(scene, wanted, kits)))
    .flatMap((groups) => purchasesOfCost(groups, FREE, {}, cost));
  return [...found].sort(byPacks)[0] ?? null;
}

function purchasesOfCost([first, ...rest]: Groups, sofar: Cost, packs: Packs, cost: Cost): readonly Packs[] {
  if (sofar.money > cost.money || sofar.days > cost.days || sofar.unpriced > cost.unpriced) return [];
  if (first === undefined) return isSameCost(sofar, cost) ? [packs] : [];
  return first.ways.flatMap((way) => purchasesOfCost(rest, plus(sofar, way.cost), { ...packs, ...way.packs }, cost));
}

function byPacks(a: Packs, b: Packs): number {
  const [one, other] = [listOf(a), listOf(b)];
  if (total(one) !== total(other)) return total(one) - total(other);
  for (const [at, [sku, count]] of one.entries()) {
    const [otherSku, otherCount] = other[at] ?? ['', 0];
    if (sku !== otherSku) return byCodeUnit(sku, otherSku);
    if (count !== otherCount) return count - otherCount;
  }
  return 0;
}

type PackList = readonly (readonly [string, number])[];
const listOf = (packs: Packs): PackList => Object.entries(packs).sort(([a], [b]) => byCodeUnit(a, b));
const total = (list: PackList): number => list.reduce((packs, [, count]) => packs + count, 0);

/** What is still to be got: pieces by part, held units by supply. */
interface Wanted {
  readonly pieces: ReadonlyMap<string, number>;
  readonly amounts: ReadonlyMap<string, number>;
}

/** What is to be got beside what is at hand, for every choice of products. */
const everyWanted = (scene: Scene, work: Work): readonly Wanted[] =>
  productChoices(scene, work).map((amounts) => lessAtHand(scene, work, amounts));

/** What no kit holds is bought apart, whatever kits are chosen. */
function onlySold({ book }: Scene, wanted: Wanted, how: 'singly' | 'in kits too'): Wanted {
  const inKits = new Set([...book.kits.values()].flatMap(({ contents }) => contents.map(({ sku }) => sku)));
  const only = (map: ReadonlyMap<string, number>): ReadonlyMap<string, number> =>
    new Map([...map].filter(([sku]) => inKits.has(sku) === (how === 'in kits too')));
  return { pieces: only(wanted.pieces), amounts: only(wanted.amounts) };
}

type Kits = readonly (readonly [Kit, number])[];

function groupsOf(scene: Scene, wanted: Wanted, kits: Kits): Groups {
  const rest = lessKits(wanted, kits);
  return [
    ...kits.map(([kit, count]) => kitsOf(scene, kit.sku, count)),
    ...[...rest.pieces].map(([sku, count]) => piecesOf(scene, sku, count)),
    ...[...rest.amounts].map(([sku, amount]) => amountOf(scene, sku, amount)),
  ];
}

/** For each specification one product that meets it; what one product serves is added up. */
function productChoices(scene: Scene, work: Work): readonly ReadonlyMap<string, number>[] {
  let choices: readonly ReadonlyMap<string, number>[] = [new Map()];
  for (const [specification, amount] of work.supplies) {
    const products = scene.book.catalog.supplies.filter(({ meets }) => meets.includes(specification));
    choices = choices.flatMap((chosen) =>
      products.map(({ sku }) => new Map(chosen).set(sku, (chosen.get(sku) ?? 0) + amount)),
    );
  }
  const asked = scene.book.catalog.supplies.filter(({ sku, packs }) =>
    [sku, ...packs.map((pack) => pack.sku)].some((one) => scene.question.wants.use.includes(one)),
  );
  return choices.filter((chosen) => asked.every(({ sku }) => chosen.has(sku)));
}

/** Pieces that were in a fork never go where new ones must. */
function lessAtHand(scene: Scene, work: Work, amounts: ReadonlyMap<string, number>): Wanted {
  const atHand = contentsAtHand(scene);
  const pieces = [...work.pieces].map(([sku, { count, fresh }]): [string, number] => {
    const usedUp = Math.min(atHand.used.get(sku) ?? 0, count - fresh);
    return [sku, Math.max(0, count - usedUp - (atHand.fresh.get(sku) ?? 0))];
  });
  const left = [...amounts].map(([sku, amount]): [string, number] => [
    sku,
    Math.max(0, amount - (atHand.amounts.get(sku) ?? 0)),
  ]);
  return { pieces: new Map(pieces), amounts: new Map(left) };
}

interface AtHand {
  readonly fresh: Map<string, number>;
  readonly used: Map<string, number>;
  readonly amounts: Map<string, number>;
}

function contentsAtHand({ book, question }: Scene): AtHand {
  const atHand: AtHand = { fresh: new Map(), used: new Map(), amounts: new Map() };
  const add = (map: Map<string, number>, sku: string, more: number): void => {
    map.set(sku, (map.get(sku) ?? 0) + more);
  };
  for (const { sku, quantity = 1, amount, used } of question.have) {
    if (book.parts.has(sku)) add(used ? atHand.used : atHand.fresh, sku, quantity);
    if (amount !== undefined) add(atHand.amounts, sku, Math.round(amount.value * 1000));
    else if (book.supplies.get(sku)?.unit === 'piece') add(atHand.amounts, sku, quantity);
    for (const supply of book.supplies.values())
      for (const pack of supply.packs) if (pack.sku === sku) add(atHand.amounts, supply.sku, quantity * pack.size);
    for (const content of book.kits.get(sku)?.contents ?? [])
      if (content.amount === undefined) add(atHand.fresh, content.sku, quantity * (content.quantity ?? 1));
      else add(atHand.amounts, content.sku, quantity * content.amount);
  }
  return atHand;
}

/** Every number of each kit that holds something wanted, up to what is wanted of it. */
function kitChoices(scene: Scene, wanted: Wanted): readonly Kits[] {
  let choices: readonly Kits[] = [[]];
  for (const kit of scene.book.kits.values()) {
    const least = isAskedFor(scene, kit.sku) ? 1 : 0;
    const most = Math.max(
      least,
      ...kit.contents.map((content) => Math.ceil(stillWanted(wanted, content.sku) / holds(content))),
    );
    if (most === 0) continue;
    choices = choices.flatMap((kits) => range(least, most).map((count): Kits => [...kits, [kit, count]]));
  }
  return choices;
}

const stillWanted = ({ pieces, amounts }: Wanted, sku: string): number => pieces.get(sku) ?? amounts.get(sku) ?? 0;
const holds = ({ amount, quantity }: Kit['contents'][number]): number => amount ?? quantity ?? 1;

function lessKits(wanted: Wanted, kits: Kits): Wanted {
  const got = (sku: string): number =>
    kits.reduce(
      (sum, [kit, count]) =>
        sum + count * kit.contents.filter((content) => content.sku === sku).reduce((held, one) => held + holds(one), 0),
      0,
    );
  const less = (map: ReadonlyMap<string, number>): ReadonlyMap<string, number> =>
    new Map([...map].map(([sku, count]) => [sku, Math.max(0, count - got(sku))]));
  return { pieces: less(wanted.pieces), amounts: less(wanted.amounts) };
}

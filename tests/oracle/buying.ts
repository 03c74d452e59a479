import { byCodeUnit } from '../../src/quantity/order.ts';
import { byBuyer } from './buyer.ts';
import { type Cost, FREE, isSameCost, plus, unbeatenCosts } from './cost.ts';
import type { Kit } from './records.ts';
import type { Scene } from './scene.ts';
import { amountOf, isAskedFor, kitsOf, type Packs, piecesOf, range, type Ways } from './shopping.ts';
import type { Work } from './work.ts';

/** Things that are bought apart: one way of each group is taken. */
type Groups = readonly Ways[];

const rememberedCosts = byBuyer<readonly Cost[]>();

/** All costs of buying what a job needs that no other one is as good as. */
export const costsOf = (scene: Scene, work: Work): readonly Cost[] =>
  rememberedCosts(scene, textOfNeeds(work), () =>
    unbeatenCosts(
      everyWanted(scene, work).flatMap((wanted) =>
        lotsOf(scene, wanted).reduce<readonly Cost[]>((total, lot) => sums(total, costsOfLot(scene, lot)), [FREE]),
      ),
    ),
  );

const textOfNeeds = ({ pieces, supplies }: Work): string => JSON.stringify([[...pieces], [...supplies]]);

/** Every sum of two costs that no other sum is as good as. */
function sums(some: readonly Cost[], others: readonly Cost[]): readonly Cost[] {
  const all = some.flatMap((one) => others.map((other) => plus(one, other)));
  return all.length > 1 ? unbeatenCosts(all) : all;
}

/** What has one cost only is added up; the rest is joined. */
function costsOfGroups(groups: Groups): readonly Cost[] {
  let alone = FREE;
  const others: (readonly Cost[])[] = [];
  for (const { costs } of groups) {
    const [only, more] = costs;
    if (only !== undefined && more === undefined) alone = plus(alone, only);
    else others.push(costs);
  }
  return others.reduce<readonly Cost[]>(sums, [alone]);
}

const rememberedLots = byBuyer<readonly Cost[]>();

/** Worked out once for each list of what is wanted, and of kits that hold some of it. */
const costsOfLot = (scene: Scene, { wanted, kits }: Lot): readonly Cost[] =>
  rememberedLots(scene, JSON.stringify([[...wanted.pieces], [...wanted.amounts], kits.map(({ sku }) => sku)]), () =>
    unbeatenCosts(kitChoices(scene, wanted, kits).flatMap((some) => costsOfGroups(groupsOf(scene, wanted, some)))),
  );

const rememberedPurchases = byBuyer<Packs | null>();

/** Of all purchases of one cost: fewest packs, then by the list of SKU and packs. */
export const purchaseOf = (scene: Scene, work: Work, cost: Cost): Packs | null =>
  rememberedPurchases(scene, JSON.stringify([textOfNeeds(work), cost]), () => {
    const found = everyWanted(scene, work)
      .flatMap((wanted) => kitChoices(scene, wanted, everyKit(scene)).map((kits) => groupsOf(scene, wanted, kits)))
      .flatMap((groups) => purchasesOfCost(groups, FREE, {}, cost));
    return [...found].sort(byPacks)[0] ?? null;
  });

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

/** Things wanted, and the kits that hold some of them. */
interface Lot {
  readonly wanted: Wanted;
  readonly kits: readonly Kit[];
}

/** What no kit holds together is bought apart, whatever kits are chosen. */
function lotsOf(scene: Scene, wanted: Wanted): readonly Lot[] {
  const isHeld = ({ contents }: Kit, skus: readonly string[]): boolean =>
    contents.some(({ sku }) => skus.includes(sku));
  const noKits: readonly Kit[] = [];
  let lots = [...wanted.pieces.keys(), ...wanted.amounts.keys()].map((sku) => ({ skus: [sku], kits: noKits }));
  for (const kit of everyKit(scene)) {
    const tied = lots.filter(({ skus }) => isHeld(kit, skus));
    const joined = { skus: tied.flatMap(({ skus }) => skus), kits: [...tied.flatMap(({ kits }) => kits), kit] };
    if (tied.length > 0 || isAskedFor(scene, kit.sku)) lots = [...lots.filter((lot) => !tied.includes(lot)), joined];
  }
  return lots.map(({ skus, kits }) => ({ wanted: only(wanted, skus), kits }));
}

const everyKit = ({ book }: Scene): readonly Kit[] => [...book.kits.values()];

function only({ pieces, amounts }: Wanted, skus: readonly string[]): Wanted {
  const among = (map: ReadonlyMap<string, number>): ReadonlyMap<string, number> =>
    new Map([...map].filter(([sku]) => skus.includes(sku)));
  return { pieces: among(pieces), amounts: among(amounts) };
}

type Kits = readonly (readonly [Kit, number])[];

function groupsOf(scene: Scene, { pieces, amounts }: Wanted, kits: Kits): Groups {
  const got = heldIn(kits);
  const groups = kits.map(([kit, count]) => kitsOf(scene, kit.sku, count));
  for (const [sku, count] of pieces) {
    const left = count - (got.get(sku) ?? 0);
    if (left > 0) groups.push(piecesOf(scene, sku, left));
  }
  for (const [sku, amount] of amounts) groups.push(amountOf(scene, sku, Math.max(0, amount - (got.get(sku) ?? 0))));
  return groups;
}

/** Pieces and held units by SKU. */
function heldIn(kits: Kits): ReadonlyMap<string, number> {
  const got = new Map<string, number>();
  for (const [kit, count] of kits)
    for (const content of kit.contents) got.set(content.sku, (got.get(content.sku) ?? 0) + count * holds(content));
  return got;
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
function kitChoices(scene: Scene, wanted: Wanted, every: readonly Kit[]): readonly Kits[] {
  let choices: readonly Kits[] = [[]];
  for (const kit of every) {
    const least = isAskedFor(scene, kit.sku) ? 1 : 0;
    const most = Math.max(
      least,
      ...kit.contents.map((content) => Math.ceil(stillWanted(wanted, content.sku) / holds(content))),
    );
    if (most === 0) continue;
    choices = choices.flatMap((kits) =>
      range(least, most).map((count): Kits => (count === 0 ? kits : [...kits, [kit, count]])),
    );
  }
  return choices;
}

const stillWanted = ({ pieces, amounts }: Wanted, sku: string): number => pieces.get(sku) ?? amounts.get(sku) ?? 0;
const holds = ({ amount, quantity }: Kit['contents'][number]): number => amount ?? quantity ?? 1;

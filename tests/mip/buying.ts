import type { BuildModel } from './build.ts';
import type { Desk } from './desk.ts';
import type { Expression, Terms, Var } from './programme.ts';
import { bothOf, type WorkModel } from './work.ts';
import { cents, given } from './written.ts';

/** Section 6: what is needed and bought, as variables. Days are ranks of the lead times that there are: the last is "nobody knows". */
export interface BuyingModel {
  readonly cost: Expression;
  readonly rank: Var;
  /** Days by rank; null where nobody knows. */
  readonly days: readonly (number | null)[];
  readonly unpriced: Terms;
}

/** Most packs of one thing: more than any job of a generated catalogue needs. */
const MOST = 40;

interface Sale {
  readonly sku: string;
  readonly gives: ReadonlyMap<string, number>;
  readonly price: number | null;
}

interface Market {
  readonly cost: [number, Var][];
  readonly unpriced: [number, Var][];
  /** Packs by SKU. */
  readonly packs: Map<string, Var>;
  readonly given: Map<string, [number, Var][]>;
}

export function buyingModel(build: BuildModel, work: WorkModel): BuyingModel {
  const { desk, programme } = build;
  const rows = new Map(desk.generated.stock.map((row) => [row.split(',')[0] ?? '', row.split(',')]));
  const leads = [...rows.values()].flatMap(([, , , , lead = '']) => (/^[0-9]+$/.test(lead) ? [Number(lead)] : []));
  const days = [...[...new Set([0, ...leads])].sort((a, b) => a - b), null];
  const rank = programme.whole(days.length - 1);
  const market: Market = { cost: [], unpriced: [], packs: new Map(), given: new Map() };
  const useful = usefulSkus(build);
  for (const sale of salesOf(desk))
    if ([sale.sku, ...sale.gives.keys()].some((sku) => useful.has(sku)))
      sell(build, market, sale, rows.get(sale.sku), rank, days);
  pieces(build, work, market);
  supplies(build, work, market);
  for (const sku of desk.question.wants.use) {
    const packs = market.packs.get(sku);
    const isBought = packs !== undefined && !desk.parts.has(sku) && !isAtHand(desk, sku);
    if (isBought) programme.add([[1, packs]], '>=', 1);
  }
  return { cost: { terms: market.cost, plus: 0 }, rank, days, unpriced: market.unpriced };
}

/** What a plan may need, and what the question names: nothing else is worth buying. */
function usefulSkus({ desk, bodies, slots }: BuildModel): ReadonlySet<string> {
  const open = [
    ...desk.question.wants.use,
    ...(desk.generated.records.supplies ?? []).map(({ sku }) => sku),
    ...bodies.flatMap(({ value }) => [value.upper, value.lowers]),
    ...[...slots.values()].flat().flatMap(({ content }) => content?.sku ?? []),
  ];
  const all = new Set<string>();
  for (let sku = open.pop(); sku !== undefined; sku = open.pop()) {
    if (all.has(sku)) continue;
    all.add(sku);
    open.push(...(desk.parts.get(sku)?.needs ?? []).flatMap((need) => need.sku ?? []));
  }
  return all;
}

const isAtHand = ({ question }: Desk, sku: string): boolean => question.have.some((one) => one.sku === sku);

function salesOf({ generated: { records, stock } }: Desk): readonly Sale[] {
  const stocked = new Map(stock.map((row) => [row.split(',')[0] ?? '', row.split(',')[5]]));
  const price = (sku: string, listed: string | number | undefined): number | null =>
    cents(stocked.get(sku)) ?? cents(listed);
  return [
    ...(records.parts ?? []).map((part) => ({
      sku: part.sku,
      gives: new Map([[part.sku, part.pack ?? 1]]),
      price: price(part.sku, part.price),
    })),
    ...(records.kits ?? []).map((kit) => ({
      sku: kit.sku,
      gives: added(
        kit.contents.map(({ sku, quantity = 1, amount }) => [sku, amount === undefined ? quantity : given(amount)]),
      ),
      price: price(kit.sku, kit.price),
    })),
    ...(records.supplies ?? []).flatMap((supply) =>
      supply.packs.map((pack) => ({
        sku: pack.sku,
        gives: new Map([[supply.sku, given(pack.size)]]),
        price: price(pack.sku, pack.price),
      })),
    ),
  ];
}

function added(pairs: readonly (readonly [string, number])[]): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const [sku, amount] of pairs) sums.set(sku, (sums.get(sku) ?? 0) + amount);
  return sums;
}

/** Packs of one SKU: what is free is there at once; more waits for its lead time, or cannot be had. */
function sell(
  { programme }: BuildModel,
  market: Market,
  { sku, gives, price }: Sale,
  row: readonly string[] | undefined,
  rank: Var,
  days: readonly (number | null)[],
): void {
  const packs = programme.whole(MOST);
  market.packs.set(sku, packs);
  for (const [given, amount] of gives) market.given.set(given, [...(market.given.get(given) ?? []), [amount, packs]]);
  if (price === null) {
    const some = programme.yesOrNo();
    programme.add(
      [
        [1, packs],
        [-MOST, some],
      ],
      '<=',
      0,
    );
    market.unpriced.push([1, some]);
  } else market.cost.push([price, packs]);
  const [, onHand = '0', reserved = '0', state, lead] = row ?? [sku, '0', '0', 'active', 'unknown'];
  const free = Math.max(0, Number(onHand) - Number(reserved));
  if (state === 'discontinued' || lead === '') {
    programme.add([[1, packs]], '<=', free);
    return;
  }
  const later = programme.yesOrNo();
  programme.add(
    [
      [1, packs],
      [-MOST, later],
    ],
    '<=',
    free,
  );
  const place = lead === 'unknown' ? days.length - 1 : days.indexOf(Number(lead));
  programme.add(
    [
      [1, rank],
      [-place, later],
    ],
    '>=',
    0,
  );
}

/** New pieces of every slot that changes or is renewed, with what comes along without a slot. Used pieces at hand never go where new ones must. */
function pieces({ desk, programme, slots, bodies }: BuildModel, work: WorkModel, market: Market): void {
  const all = new Map<string, [number, Var][]>();
  const fresh = new Map<string, [number, Var][]>();
  const need = (sku: string, count: number, variable: Var, isFresh: 'fresh' | 'any'): void => {
    if (count === 0) return;
    all.set(sku, [...(all.get(sku) ?? []), [count, variable]]);
    if (isFresh === 'fresh') fresh.set(sku, [...(fresh.get(sku) ?? []), [count, variable]]);
    else fresh.set(sku, fresh.get(sku) ?? []);
  };
  const along = (sku: string, count: number, variable: Var, which: 'all' | 'with-renewal'): void => {
    for (const one of desk.parts.get(sku)?.needs ?? []) {
      if (one.sku === undefined || (which === 'with-renewal' && one['with-renewal'] !== true)) continue;
      need(one.sku, count * (one.quantity ?? 1), variable, 'any');
      along(one.sku, count * (one.quantity ?? 1), variable, 'all');
    }
  };
  for (const [slot, choices] of slots) {
    const { wears = false, 'single-use': singleUse = false } = desk.family.slots[slot] ?? {};
    const before = desk.now.get(slot) ?? null;
    const renewed = work.renewed.get(slot) ?? 0;
    for (const { content, isNow, chosen } of choices) {
      if (content === null) continue;
      const { sku, quantity } = content;
      const back = before?.sku === sku ? Math.min(before.quantity, quantity) : 0;
      const both = bothOf({ programme }, chosen, renewed);
      if (!isNow) {
        // what goes back stays out of the need unless the slot is renewed
        need(sku, quantity - back, chosen, wears || singleUse ? 'fresh' : 'any');
        along(sku, quantity - back, chosen, 'all');
      }
      need(sku, isNow ? quantity : back, both, 'fresh');
      along(sku, isNow ? quantity : back, both, isNow ? 'with-renewal' : 'all');
      if (!isNow && !wears && !singleUse && quantity > back)
        // renewed, all of it is new: also what was counted as any
        fresh.set(sku, [...(fresh.get(sku) ?? []), [quantity - back, both]]);
    }
  }
  for (const { value, isNow, chosen } of bodies)
    for (const [slot, sku, was] of [
      ['upper', value.upper, desk.body.upper],
      ['lowers', value.lowers, desk.body.lowers],
    ] as const) {
      const renewed = bothOf({ programme }, chosen, work.renewed.get(slot) ?? 0);
      if (!isNow && sku !== was) {
        need(sku, 1, chosen, 'any');
        fresh.set(sku, [...(fresh.get(sku) ?? []), [1, renewed]]);
      } else need(sku, 1, renewed, 'fresh');
    }
  for (const [sku, terms] of all) {
    const [unused, used] = [atHand(desk, sku, false), atHand(desk, sku, true)];
    const bought = market.given.get(sku) ?? [];
    programme.add([...bought, ...less(terms)], '>=', -unused - used);
    programme.add([...bought, ...less(fresh.get(sku) ?? [])], '>=', -unused);
  }
}

const less = (terms: Terms): Terms => terms.map(([by, variable]) => [-by, variable]);

const atHand = ({ question }: Desk, sku: string, isUsed: boolean): number =>
  question.have.reduce((sum, one) => sum + (one.sku === sku && one.used === isUsed ? (one.quantity ?? 1) : 0), 0);

/** Each specification that is used is served by one product; what one product serves is added up, rounded up before. */
function supplies({ desk, programme }: BuildModel, work: WorkModel, market: Market): void {
  const { records, shop } = desk.generated;
  const serving = new Map<string, [number, Var][]>();
  const named = new Map<string, Var[]>();
  for (const [specification, used] of work.used) {
    const isPieces = records.specifications?.find(({ id }) => id === specification)?.unit === 'piece';
    const grain = isPieces ? 1 : 100;
    const most = Math.ceil(used.reduce((sum, [by]) => sum + by, 0) / grain);
    const amount = programme.whole(most);
    programme.add([[grain, amount], ...less(used)], '>=', 0);
    const products = (records.supplies ?? []).filter(({ meets = [] }) => meets.includes(specification));
    const chosen = products.map(({ sku }) => ({ sku, is: programme.yesOrNo() }));
    programme.add(
      chosen.map(({ is }) => [1, is]),
      '=',
      1,
    );
    for (const { sku, is } of chosen) {
      const share = programme.whole(most);
      // share >= amount where this product is chosen
      programme.add(
        [
          [1, share],
          [-1, amount],
          [-most, is],
        ],
        '>=',
        -most,
      );
      serving.set(sku, [...(serving.get(sku) ?? []), [grain, share]]);
      const serves = programme.yesOrNo();
      programme.imply([serves], [is]);
      programme.add([...used, [-1, serves]], '>=', 0);
      named.set(sku, [...(named.get(sku) ?? []), serves]);
    }
  }
  for (const { sku, packs } of records.supplies ?? []) {
    const isAsked = [sku, ...packs.map((pack) => pack.sku)].some((one) => desk.question.wants.use.includes(one));
    if (isAsked) programme.imply([], named.get(sku) ?? []);
    const shares = serving.get(sku);
    if (shares === undefined) continue;
    const held = desk.question.have.reduce(
      (sum, one) => sum + (one.sku === sku ? Math.round((one.amount?.value ?? 0) * 1000) : 0),
      0,
    );
    const bulk = desk.question.supplies === 'bulk' ? shop.bulk?.find(({ supply }) => supply === sku) : undefined;
    const dosed = bulk === undefined ? [] : dosedFrom(programme, market, cents(bulk.price), given(bulk.per));
    programme.add([...(market.given.get(sku) ?? []), ...dosed, ...less(shares)], '>=', -held);
  }
}

/** So much from the drum, in steps of 0.1 mL or g, at its price rounded half up: 2 P C is at least 2 p A - P + 1, where p is the price of P steps. */
function dosedFrom(programme: BuildModel['programme'], market: Market, price: number | null, per: number): Terms {
  const [steps, perSteps] = [programme.whole(10_000), per / 100];
  if (price === null) {
    const some = programme.yesOrNo();
    programme.add(
      [
        [1, steps],
        [-10_000, some],
      ],
      '<=',
      0,
    );
    market.unpriced.push([1, some]);
  } else {
    const cost = programme.whole(10_000);
    programme.add(
      [
        [2 * perSteps, cost],
        [-2 * price, steps],
      ],
      '>=',
      1 - perSteps,
    );
    market.cost.push([1, cost]);
  }
  return [[100, steps]];
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Kit, StockRow } from '../../src/catalog/index.ts';
import { type Minor, minor } from '../../src/quantity/index.ts';
import { makeMarket } from '../../src/supply/index.ts';
import { hold } from './hold.ts';
import {
  answerOf,
  builtAndBought,
  type Case,
  demo,
  demoCases,
  lost,
  paper,
  paperCases,
  type Subject,
  withEntry,
} from './subject.ts';

const times = (factor: number, price: Minor | null): Minor | null => (price === null ? null : minor(price * factor));
const each = <Value>(map: ReadonlyMap<string, Value>, change: (value: Value) => Value): Map<string, Value> =>
  new Map([...map].map(([key, value]) => [key, change(value)]));

/** Everything that costs money costs so many times more. */
function dearer({ catalog, stock, shop }: Subject, factor: number): Subject {
  const priced = <T extends { readonly price: Minor | null }>(one: T): T => ({
    ...one,
    price: times(factor, one.price),
  });
  return {
    catalog: {
      ...catalog,
      parts: each(catalog.parts, priced),
      kits: each(catalog.kits, priced),
      packs: each(catalog.packs, priced),
    },
    stock: { ...stock, rows: each(stock.rows, priced) },
    shop: {
      ...shop,
      rate: minor(shop.rate * factor),
      flat: each(shop.flat, (price) => minor(price * factor)),
      bulk: each(shop.bulk, priced),
    },
  };
}

/** Doses from the drum and minutes are rounded: only where that leaves no remainder is every cost so many times more. */
const unrounded = ({ subject, question }: Case): boolean =>
  question.supplies !== 'bulk' && subject.shop.rate % 60 === 0;

describe('money', () => {
  const check = (one: Case, factor: number): void => {
    if (!unrounded(one)) return;
    const [before, after] = [answerOf(one), answerOf({ ...one, subject: dearer(one.subject, factor) })];
    expect(builtAndBought(after)).toEqual(builtAndBought(before));
    expect(after.plans.map(({ money }) => Math.round(Number(money.total) * 100))).toEqual(
      before.plans.map(({ money }) => Math.round(Number(money.total) * 100) * factor),
    );
  };
  const factor = fc.integer({ min: 2, max: 9 });

  it('law: all prices and the hourly rate times a whole number choose the same builds and packs (paper catalogue)', () => {
    hold('prices scale, paper', 120, fc.tuple(paperCases, factor), ([one, by]) => check(one, by));
  });
  it('law: all prices and the hourly rate times a whole number choose the same builds and packs (demo catalogue)', () => {
    hold('prices scale, demo', 25, fc.tuple(demoCases, factor), ([one, by]) => check(one, by));
  });
});

/**
 * Offers of which a twin brings nothing new: any number can be had at a known or unknown date. The twin is dearer, is not on the shelf and
 * comes when more of the original would come.
 */
function twinned(subject: Subject): readonly { readonly of: string; readonly twins: Subject }[] {
  const { catalog, stock, shop } = subject;
  return [...makeMarket(catalog, stock, shop).offers.values()].flatMap((offer) => {
    const { sku, kind, price, replaced } = offer;
    const later = offer.stock === null ? 'unknown' : offer.stock.discontinued ? null : offer.stock.lead;
    if (price === null || later === null || replaced !== 'no') return [];
    const twin = `${sku}-TWIN`;
    const row: StockRow = {
      sku: twin,
      onHand: 0,
      reserved: 0,
      discontinued: false,
      lead: later,
      price: null,
      bin: null,
    };
    const pack = catalog.packs.get(sku);
    const kit = catalog.kits.get(sku);
    const asKit: Kit = {
      sku: twin,
      maker: '',
      name: twin,
      numbers: {},
      parts: kit?.parts ?? [{ sku, quantity: catalog.parts.get(sku)?.pack ?? 1 }],
      supplies: kit?.supplies ?? [],
      replacedBy: [],
      price: minor(price + 1),
      source: { document: null, page: null, record: '' },
    };
    const more =
      kind === 'pack' && pack
        ? { packs: withEntry(catalog.packs, twin, { ...pack, sku: twin, price: minor(price + 1) }) }
        : { kits: withEntry(catalog.kits, twin, asKit) };
    return [
      {
        of: sku,
        twins: { catalog: { ...catalog, ...more }, stock: { ...stock, rows: withEntry(stock.rows, twin, row) }, shop },
      },
    ];
  });
}

describe('offers', () => {
  const check = (one: Case, { of, twins }: { readonly of: string; readonly twins: Subject }): void => {
    const [before, after] = [answerOf(one), answerOf({ ...one, subject: twins })];
    expect(JSON.stringify(after), of).toBe(JSON.stringify(before));
  };

  it('law: a dearer twin of an offer that comes no sooner changes nothing (paper catalogue)', () => {
    const cases = fc.tuple(paperCases, fc.constantFrom(...twinned(paper)));
    hold('twins change nothing, paper', 150, cases, ([one, twin]) => check(one, twin));
  });
  it('law: a dearer twin of an offer that comes no sooner changes nothing (demo catalogue)', () => {
    const cases = fc.tuple(demoCases, fc.constantFrom(...twinned(demo)));
    hold('twins change nothing, demo', 25, cases, ([one, twin]) => check(one, twin));
  });
});

describe('stock', () => {
  const oneMore = ({ catalog, stock, shop }: Subject, { sku }: StockRow): Subject => {
    const row = stock.rows.get(sku);
    return {
      catalog,
      shop,
      stock: row ? { ...stock, rows: withEntry(stock.rows, sku, { ...row, onHand: row.onHand + 1 }) } : stock,
    };
  };
  const check = (one: Case, row: StockRow): void => {
    const before = answerOf(one);
    const after = answerOf({ ...one, subject: oneMore(one.subject, row) });
    expect(lost(before, after), row.sku).toEqual([]);
    if (before.status === 'answered') expect(after.status).toBe('answered');
  };
  const rowOf = ({ stock }: Subject): fc.Arbitrary<StockRow> => fc.constantFrom(...stock.rows.values());

  it('law: with one more on the shelf every plan is equalled or beaten (paper catalogue)', () => {
    hold('more stock is never worse, paper', 150, fc.tuple(paperCases, rowOf(paper)), ([one, row]) => check(one, row));
  });
  it('law: with one more on the shelf every plan is equalled or beaten (demo catalogue)', () => {
    hold('more stock is never worse, demo', 25, fc.tuple(demoCases, rowOf(demo)), ([one, row]) => check(one, row));
  });
});

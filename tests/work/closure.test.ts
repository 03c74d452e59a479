import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Catalog, Operation } from '../../src/catalog/index.ts';
import { type Job, neededOperations, renewedSlots } from '../../src/work/index.ts';
import { hold } from '../laws/hold.ts';
import { outsideFile } from '../solve/outside.ts';
import { catalogOf, family, operation } from './operations.ts';

const job = (more: Partial<Job>): Job => ({ changed: [], renewed: [], services: [], ...more });
const needed = (catalog: Catalog, asked: Job) => {
  const operations = neededOperations(catalog, family, asked);
  return { operations, renewed: renewedSlots(catalog, asked, operations) };
};
const ids = (operations: readonly Operation[]): string[] => operations.map(({ id }) => id).sort();

describe('needed operations', () => {
  const fork = [
    operation('start', { closedBy: 'finish' }),
    operation('open', { requires: ['start'], closedBy: 'close' }),
    operation('swap', { requires: ['open'], changes: ['spring'] }),
    operation('wipe', {
      requires: ['open'],
      changes: ['wipers'],
      renews: [{ slot: 'wipers', when: 'with-service', every: null }],
    }),
    operation('close', { renews: [{ slot: 'washers', when: 'always', every: null }] }),
    operation('finish'),
    operation('cap', { requires: ['start'], changes: ['cap'] }),
  ];
  const catalog = catalogOf(fork, { care: ['open', 'wipe'] });

  it('changed slot: what changes it, what that requires and what closes those', () => {
    const { operations, renewed } = needed(catalog, job({ changed: ['spring'] }));
    expect([ids(operations), renewed]).toEqual([['close', 'finish', 'open', 'start', 'swap'], ['washers']]);
  });

  it('renewed by the way: a slot that closing spoils is renewed and asks for no further operations', () => {
    const washer = operation('washer', { changes: ['washers'] });
    const { operations, renewed } = needed(catalogOf([...fork, washer]), job({ changed: ['spring'] }));
    expect([ids(operations).includes('washer'), renewed]).toEqual([false, ['washers']]);
  });

  it('renewed by a want: a slot that closing spoils is reached by that closing', () => {
    const { operations, renewed } = needed(catalog, job({ renewed: ['washers'] }));
    expect([ids(operations), renewed]).toEqual([['close'], ['washers']]);
  });

  it('renewed with a service: an operation that only a service has renew a slot does not reach it by itself', () => {
    const seals = operation('seals', { renews: [{ slot: 'seals', when: 'with-service', every: null }] });
    const both = catalogOf([...fork, seals], { tidy: ['seals'] });
    expect(needed(both, job({ renewed: ['seals'] })).operations).toEqual([]);
    expect(ids(needed(both, job({ services: ['tidy'] })).operations)).toEqual(['seals']);
  });

  it('service: its operations, and what these renew with it; unasked nothing is renewed with service', () => {
    const asked = needed(catalog, job({ services: ['care'] }));
    expect([ids(asked.operations), asked.renewed]).toEqual([
      ['close', 'finish', 'open', 'start', 'wipe'],
      ['washers', 'wipers'],
    ]);
    expect(needed(catalog, job({ changed: ['wipers'] })).renewed).toEqual(['washers']);
  });

  it('closed slot: one that no operation changes asks for nothing', () => {
    expect(neededOperations(catalog, family, job({ changed: ['damper'] }))).toEqual([]);
  });

  it('the same set: is the same list, whatever asked for it', () => {
    const [one, other] = [['spring'], ['spring', 'damper']].map((changed) =>
      neededOperations(catalog, family, job({ changed })),
    );
    expect(one).toBe(other);
  });

  it('families: operations of another family are never drawn in', () => {
    const other = operation('other', { families: ['elsewhere'], changes: ['spring'] });
    expect(ids(neededOperations(catalogOf([...fork, other]), family, job({ changed: ['spring'] })))).not.toContain(
      'other',
    );
    // what it asks of another family is passed over, and what it asks of its own is not
    const asking = operation('ask', { requires: ['start', 'other'], changes: ['ring'] });
    expect(ids(neededOperations(catalogOf([...fork, other, asking]), family, job({ changed: ['ring'] })))).toEqual([
      'ask',
      'finish',
      'start',
    ]);
  });

  const SLOTS = ['a', 'b', 'c'];
  const NAMES = ['o0', 'o1', 'o2', 'o3', 'o4', 'o5', 'o6'];
  const random = fc
    .tuple(
      ...NAMES.map((id) =>
        fc.record({
          id: fc.constant(id),
          requires: fc.subarray(NAMES, { maxLength: 2 }),
          closedBy: fc.option(fc.constantFrom(...NAMES), { nil: null, freq: 2 }),
          changes: fc.subarray(SLOTS, { maxLength: 2 }),
        }),
      ),
    )
    .map((all) => all.map(({ id, ...more }) => operation(id, more)));
  const jobs = fc.record({
    changed: fc.subarray(SLOTS),
    renewed: fc.subarray(SLOTS),
    services: fc.subarray(['care', 'more']),
  });

  it('law: the one least set that holds what is asked for, what that requires and what closes it', () => {
    hold(
      'closure equals the least closed set',
      500,
      fc.tuple(random, jobs, fc.subarray(NAMES)),
      ([all, asked, listed]) => {
        const services = { care: listed.slice(0, 1), more: listed.slice(1, 2) };
        const slots = [...asked.changed, ...asked.renewed];
        const seeds = [
          ...all.filter(({ changes }) => changes.some((slot) => slots.includes(slot))).map(({ id }) => id),
          ...asked.services.flatMap((id) => (id === 'care' ? services.care : services.more)),
        ];
        const isClosed = (mask: number): boolean => {
          const has = (id: string): boolean => (mask & (1 << NAMES.indexOf(id))) !== 0;
          return (
            seeds.every(has) &&
            all.every(
              ({ id, requires, closedBy }) =>
                !has(id) || [...requires, ...(closedBy === null ? [] : [closedBy])].every(has),
            )
          );
        };
        const closed = Array.from({ length: 1 << NAMES.length }, (_one, mask) => mask).filter(isClosed);
        // what all closed sets share is closed itself: the least set is unique
        const least = closed.reduce((shared, mask) => shared & mask, (1 << NAMES.length) - 1);
        expect(isClosed(least)).toBe(true);
        const found = neededOperations(catalogOf(all, services), family, asked);
        expect(ids(found)).toEqual(NAMES.filter((_id, at) => (least & (1 << at)) !== 0));
      },
    );
  });

  it('law: more to do never takes fewer operations', () => {
    hold('closure grows', 300, fc.tuple(random, jobs, fc.constantFrom(...SLOTS)), ([all, asked, slot]) => {
      const catalogue = catalogOf(all, { care: ['o0'], more: ['o1'] });
      const some = ids(neededOperations(catalogue, family, asked));
      const more = ids(neededOperations(catalogue, family, { ...asked, changed: [...asked.changed, slot] }));
      expect(some.filter((id) => !more.includes(id))).toEqual([]);
    });
  });
});

describe('outside data: closures', () => {
  it('closure: what a target requires is the known set', () => {
    const text = outsideFile('orders/precedence-counts.json', 'known closures of targets');
    if (text === null) return;
    const { pdp10 } = JSON.parse(text) as {
      readonly pdp10: {
        readonly predecessors: Readonly<Record<string, readonly number[]>>;
        readonly closure_of_target_3: readonly number[];
        readonly closure_of_targets_3_7: readonly number[];
      };
    };
    const all = Array.from({ length: 10 }, (_one, at) => String(at + 1)).map((id) =>
      operation(id, { requires: (pdp10.predecessors[id] ?? []).map(String), changes: [id] }),
    );
    const closure = (changed: readonly string[]): number[] =>
      ids(neededOperations(catalogOf(all), family, job({ changed }))).map(Number);
    expect(closure(['3'])).toEqual(pdp10.closure_of_target_3);
    expect(closure(['3', '7'])).toEqual(pdp10.closure_of_targets_3_7);
  });
});

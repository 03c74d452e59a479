import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/audit/catalog.ts';
import { nowOf } from '../../src/audit/now.ts';
import { readQuestion } from '../../src/audit/question.ts';
import { row } from '../../src/audit/read.ts';
import { change } from './change.ts';
import { tinyCatalog } from './tiny-catalog.ts';

const one = (sku: string, quantity = 1) => ({ sku, quantity });
const now = (asked: object, edits: readonly (readonly [string, unknown])[] = []) => {
  const catalog = edits.reduce<unknown>((json, [path, to]) => change(json, path.split('.'), to), tinyCatalog);
  const book = openBook(row(catalog));
  return nowOf(book, readQuestion(book, { chassis: 'quarnel-622', ...asked }));
};
const held = (found: ReturnType<typeof now>, slot: string) => (found.ok ? found.build.get(slot) : found.why);

describe('now', () => {
  it('now: a factory build takes what it does not name from the chassis', () => {
    const found = now({ travelNow: 150 });
    expect(held(found, 'damper')).toEqual(one('QN-D'));
    expect(held(found, 'upper')).toEqual(one('QN-U'));
    expect(found).toMatchObject({ ok: true, derived: false, assumed: [] });
  });
  it('now: --with the spring leaves the volume spacers as the factory put them', () => {
    const found = now({ travelNow: 150, with: { spring: one('QN-S-150') } });
    expect(held(found, 'volume-spacers')).toEqual(one('QN-V'));
  });
  it('now: a travel no factory build has is derived by the one spring that gives it', () => {
    const found = now({ travelNow: 130 }, [['parts.QN-S-130F.fits', []]]);
    expect(found).toMatchObject({ ok: true, derived: true });
    expect(held(found, 'spring')).toEqual(one('QN-S-130'));
    expect(held(found, 'volume-spacers')).toEqual(one('QN-V', 3));
  });
  it('now: two springs that give the travel leave the question open', () => {
    expect(now({ travelNow: 130 })).toMatchObject({ ok: false });
  });
  it('now: two springs that give the travel are settled by --with', () => {
    const found = now({ travelNow: 130, with: { spring: one('QN-S-130F') } });
    expect(held(found, 'spring')).toEqual(one('QN-S-130F'));
    expect(held(found, 'volume-spacers')).toEqual(one('QN-V', 3));
  });
  it('now: of several factory builds the usual one is meant, and the others are said', () => {
    const other = { travel: '150 mm', slots: { spring: 'QN-S-150', 'volume-spacers': 'QN-V', wipers: null } };
    const builds = (items: readonly object[]) => [...items.map((build) => ({ ...build, usual: true })), other];
    const found = now({ travelNow: 150 }, [['chassis.quarnel-622.builds', builds]]);
    expect(held(found, 'wipers')).toEqual(one('QN-W', 2));
    expect(found).toMatchObject({ assumed: ['wipers'] });
  });
  it('now: travel spacers are counted where the family sets travel by them', () => {
    const spacer = {
      sku: 'QN-T',
      role: 'travel-spacers',
      dimensions: { length: '10 mm' },
      fits: [{ family: 'quarnel' }],
    };
    const found = now({ travelNow: 130 }, [
      ['families.quarnel.travel-set-by', 'travel-spacers'],
      ['families.quarnel.slots.travel-spacers', { most: 3 }],
      ['parts', (parts: readonly object[]) => [...parts, spacer]],
    ]);
    expect(held(found, 'travel-spacers')).toEqual(one('QN-T', 2));
    expect(held(found, 'spring')).toEqual(one('QN-S-150'));
  });
});

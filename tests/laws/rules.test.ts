import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Catalog } from '../../src/catalog/index.ts';
import { millimetres } from '../../src/quantity/index.ts';
import { hold } from './hold.ts';
import { answerOf, type Case, demo, demoCases, lost, paperCases, type Subject, withEntry } from './subject.ts';

/** A rule of the catalogue, named, and the catalogue without it. */
interface Removal {
  readonly name: string;
  readonly without: Catalog;
}

/** Every rule that can be taken out of a catalogue one by one: notices, limits, excludes, needs, a maker's no, travel ranges, bike limits. */
function removals(catalog: Catalog): readonly Removal[] {
  const parts = [...catalog.parts.values()].flatMap((part): Removal[] => {
    const changed = (name: string, more: Partial<typeof part>): Removal => ({
      name: `${part.sku} ${name}`,
      without: { ...catalog, parts: withEntry(catalog.parts, part.sku, { ...part, ...more }) },
    });
    return [
      ...part.excludes.map((_one, at) => changed(`excludes ${at}`, { excludes: part.excludes.toSpliced(at, 1) })),
      ...part.needs.map((_one, at) => changed(`needs ${at}`, { needs: part.needs.toSpliced(at, 1) })),
      ...part.fits.flatMap((clause, at) => [
        ...(clause.limits ? [changed(`limits ${at}`, { fits: part.fits.with(at, { ...clause, limits: null }) })] : []),
        ...(clause.not ? [changed(`not ${at}`, { fits: part.fits.toSpliced(at, 1) })] : []),
      ]),
    ];
  });
  const notices = [...catalog.notices.keys()].map(
    (id): Removal => ({
      name: `notice ${id}`,
      without: { ...catalog, notices: new Map([...catalog.notices].filter(([other]) => other !== id)) },
    }),
  );
  const ranges = [...catalog.chassis.values()].map(
    (chassis): Removal => ({
      name: `travel range of ${chassis.id}`,
      without: {
        ...catalog,
        chassis: withEntry(catalog.chassis, chassis.id, { ...chassis, travel: { least: null, greatest: null } }),
      },
    }),
  );
  const limits = [...catalog.bikes.values()].flatMap((bike) =>
    bike.limits.map(
      (_limit, at): Removal => ({
        name: `limit ${at} of ${bike.id}`,
        without: {
          ...catalog,
          bikes: withEntry(catalog.bikes, bike.id, { ...bike, limits: bike.limits.toSpliced(at, 1) }),
        },
      }),
    ),
  );
  return [...parts, ...notices, ...ranges, ...limits];
}

const removed = (subject: Subject): fc.Arbitrary<Removal> => fc.constantFrom(...removals(subject.catalog));

/** What was solvable stays so, and every plan of before is equalled or beaten. */
function check({ subject, question }: Case, { name, without }: Removal): void {
  const before = answerOf({ subject, question });
  if (before.status !== 'answered') return;
  const after = answerOf({ subject: { ...subject, catalog: without }, question });
  expect([name, after.status], JSON.stringify(question)).toEqual([name, 'answered']);
  expect(lost(before, after), `${name}: ${JSON.stringify(question)}`).toEqual([]);
}

/** A rule that the catalogue did not have: two parts exclude each other, one needs another, a maker says no, a travel is limited. */
function injections({ catalog }: Subject): fc.Arbitrary<Catalog> {
  const part = fc.constantFrom(...catalog.parts.values());
  const chassis = fc.constantFrom(...catalog.chassis.values());
  return fc
    .tuple(part, part, chassis, fc.constantFrom('excludes', 'needs', 'not', 'limits'), fc.constantFrom(100, 120, 140))
    .map(([one, other, body, kind, travel]) => {
      const more = (): Partial<typeof one> => {
        switch (kind) {
          case 'excludes':
            return { excludes: [...one.excludes, { kind: 'sku', sku: other.sku, reason: 'tried' }] };
          case 'needs':
            return { needs: [...one.needs, { kind: 'slot', slot: other.role, anyOf: [other.sku], reason: null }] };
          case 'not': {
            const clause = one.fits[0];
            return clause ? { fits: [...one.fits, { ...clause, chassis: [body.id], not: true, reason: 'tried' }] } : {};
          }
          case 'limits':
            return {
              fits: one.fits.map((clause) => ({ ...clause, limits: { least: null, greatest: millimetres(travel) } })),
            };
        }
      };
      return { ...catalog, parts: withEntry(catalog.parts, one.sku, { ...one, ...more() }) };
    });
}

describe('rules', () => {
  it('law: a rule more never makes an unsolvable question solvable, nor an answer better', () => {
    const cases = paperCases.chain((one) => fc.tuple(fc.constant(one), injections(one.subject)));
    hold('rules more only forbid, paper', 200, cases, ([{ subject, question }, catalog]) =>
      check({ subject: { ...subject, catalog }, question }, { name: 'the rule laid on top', without: subject.catalog }),
    );
  });

  it('law: a rule less never makes a solvable question unsolvable, nor an answer worse (paper catalogue)', () => {
    const cases = paperCases.chain((one) => fc.tuple(fc.constant(one), removed(one.subject)));
    hold('rules only forbid, paper', 60, cases, ([one, removal]) => check(one, removal));
  });

  it('law: a rule less never makes a solvable question unsolvable, nor an answer worse (demo catalogue)', () => {
    expect(removals(demo.catalog).length).toBeGreaterThan(10);
    const cases = fc.tuple(demoCases, removed(demo));
    hold('rules only forbid, demo', 30, cases, ([one, removal]) => check(one, removal));
  });
});

import { describe, expect, it } from 'vitest';
import { type Clause, clauseMatches, listsOf, type Part } from '../../src/catalog/index.ts';
import {
  type AirSpring,
  axialLoad,
  countsDisagree,
  cubicMetres,
  gaugePressure,
  gaugePressureOf,
  kilogramsOf,
  metres,
  metresOf,
  STANDARD_ATMOSPHERE,
  spacersKeepingEnd,
  travelUnder,
} from '../../src/physics/index.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { airSpringOf } from './catalogued.ts';
import { value } from './outcomes.ts';
import { rider } from './people.ts';

// The demo catalogue's air springs held against the gas law: do their chambers give the travel, the counts and the charts that it claims?

const { catalog } = (await loadCatalogFolder(demoFolder)).world;
const airSprings = [...catalog.parts.values()].filter(
  ({ role, traits, fits }) => role === 'spring' && traits.get('kind') === 'air' && fits.length > 0,
);

/** One spring as it stands in a chassis at a travel, with the standard and the greatest count of volume spacers. */
interface Case {
  readonly name: string;
  readonly part: Part;
  readonly chassis: string;
  readonly travel: number;
  readonly standard: number;
  readonly greatest: number;
  readonly with: (spacers: number) => AirSpring;
}

const spacerOf = (part: Part, family: string): Part | null =>
  listsOf(catalog)
    .partsAbout('volume-spacers', family)
    .find(({ interfaces }) => interfaces.get('spacer-seat') === part.interfaces.get('spacer-seat')) ?? null;

const cases: readonly Case[] = airSprings.flatMap((part) =>
  [...catalog.chassis.values()].flatMap((chassis) => {
    const clause = part.fits.find((one) => !one.not && clauseMatches(one, chassis));
    const top = clause?.travels[0];
    if (!clause || top === undefined) return [];
    return stepsOf(clause, top).map(({ taken, ...counts }) => ({
      name: `${part.sku} in ${chassis.id} at ${(top - taken) / 1000} mm`,
      part,
      chassis: chassis.id,
      travel: top - taken,
      ...counts,
      with: (spacers: number) => held(part, clause, chassis.family, spacers, taken),
    }));
  }),
);

/** What travel spacers take away, where counts go by travel; nothing elsewhere. A spring that names no count takes none. */
function stepsOf({ volumeSpacers }: Clause, top: number) {
  const steps = volumeSpacers.length === 0 ? [{ travel: null, standard: 0, greatest: 0 }] : volumeSpacers;
  return steps.map(({ travel, standard, greatest }) => ({
    taken: travel === null ? 0 : top - travel,
    standard: standard ?? 0,
    greatest: greatest ?? 0,
  }));
}

/** A travel spacer stands between piston and seal head: it holds the piston higher when the fork is extended, and so takes its length off the positive chamber. */
function held(part: Part, clause: Clause, family: string, spacers: number, taken: number): AirSpring {
  const found = airSpringOf(part, clause, spacerOf(part, family), spacers);
  if (!found) throw new Error(`${part.sku} does not state its chambers`);
  const height = metresOf(taken as (typeof clause.travels)[number]);
  return {
    ...found,
    travel: metres(found.travel - height),
    positiveVolume: cubicMetres(found.positiveVolume - found.pistonArea * height),
  };
}

/** How many times smaller the positive chamber is at full travel than at full extension. */
const compression = ({ positiveVolume, spacers, spacerVolume, pistonArea, travel }: AirSpring): number => {
  const chamber = positiveVolume - spacers * spacerVolume;
  return chamber / (chamber - pistonArea * travel);
};

describe('demo catalogue, air springs', () => {
  it('every one: states piston, shaft, both chambers, pressures and a chart', () => {
    expect(airSprings.length).toBeGreaterThan(30);
    for (const { sku, air, dimensions } of airSprings) {
      expect([sku, dimensions.has('bore'), dimensions.has('shaft')]).toEqual([sku, true, true]);
      expect([sku, air?.positiveVolume, air?.negativeVolume, air?.least, air?.greatest]).not.toContain(null);
      expect([sku, air !== null && (air.equalisesAt === null) !== (air.negativePressure === null)]).toEqual([
        sku,
        true,
      ]);
      expect([sku, (air?.chart.length ?? 0) >= 3]).toEqual([sku, true]);
    }
  });

  it('charts: rows follow on each other, a heavier rider never needs less, all within what is allowed', () => {
    for (const { sku, air } of airSprings) {
      const rows = air?.chart ?? [];
      for (const [at, row] of rows.entries()) {
        const next = rows[at + 1];
        expect([sku, row.least < row.greatest]).toEqual([sku, true]);
        if (next) expect([sku, next.from === row.to, next.least >= row.least]).toEqual([sku, true, true]);
        expect([sku, row.least >= (air?.least ?? 0), row.greatest <= (air?.greatest ?? 0)]).toEqual([sku, true, true]);
      }
    }
  });

  // Common practice, no source: two to three and a half times, with a child's fork below.
  it.each(cases.map((one) => [one.name, one] as const))(
    '%s: the chamber gives the travel, at both counts',
    (_name, one) => {
      expect(compression(one.with(one.standard))).toBeGreaterThan(one.travel < 90_000 ? 1.6 : 2);
      expect(compression(one.with(one.standard))).toBeLessThan(3.2);
      expect(compression(one.with(one.greatest))).toBeLessThan(3.7);
    },
  );

  // Statics: mass times g times two fifths times sin 65°; gas law with n = 1, since nobody moves while sag is read. A
  // quarter of the travel, give or take an eighth: common practice, no source.
  it.each(cases.map((one) => [one.name, one] as const))(
    '%s: the chart gives a sag that one rides with',
    (_name, one) => {
      for (const row of one.part.air?.chart ?? []) {
        const load = value(axialLoad(rider((kilogramsOf(row.from) + kilogramsOf(row.to)) / 2)));
        const pump = gaugePressure((gaugePressureOf(row.least) + gaugePressureOf(row.greatest)) / 2);
        const spring = one.with(one.standard);
        const sag =
          value(travelUnder(spring, { pump, ambient: STANDARD_ATMOSPHERE, exponent: 1 }, load)) / spring.travel;
        expect(sag).toBeGreaterThan(0.12);
        expect(sag).toBeLessThan(0.38);
      }
    },
  );
});

describe('demo catalogue, volume spacers', () => {
  const keyOf = ({ chassis, part }: Case): string => `${chassis} ${part.maker}`;
  const byChassis = [...new Set(cases.map(keyOf))].map(
    (key) => [key, cases.filter((one) => keyOf(one) === key)] as const,
  );

  // Common practice, no source: less travel takes more, and about two more from 160 to 130 mm. The count that is practised gives
  // more at the end than the old one would, and no more than the longer fork had.
  it.each(byChassis.filter(([, all]) => all.length > 1))(
    '%s: the shorter, the more spacers, and the end is not harsher',
    (_chassis, all) => {
      const sorted = [...all].sort((a, b) => b.travel - a.travel);
      for (const [at, shorter] of sorted.entries()) {
        const longer = sorted[at - 1];
        if (!longer || longer.travel === shorter.travel) continue;
        expect([shorter.name, shorter.standard >= longer.standard]).toEqual([shorter.name, true]);
        expect(compression(shorter.with(shorter.standard))).toBeLessThanOrEqual(
          compression(longer.with(longer.standard)) + 1e-9,
        );
        expect(compression(shorter.with(shorter.standard))).toBeGreaterThanOrEqual(
          compression(shorter.with(longer.standard)),
        );
      }
    },
  );

  // Common practice, no source: the practised count lies between the old one and the one that keeps the end-of-stroke ratio whole.
  it.each(['quennet-622', 'kerrolt-622', 'kerrolt-622-20x110'])(
    '%s: from 160 to 130 mm the count lies between the old one and the one that keeps the end',
    (chassis) => {
      const at = (travel: number): Case => {
        const found = cases.find((one) => one.chassis === chassis && one.travel === travel * 1000);
        if (!found) throw new Error(`${chassis} has ${travel} mm`);
        return found;
      };
      const [longer, shorter] = [at(160), at(130)];
      const { keeps } = value(
        spacersKeepingEnd({
          before: longer.with(longer.standard),
          after: shorter.with(shorter.standard),
          load: value(axialLoad(rider(80))),
          sag: 0.25,
          ambient: STANDARD_ATMOSPHERE,
          exponent: 1.3,
          greatest: 12,
        }),
      );
      expect(shorter.standard).toBeGreaterThan(longer.standard);
      expect(shorter.standard).toBeLessThanOrEqual(keeps ?? 0);
      expect(countsDisagree(shorter.standard, Math.round(keeps ?? 0))).toBe(false);
    },
  );

  it('from 160 to 130 mm on one chassis: two to three more', () => {
    const at = (chassis: string, travel: number) =>
      cases.find((one) => one.chassis === chassis && one.travel === travel * 1000)?.standard ?? Number.NaN;
    for (const chassis of ['quennet-622', 'kerrolt-622', 'kerrolt-622-20x110'])
      expect([2, 3]).toContain(at(chassis, 130) - at(chassis, 160));
  });
});

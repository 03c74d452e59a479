import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Chassis, Part } from '../../src/catalog/index.ts';
import { senseProblems } from '../../src/check/index.ts';
import { AGREEMENTS, fitVerdict } from '../../src/fitment/index.ts';
import { gaugePressureOf, kilogramsOf, metres, STANDARD_ATMOSPHERE, startPressure } from '../../src/physics/index.ts';
import type { QuestionInput } from '../../src/plan/index.ts';
import { en } from '../../src/report/words/en.ts';
import { airSpringOf } from '../physics/catalogued.ts';
import { value } from '../physics/outcomes.ts';
import { rider } from '../physics/people.ts';
import { askIn } from '../support/ask.ts';
import type { Loaded } from '../support/demo.ts';
import { changes, flagParams, flags, money, planAt, steps } from '../support/plan-views.ts';
import { fileNamed, headings, page, written, writtenWith } from './written.ts';

/** The question of the page's last section. */
const SHORTER: QuestionInput = { chassis: 'tamblin-622', travelNow: 150, wants: { travel: 130 } };

describe('catalog-schema/README.md', () => {
  it('the whole catalogue: passes the check without an error or a doubt', () => {
    for (const name of ['tamblin.yaml', 'shop.yaml', 'stock.csv']) expect(fileNamed(name).length).toBeGreaterThan(100);
    expect(senseProblems(writtenWith().world.catalog).map(({ code, params }) => [code, params])).toEqual([]);
  });

  it('the folder beside the page: holds the same three files to copy', () => {
    const folder = new URL('../../catalog-schema/example/', import.meta.url);
    expect(readdirSync(folder).sort()).toEqual(['shop.yaml', 'stock.csv', 'tamblin.yaml']);
    for (const name of readdirSync(folder))
      expect(readFileSync(new URL(name, folder), 'utf8')).toBe(fileNamed(name).replace(/^#.*\n/, ''));
  });

  it('the table of codes: names every code that a check can say', () => {
    const missing = Object.keys(en.codes.problems).filter((code) => !page.includes(`\`${code}\``));
    expect(missing).toEqual([]);
  });

  it('its question: two plans, at the prices, minutes and days that the page works out', () => {
    const { plans } = askIn(writtenWith(), SHORTER);
    expect(plans.map((plan) => [money(plan).at(-1), plan.minutes, plan.readyInDays])).toEqual([
      ['178.90', 55, 4],
      ['185.50', 55, 0],
    ]);
  });

  it.each(headings)('%s: its example, laid over the whole catalogue, is read without an error', (heading) => {
    const { world } = writtenWith(...(heading === 'Parts on the bike' ? ['Bikes'] : []), heading);
    expect(senseProblems(world.catalog).filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('headings: every one of the special sections is there', () => {
    expect(headings).toEqual(
      expect.arrayContaining([
        ...['Generations', 'Crowns and settings', 'Ratings', 'Room for the tyre', 'Air springs', 'Replaced numbers'],
        ...['Limits of two makers', 'Bikes', 'Parts on the bike', 'Notices'],
      ]),
    );
  });

  it('keys: every top-level key of a file is named on the page, and every agreement in its tables', () => {
    for (const key of [
      'catalog',
      'makers',
      'documents',
      'families',
      'chassis',
      'parts',
      'bikes',
      'notices',
      'services',
    ])
      expect(page).toContain(`\`${key}\``);
    const rows = page.split('\n').filter((line) => line.startsWith('| `'));
    for (const { role, measure } of AGREEMENTS)
      expect([
        role,
        measure,
        rows.some((row) => row.includes(`\`${role}\``) && row.includes(`\`${measure}\``)),
      ]).toEqual([role, measure, true]);
  });
});

const part = ({ world }: Loaded, sku: string): Part => found(world.catalog.parts.get(sku));
const chassis = ({ world }: Loaded, id: string): Chassis => found(world.catalog.chassis.get(id));
function found<Record>(record: Record | undefined): Record {
  if (record === undefined) throw new Error('the page has no such record');
  return record;
}

describe('catalog-schema/README.md: what each example is said to do', () => {
  it('generations: fits in May 2024, does not in March 2020, and is not known without a month', () => {
    const loaded = writtenWith('Generations');
    const verdict = (month: string | null) =>
      fitVerdict(loaded.world.catalog, part(loaded, 'TB-S-130'), chassis(loaded, 'tamblin-622'), {
        serial: null,
        month,
        generations: null,
      }).kind;
    expect([verdict('2024-05'), verdict('2020-03'), verdict(null)]).toEqual(['fits', 'no', 'unknown']);
    expect(askIn(loaded, { ...SHORTER, serial: 'TB7000' }).status).toBe('answered');
    expect(askIn(loaded, { ...SHORTER, serial: 'TB2000' }).status).toBe('impossible');
  });

  it('settings: 386 + 150 - 5 mm now, and 526 mm by a height of 10 mm, with the step that sets it', () => {
    const plan = planAt(
      askIn(writtenWith('Crowns and settings'), {
        chassis: 'tamblin-622',
        travelNow: 150,
        wants: { travel: 150, axleToCrown: { least: 526, greatest: 526 } },
      }),
      0,
    );
    expect(plan.effects.axleToCrown).toMatchObject({ from: 531, to: 526 });
    expect(steps(plan)).toEqual(['tamblin-look-over', 'tamblin-height', 'tamblin-hand-over']);
  });

  it('ratings: category 4 does for a bike of category 3, silence is not known', () => {
    const onto = { ...SHORTER, onto: 'orvane-ridge', ontoSize: 'm' };
    expect(askIn(writtenWith('Bikes', 'Ratings'), onto).status).toBe('answered');
    expect(askIn(writtenWith('Bikes'), onto).status).toBe('not-known');
  });

  it('room for the tyre: 60-622 clears, 62-622 meets the arch', () => {
    const loaded = writtenWith('Bikes', 'Ratings', 'Room for the tyre');
    const onto = { ...SHORTER, onto: 'orvane-ridge', ontoSize: 'm' };
    expect(askIn(loaded, onto).status).toBe('answered');
    const tight = askIn(loaded, { ...onto, tyre: '62-622' });
    expect(tight.status).toBe('impossible');
    expect(tight.refusal?.conflicts.flat().map(({ code }) => code)).toContain('tyre-room');
  });

  it('air springs: all that a first pressure needs, the chart beside it, and 183 mL pressed to 73', () => {
    const loaded = writtenWith('Air springs');
    const spring = part(loaded, 'TB-S-150');
    const held = airSpringOf(spring, found(spring.fits[0]), part(loaded, 'TB-V-1'), 1);
    const air = found(spring.air ?? undefined);
    if (!held) throw new Error('everything is stated');
    const chamber = (held.positiveVolume - held.spacerVolume) * 1e6;
    expect(chamber).toBeCloseTo(183, 9);
    expect(chamber - held.pistonArea * held.travel * 1e6).toBeCloseTo(73.4, 1);
    for (const { from, to, least, greatest } of air.chart)
      for (const mass of [from, to]) {
        const start = value(
          startPressure({
            spring: held,
            rider: rider(kilogramsOf(mass)),
            sag: { wanted: 0.25, tolerance: 0.05 },
            ambient: STANDARD_ATMOSPHERE,
            limits: { least: null, greatest: null, chart: null },
          }),
        );
        const printed = mass === from ? least : greatest;
        expect(Math.abs(start.pressure / gaugePressureOf(printed) - 1)).toBeLessThan(0.06);
      }
    expect(metres(held.travel)).toBeCloseTo(0.15, 12);
  });

  it('replaced: the last one on the shelf is used, and where there is none the new number is bought', () => {
    const use: QuestionInput = { chassis: 'tamblin-622', travelNow: 150, wants: { travel: 130, use: ['TB-S-130'] } };
    const spring = (stock: string) => planAt(askIn(written(['Replaced numbers'], stock), use), 0).build.spring?.sku;
    const shelf = fileNamed('stock.csv');
    expect([spring(shelf), spring(shelf.replace('TB-S-130,1,', 'TB-S-130,0,'))]).toEqual(['TB-S-130', 'TB-S-130-R']);
  });

  it('limits of two makers: both are shown where they differ, and 130 mm is within both', () => {
    const plan = planAt(askIn(writtenWith('Limits of two makers'), SHORTER), 0);
    expect(plan.effects.travel).toMatchObject({ from: 150, to: 130 });
    expect(flags(plan)).toContain('verify limits-disagree');
  });

  it('bikes: size and month settle the fork; without the month there are two', () => {
    const loaded = writtenWith('Bikes', 'Ratings');
    const ask = (more: QuestionInput) => askIn(loaded, { bike: 'orvane-ridge', wants: { travel: 130 }, ...more });
    const changed = (built: string) => changes(planAt(ask({ size: 'm', built }), 0)).at(-1);
    expect(changed('2024-05')).toBe('volume-spacers: TB-V-1 -> TB-V-1*3');
    expect(changed('2023-05')).toBe('volume-spacers: - -> TB-V-1*3');
    expect(() => ask({ size: 'm' })).toThrow('at fault');
  });

  it('parts on the bike: 160 mm and an adaptor of 20 mm take the rotor of 180 mm; without it a rule is broken', () => {
    const { catalog } = writtenWith('Bikes', 'Ratings', 'Room for the tyre', 'Parts on the bike').world;
    const bike = found(catalog.bikes.get('orvane-ridge'));
    const bare = new Map([[bike.id, { ...bike, slots: new Map([...bike.slots, ['adaptor', null]]) }]]);
    const codes = (all: typeof catalog) => senseProblems(all).map(({ code }) => code);
    expect(codes(catalog)).not.toContain('bike-fork-breaks-rule');
    expect(codes({ ...catalog, bikes: bare })).toContain('bike-fork-breaks-rule');
  });

  it('notices: one blocks by serial number, one is said, and what is missing is asked for', () => {
    const loaded = writtenWith('Notices');
    const blocked = askIn(loaded, { ...SHORTER, serial: 'TB1200' });
    expect([blocked.status, blocked.plans]).toEqual(['impossible', []]);
    expect(blocked.refusal?.conflicts.flat().map(({ code }) => code)).toEqual(['notice-blocks']);
    const flagged = askIn(loaded, { ...SHORTER, serial: 'TB2200', built: '2024-03' });
    expect(flagParams(flagged, 'notice')).toMatchObject([{ notice: 'orvane-2025-01' }]);
    expect(flags(askIn(loaded, SHORTER))).toContain('verify notice-check');
  });
});

import { describe, expect, it } from 'vitest';
import {
  type ChartRow,
  changedGeometry,
  degreesOf,
  gaugePressureOf,
  kilogramsOf,
  metres,
  metresOf,
  STANDARD_ATMOSPHERE,
  startPressure,
  tyreFromDesignation,
} from '../../src/physics/index.ts';
import { changed, oneFile, sound } from '../catalog/sound.ts';
import { airSpringOf } from './catalogued.ts';
import { value } from './outcomes.ts';
import { rider } from './people.ts';

const TEXT = changed([
  'role: spring\n',
  `role: spring
    dimensions: { bore: 35 mm, shaft: 12 mm }
    air:
      positive-volume: 200 mL
      negative-volume: 50 mL
      equalises-at: 3 mm
      pressure: { least: 40 psi, greatest: 150 psi }
      chart: [{ from: 70 kg, to: 85 kg, least: 55 psi, greatest: 75 psi }]
`,
])
  .replace('role: volume-spacers, fits', 'role: volume-spacers, volume: 9 mL, fits')
  .replace(
    'services:',
    `bikes:
  - { id: rill, maker: orlen, name: Rill, wheel: 622, tyre: 60-622, geometry: [{ head-angle: 66 deg, wheelbase: 1200 mm }] }
services:`,
  );

describe('a catalogue’s spring and bike: what physics needs is stated there', () => {
  const catalog = sound(oneFile(TEXT));
  const spring = catalog.parts.get('W-S');
  const clause = spring?.fits[0];
  if (!spring || !clause) throw new Error('the spring is in the catalogue');
  const chart = spring.air?.chart.map(
    (row): ChartRow => ({
      from: kilogramsOf(row.from),
      to: kilogramsOf(row.to),
      least: gaugePressureOf(row.least),
      greatest: gaugePressureOf(row.greatest),
    }),
  );

  it('spring: 35 mm of piston, 12 mm of shaft, the clause’s travel, a spacer of 9 mL', () => {
    const found = airSpringOf(spring, clause, catalog.parts.get('W-V') ?? null, 1);
    expect(found).toMatchObject({ travel: 0.12, spacers: 1, negative: { kind: 'equalised', at: 0.003 } });
    expect((found?.pistonArea ?? 0) * 1e6).toBeCloseTo(962.1128, 4);
    expect((found?.spacerVolume ?? 0) * 1e6).toBeCloseTo(9, 12);
  });

  it('starting pressure: for a rider of the chart, with the maker’s row beside it', () => {
    const found = airSpringOf(spring, clause, catalog.parts.get('W-V') ?? null, 1);
    if (!found || !spring.air) throw new Error('everything is stated');
    const start = value(
      startPressure({
        spring: found,
        rider: rider(80),
        sag: { wanted: 0.25, tolerance: 0.03 },
        ambient: STANDARD_ATMOSPHERE,
        limits: {
          least: spring.air.least === null ? null : gaugePressureOf(spring.air.least),
          greatest: spring.air.greatest === null ? null : gaugePressureOf(spring.air.greatest),
          chart: chart ?? null,
        },
      }),
    );
    expect(start.chart).toMatchObject({ from: 70, to: 85 });
    expect(start.limitsKnown).toBe(true);
    expect(start.psi?.least).toBeLessThanOrEqual(start.psi?.greatest ?? 0);
  });

  it('silence: a spacer without a volume, or a spring without chambers, makes nothing to work with', () => {
    expect(airSpringOf(spring, clause, null, 1)).toBeNull();
    expect(airSpringOf({ ...spring, air: null }, clause, null, 0)).toBeNull();
  });

  it('bike: head angle, wheelbase and tyre are enough for head angle and trail', () => {
    const bike = catalog.bikes.get('rill');
    const drawn = bike?.geometry[0];
    if (!bike?.tyre || !drawn) throw new Error('the bike is in the catalogue');
    const radius = metres(value(tyreFromDesignation(bike.tyre.designation)).diameter / 2);
    const before = {
      headAngle: degreesOf(drawn.headAngle),
      wheelbase: metresOf(drawn.wheelbase),
      frontRadius: radius,
      rearRadius: radius,
      offset: metres(0.044),
      bottomBracket: null,
      reachAndStack: null,
      seatAngle: null,
    };
    const change = { ...before, longer: metres(-0.03), rearSag: metres(0) };
    const { after } = value(changedGeometry(before, change));
    expect(after.headAngle).toBeGreaterThan(67);
    expect(after.bottomBracketHeight).toBeNull();
  });
});

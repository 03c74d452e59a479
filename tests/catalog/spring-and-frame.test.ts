import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readCatalog } from '../../src/catalog/index.ts';
import { parseQuantity } from '../../src/quantity/parse.ts';
import { type Change, changed, HERE, marked, oneFile, shown, sound } from './sound.ts';

/** The sound catalogue's spring with something more in it. */
const spring = (more: string): Change => ['price: "40.00"', `price: "40.00"\n    ${more}`];
const AIR =
  'air: { positive-volume: 205 mL, negative-volume: 52 mL, equalises-at: 4 mm, pressure: { least: 45 psi, greatest: 140 psi }, ' +
  'chart: [{ from: 60 kg, to: 70 kg, least: 62 psi, greatest: 70 psi }, { from: 70 kg, to: 80 kg, least: 70 psi, greatest: 79 psi }] }';
const BIKE = (more: string): Change => [
  'services:',
  `bikes:\n  - { id: rill, maker: orlen, name: Rill, sizes: [m, l], wheel: 622, tyre: 60-622, ${more} }\nservices:`,
];
const part = (text: string, sku: string) => sound(oneFile(text)).parts.get(sku);
const bike = (more: string) => sound(oneFile(changed(BIKE(more)))).bikes.get('rill');
/** The codes of a text's problems, each at the mark. */
const at = (change: Change): readonly (readonly string[])[] => {
  const { text, at: place } = marked(changed(change));
  const found = shown(readCatalog(oneFile(text), 'folder').problems);
  return [found, [`${found[0]?.split(' ')[0]} ${place.line}:${place.column}`]];
};

describe('air springs', () => {
  it('held: volumes in µL, travel in µm, pressures in Pa, riders in mg', () => {
    expect(part(changed(spring(AIR)), 'W-S')?.air).toEqual({
      positiveVolume: 205_000,
      negativeVolume: 52_000,
      equalisesAt: 4_000,
      negativePressure: null,
      // 45 and 140 psi at 6894.757 293 Pa; 62, 70 and 79 likewise
      least: 310_264,
      greatest: 965_266,
      chart: [
        { from: 60_000_000, to: 70_000_000, least: 427_475, greatest: 482_633 },
        { from: 70_000_000, to: 80_000_000, least: 482_633, greatest: 544_686 },
      ],
    });
  });

  it('silence: nothing said is null, and the chart empty', () => {
    const plain = part(changed(spring('')), 'W-S');
    expect([plain?.air, plain?.volume, plain?.fits[0]?.positiveVolume]).toEqual([null, null, null]);
    expect(part(changed(spring('air: { negative-volume: 50 mL }')), 'W-S')?.air).toMatchObject({
      positiveVolume: null,
      equalisesAt: null,
      least: null,
      greatest: null,
      chart: [],
    });
  });

  it('clause and spacer: a chamber that differs there, and what one spacer takes', () => {
    const there = changed([
      'travel: 120 mm, volume-spacers',
      'travel: 120 mm, positive-volume: 190 mL, volume-spacers',
    ]);
    expect(part(there, 'W-S')?.fits[0]?.positiveVolume).toBe(190_000);
    const spacer = changed(['role: volume-spacers, fits', 'role: volume-spacers, volume: 8.5 mL, fits']);
    expect(part(spacer, 'W-V')?.volume).toBe(8_500);
  });

  it.each<[string, Change]>([
    ['a volume in mm', spring(`air: { positive-volume: ${HERE}205 mm }`)],
    ['a pressure range upside down', spring(`air: { pressure: ${HERE}{ least: 90 psi, greatest: 60 psi } }`)],
    [
      'a chart row upside down',
      spring(`air: { chart: [${HERE}{ from: 70 kg, to: 60 kg, least: 60 psi, greatest: 70 psi }] }`),
    ],
    [
      'two rows for one rider',
      spring(
        `air: { chart: [{ from: 60 kg, to: 70 kg, least: 60 psi, greatest: 70 psi }, ${HERE}{ from: 65 kg, to: 80 kg, least: 60 psi, greatest: 70 psi }] }`,
      ),
    ],
  ])('fault: %s is at its place', (_what, change) => {
    const [found, expected] = at(change);
    expect(found).toEqual(expected);
  });

  it('fault: a port and a valve of its own at once, or either without a chamber', () => {
    const codes = (air: string) => readCatalog(oneFile(changed(spring(`air: { ${air} }`))), 'folder').problems.length;
    expect(codes('negative-volume: 50 mL, equalises-at: 4 mm')).toBe(0);
    expect(codes('negative-volume: 50 mL, negative-pressure: 80 psi')).toBe(0);
    for (const air of [
      'equalises-at: 4 mm',
      'negative-pressure: 80 psi',
      'negative-volume: 50 mL, equalises-at: 4 mm, negative-pressure: 80 psi',
      'positive-volume: 200 mL, piston: 30 mm',
    ])
      expect(codes(air)).toBeGreaterThan(0);
  });
});

describe('frames', () => {
  it('held: angles in thousandths of a degree, lengths in µm, with a place to cite', () => {
    const found = bike(
      'geometry: [{ sizes: [m], head-angle: 65.5 deg, seat-angle: 76°, wheelbase: 1205 mm, chainstay: 435 mm, bottom-bracket-drop: 33 mm, reach: 455 mm, stack: 622 mm }]',
    );
    expect(found?.geometry).toEqual([
      {
        sizes: ['m'],
        headAngle: 65_500,
        seatAngle: 76_000,
        wheelbase: 1_205_000,
        bottomBracket: { chainstay: 435_000, drop: 33_000 },
        reachAndStack: { reach: 455_000, stack: 622_000 },
        axleToCrown: null,
        offset: null,
        source: { document: null, page: null, record: 'bikes/rill#geometry[0]' },
      },
    ]);
  });

  it('silence: no geometry, and the rear tyre is that in front', () => {
    const found = bike('category: 3');
    expect(found?.geometry).toEqual([]);
    expect(found?.rearTyre).toEqual({ designation: '60-622', width: 60, bead: 622 });
    expect(bike('rear-tyre: 60-584')?.rearTyre?.bead).toBe(584);
  });

  it('drawn with another fork: its length, how that is measured, its offset', () => {
    const found = bike(
      'geometry: [{ head-angle: 66 deg, wheelbase: 1190 mm, axle-to-crown: { length: 541 mm, measured: straight }, offset: 44 mm }]',
    );
    expect(found?.geometry[0]).toMatchObject({
      axleToCrown: { length: 541_000, measured: 'straight' },
      offset: 44_000,
      bottomBracket: null,
      reachAndStack: null,
      seatAngle: null,
    });
  });

  it.each<[string, Change]>([
    ['an angle in mm', BIKE(`geometry: [{ head-angle: ${HERE}66 mm, wheelbase: 1200 mm }]`)],
    [
      'a size that the bike has not',
      BIKE(`geometry: [{ sizes: ${HERE}[xl], head-angle: 66 deg, wheelbase: 1200 mm }]`),
    ],
  ])('fault: %s is at its place', (_what, change) => {
    const [found, expected] = at(change);
    expect(found).toEqual(expected);
  });

  it('fault: a reach without a stack, a drop without a chainstay', () => {
    for (const half of ['reach: 455 mm', 'bottom-bracket-drop: 33 mm'])
      expect(
        readCatalog(oneFile(changed(BIKE(`geometry: [{ head-angle: 66 deg, wheelbase: 1200 mm, ${half} }]`))), 'folder')
          .problems.length,
      ).toBeGreaterThan(0);
  });

  it('angles: exact, in degrees', () => {
    const read = (text: string) => {
      const parsed = parseQuantity('angle', text);
      return parsed.ok ? parsed.value : parsed.fault;
    };
    expect(['65.5 deg', '65.55°', '0.0005 deg', '66 mm'].map(read)).toEqual([65_500, 65_550, 1, 'wrong-dimension']);
  });
});

describe('schema: its own examples hold', () => {
  it.each(['part', 'bike'])(
    '%s: the whole-record example and those of single fields pass where they belong',
    (name) => {
      // The examples stand in the schema for people to copy; a catalogue made of them must be read without a fault of form.
      const schema = JSON.parse(
        readFileSync(new URL(`../../catalog-schema/${name}.schema.json`, import.meta.url), 'utf8'),
      );
      const record = { ...schema.examples[0] };
      for (const [key, field] of Object.entries<{ examples?: readonly unknown[] }>(schema.properties))
        if (field.examples && (key === 'air' || key === 'geometry')) record[key] = field.examples[0];
      const file = { catalog: { name: 'x', currency: 'EUR' }, [name === 'part' ? 'parts' : 'bikes']: [record] };
      const { problems } = readCatalog(oneFile(JSON.stringify(file), 'one.json'), 'folder');
      // Names that other records would explain are missing here; nothing else may be wrong.
      expect([...new Set(problems.map(({ code }) => code))]).toEqual(['unknown-reference']);
    },
  );
});

import { type Catalog, type Clause, listsOf, type Part } from '../catalog/index.ts';
import type { Identity } from '../fitment/index.ts';
import { type Build, givingClause, travelOf } from '../fork/index.ts';
import {
  type AirSpring,
  type CoilSpring,
  cubicMetres,
  cubicMetresOf,
  gaugePressureOf,
  kilogramsOf,
  type Metres,
  metres,
  metresOf,
  type NegativeSide,
  type PressureLimits,
  type SquareMetres,
  springRateOf,
  squareMetres,
} from '../physics/index.ts';
import type { Micrometres } from '../quantity/index.ts';

/** The spring of a build as physics takes it, or what the catalogue does not state of it. */
export type LoadedSpring =
  | { readonly kind: 'air'; readonly part: Part; readonly spring: AirSpring; readonly limits: PressureLimits }
  | { readonly kind: 'coil'; readonly part: Part; readonly coil: CoilSpring }
  | { readonly kind: 'not-stated'; readonly part: Part; readonly lacking: readonly string[] };

/** The spring that a build holds; null where the family has no such slot, or nothing is in it. */
export function loadedSpring(catalog: Catalog, build: Build, identity: Identity): LoadedSpring | null {
  const part = catalog.parts.get(build.slots.get('spring')?.sku ?? '');
  if (!part) return null;
  const clause = givingClause(catalog, part, build.chassis, identity);
  const travel = travelOf(catalog, build, identity);
  if (!clause || travel === null) return { kind: 'not-stated', part, lacking: ['travel'] };
  const coil = catalog.parts.get(build.slots.get('coil')?.sku ?? '');
  if (coil || part.traits.get('kind') === 'coil') return coilOf(part, coil?.rate ?? part.rate, travel);
  const spacers = build.slots.get('volume-spacers') ?? null;
  const spacer = spacers ? (catalog.parts.get(spacers.sku) ?? null) : spacerFor(catalog, part, build.chassis.family);
  return airOf(part, clause, { travel, spacer, count: spacers?.quantity ?? 0 });
}

function coilOf(part: Part, rate: Part['rate'], travel: Micrometres): LoadedSpring {
  if (rate === null) return { kind: 'not-stated', part, lacking: ['rate'] };
  // Preload is set at the bench and not written down; how far a coil can be pressed is not a field of the catalogue.
  return {
    kind: 'coil',
    part,
    coil: { travel: metresOf(travel), rate: springRateOf(rate), preload: metres(0), room: null },
  };
}

/** The volume spacer that goes onto a spring's seat: the first that the catalogue lists for the family. */
export function spacerFor(catalog: Catalog, spring: Part, family: string): Part | null {
  const seat = spring.interfaces.get('spacer-seat');
  if (seat === undefined) return null;
  return (
    listsOf(catalog)
      .partsAbout('volume-spacers', family)
      .find(({ interfaces, volume }) => interfaces.get('spacer-seat') === seat && volume !== null) ?? null
  );
}

interface Fitted {
  readonly travel: Micrometres;
  readonly spacer: Part | null;
  readonly count: number;
}

/** An air spring by its chambers, in a chassis at a travel. What is not stated is named; nothing is guessed. */
export function airOf(part: Part, clause: Clause, { travel, spacer, count }: Fitted): LoadedSpring {
  const [bore, shaft, top] = [part.dimensions.get('bore'), part.dimensions.get('shaft'), clause.travels[0]];
  const positive = clause.positiveVolume ?? part.air?.positiveVolume ?? null;
  const negative = negativeOf(part);
  const volume = spacer?.volume ?? null;
  if (!bore || !shaft || !top || !positive || !negative || (count > 0 && volume === null)) {
    const stated: readonly (readonly [string, unknown])[] = [
      ['bore', bore],
      ['shaft', shaft],
      ['travel', top],
      ['positive-volume', positive],
      ['negative-volume', negative],
      ['volume of a volume spacer', count === 0 ? 'none is in it' : volume],
    ];
    return { kind: 'not-stated', part, lacking: stated.flatMap(([name, value]) => (value ? [] : [name])) };
  }
  const pistonArea = circle(metresOf(bore));
  // A travel spacer stands between piston and seal head: it holds the piston higher, and takes its length off the chamber.
  const taken = (top - travel) / 1e6;
  const spring: AirSpring = {
    travel: metresOf(travel),
    pistonArea,
    shaftArea: circle(metresOf(shaft)),
    positiveVolume: cubicMetres(cubicMetresOf(positive) - pistonArea * taken),
    spacerVolume: volume === null ? cubicMetres(0) : cubicMetresOf(volume),
    spacers: count,
    negative,
  };
  return { kind: 'air', part, spring, limits: limitsOf(part) };
}

const circle = (diameter: Metres): SquareMetres => squareMetres((Math.PI / 4) * diameter ** 2);

function negativeOf({ air }: Part): NegativeSide | null {
  if (!air?.negativeVolume) return null;
  const volume = cubicMetresOf(air.negativeVolume);
  if (air.equalisesAt !== null) return { kind: 'equalised', volume, at: metresOf(air.equalisesAt) };
  return air.negativePressure === null
    ? null
    : { kind: 'charged', volume, pressure: gaugePressureOf(air.negativePressure) };
}

/** What the maker allows and prints for an air spring. */
function limitsOf({ air }: Part): PressureLimits {
  const chart = air?.chart ?? [];
  return {
    least: air?.least ? gaugePressureOf(air.least) : null,
    greatest: air?.greatest ? gaugePressureOf(air.greatest) : null,
    chart:
      chart.length === 0
        ? null
        : chart.map((row) => ({
            from: kilogramsOf(row.from),
            to: kilogramsOf(row.to),
            least: gaugePressureOf(row.least),
            greatest: gaugePressureOf(row.greatest),
          })),
  };
}

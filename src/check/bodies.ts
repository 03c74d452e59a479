import type { Catalog, Chassis, Problem } from '../catalog/index.ts';
import { doubt, shown } from './places.ts';

/**
 * Do the lengths of a chassis add up, and do chassis that share an upper or lowers say the same of it? What a crown adds to the length of the legs
 * stands nowhere in a catalogue, so two chassis that share only one of the two may differ in axle-to-crown.
 */
export const bodyDoubts = (catalog: Catalog): Problem[] => [
  ...[...catalog.chassis.values()].flatMap((chassis) => [
    ...withoutOffset(catalog, chassis),
    ...tooShort(catalog, chassis),
  ]),
  ...sharedParts(catalog),
];

/** Axle-to-crown measured straight to the axle can be worked out at another travel only with the offset. */
const withoutOffset = (catalog: Catalog, chassis: Chassis): Problem[] =>
  chassis.axleToCrown?.measured === 'straight' && chassis.offset === null
    ? [doubt(catalog, chassis.source, 'straight-without-offset', { chassis: chassis.id })]
    : [];

/** At full compression tyre and crown would be in the same place: the crown race seat lies above the crown, and that clears the tyre. */
function tooShort(catalog: Catalog, chassis: Chassis): Problem[] {
  const length = shortest(chassis);
  if (length === null) return [];
  const wheel = Math.max(chassis.wheel, ...chassis.takes);
  const rim = { radius: (wheel / 2) * 1000, of: 'wheel' as const };
  const room = chassis.tyreRoom.crown === null ? rim : { radius: chassis.tyreRoom.crown, of: 'tyre' as const };
  const needs = room.radius > rim.radius ? room : rim;
  return length > needs.radius
    ? []
    : [
        doubt(catalog, chassis.source, 'axle-to-crown-too-short', {
          chassis: chassis.id,
          compressed: shown(Math.round(length / 100) * 100),
          radius: shown(needs.radius),
          of: needs.of,
        }),
      ];
}

/** Axle-to-crown at full compression, straight to the axle as far as the offset is known; null where the catalogue does not tell. In micrometres. */
function shortest({ axleToCrown, offset, travel }: Chassis): number | null {
  if (!axleToCrown) return null;
  const out = offset ?? 0;
  const along =
    axleToCrown.measured === 'straight'
      ? Math.sqrt(Math.max(0, axleToCrown.length ** 2 - out ** 2))
      : axleToCrown.length;
  const taken = axleToCrown.end === 'compressed' ? 0 : travel.greatest;
  return taken === null ? null : Math.sqrt(Math.max(0, along - taken) ** 2 + out ** 2);
}

/** What a chassis says of the part that it shares: the steerer belongs to the upper, unless it is a part of its own; axle, mount and arch to the lowers. */
const FACTS: readonly {
  readonly body: 'upper' | 'lowers';
  readonly fact: string;
  readonly of: (chassis: Chassis) => string | number | null;
}[] = [
  { body: 'upper', fact: 'steerer', of: ({ steerer }) => steerer?.kind ?? null },
  { body: 'upper', fact: 'steerer-top', of: ({ steerer }) => steerer?.top ?? null },
  { body: 'upper', fact: 'crown-race', of: ({ steerer }) => steerer?.crownRace ?? null },
  { body: 'upper', fact: 'steerer-length', of: ({ steerer }) => steerer?.length ?? null },
  { body: 'upper', fact: 'steerer-material', of: ({ steerer }) => steerer?.material ?? null },
  { body: 'lowers', fact: 'axle', of: ({ axle }) => axle.standard },
  { body: 'lowers', fact: 'spacing', of: ({ axle }) => axle.spacing },
  { body: 'lowers', fact: 'rotor-plane', of: ({ axle }) => axle.rotorPlane },
  { body: 'lowers', fact: 'brake-mount', of: ({ brake }) => brake?.mount ?? null },
  { body: 'lowers', fact: 'native-rotor', of: ({ brake }) => brake?.native ?? null },
  { body: 'lowers', fact: 'room-at-the-arch', of: ({ tyreRoom }) => tyreRoom.arch },
  { body: 'lowers', fact: 'width-at-the-arch', of: ({ tyreRoom }) => tyreRoom.width },
];

function sharedParts(catalog: Catalog): Problem[] {
  return FACTS.flatMap(({ body, fact, of }) => {
    const first = new Map<string, { readonly chassis: string; readonly value: string | number }>();
    return [...catalog.chassis.values()].flatMap((chassis) => {
      const value = of(chassis);
      const apart =
        body === 'upper' && catalog.families.get(chassis.family)?.slots.some(({ name }) => name === 'steerer');
      if (value === null || apart) return [];
      const sku = chassis[body];
      const before = first.get(sku);
      if (!before) first.set(sku, { chassis: chassis.id, value });
      if (!before || before.value === value) return [];
      const params = {
        sku,
        fact,
        chassis: chassis.id,
        own: shown(value),
        other: before.chassis,
        theirs: shown(before.value),
      };
      return [doubt(catalog, chassis.source, 'shared-part-disagrees', params)];
    });
  });
}

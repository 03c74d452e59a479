import { length } from './measure.ts';
import { type Row, row, text } from './read.ts';

type Kind = 'dimensions' | 'interfaces';
/** A fact of the part in a slot, and of what it must agree with: another slot, the family, the chassis or the bike. */
export interface Agreement {
  readonly slot: string;
  readonly fact: string;
  readonly kind: Kind;
  readonly with: 'family' | 'chassis' | 'bike' | { readonly slot: string };
  readonly its: string;
  /** Equal, or at most the other's. */
  readonly must: 'equal' | 'at-most';
  /** They meet only where this slot is there and empty. */
  readonly unless?: string;
}

const pair = (
  slot: string,
  kind: Kind,
  fact: string,
  other: Agreement['with'],
  its = fact,
  must: Agreement['must'] = 'equal',
): Agreement => ({ slot, kind, fact, with: other, its, must });

/** Inside the fork. */
export const FORK_AGREEMENTS: readonly Agreement[] = [
  pair('spring', 'dimensions', 'bore', 'family', 'spring-bore'),
  pair('spring', 'dimensions', 'ring-groove', 'family'),
  pair('damper', 'dimensions', 'bore', 'family', 'damper-bore'),
  pair('wipers', 'dimensions', 'stanchion', 'family'),
  pair('foam-rings', 'dimensions', 'stanchion', 'family'),
  pair('wipers', 'dimensions', 'seal-seat', { slot: 'lowers' }),
  pair('foam-rings', 'dimensions', 'seal-seat', { slot: 'lowers' }),
  pair('foot-seals', 'dimensions', 'foot-hole', { slot: 'lowers' }),
  pair('volume-spacers', 'interfaces', 'spacer-seat', { slot: 'spring' }),
  pair('volume-spacers', 'dimensions', 'bore', { slot: 'spring' }),
  pair('travel-spacers', 'dimensions', 'shaft', { slot: 'spring' }),
  pair('top-cap', 'interfaces', 'cap-thread', { slot: 'upper' }),
];

/** Between fork and bike, and on the bike (section 10). Words are open standards, whose silence is not known. */
export const BIKE_AGREEMENTS: readonly Agreement[] = [
  pair('hub', 'interfaces', 'axle', 'chassis'),
  pair('hub', 'dimensions', 'spacing', 'chassis'),
  pair('hub', 'dimensions', 'rotor-plane', 'chassis'),
  pair('end-caps', 'dimensions', 'end-cap', 'chassis', 'end-cap-recess', 'at-most'),
  pair('end-caps', 'interfaces', 'caps', { slot: 'hub' }),
  pair('crown-race', 'dimensions', 'crown-race', 'chassis'),
  pair('crown-race', 'interfaces', 'bearing', { slot: 'headset-lower' }),
  pair('headset-lower', 'interfaces', 'head-tube', 'bike'),
  pair('adaptor', 'interfaces', 'brake-mount', 'chassis'),
  pair('rotor', 'interfaces', 'rotor-mount', { slot: 'hub' }),
  pair('calliper', 'interfaces', 'calliper-mount', { slot: 'adaptor' }),
  { ...pair('calliper', 'interfaces', 'calliper-mount', 'chassis', 'brake-mount'), unless: 'adaptor' },
];

/** A length as micrometres, a word as it stands; null where nothing is said. */
export const factOf = (owner: Row, kind: Kind, name: string): string | number | null => {
  const value = row(owner[kind])[name];
  return kind === 'dimensions' ? length(value) : text(value);
};

/** A chassis as its neighbours on the bike meet it. */
export const asNeighbour = (chassis: Row): Row => {
  const [axle, steerer, brake] = [row(chassis.axle), row(chassis.steerer), row(chassis.brake)];
  return {
    dimensions: {
      ...row(chassis.dimensions),
      spacing: axle.spacing,
      'rotor-plane': axle['rotor-plane'],
      'crown-race': steerer['crown-race'],
    },
    interfaces: { axle: text(axle.standard)?.toLowerCase(), 'brake-mount': brake.mount },
  };
};

/** A bike as a lower cup meets it. */
export const asHeadTube = (bike: Row): Row => ({ interfaces: { 'head-tube': row(bike['head-tube']).lower } });

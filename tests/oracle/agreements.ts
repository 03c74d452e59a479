import type { Bike, Chassis, Family, Part } from './records.ts';
import type { WhenMade } from './when-made.ts';

/** A measure that two neighbours must agree in. */
export interface Agreement {
  readonly name: string;
  readonly role: string;
  readonly measure: string;
  readonly own: (part: Part) => number | string | undefined;
  readonly how: 'equal' | 'at-most';
  readonly neighbour: Neighbour;
  /** A standard that one side does not state is not known; a length that one side does not state blocks nothing. */
  readonly isStandard: boolean;
  /** The two meet only where this slot is there and empty. */
  readonly unless?: string;
}

/** What the neighbour says; a family may say several things, one for each generation that the fork can be. */
export type Neighbour =
  | { readonly kind: 'family'; readonly says: (family: Family, when: WhenMade) => readonly (number | undefined)[] }
  | { readonly kind: 'chassis'; readonly says: (chassis: Chassis) => number | string | undefined }
  | { readonly kind: 'bike'; readonly says: (bike: Bike) => string | undefined }
  | { readonly kind: 'part'; readonly role: string; readonly says: (part: Part) => number | string | undefined };

const family = (name: string): Neighbour => ({
  kind: 'family',
  says: ({ dimensions, generations }, when) => {
    const possible = generations.filter(({ id }) => when.generations.includes(id));
    return possible.length === 0
      ? [dimensions[name]]
      : possible.map((generation) => generation.dimensions[name] ?? dimensions[name]);
  },
});
const chassis = (says: (chassis: Chassis) => number | string | undefined): Neighbour => ({ kind: 'chassis', says });
const part = (role: string, says: (part: Part) => number | string | undefined): Neighbour => ({
  kind: 'part',
  role,
  says,
});

type Make = (name: string, role: string, measure: string, neighbour: Neighbour) => Agreement;

const length: Make = (name, role, measure, neighbour) => ({
  name,
  role,
  measure,
  own: (part) => part.dimensions[measure],
  how: 'equal',
  neighbour,
  isStandard: false,
});
const atMost: Make = (...given) => ({ ...length(...given), how: 'at-most' });
const word: Make = (name, role, measure, neighbour) => ({
  ...length(name, role, measure, neighbour),
  own: (part) => part.interfaces[measure],
});
const standard: Make = (...given) => ({ ...word(...given), isStandard: true });

const dimensionOf = (role: string, measure: string): Neighbour => part(role, ({ dimensions }) => dimensions[measure]);
const wordOf = (role: string, measure: string): Neighbour => part(role, ({ interfaces }) => interfaces[measure]);
const room = (measure: string): Neighbour => chassis(({ dimensions }) => dimensions[measure]);

/** The fork's own neighbours. */
export const FORK_AGREEMENTS: readonly Agreement[] = [
  length('spring-bore', 'spring', 'bore', family('spring-bore')),
  length('ring-groove', 'spring', 'ring-groove', family('ring-groove')),
  length('damper-bore', 'damper', 'bore', family('damper-bore')),
  atMost('damper-length', 'damper', 'closed-length', room('damper-room')),
  length('wiper-stanchion', 'wipers', 'stanchion', family('stanchion')),
  length('wiper-seat', 'wipers', 'seal-seat', dimensionOf('lowers', 'seal-seat')),
  length('foam-stanchion', 'foam-rings', 'stanchion', family('stanchion')),
  length('foam-seat', 'foam-rings', 'seal-seat', dimensionOf('lowers', 'seal-seat')),
  length('foot-hole', 'foot-seals', 'foot-hole', dimensionOf('lowers', 'foot-hole')),
  word('cap-thread', 'top-cap', 'cap-thread', wordOf('upper', 'cap-thread')),
  word('spacer-seat', 'volume-spacers', 'spacer-seat', wordOf('spring', 'spacer-seat')),
  length('spacer-bore', 'volume-spacers', 'bore', dimensionOf('spring', 'bore')),
  length('travel-spacer-shaft', 'travel-spacers', 'shaft', dimensionOf('spring', 'shaft')),
];

const axle = (says: (axle: Chassis['axle']) => number | string | undefined): Neighbour =>
  chassis((one) => says(one.axle));

/** Where fork and bike meet, and what meets on the bike. */
export const BIKE_AGREEMENTS: readonly Agreement[] = [
  standard(
    'axle',
    'hub',
    'axle',
    axle((one) => one.standard),
  ),
  length(
    'hub-spacing',
    'hub',
    'spacing',
    axle((one) => one.spacing),
  ),
  length(
    'rotor-plane',
    'hub',
    'rotor-plane',
    axle((one) => one['rotor-plane']),
  ),
  atMost('end-cap-recess', 'end-caps', 'end-cap', room('end-cap-recess')),
  standard('end-caps-of-hub', 'end-caps', 'caps', wordOf('hub', 'caps')),
  standard('rotor-mount', 'rotor', 'rotor-mount', wordOf('hub', 'rotor-mount')),
  length(
    'crown-race',
    'crown-race',
    'crown-race',
    chassis(({ steerer }) => steerer?.['crown-race']),
  ),
  standard('bearing', 'crown-race', 'bearing', wordOf('headset-lower', 'bearing')),
  standard('head-tube', 'headset-lower', 'head-tube', { kind: 'bike', says: (bike) => bike['head-tube'].lower }),
  standard(
    'brake-mount',
    'adaptor',
    'brake-mount',
    chassis(({ brake }) => brake?.mount),
  ),
  standard('calliper-mount', 'calliper', 'calliper-mount', wordOf('adaptor', 'calliper-mount')),
  {
    ...standard(
      'calliper-on-fork',
      'calliper',
      'calliper-mount',
      chassis(({ brake }) => brake?.mount),
    ),
    unless: 'adaptor',
  },
];

export type Agreeing = 'agree' | 'contradict' | 'perhaps' | 'silent';

/** Two sides compared; a neighbour that says several things is contradicted, agreed with, or perhaps either. */
export function agreeing(
  mine: number | string | undefined,
  theirs: readonly (number | string | undefined)[],
  how: Agreement['how'],
): Agreeing {
  if (mine === undefined) return 'silent';
  const each = new Set(theirs.map((one) => compare(mine, one, how)));
  if (each.size === 1) return [...each][0] ?? 'silent';
  return each.has('contradict') ? 'perhaps' : 'agree';
}

function compare(mine: number | string, theirs: number | string | undefined, how: Agreement['how']): Agreeing {
  if (theirs === undefined) return 'silent';
  return (how === 'equal' ? mine === theirs : mine <= theirs) ? 'agree' : 'contradict';
}

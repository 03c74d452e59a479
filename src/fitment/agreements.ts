import type { Dimensions, Words } from '../catalog/index.ts';

/**
 * Which measure of which part must agree with which measure of its neighbour. `with` is the body (family, chassis, lowers, upper),
 * `chassis` with its axle, steerer and mount, or `bike`), compared in the verdict on one part, or the role of another part, compared by the rule `dimension` between two slots.
 * `equal`: the same; `at-most`: the part's is not above the neighbour's.
 */
export interface Agreement {
  readonly code: string;
  readonly role: string;
  readonly measure: string;
  readonly kind: 'dimension' | 'interface';
  readonly relation: 'equal' | 'at-most';
  readonly with: string;
  readonly other: string;
  /** A slot that may stand between the two: the agreement speaks only where that slot is there and empty. */
  readonly unless?: string;
}

const equal = (code: string, role: string, measure: string, neighbour: string, other: string): Agreement => ({
  code,
  role,
  measure,
  kind: 'dimension',
  relation: 'equal',
  with: neighbour,
  other,
});

export const AGREEMENTS: readonly Agreement[] = [
  equal('spring-bore', 'spring', 'bore', 'family', 'spring-bore'),
  equal('ring-groove', 'spring', 'ring-groove', 'family', 'ring-groove'),
  equal('damper-bore', 'damper', 'bore', 'family', 'damper-bore'),
  { ...equal('damper-length', 'damper', 'closed-length', 'chassis', 'damper-room'), relation: 'at-most' },
  equal('wiper-stanchion', 'wipers', 'stanchion', 'family', 'stanchion'),
  equal('wiper-seat', 'wipers', 'seal-seat', 'lowers', 'seal-seat'),
  equal('foam-stanchion', 'foam-rings', 'stanchion', 'family', 'stanchion'),
  equal('foam-seat', 'foam-rings', 'seal-seat', 'lowers', 'seal-seat'),
  equal('foot-hole', 'foot-seals', 'foot-hole', 'lowers', 'foot-hole'),
  { ...equal('cap-thread', 'top-cap', 'cap-thread', 'upper', 'cap-thread'), kind: 'interface' },
  { ...equal('spacer-seat', 'volume-spacers', 'spacer-seat', 'spring', 'spacer-seat'), kind: 'interface' },
  equal('spacer-bore', 'volume-spacers', 'bore', 'spring', 'bore'),
  equal('travel-spacer-shaft', 'travel-spacers', 'shaft', 'spring', 'shaft'),
  { ...equal('axle', 'hub', 'axle', 'chassis', 'axle'), kind: 'interface' },
  equal('hub-spacing', 'hub', 'spacing', 'chassis', 'spacing'),
  equal('rotor-plane', 'hub', 'rotor-plane', 'chassis', 'rotor-plane'),
  { ...equal('end-cap-recess', 'end-caps', 'end-cap', 'chassis', 'end-cap-recess'), relation: 'at-most' },
  { ...equal('end-caps-of-hub', 'end-caps', 'caps', 'hub', 'caps'), kind: 'interface' },
  { ...equal('rotor-mount', 'rotor', 'rotor-mount', 'hub', 'rotor-mount'), kind: 'interface' },
  equal('crown-race', 'crown-race', 'crown-race', 'chassis', 'crown-race'),
  { ...equal('bearing', 'crown-race', 'bearing', 'headset-lower', 'bearing'), kind: 'interface' },
  { ...equal('head-tube', 'headset-lower', 'head-tube', 'bike', 'head-tube-lower'), kind: 'interface' },
  { ...equal('brake-mount', 'adaptor', 'brake-mount', 'chassis', 'brake-mount'), kind: 'interface' },
  { ...equal('calliper-mount', 'calliper', 'calliper-mount', 'adaptor', 'calliper-mount'), kind: 'interface' },
  {
    ...equal('calliper-on-fork', 'calliper', 'calliper-mount', 'chassis', 'brake-mount'),
    kind: 'interface',
    unless: 'adaptor',
  },
];

/** Both values of an agreement that does not hold. Lengths in micrometres. */
export interface Disagreement {
  readonly agreement: Agreement;
  readonly part: string | number;
  readonly neighbour: string | number;
}

/** Anything that has measures to compare. */
export interface Measured {
  readonly dimensions: Dimensions;
  readonly interfaces: Words;
}

/** Where the agreement does not hold between a part and its neighbour; null where it does or where one side is silent. */
export function disagreement(agreement: Agreement, part: Measured, neighbour: Measured): Disagreement | null {
  const read = (from: Measured, name: string): string | number | undefined =>
    agreement.kind === 'interface' ? from.interfaces.get(name) : from.dimensions.get(name);
  const mine = read(part, agreement.measure);
  const theirs = read(neighbour, agreement.other);
  if (mine === undefined || theirs === undefined) return null;
  const holds = agreement.relation === 'equal' ? mine === theirs : mine <= theirs;
  return holds ? null : { agreement, part: mine, neighbour: theirs };
}

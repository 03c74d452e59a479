import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { type Row, row, text } from './read.ts';
import { partIn, type Scene } from './scene.ts';

type Kind = 'dimensions' | 'interfaces';
/** A fact of the part in a slot that must be the same in a neighbour: another slot, or the family. */
interface Agreement {
  readonly slot: string;
  readonly fact: string;
  readonly with: 'family' | { readonly slot: string };
  readonly its: string;
  readonly kind: Kind;
}

const withFamily = (slot: string, fact: string, its: string): Agreement => ({
  slot,
  fact,
  with: 'family',
  its,
  kind: 'dimensions',
});
const withSlot = (slot: string, kind: Kind, fact: string, other: string, its = fact): Agreement => ({
  slot,
  fact,
  with: { slot: other },
  its,
  kind,
});

const AGREEMENTS: readonly Agreement[] = [
  withFamily('spring', 'bore', 'spring-bore'),
  withFamily('spring', 'ring-groove', 'ring-groove'),
  withFamily('damper', 'bore', 'damper-bore'),
  withFamily('wipers', 'stanchion', 'stanchion'),
  withFamily('foam-rings', 'stanchion', 'stanchion'),
  withSlot('wipers', 'dimensions', 'seal-seat', 'lowers'),
  withSlot('foam-rings', 'dimensions', 'seal-seat', 'lowers'),
  withSlot('foot-seals', 'dimensions', 'foot-hole', 'lowers'),
  withSlot('volume-spacers', 'interfaces', 'spacer-seat', 'spring'),
  withSlot('volume-spacers', 'dimensions', 'bore', 'spring'),
  withSlot('travel-spacers', 'dimensions', 'shaft', 'spring'),
  withSlot('top-cap', 'interfaces', 'cap-thread', 'upper'),
];

/** `dimension`: neighbours agree where both sides are given; only pairs with a changed member are judged. */
export function* checkDimensions(scene: Scene): Iterable<Fault> {
  for (const agreement of AGREEMENTS) {
    const other = agreement.with === 'family' ? null : agreement.with.slot;
    const pairIsNew =
      scene.changed.has(agreement.slot) || (other === null ? scene.chassisChanged : scene.changed.has(other));
    const part = partIn(scene, scene.after, agreement.slot);
    const neighbour = other === null ? scene.family : partIn(scene, scene.after, other);
    if (!pairIsNew || !part || !neighbour) continue;
    const [mine, its] = [
      factOf(part, agreement.kind, agreement.fact),
      factOf(neighbour, agreement.kind, agreement.its),
    ];
    if (mine !== null && its !== null && mine !== its) {
      yield fault('dimension', `${agreement.fact} of ${agreement.slot} is ${mine}, of ${other ?? 'the family'} ${its}`);
    }
  }
}

const factOf = (owner: Row, kind: Kind, name: string): string | number | null => {
  const value = row(owner[kind])[name];
  return kind === 'dimensions' ? length(value) : text(value);
};

import type { Fastener, Operation } from '../catalog/index.ts';
import { hexKey, metresOf, ringPliers } from '../physics/index.ts';
import type { Step } from './answer.ts';

/** Every tool of a step once: its own, and those that turn its fasteners and take its rings. */
export const operationTools = ({ tools, fasteners, retainingRings }: Operation): string[] => [
  ...new Set([...tools, ...[...fasteners, ...retainingRings].flatMap(({ tool }) => (tool === null ? [] : [tool]))]),
];

/** The hex key for a cap screw, mm across flats, by its thread (`hexKey`); null where the catalogue does not call it one, or its thread is not in the table. */
export function keyFor({ head, thread }: Pick<Fastener, 'head' | 'thread'>): number | null {
  const key = head === 'cap-screw' && thread !== null ? hexKey(thread) : null;
  return key?.ok ? key.value.key : null;
}

/** A retaining ring of a step with the sizes of pliers for its bore (`ringPliers`); none where the bore is beyond them. */
export function ringWork({ bore, tool }: Operation['retainingRings'][number]): Step['rings'][number] {
  const pliers = ringPliers(metresOf(bore));
  const inMillimetres = (length: number): number => Math.round(length * 1e4) / 10;
  return {
    bore: bore / 1000,
    tool,
    pliers: pliers.ok ? pliers.value.map(({ size, tip }) => ({ size, tip: inMillimetres(tip) })) : [],
  };
}

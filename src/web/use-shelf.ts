import { useMemo } from 'preact/hooks';
import type { Shelf } from './at-hand.ts';
import type { KitRecord, Listing, SupplyRecord } from './records.ts';
import { useAnswer } from './service.ts';

/** Kits and supplies of the catalogue, looked up when they are wanted first. */
export function useShelf(wanted: boolean): Shelf {
  const kits = useAnswer<Listing<KitRecord>>(wanted ? '/v1/catalog/kits' : null);
  const supplies = useAnswer<Listing<SupplyRecord>>(wanted ? '/v1/catalog/supplies' : null);
  return useMemo(
    () => ({
      kits: kits.kind === 'here' ? kits.value.records : [],
      supplies: supplies.kind === 'here' ? supplies.value.records : [],
    }),
    [kits, supplies],
  );
}

import { deserialize } from 'node:v8';
import type { World } from '../plan/index.ts';
import { type Crew, type CrewLimits, hireCrew } from './crew.ts';
import type { LoadResult } from './loader.ts';
import { type Packed, worldOf } from './pack.ts';
import { makeShelves, type Shelves } from './search-records.ts';

/**
 * One loaded catalogue with its stock and shop, and all that is worked out from it. A request takes the edition in use when it begins and keeps it
 * to its end, so that no answer mixes two.
 */
export interface Edition {
  readonly world: World;
  /** The hashes of catalogue, stock and shop as one text: what an entity tag rests on. */
  readonly hash: string;
  readonly loaded: LoadResult;
  readonly crew: Crew;
  readonly shelves: Shelves;
  /** Greatest number of search steps for one question. */
  readonly mostSteps: number;
}

/** Makes a loaded catalogue ready to answer. Only for one that is whole and sound. */
export async function makeEdition(
  loaded: LoadResult & { readonly pack: SharedArrayBuffer },
  limits: CrewLimits,
  mostSteps: number,
): Promise<Edition> {
  // a pack is made by load-in-thread.ts and by nobody else
  const packed: Packed = deserialize(Buffer.from(loaded.pack));
  const world = worldOf(packed);
  return {
    world,
    hash: loaded.hash,
    loaded,
    shelves: await makeShelves(world),
    crew: hireCrew(loaded.pack, limits),
    mostSteps,
  };
}

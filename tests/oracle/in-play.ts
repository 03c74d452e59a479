import { FORK_AGREEMENTS } from './agreements.ts';
import { type Book, chassisOfFamily, partsFor, roleOf } from './book.ts';
import { isComplete } from './fit.ts';
import type { Chassis, Part } from './records.ts';
import { agreed } from './rules.ts';
import type { Draft, Scene } from './scene.ts';

const remembered = new WeakMap<Book, Map<string, readonly Part[]>>();

/**
 * Parts that can stand in a slot as far as the catalogue says: those with a clause for the family; and of others, where the list
 * is not complete, those that contradict no measure of some body of it. docs/model.md, section 8: the rest is left out without being named.
 */
export function partsInPlay(scene: Scene, slot: string): readonly Part[] {
  const { book, now } = scene;
  const known = remembered.get(book) ?? new Map<string, readonly Part[]>();
  remembered.set(book, known);
  const key = JSON.stringify([now.family.id, slot, now.when.generations]);
  const parts = known.get(key) ?? partsFor(book, now.family, slot).filter((part) => isInPlay(scene, slot, part));
  known.set(key, parts);
  return parts;
}

const isInPlay = (scene: Scene, slot: string, part: Part): boolean =>
  part.fits.some((clause) => clause.family === scene.now.family.id) ||
  (!isComplete(scene.now.family, slot) &&
    chassisOfFamily(scene.book, scene.now.family).some((chassis) => goesInto(scene, slot, part, chassis)));

function goesInto(scene: Scene, slot: string, part: Part, chassis: Chassis): boolean {
  const contents: Draft['contents'] = new Map([[slot, { sku: part.sku, quantity: 1 }]]);
  const draft: Draft = { chassis, travel: null, contents, settings: new Map() };
  return FORK_AGREEMENTS.filter(({ role }) => role === roleOf(scene.now.family, slot)).every((agreement) => {
    const { neighbour } = agreement;
    if (neighbour.kind === 'bike') return true;
    const beside = neighbour.kind === 'part' ? neighbour.role : null;
    if (beside !== null && beside !== 'upper' && beside !== 'lowers') return true;
    return agreed(scene, draft, agreement, slot, beside) !== 'contradict';
  });
}

import { remembering } from './remember.ts';
import type { Scene } from './scene.ts';

/** Enough for one fork and what its refusals ask besides. */
const BUYERS = 8;

/** Remembers what was worked out about buying, for all questions that buy alike. */
export function byBuyer<T>(): (scene: Scene, thing: string, workOut: () => T) => T {
  const shelves = remembering<Map<string, T>>(BUYERS);
  const shelfOf = new WeakMap<Scene, Map<string, T>>();
  return (scene, thing, workOut) => {
    const shelf = shelfOf.get(scene) ?? shelves(scene.book, buyerOf(scene), () => new Map());
    shelfOf.set(scene, shelf);
    const before = shelf.get(thing);
    if (before !== undefined) return before;
    const found = workOut();
    shelf.set(thing, found);
    return found;
  };
}

/** All that buying looks at: whose replacements hold, what is asked for by name, what is at hand, and whether the shop measures out. */
function buyerOf({ book, now, question }: Scene): string {
  const asked = question.wants.use.filter((sku) => !book.parts.has(sku));
  return JSON.stringify([now.chassis.id, now.when.generations, asked, question.have, question.supplies]);
}

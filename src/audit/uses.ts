import { isGone } from './offers.ts';
import { number, type Row, text } from './read.ts';
import { lastOf } from './replaced.ts';
import type { Scene } from './scene.ts';

/** What `--use` asks for, number by number: each itself, or what stands for one that cannot be had (section 10). */
export const usesOf = (scene: Scene): readonly (readonly string[])[] =>
  [...new Set(scene.question.use)].map((sku) => {
    const there = [...scene.after.build.values()].some((content) => content?.sku === sku);
    return !there && isGone(scene, sku, piecesOf(scene, sku)) ? lastOf(scene, sku).map((last) => last.sku) : [sku];
  });

/** The numbers that the wants name in the end. */
export const used = (scene: Scene): readonly string[] => usesOf(scene).flat();

/** As many as the slot takes; one of what goes into none. */
const piecesOf = (scene: Scene, sku: string): number => {
  const role = text(scene.book.parts.get(sku)?.role);
  const slot = [...scene.slots].find(([name, facts]: readonly [string, Row]) => (text(facts.role) ?? name) === role);
  return number(slot?.[1].pieces) ?? 1;
};

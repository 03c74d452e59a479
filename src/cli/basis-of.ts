import type { World } from '../plan/index.ts';
import type { Basis } from '../report/scene.ts';
import type { Sources } from './load-world.ts';

/** What an answer was worked out from, as the report names it. */
export const basisOf = (world: World, { folder, stock, shop }: Sources): Basis => ({
  catalog: { folder: folder.path, by: folder.by },
  stock: stock?.name ?? null,
  shop: shop && { file: shop.name, name: world.shop.name },
});

import { newtonMetresOf, type SettingWrench, wrenchesFor } from '../physics/index.ts';
import type { MillinewtonMetres } from '../quantity/index.ts';
import type { Step } from './answer.ts';
import type { World } from './world.ts';

type Wrench = Step['fasteners'][number]['wrench'];

/**
 * The torque tool that suits a torque best: of the shop's where the shop file says what is there, else of the catalogue's. Null where
 * none of them states its range, or none reaches. Source of range and deviation: `wrenchVerdict` (ISO 6789).
 */
export function wrenchFor({ catalog, shop }: World, torque: MillinewtonMetres): Wrench {
  const wrenches = [...catalog.tools.values()].flatMap(({ id, torque: range }): SettingWrench[] =>
    range === null || (shop.tools !== null && !shop.tools.has(id))
      ? []
      : [{ id, greatest: newtonMetresOf(range.greatest), lowestMark: newtonMetresOf(range.least) }],
  );
  const suit = wrenchesFor(wrenches, newtonMetresOf(torque));
  const best = suit.ok ? suit.value[0] : undefined;
  return best ? { tool: best.id, deviation: Math.round(best.deviation * 100) / 100 } : null;
}

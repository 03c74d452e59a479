import type { Plan, Step } from '../../plan/index.ts';
import type { Scene } from '../scene.ts';

/** "6.5 N·m  foot bolt, left leg (spring), M8, dry, fully extended, hex key 5 mm": the number first. */
export function torqueWords(scene: Scene, plan: Plan, fastener: Step['fasteners'][number]): string {
  const { name, side, thread, key, tool, torque, state, position, count, wrench } = fastener;
  const leg = side === null ? null : scene.language.phrases.leg(side, fastener.function);
  const set = wrench === null ? null : scene.language.phrases.wrench(wrenchName(scene, wrench.tool), wrench.deviation);
  const turned = tool !== null ? toolOf(plan, tool) : key === null ? null : scene.language.phrases.hexKey(key);
  const about = [leg, thread, state, position, turned, set];
  return `${torque}  ${[`${count === 1 ? '' : `${count} x `}${name}`, ...about.flatMap((one) => one ?? [])].join(', ')}`;
}

function wrenchName({ catalog }: Scene, id: string): string {
  const tool = catalog.tools.get(id);
  return tool ? toolName(tool) : id;
}

export function toolOf({ tools }: Plan, id: string): string {
  const tool = tools.find((known) => known.id === id);
  return tool ? toolName(tool) : id;
}

/** What the pliers among the tools take: which size, for which bore; rings of one bore once. Empty for other tools. */
export function takenBy({ language }: Pick<Scene, 'language'>, { steps }: Plan, id: string): readonly string[] {
  const rings = steps.flatMap((step) => step.rings).filter(({ tool }) => tool === id);
  return [...new Set(rings.map(language.phrases.ringPliers))];
}

/** A tool with its size. */
export const toolName = ({ name, size }: Pick<Plan['tools'][number], 'name' | 'size'>): string =>
  size === null ? name : `${name} ${size}`;

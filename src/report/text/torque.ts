import type { Plan, Step } from '../../plan/index.ts';
import type { Scene } from '../scene.ts';

/** "6.5 N·m  foot bolt, left leg (spring), M8, dry, fully extended, hex key 5 mm": the number first. */
export function torqueWords(scene: Scene, plan: Plan, fastener: Step['fasteners'][number]): string {
  const { name, side, thread, tool, torque, state, position, count, wrench } = fastener;
  const leg = side === null ? null : scene.language.phrases.leg(side, fastener.function);
  const set = wrench === null ? null : scene.language.phrases.wrench(wrenchName(scene, wrench.tool), wrench.deviation);
  const about = [leg, thread, state, position, tool === null ? null : toolOf(plan, tool), set];
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

/** A tool with its size. */
export const toolName = ({ name, size }: Pick<Plan['tools'][number], 'name' | 'size'>): string =>
  size === null ? name : `${name} ${size}`;

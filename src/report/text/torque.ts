import type { Plan, Step } from '../../plan/index.ts';
import type { Scene } from '../scene.ts';

/** "foot bolt left (spring leg), M8: 6.5 N·m, dry, fully extended". */
export function torqueWords(scene: Scene, plan: Plan, fastener: Step['fasteners'][number]): string {
  const { name, side, thread, tool, torque, state, position, count } = fastener;
  const leg = side === null ? '' : ` ${scene.language.phrases.leg(side, fastener.function)}`;
  const what = `${count === 1 ? '' : `${count} x `}${name}${leg}${thread === null ? '' : `, ${thread}`}`;
  return [
    `${what}: ${torque}`,
    ...[state, position, tool === null ? null : toolOf(plan, tool)].flatMap((one) => one ?? []),
  ].join(', ');
}

export function toolOf({ tools }: Plan, id: string): string {
  const tool = tools.find((known) => known.id === id);
  return tool ? toolName(tool) : id;
}

/** A tool with its size. */
export const toolName = ({ name, size }: Plan['tools'][number]): string => (size === null ? name : `${name} ${size}`);

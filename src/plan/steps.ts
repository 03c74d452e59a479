import type { Family, Operation, Side } from '../catalog/index.ts';
import { amountNumber, byCodeUnit } from '../quantity/index.ts';
import type { Plan, Step } from './answer.ts';
import { money } from './lines.ts';
import type { Looks } from './looks.ts';
import type { Prepared } from './prepare.ts';
import type { Candidate } from './search.ts';
import { sourceOf } from './source.ts';
import { keyFor, operationTools, ringWork } from './step-tools.ts';
import type { World } from './world.ts';
import { wrenchFor } from './wrench.ts';

/** The order of work, each step with its tools, torques, amounts, looks and cautions. */
export function planSteps(world: World, prepared: Prepared, looks: Looks, candidate: Candidate): Step[] {
  const { catalog } = world;
  const { work, purchase } = candidate;
  const touches = (operation: Operation): readonly string[] =>
    [...new Set([...operation.changes, ...operation.renews.map(({ slot }) => slot)])].filter(
      (slot) => work.changed.includes(slot) || work.renewed.has(slot),
    );
  const touched = [...new Set(work.order.flatMap(touches))];
  return work.order.map(
    (operation): Step => ({
      id: operation.id,
      title: operation.title,
      text: operation.text,
      minutes: operation.minutes,
      skill: operation.skill,
      tools: operationTools(operation),
      fasteners: operation.fasteners.map((fastener) => ({
        name: fastener.name,
        side: fastener.side,
        function: legFunction(prepared.family, fastener.side),
        thread: fastener.thread,
        key: keyFor(fastener),
        tool: fastener.tool,
        torque: `${fastener.torque / 1000} N·m`,
        state: fastener.state,
        position: fastener.position,
        count: fastener.count,
        wrench: wrenchFor(world, fastener.torque),
      })),
      rings: operation.retainingRings.map(ringWork),
      amounts: work.amounts
        .filter((amount) => amount.operation === operation.id)
        .map(({ action, specification, amount, side, note }) => {
          const known = catalog.specifications.get(specification);
          const sku = action === 'use' ? (purchase.products.get(specification) ?? null) : null;
          const unit = known?.unit ?? 'piece';
          const name = (sku === null ? undefined : catalog.supplies.get(sku)?.name) ?? known?.name ?? specification;
          return { action, sku, name, specification, quantity: amountNumber(amount, unit), unit, side, note };
        }),
      slots: [...touches(operation)],
      fills: touched.filter((slot) => filledAt(work.order, touches, slot) === operation.id),
      looks: operation.looks.map((look) => looks.in(candidate, look)),
      cautions: operation.cautions,
      source: sourceOf(operation.source),
    }),
  );
}

/** The step at which a slot is filled: the last that touches it, or what closes that one, where closing is all that this does. */
function filledAt(
  order: readonly Operation[],
  touches: (operation: Operation) => readonly string[],
  slot: string,
): string | undefined {
  const last = order.findLast((operation) => touches(operation).includes(slot));
  const closer = order.find(({ id }) => id === last?.closedBy);
  return closer?.changes.length === 0 ? closer.id : last?.id;
}

const legFunction = (family: Family, side: Side | null): string | null => (side === null ? null : family.legs[side]);

/** Every tool of the job once, by id, with whether the shop has it. */
export function planTools(world: World, steps: readonly Step[]): Plan['tools'] {
  const ids = [...new Set(steps.flatMap(({ tools }) => tools))].sort(byCodeUnit);
  return ids.map((id) => {
    const tool = world.catalog.tools.get(id);
    return {
      id,
      name: tool?.name ?? id,
      size: tool?.size ?? null,
      atHand: world.shop.tools === null ? null : world.shop.tools.has(id),
      price: tool?.price == null ? null : money(world, tool.price),
    };
  });
}

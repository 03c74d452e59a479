import * as z from 'zod';
import { listsOf } from '../catalog/index.ts';
import { type Member as ForkMember, type ForkProblem, type ForkWants, forkProblem } from '../fork/index.ts';
import { type Micrometres, minor } from '../quantity/index.ts';
import { StepBudget, smallestConflict } from '../solve/index.ts';
import { type Member, sourceSchema } from './answer.ts';
import { asShown, partiesOf } from './dispute.ts';
import type { Fault } from './fault.ts';
import { money } from './lines.ts';
import { type Prepared, prepare } from './prepare.ts';
import { type QuestionInput, questionSchema } from './question.ts';
import { bestPlan, canBuild } from './search.ts';
import type { World } from './world.ts';

const params = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null(), z.array(z.string())]));
const memberSchema = z.strictObject({
  kind: z.string(),
  code: z.string(),
  params,
  message: z.string(),
  source: sourceSchema.nullable(),
});
const cellSchema = z.strictObject({
  travel: z.number(),
  status: z.enum(['now', 'nothing-to-do', 'reachable', 'impossible', 'not-known', 'not-obtainable', 'stopped']),
  /** The cheapest way; null where there is none, or nothing to do. */
  plan: z
    .strictObject({
      money: z.string(),
      atLeast: z.boolean(),
      minutes: z.int(),
      days: z.int().nullable(),
      chassis: z.string(),
      changes: z.array(z.string()),
    })
    .nullable(),
  /** Why not: the smallest conflict. */
  why: z.array(memberSchema),
});

/** Every travel and wheel that the fork in front of you can become: rows are wheels, cells are travels. */
export const reachSchema = z.strictObject({
  format: z.literal(1),
  catalog: z.string(),
  stock: z.string(),
  shop: z.string(),
  chassis: z.string(),
  travelNow: z.number(),
  currency: z.string(),
  travels: z.array(z.number()),
  rows: z.array(z.strictObject({ wheel: z.int(), cells: z.array(cellSchema) })),
});
export type ReachDocument = z.infer<typeof reachSchema>;
type Unworded<T> = T extends readonly (infer Item)[]
  ? readonly Unworded<Item>[]
  : T extends object
    ? { readonly [Key in keyof T as Key extends 'message' ? never : Key]: Unworded<T[Key]> }
    : T;
export type ReachAnswer = Unworded<ReachDocument>;
type Cell = ReachAnswer['rows'][number]['cells'][number];

/** Works out every cell of the map. The wants of the question are left aside; what it says of the fork, of buying and of limits holds. */
export function reach(world: World, input: QuestionInput): ReachAnswer | { readonly faults: readonly Fault[] } {
  const question = questionSchema.parse({ ...input, wants: {} });
  const { prepared, faults } = prepare(world, question);
  if (!prepared) return { faults };
  const { now } = prepared;
  const bodies = listsOf(world.catalog).chassisOf(now.build.chassis.family);
  const wheels = [...new Set(bodies.flatMap((chassis) => [chassis.wheel, ...chassis.takes]))].sort((a, b) => a - b);
  const open = forkProblem(world.catalog, now, { ...prepared.wants, travel: now.travel }, question);
  const travels = [...open.travels].sort((a, b) => a - b);
  return {
    format: 1,
    catalog: world.catalog.hash,
    stock: world.stock.hash,
    shop: world.shop.hash,
    chassis: now.build.chassis.id,
    travelNow: now.travel / 1000,
    currency: world.catalog.currency,
    travels: travels.map((travel) => travel / 1000),
    rows: wheels.map((wheel) => ({ wheel, cells: travels.map((travel) => cell(world, prepared, wheel, travel)) })),
  };
}

function cell(world: World, prepared: Prepared, wheel: number, travel: Micrometres): Cell {
  const { now, question } = prepared;
  const at = travel / 1000;
  if (wheel === now.build.chassis.wheel && travel === now.travel)
    return { travel: at, status: 'now', plan: null, why: [] };
  const wants: ForkWants = { ...prepared.wants, travel, wheel };
  const fork = forkProblem(world.catalog, now, wants, question, 'narrow');
  const budget = new StepBudget(question.stepLimit);
  const best = bestPlan(world, { ...prepared, wants }, fork, budget);
  if (typeof best === 'object') {
    if (best.work.changed.length === 0 && best.work.order.length === 0)
      return { travel: at, status: 'nothing-to-do', plan: null, why: [] };
    const [total, minutes, days, unpriced] = best.vector;
    const plan = {
      money: money(world, minor(total)),
      atLeast: unpriced > 0 || !world.hasShop,
      minutes,
      days: Number.isFinite(days) ? days : null,
      chassis: best.build.chassis.id,
      changes: [...best.work.changed],
    };
    return { travel: at, status: 'reachable', plan, why: [] };
  }
  if (best === 'stopped') return { travel: at, status: 'stopped', plan: null, why: [] };
  if (canBuild(fork, () => true, budget)) return { travel: at, status: 'not-obtainable', plan: null, why: [] };
  const relaxed = forkProblem(world.catalog, now, wants, { allowUnknown: true }, 'narrow');
  const status = canBuild(relaxed, () => true, budget) ? 'not-known' : 'impossible';
  return {
    travel: at,
    status,
    plan: null,
    why: reasons(prepared, forkProblem(world.catalog, now, wants, question), budget),
  };
}

function reasons(prepared: Prepared, fork: ForkProblem, budget: StepBudget): readonly Omit<Member, 'message'>[] {
  const { members, order, holdsOf } = partiesOf(prepared, fork);
  const conflict = smallestConflict(order, (held) => canBuild(fork, holdsOf(held), budget));
  const wants = new Set(['want-travel', 'want-wheel', 'want-onto']);
  return (conflict?.members ?? [])
    .flatMap((member) => (members[member] ? [asShown(members[member])] : []))
    .filter(({ code }: Pick<ForkMember, 'code'>) => !wants.has(code));
}

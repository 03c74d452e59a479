import {
  type Build,
  buildOf,
  type Member as ForkMember,
  type ForkProblem,
  silencesOf,
  travelOfValues,
} from '../fork/index.ts';
import type { Micrometres, Minor } from '../quantity/index.ts';
import {
  type From,
  leastValue,
  leastVector,
  type Objectives,
  paretoFront,
  type SearchEnd,
  Standing,
  type StepBudget,
  sameVector,
  type Vector,
} from '../solve/index.ts';
import { comparePurchases, type Demand, type Purchase, purchases } from '../supply/index.ts';
import { planFloors } from './floor.ts';
import { PREFERENCE } from './preference.ts';
import type { Prepared } from './prepare.ts';
import { type Work, workOf } from './work-of.ts';
import type { World } from './world.ts';

/** A build with the work and the purchase that bring it about. */
export interface Candidate {
  readonly values: readonly number[];
  readonly build: Build;
  readonly travel: Micrometres;
  readonly work: Work;
  readonly purchase: Purchase;
  readonly vector: PlanVector;
  readonly labour: Minor;
  /** What it rests on that nobody knows. */
  readonly unknown: readonly ForkMember[];
}

/** (total, minutes, days, lines without a price, unknown fits); days Infinity where nobody knows. */
export type PlanVector = readonly [total: number, minutes: number, days: number, unpriced: number, unknowns: number];

export interface SearchResult {
  readonly candidates: readonly Candidate[];
  readonly end: SearchEnd;
}

/** Works out every plan that no other beats: the exact front, each vector with its canonical build and purchase. */
export function searchPlans(world: World, prepared: Prepared, fork: ForkProblem, budget: StepBudget): SearchResult {
  const leaves = new Leaves(world, prepared, fork);
  const result = paretoFront(fork.problem, leaves.objectives, { order: fork.order, counted: fork.counted }, budget);
  const candidates = result.entries.flatMap(({ vector, values }) => leaves.at(values, vector) ?? []);
  return { candidates, end: result.end };
}

/** The plan that the question's preference puts first, without the rest of the front. */
export function bestPlan(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  budget: StepBudget,
): Candidate | 'none' | 'stopped' {
  const leaves = new Leaves(world, prepared, fork);
  const least = leastVector(
    fork.problem,
    leaves.objectives,
    PREFERENCE[prepared.question.prefer],
    { order: fork.order, counted: fork.counted },
    budget,
  );
  return typeof least === 'string' ? least : (leaves.at(least.values, least.vector) ?? 'none');
}

/** What the plan that the question's preference puts first comes to, where nobody asks which of several equal ones it is. */
export function bestValue(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  from: From,
  budget: StepBudget,
): PlanVector | 'none' | 'stopped' {
  const { objectives } = new Leaves(world, prepared, fork);
  const priority = PREFERENCE[prepared.question.prefer];
  const value = leastValue(fork.problem, objectives, priority, fork, from, budget);
  return typeof value === 'string' ? value : asPlanVector(value);
}

const asPlanVector = ([total = 0, minutes = 0, days = 0, unpriced = 0, unknowns = 0]: Vector): PlanVector => [
  total,
  minutes,
  days,
  unpriced,
  unknowns,
];

/** A candidate that changes nothing and does nothing: the fork stays as it is. */
export const isIdle = ({ work }: Candidate): boolean => work.changed.length === 0 && work.order.length === 0;

/** What is known of a problem that is asked about again and again, for as long as somebody holds it. */
const standings = new WeakMap<ForkProblem['problem'], Standing>();

/** True where some build meets the members that hold, whatever it costs; null where the steps ran out. */
export function canBuild(fork: ForkProblem, holds: (member: number) => boolean, budget: StepBudget): boolean | null {
  const standing = standings.get(fork.problem) ?? new Standing(fork.problem, fork.order);
  standings.set(fork.problem, standing);
  return standing.canStand(holds, budget);
}

/** Every unbeaten way to pay for an assignment; none where its parts cannot be had. */
export function waysToPayFor(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
): (values: readonly number[]) => readonly Candidate[] {
  const leaves = new Leaves(world, prepared, fork);
  return (values) => leaves.candidates(values);
}

/** What whole assignments come to, remembered by assignment and by demand. */
class Leaves {
  private readonly world: World;
  private readonly prepared: Prepared;
  private readonly fork: ForkProblem;
  private readonly byValues = new Map<string, readonly Candidate[]>();
  private readonly byDemand = new Map<string, readonly Purchase[]>();

  constructor(world: World, prepared: Prepared, fork: ForkProblem) {
    this.world = world;
    this.prepared = prepared;
    this.fork = fork;
  }

  /** Every unbeaten way to pay for an assignment; none where its parts cannot be had. */
  candidates(values: readonly number[]): readonly Candidate[] {
    const key = values.join(',');
    const known = this.byValues.get(key) ?? this.workOut(values);
    this.byValues.set(key, known);
    return known;
  }

  get objectives(): Objectives {
    return {
      ...planFloors(this.world, this.prepared, this.fork),
      vectors: (values) => this.candidates(values).map(({ vector }) => vector),
    };
  }

  /** Of the ways to pay for an assignment that come to a vector the canonical one. */
  at(values: readonly number[], vector: Vector): Candidate | null {
    const equal = this.candidates(values).filter((candidate) => sameVector(candidate.vector, vector));
    return [...equal].sort((a, b) => comparePurchases(a.purchase, b.purchase))[0] ?? null;
  }

  private workOut(values: readonly number[]): Candidate[] {
    const { world, prepared, fork } = this;
    const build = buildOf(fork, values);
    const work = workOf(world, prepared, build);
    if (!work) return [];
    const { labour } = work;
    const unknown = silencesOf(fork, values);
    return this.purchasesOf(work.demand).map((purchase): Candidate => {
      const vector: PlanVector = [
        purchase.parts + purchase.supplies + labour,
        work.minutes,
        purchase.days,
        purchase.unpriced,
        unknown.length,
      ];
      return { values, build, travel: travelOfValues(fork, values), work, purchase, vector, labour, unknown };
    });
  }

  private purchasesOf(demand: Demand): readonly Purchase[] {
    let key = '';
    for (const [sku, { fresh, any }] of demand.pieces) key += `${sku} ${fresh} ${any}|`;
    for (const [specification, amount] of demand.supplies) key += `${specification} ${amount}|`;
    const known =
      this.byDemand.get(key) ?? purchases(this.world.market, demand, this.prepared.atHand, this.prepared.buying);
    this.byDemand.set(key, known);
    return known;
  }
}

import { parse } from 'yaml';
import { ask, type QuestionInput } from '../../src/plan/index.ts';
import { searchPlans } from '../../src/plan/search.ts';
import { StepBudget } from '../../src/solve/index.ts';
import type { Generated } from '../generator/catalogue.ts';
import { modelOf } from '../mip/model.ts';
import { highsSolver } from '../mip/solver.ts';
import { QUESTIONS } from '../scenarios/counter/questions.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { readyFor, STEP_LIMIT } from './grids.ts';
import { cpuMilliseconds, medianAfter, type Samples, sampled } from './measure.ts';

/** Rounds of a question before those that count. */
const WARM_UP = 24;

/** When what was bought before is forgotten: before each round of all questions, as at the start of a day, or before each question. */
export type Forgets = 'each-round' | 'each-question';

/** Every question from the counter against the demo catalogue, in turn, so that what slows the machine slows all alike. */
export async function counterTimes(
  rounds: number,
  warmUp: number,
  forgets: Forgets,
): Promise<ReadonlyMap<string, Samples>> {
  const { world } = await loadCatalogFolder(demoFolder);
  const questions: readonly (readonly [string, QuestionInput])[] = Object.entries(QUESTIONS);
  const times = new Map<string, number[]>(questions.map(([name]) => [name, []]));
  for (let round = 0; round < warmUp + rounds; round++) {
    world.market.remembered.clear();
    for (const [name, question] of questions) {
      if (forgets === 'each-question') world.market.remembered.clear();
      const took = cpuMilliseconds(() => ask(world, question));
      if (round >= warmUp) times.get(name)?.push(took);
    }
  }
  return new Map([...times].map(([name, all]) => [name, sampled(all)]));
}

/** What a plan is: whole front, purchases and tie-break, of every counter question that there is one for. */
export interface FrontTimes {
  readonly count: number;
  /** From the question to the front, of a fork that has been asked about before: at a counter the map comes before the plan. */
  readonly plan: Samples;
  /** The same of a fork that nobody has asked about. */
  readonly first: Samples;
  /** Of that the search, the question being a problem already. */
  readonly search: Samples;
}

export async function frontTimes(rounds: number): Promise<FrontTimes> {
  const { world } = await loadCatalogFolder(demoFolder);
  const answered = (Object.values(QUESTIONS) as readonly QuestionInput[]).filter((question) => {
    const reply = ask(world, question);
    return reply.kind === 'answer' && reply.answer.status === 'answered';
  });
  const medianOf = (work: () => unknown): number =>
    medianAfter(WARM_UP, rounds, () => world.market.remembered.clear(), work);
  const both = answered.map((question) => {
    const { prepared, fork } = readyFor(world, question);
    return {
      plan: medianOf(() => {
        const ready = readyFor(world, question);
        return searchPlans(world, ready.prepared, ready.fork, new StepBudget(STEP_LIMIT));
      }),
      first: medianOf(() => {
        const ready = readyFor(world, question, 'anew');
        return searchPlans(world, ready.prepared, ready.fork, new StepBudget(STEP_LIMIT));
      }),
      search: medianOf(() => searchPlans(world, prepared, { ...fork }, new StepBudget(STEP_LIMIT))),
    };
  });
  return {
    count: both.length,
    plan: sampled(both.map(({ plan }) => plan)),
    first: sampled(both.map(({ first }) => first)),
    search: sampled(both.map(({ search }) => search)),
  };
}

/** Counter questions that the answer is no to: the refusal whole, with conflicts and ways out. */
export async function refusalTimes(rounds: number): Promise<{ readonly count: number; readonly times: Samples }> {
  const { world } = await loadCatalogFolder(demoFolder);
  const refused = Object.values(QUESTIONS).filter((question: QuestionInput) => {
    const reply = ask(world, question);
    return reply.kind === 'answer' && reply.answer.refusal !== null;
  });
  const medians = refused.map((question: QuestionInput) => {
    const all = Array.from({ length: rounds }, () => {
      world.market.remembered.clear();
      return cpuMilliseconds(() => ask(world, question));
    });
    return sampled(all).median;
  });
  return { count: refused.length, times: sampled(medians) };
}

/** The engine's whole front against a mixed-integer solver that proves the least total alone, question by question; the models of both are built apart. */
export interface AgainstSolver {
  /** Questions of which the encoding knows all that matters: it comes to the engine's least total, or to none where the engine refuses. */
  readonly count: number;
  readonly engine: Samples;
  readonly solver: Samples;
  /** How many times the engine's time the solver takes. */
  readonly ratios: Samples;
}

/** The encoding of tests/mip knows no bikes, generations, notices or replaced numbers: questions in which these matter are left out, and counted by that. */
export async function againstSolver(rounds: number): Promise<AgainstSolver> {
  const { world, raw, stockText, shopText } = await loadCatalogFolder(demoFolder);
  const highs = await highsSolver();
  const demo: Generated = {
    seed: 0,
    records: raw,
    stock: (stockText ?? '').trim().split('\n').slice(1),
    shop: parse(shopText ?? '') as Generated['shop'],
  };
  const pairs: { readonly engine: number; readonly solver: number }[] = [];
  for (const question of Object.values(QUESTIONS) as readonly QuestionInput[]) {
    if (question.bike !== undefined || question.onto !== undefined) continue;
    const model = modelOf(demo, question);
    const solve = (): number | null => {
      const verdict = highs(model.programme, model.parts[0]);
      return verdict.kind === 'least' ? Math.round(verdict.value) : null;
    };
    const answer = (): number | null => {
      world.market.remembered.clear();
      const reply = ask(world, question);
      const plans = reply.kind === 'answer' ? reply.answer.plans : [];
      return plans.length === 0 ? null : Math.min(...plans.map(({ money }) => Math.round(Number(money.total) * 100)));
    };
    if (solve() !== answer()) continue;
    const { prepared, fork } = readyFor(world, question);
    const front = (): unknown => {
      world.market.remembered.clear();
      return searchPlans(world, prepared, { ...fork }, new StepBudget(STEP_LIMIT));
    };
    for (let warm = 0; warm < WARM_UP; warm++) [solve(), front()];
    const times = Array.from({ length: rounds }, () => ({
      engine: cpuMilliseconds(front),
      solver: cpuMilliseconds(solve),
    }));
    pairs.push({
      engine: sampled(times.map(({ engine }) => engine)).median,
      solver: sampled(times.map(({ solver }) => solver)).median,
    });
  }
  return {
    count: pairs.length,
    engine: sampled(pairs.map(({ engine }) => engine)),
    solver: sampled(pairs.map(({ solver }) => solver)),
    ratios: sampled(pairs.map(({ engine, solver }) => solver / engine)),
  };
}

import { listsOf } from '../catalog/index.ts';
import { buildOf, type ForkProblem, forkProblem, opensNoMore, silencesOf } from '../fork/index.ts';
import { minor } from '../quantity/index.ts';
import { isSolution, Search, StepBudget } from '../solve/index.ts';
import type { Answer, Status } from './answer.ts';
import { readAsked } from './asked.ts';
import { assemblePlans, settingsInMm } from './assemble.ts';
import { badQuestion, type Fault, fault } from './fault.ts';
import { nowFlags, stayingFlags } from './flags.ts';
import { money } from './lines.ts';
import { Looks } from './looks.ts';
import { casesOf, compareCases, MOST_CASES } from './maybe.ts';
import { noticeFlag, noticeMember, noticesOn } from './notices.ts';
import { byPreference } from './preference.ts';
import { type Prepared, prepare, settled } from './prepare.ts';
import { type Question, questionSchema } from './question.ts';
import { refuse, refuseStock } from './refuse.ts';
import { bestValue, type Candidate, canBuild, isIdle, searchPlans } from './search.ts';
import { lackingFor } from './work-of.ts';
import type { World } from './world.ts';

export type Reply =
  | { readonly kind: 'answer'; readonly answer: Answer }
  | { readonly kind: 'faults'; readonly faults: readonly Fault[] };

/** The one door: a question in, an answer out. Takes no clock, file, network or randomness. */
export function ask(world: World, input: unknown): Reply {
  const asked = readAsked(questionSchema, input);
  if (!asked.ok) return { kind: 'faults', faults: badQuestion(asked.wrong) };
  const { prepared, faults } = prepare(world, asked.value);
  if (!prepared) return { kind: 'faults', faults };
  if (Object.keys(asked.value.maybe).length === 0) return { kind: 'answer', answer: work(world, prepared) };
  const cases = casesOf(prepared, world.catalog);
  if (cases.length > MOST_CASES)
    return { kind: 'faults', faults: [fault('too-many-cases', { cases: cases.length, most: MOST_CASES })] };
  const answers = cases.map((one) => work(world, one.prepared));
  return { kind: 'answer', answer: { ...(answers[0] ?? work(world, prepared)), cases: compareCases(cases, answers) } };
}

function work(world: World, prepared: Prepared): Answer {
  const { question } = prepared;
  if (nothingWanted(prepared)) return answer(world, prepared, { status: 'nothing-to-do', complete: true });
  const blocking = noticesOn(world.catalog, prepared.now).filter(
    ({ notice, standing }) => notice.blocks && standing === 'yes',
  );
  if (blocking.length > 0) {
    const refusal = {
      conflicts: blocking.map((one) => [noticeMember(one)]),
      smallest: true,
      instead: [],
      complete: true,
    };
    return answer(world, prepared, { status: 'impossible', complete: true, refusal });
  }
  const budget = new StepBudget(question.stepLimit);
  const fork = forkProblem(world.catalog, prepared.now, prepared.wants, question, 'narrow');
  const mayStay = satisfiedByNow(prepared, fork);
  const flags = mayStay ? stayingFlags(world, prepared, fork) : [];
  const stays = (): Answer => {
    const offers = serviceOffers(world, prepared, fork, null, budget);
    return answer(world, prepared, { status: 'nothing-to-do', complete: offers !== null, offers: offers ?? [], flags });
  };
  if (mayStay && silencesOf(fork, asItIs(fork)).length === 0) return stays();
  const result = searchPlans(world, prepared, fork, budget);
  const complete = result.end === 'whole';
  const candidates = mayStay ? result.candidates.filter((candidate) => !isIdle(candidate)) : result.candidates;
  if (candidates.length > 0) {
    const offers = complete ? serviceOffers(world, prepared, fork, recommended(prepared, candidates), budget) : null;
    const looks = new Looks(world, prepared, fork, budget);
    const plans = assemblePlans(world, prepared, looks, candidates);
    return answer(world, prepared, {
      status: 'answered',
      complete: complete && offers !== null && looks.complete,
      plans,
      offers: offers ?? [],
      flags,
    });
  }
  if (mayStay && complete) return stays();
  if (!complete) return answer(world, prepared, { status: 'stopped', complete: false });
  return noPlan(world, prepared, fork, budget);
}

/** Nothing is asked for that would change anything or have it done. */
function nothingWanted({ question: { wants, onto } }: Prepared): boolean {
  return (
    wants.travel === undefined &&
    wants.wheel === undefined &&
    wants.spacers === undefined &&
    wants.coilRate === undefined &&
    wants.axleToCrown === undefined &&
    wants.offset === undefined &&
    onto === undefined &&
    Object.keys(wants.traits).length === 0 &&
    [wants.use, wants.renew, wants.service].every((list) => list.length === 0)
  );
}

/** The build in front of you meets every wish, and no work was asked for. */
function satisfiedByNow({ question: { wants }, buying }: Prepared, fork: ForkProblem): boolean {
  if (
    wants.renew.length +
      wants.service.length +
      buying.useKits.length +
      buying.useSupplies.length +
      buying.usePacks.length >
    0
  )
    return false;
  return isSolution(fork.problem, asItIs(fork));
}

const asItIs = (fork: ForkProblem): readonly number[] => fork.sizes.map(() => 0);

/** The first build that meets wants and rules, in canonical order of the slots; null where there is none. */
function firstBuild(fork: ForkProblem, budget: StepBudget): readonly number[] | 'stopped' | null {
  const found: (readonly number[])[] = [];
  const end = new Search(fork.problem, () => true, fork.order).run(budget, {
    leaf: (values) => {
      found.push(values);
      return false;
    },
  });
  return end === 'stopped' ? 'stopped' : (found[0] ?? null);
}

/** No plan: impossible whatever is unknown, not known, or there is a build whose parts cannot be had. */
function noPlan(world: World, prepared: Prepared, fork: ForkProblem, budget: StepBudget): Answer {
  const first = firstBuild(fork, budget);
  if (first === 'stopped') return answer(world, prepared, { status: 'stopped', complete: false });
  const { allowUnknown } = prepared.question;
  const whole = forkProblem(world.catalog, prepared.now, prepared.wants, { allowUnknown, unlisted: 'in-play' });
  if (first) {
    const refusal = refuseStock(world, prepared, whole, lackingFor(world, prepared, buildOf(fork, first)), budget);
    return answer(world, prepared, {
      status: refusal === null ? 'stopped' : 'not-obtainable',
      complete: refusal !== null,
      refusal,
    });
  }
  const open = prepared.question.allowUnknown
    ? null
    : forkProblem(world.catalog, prepared.now, prepared.wants, { allowUnknown: true }, 'narrow');
  const withUnknown = open ? canBuild(open, () => true, budget) === true : false;
  const proof = withUnknown ? whole : forkProblem(world.catalog, prepared.now, prepared.wants, { allowUnknown: true });
  const refusal = refuse(world, prepared, whole, proof, budget);
  return answer(world, prepared, {
    status: refusal === null ? 'stopped' : withUnknown ? 'not-known' : 'impossible',
    complete: refusal !== null,
    refusal,
  });
}

interface Outcome {
  readonly flags?: Answer['flags'];
  readonly status: Status;
  readonly complete: boolean;
  readonly plans?: Answer['plans'];
  readonly offers?: Answer['offers'];
  readonly refusal?: Answer['refusal'];
}

function answer(world: World, prepared: Prepared, outcome: Outcome): Answer {
  const { question, now } = prepared;
  return {
    format: 1,
    catalog: world.catalog.hash,
    stock: world.stock.hash,
    shop: world.shop.hash,
    question,
    status: outcome.status,
    complete: outcome.complete,
    now: {
      chassis: now.build.chassis.id,
      travel: now.travel / 1000,
      build: Object.fromEntries(now.build.slots),
      settings: settingsInMm(now.build.settings),
      bike: now.bike?.bike.id ?? null,
    },
    flags: [...noticesOn(world.catalog, now).map(noticeFlag), ...nowFlags(world, prepared), ...(outcome.flags ?? [])],
    plans: outcome.plans ?? [],
    offers: outcome.offers ?? [],
    refusal: outcome.refusal ?? null,
    cases: null,
  };
}

/**
 * Services of the family that were not asked for: what each would add to the recommended plan. One that puts the fork onto a bike is offered where one is
 * named, and alone where nothing else is to be done: what it costs then. Null where the steps ran out on the way.
 */
function serviceOffers(
  world: World,
  prepared: Prepared,
  asked: ForkProblem,
  best: Candidate | null,
  budget: StepBudget,
): Answer['offers'] | null {
  const isNamed = prepared.question.onto !== undefined;
  const services = listsOf(world.catalog)
    .servicesOf(prepared.family.id)
    .filter(({ id, onto }) => !prepared.wants.services.includes(id) && (onto ? isNamed : best !== null));
  const [before, minutesBefore] = best?.vector ?? [0, 0];
  const offers: Answer['offers'][number][] = [];
  for (const { id, name } of services) {
    const wants = { ...prepared.question.wants, service: [...prepared.question.wants.service, id] };
    const question: Question = { ...prepared.question, wants };
    const again: Prepared = settled(world, { ...prepared, question });
    const fork = opensNoMore(asked, again.wants)
      ? asked
      : forkProblem(world.catalog, prepared.now, again.wants, question, 'narrow');
    const more = bestValue(world, again, fork, { known: fork === asked && best ? best.values : null }, budget);
    if (more === 'stopped') return null;
    if (more === 'none') continue;
    const [total, minutes, days, unpriced] = more;
    offers.push({
      service: id,
      name,
      money: money(world, minor(total - before)),
      minutes: minutes - minutesBefore,
      days: Number.isFinite(days) ? days : null,
      atLeast: unpriced > 0 || !world.hasShop,
    });
  }
  return offers;
}

const recommended = (prepared: Prepared, candidates: readonly Candidate[]): Candidate | null =>
  [...candidates].sort((a, b) => byPreference(prepared.question.prefer, a.vector, b.vector))[0] ?? null;

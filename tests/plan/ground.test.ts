import { describe, expect, it } from 'vitest';
import { type Ground, groundOf } from '../../src/fork/ground.ts';
import { buildOf, contentKey, type ForkProblem, familyOf, forkProblem } from '../../src/fork/index.ts';
import { prepare } from '../../src/plan/prepare.ts';
import { type QuestionInput, questionSchema } from '../../src/plan/question.ts';
import type { World } from '../../src/plan/world.ts';
import { millimetres } from '../../src/quantity/index.ts';
import { Search, StepBudget } from '../../src/solve/index.ts';
import { smallCatalogue } from '../generator/catalogue.ts';
import { loaded } from '../generator/load.ts';
import { questionsFor } from '../generator/questions.ts';

/** The builds that a problem allows, in the order of their texts; a build stands with the travel variable's one value. */
function buildsOf(fork: ForkProblem): readonly string[] {
  const found: string[] = [];
  const end = new Search(fork.problem, () => true, fork.order).run(new StepBudget(200_000), {
    leaf: (values) => {
      const { chassis, slots, settings } = buildOf(fork, values);
      found.push(
        JSON.stringify([
          chassis.id,
          [...slots].map(([slot, content]) => [slot, contentKey(content)]),
          [...settings],
          fork.travels[values.at(-1) ?? 0],
        ]),
      );
      return true;
    },
  });
  expect(end).toBe('whole');
  return found.sort();
}

const askedOf = (world: World, input: QuestionInput): ReturnType<typeof prepare>['prepared'] =>
  prepare(world, questionSchema.parse(input)).prepared;

const narrow = (world: World, input: QuestionInput, seen: 'before' | 'never'): ForkProblem => {
  const prepared = askedOf(world, input);
  if (!prepared) throw new Error(`not understood: ${JSON.stringify(input)}`);
  const { now, wants, question } = prepared;
  return forkProblem(world.catalog, seen === 'before' ? now : { ...now }, wants, question, 'narrow');
};

describe('what questions about one fork have in common', () => {
  it('a question asked anew, asked again and asked among others is the same problem, and allows the builds of the whole one', () => {
    let builds = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const generated = smallCatalogue(seed);
      const { world } = loaded(generated);
      const questions = questionsFor(generated, 6).filter((question) => askedOf(world, question) !== null);
      const anew = questions.map((question) => narrow(world, question, 'never'));
      for (let round = 0; round < 3; round++) {
        questions.forEach((question, at) => {
          const { sizes, problem, travels, chassis } = narrow(world, question, 'before');
          const { sizes: first, problem: fresh } = anew[at] ?? narrow(world, question, 'never');
          expect({ sizes, problem }).toEqual({ sizes: first, problem: fresh });
          expect([travels, chassis]).toEqual([anew[at]?.travels, anew[at]?.chassis]);
        });
      }
      questions.forEach((question, at) => {
        const prepared = askedOf(world, question);
        const fork = anew[at];
        if (!prepared || !fork) throw new Error('asked before');
        const whole = forkProblem(world.catalog, prepared.now, prepared.wants, prepared.question);
        const allowed = buildsOf(fork);
        builds += allowed.length;
        expect(allowed).toEqual(buildsOf(whole));
      });
    }
    expect(builds).toBeGreaterThan(500);
  });

  it('whatever travel is asked for, a fork that is kept does not grow: what was known of the last stays, of earlier ones goes', () => {
    const generated = smallCatalogue(3);
    const { world } = loaded(generated);
    const [question] = questionsFor(generated, 1);
    const now = question && askedOf(world, question)?.now;
    if (!now) throw new Error('a generated catalogue has questions');
    const { catalog } = world;
    const groundFor = (travel: number | null): Ground => {
      const wants = { travel: travel === null ? null : millimetres(travel), useParts: [] };
      return groundOf(catalog, familyOf(catalog, now.build.chassis), now, wants, { allowUnknown: false });
    };
    const [plain, first] = [groundFor(null), groundFor(701)];
    expect(first).not.toBe(plain);
    expect(groundFor(701)).toBe(first);
    for (let travel = 702; travel < 720; travel++) groundFor(travel);
    expect(groundFor(701)).not.toBe(first);
    expect(groundFor(null)).toBe(plain);
  });

  it('the forks asked about last are kept, and no more', () => {
    const { world } = loaded(smallCatalogue(3));
    const [question] = questionsFor(smallCatalogue(3), 1);
    if (!question) throw new Error('a generated catalogue has questions');
    const first = askedOf(world, question)?.now;
    expect(askedOf(world, { ...question, prefer: 'time' })?.now).toBe(first);
    for (let serial = 1; serial <= 63; serial++) askedOf(world, { ...question, serial: `LW${serial}` });
    expect(askedOf(world, question)?.now).toBe(first);
    for (let serial = 1; serial <= 64; serial++) askedOf(world, { ...question, serial: `LW${serial}` });
    const again = askedOf(world, question)?.now;
    expect(again).not.toBe(first);
    expect(again).toEqual(first);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forkProblem } from '../../src/fork/index.ts';
import { planFloors } from '../../src/plan/floor.ts';
import { prepare } from '../../src/plan/prepare.ts';
import { type QuestionInput, questionSchema } from '../../src/plan/question.ts';
import { waysToPayFor } from '../../src/plan/search.ts';
import type { World } from '../../src/plan/world.ts';
import { Domains } from '../../src/solve/domains.ts';
import { noWorse, Search, StepBudget, type Vector } from '../../src/solve/index.ts';
import { type Generated, smallCatalogue } from '../generator/catalogue.ts';
import { frontGrid, singleGrid } from '../generator/grid.ts';
import { loaded } from '../generator/load.ts';
import { questionsFor } from '../generator/questions.ts';
import { hold } from '../laws/hold.ts';
import { QUESTIONS } from '../scenarios/counter/questions.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

/** Leaves of one question that are looked at, and nodes above each. */
const LEAVES = 12;
const NODES = 6;

interface Node {
  readonly floor: Vector;
  readonly floors: readonly Vector[];
  readonly vectors: readonly Vector[];
  readonly isLeaf: boolean;
}

/** Nodes above some leaves of a question, what else is open there by chance, with their floors and what the leaf comes to. */
function nodesOf(world: World, input: QuestionInput, seed: number): Node[] {
  const { prepared } = prepare(world, questionSchema.parse(input));
  if (!prepared) throw new Error(`not understood: ${JSON.stringify(input)}`);
  const fork = forkProblem(world.catalog, prepared.now, prepared.wants, prepared.question, 'narrow');
  const { floor: floorOf, floors: floorsOf } = planFloors(world, prepared, fork);
  const ways = waysToPayFor(world, prepared, fork);
  const chance = chanceFrom(seed);
  const orders = fork.sizes.map((size) => Array.from({ length: size }, (_, value) => value).sort(() => chance() - 0.5));
  const nodes: Node[] = [];
  let leaves = 0;
  new Search(fork.problem, () => true, fork.order).run(new StepBudget(3000), {
    valuesOf: (variable) => orders[variable] ?? [],
    leaf: (values) => {
      const vectors = ways(values).map(({ vector }) => vector);
      for (let node = 0; node <= NODES; node++) {
        const domains = new Domains(fork.sizes);
        const share = node / NODES;
        fork.sizes.forEach((size, variable) => {
          for (let value = 0; value < size; value++)
            if (value !== values[variable] && chance() >= share) domains.remove(variable, value);
        });
        nodes.push({ floor: floorOf(domains), floors: floorsOf(domains), vectors, isLeaf: node === 0 });
      }
      return ++leaves < LEAVES;
    },
  });
  return nodes;
}

/** Numbers from 0 to below 1 by a seed (mulberry32, public domain). */
function chanceFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Every spring and damper needs the clip of its family, and no clip has a price. */
const clipsFree = (generated: Generated): Generated => {
  const parts = generated.records.parts ?? [];
  const clipOf = (sku: string): string =>
    parts.find((part) => part.role === 'clip' && part.sku.split('-')[0] === sku.split('-')[0])?.sku ?? '';
  return {
    ...generated,
    records: {
      ...generated.records,
      parts: parts.map((part) => {
        const { price: _price, ...unpriced } = part;
        if (part.role === 'clip') return unpriced;
        if (part.role !== 'spring' && part.role !== 'damper') return part;
        return { ...part, needs: [{ sku: clipOf(part.sku), 'with-renewal': true }] };
      }),
    },
  };
};

/** Nodes of which a plan is under the floor in some part, or under each of the floors. */
const above = (nodes: readonly Node[]): readonly Node[] =>
  nodes.filter(({ floor, floors, vectors }) =>
    vectors.some((vector) => !noWorse(floor, vector) || !floors.some((one) => noWorse(one, vector))),
  );

describe('floors', () => {
  it('law: no part of a floor is above that of a plan below it, on generated catalogues', () => {
    let plans = 0;
    const seeds = fc.integer({ min: 1, max: 1_000_000 });
    hold('floors hold', 150, seeds, (seed) => {
      const generated = smallCatalogue(seed);
      const { world } = loaded(generated);
      for (const question of questionsFor(generated, 2)) {
        const nodes = nodesOf(world, question, seed);
        plans += nodes.filter(({ isLeaf, vectors }) => isLeaf && vectors.length > 0).length;
        expect(above(nodes)).toEqual([]);
      }
    });
    expect(plans).toBeGreaterThan(100);
  });

  it('law: the same where everything is renewed and kits share openings', () => {
    let plans = 0;
    hold('floors of grids hold', 40, fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
      for (const { generated, question } of [singleGrid(seed, 9, 4), frontGrid(seed, 8, 3)]) {
        const nodes = nodesOf(loaded(generated).world, question, seed);
        plans += nodes.filter(({ isLeaf, vectors }) => isLeaf && vectors.length > 0).length;
        expect(above(nodes)).toEqual([]);
      }
    });
    expect(plans).toBeGreaterThan(100);
  });

  it('law: the same where several parts need one clip that has no price', () => {
    let shared = 0;
    hold('floors of one clip for several parts hold', 150, fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
      const generated = clipsFree(smallCatalogue(seed));
      const { world } = loaded(generated);
      for (const question of questionsFor(generated, 3)) {
        const nodes = nodesOf(world, question, seed);
        shared += nodes.filter(({ vectors }) => vectors.some((vector) => (vector[3] ?? 0) > 0)).length;
        expect(above(nodes)).toEqual([]);
      }
    });
    expect(shared).toBeGreaterThan(100);
  });

  it('what was wrong once: a clip that two parts need counted as two lines without a price', () => {
    const generated = smallCatalogue(1364);
    const wants = { travel: 100, renew: ['damper', 'foot-seals'] };
    const question = { chassis: 'g0-584-2', travelNow: 170, wants, supplies: 'bulk' } as const;
    expect(above(nodesOf(loaded(generated).world, question, 1))).toEqual([]);
  });

  it('at a leaf of a grid where everything has a price the floor of the money is the money', () => {
    let [leaves, exact] = [0, 0];
    for (let seed = 1; seed <= 12; seed++) {
      const { generated, question } = singleGrid(seed, 10, 5);
      for (const { floor, vectors, isLeaf } of nodesOf(loaded(generated).world, question, seed)) {
        if (!isLeaf) continue;
        leaves++;
        if (Math.min(...vectors.map(([money = 0]) => money)) === floor[0]) exact++;
      }
    }
    // a search is quick only where floors are close: of these leaves nearly all
    expect(exact / leaves).toBeGreaterThan(0.8);
  });

  it('law: the same for the questions from the counter', async () => {
    const { world } = await loadCatalogFolder(demoFolder);
    let plans = 0;
    for (const question of Object.values(QUESTIONS)) {
      const nodes = nodesOf(world, question, 7);
      plans += nodes.filter(({ isLeaf, vectors }) => isLeaf && vectors.length > 0).length;
      expect(above(nodes)).toEqual([]);
    }
    expect(plans).toBeGreaterThan(100);
  });
});

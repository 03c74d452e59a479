import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Catalog, mergeRaw, readCatalog, readShop, readStock, type TextFile } from '../../src/catalog/index.ts';
import { ask, makeWorld, type QuestionInput, type World } from '../../src/plan/index.ts';
import { answerDocument } from '../../src/report/document.ts';
import { en } from '../../src/report/words/en.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { hold } from './hold.ts';
import { QUESTIONS } from './questions.ts';
import { answerOf, demoCases, paper, paperCases } from './subject.ts';

/** What JSON prints for a question. */
function bytes(world: World, question: QuestionInput): string {
  const reply = ask(world, question);
  if (reply.kind === 'faults') throw new Error(JSON.stringify(reply.faults));
  return JSON.stringify(answerDocument(reply.answer, en, world.catalog, 'without-places'));
}

/** Every file's records last to first, in one file of JSON; what was in the first file comes last. */
function turnedRound(files: readonly TextFile[]): readonly TextFile[] {
  const merged = Object.entries(mergeRaw([...files].reverse()));
  const value = Object.fromEntries(
    merged.reverse().map(([key, content]) => [key, Array.isArray(content) ? [...content].reverse() : content]),
  );
  return [{ name: 'all.json', text: JSON.stringify(value) }];
}

describe('same bytes', async () => {
  const { world, files, stockText, shopText } = await loadCatalogFolder(demoFolder);
  const { catalog, stock, shop } = world;
  const fresh = (): World => makeWorld(catalog, stock, shop);

  it('law: the same question twice, in the same world or another, gives the same bytes', () => {
    hold('same question, same bytes', 8, fc.constantFrom(...QUESTIONS), (question) => {
      const first = bytes(world, question);
      expect(bytes(world, question)).toBe(first);
      expect(bytes(fresh(), question)).toBe(first);
    });
  });

  it('law: what was asked before does not show', () => {
    const order = fc.shuffledSubarray([...QUESTIONS], { minLength: 3, maxLength: 3 });
    hold('history does not show', 4, order, (questions) => {
      const shared = fresh();
      for (const question of questions) expect(bytes(shared, question)).toBe(bytes(fresh(), question));
    });
  });

  it('files: records in another order, in other files of another kind, give the same hash and the same bytes', () => {
    const read = readCatalog(turnedRound(files), 'elsewhere');
    expect(read.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    const other = read.value as Catalog;
    expect(other.hash).toBe(catalog.hash);
    const rows = stockText?.trim().split('\n') ?? [];
    const turned = [...rows.slice(0, 1), ...rows.slice(1).reverse()].join('\n');
    const stocked = readStock('other.csv', turned, other);
    expect(stocked.value.hash).toBe(stock.hash);
    const there = makeWorld(other, stocked.value, readShop('other.yaml', shopText ?? '', other).value);
    for (const question of QUESTIONS) expect(bytes(there, question)).toBe(bytes(world, question));
  });
});

/** What an answer says, without the question it repeats. */
function said({ question: _question, ...answer }: ReturnType<typeof answerOf>): typeof answer {
  return answer;
}

describe('step limit', () => {
  const check = (one: Parameters<typeof answerOf>[0]): void => {
    const whole = said(answerOf(one));
    for (const stepLimit of [1, 10, 100]) {
      const short = said(answerOf({ ...one, question: { ...one.question, stepLimit } }));
      if (short.status === 'stopped') {
        expect([short.complete, short.plans, short.refusal]).toEqual([false, [], null]);
      } else if (!short.complete) {
        // part of the true front, and said to be part
        expect(short.status).toBe('answered');
        const all = whole.plans.map(({ build, money, minutes }) => JSON.stringify([build, money, minutes]));
        for (const { build, money, minutes } of short.plans)
          expect(all).toContain(JSON.stringify([build, money, minutes]));
      } else if (short.refusal && !short.refusal.complete) {
        expect([short.status, short.refusal.conflicts.length > 0]).toEqual([whole.status, true]);
      } else expect(JSON.stringify(short)).toBe(JSON.stringify(whole));
    }
  };

  it('law: with few steps the answer is the same, or says that it is not whole (paper catalogue)', () => {
    hold('step limits never lie, paper', 60, paperCases, check);
  });
  it('law: with few steps the answer is the same, or says that it is not whole (demo catalogue)', () => {
    hold('step limits never lie, demo', 8, demoCases, check);
  });

  const ask = (wants: QuestionInput['wants'], stepLimit?: number): ReturnType<typeof answerOf> =>
    answerOf({
      subject: paper,
      question: { chassis: 'ombry-622', travelNow: 120, wants, ...(stepLimit === undefined ? {} : { stepLimit }) },
    });
  const upTo = (most: number): number[] => Array.from({ length: most }, (_one, at) => at + 1);

  it('offers: none that the steps did not reach is left out of an answer that says it is complete', () => {
    const whole = ask({ travel: 100 });
    expect(whole.offers.length).toBeGreaterThan(0);
    for (const limit of upTo(30)) {
      const short = ask({ travel: 100 }, limit);
      if (short.complete) expect([limit, short.offers]).toEqual([limit, whole.offers]);
    }
  });

  it('ways out: a list that says it is complete is the whole list, each with its best plan', () => {
    const wants = { travel: 90, wheel: 584 };
    const whole = ask(wants);
    expect(whole.refusal?.instead.length).toBeGreaterThan(0);
    for (const limit of upTo(220)) {
      const { refusal } = ask(wants, limit);
      if (refusal?.complete) expect([limit, refusal.instead]).toEqual([limit, whole.refusal?.instead]);
    }
  });
});

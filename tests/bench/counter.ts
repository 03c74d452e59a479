import { ask, type QuestionInput } from '../../src/plan/index.ts';
import { QUESTIONS } from '../scenarios/counter/questions.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { cpuMilliseconds, type Samples, sampled } from './measure.ts';

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

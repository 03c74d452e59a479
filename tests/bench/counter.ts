import { ask, type QuestionInput } from '../../src/plan/index.ts';
import { QUESTIONS } from '../scenarios/counter/questions.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { cpuMilliseconds, type Samples, sampled } from './measure.ts';

/** Every question from the counter against the demo catalogue, in turn, so that what slows the machine slows all alike. */
export async function counterTimes(rounds: number, warmUp: number): Promise<ReadonlyMap<string, Samples>> {
  const { world } = await loadCatalogFolder(demoFolder);
  const questions: readonly (readonly [string, QuestionInput])[] = Object.entries(QUESTIONS);
  const times = new Map<string, number[]>(questions.map(([name]) => [name, []]));
  for (let round = 0; round < warmUp + rounds; round++) {
    for (const [name, question] of questions) {
      // what was bought before is forgotten: each answer is worked out whole
      world.market.remembered.clear();
      const took = cpuMilliseconds(() => ask(world, question));
      if (round >= warmUp) times.get(name)?.push(took);
    }
  }
  return new Map([...times].map(([name, all]) => [name, sampled(all)]));
}

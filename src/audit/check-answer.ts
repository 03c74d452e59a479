import { flagCodes, type Plan } from './answer.ts';
import { readBuild, sameBuild, travelOf } from './build.ts';
import type { Book } from './catalog.ts';
import { type Fault, fault } from './finding.ts';
import type { Now } from './now.ts';
import type { Question } from './question.ts';
import { number, type Row, row, text } from './read.ts';
import { standing } from './scene.ts';

/** The answer as a whole: its status suits its plans, and its now is the one that catalogue and question give. */
export function* checkAnswer(
  book: Book,
  question: Question,
  now: Now,
  answer: Row,
  plans: readonly Plan[],
): Iterable<Fault> {
  const status = text(answer.status);
  const stoppedEarly = status === 'stopped' && answer.complete === false;
  if (plans.length > 0 ? status !== 'answered' && !stoppedEarly : status === 'answered') {
    yield fault('status', `${status} with ${plans.length} plans`);
  }
  if (!now.ok) {
    yield fault('now', now.why);
    return;
  }
  const shown = row(answer.now);
  const { chassis } = standing(book, now.build, question.chassis);
  if (!sameBuild(readBuild(shown.build), now.build) || shown.chassis !== chassis.id) {
    yield fault('now', 'now is not the build that catalogue and question give');
  }
  const travel = travelOf(book, now.build, chassis);
  if (travel !== question.travelNow) yield fault('now-travel', `now has ${travel} um, asked ${question.travelNow}`);
  if (Math.round((number(shown.travel) ?? -1) * 1000) !== question.travelNow) yield fault('now-travel', 'as shown');
  const flags = [...flagCodes(answer.flags), ...plans.flatMap((plan) => plan.flags)];
  if (now.derived && !flags.includes('now-derived')) yield fault('flag', 'now-derived is missing');
  if (now.assumed.length > 0 && !flags.includes('now-assumed')) {
    yield fault('flag', `now-assumed is missing for ${now.assumed.join(', ')}`);
  }
}

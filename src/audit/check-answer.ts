import { flagCodes, type Plan } from './answer.ts';
import { readBuild, sameBuild } from './build.ts';
import type { Book } from './catalog.ts';
import { checkNotices } from './check-notices.ts';
import { type Fault, fault } from './finding.ts';
import { madeOf } from './made.ts';
import type { Now } from './now.ts';
import { type Question, readSettings } from './question.ts';
import { number, type Row, row, text } from './read.ts';
import { standing } from './scene.ts';
import { sameSettings } from './settings.ts';

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
  const named = book.chassis.get(question.chassis) ?? {};
  const made = madeOf(question.serial, question.built, named, book.families.get(text(named.family) ?? '') ?? {});
  const settings = readSettings(shown.settings);
  const { chassis, travel } = standing(book, { build: now.build, settings }, question.chassis, made);
  if (!sameBuild(readBuild(shown.build), now.build) || shown.chassis !== chassis.id) {
    yield fault('now', 'now is not the build that catalogue and question give');
  }
  if (travel !== question.travelNow) yield fault('now-travel', `now has ${travel} um, asked ${question.travelNow}`);
  if (Math.round((number(shown.travel) ?? -1) * 1000) !== question.travelNow) yield fault('now-travel', 'as shown');
  if (!now.settings.some((each) => sameSettings(settings, each))) yield fault('now-settings', 'as shown');
  if ((shown.bike ?? null) !== (question.ride?.bike.id ?? null)) yield fault('now-bike', 'as shown');
  yield* checkNotices(book, question, now.build, answer);
  const flags = [...flagCodes(answer.flags), ...plans.flatMap((plan) => plan.flags)];
  if (now.derived && !flags.includes('now-derived')) yield fault('flag', 'now-derived is missing');
  if (now.assumed.length > 0 && !flags.includes('now-assumed')) {
    yield fault('flag', `now-assumed is missing for ${now.assumed.join(', ')}`);
  }
}

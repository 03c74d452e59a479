import type { Build } from './build.ts';
import type { Book } from './catalog.ts';
import { type Fault, fault } from './finding.ts';
import { inMonths, inSerials, type Stands, together } from './made.ts';
import type { Question } from './question.ts';
import { type Row, row, rows, text, texts } from './read.ts';

/** Notices of the makers (section 10): one that blocks leaves no plan; all that apply or may apply are said. */
export function* checkNotices(book: Book, question: Question, now: Build, answer: Row): Iterable<Fault> {
  const plans = rows(answer.plans);
  const flags = [...rows(answer.flags), ...plans.flatMap((plan) => rows(plan.flags))];
  for (const notice of book.notices) {
    const id = text(notice.id);
    const applies = appliesTo(notice, book, question, now);
    if (applies === 'no') continue;
    if (applies === 'yes' && notice.effect === 'blocks' && plans.length > 0) {
      yield fault('notice-blocks', `${id} leaves no plan`);
    }
    const code = applies === 'yes' ? 'notice' : 'notice-check';
    const said = flags.some((flag) => flag.code === code && row(flag.params).notice === id);
    if (!said) yield fault('flag', `${code} is missing for ${id}`);
  }
}

/** Every statement that the notice makes is met; serial and month may be missing. */
function appliesTo(notice: Row, book: Book, question: Question, now: Build): Stands {
  const family = text(book.chassis.get(question.chassis)?.family) ?? '';
  const parts = [...now.values()].flatMap((content) => (content ? [content.sku] : []));
  return together([
    names(notice.families, [family]),
    names(notice.chassis, [question.chassis]),
    names(notice.parts, parts),
    inMonths(notice.months, question.built),
    inSerials(notice.serials, question.serial),
  ]);
}

const names = (named: unknown, present: readonly string[]): Stands =>
  named === undefined || texts(named).some((name) => present.includes(name)) ? 'yes' : 'no';

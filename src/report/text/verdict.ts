import type { Plan } from '../../plan/index.ts';
import { wrapped } from '../layout.ts';
import { chassisName, type Scene } from '../scene.ts';
import { say, wayOut } from '../words/say.ts';
import { bikeWords, wantList, wishedFor } from './wants.ts';

/** What was asked, the verdict, and for a yes: total, minutes and days. */
export function verdictLines(scene: Scene): string[] {
  const { answer, page } = scene;
  const asked = `${chassisName(scene, answer.now.chassis)}, ${answer.now.travel} mm now. Wanted: ${wishedFor(scene, answer.question)}.`;
  const plan = answer.plans[0];
  return [...wrapped(page, asked), '', ...(plan ? yes(scene, plan) : no(scene))];
}

function yes(scene: Scene, plan: Plan): string[] {
  const { answer, page, language } = scene;
  const { phrases } = language;
  const ways = say(language, 'statuses', { code: 'answered', params: { plans: answer.plans.length } });
  const proof = answer.complete
    ? ''
    : ` The search stopped at its limit of ${answer.question.stepLimit} steps: there may be better ways.`;
  const best = plan.label.filter((label) => label !== 'recommended').map((label) => phrases.label[label]);
  const why =
    answer.plans.length === 1 ? '' : ` Recommended: ${best.length === 0 ? 'this one' : `the ${best.join(' and ')}`}.`;
  const { money } = plan;
  const total = phrases.money(money.total, money.currency, money.atLeast ? 'at-least' : 'exact');
  return [
    ...wrapped(page, `${page.paint('good', 'YES.')} ${ways}.${proof}${why}`),
    ...wrapped(
      page,
      `${page.paint('strong', total)}${taxWords(money)}, ${phrases.minutes(plan.minutes)} at the bench, ${phrases.ready(plan.readyInDays)}`,
      '  ',
    ),
    ...cheaper(scene, plan),
  ];
}

/** Services that make the plan cheaper: a flat price, or a kit that they call for. It is said beside the total, where the total is read. */
function cheaper({ answer, page, language: { phrases } }: Scene, { money }: Plan): string[] {
  return answer.offers
    .filter((offer) => offer.money.startsWith('-') && !offer.atLeast)
    .flatMap(({ service, name, money: less }) =>
      wrapped(page, phrases.cheaperAsService(name, phrases.more(less, money.currency), service), '  '),
    );
}

function taxWords({ tax, currency }: Plan['money']): string {
  if (tax === null) return '';
  return tax.included ? ` with ${tax.rate} % tax` : ` and ${tax.amount} ${currency} tax (${tax.rate} %)`;
}

/** Nothing was asked for, the fork suits the bike as it is, or it is as wished. */
function nothingWords(scene: Scene): string {
  const { wants, onto, ontoSize } = scene.answer.question;
  const { phrases } = scene.language;
  if (wantList(scene, wants).length > 0) return phrases.alreadySo;
  if (onto === undefined) return phrases.nothingWished;
  const { currency } = scene.catalog;
  const offers = scene.answer.offers.map(({ name, money, minutes, days, atLeast, service }) =>
    phrases.comesTo(name, `${atLeast ? 'at least ' : ''}${money} ${currency}`, minutes, phrases.ready(days), service),
  );
  return phrases.suitsAlready(bikeWords(scene, onto, ontoSize), offers);
}

function no(scene: Scene): string[] {
  const { answer, page, language } = scene;
  const { status, question } = answer;
  const verdict = say(language, 'statuses', { code: status, params: { plans: 0, steps: question.stepLimit } });
  const meaning = language.codes.statuses[status].meaning;
  switch (status) {
    case 'nothing-to-do':
      return wrapped(page, `${page.paint('good', `${verdict}.`)} ${nothingWords(scene)}`);
    case 'stopped': {
      const way = language.codes.statuses.stopped.way({ steps: question.stepLimit });
      return wrapped(page, `${page.paint('warn', `${verdict}.`)} ${meaning} ${way}`);
    }
    case 'answered':
    case 'impossible':
      if (answer.refusal?.conflicts.every((conflict) => conflict.every(({ kind }) => kind === 'notice')))
        return wrapped(page, page.paint('bad', language.phrases.stoppedByNotice));
      return wrapped(page, `${page.paint('bad', `NO. ${verdict}.`)} ${meaning}`);
    case 'not-known':
    case 'not-obtainable': {
      // neither a yes nor a proof against it: another word, and what to do
      const way = wayOut(language, 'statuses', { code: status, params: {} });
      return wrapped(page, `${page.paint('warn', `${verdict.toUpperCase()}.`)} ${meaning} ${way}`);
    }
  }
}

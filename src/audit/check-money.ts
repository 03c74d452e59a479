import { multiplyDivide } from '../quantity/index.ts';
import type { Line } from './answer.ts';
import { dosed } from './bulk.ts';
import { type Fault, fault } from './finding.ts';
import { inWords, isMoney, minutes, price } from './measure.ts';
import { field, isRow, number, type Row, row, text, texts } from './read.ts';
import type { Scene } from './scene.ts';

/** parts + supplies + labour = total; what has no price adds nothing and is counted (section 6, "Money"). */
export function* checkMoney(scene: Scene): Iterable<Fault> {
  const { plan, book } = scene;
  const bought = plan.lines.filter((line) => line.action === 'buy');
  const isPack = (line: Line): boolean => book.packs.has(line.sku ?? '');
  const supplyLines = [...bought.filter(isPack), ...dosed(scene)];
  const parts = sum(
    scene,
    bought.filter((line) => !isPack(line)),
  );
  const supplies = sum(scene, supplyLines);
  const work = labour(scene);
  const total = parts + supplies + work;
  for (const [name, right] of Object.entries({ parts, supplies, labour: work, total })) {
    if (!isMoney(plan.money[name], right, book.digits)) yield fault(`money-${name}`, inWords(right, book.digits));
  }
  if (plan.money.currency !== book.currency) yield fault('money-currency', book.currency);
  const unpriced = [...bought, ...dosed(scene)].filter((line) => line.total === null).length;
  if (plan.money.unpriced !== unpriced) yield fault('money-unpriced', `${unpriced} lines have no price`);
  const atLeast = unpriced > 0 || scene.market.shop === null;
  if (plan.money.atLeast !== atLeast)
    yield fault('money-at-least', `${unpriced} lines have no price, shop file: ${scene.market.shop !== null}`);
  yield* checkTax(scene, total);
  yield* checkMinutes(scene);
}

const sum = (scene: Scene, lines: readonly Line[]): number =>
  lines.reduce((all, line) => all + (price(line.total, scene.book.digits) ?? 0), 0);

/** Minutes of the needed operations, by the catalogue. */
const minutesOf = (scene: Scene, id: string): number => minutes(scene.work.operations.get(id)?.minutes) ?? 0;

function* checkMinutes(scene: Scene): Iterable<Fault> {
  const right = scene.work.needed.reduce((all, id) => all + minutesOf(scene, id), 0);
  if (scene.plan.minutes !== right) yield fault('minutes', `the operations take ${right}`);
}

/** The service's flat price for the operations it lists, the rate for the others; without a shop nothing. */
function labour(scene: Scene): number {
  const { digits } = scene.book;
  const terms = row(scene.market.shop?.labour);
  const services = [...new Set(scene.question.service)];
  const flat = services.flatMap((id) => {
    const each = price(field(row(terms.flat), id), digits);
    return each === null ? [] : [{ id, each }];
  });
  const covered = new Set(flat.flatMap(({ id }) => texts(scene.book.services.get(id)?.operations)));
  const rest = scene.work.needed.filter((id) => !covered.has(id)).reduce((all, id) => all + minutesOf(scene, id), 0);
  const byRate = multiplyDivide(rest, price(terms.rate, digits) ?? 0, 60);
  return flat.reduce((all, { each }) => all + each, byRate);
}

/** Included: total*rate/(100+rate). To be added: total*rate/100. Rounded half up. */
function* checkTax(scene: Scene, total: number): Iterable<Fault> {
  const terms = scene.market.shop?.tax;
  const shown = scene.plan.money.tax;
  if (!isRow(terms)) {
    if (shown !== null && shown !== undefined) yield fault('money-tax', 'the shop file says nothing of tax');
    return;
  }
  const right = taxIn(total, terms);
  if (!isRow(shown) || shown.rate !== terms.rate || shown.included !== terms.included) {
    yield fault('money-tax', `rate ${number(terms.rate)}, included ${terms.included === true}`);
  } else if (right === null || !isMoney(shown.amount, right, scene.book.digits)) {
    yield fault('money-tax', `${right === null ? 'not to be worked out' : inWords(right, scene.book.digits)}`);
  }
}

/** The rate as a decimal fraction of whole numbers: 7.7 per cent is 77 of 1000. */
function taxIn(total: number, terms: Row): number | null {
  const match = /^([0-9]+)(?:\.([0-9]+))?$/.exec(text(terms.rate) ?? String(number(terms.rate)));
  if (!match) return null;
  const decimals = match[2]?.length ?? 0;
  const rate = Number(`${match[1] ?? ''}${match[2] ?? ''}`);
  const hundred = 100 * 10 ** decimals;
  const whole = Number.isSafeInteger(rate) && Number.isSafeInteger(hundred) && Number.isSafeInteger(total);
  return whole ? multiplyDivide(total, rate, terms.included === true ? hundred + rate : hundred) : null;
}

import type { Line, Plan, Step } from '../plan/index.ts';
import { groupBy } from '../quantity/index.ts';
import { noPaint } from './paint.ts';
import { chassisName, documentName, legsOf, type Scene } from './scene.ts';
import { effectLines } from './text/effects.ts';
import { nowAndAfter } from './text/fork.ts';
import { lookWords } from './text/look.ts';
import { amountWords } from './text/poured.ts';
import { refusalSections } from './text/refusal.ts';
import { takenBy, toolName, toolOf, torqueWords } from './text/torque.ts';
import { verdictLines } from './text/verdict.ts';
import { wishedFor } from './text/wants.ts';
import { offerWords, partLines } from './text/work.ts';
import { say, wayOut } from './words/say.ts';

/** A worksheet to print and take to the bench: the recommended plan with boxes to tick and blanks to fill in. */
export function worksheet(scene: Scene): string {
  const { answer } = scene;
  const [plan] = answer.plans;
  const head = [
    `# ${literal(`${chassisName(scene, answer.now.chassis)}, ${answer.now.travel} mm: ${wishedFor(scene, answer.question)}`)}`,
    '',
  ];
  const lines = plan
    ? [
        ...head,
        ...summary(scene, plan),
        ...blanks(),
        ...checks(scene, plan),
        ...always(scene),
        ...fork(scene, plan),
        ...parts(scene, plan),
        ...tools(scene, plan),
        ...oil(scene, plan),
        ...effects(scene, plan),
        ...offers(scene),
        ...steps(scene, plan),
      ]
    : [...head, '```', ...plainText(scene), '```', ''];
  return `${[...lines, basis(scene)].join('\n')}\n`;
}

function always({ language }: Scene): string[] {
  const { cautions, standsAbove, heading } = language.phrases;
  return [
    `## ${heading.cautions}`,
    '',
    ...cautions.map((caution) => `- ${literal(caution)}`),
    '',
    `**${literal(standsAbove)}**`,
    '',
  ];
}

/** What is in the fork now and after. */
function fork(scene: Scene, plan: Plan): string[] {
  const lines = nowAndAfter({ ...scene, page: { width: 1000, paint: noPaint } }, plan);
  return [
    `## ${scene.language.phrases.heading.nowAndAfter}`,
    '',
    ...lines.map((line) => `- ${literal(line.trim().replaceAll(/ {2,}/g, ' '))}`),
    '',
  ];
}

/** What to lay out before the first step. */
function tools(scene: Scene, plan: Plan): string[] {
  const { tools: all } = plan;
  if (all.length === 0) return [];
  return [
    '## Tools to lay out',
    '',
    ...all.map((tool) => {
      const about = [...takenBy(scene, plan, tool.id), ...(tool.atHand === false ? ['not at hand'] : [])];
      return `- [ ] ${literal(toolName(tool))}${about.length === 0 ? '' : ` (${literal(about.join('; '))})`}`;
    }),
    '',
  ];
}

/** Text that Markdown must not take for its own: pipes, brackets, stars, backticks and the like. */
export const literal = (text: string): string =>
  text.replaceAll(/[\\`*_{}[\]<>|#]/g, '\\$&').replaceAll(/\s*\r?\n\s*/g, ' ');

function plainText(scene: Scene): string[] {
  const plain = { ...scene, page: { width: 80, paint: noPaint } };
  return [...verdictLines(plain), ...refusalSections(plain)].map((line) => line.replaceAll('```', "'''"));
}

function summary({ language, answer }: Scene, plan: Plan): string[] {
  const { phrases } = language;
  const { money } = plan;
  const total = phrases.money(money.total, money.currency, money.atLeast ? 'at-least' : 'exact');
  const tax =
    money.tax === null
      ? ''
      : money.tax.included
        ? `, ${money.tax.rate} % tax included`
        : `, ${money.tax.rate} % tax comes on top`;
  const date = answer.question.date === undefined ? '' : ` Asked for ${answer.question.date}.`;
  return [
    `**${total}${tax}. ${phrases.minutes(plan.minutes)} at the bench, ${phrases.ready(plan.readyInDays)}.**${date}`,
    '',
  ];
}

const BLANK = '__________';
function blanks(): string[] {
  return [
    '| customer | serial number | date | mechanic |',
    '| --- | --- | --- | --- |',
    `| ${BLANK} | ${BLANK} | ${BLANK} | ${BLANK} |`,
    '',
    '| measured | before | after |',
    '| --- | --- | --- |',
    ...[
      'pressure',
      'clicks from closed',
      'travel, mm',
      'axle-to-crown, mm',
      'gap tyre to crown at the bottom, mm',
      'sag, mm',
    ].map((name) => `| ${name} | ${BLANK} | ${BLANK} |`),
    '',
  ];
}

const WHERE: Readonly<Record<Line['action'], string>> = {
  buy: 'buy',
  take: 'at hand',
  install: 'goes in new',
  renew: 'renewed',
  use: 'used up',
  reuse: 'goes back in',
  remove: 'to the customer',
  waste: 'waste',
};

function parts({ language }: Scene, { lines, money }: Plan): string[] {
  return [
    '## Parts and supplies',
    '',
    `| done | what for | quantity | number | name | from | shelf | days | ${money.currency} |`,
    '| --- | --- | ---: | --- | --- | --- | --- | ---: | ---: |',
    ...lines.map((line) => {
      const count = line.packs === null ? language.phrases.unit(line.quantity, line.unit) : `${line.packs} x`;
      const cells = [
        '[ ]',
        WHERE[line.action],
        count,
        line.sku ?? '',
        line.name,
        line.from ?? '',
        line.bin ?? '',
        line.action === 'buy' ? String(line.days ?? '?') : '',
        line.total ?? '',
      ];
      return `| ${cells.map((cell, at) => (at === 0 ? cell : literal(cell))).join(' | ')} |`;
    }),
    '',
  ];
}

/** What changes on fork and bike, the maker's word first. */
function effects(scene: Scene, plan: Plan): string[] {
  const lines = effectLines({ ...scene, page: { width: 1000, paint: noPaint } }, plan.effects);
  return [
    `## ${scene.language.phrases.heading.effects}`,
    '',
    ...lines.map((line) =>
      line.replace(/^ {2}( *)(.*)$/, (_, indent: string, text: string) => `${indent}- ${literal(text)}`),
    ),
    '',
  ];
}

/** What goes well with the job, to be asked before the fork is closed. */
function offers(scene: Scene): string[] {
  const words = offerWords(scene);
  if (words.length === 0) return [];
  return [`## ${scene.language.phrases.heading.offers}`, '', ...words.map((offer) => `- [ ] ${literal(offer)}`), ''];
}

/** Oil by leg, as it is poured. */
function oil(scene: Scene, plan: Plan): string[] {
  const all = plan.steps.flatMap(({ amounts }) => amounts.filter(({ action }) => action === 'use'));
  const poured = all.filter(({ side, unit }) => unit === 'mL' && side !== null);
  if (poured.length === 0) return [];
  // the same oil elsewhere than in a leg's foot: whoever adds up the legs would miss it
  const elsewhere = all.filter(({ side, sku }) => side === null && poured.some((one) => one.sku === sku));
  const legs = legsOf(scene, plan);
  const cell = (amounts: readonly Step['amounts'][number][], side: 'left' | 'right'): string =>
    amounts
      .filter((amount) => amount.side === side)
      .map(({ quantity }) => `${quantity} mL`)
      .join(' + ');
  return [
    '## Oil by leg',
    '',
    `| oil | left (${legs.left ?? '?'}) | poured | right (${legs.right ?? '?'}) | poured |`,
    '| --- | ---: | --- | ---: | --- |',
    ...[...groupBy(poured, ({ name }) => name)].map(
      ([name, legOil]) =>
        `| ${literal(name)} | ${cell(legOil, 'left')} | ${BLANK} | ${cell(legOil, 'right')} | ${BLANK} |`,
    ),
    ...elsewhere.flatMap((amount) => ['', `And ${literal(`${amount.name}: ${amountWords(scene, plan, amount)}`)}.`]),
    '',
  ];
}

function steps(scene: Scene, plan: Plan): string[] {
  return ['## Order of work', '', ...plan.steps.flatMap((step, at) => [...stepLines(scene, plan, step, at + 1), ''])];
}

function stepLines(scene: Scene, plan: Plan, step: Step, number: number): string[] {
  const { source } = step;
  const from =
    source.document === null
      ? ''
      : ` (${documentName(scene, source.document)}${source.page === null ? '' : `, page ${source.page}`})`;
  return [
    `- [ ] **${number}. ${literal(step.title)}**, ${step.minutes} min${literal(from)}`,
    `  ${literal(step.text)}`,
    ...partLines(plan, step).map((text) => `  - [ ] parts: ${literal(text)}`),
    ...(step.tools.length === 0 ? [] : [`  - tools: ${literal(step.tools.map((id) => toolOf(plan, id)).join(', '))}`]),
    ...step.fasteners.map((fastener) => `  - [ ] torque ${literal(torqueWords(scene, plan, fastener))}`),
    ...step.amounts.map(
      (amount) =>
        `  - [ ] ${amount.action === 'drain' ? 'drain' : 'use'} ${literal(`${amount.name}: ${amountWords(scene, plan, amount)}`)}`,
    ),
    ...step.looks.map((look) => `  - [ ] look: ${literal(lookWords(scene, plan, step, look))}`),
    ...step.cautions.map((caution) => `  - careful: ${literal(caution)}`),
  ];
}

function checks({ answer, language }: Scene, plan: Plan): string[] {
  const flags = [...answer.flags, ...plan.flags];
  if (flags.length === 0) return [];
  return [
    `## ${language.phrases.heading.watch}`,
    '',
    ...flags.map((flag) => {
      const way = flag.severity === 'advice' ? '' : ` ${wayOut(language, 'flags', flag)}`;
      return `- [ ] **${language.phrases.severity[flag.severity]}** ${literal(`${say(language, 'flags', flag)}${way}`)}`;
    }),
    '',
  ];
}

function basis({ answer, catalog, basis: { catalog: from, stock, shop } }: Scene): string {
  const hash = (text: string): string => text.slice(0, 10);
  const parts: readonly string[] = [
    `catalogue ${catalog.name} ${hash(answer.catalog)}${from.by === 'demo' ? ' (the demo catalogue, everything in it is invented)' : ''}`,
    stock === null ? 'no stock file' : `stock ${hash(answer.stock)}`,
    shop === null ? 'no shop file' : `shop ${shop.name} ${hash(answer.shop)}`,
  ];
  return `Worked out from ${literal(parts.join(', '))}.`;
}

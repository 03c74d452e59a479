import type { Plan, Step } from '../../plan/index.ts';
import { groupBy } from '../../quantity/index.ts';
import { section, wrapped } from '../layout.ts';
import { documentName, type Scene } from '../scene.ts';
import { lookWords } from './look.ts';
import { amountWords } from './poured.ts';
import { takenBy, toolName, toolOf, torqueWords } from './torque.ts';

/** Tools, order of work, money and what goes well with it. */
export function workSections(scene: Scene, plan: Plan): string[] {
  const { page, language } = scene;
  const { heading } = language.phrases;
  return [
    ...section(page, heading.tools, toolLines(scene, plan)),
    ...workOrder(scene, plan),
    ...section(page, heading.money, moneyLines(scene, plan)),
    ...section(
      page,
      heading.offers,
      offerWords(scene).flatMap((offer) => wrapped(page, offer, '  ', '    ')),
    ),
  ];
}

function toolLines(scene: Scene, plan: Plan): string[] {
  const { page } = scene;
  const { tools, money } = plan;
  const about = (tool: Plan['tools'][number]): string => {
    const costs = tool.atHand === false && tool.price !== null ? [`${tool.price} ${money.currency}`] : [];
    const said = [...takenBy(scene, plan, tool.id), ...costs];
    return `${toolName(tool)}${said.length === 0 ? '' : ` (${said.join('; ')})`}`;
  };
  const named = (title: string, of: Plan['tools']): string[] =>
    of.length === 0 ? [] : wrapped(page, of.map(about).join(', '), `  ${title}: `, '    ');
  return [
    ...named(
      'not at hand',
      tools.filter(({ atHand }) => atHand === false),
    ),
    ...named(
      'at hand',
      tools.filter(({ atHand }) => atHand === true),
    ),
    ...named(
      'needed (no shop file says what is at hand)',
      tools.filter(({ atHand }) => atHand === null),
    ),
  ];
}

function workOrder(scene: Scene, plan: Plan): string[] {
  const { page, language } = scene;
  const main = mainDocument(plan);
  const lines = plan.steps.flatMap((step, at) => ['', ...stepLines(scene, plan, step, { number: at + 1, main })]);
  const from =
    main === null ? [] : wrapped(page, `by ${documentName(scene, main)}; its page stands beside each step`, '  ');
  return section(page, `${language.phrases.heading.work} (${plan.minutes} min)`, [...from, ...lines]);
}

/** The document that most steps are taken from. */
function mainDocument({ steps }: Plan): string | null {
  const counts = groupBy(
    steps.flatMap(({ source }) => source.document ?? []),
    (document) => document,
  );
  return [...counts].sort(([, a], [, b]) => b.length - a.length)[0]?.[0] ?? null;
}

/** What comes out and what goes in at a step, by slot. */
export function partLines(plan: Plan, step: Step): string[] {
  return step.fills.flatMap((slot) => {
    const change = plan.changes.find((one) => one.slot === slot);
    const fresh = plan.lines.filter(
      ({ action, because }) => (action === 'install' || action === 'renew') && because[0] === slot,
    );
    const goesIn = fresh.map(({ quantity, sku }) => `${quantity} x ${sku}`).join(', ');
    const after = plan.build[slot];
    const inAll = after && change?.from && after.sku === change.from.sku ? ` (${after.quantity} in all)` : '';
    if (goesIn !== '') return [`${slot.replaceAll('-', ' ')}: ${goesIn} in, new${inAll}`];
    if (!change) return [];
    return [
      `${slot.replaceAll('-', ' ')}: ${after ? `${after.quantity} x ${after.sku} go back in` : 'nothing goes back in'}`,
    ];
  });
}

interface Standing {
  readonly number: number;
  readonly main: string | null;
}

function stepLines(scene: Scene, plan: Plan, step: Step, { number, main }: Standing): string[] {
  const { page, language } = scene;
  const hang = '    ';
  const detail = (style: 'warn' | 'strong' | 'faint', name: string, text: string): string[] =>
    wrapped(page, text, `${hang}${page.paint(style, name.padEnd(7))} `, `${hang}        `);
  const head = `${page.paint('strong', step.title)} - ${step.minutes} min${sourceBeside(scene, step, main)}`;
  return [
    ...wrapped(page, head, `${String(number).padStart(2)}. `),
    ...(step.text === '' ? [] : wrapped(page, step.text, hang)),
    ...partLines(plan, step).flatMap((text) => detail('strong', 'Parts', text)),
    ...step.fasteners.flatMap((fastener) => detail('strong', 'Torque', torqueWords(scene, plan, fastener))),
    ...step.rings
      .filter(({ tool }) => tool === null)
      .flatMap((ring) => detail('strong', 'Ring', language.phrases.ringPliers(ring))),
    ...amountLines(scene, plan, step, 'drain').flatMap((text) => detail('strong', 'Drain', text)),
    ...amountLines(scene, plan, step, 'use').flatMap((text) => detail('strong', 'Use', text)),
    ...(step.tools.length === 0 ? [] : detail('faint', 'Tools', step.tools.map((id) => toolOf(plan, id)).join(', '))),
    ...step.looks.flatMap((look) => detail('warn', 'Look', lookWords(scene, plan, step, look))),
    ...step.cautions.flatMap((caution) => detail('warn', 'Care', caution)),
  ];
}

function sourceBeside(scene: Scene, { source, skill }: Step, main: string | null): string {
  const level = skill === null ? '' : ` [${skill.replaceAll('-', ' ')}]`;
  if (source.document === null) return level;
  const page = source.page === null ? '' : `p. ${source.page}`;
  const document = source.document === main ? '' : `${documentName(scene, source.document)} `;
  return `${level}, ${document}${page}`.replace(/[ ,]+$/, '');
}

/** Amounts of a step, each product once: "Ostrell bath oil: 8 mL left leg (spring), left foot; 14 mL right leg". */
function amountLines(scene: Scene, plan: Plan, { amounts }: Step, action: 'use' | 'drain'): string[] {
  const byName = groupBy(
    amounts.filter((amount) => amount.action === action),
    ({ name }) => name,
  );
  return [...byName].map(
    ([name, all]) => `${name}: ${all.map((amount) => amountWords(scene, plan, amount)).join('; ')}`,
  );
}

function moneyLines({ page }: Scene, { money }: Plan): string[] {
  const { currency, tax } = money;
  const lines: (readonly [string, string])[] = [
    ['parts', money.parts],
    ['supplies', money.supplies],
    ['labour', money.labour],
    [money.atLeast ? 'total, at least' : 'total', money.total],
    ...(tax === null
      ? []
      : [[tax.included ? `of which ${tax.rate} % tax` : `and ${tax.rate} % tax on top`, tax.amount] as const]),
  ];
  const [wide, long] = [
    Math.max(...lines.map(([name]) => name.length)),
    Math.max(...lines.map(([, amount]) => amount.length)),
  ];
  const unpriced =
    money.unpriced === 0 ? [] : wrapped(page, `${money.unpriced} lines have no price and add nothing`, '  ');
  return [
    ...lines.map(([name, amount]) => {
      const line = `  ${name.padEnd(wide)}  ${amount.padStart(long)} ${currency}`;
      return name.startsWith('total') ? page.paint('strong', line) : line;
    }),
    ...unpriced,
  ];
}

/** Services that go well with the plan while the fork is open: what each would add. */
export function offerWords({ answer, language: { phrases } }: Pick<Scene, 'answer' | 'language'>): string[] {
  const currency = answer.plans[0]?.money.currency ?? '';
  return answer.offers.map(
    ({ service, name, money, minutes, days, atLeast }) =>
      `${name}: ${atLeast ? 'at least ' : ''}${phrases.more(money, currency)}, ${minutes === 0 ? 'no more time' : `${minutes} min more`}, ${phrases.ready(days)} (--service ${service})`,
  );
}

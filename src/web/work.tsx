import { contentText } from './parts.ts';
import type { PlanDocument } from './records.ts';
import { SourceNote } from './source.tsx';
import { words } from './words/words.ts';

type Step = PlanDocument['steps'][number];
type Look = Step['looks'][number];
type Amount = Step['amounts'][number];

/** The order of work: each step with its parts, torques, amounts, looks and cautions. */
export function Work({ plan }: { readonly plan: PlanDocument }) {
  return (
    <section aria-labelledby="work">
      <h2 id="work">{words.work.title(words.minutes(plan.minutes))}</h2>
      <ol class="steps">
        {plan.steps.map((step) => (
          <li key={step.id}>
            <h3>
              {step.title} <small>{stepAbout(step)}</small>
            </h3>
            {step.text === '' ? null : <p>{step.text}</p>}
            <StepDetails plan={plan} step={step} />
            <SourceNote source={step.source} />
          </li>
        ))}
      </ol>
    </section>
  );
}

const LEVELS: Readonly<Record<string, string>> = words.work.level;
const stepAbout = ({ minutes, skill }: Step): string =>
  [words.minutes(minutes), ...(skill === null ? [] : [LEVELS[skill] ?? skill])].join(', ');

/** What stands beside the text of a step, each kind under its own word. */
export function StepDetails({ plan, step }: { readonly plan: PlanDocument; readonly step: Step }) {
  const { work } = words;
  const rows: readonly (readonly [kind: string, name: string, text: string])[] = [
    ...partTexts(plan, step).map((text) => ['parts', work.parts, text] as const),
    ...step.fasteners.map((fastener) => ['torque', work.torque, torqueText(plan, fastener)] as const),
    ...ringTexts(step).map((text) => ['ring', work.ring, text] as const),
    ...amountTexts(step, 'drain').map((text) => ['drain', work.drain, text] as const),
    ...amountTexts(step, 'use').map((text) => ['use', work.use, text] as const),
    ...(step.tools.length === 0
      ? []
      : [['tools', work.tools, step.tools.map((id) => toolName(plan, id)).join(', ')] as const]),
    ...step.looks.map((look) => ['look', work.look, lookText(plan, look)] as const),
    ...step.cautions.map((caution) => ['care', work.care, caution] as const),
  ];
  if (rows.length === 0) return null;
  return (
    <dl class="details">
      {rows.map(([kind, name, text]) => (
        <div key={kind + text} class={kind}>
          <dt>{name}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}

export function toolName({ tools }: PlanDocument, id: string): string {
  const tool = tools.find((known) => known.id === id);
  if (!tool) return id;
  return tool.size === null ? tool.name : `${tool.name} ${tool.size}`;
}

/** A tool to lay out: with its size, and for pliers the size that each ring takes. */
export function toolText(plan: PlanDocument, id: string): string {
  const rings = plan.steps.flatMap((step) => step.rings).filter(({ tool }) => tool === id);
  const taken = [...new Set(rings.map(words.work.pliers))];
  return taken.length === 0 ? toolName(plan, id) : `${toolName(plan, id)} (${taken.join('; ')})`;
}

/** Rings that no tool of the catalogue is named for. */
export const ringTexts = ({ rings }: Step): readonly string[] =>
  rings.filter(({ tool }) => tool === null).map(words.work.pliers);

const legText = (side: 'left' | 'right', holds: string | null): string => words.work.leg(words.work[side], holds);

/** "7 N·m (62 in·lb), foot bolt, left leg (spring), M8, dry": the number first. */
export function torqueText(plan: PlanDocument, fastener: Step['fasteners'][number]): string {
  const { name, side, function: holds, thread, key, tool, torque, state, position, count, wrench } = fastener;
  const { work } = words;
  const about = [
    words.newtonMetres(torque),
    work.fasteners(count, name),
    side === null ? null : legText(side, holds),
    thread,
    state,
    position,
    tool !== null ? toolName(plan, tool) : key === null ? null : work.hexKey(key),
    wrench === null ? null : work.wrench(toolName(plan, wrench.tool), wrench.deviation),
  ];
  return about.filter((one) => one !== null).join(', ');
}

/** Amounts of a step, each product once: "Ostrell bath oil: 8 mL left leg; 14 mL right leg". */
export function amountTexts({ amounts }: Step, action: 'use' | 'drain'): readonly string[] {
  const of = amounts.filter((amount) => amount.action === action);
  const names = [...new Set(of.map(({ name }) => name))];
  return names.map((name) => {
    const parts = of.filter((amount) => amount.name === name).map(amountText);
    return `${name}: ${parts.join('; ')}`;
  });
}

function amountText({ quantity, unit, side, note }: Amount): string {
  const leg = side === null ? '' : ` ${words.work[side]}`;
  return [`${words.amount(quantity, unit)}${leg}`, ...(note === null ? [] : [note])].join(', ');
}

/** What goes in at a step, by slot. */
export function partTexts(plan: PlanDocument, step: Step): readonly string[] {
  return step.fills.flatMap((slot) => {
    const fresh = plan.lines.filter(
      ({ action, because }) => (action === 'install' || action === 'renew') && because[0] === slot,
    );
    const goesIn = fresh
      .flatMap(({ sku, quantity }) => (sku === null ? [] : [contentText({ sku, quantity })]))
      .join(', ');
    if (goesIn !== '') return [words.work.goesIn(slot, goesIn)];
    if (!plan.changes.some((change) => change.slot === slot)) return [];
    const after = plan.build[slot];
    return [after ? words.work.goesBack(slot, contentText(after)) : words.work.goesOut(slot)];
  });
}

/** A look, what to do about what it finds, and what that would add. */
export function lookText({ money }: PlanDocument, { look, if: found, then, adds, extra }: Look): string {
  const { work } = words;
  const said = `${work.if(look, found)} ${then}`;
  if (extra === null) return adds.length === 0 ? said : `${said} ${work.notToBeHad}`;
  if (Number(extra.money) === 0 && extra.minutes === 0) return `${said} ${work.addsNothing}`;
  const more = extra.atLeast ? work.addsAtLeast : work.adds;
  return `${said} ${more(words.money(extra.money, money.currency), extra.minutes, words.days(extra.days))}`;
}

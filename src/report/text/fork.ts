import type { Content, Plan } from '../../plan/index.ts';
import { section, table, wrapped } from '../layout.ts';
import { chassisName, nameOf, type Scene } from '../scene.ts';
import { effectLines } from './effects.ts';

/** What is in the fork now and after, and what that changes on fork and bike. */
export function forkSections(scene: Scene, plan: Plan): string[] {
  const { page, language } = scene;
  const { heading } = language.phrases;
  return [
    ...section(page, heading.nowAndAfter, nowAndAfter(scene, plan)),
    ...section(page, heading.effects, effectLines(scene, plan.effects)),
  ];
}

export function nowAndAfter(scene: Scene, plan: Plan): string[] {
  const { answer, page, language } = scene;
  const changed = new Set(plan.changes.map(({ slot }) => slot));
  const rows = plan.changes.map(({ slot, from, to }) => [
    language.phrases.role(slot),
    contentWords(scene, from, 'short'),
    '->',
    contentWords(scene, to, 'long'),
  ]);
  const body =
    plan.chassis === answer.now.chassis
      ? []
      : wrapped(page, `${chassisName(scene, answer.now.chassis)} becomes ${chassisName(scene, plan.chassis)}`, '  ');
  const settings = Object.entries(plan.settings).flatMap(([name, after]) => {
    const before = answer.now.settings[name];
    return before === after ? [] : [[language.phrases.role(name), `${before ?? '?'} mm`, '->', `${after} mm`]];
  });
  const renewed = new Set(
    plan.lines.flatMap(({ action, because }) => (action === 'renew' || action === 'install' ? (because[0] ?? []) : [])),
  );
  const named = (how: 'renewed' | 'stays'): string[] =>
    Object.entries(plan.build)
      .filter(([slot]) => !changed.has(slot) && renewed.has(slot) === (how === 'renewed'))
      .map(([slot, content]) => `${language.phrases.role(slot)} ${contentWords(scene, content, 'short')}`);
  const list = (title: string, names: readonly string[]): string[] =>
    names.length === 0 ? [] : wrapped(page, page.paint('faint', `${names.join(', ')}.`), `  ${title}: `, '    ');
  return [
    ...body,
    ...table(
      page,
      [{ align: 'left' }, { align: 'left' }, { align: 'left' }, { align: 'left', gives: true }],
      [...rows, ...settings],
    ),
    ...list('new, of the same number', named('renewed')),
    ...list('stays as it is', named('stays')),
  ];
}

function contentWords(scene: Scene, content: Content | null, how: 'short' | 'long'): string {
  if (content === null) return 'none';
  const count = content.quantity === 1 ? '' : `${content.quantity} x `;
  return `${count}${content.sku}${how === 'long' ? ` ${nameOf(scene, content.sku)}` : ''}`;
}

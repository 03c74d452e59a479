import type { Plan, Step } from '../../plan/index.ts';
import { groupBy } from '../../quantity/index.ts';
import { wrapped } from '../layout.ts';
import { legsOf, type Scene } from '../scene.ts';

type Amount = Step['amounts'][number];

/** Oil, grease and the like: the whole amount, then where each part of it goes, by leg. */
export function pouredLines(scene: Scene, plan: Plan): string[] {
  const { page } = scene;
  const used = plan.steps.flatMap(({ amounts }) => amounts).filter(({ action }) => action === 'use');
  const totals = groupBy(
    plan.lines.filter(({ action }) => action === 'use'),
    ({ sku }) => sku,
  );
  return [...totals].flatMap(([sku, lines]) => {
    const [first] = lines;
    if (!first) return [];
    const total = lines.reduce((sum, { quantity }) => sum + quantity * 1000, 0) / 1000;
    const parts = used.filter((amount) => amount.sku === sku);
    return [
      ...wrapped(page, `${scene.language.phrases.unit(total, first.unit)} ${first.name} (${sku})`, '  ', '    '),
      ...(parts.length === 1 && parts[0]?.side === null && parts[0].note === null
        ? []
        : wrapped(page, parts.map((part) => amountWords(scene, plan, part)).join('; '), '    ')),
    ];
  });
}

/** One amount with its leg and its note: "8 mL left leg (spring), left foot". */
export function amountWords(scene: Scene, plan: Plan, { quantity, unit, side, note }: Amount): string {
  const { phrases } = scene.language;
  const leg = side === null ? '' : ` ${phrases.leg(side, legsOf(scene, plan)[side])}`;
  const amount = unit === 'piece' ? String(quantity) : phrases.unit(quantity, unit);
  return [`${amount}${leg}`, ...(note === null ? [] : [note])].join(', ');
}

import type { Line, Plan } from '../../plan/index.ts';
import { section, table, wrapped } from '../layout.ts';
import type { Scene } from '../scene.ts';
import { pouredLines } from './poured.ts';

const count = ({ phrases }: Scene['language'], line: Pick<Line, 'quantity' | 'unit'>): string =>
  phrases.unit(line.quantity, line.unit);
const of = (plan: Plan, action: Line['action']): readonly Line[] => plan.lines.filter((line) => line.action === action);

/** Everything that is bought, taken, fitted, used up, given back and thrown away. */
export const buyingSections = { toBuy, rest };

function toBuy(scene: Scene, plan: Plan): string[] {
  const { page, language } = scene;
  const lines = of(plan, 'buy');
  const dosed = of(plan, 'use').filter(({ total }) => total !== null);
  const rows = [
    ...lines.map((line) => [
      `${line.packs ?? line.quantity} x`,
      line.sku ?? '',
      `${line.name}${packSize(line)}`,
      line.total ?? 'no price',
      line.bin ?? '',
      language.phrases.arrives(line.days),
    ]),
    ...dosed.map((line) => [count(language, line), line.sku ?? '', line.name, line.total ?? '', '', 'from bulk']),
  ];
  if (rows.length === 0) return section(page, language.phrases.heading.toBuy, ['  nothing']);
  const shown = table(
    page,
    [
      { align: 'right' },
      { align: 'left' },
      { align: 'left', gives: true },
      { align: 'right' },
      { align: 'left' },
      { align: 'left' },
    ],
    rows,
  );
  return section(page, `${language.phrases.heading.toBuy} (${plan.money.currency})`, shown);
}

/** What is in one pack, where that is not one piece. */
function packSize({ quantity, packs, unit }: Line): string {
  const each = quantity / (packs ?? 1);
  if (unit !== 'piece') return `, ${each} ${unit}`;
  return each === 1 ? '' : `, pack of ${each}`;
}

function rest(scene: Scene, plan: Plan): string[] {
  const { page, language } = scene;
  const { heading } = language.phrases;
  const part = (title: string, action: Line['action']): string[] =>
    section(page, title, pieces(scene, of(plan, action)));
  return [
    ...part(heading.atHand, 'take'),
    ...part(heading.install, 'install'),
    ...part(heading.renew, 'renew'),
    ...section(page, heading.use, pouredLines(scene, plan)),
    ...part(heading.reuse, 'reuse'),
    ...part(heading.remove, 'remove'),
    ...part(heading.waste, 'waste'),
    ...section(page, heading.leftOver, leftOvers(scene, plan)),
  ];
}

function pieces({ page, language }: Scene, lines: readonly Line[]): string[] {
  return table(
    page,
    [{ align: 'right' }, { align: 'left' }, { align: 'left', gives: true }, { align: 'left' }],
    lines.map((line) => [
      count(language, line),
      line.sku ?? '',
      line.name,
      line.from !== null && line.from !== line.sku ? `from ${line.from}` : (line.bin ?? ''),
    ]),
  );
}

function leftOvers(scene: Scene, plan: Plan): string[] {
  return plan.lines.flatMap(({ leftOver, sku }) =>
    (leftOver ?? []).flatMap((rest) =>
      wrapped(
        scene.page,
        `${count(scene.language, rest)} ${rest.name} (${rest.sku}${sku === rest.sku ? '' : `, from ${sku}`})`,
        '  ',
        '    ',
      ),
    ),
  );
}

import type { Plan } from '../../plan/index.ts';
import { section, wrapped } from '../layout.ts';
import type { Scene } from '../scene.ts';

/** The other plans: one line each, with what is different from the recommended one. */
export function otherWays(scene: Scene): string[] {
  const { answer, page, language } = scene;
  const { phrases } = language;
  const [first, ...others] = answer.plans;
  if (!first) return [];
  const lines = others.flatMap((plan, at) => {
    const { money, minutes, readyInDays, label } = plan;
    const total = phrases.money(money.total, money.currency, money.atLeast ? 'at-least' : 'exact');
    const named = label.map((one) => phrases.label[one]).join(', ');
    return [
      ...wrapped(
        page,
        `${total}, ${phrases.minutes(minutes)}, ${phrases.ready(readyInDays)}${named === '' ? '' : ` - ${page.paint('strong', named)}`}`,
        `  ${at + 2}. `,
      ),
      ...differences(scene, first, plan).flatMap((text) => wrapped(page, text, '     ', '       ')),
      ...preferred(plan).flatMap((text) => wrapped(page, text, '     ', '       ')),
    ];
  });
  return section(page, phrases.heading.otherWays, lines);
}

/** How to see a way whole: by the preference that puts it first. */
const preferred = ({ label }: Plan): string[] =>
  label.includes('soonest')
    ? ['whole with --prefer wait']
    : label.includes('quickest')
      ? ['whole with --prefer time']
      : label.includes('cheapest')
        ? ['whole with --prefer money']
        : [];

function differences({ language }: Scene, first: Plan, plan: Plan): string[] {
  const build = Object.keys({ ...first.build, ...plan.build }).flatMap((slot) => {
    const [mine, theirs] = [plan.build[slot], first.build[slot]];
    if (mine?.sku === theirs?.sku && mine?.quantity === theirs?.quantity) return [];
    return [
      `${language.phrases.role(slot)} ${mine ? `${mine.quantity === 1 ? '' : `${mine.quantity} x `}${mine.sku}` : 'none'}`,
    ];
  });
  const buys = bought(plan);
  const usual = bought(first);
  const added = buys.filter((buy) => !usual.includes(buy));
  const spared = usual.filter((buy) => !buys.includes(buy));
  return [
    ...(build.length === 0 ? [] : [`in the fork: ${build.join(', ')}`]),
    ...(added.length === 0 && spared.length === 0
      ? []
      : [
          `buy ${added.length === 0 ? 'nothing else' : added.join(', ')}${spared.length === 0 ? '' : ` instead of ${spared.join(', ')}`}`,
        ]),
  ];
}

const bought = (plan: Plan): string[] =>
  plan.lines.flatMap(({ action, packs, sku }) =>
    action === 'buy' && sku ? [`${packs === 1 ? '' : `${packs} x `}${sku}`] : [],
  );

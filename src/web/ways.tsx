import { contentText } from './parts.ts';
import type { PlanDocument } from './records.ts';
import { totalWords } from './verdict.tsx';
import { words } from './words/words.ts';

interface Props {
  readonly plans: readonly PlanDocument[];
  readonly shown: number;
  readonly addressOfWay: (way: number) => string;
}

/** Every way, one under the other, with what is different from the recommended one. */
export function Ways({ plans, shown, addressOfWay }: Props) {
  const [first] = plans;
  if (!first || plans.length < 2) return null;
  return (
    <section class="ways" aria-labelledby="ways">
      <h2 id="ways">{words.ways.title}</h2>
      <ol>
        {plans.map((plan, at) => (
          <li key={plan.label.join() + at}>
            <a href={addressOfWay(at)} aria-current={at === shown ? 'true' : undefined}>
              {totalWords(plan)}, {words.minutes(plan.minutes)}, {words.days(plan.readyInDays)}
            </a>
            {at === shown ? <em> {words.ways.shown}</em> : null}
            <small>
              {[
                plan.label.map((label) => words.verdict.labels[label]).join(', '),
                ...(at === 0 ? [] : differences(first, plan)),
              ]
                .filter(Boolean)
                .join('; ')}
            </small>
          </li>
        ))}
      </ol>
    </section>
  );
}

function differences(first: PlanDocument, plan: PlanDocument): readonly string[] {
  const slots = Object.keys({ ...first.build, ...plan.build }).flatMap((slot) => {
    const [mine, theirs] = [plan.build[slot] ?? null, first.build[slot] ?? null];
    const same = mine?.sku === theirs?.sku && mine?.quantity === theirs?.quantity;
    return same ? [] : [words.ways.slot(slot, mine && contentText(mine))];
  });
  const [buys, usual] = [bought(plan), bought(first)];
  const added = buys.filter((one) => !usual.includes(one));
  const spared = usual.filter((one) => !buys.includes(one));
  return [
    ...(slots.length === 0 ? [] : [words.ways.holds(slots)]),
    ...(added.length + spared.length === 0 ? [] : [words.ways.buys(added, spared)]),
  ];
}

const bought = ({ lines }: PlanDocument): readonly string[] =>
  lines.flatMap(({ action, packs, sku }) =>
    action === 'buy' && sku !== null ? [contentText({ sku, quantity: packs ?? 1 })] : [],
  );

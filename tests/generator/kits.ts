import type { RawKit } from '../../src/catalog/raw.ts';
import { type Plan, pricesOf, skuOf } from './plan.ts';

/** Kits that suit the work, and one that is a ring short of it. */
export function kitsOf(plan: Plan): readonly RawKit[] {
  const { dice } = plan;
  const washer = skuOf(plan, 'C', 1);
  const wiper = skuOf(plan, 'W', plan.seats[0] ?? 41, 1);
  const [travel] = plan.travels;
  const spring = skuOf(plan, 'S', travel ?? 0, 1);
  const all: readonly RawKit[] = [
    kit(
      plan,
      'OPEN',
      [
        { sku: washer, quantity: 2 },
        { sku: 'OS-BATH', amount: '20 mL' },
      ],
      8,
    ),
    kit(
      plan,
      'SHORT',
      [
        { sku: washer, quantity: 1 },
        { sku: wiper, quantity: 2 },
      ],
      17,
    ),
    kit(plan, 'SPRING', [{ sku: spring }, { sku: skuOf(plan, 'V', 1), quantity: 2 }, { sku: washer, quantity: 2 }], 85),
    kit(
      plan,
      'SEALS',
      [
        { sku: wiper, quantity: 1 },
        { sku: washer, quantity: 3 },
      ],
      10,
    ),
  ];
  const modules = plan.modules.flatMap((_slot, at) =>
    at % 2 === 1
      ? [kit(plan, `PAIR-${at}`, [{ sku: skuOf(plan, 'M', at, 1) }, { sku: skuOf(plan, 'M', at + 1, 1) }], 55)]
      : [],
  );
  return [...dice.some(all, dice.whole(1, 3)), ...modules];
}

const kit = (plan: Plan, name: string, contents: RawKit['contents'], near: number): RawKit => ({
  sku: skuOf(plan, 'K', name),
  maker: 'ostrel',
  name: `Kit ${name.toLowerCase()}`,
  contents,
  ...pricesOf(plan.dice, near),
});

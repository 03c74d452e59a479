import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { askIn } from '../support/ask.ts';
import { loadCatalogFolder } from '../support/demo.ts';

/** What is asserted here was worked out by hand before the program was run: see EXPECTED.md. */
const loaded = loadCatalogFolder(fileURLToPath(new URL('./catalog', import.meta.url)));

type Answer = ReturnType<typeof askIn>;
type Question = Parameters<typeof askIn>[1];
type Plan = Answer['plans'][number];

const shorten: Question = { chassis: 'skelder-622', travelNow: 130, wants: { travel: 110 } };
const lengthen: Question = { chassis: 'skelder-622', travelNow: 120, wants: { travel: 140 } };
const service: Question = { chassis: 'skelder-559', travelNow: 130, wants: { service: ['skelder-fifty'] } };
const impossible: Question = { chassis: 'skelder-559', travelNow: 140, wants: { travel: 150 } };
const limiter: Question = { chassis: 'wickon-507', travelNow: 80, wants: { travel: 60 } };

const answerTo = async (question: Question): Promise<Answer> => askIn(await loaded, question);

/** SKU, packs, price of them all, days: what a shopkeeper reads. */
const bought = (plan: Plan): string[] =>
  plan.lines
    .filter(({ action }) => action === 'buy')
    .map(({ sku, packs, total, days }) => `${packs} ${sku} ${total} ${days}d`)
    .sort();

/** What is left of all that is bought. */
const over = (plan: Plan): string[] =>
  plan.lines
    .flatMap(({ leftOver }) => leftOver ?? [])
    .map(({ quantity, unit, sku }) => `${quantity} ${unit} ${sku}`)
    .sort();

const listed = (plan: Plan, action: string): string[] =>
  plan.lines
    .filter((line) => line.action === action)
    .map(({ quantity, unit, sku, name }) => `${quantity} ${unit} ${sku ?? name}`)
    .sort();

const steps = (plan: Plan): string[] => plan.steps.map(({ id, minutes }) => `${id} ${minutes}`);

const money = ({ money: { parts, supplies, labour, total, currency, tax } }: Plan): string =>
  `${parts} + ${supplies} + ${labour} = ${total} ${currency}, tax ${tax?.amount}`;

const lacking = (plan: Plan): string[] => plan.tools.filter(({ atHand }) => atHand === false).map(({ id }) => id);

const each = <T>({ plans }: Answer, view: (plan: Plan) => T): T[] => plans.map(view);

const same = <T>(times: number, value: T): T[] => Array.from({ length: times }, () => value);

const skelderOut = ['bench-look-over 4', 'bench-unload 2', 'bench-lowers-off 7', 'skelder-cap-off 2'];
const lowersOn = ['bench-lowers-on 8', 'bench-load 4', 'bench-hand-over 6'];

test('shortening by travel spacers: three ways are on the front, the cheapest first', async () => {
  const answer = await answerTo(shorten);
  expect(answer.status).toBe('answered');
  expect(answer.complete).toBe(true);
  expect(answer.flags).toEqual([]);
  expect(each(answer, ({ label }) => label)).toEqual([['recommended', 'cheapest', 'quickest'], [], ['soonest']]);
  expect(each(answer, ({ readyInDays }) => readyInDays)).toEqual([6, 3, 0]);
});

test('shortening by travel spacers: each way buys its own rings and grease', async () => {
  const answer = await answerTo(shorten);
  const common = ['1 OD-CLEAN-500 9.80 0d', '1 OD-LEG-50 5.40 0d', '1 OD-TOWEL-25 7.50 0d'];
  const spacers = ['1 QS-T-10 6.80 0d', '1 QS-V-29 4.20 0d'];
  expect(each(answer, bought)).toEqual([
    [...common, ...spacers, '1 QS-K-REFIT 6.90 6d'].sort(),
    [...common, ...spacers, '1 OD-GREASE-20 6.20 0d', '1 QO-C-30 1.90 3d', '1 QO-F-10 4.80 0d'].sort(),
    [...common, ...spacers, '1 OD-GREASE-20 6.20 0d', '1 QS-K-SEALS 26.50 0d'].sort(),
  ]);
  const rest = ['490 mL OD-CLEAN', '38 mL OD-LEG', '23 piece OD-TOWEL'];
  expect(each(answer, over)).toEqual([
    [...rest, '0.5 g OD-GREASE'].sort(),
    [...rest, '15.5 g OD-GREASE', '4 piece QO-F-10'].sort(),
    [...rest, '15.5 g OD-GREASE', '2 piece QS-F-32', '2 piece QS-W-32'].sort(),
  ]);
  expect(each(answer, money)).toEqual([
    '17.90 + 22.70 + 77.58 = 118.18 CHF, tax 9.57',
    '17.70 + 28.90 + 77.58 = 124.18 CHF, tax 10.06',
    '37.50 + 28.90 + 77.58 = 143.98 CHF, tax 11.66',
  ]);
});

test('shortening by travel spacers: the lowers come off, and oil goes into one leg only', async () => {
  const answer = await answerTo(shorten);
  expect(each(answer, steps)).toEqual(
    same(3, [
      ...skelderOut,
      'skelder-spring-out 4',
      'skelder-travel-spacers 3',
      'skelder-spring-in 5',
      'skelder-volume-spacers 2',
      'skelder-cap-on 2',
      ...lowersOn,
    ]),
  );
  expect(each(answer, ({ minutes }) => minutes)).toEqual(same(3, 49));
  expect(each(answer, (plan) => listed(plan, 'use'))).toEqual(
    same(3, ['10 mL OD-CLEAN', '12 mL OD-LEG', '2 piece OD-TOWEL', '4.5 g OD-GREASE']),
  );
  const filled = answer.plans[0]?.steps.find(({ id }) => id === 'bench-lowers-on')?.amounts ?? [];
  expect(filled.filter(({ sku }) => sku === 'OD-LEG').map(({ side, quantity }) => [side, quantity])).toEqual([
    ['left', 12],
  ]);
});

test('shortening by travel spacers: two spacers go in, rings and oil are waste, nothing is handed back', async () => {
  const answer = await answerTo(shorten);
  expect(each(answer, (plan) => listed(plan, 'install'))).toEqual(same(3, ['1 piece QS-V-29', '2 piece QS-T-10']));
  expect(each(answer, (plan) => listed(plan, 'renew'))).toEqual(same(3, ['1 piece QO-C-30', '2 piece QO-F-10']));
  expect(each(answer, (plan) => listed(plan, 'remove'))).toEqual(same(3, []));
  expect(each(answer, (plan) => listed(plan, 'waste'))).toEqual(
    same(3, ['1 piece QO-C-30', '12 mL leg oil', '2 piece QO-F-10']),
  );
  expect(each(answer, lacking)).toEqual(same(3, []));
});

test('shortening by travel spacers: the straight axle-to-crown falls by a little less than the travel', async () => {
  const answer = await answerTo(shorten);
  for (const { effects } of answer.plans) {
    expect(effects.travel).toMatchObject({ from: 130, to: 110 });
    expect(effects.axleToCrown).toMatchObject({ from: 530.5, to: 510.6, measured: 'straight' });
    expect(effects.mass).toMatchObject({ from: 1867, to: 1882 });
  }
});

test('lengthening by another cartridge: the promised one is not sold, so everything waits for the next', async () => {
  const answer = await answerTo(lengthen);
  expect(answer.status).toBe('answered');
  expect(each(answer, ({ readyInDays }) => readyInDays)).toEqual([8]);
  expect(each(answer, bought)).toEqual([
    [
      '1 OD-CLEAN-500 9.80 0d',
      '1 OD-LEG-50 5.40 0d',
      '1 OD-TOWEL-25 7.50 0d',
      '1 QS-A-150 118.00 8d',
      '1 QS-K-REFIT 6.90 6d',
      '1 QS-R-1 2.20 0d',
    ],
  ]);
  expect(each(answer, over)).toEqual([['0.5 g OD-GREASE', '23 piece OD-TOWEL', '38 mL OD-LEG', '490 mL OD-CLEAN']]);
  expect(each(answer, money)).toEqual(['127.10 + 22.70 + 72.83 = 222.63 CHF, tax 18.03']);
});

test('lengthening by another cartridge: the travel spacer stays and the volume spacer comes out', async () => {
  const answer = await answerTo(lengthen);
  expect(each(answer, ({ changes }) => changes.map(({ slot }) => slot))).toEqual([['spring', 'volume-spacers']]);
  expect(each(answer, ({ build }) => build['travel-spacers'])).toEqual([{ sku: 'QS-T-10', quantity: 1 }]);
  expect(each(answer, steps)).toEqual([
    [
      ...skelderOut,
      'skelder-spring-out 4',
      'skelder-spring-in 5',
      'skelder-volume-spacers 2',
      'skelder-cap-on 2',
      ...lowersOn,
    ],
  ]);
  expect(each(answer, ({ minutes }) => minutes)).toEqual([46]);
  expect(each(answer, (plan) => listed(plan, 'use'))).toEqual([
    ['10 mL OD-CLEAN', '12 mL OD-LEG', '2 piece OD-TOWEL', '4.5 g OD-GREASE'],
  ]);
  expect(each(answer, (plan) => listed(plan, 'install'))).toEqual([['1 piece QS-A-150', '1 piece QS-R-1']]);
  expect(each(answer, (plan) => listed(plan, 'remove'))).toEqual([['1 piece QS-A-130', '1 piece QS-V-29']]);
  expect(each(answer, (plan) => listed(plan, 'waste'))).toEqual([
    ['1 piece QO-C-30', '12 mL leg oil', '2 piece QO-F-10'],
  ]);
});

test('lengthening by another cartridge: travel, straight axle-to-crown and mass grow', async () => {
  const answer = await answerTo(lengthen);
  expect(each(answer, ({ effects }) => effects)).toMatchObject([
    {
      travel: { from: 120, to: 140 },
      axleToCrown: { from: 520.5, to: 540.5, measured: 'straight' },
      mass: { from: 1878, to: 1885 },
    },
  ]);
});

test('a service at a travel never built: the fork is taken to hold one travel spacer, and it is said', async () => {
  const answer = await answerTo(service);
  expect(answer.status).toBe('answered');
  expect(answer.now.build['travel-spacers']).toEqual({ sku: 'QS-T-10', quantity: 1 });
  expect(answer.now.build['volume-spacers']).toBeNull();
  expect(answer.flags.map(({ code }) => code)).toEqual(['now-derived']);
  expect(each(answer, ({ changes }) => changes)).toEqual([[], []]);
  for (const { effects } of answer.plans) {
    expect(effects.travel).toMatchObject({ from: 130, to: 130 });
    expect(effects.axleToCrown).toMatchObject({ from: 491.5, to: 491.5, measured: 'straight' });
    expect(effects.mass).toMatchObject({ from: 1791, to: 1791 });
  }
});

test('a service: loose wipers with the refit kit are cheaper than the seal kit, which is there sooner', async () => {
  const answer = await answerTo(service);
  const common = ['1 OD-CLEAN-500 9.80 0d', '1 OD-LEG-50 5.40 0d', '1 OD-TOWEL-25 7.50 0d', '1 QS-VC-1 3.50 2d'];
  expect(each(answer, ({ label }) => label)).toEqual([['recommended', 'cheapest', 'quickest'], ['soonest']]);
  expect(each(answer, ({ readyInDays }) => readyInDays)).toEqual([6, 2]);
  expect(each(answer, bought)).toEqual([
    [...common, '1 QS-K-REFIT 6.90 6d', '2 QS-F-32 5.20 0d', '2 QS-W-32 18.80 0d'].sort(),
    [...common, '1 OD-GREASE-20 6.20 0d', '1 QS-K-SEALS 26.50 0d'].sort(),
  ]);
  const rest = ['495 mL OD-CLEAN', '33 mL OD-LEG', '23 piece OD-TOWEL'];
  expect(each(answer, over)).toEqual([[...rest, '3.5 g OD-GREASE'].sort(), [...rest, '18.5 g OD-GREASE'].sort()]);
  expect(each(answer, money)).toEqual([
    '34.40 + 22.70 + 58.00 = 115.10 CHF, tax 9.32',
    '30.00 + 28.90 + 58.00 = 116.90 CHF, tax 9.47',
  ]);
});

test('a service: it renews what wears, pours for both legs and the foam, and needs a tool the shop lacks', async () => {
  const answer = await answerTo(service);
  expect(each(answer, steps)).toEqual(same(2, [...skelderOut, 'skelder-cap-on 2', 'bench-seals 9', ...lowersOn]));
  expect(each(answer, ({ minutes }) => minutes)).toEqual(same(2, 44));
  expect(each(answer, (plan) => listed(plan, 'use'))).toEqual(
    same(2, ['1.5 g OD-GREASE', '17 mL OD-LEG', '2 piece OD-TOWEL', '5 mL OD-CLEAN']),
  );
  expect(each(answer, (plan) => listed(plan, 'renew'))).toEqual(
    same(2, ['1 piece QO-C-30', '1 piece QS-VC-1', '2 piece QO-F-10', '2 piece QS-F-32', '2 piece QS-W-32']),
  );
  expect(each(answer, (plan) => listed(plan, 'remove'))).toEqual(
    same(2, ['1 piece QS-VC-1', '2 piece QS-F-32', '2 piece QS-W-32']),
  );
  expect(each(answer, (plan) => listed(plan, 'waste'))).toEqual(
    same(2, ['1 piece QO-C-30', '13 mL leg oil', '2 piece QO-F-10']),
  );
  expect(each(answer, lacking)).toEqual(same(2, ['seal-driver']));
});

test('a travel no spring gives: it is proved impossible, by the wish, the wheel and the list of springs', async () => {
  const answer = await answerTo(impossible);
  expect(answer.status).toBe('impossible');
  expect(answer.complete).toBe(true);
  expect(answer.plans).toEqual([]);
  expect(answer.offers).toEqual([]);
  expect(answer.refusal?.conflicts.map((conflict) => conflict.map(({ code }) => code))).toEqual([
    ['want-travel', 'kept-trait', 'spring-travel'],
  ]);
});

test('a limiter at the bottom: travel falls, axle-to-crown stays, and no mass is shown', async () => {
  const answer = await answerTo(limiter);
  expect(answer.status).toBe('answered');
  expect(each(answer, bought)).toEqual([['1 OD-GREASE-20 6.20 0d', '1 QO-F-10 4.80 0d', '1 QW-T-20 5.50 0d']]);
  expect(each(answer, over)).toEqual([['12.5 g OD-GREASE', '4 piece QO-F-10']]);
  expect(each(answer, (plan) => listed(plan, 'use'))).toEqual([['7.5 g OD-GREASE']]);
  expect(each(answer, (plan) => listed(plan, 'remove'))).toEqual([[]]);
  expect(each(answer, (plan) => listed(plan, 'waste'))).toEqual([['2 piece QO-F-10']]);
  expect(each(answer, steps)).toEqual([
    [
      'bench-look-over 4',
      'bench-unload 2',
      'bench-lowers-off 7',
      'wickon-spring-out 6',
      'wickon-spring-in 5',
      ...lowersOn,
    ],
  ]);
  expect(each(answer, money)).toEqual(['10.30 + 6.20 + 66.50 = 83.00 CHF, tax 6.72']);
  expect(each(answer, ({ minutes }) => minutes)).toEqual([42]);
  expect(each(answer, ({ readyInDays }) => readyInDays)).toEqual([0]);
  expect(each(answer, ({ effects }) => effects)).toMatchObject([
    {
      travel: { from: 80, to: 60 },
      axleToCrown: { from: 430, to: 430, measured: 'straight' },
      mass: null,
    },
  ]);
});

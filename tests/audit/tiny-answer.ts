import { lookAnswered } from './tiny-catalog.ts';

/** Answers to two questions on the tiny catalogue, worked out by hand. */
const nothing = {
  packs: null,
  unitPrice: null,
  total: null,
  leftOver: null,
  from: null,
  because: [],
  why: null,
  source: null,
  bin: null,
  days: null,
};
export const line = (action: string, sku: string | null, quantity: number, unit: string, more: object = {}) => ({
  action,
  sku,
  name: sku ?? 'drained oil',
  role: 'part',
  quantity,
  unit,
  ...nothing,
  ...more,
});
const left = (sku: string, quantity: number, unit: string) => [{ sku, name: sku, quantity, unit }];
const source = (id: string) => ({ document: null, page: null, record: `operations/${id}` });
const dose = (action: string, sku: string | null, specification: string, quantity: number, side: string | null) => ({
  action,
  sku,
  name: sku ?? 'oil',
  specification,
  quantity,
  unit: specification === 'slick' ? 'g' : 'mL',
  side,
  note: null,
});
const bath = (action: string, sku: string | null) => [
  dose(action, sku, 'light-bath', 8, 'left'),
  dose(action, sku, 'light-bath', 10, 'right'),
];
const fastener = (name: string, side: string, tool: string, torque: string, state: string | null = null) => ({
  name,
  side,
  function: side === 'left' ? 'spring' : 'damper',
  thread: null,
  key: null,
  tool,
  torque,
  state,
  position: null,
  count: 1,
  wrench: null,
});
export const step = (
  id: string,
  minutes: number,
  more: { readonly slots?: readonly string[]; readonly [key: string]: unknown } = {},
) => ({
  id,
  title: id.replaceAll('-', ' '),
  text: `Do ${id}.`,
  minutes,
  skill: null,
  tools: [],
  fasteners: [],
  rings: [],
  amounts: [],
  slots: [],
  fills: more.slots ?? [],
  looks: [],
  cautions: [],
  source: source(id),
  ...more,
});

const airOut = step('air-out', 2, { cautions: ['Release all pressure first.'] });
const lowersOff = step('lowers-off', 8, { tools: ['hex-5', 'drain-pan'], amounts: bath('drain', null) });
const lowersOn = step('lowers-on', 10, {
  tools: ['hex-5'],
  slots: ['foot-seals'],
  amounts: bath('use', 'OD-BATH'),
  fasteners: [fastener('foot bolt', 'left', 'hex-5', '7 N·m', 'dry'), fastener('foot bolt', 'right', 'hex-5', '8 N·m')],
});
const airIn = step('air-in', 3);
const hexKey = { id: 'hex-5', name: 'hex key', size: '5 mm', atHand: true, price: '4.20' };
const drainPan = { id: 'drain-pan', name: 'drain pan', size: null, atHand: false, price: null };
const socket = { id: 'cap-socket', name: 'socket', size: '26 mm', atHand: true, price: null };

const asBuilt = { 'stanchion-height': 0 };
export const one = (sku: string, quantity = 1) => ({ sku, quantity });
export const nowBuild = {
  upper: one('QN-U'),
  lowers: one('QN-L-622'),
  spring: one('QN-S-150'),
  'volume-spacers': one('QN-V'),
  damper: one('QN-D'),
  wipers: one('QN-W', 2),
  'foot-seals': one('QN-C', 2),
};
const answer = (question: object, plans: readonly object[]) => ({
  format: 1,
  catalog: 'c',
  stock: 's',
  shop: 'h',
  question: { chassis: 'quarnel-622', travelNow: 150, ...question },
  status: 'answered',
  complete: true,
  now: { chassis: 'quarnel-622', travel: 150, build: nowBuild, settings: asBuilt, bike: null },
  flags: [],
  plans,
  offers: [],
  refusal: null,
  cases: null,
});
const buyBath = line('buy', 'OD-BATH-120', 120, 'mL', {
  packs: 1,
  unitPrice: '9.50',
  total: '9.50',
  leftOver: left('OD-BATH', 102, 'mL'),
  days: 0,
});
const useBath = line('use', 'OD-BATH', 18, 'mL', { from: 'OD-BATH-120' });
const drained = line('waste', null, 18, 'mL');

const shorter = (label: readonly string[], spring: string, price: string, days: number, money: object) => ({
  label,
  build: { ...nowBuild, spring: one(spring), 'volume-spacers': one('QN-V', 3) },
  chassis: 'quarnel-622',
  settings: asBuilt,
  changes: [
    { slot: 'spring', from: one('QN-S-150'), to: one(spring) },
    { slot: 'volume-spacers', from: one('QN-V'), to: one('QN-V', 3) },
  ],
  lines: [
    line('buy', spring, 1, 'piece', { packs: 1, unitPrice: price, total: price, days }),
    line('buy', 'QN-V', 3, 'piece', {
      packs: 1,
      unitPrice: '9.00',
      total: '9.00',
      leftOver: left('QN-V', 1, 'piece'),
      bin: 'B2',
      days: 0,
    }),
    line('buy', 'QN-C', 2, 'piece', { packs: 2, unitPrice: '1.60', total: '3.20', days: 0 }),
    buyBath,
    line('take', 'QN-CLIP', 1, 'piece'),
    line('install', spring, 1, 'piece', { from: spring }),
    line('install', 'QN-V', 2, 'piece', { from: 'QN-V' }),
    line('install', 'QN-CLIP', 1, 'piece', { from: 'QN-CLIP' }),
    line('renew', 'QN-C', 2, 'piece', { from: 'QN-C' }),
    useBath,
    line('use', 'OD-SLICK', 2, 'g', { total: '0.12' }),
    line('reuse', 'QN-V', 1, 'piece'),
    line('remove', 'QN-S-150', 1, 'piece'),
    line('waste', 'QN-C', 2, 'piece'),
    drained,
  ],
  steps: [
    airOut,
    step('cap-off', 3, { tools: ['cap-socket'], slots: ['volume-spacers'] }),
    lowersOff,
    step('spring-swap', 12, {
      slots: ['spring'],
      amounts: [dose('use', 'OD-SLICK', 'slick', 2, null)],
      looks: [lookAnswered],
    }),
    step('cap-on', 4, { tools: ['cap-socket'], fasteners: [fastener('top cap', 'left', 'cap-socket', '20 N·m')] }),
    lowersOn,
    airIn,
  ],
  tools: [hexKey, drainPan, socket],
  money,
  minutes: 42,
  readyInDays: days,
  unknowns: 0,
  effects: {
    travel: { from: 150, to: 130, unit: 'mm' },
    axleToCrown: { from: 536, to: 516, unit: 'mm', measured: 'along-steerer' },
    mass: { from: 2281, to: 2276, unit: 'g' },
    geometry: null,
    spring: null,
    tyre: null,
  },
  flags: [],
});
export const paid = (parts: string, supplies: string, labour: string, total: string, tax: string) => ({
  parts,
  supplies,
  labour,
  total,
  currency: 'EUR',
  atLeast: false,
  unpriced: 0,
  tax: { rate: 20, included: true, amount: tax },
});

/** 150 to 130 mm: the cheap spring comes in five days, the dear one lies there. Grease is dosed from the tub. */
export const shorterAnswer = answer(
  {
    wants: { travel: 130, use: [], keep: [], renew: [], service: [] },
    have: [{ sku: 'QN-CLIP', quantity: 1, used: true }],
    supplies: 'bulk',
  },
  [
    shorter(
      ['recommended', 'cheapest', 'quickest'],
      'QN-S-130',
      '96.00',
      5,
      paid('108.20', '9.62', '46.20', '164.02', '27.34'),
    ),
    shorter(['soonest'], 'QN-S-130F', '110.00', 0, paid('122.20', '9.62', '46.20', '178.02', '29.67')),
  ],
);

/** A lower-leg service: the kit has two washers more than the job takes; 35.00 flat and 23 minutes by the rate. */
export const serviceAnswer = answer({ wants: { use: [], keep: [], renew: [], service: ['lower-leg-service'] } }, [
  {
    label: ['recommended', 'cheapest', 'quickest', 'soonest'],
    build: nowBuild,
    chassis: 'quarnel-622',
    settings: asBuilt,
    changes: [],
    lines: [
      line('buy', 'QN-K', 1, 'piece', {
        packs: 1,
        unitPrice: '20.00',
        total: '20.00',
        leftOver: left('QN-C', 2, 'piece'),
        days: 0,
      }),
      buyBath,
      line('renew', 'QN-W', 2, 'piece', { from: 'QN-K' }),
      line('renew', 'QN-C', 2, 'piece', { from: 'QN-K' }),
      useBath,
      line('remove', 'QN-W', 2, 'piece'),
      line('waste', 'QN-C', 2, 'piece'),
      drained,
    ],
    steps: [airOut, lowersOff, step('seals', 15, { slots: ['wipers'] }), lowersOn, airIn],
    tools: [hexKey, drainPan],
    money: paid('20.00', '9.50', '60.30', '89.80', '14.97'),
    minutes: 38,
    readyInDays: 0,
    unknowns: 0,
    effects: {
      travel: { from: 150, to: 150, unit: 'mm' },
      axleToCrown: { from: 536, to: 536, unit: 'mm', measured: 'along-steerer' },
      mass: { from: 2281, to: 2281, unit: 'g' },
      geometry: null,
      spring: null,
      tyre: null,
    },
    flags: [],
  },
]);

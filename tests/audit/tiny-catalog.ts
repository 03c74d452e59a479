import { bikeOperations, bikeParts, bikes } from './tiny-bikes.ts';

/** A tiny invented catalogue: one family, two chassis, two bikes, just enough of everything that the auditor checks. */
const fits = [{ family: 'quarnel' }];
const spring = (sku: string, travel: string, standard: number, price: string, mass: string) => ({
  sku,
  maker: 'ondwick',
  name: `Quarnel air cartridge ${sku}`,
  role: 'spring',
  dimensions: { bore: '31 mm' },
  interfaces: { 'spacer-seat': 'clip-q' },
  traits: { kind: 'air' },
  fits: [{ family: 'quarnel', wheel: 622, travel, 'volume-spacers': { standard, greatest: 4 } }],
  needs: travel === '130 mm' ? [{ sku: 'QN-CLIP' }] : [],
  doses: { 'shaft-grease': { specification: 'slick', amount: '2 g' } },
  mass,
  price,
});
const part = (sku: string, role: string, mass: string, more: object = {}) => ({
  sku,
  maker: 'ondwick',
  name: `Quarnel ${role}`,
  role,
  fits,
  mass,
  ...more,
});
const chassis = (wheel: number) => ({
  id: `quarnel-${wheel}`,
  family: 'quarnel',
  name: `Quarnel ${wheel}`,
  wheel,
  axle: { standard: '15x110', spacing: '110 mm', 'rotor-plane': '15 mm' },
  offset: '44 mm',
  steerer: { kind: 'tapered', top: '28.6 mm', 'crown-race': '40 mm', length: '250 mm' },
  brake: { mount: 'post', native: '180 mm', greatest: '203 mm' },
  'tyre-room': { crown: '375 mm', arch: '372 mm', width: '66 mm' },
  travel: { least: '100 mm', greatest: '160 mm' },
  'axle-to-crown': { compressed: '386 mm', measured: 'along-steerer' },
  dimensions: { 'damper-room': '310 mm', 'end-cap-recess': '21 mm' },
  doses: { 'bath-oil': { specification: 'light-bath', left: '8 mL', right: '10 mL' } },
  upper: 'QN-U',
  lowers: `QN-L-${wheel}`,
  fitted: {
    damper: 'QN-D',
    wipers: { sku: 'QN-W', quantity: 2 },
    'foot-seals': { sku: 'QN-C', quantity: 2 },
  },
  builds: [{ travel: '150 mm', slots: { spring: 'QN-S-150', 'volume-spacers': 'QN-V' } }],
});
const operation = (id: string, order: number, minutes: string, more: object = {}) => ({
  id,
  families: ['quarnel'],
  order,
  title: id.replaceAll('-', ' '),
  text: `Do ${id}.`,
  minutes,
  ...more,
});
const bothLegs = [
  { dose: 'bath-oil', side: 'left' },
  { dose: 'bath-oil', side: 'right' },
];

export const lookAtBore = { look: 'bore', if: 'scored', then: 'stop', adds: ['upper'] };

/** The look as an answer shows it: of the upper nobody knows a price here. */
export const lookAnswered = { ...lookAtBore, extra: null };

export const tinyCatalog = {
  catalog: { name: 'Tiny', currency: 'EUR' },
  makers: [{ id: 'ondwick', name: 'Ondwick Forkwrights' }],
  specifications: [
    { id: 'light-bath', name: 'light bath oil', use: 'bath', unit: 'mL' },
    { id: 'slick', name: 'suspension grease', use: 'grease', unit: 'g' },
  ],
  families: [
    {
      id: 'quarnel',
      maker: 'ondwick',
      name: 'Quarnel',
      legs: { left: 'spring', right: 'damper' },
      'travel-set-by': 'cartridge',
      'travel-end': 'extended',
      dimensions: { stanchion: '35 mm', 'spring-bore': '31 mm' },
      slots: {
        upper: {},
        lowers: {},
        spring: {},
        'volume-spacers': { most: 5 },
        damper: {},
        wipers: { pieces: 2, wears: true },
        'foot-seals': { pieces: 2, 'single-use': true },
      },
      complete: ['spring'],
      keeps: ['lockout'],
      crown: 'dual',
      rated: { 'motor-assisted': true, category: 4 },
      settings: { 'stanchion-height': { least: '0 mm', greatest: '10 mm', step: '5 mm' } },
    },
  ],
  chassis: [chassis(622), chassis(584)],
  parts: [
    part('QN-U', 'upper', '900 g'),
    part('QN-L-622', 'lowers', '800 g', { dimensions: { 'seal-seat': '41 mm', 'foot-hole': '8 mm' } }),
    part('QN-L-584', 'lowers', '780 g', { dimensions: { 'seal-seat': '41 mm', 'foot-hole': '8 mm' } }),
    spring('QN-S-150', '150 mm', 1, '95.00', '250 g'),
    spring('QN-S-130', '130 mm', 3, '96.00', '235 g'),
    spring('QN-S-130F', '130 mm', 3, '110.00', '235 g'),
    part('QN-V', 'volume-spacers', '5 g', { interfaces: { 'spacer-seat': 'clip-q' }, pack: 3, price: '9.00' }),
    part('QN-D', 'damper', '300 g', {
      dimensions: { stroke: '160 mm', 'closed-length': '300 mm' },
      traits: { lockout: 'crown' },
    }),
    part('QN-W', 'wipers', '12 g', { dimensions: { stanchion: '35 mm', 'seal-seat': '41 mm' }, price: '11.00' }),
    part('QN-C', 'foot-seals', '1 g', { dimensions: { 'foot-hole': '8 mm' }, price: '1.50' }),
    part('QN-CLIP', 'clip', '1 g', { fits: [], price: '0.80' }),
    ...bikeParts,
  ],
  kits: [
    {
      sku: 'QN-K',
      maker: 'ondwick',
      name: 'Quarnel seal kit',
      contents: [
        { sku: 'QN-W', quantity: 2 },
        { sku: 'QN-C', quantity: 4 },
      ],
      price: '20.00',
    },
  ],
  supplies: [
    {
      sku: 'OD-BATH',
      maker: 'ondwick',
      name: 'Ondwick bath oil',
      use: 'bath',
      unit: 'mL',
      meets: ['light-bath'],
      packs: [{ sku: 'OD-BATH-120', size: '120 mL', price: '9.50' }],
    },
    {
      sku: 'OD-SLICK',
      maker: 'ondwick',
      name: 'Ondwick grease',
      use: 'grease',
      unit: 'g',
      meets: ['slick'],
      packs: [{ sku: 'OD-SLICK-50', size: '50 g', price: '8.00' }],
    },
  ],
  tools: [
    { id: 'hex-5', name: 'hex key', size: '5 mm', price: '4.20' },
    { id: 'drain-pan', name: 'drain pan' },
    { id: 'cap-socket', name: 'socket', size: '26 mm' },
  ],
  operations: [
    operation('air-out', 10, '2 min', { 'closed-by': 'air-in', cautions: ['Release all pressure first.'] }),
    operation('cap-off', 20, '3 min', {
      requires: ['air-out'],
      'closed-by': 'cap-on',
      changes: ['volume-spacers'],
      tools: ['cap-socket'],
    }),
    operation('lowers-off', 40, '8 min', {
      requires: ['air-out'],
      'closed-by': 'lowers-on',
      changes: ['lowers'],
      drains: bothLegs,
      tools: ['hex-5', 'drain-pan'],
    }),
    operation('spring-swap', 50, '12 min', {
      requires: ['lowers-off', 'cap-off'],
      changes: ['spring'],
      uses: [{ dose: 'shaft-grease', of: 'spring' }],
      looks: [lookAtBore],
    }),
    operation('seals', 55, '15 min', {
      requires: ['lowers-off'],
      changes: ['wipers'],
      renews: [{ slot: 'wipers', when: 'with-service' }],
    }),
    operation('cap-on', 70, '4 min', {
      fasteners: [{ name: 'top cap', side: 'left', tool: 'cap-socket', torque: '20 N·m' }],
    }),
    operation('lowers-on', 80, '10 min', {
      renews: [{ slot: 'foot-seals', when: 'always' }],
      uses: bothLegs,
      fasteners: [
        { name: 'foot bolt', side: 'left', tool: 'hex-5', torque: '7 N·m', state: 'dry' },
        { name: 'foot bolt', side: 'right', tool: 'hex-5', torque: '8 N·m' },
      ],
    }),
    operation('air-in', 90, '3 min'),
    ...bikeOperations.map(({ id, order, minutes, changes }) => operation(id, order, minutes, { changes })),
  ],
  bikes,
  notices: [],
  services: [{ id: 'lower-leg-service', families: ['quarnel'], name: 'Lower-leg service', operations: ['seals'] }],
};

const stockRow = (sku: string, onHand: string, more: Record<string, string> = {}) => ({
  sku,
  on_hand: onHand,
  reserved: '0',
  state: '',
  lead_days: '',
  price: '',
  currency: 'EUR',
  bin: '',
  ...more,
});

export const tinyStock: readonly Readonly<Record<string, string>>[] = [
  stockRow('QN-S-130', '1', { reserved: '1', lead_days: '5' }),
  stockRow('QN-S-130F', '1'),
  stockRow('QN-V', '4', { bin: 'B2' }),
  stockRow('QN-C', '10', { price: '1.60' }),
  stockRow('QN-K', '2'),
  stockRow('OD-BATH-120', '3'),
  stockRow('VR-RACE-40', '1'),
  stockRow('VR-AD-23', '1'),
];

export const tinyShop = {
  name: 'Hollin Quay Workshop',
  currency: 'EUR',
  labour: { rate: '66.00', flat: { 'lower-leg-service': '35.00' } },
  tax: { rate: 20, included: true },
  tools: ['hex-5', 'cap-socket'],
  bulk: [{ supply: 'OD-SLICK', price: '30.00', per: '500 g' }],
};

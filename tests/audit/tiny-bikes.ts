/** Two invented bikes, what is on them, and the work it asks for. */
const one = (sku: string, quantity = 1) => ({ sku, quantity });
const part = (sku: string, role: string, dimensions: object, interfaces: object = {}, price?: string) => ({
  sku,
  maker: 'ondwick',
  name: `${role} ${sku}`,
  role,
  dimensions,
  interfaces,
  price,
});

export const bikeParts = [
  part('VR-CUP', 'headset-lower', { stack: '12 mm' }, { 'head-tube': 'zs56', bearing: 'b-52' }),
  part('VR-RACE-39', 'crown-race', { 'crown-race': '39.8 mm' }, { bearing: 'b-52' }),
  part('VR-RACE-40', 'crown-race', { 'crown-race': '40 mm' }, { bearing: 'b-52' }, '9.00'),
  part('VR-SP-5', 'stem-spacers', { stack: '5 mm' }),
  part('VR-HUB', 'hub', { spacing: '110 mm', 'rotor-plane': '15 mm' }, { axle: '15x110', 'rotor-mount': 'six' }),
  part('VR-CAPS', 'end-caps', { 'end-cap': '21 mm' }, { caps: 'h-1' }),
  part('VR-RT-203', 'rotor', { rotor: '203 mm' }, { 'rotor-mount': 'six' }),
  part('VR-AD-23', 'adaptor', { 'rotor-step': '23 mm' }, { 'brake-mount': 'post', 'calliper-mount': 'post' }, '12.00'),
  part('VR-CAL', 'calliper', {}, { 'calliper-mount': 'post' }),
];

export const onVale = {
  'headset-lower': one('VR-CUP'),
  'crown-race': one('VR-RACE-39'),
  'stem-spacers': one('VR-SP-5', 2),
  hub: one('VR-HUB'),
  'end-caps': one('VR-CAPS', 2),
  rotor: one('VR-RT-203'),
  adaptor: null,
  calliper: one('VR-CAL'),
};

/** The fork came on Ridge and goes onto Vale, whose crown race and rotor it does not suit as they are. */
export const bikes = [
  {
    id: 'ridge',
    maker: 'ondwick',
    name: 'Ridge',
    sizes: ['s', 'm'],
    wheel: 622,
    forks: [
      { sizes: ['s'], chassis: 'quarnel-584', travel: '150 mm' },
      { sizes: ['m'], chassis: 'quarnel-622', travel: '150 mm', 'steerer-length': '200 mm' },
    ],
    slots: { rotor: 'VR-RT-203' },
  },
  {
    id: 'vale',
    maker: 'ondwick',
    name: 'Vale',
    sizes: ['m', 'l'],
    wheel: 622,
    tyre: '60-622',
    'motor-assisted': true,
    category: 4,
    'dual-crown': true,
    'head-tube': {
      upper: 'zs44',
      lower: 'zs56',
      length: { m: '110 mm', l: '120 mm' },
      'upper-stack': '8 mm',
      'stem-clamp': '40 mm',
    },
    slots: { ...onVale, 'crown-race': 'VR-RACE-39' },
    limits: [
      { wheel: 622, sizes: ['l'], crown: 'dual', travel: { least: '130 mm', greatest: '160 mm' } },
      { sizes: ['m'], travel: { greatest: '140 mm' } },
      { 'axle-to-crown': { greatest: '531 mm', measured: 'along-steerer' } },
    ],
  },
];

export const bikeOperations = [
  { id: 'race-swap', order: 100, minutes: '6 min', changes: ['crown-race'] },
  { id: 'adaptor-swap', order: 110, minutes: '4 min', changes: ['adaptor', 'rotor'] },
  { id: 'set-height', order: 120, minutes: '5 min', changes: ['stanchion-height'] },
];

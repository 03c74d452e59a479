import { NO_STOCK, readShop } from '../../src/catalog/index.ts';
import { makeWorld, type World } from '../../src/plan/index.ts';
import { oneFile, SOUND, sound } from '../catalog/sound.ts';

/**
 * A fork whose spring is the worked one (35 mm piston, 12 mm shaft, 240.528 mL, 60 mL behind it, spacers of 9 mL) and a bike that
 * is the worked one (66°, 1200 mm, wheels of 368 mm). With 160 mm of travel the fork has 541 mm straight from axle to crown.
 */
const air = `
    dimensions: { bore: 35 mm, shaft: 12 mm }
    interfaces: { spacer-seat: snap }
    air:
      positive-volume: 240.528 mL
      negative-volume: 60 mL
      equalises-at: 0 mm
      pressure: { least: 40 psi, greatest: 150 psi }
      chart:
        - { from: 60 kg, to: 90 kg, least: 50 psi, greatest: 60 psi }
        - { from: 90 kg, to: 110 kg, least: 66 psi, greatest: 84 psi }`;
const changes: readonly (readonly [string, string])[] = [
  [
    `role: spring
    fits:
      - { family: wend, travel: 120 mm, volume-spacers: { standard: 1, greatest: 2 } }`,
    `role: spring${air}
    fits:
      - { family: wend, travel: 160 mm, volume-spacers: { standard: 0, greatest: 2 } }`,
  ],
  [
    '  - { sku: W-V, maker',
    `  - sku: W-T
    maker: orlen
    name: Short spring
    role: spring${air}
    fits:
      - { family: wend, travel: 130 mm, volume-spacers: { standard: 3, greatest: 5 } }
    price: "40.00"
  - { sku: W-V, maker`,
  ],
  [
    'role: volume-spacers, fits: [{ family: wend }], needs: [{ sku: W-C }]',
    'role: volume-spacers, volume: 9 mL, interfaces: { spacer-seat: snap }, fits: [{ family: wend }]',
  ],
  ['volume-spacers: { most: 2 }', 'volume-spacers: { most: 5 }'],
  [
    'travel: { least: 100 mm, greatest: 140 mm }',
    'offset: 44 mm\n    tyre-room: { crown: 372 mm, arch: 370 mm, width: 62 mm }\n    travel: { least: 100 mm, greatest: 160 mm }',
  ],
  ['{ compressed: 400 mm, measured: along-steerer }', '{ compressed: 381.75 mm, measured: straight }'],
  [
    '- { travel: 120 mm, slots: { spring: W-S } }',
    `- { travel: 160 mm, usual: true, slots: { spring: W-S, volume-spacers: null } }
      - { travel: 160 mm, slots: { spring: W-S, volume-spacers: { sku: W-V, quantity: 2 } } }`,
  ],
  [
    'services:',
    `bikes:
  - id: rill
    maker: orlen
    name: Rill
    sizes: [m, l]
    forks: [{ chassis: wend-622, travel: 160 mm }]
    wheel: 622
    tyre: 57-622
    geometry:
      - sizes: [m]
        head-angle: 66 deg
        seat-angle: 76 deg
        wheelbase: 1200 mm
        chainstay: 435 mm
        bottom-bracket-drop: 35 mm
        reach: 460 mm
        stack: 620 mm
services:`,
  ],
];
export const workedText: string = changes.reduce((whole, [from, to]) => {
  if (whole.split(from).length !== 2) throw new Error(`not once: ${from}`);
  return whole.replace(from, to);
}, SOUND);
/** A world of one catalogue text that must have no fault, with nothing in stock and no shop. */
export function worldOf(text: string): World {
  const catalog = sound(oneFile(text));
  return makeWorld(catalog, NO_STOCK, readShop('shop.yaml', '', catalog).value);
}

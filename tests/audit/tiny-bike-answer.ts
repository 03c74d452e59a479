import { line, nowBuild, one, paid, step } from './tiny-answer.ts';
import { onVale } from './tiny-bikes.ts';

/** From Ridge onto Vale, 5 mm lower: another crown race, an adaptor for the rotor, the stanchions 5 mm further up. */
const held = { ...nowBuild, ...onVale };
const bought = { packs: 1, days: 0 };
export const bikeAnswer = {
  format: 1,
  catalog: 'c',
  stock: 's',
  shop: 'h',
  question: {
    bike: 'ridge',
    size: 'm',
    onto: 'vale',
    ontoSize: 'l',
    wants: { axleToCrown: { least: 530, greatest: 531 }, use: [], keep: [], renew: [], service: [] },
  },
  status: 'answered',
  complete: true,
  now: { chassis: 'quarnel-622', travel: 150, build: held, settings: { 'stanchion-height': 0 }, bike: 'vale' },
  flags: [],
  plans: [
    {
      label: ['recommended', 'cheapest', 'quickest', 'soonest'],
      build: { ...held, 'crown-race': one('VR-RACE-40'), adaptor: one('VR-AD-23') },
      chassis: 'quarnel-622',
      settings: { 'stanchion-height': 5 },
      changes: [
        { slot: 'crown-race', from: one('VR-RACE-39'), to: one('VR-RACE-40') },
        { slot: 'adaptor', from: null, to: one('VR-AD-23') },
      ],
      lines: [
        line('buy', 'VR-RACE-40', 1, 'piece', { ...bought, unitPrice: '9.00', total: '9.00' }),
        line('buy', 'VR-AD-23', 1, 'piece', { ...bought, unitPrice: '12.00', total: '12.00' }),
        line('install', 'VR-RACE-40', 1, 'piece', { from: 'VR-RACE-40' }),
        line('install', 'VR-AD-23', 1, 'piece', { from: 'VR-AD-23' }),
        line('remove', 'VR-RACE-39', 1, 'piece'),
      ],
      steps: [
        step('race-swap', 6, { slots: ['crown-race'] }),
        step('adaptor-swap', 4, { slots: ['adaptor'] }),
        step('set-height', 5),
      ],
      tools: [],
      money: paid('21.00', '0.00', '16.50', '37.50', '6.25'),
      minutes: 15,
      readyInDays: 0,
      unknowns: 0,
      effects: {
        travel: { from: 150, to: 150, unit: 'mm' },
        axleToCrown: { from: 536, to: 531, unit: 'mm', measured: 'along-steerer' },
        mass: { from: 2281, to: 2281, unit: 'g' },
        geometry: null,
        spring: null,
        tyre: null,
      },
      flags: [],
    },
  ],
  offers: [],
  refusal: null,
  cases: null,
};

import type { QuestionInput } from '../../../src/plan/index.ts';

const quennet = { chassis: 'quennet-622', travelNow: 150 };
const quennetSmall = { chassis: 'quennet-584', travelNow: 160 };
const velquin = { chassis: 'velquin-622', travelNow: 150 };
const fennockLong = { chassis: 'fennock-622', travelNow: 160, built: '2024-02' };
const fennockShort = { chassis: 'fennock-622', travelNow: 140, built: '2024-02' };
const arbrask = { chassis: 'arbrask-622', travelNow: 170 };
const wolsket = { chassis: 'wolsket-584', travelNow: 200 };
const brannig = { bike: 'dallowick-brannig', size: 'm', built: '2024-05' };
const spacers = (quantity: number) => ({ sku: 'BR-TS-10', quantity });

/** The questions from the counter, by what they turn on. `steps-and-bytes.test.ts` asks every one of them. */
export const QUESTIONS = {
  // damper
  strokeTooShort: { ...velquin, wants: { travel: 160 } },
  closedTooLong: { chassis: 'velquin-584', travelNow: 150, wants: { travel: 160 } },

  // wheel and tyre
  wheelOntoHullock: { ...quennetSmall, wants: { wheel: 622, travel: 150 }, onto: 'dallowick-hullock' },
  wheelOntoStobbart: { ...quennetSmall, wants: { wheel: 622, travel: 150 }, onto: 'dallowick-stobbart' },
  tyreAtTheArch: { ...quennetSmall, wants: { wheel: 622, travel: 150 }, onto: 'dallowick-hullock', tyre: '63-622' },
  smallWheelAllowed: { ...quennet, onto: 'dallowick-querrel' },

  // onto another bike
  longHeadTube: { ...brannig, onto: 'dallowick-querrel', ontoSize: 'l' },
  longestHeadTube: { ...brannig, onto: 'dallowick-querrel', ontoSize: 'xl' },
  rotorPlane: { chassis: 'odrun-584', travelNow: 170, onto: 'hennivar-sorrin' },
  rotorTooSmall: { ...quennet, onto: 'dallowick-stobbart', tyre: '58-622' },
  rotorKept: { ...quennet, onto: 'dallowick-stobbart', tyre: '58-622', wants: { keep: ['rotor'] } },
  adaptor: { ...quennet, onto: 'dallowick-hullock' },
  endCaps: { ...velquin, onto: 'dallowick-hullock' },
  straightSteerer: { chassis: 'lommet-622', travelNow: 100, onto: 'hennivar-tarric' },
  headTube34: { chassis: 'brastle-622', travelNow: 130, onto: 'dallowick-pelter' },
  headTube44: { ...fennockShort, onto: 'dallowick-morrin' },
  axleToCrownTooLong: { ...quennet, onto: 'dallowick-morrin' },
  axleToCrownShortened: { ...quennet, onto: 'dallowick-morrin', wants: { travel: 140 } },

  // motor and two crowns
  motorRefused: { chassis: 'fennock-622', travelNow: 140, onto: 'hennivar-osker' },
  motorNotKnown: { ...velquin, onto: 'hennivar-osker' },
  motorAllowed: { ...velquin, onto: 'hennivar-osker', allowUnknown: true },
  motorRated: { ...arbrask, onto: 'hennivar-osker' },
  dualCrownRefused: { ...wolsket, onto: 'hennivar-skarn' },
  dualCrownNotKnown: { ...wolsket, onto: 'hennivar-sorrin' },
  dualCrownAllowed: { ...wolsket, onto: 'hennivar-sorrin', allowUnknown: true },
  dualCrownHeight: { ...wolsket, settings: { 'stanchion-height': 0 }, onto: 'hennivar-grundel' },
  dualCrownNarrow: {
    ...wolsket,
    settings: { 'stanchion-height': 0 },
    onto: 'hennivar-grundel',
    wants: { axleToCrown: { least: 565, greatest: 570 } },
  },

  dualCrownSteererShort: { ...wolsket, onto: 'hennivar-grundel', ontoSize: 'l', steererLength: 160 },
  dualCrownSteererNew: {
    ...wolsket,
    onto: 'hennivar-grundel',
    ontoSize: 'l',
    steererLength: 160,
    wants: { renew: ['steerer'] },
  },

  // generations, replaced numbers, seals
  replaced: { ...fennockLong, wants: { travel: 140 } },
  replacedByName: { ...fennockLong, wants: { use: ['FN-AIR-140-W'] } },
  replacedAtHand: { ...fennockLong, wants: { travel: 140 }, have: [{ sku: 'FN-AIR-140-W', quantity: 1 }] },
  newKit: { ...fennockLong, wants: { service: ['fennock-lower-leg-service'] } },
  oldKit: { ...fennockLong, wants: { service: ['fennock-lower-leg-service'], use: ['FN-KIT-SERVICE'] } },
  otherSeat: { ...fennockLong, wants: { use: ['VH-W-33'] } },
  firstGeneration: { chassis: 'fennock-622', travelNow: 160, serial: 'FN30000', wants: { travel: 140 } },
  wrongGroove: {
    chassis: 'fennock-622',
    travelNow: 160,
    serial: 'FN30000',
    wants: { use: ['FN-AIR-160-W'], renew: ['spring'] },
  },
  noSerial: { chassis: 'fennock-622', travelNow: 160, wants: { travel: 140 } },
  noSerialAllowed: { chassis: 'fennock-622', travelNow: 160, wants: { travel: 140 }, allowUnknown: true },
  silence: { ...quennet, wants: { use: ['VH-W-33-FL'] } },

  // coil, air, oil
  coilToAir: { ...arbrask, wants: { use: ['AR-AIR'] } },
  coilToAirRefused: { chassis: 'arbrask-584', travelNow: 180, wants: { use: ['AR-AIR'] } },
  coilToAirOtherUpper: {
    chassis: 'arbrask-584',
    travelNow: 180,
    wants: { use: ['AR-AIR'], offset: { least: 51, greatest: 51 } },
  },
  coilRate: { ...arbrask, wants: { coilRate: 8 } },
  oilOutOfStock: { ...arbrask, wants: { travel: 160 } },
  oilSubstituted: { ...arbrask, wants: { travel: 160 }, substitutes: true },

  // stock and service
  shorter: { ...quennet, wants: { travel: 130 } },
  shorterWithService: { ...quennet, wants: { travel: 130, service: ['quennet-lower-leg-service'] } },

  // what cannot be changed, what cannot be seen
  oneSpring: { chassis: 'lommet-622', travelNow: 100, wants: { travel: 120 } },
  spacersInside: {
    chassis: 'brastle-622',
    travelNow: 130,
    wants: { travel: 140 },
    maybe: { 'travel-spacers': [spacers(1), spacers(3)] },
  },

  // on the bike it came on, and limits of frames
  worksShorter: { ...brannig, wants: { travel: 130 } },
  worksLonger: { ...brannig, wants: { travel: 160 } },
  worksOtherWheel: { ...brannig, wants: { travel: 170 } },
  twoPositionSuits: { ...velquin, onto: 'dallowick-brannig', ontoSize: 'm' },
  twoPositionLonger: { ...velquin, onto: 'dallowick-brannig', ontoSize: 'm', wants: { travel: 160 } },

  // notices and issuers
  recalled: { chassis: 'fennock-622', travelNow: 160, serial: 'FN20100', wants: { travel: 140 } },
  notice: { ...wolsket, built: '2024-01', wants: { travel: 190 } },
  twoConflicts: { ...velquin, wants: { travel: 200, use: ['VH-W-33'] } },
  stricterIssuer: { ...fennockShort, wants: { travel: 160, use: ['VH-DMP-FN'] } },
  withinBothIssuers: { ...fennockShort, wants: { travel: 150, use: ['VH-DMP-FN'] } },
  withoutIssuer: { ...fennockShort, wants: { travel: 160 } },
} satisfies Readonly<Record<string, QuestionInput>>;

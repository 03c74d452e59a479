import type { QuestionInput } from '../../src/plan/index.ts';

/** Questions as they are asked at the counter, one of every kind; the laws are tried on all of them. */
export const QUESTIONS: readonly QuestionInput[] = [
  { chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } },
  { chassis: 'quennet-622', travelNow: 150, wants: { travel: 160 }, prefer: 'wait' },
  { chassis: 'quennet-622', travelNow: 150, wants: { travel: 190 } },
  { chassis: 'quennet-622', travelNow: 150, wants: { use: ['QN-L-584'], travel: 150 } },
  { chassis: 'quennet-622', travelNow: 150, wants: { spacers: 3 }, have: [{ sku: 'QN-VS', quantity: 1 }] },
  { chassis: 'quennet-622', travelNow: 150, wants: { service: ['quennet-lower-leg-service'] }, supplies: 'bulk' },
  { chassis: 'quennet-622', travelNow: 150, wants: { renew: ['wipers'] }, allowUnknown: true },
  { chassis: 'quennet-622', travelNow: 150, wants: { use: ['VH-W-33-FL'] } },
  { chassis: 'quennet-622', travelNow: 150, wants: { keep: ['spring'], travel: 130 } },
  {
    chassis: 'quennet-584',
    travelNow: 160,
    wants: { travel: 170, renew: ['foam-rings'] },
    have: [{ sku: 'QN-KIT-OPEN' }],
  },
  { chassis: 'brastle-622', travelNow: 130, wants: { travel: 150 }, prefer: 'time' },
  { chassis: 'brastle-622', travelNow: 130, wants: { use: ['BR-DMP-R'] } },
  { chassis: 'odrun-584', travelNow: 170, wants: { travel: 180 } },
  { chassis: 'odrun-584', travelNow: 170, wants: { coilRate: 7.5 } },
  { chassis: 'odrun-584', travelNow: 170, wants: { renew: ['wipers', 'foot-seals'] } },
];

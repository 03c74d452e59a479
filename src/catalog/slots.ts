/** Slots that a bike has beside those of its fork, in the order in which lists show them. */
export const BIKE_SLOTS = [
  'headset-lower',
  'crown-race',
  'stem-spacers',
  'hub',
  'end-caps',
  'rotor',
  'adaptor',
  'calliper',
] as const;

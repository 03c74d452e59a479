import type { Phrases } from '../phrases.ts';
import { effect } from './effects.ts';
import { roleName, traitName } from './names.ts';
import { picture } from './picture.ts';
import { setUp } from './set-up.ts';
import { contentWords, orList } from './shared.ts';

/** Headings, names and small phrases in English. */
export const phrases: Phrases = {
  role: roleName,
  whereNo: (role) => `, where there is no ${roleName(role)}`,
  trait: traitName,
  side: (side) => side,
  leg: (side, holds) => (holds === null ? `${side} leg` : `${side} leg (${holds})`),
  unit: (quantity, unit) => (unit === 'piece' ? `${quantity} x` : `${quantity} ${unit}`),
  severity: { blocks: 'STOP', verify: 'CHECK', advice: 'NOTE' },
  label: { recommended: 'recommended', cheapest: 'cheapest', quickest: 'quickest', soonest: 'soonest' },
  speaker: {
    want: 'the wish',
    kept: 'kept',
    now: 'the fork',
    rule: 'the rule',
    listing: 'the catalogue',
    stock: 'stock',
    notice: 'a notice',
  },
  money: (amount, currency, atLeast) => `${atLeast === 'at-least' ? 'at least ' : ''}${amount} ${currency}`,
  more: (amount, currency) =>
    amount.startsWith('-') ? `${amount.slice(1)} ${currency} less` : `${amount} ${currency} more`,
  lookAdds: ({ adds, extra }, currency, again) => {
    if (adds.length === 0) return '';
    const slots = adds.map(roleName).join(', ');
    if (extra === null) return `adds: ${slots}; not to be had under this number`;
    const anew = again === 0 ? '' : `; it is closed by now: ${again} min of steps are done again`;
    if (extra.money === '0.00' && extra.minutes === 0) return `adds: ${slots}; in this plan already${anew}`;
    const time = extra.minutes > 0 ? `, ${extra.minutes} min more` : again > 0 ? '' : ', no more time';
    const wait =
      extra.days === 0
        ? ''
        : `, ${extra.days === null ? 'date not known' : `ready in ${extra.days} ${extra.days === 1 ? 'day' : 'days'}`}`;
    return `adds: ${slots}; ${extra.atLeast ? 'at least ' : ''}${phrases.more(extra.money, currency)}${time}${wait}${anew}`;
  },
  minutes: (minutes) => `${minutes} min`,
  ready: (days) =>
    days === null ? 'date not known' : days === 0 ? 'ready at once' : `ready in ${days} ${days === 1 ? 'day' : 'days'}`,
  arrives: (days) =>
    days === null ? 'date not known' : days === 0 ? 'on the shelf' : `in ${days} ${days === 1 ? 'day' : 'days'}`,
  hexKey: (size) => `hex key ${size} mm (ISO 4762)`,
  ringPliers: ({ bore, pliers }) =>
    pliers.length === 0
      ? `for the ring in a bore of ${bore} mm`
      : `DIN 5256 size ${orList(pliers.map(({ size, tip }) => `${size} with tips of ${tip} mm`))}, for the ring in a bore of ${bore} mm`,
  wrench: (tool, deviation) => `${tool} (may be off by ${deviation} N·m)`,
  measured: (how) => (how === 'straight' ? 'measured straight to the axle' : 'measured along the steerer'),
  effect,
  setUp,
  picture,
  heading: {
    otherWays: 'Other ways',
    watch: 'Check first',
    nowAndAfter: 'The fork, now and after',
    effects: 'What changes on fork and bike',
    toBuy: 'To buy',
    atHand: 'Take from what is at hand',
    install: 'Goes in new',
    renew: 'Renewed',
    use: 'Poured, greased and used up',
    reuse: 'Goes back in',
    remove: 'Back to the customer',
    waste: 'Waste',
    leftOver: 'Left over from packs and kits',
    tools: 'Tools',
    work: 'Order of work',
    money: 'Money',
    offers: 'While it is open',
    cautions: 'Always',
    basis: 'Worked out from',
    conflict: 'These cannot stand together',
    notices: 'A notice on this fork',
    cases: 'What may be in the fork',
    why: 'Why these',
    waysOut: 'What can be had instead',
  },
  cautions: [
    'Release all pressure before opening, and check for trapped pressure. Wear eye protection: springs and gas chambers store energy.',
    "Never beyond the fork maker's greatest travel or the frame maker's limits. If a limit is not known, ask the maker.",
    "Steering and braking parts: the maker's torque with a calibrated tool. In doubt, a qualified mechanic.",
    'A bent, scored, cracked or dented upper, crown or steerer is replaced, never repaired. A steerer is never extended.',
    'Oil near rotor or pads means new pads: wheel and pads out, or covered. Solvents: fresh air, no flame. Dispose of waste by local rules.',
  ],
  nothingWished: 'Nothing was wished for. Ask for something, for instance --travel 130 or --service NAME.',
  suitsAlready: (bike, offers) =>
    `The fork goes onto ${bike} as it is. ${
      offers.length === 0
        ? 'Putting it there (stem, crown race, wheel, brake) is work that this catalogue does not describe, so it is not priced here.'
        : `Putting it there is work by itself. ${offers.join(' ')}`
    }`,
  comesTo: (name, sum, minutes, ready, service) =>
    `${name}: ${sum}, ${minutes} min, ${ready}; ask with --service ${service}.`,
  cheaperAsService: (name, less, service) => `Add --service ${service}: as ${name} it comes to ${less}.`,
  alreadySo: 'The fork is as wished already.',
  stoppedByNotice: 'NO. A notice on this fork comes before any plan, so none was worked out.',
  decides: ({ code, slot, values }) => {
    const shows = values.map((value) => contentWords(value)).join(', ');
    switch (code) {
      case 'measure-axle-to-crown':
        return `measure the axle-to-crown; in the order of the cases it is ${shows}`;
      case 'measure-travel':
        return `measure the travel; in the order of the cases it is ${shows}`;
      default:
        return `look at the ${roleName(slot ?? '')}: ${shows}`;
    }
  },
  standsAbove: "The maker's service document for this fork, in its current issue, stands above anything shown here.",
};

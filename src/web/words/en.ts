import { amount, count, decimal, either, kilograms, money, newtonMetres, newtonsAMillimetre, unit } from './numbers.ts';

const plural = (value: number, one: string, many: string): string => `${count(value)} ${value === 1 ? one : many}`;

const ROLES: Readonly<Record<string, string>> = {
  'top-cap': 'top cap',
  wipers: 'wiper seals',
  'cap-ring': 'top-cap ring',
  bath: 'bath oil',
};
const role = (name: string): string => ROLES[name] ?? name.replaceAll('-', ' ');
const mm = (value: number): string => unit(value, 'millimeter');
const days = (value: number | null): string =>
  value === null ? 'date not known' : value === 0 ? 'ready at once' : `ready in ${plural(value, 'day', 'days')}`;
const trait = (name: string): string => {
  const [slot = '', what] = name.split('.');
  return what === undefined ? role(name) : `${what.replaceAll('-', ' ')} of the ${role(slot)}`;
};
const bounds = (least: number, greatest: number): string =>
  least === greatest ? mm(least) : `${decimal(least)} to ${mm(greatest)}`;

interface Room {
  readonly nominal: number;
}
/** The tyre in front with the fork at the bottom. */
interface Tyre {
  readonly designation: string;
  readonly verdict: 'clears' | 'tight' | 'touches' | 'not-known';
  readonly crown: Room | null;
  readonly arch: Room | null;
  readonly width: Room | null;
}
/** A retaining ring, and the sizes of pliers that take it. */
interface Ring {
  readonly bore: number;
  readonly pliers: readonly { readonly size: string; readonly tip: number }[];
}
const CLEARS = {
  clears: 'it clears',
  tight: 'it clears by its designation, and by how tyres differ from it perhaps not: measure the gap',
  touches: 'it touches',
  'not-known': 'whether it clears is not known',
};

/** All that the page says, in English. What depends on the catalogue comes worded from the service. */
export const en = {
  tag: 'en',
  role,
  trait,
  mm,
  days,
  money,
  decimal,
  amount,
  newtonMetres,
  pieces: (name: string, quantity: number): string => (quantity === 1 ? name : `${count(quantity)} × ${name}`),
  minutes: (value: number): string => unit(value, 'minute'),
  name: 'Legwork',
  skip: 'Go to the answer',
  views: {
    answer: 'Answer',
    map: 'What it can become',
    worksheet: 'Worksheet',
    'pick-list': 'Pick list',
    quote: 'Quote',
  },
  viewsName: 'Views of this question',
  catalog: (name: string): string => `Catalogue: ${name}`,
  foot: 'The maker’s service document for the fork, in its current issue, stands above anything shown here, and so do local rules. In doubt, a qualified mechanic.',

  sentence: {
    name: 'The question',
    lead: 'Fork',
    field: 'Say the next part of the question',
    instead: (part: string): string => `Say something else instead of: ${part}`,
    first: 'name a fork or a bike',
    now: 'travel now',
    next: 'what should it become?',
    further: 'and what else?',
    hint: 'Type; what exists is offered. Arrow keys choose, Enter takes, Backspace in the empty field takes the last part back. Press a part to say it otherwise.',
    more: 'What else it understands',
    also: '“2 x …” or “120 mL …” at hand, “maybe holding …”, “tyre 60-622”, “85 kg”, “built 2024-05”, “serial …”, “offset 42 to 46”, “axle-to-crown 530 to 540”, “coil 9 N/mm”.',
    nothing: 'Nothing that exists is called so.',
    offered: (value: number): string =>
      value === 0 ? 'Nothing offered.' : `${plural(value, 'thing', 'things')} offered.`,
    loading: 'Looking up what exists …',
    out: 'Take this part out',
    anew: 'New question',
    change: (part: string): string => `${part}: say otherwise`,
  },
  part: {
    bike: (name: string): string => `of the ${name}`,
    size: (size: string): string => `in size ${size.toUpperCase()}`,
    built: (month: string): string => `built ${month}`,
    serial: (serial: string): string => `with serial ${serial}`,
    now: (travel: number): string => `at ${mm(travel)}`,
    holds: (slot: string, content: string): string => `holding ${content} as ${role(slot)}`,
    maybe: (slot: string, content: string): string => `maybe holding ${content} as ${role(slot)}`,
    setting: (name: string, value: number): string => `${role(name)} set to ${mm(value)}`,
    steerer: (length: number): string => `steerer cut to ${mm(length)}`,
    tyre: (designation: string): string => `with a ${designation} tyre`,
    travel: (travel: number): string => `→ ${mm(travel)}`,
    wheel: (wheel: number): string => `for a ${wheel} wheel`,
    onto: (name: string): string => `onto the ${name}`,
    keep: (slot: string): string => `keeping the ${role(slot)}`,
    use: (name: string): string => `using ${name}`,
    renew: (slot: string): string => `renewing the ${role(slot)}`,
    service: (name: string): string => `with ${name.toLowerCase()}`,
    spacers: (value: number): string => `with ${plural(value, 'volume spacer', 'volume spacers')}`,
    trait: (name: string, value: string): string => `with ${trait(name)}: ${value.replaceAll('-', ' ')}`,
    coil: (rate: number): string => `with a coil of ${newtonsAMillimetre(rate)}`,
    axleToCrown: (least: number, greatest: number): string => `axle-to-crown ${bounds(least, greatest)}`,
    offset: (least: number, greatest: number): string => `offset ${bounds(least, greatest)}`,
    rider: (mass: number): string => `for a rider of ${kilograms(mass)}`,
    prefer: { money: 'least money first', time: 'least bench time first', wait: 'shortest wait first' },
    bulk: 'oil from the drum',
    substitutes: 'equal oils allowed',
    allowUnknown: 'even where the catalogue is silent',
    have: (what: string): string => `with ${what} at hand`,
    used: (what: string): string => `used ${what}`,
    why: 'with the why of every line',
  },

  waiting: 'Working it out …',
  trouble: {
    title: 'The question cannot be answered as it stands.',
    unreachable: 'The service does not answer. It may have been stopped; start it again and press the button.',
    again: 'Ask again',
    chassis: 'Which fork is it?',
  },
  start: {
    title: 'From the fork in front of you to the fork you want',
    text: 'Say the question in the sentence above: the fork, or the bike it left the works with; its travel; then what it should become. The answer is every exact way there, or why there is none and what could be had instead.',
  },

  verdict: {
    yes: (ways: number): string =>
      ways === 1 ? 'Yes. There is one way.' : `Yes. There are ${count(ways)} ways, none worse than another.`,
    recommended: 'Recommended',
    labels: {
      recommended: 'recommended',
      cheapest: 'least money',
      quickest: 'least bench time',
      soonest: 'soonest ready',
    },
    atLeast: (sum: string): string => `at least ${sum}`,
    tax: (rate: number, included: boolean, sum: string): string =>
      included ? `with ${decimal(rate)} % tax` : `and ${sum} tax (${decimal(rate)} %)`,
    bench: (minutes: number): string => `${unit(minutes, 'minute')} at the bench`,
    incomplete: 'The search stopped at its limit of steps: there may be better ways.',
    unpriced: (lines: number): string =>
      `${plural(lines, 'line has', 'lines have')} no price and add nothing to the total.`,
    'nothing-to-do': 'Nothing to do. The fork is already so.',
    suits: 'Nothing to do to the fork. It goes onto the bike as it is.',
    impossible: 'No. Proved impossible: no build that the catalogue allows meets the wishes, whatever is unknown.',
    notice: 'Stop. A notice of the maker blocks any work on this fork.',
    'not-known':
      'Not known. The catalogue neither says that it fits nor that it does not. Ask the maker; or ask again “even where the catalogue is silent”, and the answer says what it rests on.',
    'not-obtainable': 'It could be done, but a part that it needs cannot be bought now.',
    stopped:
      'Not decided: the search stopped at its limit of steps. That says nothing about what is possible. Ask for less at once.',
  },
  ways: {
    title: 'Ways to do it',
    way: (number: number): string => `Way ${count(number)}`,
    shown: 'shown here',
    buys: (added: readonly string[], spared: readonly string[]): string =>
      `buys ${added.length === 0 ? 'nothing else' : added.join(', ')}${spared.length === 0 ? '' : ` instead of ${spared.join(', ')}`}`,
    holds: (slots: readonly string[]): string => `in the fork: ${slots.join(', ')}`,
    slot: (slot: string, content: string | null): string => `${role(slot)} ${content ?? 'none'}`,
  },
  flags: {
    title: 'Check first',
    severity: { blocks: 'Stop', verify: 'Check', advice: 'Note' },
    itHolds: (sku: string): string => `It holds ${sku}`,
  },
  changes: {
    title: 'What changes in the fork',
    slot: 'Slot',
    from: 'Now',
    to: 'Afterwards',
    none: 'none',
  },
  bill: {
    title: 'Bill',
    caption: 'What the job takes and what it leaves',
    columns: { quantity: 'Amount', what: 'What', money: 'Money' },
    groups: {
      buy: 'To buy',
      take: 'From what is at hand',
      install: 'Goes in',
      renew: 'Renewed, spoiled by opening',
      use: 'Poured and greased',
      reuse: 'Goes back in',
      remove: 'Comes out, and is the customer’s',
      waste: 'Waste',
    },
    shelf: (bin: string): string => `shelf ${bin}`,
    when: (value: number | null): string =>
      value === null ? 'date not known' : value === 0 ? 'on the shelf' : `in ${plural(value, 'day', 'days')}`,
    pack: (name: string, size: string): string => `${name}, ${size}`,
    packOf: (name: string, pieces: number): string => `${name}, pack of ${count(pieces)}`,
    left: (what: string): string => `left over: ${what}`,
    noPrice: 'no price',
    parts: 'Parts',
    supplies: 'Supplies',
    labour: 'Labour',
    total: 'Total',
    tax: (rate: number, included: boolean): string => `${included ? 'of which' : 'and on top'} ${decimal(rate)} % tax`,
    why: 'Say why each line stands here',
  },
  effects: {
    title: 'What it does to fork and bike',
    measure: 'Measure',
    before: 'Before',
    after: 'Afterwards',
    travel: 'Travel',
    axleToCrown: 'Axle-to-crown',
    mass: 'Mass of what is known',
    figures: {
      headAngle: 'Head angle',
      seatAngle: 'Seat angle',
      trail: 'Trail',
      mechanicalTrail: 'Trail, at right angles to the steering axis',
      flop: 'Wheel flop',
      wheelbase: 'Wheelbase',
      bottomBracketHeight: 'Bottom bracket above the ground',
      reach: 'Reach',
      stack: 'Stack',
    },
    pressure: (who: string): string => `Pressure ${who}`,
    endForce: 'Force at the end of the stroke, in a hard hit',
    rider: (mass: number): string => `for a rider of ${kilograms(mass)}`,
    byChart: 'by the maker’s chart',
    worked: 'worked out for the sag, a starting point',
    spacers: 'Volume spacers',
    makers: (value: number): string => `the maker’s count is ${count(value)}`,
    unknown: 'not known',
    sag: 'Sag',
    tyre: ({ designation, verdict, crown, arch, width }: Tyre): string => {
      const room = (name: string, left: Room | null): readonly string[] =>
        left === null ? [] : [`${name} ${mm(left.nominal)}`];
      const rooms = [...room('at the crown', crown), ...room('at the arch', arch), ...room('in width', width)];
      const left = rooms.length === 0 ? '' : ` Room left: ${rooms.join(', ')}.`;
      return `Tyre ${designation}, fork at the bottom: ${CLEARS[verdict]}.${left}`;
    },
    assumed:
      'No rider is named, so no pressure is shown; the force is for one in the middle of the maker’s chart. Say a mass in the sentence, such as “85 kg”.',
  },
  pictures: {
    title: 'Drawn, before and afterwards',
    link: 'See it drawn',
    note: 'Press a picture to see it by itself.',
    trouble: 'The pictures could not be drawn now.',
  },
  self: {
    title: 'Doing it yourself',
    skill: {
      rider: 'Every step can be done with a rider’s own tools and care.',
      'home-workshop': 'A home workshop can do it: the hardest step needs bench tools and practice.',
      workshop: (steps: number): string => `${plural(steps, 'step is', 'steps are')} for a workshop:`,
    },
    tools: 'Tools it takes. Tick what you have; the rest is to be bought.',
    toBuy: (sum: string): string => `Tools to buy: ${sum}`,
    noPrice: 'no price',
    back: 'Can it be undone?',
    askBack: 'Work out the way back',
    backYes: (sum: string, minutes: string, ready: string): string =>
      `Yes. With the parts that came out put by, the way back costs ${sum}, takes ${minutes} and is ${ready}.`,
    backNo: 'No: with the parts that come out the catalogue knows no way back.',
    backNothing: 'There is nothing to undo: every part stays.',
  },
  work: {
    title: (minutes: string): string => `Order of work, ${minutes}`,
    torque: 'Torque',
    drain: 'Drain',
    use: 'Use',
    tools: 'Tools',
    ring: 'Ring',
    look: 'Look',
    care: 'Care',
    parts: 'Parts',
    goesIn: (slot: string, what: string): string => `${role(slot)}: ${what} in, new`,
    goesBack: (slot: string, what: string): string => `${role(slot)}: ${what} back in`,
    goesOut: (slot: string): string => `${role(slot)}: nothing goes back in`,
    level: { rider: 'a rider can', 'home-workshop': 'for a home workshop', workshop: 'for a workshop' },
    left: 'left leg',
    right: 'right leg',
    leg: (leg: string, holds: string | null): string => (holds === null ? leg : `${leg} (${holds})`),
    if: (look: string, found: string): string => `${look}, if ${found}:`,
    adds: (sum: string, minutes: number, ready: string): string =>
      `That would add ${sum} and ${unit(minutes, 'minute')}, ${ready}.`,
    addsNothing: 'That is in this plan already.',
    notToBeHad: 'What that takes is not to be had under its number.',
    addsAtLeast: (sum: string, minutes: number, ready: string): string =>
      `That would add at least ${sum} and ${unit(minutes, 'minute')}, ${ready}.`,
    hexKey: (size: number): string => `hex key ${mm(size)} (ISO 4762)`,
    wrench: (tool: string, deviation: number): string => `${tool} (may be off by ${decimal(deviation)} N·m)`,
    pliers: ({ bore, pliers }: Ring): string => {
      const sizes = pliers.map(({ size, tip }) => `${size} with tips of ${mm(tip)}`);
      const ring = `for the ring in a bore of ${mm(bore)}`;
      return sizes.length === 0 ? ring : `DIN 5256 size ${either.format(sizes)}, ${ring}`;
    },
    fasteners: (value: number, name: string): string => (value === 1 ? name : `${count(value)} × ${name}`),
  },
  offers: {
    title: 'Goes well with it',
    add: (name: string): string => `Add: ${name}`,
    adds: (sum: string, minutes: number, ready: string): string =>
      `${sum} more, ${minutes === 0 ? 'no more time' : `${unit(minutes, 'minute')} more`}, ${ready}`,
    comesTo: (sum: string, minutes: number, ready: string): string => `${sum}, ${unit(minutes, 'minute')}, ${ready}`,
  },
  cases: {
    title: 'What the fork in front of you may be',
    holds: 'It holds',
    measures: 'Travel now, axle-to-crown',
    plan: 'The way from there',
    none: 'no way',
    covers: (what: string): string => `These cover every case: ${what}.`,
    decides: {
      'measure-axle-to-crown': 'Measure the axle-to-crown',
      'measure-travel': 'Measure the travel',
      'look-into-slot': 'Look at the',
    },
    same: 'The answer is the same in every case.',
    differ: 'The answer differs; what decides:',
  },
  refusal: {
    conflict: (number: number, of: number): string =>
      of === 1 ? 'These cannot stand together' : `These cannot stand together (${number} of ${of})`,
    speaker: {
      want: 'the wish',
      kept: 'kept',
      now: 'the fork as it is',
      rule: 'the rule',
      listing: 'the catalogue',
      stock: 'the stock',
      notice: 'the notice',
    },
    irreducible: 'Take any one of these away and the rest can stand together.',
    smallest: 'No smaller set says no.',
    ways: 'What can be had instead',
    asks: 'Press one to ask it.',
    without: 'without that wish',
    gives: (dropped: readonly string[]): string => `gives up: ${dropped.join('; ')}`,
    kept: (name: string, value: string, becomes: string | null): string =>
      `${trait(name)}: ${becomes === null ? value : `${value} -> ${becomes}`}`,
    complete: 'Each was solved again, whole. These are all there are.',
    more: 'Each was solved again, whole. There may be more.',
    none: 'There is no other wish to offer.',
    noneToBuy: 'Say what you have at hand, or ask the supplier.',
  },
  map: {
    title: (fork: string, travel: string): string => `What ${fork}, now ${travel}, can become`,
    hint: 'Rows are wheels, columns are travels; each cell has the cheapest way, or why there is none. Arrow keys move, Enter asks.',
    wheel: 'Wheel',
    status: {
      now: 'as it is',
      'nothing-to-do': 'as it is: takes this wheel',
      reachable: 'can be had',
      impossible: 'no',
      'not-known': 'not known',
      'not-obtainable': 'not to be had now',
      stopped: 'not decided',
    },
    cell: (wheel: number, travel: string): string => `${wheel} wheel, ${travel}`,
    about: 'About the chosen cell',
    changes: (slots: readonly string[]): string => `changes ${slots.map(role).join(', ')}`,
    ask: 'Ask this',
    day: (value: number | null): string =>
      value === null ? 'date?' : value === 0 ? 'at once' : plural(value, 'day', 'days'),
  },
  cautionsTitle: 'Always',
  cautions: [
    'Release all pressure before opening, and check for trapped pressure. Wear eye protection: springs and gas chambers store energy.',
    'Never beyond the fork maker’s greatest travel or the frame maker’s limits. If a limit is not known, ask the maker.',
    'Steering and braking parts: the maker’s torque with a calibrated tool. In doubt, a qualified mechanic.',
    'A bent, scored, cracked or dented upper, crown or steerer is replaced, never repaired. A steerer is never extended.',
    'Oil near rotor or pads means new pads: wheel and pads out, or covered. Solvents: fresh air, no flame. Dispose of waste by local rules.',
  ],
  print: {
    now: 'Print',
    title: 'To print',
    quote: 'Quote',
    worksheet: 'Worksheet',
    pickList: 'Pick list',
    basis: (catalog: string, hashes: readonly string[]): string => `Worked out from ${catalog}, ${hashes.join(', ')}.`,
    hash: { catalog: 'catalogue', stock: 'stock', shop: 'shop' },
    blanks: ['Customer', 'Serial number', 'Date', 'Mechanic'],
    measured: { title: 'Found and measured', what: 'What', before: 'Before', after: 'After' },
    measures: [
      'Pressure, bar or psi',
      'Clicks from closed, each dial',
      'Travel, mm',
      'Axle-to-crown, mm',
      'Gap from tyre to crown and arch at the bottom, mm',
      'Sag, mm',
    ],
    lookedAt: 'What was found, and done about it',
    tools: 'Lay out',
    legs: {
      title: 'By leg, left and right as the rider sees it',
      what: 'What',
      left: 'Left leg',
      right: 'Right leg',
      both: 'either',
    },
    parts: 'Parts in hand',
    work: 'Order of work',
    check: 'Check before the work begins',
    forBins: 'From the shelf',
    toOrder: 'To order',
    atHand: 'At hand already',
    bin: 'Shelf',
    take: 'Take',
    number: 'Number',
    what: 'What',
    when: 'When',
    nowhere: 'no shelf stated',
    nothingToPick: 'Nothing is to be picked.',
    each: 'Each',
    sum: 'Sum',
    labour: (minutes: string): string => `Labour, ${minutes}`,
    asked: 'Asked for',
    date: 'Date',
    ready: 'Ready',
    validUntil: 'Good until',
    signed: 'Agreed',
    comesOut: 'Yours to take home',
    wasteNote: 'Spent oil and crushed washers are disposed of by local rules.',
    mayAdd: 'What a look on the way may add',
    mayAddNote: 'None of this is in the total. You are asked before anything of it is done.',
  },
  source: (title: string, issue: string | null, page: string | null): string =>
    [title, ...(issue === null ? [] : [`issue ${issue}`]), ...(page === null ? [] : [`page ${page}`])].join(', '),
};
export type Words = typeof en;

import type { RawOperation, RawService } from '../../src/catalog/raw.ts';
import type { Plan } from './plan.ts';

/** The steps of a family: openings that several jobs share, and what closes them. */
export function operationsOf(plan: Plan): readonly RawOperation[] {
  const { dice, id } = plan;
  const step = (name: string, order: number, minutes: number, rest: Partial<RawOperation>): RawOperation => ({
    id: `${id}-${name}`,
    families: [id],
    order,
    title: name,
    text: `Do ${name}.`,
    minutes: `${minutes} min`,
    ...rest,
  });
  const its = (...names: readonly string[]): readonly string[] => names.map((name) => `${id}-${name}`);
  const capSeal = 'cap-seal' in plan.slots;
  return [
    step('start', 10, 5, { 'closed-by': `${id}-finish`, uses: [{ specification: 'glove', amount: 2 }] }),
    step('lowers-off', 20, dice.whole(6, 12), {
      changes: ['foot-seals'],
      requires: its('start'),
      'closed-by': `${id}-lowers-on`,
    }),
    step('cap-off', 30, 2, { requires: its('start'), 'closed-by': `${id}-cap-on` }),
    step('spring', 40, dice.whole(7, 13), {
      changes: ['spring', ...(plan.bySpacers ? ['travel-spacers'] : [])],
      requires: its('lowers-off', 'cap-off'),
      uses: [
        { specification: 'grease', amount: '2 g' },
        { dose: 'shaft-grease', of: 'spring' },
      ],
    }),
    ...(dice.percent(95)
      ? [
          step('damper', 50, dice.whole(6, 10), {
            changes: ['damper'],
            requires: its('lowers-off'),
            uses: dice.percent(50) ? [{ specification: 'thread', amount: '0.35 g' }] : [],
          }),
        ]
      : []),
    step('spacers', 60, 3, { changes: ['volume-spacers'], requires: its('cap-off'), after: its('spring') }),
    ...plan.modules.map((slot, at) =>
      step(slot, 62 + at, dice.whole(2, 9), {
        changes: [slot],
        requires: its(at % 3 === 0 ? 'cap-off' : at % 3 === 1 ? 'lowers-off' : 'start'),
      }),
    ),
    step('cap-on', 90, 5, {
      uses: [{ specification: 'grease', amount: '1 g' }],
      ...(capSeal
        ? { changes: ['cap-seal'], renews: [{ slot: 'cap-seal', when: 'always' }], requires: its('cap-off') }
        : {}),
    }),
    step('wipers', 92, 10, {
      changes: ['lowers', 'wipers'],
      requires: its('lowers-off'),
      renews: [{ slot: 'wipers', when: dice.pick(['always', 'with-service']) }],
      uses: [{ specification: 'bath', amount: '5 mL' }],
    }),
    step('bleed', 94, 15, { requires: its('lowers-off'), uses: [{ dose: 'filling', of: 'damper' }] }),
    step('lowers-on', 96, 10, {
      renews: [{ slot: 'foot-seals', when: 'always' }],
      uses: [
        { dose: 'bath-oil', side: 'left' },
        { dose: 'bath-oil', side: 'right' },
      ],
    }),
    step('finish', 99, 5, {}),
  ];
}

export const servicesOf = ({ id }: Plan): readonly RawService[] => [
  {
    id: `${id}-lower-leg`,
    families: [id],
    name: 'Lower-leg service',
    operations: ['start', 'lowers-off', 'wipers', 'lowers-on', 'finish'].map((name) => `${id}-${name}`),
  },
  {
    id: `${id}-damper`,
    families: [id],
    name: 'Damper service',
    operations: ['start', 'lowers-off', 'bleed', 'lowers-on', 'finish'].map((name) => `${id}-${name}`),
  },
];

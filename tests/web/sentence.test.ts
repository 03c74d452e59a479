import { describe, expect, it } from 'vitest';
import { ask, choices, type QuestionInput, questionSchema } from '../../src/plan/index.ts';
import { en } from '../../src/report/words/en.ts';
import { say } from '../../src/report/words/say.ts';
import { atHandSuggestions } from '../../src/web/at-hand.ts';
import { choicesOf } from '../../src/web/choices-of.ts';
import { addressOf, placeOf } from '../../src/web/link.ts';
import { partsOf } from '../../src/web/parts.ts';
import type { Known } from '../../src/web/records.ts';
import { matching } from '../../src/web/suggestion.ts';
import { suggestionsFor } from '../../src/web/suggestions.ts';
import { typedSuggestions } from '../../src/web/typed.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

const { world } = await loadCatalogFolder(demoFolder);
const QUENNET = { chassis: 'quennet-622', travelNow: 150 };
const SHELF = {
  kits: [{ sku: 'QN-KIT-VS3', name: 'Quennet volume spacers, three' }],
  supplies: [
    {
      sku: 'OS-BATH-L',
      name: 'Ostrell bath oil',
      unit: 'mL' as const,
      packs: [{ sku: 'VH-BATH-L-120', size: '120 mL' }],
    },
    { sku: 'VH-GREASE', name: 'Varnholt grease', unit: 'g' as const, packs: [] },
  ],
};

function knownOf(question: QuestionInput): Known {
  const { chassis, travelNow } = question;
  const found = choices(world, { chassis, travelNow });
  if ('faults' in found) throw new Error(JSON.stringify(found.faults));
  return {
    fork: { id: found.chassis, name: found.name, builds: [] },
    choices: found,
    named: found,
    bike: null,
    onto: null,
  };
}

/** What is offered first for what is typed, as the field puts it together. */
function first(question: QuestionInput, typed: string) {
  const known = knownOf(question);
  const [suggestion] = [
    ...typedSuggestions(question, typed, known),
    ...matching(suggestionsFor(question, known, null), typed),
    ...atHandSuggestions(question, known, SHELF, typed),
  ];
  return suggestion ?? null;
}

describe('sentence: what is typed, and the question that it makes', () => {
  it.each([
    ['maybe DMP-185', { maybe: { damper: [{ sku: 'QN-DMP-185', quantity: 1 }] } }],
    ['maybe holding 3 × QN-VS', { maybe: { 'volume-spacers': [{ sku: 'QN-VS', quantity: 3 }] } }],
    ['maybe none spacers', { maybe: { 'volume-spacers': [null] } }],
    ['holding 2 × QN-VS', { with: { 'volume-spacers': { sku: 'QN-VS', quantity: 2 } } }],
    ['2 x QN-VS', { have: [{ sku: 'QN-VS', quantity: 2 }] }],
    ['volume spacer hand', { have: [{ sku: 'QN-VS', quantity: 1 }] }],
    ['80 ml bath', { have: [{ sku: 'OS-BATH-L', amount: { value: 80, unit: 'mL' } }] }],
    ['with 2,5 g grease', { have: [{ sku: 'VH-GREASE', amount: { value: 2.5, unit: 'g' } }] }],
    ['have bath 120', { have: [{ sku: 'VH-BATH-L-120', quantity: 1 }] }],
    ['three hand', { have: [{ sku: 'QN-KIT-VS3', quantity: 1 }] }],
    ['tyre 60-62', { tyre: '60-622' }],
    ['60-584', { tyre: '60-584' }],
    ['steerer 190 mm', { steererLength: 190 }],
    ['built 2024-05', { built: '2024-05' }],
    ['serial qn1234', { serial: 'QN1234' }],
    ['85 kg', { rider: { mass: 85 } }],
    ['offset 42 to 46', { wants: { offset: { least: 42, greatest: 46 } } }],
    ['offset 44mm', { wants: { offset: { least: 44, greatest: 44 } } }],
    ['axle-to-crown 530,5–540 mm', { wants: { axleToCrown: { least: 530.5, greatest: 540 } } }],
    ['axle to crown 530..540', { wants: { axleToCrown: { least: 530, greatest: 540 } } }],
    ['coil 9', { wants: { coilRate: 9 } }],
    ['coil of 7.5 N/mm', { wants: { coilRate: 7.5 } }],
    // 1 lb/in is 4.4482216 N in 25.4 mm
    ['coil 50 lb/in', { wants: { coilRate: 8.76 } }],
  ])('%s', (typed, more) => {
    const made = first(QUENNET, typed)?.next;
    expect(made).toEqual({ ...QUENNET, ...more });
    // it is a question that the service understands, and the sentence says it
    expect(questionSchema.safeParse(made).success).toBe(true);
    const parts = partsOf(made ?? {}, knownOf(QUENNET));
    expect(parts).toHaveLength(3);
    expect(new Set(parts.map(({ key }) => key)).size).toBe(3);
  });

  it('settings: each mark of a fork that has one is offered, and none of a fork that has not', () => {
    const wolsket = { chassis: 'wolsket-584', travelNow: 200 };
    // demo-catalog/wolsket.yaml: stanchion-height, of which this chassis left the works with 10 mm
    const offered = suggestionsFor(wolsket, knownOf(wolsket), 'setting');
    expect(offered.length).toBeGreaterThan(2);
    expect(first(wolsket, 'height 10')?.next).toEqual({ ...wolsket, settings: { 'stanchion-height': 10 } });
    expect(suggestionsFor(QUENNET, knownOf(QUENNET), 'setting')).toEqual([]);
  });

  it('a month that is none, a mass of nobody: not offered', () => {
    for (const typed of ['built 2024-13', '9 kg', '900 kg', 'offset 46 to 42', 'coil 0'])
      expect(first(QUENNET, typed)).toBeNull();
  });

  it('every part can be taken out again, one by one, until nothing is said; and a link keeps all of it', () => {
    let question: QuestionInput = {
      ...QUENNET,
      tyre: '60-622',
      steererLength: 190,
      settings: { 'stanchion-height': 10 },
      maybe: { damper: [{ sku: 'QN-DMP-185', quantity: 1 }, null] },
      with: { 'volume-spacers': { sku: 'QN-VS', quantity: 2 } },
      have: [
        { sku: 'QN-VS', quantity: 2 },
        { sku: 'OS-BATH-L', amount: { value: 80, unit: 'mL' } },
      ],
      wants: { travel: 130 },
    };
    const back = placeOf(addressOf({ question, view: 'answer', way: 0 }).slice(1)).question;
    expect(questionSchema.parse(back)).toEqual(questionSchema.parse(question));
    const known = knownOf(QUENNET);
    expect(partsOf(question, known).map(({ text }) => text.replaceAll('\u00a0', ' '))).toEqual([
      'Quennet for 622 wheels',
      'at 150 mm',
      'holding 2 × QN-VS as volume spacers',
      'maybe holding QN-DMP-185 as damper',
      'maybe holding none as damper',
      'stanchion height set to 10 mm',
      'steerer cut to 190 mm',
      'with a 60-622 tyre',
      '→ 130 mm',
      'with 2 × Quennet volume spacer (QN-VS) at hand',
      'with 80 mL OS-BATH-L at hand',
    ]);
    for (let left = 11; left > 0; left--) {
      const parts = partsOf(question, known);
      expect(parts).toHaveLength(left);
      question = parts.at(-1)?.without ?? {};
    }
    expect(partsOf(question, known)).toEqual([]);
  });
});

describe('a question that is not clear', () => {
  /** What the page makes of the faults of a question, as the service words them. */
  function choicesFor(question: QuestionInput) {
    const reply = ask(world, questionSchema.parse(question));
    if (reply.kind !== 'faults') throw new Error('it has no fault');
    return reply.faults.flatMap(({ code, params }) =>
      choicesOf({ code, params, detail: say(en, 'faults', { code, params }) }, question, (id) => id),
    );
  }

  it('several forks of a bike: each is a choice, and each is answered', () => {
    const several = [...world.catalog.bikes.values()].filter(({ id }) => {
      const reply = ask(world, questionSchema.parse({ bike: id, wants: {} }));
      return reply.kind === 'faults' && reply.faults[0]?.code === 'several-forks-of-bike';
    });
    expect(several.length).toBeGreaterThan(0);
    for (const { id } of several) {
      const found = choicesFor({ bike: id });
      expect(found.length).toBeGreaterThan(1);
      expect(new Set(found.map(({ next }) => JSON.stringify(next))).size).toBe(found.length);
      expect(new Set(found.map(({ text }) => text)).size).toBe(found.length);
      for (const { next } of found) {
        const reply = ask(world, questionSchema.parse(next));
        const codes = reply.kind === 'faults' ? reply.faults.map(({ code }) => code) : [];
        expect(codes).not.toContain('several-forks-of-bike');
      }
    }
  });

  it('a fork that is not quite called so: those that are near are choices', () => {
    expect(choicesFor({ chassis: 'quenet-622' }).map(({ next }) => next)).toContainEqual({ chassis: 'quennet-622' });
  });

  it('several builds, a travel that is none, no travel, a size that is none: each choice is answered', () => {
    for (const question of [
      { chassis: 'quennet-622', travelNow: 130, wants: { travel: 150 } },
      { chassis: 'quennet-622', travelNow: 95 },
      { chassis: 'quennet-622' },
      { bike: 'dallowick-brannig', size: 'xxs', built: '2024-05' },
    ]) {
      const found = choicesFor(question);
      expect(found.length).toBeGreaterThan(1);
      for (const { text, next } of found) {
        expect(text).not.toMatch(/--/);
        expect([text, ask(world, questionSchema.parse(next)).kind]).toEqual([text, 'answer']);
      }
    }
  });
});

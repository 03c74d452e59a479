import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { questionSchema } from '../../src/plan/index.ts';
import { addressOf, placeOf } from '../../src/web/link.ts';

const id = fc.stringMatching(/^[a-z]{1,6}(?:-[a-z0-9]{1,4})?$/);
const sku = fc.stringMatching(/^[A-Z]{2}-[A-Z0-9]{1,5}$/);
const mm = fc.integer({ min: 0, max: 2000 });
const text = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });
const several = <T>(of: fc.Arbitrary<T>) => fc.array(of, { maxLength: 3 });

const question = fc.record({
  chassis: text(id),
  bike: text(id),
  travelNow: text(mm),
  onto: text(id),
  prefer: fc.constantFrom('money' as const, 'time' as const, 'wait' as const),
  rider: text(fc.record({ mass: fc.integer({ min: 15, max: 250 }) })),
  substitutes: fc.boolean(),
  with: fc.dictionary(id, fc.option(fc.record({ sku, quantity: fc.integer({ min: 1, max: 9 }) })), { maxKeys: 2 }),
  have: several(fc.record({ sku, quantity: fc.integer({ min: 1, max: 9 }) })),
  wants: fc.record({
    travel: text(mm),
    wheel: text(fc.integer({ min: 100, max: 800 })),
    use: several(sku),
    keep: several(id),
    renew: several(id),
    service: several(id),
    spacers: text(fc.integer({ min: 0, max: 9 })),
    offset: text(fc.record({ least: fc.constant(40), greatest: mm.map((value) => value + 40) })),
  }),
});

describe('link', () => {
  it('a question comes back from its address, whatever it says', () => {
    fc.assert(
      fc.property(question, fc.constantFrom('answer', 'map'), fc.nat(5), (asked, view, way) => {
        const address = addressOf({ question: asked, view, way });
        const back = placeOf(address.slice(1));
        expect(questionSchema.safeParse(back.question)).toEqual(questionSchema.safeParse(asked));
        expect([back.view, back.way]).toEqual([view, way]);
      }),
      { numRuns: 300 },
    );
  });

  it('what cannot be read is left out, and never thrown at anybody', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.string({ unit: 'binary' }), (more, now) => {
        const search = new URLSearchParams({ more, now, way: now, view: more });
        expect(placeOf(`?${search}`).view).toMatch(/^[a-z-]+$/);
      }),
    );
    expect(placeOf('?fork=a&now=abc&more={"x"').question).toEqual({
      chassis: 'a',
      wants: { keep: [], use: [], renew: [], service: [] },
    });
  });

  it('a link reads as one would say it', () => {
    const asked = { chassis: 'quennet-622', travelNow: 150, wants: { travel: 130, keep: ['damper'] } };
    expect(addressOf({ question: asked, view: 'answer', way: 1 })).toBe(
      '/?fork=quennet-622&now=150&travel=130&keep=damper&way=2',
    );
  });
});

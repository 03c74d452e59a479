import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gtinCheckDigit } from '../../src/catalog/gtin.ts';
import { readCatalog } from '../../src/catalog/index.ts';
import { hold } from '../laws/hold.ts';
import { changed, oneFile, shown } from './sound.ts';

describe('GTIN', () => {
  it('law: one wrong digit is always seen; so are two neighbours changed round, unless they differ by five', () => {
    const bodies = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 12, maxLength: 12 });
    hold('check digits', 300, fc.tuple(bodies, fc.nat(11), fc.integer({ min: 1, max: 9 })), ([body, at, by]) => {
      const digit = gtinCheckDigit(body.join(''));
      expect(gtinCheckDigit(body.with(at, ((body[at] ?? 0) + by) % 10).join(''))).not.toBe(digit);
      const [one = 0, other = 0] = [body[at], body[(at + 1) % 12]];
      if (at === 11 || one === other || Math.abs(one - other) === 5) return;
      expect(
        gtinCheckDigit(
          body
            .with(at, other)
            .with(at + 1, one)
            .join(''),
        ),
      ).not.toBe(digit);
    });
  });

  it('lengths: eight, twelve, thirteen and fourteen digits are read, others are no GTIN', () => {
    const codes = (gtin: string): string[] =>
      readCatalog(oneFile(changed(['"6291041500213"', `"${gtin}"`])), 'folder').problems.map(({ code }) => code);
    const whole = (body: string): string => `${body}${gtinCheckDigit(body)}`;
    for (const body of ['1234567', '12345678901', '629104150021', '4098765000022'])
      expect(codes(whole(body))).toEqual([]);
    for (const body of ['12345', '123456789', '40987650000221']) expect(codes(whole(body))).toEqual(['bad-value']);
  });

  it('numbers: packs and kits are checked as parts are', () => {
    const pack = changed(['size: 100 mL', 'size: 100 mL, numbers: { gtin: "6291041500214" }']);
    const kit = changed(['name: Kit\n', 'name: Kit\n    numbers: { gtin: "6291041500214" }\n']);
    for (const text of [pack, kit])
      expect(shown(readCatalog(oneFile(text), 'folder').problems)[0]).toMatch(/^bad-gtin /);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  gapAtFullCompression,
  metres,
  type TyreRoom,
  tyreFromDesignation,
  tyreRoom,
  tyreSize,
} from '../../src/physics/index.ts';
import { hold } from '../laws/hold.ts';
import { code, value } from './outcomes.ts';
import { mm, within } from './springs.ts';

// 60-622: 742 mm, radius 371, by one per cent more 374.71 mm.
const tyre = value(tyreFromDesignation('60-622'));
const roomy: TyreRoom = { crown: mm(385), arch: mm(380), width: mm(70) };
const at = (room: Partial<TyreRoom>, gap = 4) => value(tyreRoom({ ...roomy, ...room }, tyre, mm(gap)));

describe('room for the tyre at full compression', () => {
  it('clears: by the greatest size and the gap, with the margin', () => {
    const found = at({});
    expect(found.verdict).toBe('clears');
    expect((found.arch.margin?.least ?? 0) * 1000).toBeCloseTo(380 - 374.71 - 4, 9);
    expect((found.arch.margin?.nominal ?? 0) * 1000).toBeCloseTo(5, 9);
    expect((found.width.margin?.least ?? 0) * 1000).toBeCloseTo(70 - 60.6 - 4, 9);
  });

  it('tight: by the rule it fits, by the tyre’s uncertainty perhaps not; touches: not even by the rule', () => {
    expect(at({ arch: mm(378) }).arch.verdict).toBe('tight');
    expect(at({ arch: mm(374.9) }).arch.verdict).toBe('touches');
    expect(at({ arch: mm(374.9) }, 0).arch.verdict).toBe('clears');
  });

  it('nothing to spare is enough: a margin of nought clears', () => {
    const exact = { ...tyre, diameter: metres(0.5), greatest: metres(0.5) };
    const found = value(tyreRoom({ crown: metres(0.25), arch: null, width: null }, exact, mm(0)));
    expect(found.crown).toEqual({ verdict: 'clears', margin: { least: 0, nominal: 0 } });
  });

  it('verdict: the worst place decides; what is not known is worse than clear, better than tight', () => {
    expect(at({ crown: null }).verdict).toBe('not-known');
    expect(at({ crown: null }).crown).toEqual({ verdict: 'not-known', margin: null });
    expect(at({ crown: null, arch: mm(378) }).verdict).toBe('tight');
    expect(at({ crown: null, arch: mm(378), width: mm(50) }).verdict).toBe('touches');
  });

  it('rule of the plan: a nominal radius of at most the room fits, and that is clear or tight here', () => {
    hold('tyre room', 500, fc.tuple(within(40, 75), within(340, 400)), ([width, room]) => {
      const wide = value(tyreSize(mm(width), mm(622)));
      const found = value(tyreRoom({ crown: mm(room), arch: null, width: null }, wide, mm(0)));
      const radius = 311 + width;
      if (Math.abs(radius - room) < 1e-6) return;
      expect(found.crown.verdict === 'touches').toBe(radius > room);
      expect(found.crown.verdict === 'clears').toBe(radius * 1.01 <= room);
    });
  });

  it('gap: at full compression it is the gap at full extension less the travel', () => {
    expect(value(gapAtFullCompression(mm(158), mm(150))) * 1000).toBeCloseTo(8, 9);
    expect(value(gapAtFullCompression(mm(140), mm(150))) * 1000).toBeCloseTo(-10, 9);
  });

  it('designation: what is none is not read', () => {
    for (const text of ['29x2.4', '60-', '', '060-622', '60-622 ', '6-622'])
      expect(code(tyreFromDesignation(text))).toBe('not-readable');
    // Readable, but no tyre of a bicycle.
    expect(code(tyreFromDesignation('60-900'))).toBe('out-of-range');
  });
});

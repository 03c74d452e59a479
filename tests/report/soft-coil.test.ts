import { describe, expect, it } from 'vitest';
import { en } from '../../src/report/words/en.ts';

describe('the end of the stroke, in words', () => {
  const rider = { mass: 80, named: false, frontShare: 0.4, headAngle: 66, sag: 0.25, load: 287 };
  const force = { from: 160, to: 140, unit: 'N' } as const;

  it('a coil that the rider presses to the end: is not said to have a share of the force at sag', () => {
    const said = en.phrases.effect.end(rider, force, { from: 0.56, to: 0.49, unit: '' }, 287);
    expect(said).toBe(
      'force at the end of the stroke 160 -> 140 N (20 N less): less than the 287 N that 80 kg put on the fork (nobody is named; give --rider-mass)',
    );
    expect(en.phrases.effect.end({ ...rider, named: true }, force, { from: 0.56, to: 0.49, unit: '' }, 287)).toContain(
      'too soft',
    );
  });

  it('any other: by how much it goes beyond the force at sag', () => {
    expect(
      en.phrases.effect.end(rider, { from: 1836, to: 1752, unit: 'N' }, { from: 6.41, to: 6.11, unit: '' }, 287),
    ).toContain('6.41 -> 6.11 times the 287 N at sag');
  });
});

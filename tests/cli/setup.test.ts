import { describe, expect, it } from 'vitest';
import { setUpSchema } from '../../src/plan/index.ts';
import { legwork } from './run.ts';

const fork = ['setup', '--chassis', 'quennet-622', '--travel-now', '150'];

describe('legwork setup', () => {
  it('json: passes its schema, whichever unit the rider is weighed in', () => {
    const { code, out } = legwork([...fork, '--rider-mass', '176.37 lb', '--format', 'json']);
    expect(code).toBe(0);
    const { rider, spring } = setUpSchema.parse(JSON.parse(out));
    expect(rider.mass).toBeCloseTo(80, 2);
    // The demo catalogue's chart for this cartridge, row of 80 to 90 kg: 115 to 130 psi. 80.0001 kg is in it, 80 kg in the one before.
    expect(spring?.chart?.psi).toEqual({ least: 115, greatest: 130 });
  });

  it('text: the maker’s chart comes before what is worked out, and says that it is a starting point', () => {
    const { code, out } = legwork([...fork, '--rider-mass', '80 kg', '--sag', '30 %', '--front-share', '45']);
    expect(code).toBe(0);
    expect(out.indexOf("the maker's chart")).toBeGreaterThan(0);
    expect(out.indexOf("the maker's chart")).toBeLessThan(out.indexOf('worked out for the sag'));
    expect(out).toContain('A STARTING POINT.');
    expect(out).toContain('stands');
  });

  it('text: a rider weighed in pounds is shown in kg to a tenth', () => {
    const { out } = legwork([...fork, '--rider-mass', '187 lb']);
    expect(out).toContain('A rider of 84.8 kg with kit');
    expect(out).not.toContain('84.82');
  });

  it('exit status: 1 beyond the chart, 2 a faulty question, 3 a spring that the catalogue does not state', () => {
    const beyond = legwork([...fork, '--rider-mass', '40']);
    expect([beyond.code, beyond.out.includes("below the maker's chart")]).toEqual([1, true]);
    const faulty = legwork([...fork, '--sag', 'a bit']);
    expect([faulty.code, faulty.out]).toEqual([2, '']);
    expect(faulty.err).toContain('--rider-mass');
    expect(faulty.err).toContain('--sag');
    const example = ['setup', '--catalog', 'catalog-schema/example', '--chassis', 'tamblin-622'];
    const silent = legwork([...example, '--travel-now', '150', '--rider-mass', '80']);
    expect([silent.code, silent.out.includes('It does not state: ')]).toEqual([3, true]);
  });
});

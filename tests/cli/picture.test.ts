import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, legwork } from './run.ts';

const fork = ['--chassis', 'quennet-622', '--travel-now', '150'];

describe('--picture', () => {
  it('plan and setup: the drawing goes into the file, and standard output is what it is without', () => {
    const file = join(emptyFolder(), 'change.svg');
    const plain = legwork(['plan', ...fork, '--travel', '130', '--format', 'json']);
    const drawn = legwork(['plan', ...fork, '--travel', '130', '--format', 'json', '--picture', file]);
    expect([drawn.code, drawn.out]).toEqual([0, plain.out]);
    expect(readFileSync(file, 'utf8')).toContain('after: QN-AIR-192, 3 volume spacers, 130 mm');
    expect(legwork(['setup', ...fork, '--rider-mass', '80', '--picture', file]).code).toBe(0);
    expect(readFileSync(file, 'utf8')).toContain('as it is: QN-AIR-212, 1 volume spacer, 150 mm');
  });

  it('the picture in the README: what the command beside it draws', () => {
    const file = join(emptyFolder(), 'shorter.svg');
    const asked = [
      '--bike',
      'dallowick-brannig',
      '--size',
      'm',
      '--built',
      '2024-05',
      '--travel',
      '130',
      '--rider-mass',
      '85',
    ];
    expect(legwork(['plan', ...asked, '--picture', file]).code).toBe(0);
    expect(readFileSync('docs/pictures/shorter.svg', 'utf8')).toBe(readFileSync(file, 'utf8'));
  });

  it('setup on a bike: the bike at its sag is drawn too', () => {
    const file = join(emptyFolder(), 'sag.svg');
    const asked = [
      'setup',
      '--bike',
      'dallowick-brannig',
      '--size',
      'm',
      '--built',
      '2024-05',
      '--rider-mass',
      '187 lb',
    ];
    expect(legwork([...asked, '--rear-sag', '40', '--picture', file]).code).toBe(0);
    const svg = readFileSync(file, 'utf8');
    expect(svg).toContain('from its side, unloaded and with its rider');
    expect(svg).toContain('the rear axle 40 mm up');
    expect(svg).toContain('under 84.8 kg with kit');
  });

  it('no plan: nothing is drawn, and that is said', () => {
    const file = join(emptyFolder(), 'change.svg');
    const { code, err } = legwork(['plan', ...fork, '--travel', '180', '--picture', file]);
    expect([code, existsSync(file)]).toEqual([1, false]);
    expect(err).toContain('nothing was drawn');
  });

  it('a file that cannot be written: said, and standard output is empty', () => {
    const { code, out, err } = legwork([
      'plan',
      ...fork,
      '--travel',
      '130',
      '--picture',
      join(emptyFolder(), 'no', 'x.svg'),
    ]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('its folder is not there');
  });
});

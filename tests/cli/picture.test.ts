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

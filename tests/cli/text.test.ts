import { describe, expect, it } from 'vitest';
import { legwork, plan, shorten } from './run.ts';

describe('text', () => {
  it('first screen: verdict, total, minutes, days and what to buy stand in the first 24 lines', () => {
    const screen = legwork(shorten).out.split('\n').slice(0, 24).join('\n');
    for (const said of ['YES', '200.30 EUR', '60 min', 'ready in 5 days', 'QN-AIR-192', 'QN-DMP-185'])
      expect(screen).toContain(said);
  });

  it('width: no line is wider than the terminal, except where one word is', () => {
    for (const [columns, args] of [
      ['40', shorten],
      ['40', plan('--travel', '180')],
      ['80', shorten],
      ['80', ['help', 'plan']],
      ['40', ['explain', 'dimension']],
      ['40', ['catalog', 'list', 'parts', '--format', 'text']],
    ] as const) {
      const wide = legwork(args, { COLUMNS: columns })
        .out.split('\n')
        .filter((line) => [...line].length > Number(columns) && /\S\s+\S/.test(line.trim()));
      expect(wide, `${columns} ${args.join(' ')}`).toEqual([]);
    }
  });

  it('colour: a pipe gets none', () => {
    const { out, err } = legwork(shorten, { FORCE_COLOR: '1' });
    expect(out + err).not.toContain(String.fromCharCode(27));
  });

  it('work: torques stand by side and function, oil by leg, and the page of the document beside each step', () => {
    const { out } = legwork(shorten, { COLUMNS: '100' });
    expect(out).toContain('6.5 N·m  foot bolt, left leg (spring), M8, dry, fully extended, hex key 5 mm');
    expect(out).toContain('8 mL left leg (spring), left foot; 14 mL right leg (damper), right foot');
    expect(out).toMatch(/Take the lowers off - 8 min.* p\. 23/);
    expect(out).toMatch(/stands above anything shown\s+here/);
  });

  it('basis: the demo catalogue is named as such where it was not asked for', () => {
    expect(legwork(shorten).out).toContain('the demo catalogue');
    expect(legwork([...shorten, '--catalog', 'demo-catalog']).out).not.toContain('the demo catalogue');
  });

  it('refusal: verdict, conflict with sources, then ways out, in that order', () => {
    const { out } = legwork(plan('--travel', '180'));
    const at = [
      'Proved impossible',
      'THESE CANNOT STAND TOGETHER',
      'page 9',
      'WHAT CAN BE HAD INSTEAD',
      'solved again',
    ].map((said) => out.indexOf(said));
    expect(at).toEqual([...at].sort((a, b) => a - b));
    expect(at[0]).toBeGreaterThan(0);
  });

  it('a stopped search: is never called impossible', () => {
    const { out } = legwork(plan('--travel', '130', '--step-limit', '1'));
    expect(out).toContain('Not decided');
    expect(out).not.toMatch(/impossible/i);
  });

  it('nothing wished for: is told apart from already so', () => {
    expect(legwork(plan()).out).toContain('Nothing was wished for');
    expect(legwork(plan('--travel', '150')).out).toContain('as wished already');
  });
});

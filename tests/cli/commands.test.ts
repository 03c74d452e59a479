import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.ts';
import { csvRows } from '../../src/cli/csv-rows.ts';
import { PLAN_OPTIONS } from '../../src/cli/plan-options.ts';
import { commandOf } from '../../src/cli/question-args.ts';
import { legwork, root, shorten } from './run.ts';

describe('commands', () => {
  it('help: every command says how it is called, with an example that runs', () => {
    for (const { name, examples, ends } of COMMANDS) {
      const { code, out } = legwork(['help', ...name.split(' ')]);
      expect(code).toBe(0);
      expect(legwork([...name.split(' '), '--help']).out).toBe(out);
      // what goes on until it is told to stop is run by tests/server/command.test.ts
      for (const example of ends === 'when-told' ? [] : examples) {
        const args = [...example.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2] ?? '').slice(1);
        expect(legwork(args).code, example).toBeLessThan(2);
      }
    }
  });

  it('no command: is a fault, and help is said on standard error', () => {
    expect(legwork([])).toMatchObject({ code: 2, out: '' });
    expect(legwork(['help']).code).toBe(0);
  });

  it('an unknown command: names the nearest', () => {
    const { code, err } = legwork(['paln']);
    expect(code).toBe(2);
    expect(err).toContain('Did you mean plan');
    expect(legwork(['catalog']).err).toContain('catalog check');
  });

  it('--version: is that of the package', () => {
    expect(legwork(['--version']).out).toMatch(/^[0-9]+\.[0-9]+\.[0-9]+\n$/);
  });

  it('explain: knows codes, agreements and the nearest to a wrong one', () => {
    expect(legwork(['explain', 'now-assumed']).out).toContain('--with');
    expect(legwork(['explain', 'dimension']).out).toContain('wiper-seat');
    expect(legwork(['explain', 'wiper-seat']).out).toContain('lowers');
    expect(legwork(['explain']).out).toContain('now-assumed');
    const wrong = legwork(['explain', 'now-asumed']);
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('now-assumed');
  });

  it('a reader that goes away: ends the program quietly', async () => {
    const child = spawn(process.execPath, [join(root, 'dist/legwork.js'), ...shorten, '--format', 'json']);
    let err = '';
    child.stderr.on('data', (chunk: Buffer) => {
      err += chunk.toString();
    });
    child.stdout.destroy();
    await new Promise((done) => child.on('close', done));
    expect(err).toBe('');
  });
});

describe('command line of a question', () => {
  it('is written so that a shell takes it apart again', () => {
    const question = {
      chassis: 'quennet-622',
      travelNow: 150,
      with: { wipers: { sku: 'VH-W-33', quantity: 2 }, 'volume-spacers': null },
      wants: { travel: 130, use: ['A-1'], offset: { least: 42, greatest: 46 } },
      have: [{ sku: 'G', amount: { value: 5, unit: 'g' }, used: true }],
      prefer: 'money',
      allowUnknown: true,
    };
    expect(commandOf(question, PLAN_OPTIONS, ['--catalog', "a 'b"])).toBe(
      "legwork plan --chassis quennet-622 --travel-now 150 --with 'wipers=VH-W-33*2' --with volume-spacers=none " +
        "--travel 130 --use A-1 --offset 42..46 --have 'G*5g:used' --allow-unknown --catalog 'a '\\''b'",
    );
  });
});

describe('rows of a stock file', () => {
  it('are read with quotes, blanks, comments and either line end', () => {
    expect(csvRows('\uFEFFsku,bin\r\n# a comment\r\n"A ""1"", x" , b\r\n\r\nC,\n')).toEqual([
      { sku: 'A "1", x', bin: 'b' },
      { sku: 'C', bin: '' },
    ]);
  });
});

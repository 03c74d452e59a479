import { describe, expect, it } from 'vitest';
import { answerSchema } from '../../src/plan/index.ts';
import { legwork, plan, shorten } from './run.ts';

const json = (args: readonly string[]) => answerSchema.parse(JSON.parse(legwork([...args, '--format', 'json']).out));

describe('plan', () => {
  it('exit status: a way is 0, no way is 1, a faulty question is 2, a search that stopped is 3', () => {
    expect(legwork(shorten).code).toBe(0);
    expect(legwork(plan()).code).toBe(0);
    expect(legwork(plan('--travel', '180')).code).toBe(1);
    expect(legwork(plan('--travel', 'high')).code).toBe(2);
    expect(legwork(plan('--travel', '130', '--step-limit', '1')).code).toBe(3);
  });

  it('faults: all are said in one go on standard error, each with a way out, and standard output stays empty', () => {
    const { code, out, err } = legwork(
      plan('--travle', '130', '--travel', '-20', '--format', 'xml', '--keep', 'sprnig'),
    );
    expect({ code, out }).toEqual({ code: 2, out: '' });
    for (const said of [
      'unknown-option',
      'Did you mean --travel',
      'bad-option-value: --travel -20',
      '--format xml is not one of text, json, csv, md',
      'unknown-slot',
    ])
      expect(err).toContain(said);
    expect(err).not.toContain('surplus-argument');
    expect(err).not.toMatch(/\n\s+at /);
  });

  it('ways out: the command of one that gives the bike up leaves it out, and answers', () => {
    const { out } = legwork([
      ...['plan', '--chassis', 'quennet-584', '--travel-now', '160', '--travel', '150', '--wheel', '622'],
      ...['--onto', 'dallowick-stobbart'],
    ]);
    const [, , instead = ''] = /(NO\.[\s\S]*)WHAT CAN BE HAD INSTEAD([\s\S]*?)\n\n/.exec(out) ?? [];
    const command = /legwork (plan [\s\S]*?)\n {2}\S/.exec(instead)?.[1]?.split(/\s+/) ?? [];
    expect(command).toEqual([
      ...['plan', '--chassis', 'quennet-584', '--travel-now', '160', '--travel', '150', '--wheel', '622'],
    ]);
    expect(legwork(command).code).toBe(0);
  });

  it('options: given twice with different values is a fault, with the same value is not', () => {
    expect(legwork(plan('--travel', '130', '--travel', '140')).err).toContain('option-twice');
    expect(legwork(plan('--travel', '130', '--travel', '130')).code).toBe(0);
    expect(legwork(plan('--with', 'damper=QN-DMP-155', '--with', 'damper=QN-DMP-185')).err).toContain('option-twice');
  });

  it('options: a missing value does not swallow the next option', () => {
    const { code, err } = legwork(plan('--travel', '--audit'));
    expect(code).toBe(2);
    expect(err).toContain('--travel needs a value');
  });

  it('lengths: millimetres bare, with their unit and in inches are the same', () => {
    const bare = json(plan('--travel', '127')).question.wants.travel;
    expect(json(plan('--travel', '127 mm')).question.wants.travel).toBe(bare);
    expect(json(plan('--travel', '5 in')).question.wants.travel).toBe(bare);
    const { code, err } = legwork(plan('--travel', '130 g'));
    expect(code).toBe(2);
    expect(err).toContain('is not a length');
  });

  it('values: one beyond its bounds is said with the unit, a decimal comma with the number as it is meant', () => {
    expect(legwork(plan('--rider-mass', '850')).err).toContain('it must be at most 250 kg');
    const { err } = legwork(plan('--travel', '127,5'));
    expect(err).toContain('--travel 127.5');
    expect(legwork(plan('--travel', '127.5')).code).not.toBe(2);
  });

  it('nearest names: a chassis that is not there names those that come near', () => {
    const { code, err } = legwork(['plan', '--chassis', 'quenet-622', '--travel-now', '150']);
    expect(code).toBe(2);
    expect(err).toContain('Did you mean quennet-622');
  });

  it('contents: without a count a slot holds as many pieces as it takes', () => {
    const { question } = json(
      plan('--with', 'wipers=VH-W-33', '--with', 'volume-spacers=none', '--service', 'quennet-spring-service'),
    );
    expect(question.with).toEqual({ wipers: { sku: 'VH-W-33', quantity: 2 }, 'volume-spacers': null });
  });

  it('wheels: in inches as the trade says them, where that is one diameter; else it is said how they are written', () => {
    for (const [wheel, beadSeat] of [
      ['29', 622],
      ['27.5', 584],
      ['27.5 in', 584],
      ['26"', 559],
      ['584', 584],
      ['507 mm', 507],
    ] as const)
      expect([wheel, json(plan('--wheel', wheel)).question.wants.wheel]).toEqual([wheel, beadSeat]);
    for (const wheel of ['24', '20 in', '28', '29.5']) {
      const { code, err } = legwork(plan('--wheel', wheel));
      expect([wheel, code]).toEqual([wheel, 2]);
      expect(err).toMatch(/bead-seat\s+diameter\s+in\s+mm/);
    }
    expect(legwork(plan('--travel', '180', '--wheel', '29')).out).toContain('a 622 (29 in) wheel');
  });

  it('at hand: pieces, amounts and used parts are understood', () => {
    const { question } = json([...shorten, '--have', 'QN-VS*2', '--have', 'VH-GREASE*5g', '--have', 'QN-AIR-192:used']);
    expect(question.have).toEqual([
      { sku: 'QN-VS', quantity: 2, used: false },
      { sku: 'VH-GREASE', amount: { value: 5, unit: 'g' }, used: false },
      { sku: 'QN-AIR-192', used: true },
    ]);
  });

  it('json: is an answer by its schema, with a message to every code', () => {
    for (const args of [shorten, plan('--travel', '180'), plan('--travel', '130', '--why')]) {
      const answer = json(args);
      const messages = [
        ...answer.flags,
        ...answer.plans.flatMap(({ flags }) => flags),
        ...(answer.refusal?.conflicts.flat() ?? []),
        ...answer.plans.flatMap(({ lines }) => lines.flatMap(({ why }) => why ?? [])),
      ];
      expect(messages.length).toBeGreaterThan(0);
      for (const { code, message } of messages) expect(message.startsWith(`${code},`), message).toBe(false);
    }
  });

  it('places: file and line stand in json only where they are asked for', () => {
    expect(legwork([...shorten, '--format', 'json']).out).not.toContain('.yaml');
    expect(json([...shorten, '--places']).flags[0]?.source?.place).toMatch(/^quennet\.yaml:[0-9]+$/);
  });

  it('determinism: the same question gives the same bytes, with and without cache, in any zone and language', () => {
    for (const format of ['text', 'json', 'csv', 'md']) {
      const args = [...shorten, '--format', format];
      const first = legwork(format === 'json' ? [...args, '--no-cache'] : args).out;
      expect(first.length).toBeGreaterThan(500);
      expect(legwork(args).out).toBe(first);
      expect(legwork(args, { TZ: 'Pacific/Auckland', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' }).out).toBe(first);
    }
  });

  it('audit: the answer is worked out again, and the result is said', () => {
    const text = legwork([...shorten, '--audit']);
    expect(text.code).toBe(0);
    expect(text.out).toContain('everything holds');
    const asJson = legwork([...shorten, '--audit', '--format', 'json']);
    expect(asJson.err).toContain('everything holds');
    answerSchema.parse(JSON.parse(asJson.out));
  });

  it('ways out: each is a command line that is answered with the same total', () => {
    const { refusal } = json(plan('--travel', '180'));
    const text = legwork(plan('--travel', '180'), { COLUMNS: '100' }).out;
    expect(refusal?.instead.length).toBeGreaterThan(0);
    const line = /legwork (plan .*--travel 160)/.exec(text)?.[1];
    const answer = json(line?.split(' ') ?? []);
    expect(answer.plans[0]?.money.total).toBe(refusal?.instead[0]?.money);
  });
});

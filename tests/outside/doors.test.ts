import { describe, expect, it } from 'vitest';
import { outside } from '../../src/outside/main.ts';
import { answer, ask } from './ask.ts';

/** Three rows; column 1 (cost 5) has all, 2 has rows 1 and 2 (cost 2), 3 has rows 2 and 3 (cost 2), 4 has row 3 (cost 1). */
const LIBRARY = ' 3 4\n 5 2 2 1\n 2\n 1 2\n 3\n 1 2 3\n 3\n 1 3 4\n';

describe('outside: cover', () => {
  it('OR-Library: the cheapest cover, columns from 1', async () => {
    // row 1 needs column 1 or 2: with 2, row 3 is left, and 4 is its cheapest: 2 + 1 = 3 < 5
    expect(await answer('cover', LIBRARY)).toEqual({ optimum: 3, proved: true, chosen: [2, 4] });
  });

  it('OR-Library: ends of line, a comment, a byte order mark and a last % make no difference', async () => {
    const text = `\uFEFF# a comment\r\n${LIBRARY.replaceAll('\n', '\r\n')}%\r\n`;
    expect(await answer('cover', text)).toEqual({ optimum: 3, proved: true, chosen: [2, 4] });
  });

  it('Steiner triples: columns come first and cost 1 each', async () => {
    // the one triple on three points is hit by any one of them
    expect(await answer('cover', '3 1\n1 2 3\n')).toMatchObject({ optimum: 1, proved: true });
    // the triples of seven points on seven lines: a set that hits every line has at least three points, and a line is one
    const lines = '7 7\n1 2 3\n1 4 5\n1 6 7\n2 4 6\n2 5 7\n3 4 7\n3 5 6\n';
    expect(await answer('cover', lines)).toMatchObject({ optimum: 3, proved: true });
  });

  it('front: every unbeaten pair of cost and number of columns, of the first rows alone', async () => {
    // two columns for 3, or the one that has everything for 5
    expect(await answer('cover', LIBRARY, '--front')).toEqual({
      front: [
        [3, 2],
        [5, 1],
      ],
    });
    // rows 1 and 2: column 2 alone has both
    expect(await answer('cover', LIBRARY, '--front', '--rows', '2')).toEqual({ front: [[2, 1]] });
  });

  it('nothing: a row without columns has no cover, proved', async () => {
    expect(await answer('cover', '1 1\n4\n0\n')).toEqual({ optimum: null, proved: true, chosen: null });
    expect(await answer('cover', '1 1\n4\n0\n', '--front')).toEqual({ front: [] });
  });
});

describe('outside: conflicts', () => {
  it('clauses: every conflict and every correction, from 1, whatever the heading says', async () => {
    // x; not x; not x or y; not y: 1 with 2; 1, 3 and 4. One of {1}, {2 and 3}, {2 and 4} must go.
    const text = 'c a comment\np cnf 9 99\n1 0\n-1 0\n\n-1 2 0 -2\n0\n%\n0\n';
    expect(await answer('conflicts', text)).toEqual({
      conflicts: [
        [1, 2],
        [1, 3, 4],
      ],
      corrections: [[1], [2, 3], [2, 4]],
      smallest: [1, 2],
    });
  });

  it('clauses: one without literals conflicts by itself; one with a literal and its opposite never does', async () => {
    expect(await answer('conflicts', '0\n1 -1 0\n')).toEqual({ conflicts: [[1]], corrections: [[1]], smallest: [1] });
  });

  it('clauses: what can stand together has no conflict, and leaves out nothing', async () => {
    expect(await answer('conflicts', '1 2 0\n-1 0\n')).toEqual({ conflicts: [], corrections: [[]], smallest: null });
  });

  it('MiniZinc: domains from a comment, as a range or a list, or from declarations', async () => {
    // no x is above 2 among 0, 1 and 2, whatever else holds
    const constraints = 'constraint x > 2;\nconstraint x >= y;\n';
    const expected = { conflicts: [[1]], corrections: [[1]], smallest: [1] };
    expect(await answer('conflicts', `% x, y = [0, 2]\r\n${constraints}`)).toEqual(expected);
    expect(await answer('conflicts', `% x, y = [0, 1, 2]\n${constraints}`)).toEqual(expected);
    expect(await answer('conflicts', `var 0..2: x;\nvar {0, 2}: y;\n${constraints}solve satisfy;\n`)).toEqual(expected);
  });

  it('MiniZinc: sums, products and joined conditions bind as they do there', async () => {
    // 1 + 2 * x = 7 only for x = 3; "x = 1 or x = 2 and y = 1" is read as "x = 1 or (x = 2 and y = 1)"
    const text =
      'var 1..3: x; var 1..2: y;\nconstraint 1 + 2 * x = 7;\nconstraint x = 1 \\/ x = 2 /\\ y = 1;\nconstraint not (y != 2);\n';
    expect(await answer('conflicts', text)).toEqual({ conflicts: [[1, 2]], corrections: [[1], [2]], smallest: [1, 2] });
  });
});

describe('outside: orders', () => {
  it('pairs: the number of orders and the one that is taken', async () => {
    // 1 before 3, 2 before 3: 1 2 3 and 2 1 3
    expect(await answer('orders', '{"edges": [[1, 3], [2, 3]]}')).toEqual({ validOrders: 2, chosen: [1, 2, 3] });
    expect(await answer('orders', '{"predecessors": {"b": ["a"]}, "nodes": ["a", "b", "c"]}')).toEqual({
      validOrders: 3,
      chosen: ['a', 'b', 'c'],
    });
  });

  it('line balancing: the count and the times come first, -1,-1 ends', async () => {
    // three tasks, one pair: 3! / 2
    expect(await answer('orders', '3\r\n10\r\n7\r\n2\r\n1,3\r\n-1,-1\r\n')).toEqual({
      validOrders: 3,
      chosen: [1, 2, 3],
    });
  });

  it('many: a count above 2^53 is a string of digits', async () => {
    // 20 tasks with nothing between them: 20!
    expect(await answer('orders', '{"n": 20, "edges": []}')).toMatchObject({ validOrders: '2432902008176640000' });
    // subsets of five things by inclusion: OEIS A046873 (value from memory)
    const subsets = Array.from({ length: 32 }, (_one, set) =>
      [0, 1, 2, 3, 4].flatMap((bit) => ((set >> bit) & 1 ? [] : [[set, set | (1 << bit)]])),
    );
    expect(await answer('orders', JSON.stringify({ edges: subsets.flat() }))).toMatchObject({
      validOrders: '14807804035657359360',
    });
  });

  it('cycle: no order is valid', async () => {
    expect(await answer('orders', '1 2\n2 1\n')).toEqual({ validOrders: 0, chosen: null });
  });

  it('several graphs: the first, or the one that is named', async () => {
    const text = '{"note": "two", "one": {"edges": [[1, 2]]}, "other": {"n": 3, "edges": []}}';
    expect(await answer('orders', text)).toEqual({ validOrders: 1, chosen: [1, 2], graph: 'one', others: ['other'] });
    expect(await answer('orders', text, '--graph', 'other')).toMatchObject({ validOrders: 6, graph: 'other' });
  });
});

describe('outside: tables', () => {
  it('configuration: the count, the values in no solution, and a solution', async () => {
    // a and b are equal and not 2; c is free: 2 * 2 solutions. A row with a value that b cannot have allows nothing.
    const text = JSON.stringify({
      variables: { a: [0, 1, 2], b: [0, 1], c: ['red', 'blue'] },
      tables: [
        {
          scope: ['a', 'b'],
          rows: [
            [0, 0],
            [1, 1],
            [2, 2],
          ],
        },
      ],
    });
    expect(await answer('tables', text)).toEqual({ solutions: 4, neverUsed: ['a=2'], first: { a: 0, b: 0, c: 'red' } });
  });

  it('many: a count above 2^53 is a string of digits; without a solution there is no first', async () => {
    const variables = Object.fromEntries(Array.from({ length: 60 }, (_one, at) => [`v${at}`, [0, 1]]));
    // 60 free variables of two values: 2^60
    expect(await answer('tables', JSON.stringify({ variables, tables: [] }))).toMatchObject({
      solutions: '1152921504606846976',
      neverUsed: [],
    });
    const none = { variables: { a: [0] }, tables: [{ scope: ['a'], rows: [] }] };
    expect(await answer('tables', JSON.stringify(none))).toEqual({ solutions: 0, neverUsed: ['a=0'], first: null });
  });
});

describe('outside: what is wrong', () => {
  const bad = async (kind: string, text: string, ...options: readonly string[]): Promise<string> => {
    const { code, out, err } = await ask(kind, text, ...options);
    expect([code, out, err.split('\n').length]).toEqual([2, '', 2]);
    return err;
  };

  it('files: one line with the place, exit 2, and nothing on standard output', async () => {
    expect(await bad('cover', '2 2\n1 x\n')).toContain('line 2: the cost of column 2 is a whole number, not "x"');
    expect(await bad('cover', '1 2\n1 1\n1\n3\n')).toContain('line 4: a column of row 1 is 3; it must be from 1 to 2');
    expect(await bad('cover', '1 2\n1 1\n2\n1\n')).toContain('line 4: the file ends before a column of row 1');
    expect(await bad('cover', '1 1\n1\n1\n1\n7 7\n')).toContain('line 5: the file goes on after its 1 rows');
    expect(await bad('cover', '')).toContain('line 1: the file ends before the number of rows');
    expect(await bad('cover', LIBRARY, '--rows', '4')).toContain('4 rows are asked for, and the file has 3');
    expect(await bad('conflicts', '1 2 0\n1 b 0\n')).toContain('line 2: a literal is a whole number, not "b"');
    expect(await bad('conflicts', 'c nothing\n')).toContain('there is no clause');
    expect(await bad('conflicts', '\nconstraint x < 3;\n')).toContain('line 2: x has no domain');
    expect(await bad('conflicts', 'var 1..2: x;\nconstraint x <;\n')).toContain(
      'line 2: the expression ends too early',
    );
    expect(await bad('conflicts', 'var 1..2: x;\nconstraint f(x);\n')).toContain(
      'line 2: the function "f" is not known here',
    );
    expect(await bad('orders', '{"edges": [[1, 2],\n [3]]}')).toContain('edges[1]: a pair [before, after]');
    expect(await bad('orders', '1 2\n3 3\n')).toContain('line 2: 3 cannot come before itself');
    expect(await bad('orders', '{"edges":\n [1, }')).toContain('line 2: this is not JSON');
    expect(await bad('tables', '{"variables": {"a": [1]}, "tables": [{"scope": ["b"], "rows": []}]}')).toContain(
      'tables[0].scope[0]: there is no variable "b"',
    );
    expect(await bad('tables', '{"variables": {"a": [1]}, "tables": [{"scope": ["a"], "rows": [[1, 2]]}]}')).toContain(
      'tables[0].rows[0]: a list of 1 values',
    );
  });

  it('calls: no file, no kind, an option that is not there', async () => {
    expect(await outside([])).toMatchObject({ code: 2, out: '', err: expect.stringContaining('usage:') });
    expect(await outside(['fork', 'x'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('no kind "fork"; there are cover, conflicts, orders, tables'),
    });
    expect(await outside(['cover', '/nowhere/at/all'])).toMatchObject({
      code: 2,
      err: '/nowhere/at/all: there is no such file\n',
    });
    expect(await outside(['cover', 'x', '--rows', 'two'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('--rows'),
    });
    expect(await outside(['cover', 'x', '--best'])).toMatchObject({ code: 2, err: expect.stringContaining('--best') });
  });
});

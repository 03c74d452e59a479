import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { OPERATIONS } from '../../scripts/api-document.ts';
import { serve } from '../server/service.ts';
import { follows } from './follows.ts';

const readme = readFileSync(fileURLToPath(new URL('../../README.md', import.meta.url)), 'utf8');
const blocks = [...readme.matchAll(/```console\n\$ curl ([^\n]*)\n([\s\S]*?)```/g)].map((match) => ({
  command: match[1] ?? '',
  output: (match[2] ?? '').trimEnd().split('\n'),
}));
const tried = serve();
afterAll(async () => (await tried).service.stop());

/** What curl would send: -s, -X, -H and -d are understood, and quotes as a shell takes them. */
function request(command: string): { readonly path: string; readonly init: RequestInit } {
  const words = [...command.matchAll(/'([^']*)'|"([^"]*)"|(\S+)/g)].map(([, a, b, c]) => a ?? b ?? c ?? '');
  const headers: Record<string, string> = {};
  let [method, path] = ['GET', ''];
  let body: string | null = null;
  for (let at = 0; at < words.length; at++) {
    const word = words[at] ?? '';
    if (word === '-s') continue;
    if (!['-X', '-H', '-d'].includes(word)) {
      path = word.replace('http://127.0.0.1:8417', '');
      continue;
    }
    const value = words[++at] ?? '';
    if (word === '-X') method = value;
    if (word === '-d') [method, body] = ['POST', value];
    const [, name = '', said = ''] = /^([^:]+): (.*)$/.exec(value) ?? [];
    if (word === '-H') headers[name] = said;
  }
  return { path, init: { method, headers, body } };
}

describe('README, over HTTP', () => {
  it('blocks: there are requests with their answers to hold it to', () => {
    expect(blocks.length).toBeGreaterThanOrEqual(4);
    for (const { output } of blocks) expect(output.filter((line) => line !== '[...]').length).toBeGreaterThanOrEqual(4);
  });

  for (const { command, output } of blocks) {
    it(`output: curl ${command} prints what is shown`, async () => {
      const { path, init } = request(command);
      const text = await (await (await tried).ask(path, init)).text();
      expect(follows(output, text.split('\n')), text).toBe(true);
    });
  }

  it('addresses: those in the table are those of the service', () => {
    const table = readme.slice(readme.indexOf('| address '), readme.indexOf('Answers carry a strong'));
    for (const { path } of OPERATIONS) {
      const shown = path.replace(/^\/v1\/catalog\/.*/, '/v1/catalog');
      expect([path, path === '/v1/problems/{code}' || table.includes(shown)]).toEqual([path, true]);
    }
  });
});

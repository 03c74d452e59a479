import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.ts';
import { emptyFolder, legwork, root } from '../cli/run.ts';

const config = emptyFolder();
const env = { LEGWORK_CONFIG: config, LEGWORK_CACHE: emptyFolder() };
const running = new Set<ChildProcess>();
afterEach(() => {
  for (const child of running) child.kill('SIGKILL');
  running.clear();
});

interface Running {
  readonly child: ChildProcess;
  readonly out: () => string;
  readonly err: () => string;
  readonly url: string;
}

/** Starts the built program and waits until it says where it answers. */
async function started(
  args: readonly string[],
  command: readonly string[] = [join(root, 'dist/legwork.js'), 'serve'],
): Promise<Running> {
  const child = spawn(process.execPath, [...command, ...args], {
    cwd: root,
    env: { PATH: process.env.PATH, HOME: config, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  running.add(child);
  let [out, err] = ['', ''];
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    out += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    err += text;
  });
  const ended = once(child, 'exit').then(() => Promise.reject(new Error(`${out}\n${err}`)));
  while (!out.includes('Stop: ')) await Promise.race([once(child.stdout, 'data'), ended]);
  ended.catch(() => undefined);
  return { child, out: () => out, err: () => err, url: /http:\/\/\S+:\d+/.exec(out)?.[0] ?? '' };
}

async function stopped({ child }: Running, signal: NodeJS.Signals): Promise<number | null> {
  const exit = once(child, 'exit');
  child.kill(signal);
  const [code] = await exit;
  return code;
}

describe('legwork serve', () => {
  it('says the address, the catalogue and how to stop; logs each request as JSON; stops when told to', async () => {
    const service = await started(['--port', '0']);
    expect(service.out()).toMatch(/^Legwork answers at http:\/\/127\.0\.0\.1:\d+ \(this machine only\)\.\n/);
    expect(service.out()).toContain('Catalogue: Legwork demo catalogue, from demo-catalog; stock.csv, shop.yaml;');
    expect(service.out()).toContain('Stop: Ctrl-C.');
    const path = '/v1/fit?part=QN-AIR-192&chassis=quennet-622';
    const answer = await fetch(`${service.url}${path}`, { headers: { Authorization: 'Bearer not-for-the-log' } });
    // what a reader of the terminal gets, byte for byte
    const printed = legwork(['fit', '--part', 'QN-AIR-192', '--chassis', 'quennet-622', '--format', 'json']);
    expect(await answer.text()).toBe(printed.out);
    const rider = JSON.stringify({ chassis: 'quennet-622', travelNow: 150, rider: { mass: 80 } });
    const setup = await fetch(`${service.url}/v1/setup?question=${encodeURIComponent(rider)}`);
    const fork = ['--chassis', 'quennet-622', '--travel-now', '150'];
    expect(await setup.text()).toBe(legwork(['setup', ...fork, '--rider-mass', '80', '--format', 'json']).out);
    for (const command of ['reach', 'plan']) {
      const question = JSON.stringify({ chassis: 'quennet-622', travelNow: 150 });
      const response = await fetch(`${service.url}/v1/${command}?question=${encodeURIComponent(question)}`);
      expect(await response.text()).toBe(legwork([command, ...fork, '--format', 'json']).out);
    }
    const uses = await fetch(`${service.url}/v1/uses?part=QN-VS`);
    expect(await uses.text()).toBe(legwork(['uses', '--part', 'QN-VS', '--format', 'json']).out);
    const bikes = await fetch(`${service.url}/v1/catalog/bikes`);
    expect(await bikes.text()).toBe(legwork(['catalog', 'list', 'bikes', '--format', 'json']).out);
    expect((await fetch(`${service.url}/health`)).status).toBe(200);
    expect(await stopped(service, 'SIGTERM')).toBe(0);
    expect(service.out()).toMatch(/Stopped\.\n$/);
    const lines: unknown[] = service
      .err()
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(lines).toContainEqual(
      expect.objectContaining({
        req: expect.objectContaining({ method: 'GET', url: path }),
        res: expect.objectContaining({ statusCode: 200 }),
        responseTime: expect.any(Number),
      }),
    );
    expect(service.err()).not.toMatch(/not-for-the-log|\/health/);
  });

  it('npm start: is the command, and what the README shows of it is what it says', async () => {
    const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    expect(scripts.start).toBe('node dist/legwork.js serve');
    const [, shown = ''] =
      /```console\n\$ npm start\n([\s\S]*?)```/.exec(readFileSync(join(root, 'README.md'), 'utf8')) ?? [];
    const service = await started(['--port', '0', '--log', 'silent']);
    const said = service.out().replace(service.url, 'http://127.0.0.1:8417');
    for (const line of shown
      .trim()
      .split('\n')
      .filter((one) => one !== '[...]'))
      expect(said).toContain(line);
    expect(await stopped(service, 'SIGTERM')).toBe(0);
    expect(COMMANDS.find(({ name }) => name === 'serve')?.examples).toContain('legwork serve');
  });

  it('an address that is taken, a bad catalogue, bad options: said, exit 2, nothing on standard output', async () => {
    const service = await started(['--port', '0', '--log', 'silent']);
    const port = new URL(service.url).port;
    expect(legwork(['serve', '--port', port], env)).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining('address-not-free'),
    });
    expect(await stopped(service, 'SIGINT')).toBe(0);
    expect(service.err()).toBe('');
    const folder = emptyFolder();
    writeFileSync(join(folder, 'a.yaml'), 'parts: 3\n');
    expect(legwork(['serve', '--catalog', folder], env)).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining('a.yaml:1'),
    });
    const bad = legwork(['serve', '--port', '99999', '--origin', 'shop', '--log', 'loud', '--tokens', 'none.txt'], env);
    expect([bad.code, bad.out]).toEqual([2, '']);
    for (const option of ['--port 99999', '--origin shop', '--log loud', 'none.txt']) expect(bad.err).toContain(option);
  });

  it('others than this machine: only with a token, which `legwork token` makes and keeps as a hash', async () => {
    const refused = legwork(['serve', '--host', '0.0.0.0', '--port', '0'], env);
    expect([refused.code, refused.out, refused.err.includes('no-token')]).toEqual([2, '', true]);
    const { code, out, err } = legwork(['token'], env);
    const token = out.trim();
    expect([code, token]).toEqual([0, expect.stringMatching(/^[\w-]{43}$/)]);
    const file = join(config, 'tokens.txt');
    expect(err).toContain(file);
    expect(readFileSync(file, 'utf8')).toMatch(/^sha256:[0-9a-f]{64}\n$/);
    expect(readFileSync(file, 'utf8')).not.toContain(token);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const service = await started([
      '--host',
      '0.0.0.0',
      '--port',
      '0',
      '--log',
      'silent',
      '--origin',
      'https://shop.example',
    ]);
    const url = service.url.replace('0.0.0.0', '127.0.0.1');
    const reload = (authorization: string): Promise<Response> =>
      fetch(`${url}/v1/reload`, { method: 'POST', headers: { Authorization: authorization } });
    expect((await reload(`Bearer ${token}`)).status).toBe(200);
    expect((await reload(`Bearer ${token.slice(1)}`)).status).toBe(401);
    const allowed = async (origin: string): Promise<string | null> =>
      (await fetch(`${url}/v1/catalog`, { headers: { Origin: origin } })).headers.get('access-control-allow-origin');
    expect(await allowed('https://shop.example')).toBe('https://shop.example');
    expect(await allowed('https://other.example')).toBeNull();
    expect(await stopped(service, 'SIGTERM')).toBe(0);
    writeFileSync(file, 'sha256:12\n', { flag: 'a' });
    expect(legwork(['serve'], env)).toMatchObject({ code: 2, err: expect.stringContaining('bad-token-file') });
  });
});

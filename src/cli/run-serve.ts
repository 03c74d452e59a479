import type { ListedFault } from '../report/faults.ts';
import type { Settings } from '../server/index.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';
import type { Given } from './read-options.ts';
import { readChoice, readWhole } from './read-values.ts';
import { sayFaults } from './say-faults.ts';
import { sayProblems } from './say-problems.ts';
import { readTokens, tokenFile } from './token-file.ts';

/** `legwork serve`: answers over HTTP until it is told to stop. */
export async function runServe(given: Given, io: Io): Promise<ExitCode> {
  const { DEFAULTS, logTo, start } = await import('./serve-files.ts');
  const { settings, faults } = await readSettings(given, io, DEFAULTS);
  if (faults.length > 0) return sayFaults(io, faults);
  const values = Object.fromEntries([...given.values].filter(([name]) => LOADED.has(name)));
  const started = await start(settings, { values, env: { ...io.env } }, logTo());
  switch (started.kind) {
    case 'refused': {
      const { problems, faults: unread, folder } = started.loaded;
      if (problems.length > 0) sayProblems(io.err, io, problems, folder);
      return unread.length === 0
        ? EXIT.fault
        : sayFaults(
            io,
            unread.map((fault) => ({ list: 'usage', ...fault })),
          );
    }
    case 'no-address': {
      const found = `${settings.host}:${settings.port}`;
      return sayFaults(io, [{ list: 'usage', code: 'address-not-free', params: { found, reason: started.code } }]);
    }
    case 'listening': {
      const { service } = started;
      const { world, loaded } = service.edition;
      // before anybody can know that it is there to be stopped
      const end = told('SIGINT', 'SIGTERM');
      const beside = [loaded.stock ?? 'no stock file', loaded.shop ?? 'no shop file'].join(', ');
      io.out(
        [
          `Legwork answers at ${service.url}${isLoopback(settings.host) ? ' (this machine only)' : ''}.`,
          `Catalogue: ${world.catalog.name}, from ${loaded.folder}; ${beside}; ${world.catalog.hash.slice(0, 12)}.`,
          settings.tokens.length === 0 ? 'Reload: off, for there is no token.' : 'Reload: with a token.',
          'Stop: Ctrl-C.',
          '',
        ].join('\n'),
      );
      await end;
      await service.stop();
      io.out('Stopped.\n');
      return EXIT.yes;
    }
  }
}

const LOADED = new Set(['catalog', 'stock', 'shop', 'no-cache']);
const isLoopback = (host: string): boolean => /^127(?:\.[0-9]{1,3}){3}$|^::1$|^localhost$/.test(host);

/** Waits for one of the signals; a second one ends the process at once. */
const told = (...signals: readonly NodeJS.Signals[]): Promise<void> =>
  new Promise((resolve) => {
    for (const signal of signals)
      process.once(signal, () => {
        for (const other of signals) process.once(other, () => process.exit(EXIT.broken));
        resolve();
      });
  });

async function readSettings(
  given: Given,
  io: Io,
  usual: Settings,
): Promise<{ readonly settings: Settings; readonly faults: readonly ListedFault[] }> {
  const faults: ListedFault[] = [];
  const bad = (option: string, found: string, expected: string): void =>
    void faults.push({ list: 'usage', code: 'bad-option-value', params: { option: `--${option}`, found, expected } });
  const whole = (option: string, otherwise: number, least: number, most: number): number => {
    const found = given.values.get(option)?.[0];
    if (found === undefined) return otherwise;
    const what = `a whole number from ${least} to ${most}`;
    const read = readWhole(found, least, what);
    if (read.ok && read.value <= most) return read.value;
    bad(option, found, what);
    return otherwise;
  };
  const host = given.values.get('host')?.[0] ?? usual.host;
  const logText = given.values.get('log')?.[0] ?? usual.log;
  const log = readChoice(logText, ['silent', 'error', 'warn', 'info']);
  if (!log.ok) bad('log', logText, log.expected);
  const origins = given.values.get('origin') ?? [];
  for (const origin of origins) if (!isOrigin(origin)) bad('origin', origin, 'an origin such as https://shop.example');
  const file = await tokenFile(given, io.env);
  const tokens = await readTokens(file);
  const named = given.values.has('tokens');
  if (tokens === null && named)
    faults.push({
      list: 'usage',
      code: 'file-not-readable',
      params: { file, reason: 'there is no such file', option: '--tokens' },
    });
  if (tokens !== null && tokens.bad.length > 0)
    faults.push({ list: 'usage', code: 'bad-token-file', params: { file, lines: tokens.bad.map(String) } });
  const hashes = tokens?.hashes ?? [];
  if (!isLoopback(host) && hashes.length === 0) faults.push({ list: 'usage', code: 'no-token', params: { host } });
  const settings: Settings = {
    ...usual,
    host,
    port: whole('port', usual.port, 0, 65_535),
    tokens: hashes,
    origins,
    proxies: whole('proxies', usual.proxies, 0, 10),
    rate: {
      ...usual.rate,
      all: whole('rate', usual.rate.all, 1, 100_000_000),
      search: whole('search-rate', usual.rate.search, 1, 100_000_000),
    },
    searchers: whole('searchers', usual.searchers, 1, 64),
    searchTime: whole('search-time', usual.searchTime / 1000, 1, 3_600) * 1000,
    mostSteps: whole('most-steps', usual.mostSteps, 1, 1_000_000_000),
    maxAge: whole('max-age', usual.maxAge, 0, 86_400),
    log: log.ok ? log.value : usual.log,
  };
  return { settings, faults };
}

function isOrigin(text: string): boolean {
  try {
    return new URL(text).origin === text;
  } catch {
    return false;
  }
}

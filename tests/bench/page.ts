import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import lighthouse, { desktopConfig, type Result } from 'lighthouse';
import type { Page } from 'playwright-core';
import { launch } from '../browser/browser.ts';
import { sampled } from './measure.ts';

/** `npm run bench:page [RUNS] [keys | scores]`: the time from a key to the new answer, and Lighthouse on the screens. Measures what is built. */
const RUNS = Number(process.argv[2] ?? 3);
const ONLY = process.argv[3];
const SCREENS = {
  question: '/',
  map: '/?fork=quennet-622&now=150',
  plan: '/?fork=quennet-622&now=150&travel=130',
  refusal: '/?fork=quennet-622&now=150&travel=180',
};
const CATEGORIES = ['performance', 'accessibility', 'best-practices', 'seo'];
/** Audits that are said beside a score, for they are what moves it. */
const TELLING = [
  'first-contentful-paint',
  'largest-contentful-paint',
  'total-blocking-time',
  'cumulative-layout-shift',
];

/** The built command on the demo catalogue, as a user starts it. */
async function startService(): Promise<{ readonly child: ChildProcess; readonly url: string }> {
  const program = fileURLToPath(new URL('../../dist/legwork.js', import.meta.url));
  const child = spawn(process.execPath, [program, 'serve', '--port', '0', '--log', 'silent'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  for await (const line of createInterface(child.stdout)) {
    const url = /http:\/\/127\.0\.0\.1:[0-9]+/.exec(line)?.[0];
    if (url !== undefined) return { child, url };
  }
  throw new Error('The service ended before it said its address.');
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  if (typeof address !== 'object' || address === null) throw new Error('No port is free.');
  return address.port;
}

/** Lighthouse's own words for a recording that did not come to be say to run it again. */
const ATTEMPTS = 3;

async function audited(url: string, port: number, desktop: boolean): Promise<Result> {
  const flags = { port, onlyCategories: CATEGORIES, logLevel: 'silent' } as const;
  for (let attempt = 1; ; attempt++) {
    const run = await lighthouse(url, flags, desktop ? desktopConfig : undefined);
    if (run && !run.lhr.runtimeError) return run.lhr;
    if (attempt === ATTEMPTS) throw new Error(run?.lhr.runtimeError?.message ?? `No report on ${url}`);
  }
}

const median = (values: readonly number[]): number => sampled(values).median;
const score = (lhr: Result, category: string): number => Math.round((lhr.categories[category]?.score ?? 0) * 100);

/** The least of several runs would blame the page for a loaded machine, the best would flatter it: medians, run by run in turn. */
async function benchScores(url: string): Promise<void> {
  const port = await freePort();
  const browser = await launch([`--remote-debugging-port=${port}`]);
  const runs = new Map<string, Result[]>();
  for (let run = 0; run < RUNS; run++)
    for (const [name, path] of Object.entries(SCREENS))
      for (const desktop of [false, true]) {
        const row = `${name}, ${desktop ? 'desktop' : 'phone'}`;
        runs.set(row, [...(runs.get(row) ?? []), await audited(url + path, port, desktop)]);
      }
  await browser.close();
  console.log(`Lighthouse, ${CATEGORIES.join(' / ')}, medians of ${RUNS} (bar 95 each)`);
  for (const [row, results] of runs) {
    const scores = CATEGORIES.map((category) => median(results.map((lhr) => score(lhr, category))));
    const telling = TELLING.map((id) => {
      const middle = median(results.map((lhr) => lhr.audits[id]?.numericValue ?? 0));
      return `${id} ${id.endsWith('shift') ? middle.toFixed(3) : `${middle.toFixed(0)} ms`}`;
    });
    console.log(`${row.padEnd(18)} ${scores.join(' / ').padEnd(22)} ${telling.join(', ')}`);
  }
}

/** Longest that a key is waited for, in ms. */
const LONGEST = 10_000;
/** What stands in the page while keys are timed: the next key, and the frame after what it was pressed for is in the document. */
const WATCH = `
globalThis.timed = (holds) => new Promise((done, fail) => {
  addEventListener('keydown', ({ timeStamp }) => {
    setTimeout(() => fail(new Error('Nothing came of a key; the page shows: ' + document.body.innerText)), ${LONGEST});
    let come = false;
    const look = () => {
      if (come || !holds()) return;
      come = true;
      seen.disconnect();
      requestAnimationFrame(() => {
        // a task after the frame: what it shows has been drawn
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => done(performance.now() - timeStamp);
        port2.postMessage(null);
      });
    };
    const seen = new MutationObserver(look);
    seen.observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
    requestAnimationFrame(look);
  }, { capture: true, once: true });
});
globalThis.answered = (view, search) => () =>
  location.search !== search && document.querySelector('main ' + view) !== null && document.querySelector('main [aria-busy="true"]') === null;
globalThis.offers = (text) => () => {
  const first = document.querySelector('[role="option"][aria-selected="true"]');
  return first !== null && (text === null || first.textContent.replaceAll(/\\s/g, ' ') === text);
};
globalThis.told = (before) => () => document.querySelector('.about')?.textContent !== before;
`;

/** The time from a key to what `holds` waits for, an expression in the page. */
async function timedKey(page: Page, key: string, holds: string): Promise<number> {
  // the promise is kept in the page, so that the key is pressed when it listens
  await page.evaluate(`void (globalThis.asked = timed(${holds}))`);
  await page.keyboard.press(key);
  return Number(await page.evaluate('globalThis.asked'));
}

interface Fork {
  readonly id: string;
  readonly name: string;
  readonly travelNow: number | null;
  readonly travels: readonly number[];
}

/** The forks of the catalogue that left the works with a travel, and the travels that they can be asked for. */
async function forksOf(url: string): Promise<readonly Fork[]> {
  const read = async (path: string) => (await fetch(url + path)).json();
  const { records }: { records: readonly { readonly id: string }[] } = await read('/v1/catalog/chassis');
  const forks: Fork[] = [];
  for (const { id } of records) forks.push({ ...(await read(`/v1/choices?chassis=${id}`)), id });
  return forks.filter(({ travelNow }) => travelNow !== null);
}

const ROWS = {
  letter: 'a letter to the forks it finds',
  fork: 'Enter on a fork to its map',
  now: 'Enter on the travel now to the map',
  digit: 'a digit to the travel it offers',
  plan: 'Enter on a travel to the plan or refusal',
  back: 'Backspace to the map again',
  arrow: 'an arrow in the map to what is said of the cell',
  cell: 'Enter in the map to the plan or refusal',
  all: 'all of these',
};
type Row = keyof typeof ROWS;

async function benchKeys(url: string): Promise<void> {
  const browser = await launch();
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const times = new Map<Row, number[]>();
  const note = async (row: Row, key: string, holds: string): Promise<void> => {
    times.set(row, [...(times.get(row) ?? []), await timedKey(page, key, holds)]);
  };
  const answered = (view: string): string => `answered('${view}', ${JSON.stringify(new URL(page.url()).search)})`;
  const forks = await forksOf(url);
  for (let run = 0; run < RUNS; run++)
    for (const { name, travelNow, travels } of forks) {
      // opened anew, for the page keeps what it has heard
      await page.goto(url);
      await page.evaluate(WATCH);
      const field = page.getByRole('combobox');
      await field.focus();
      await note('letter', name.charAt(0), 'offers(null)');
      await page.keyboard.type(name.slice(1));
      await page.getByRole('option', { name, exact: true }).and(page.locator('[aria-selected="true"]')).waitFor();
      await note('fork', 'Enter', answered('.reach td'));
      await page.keyboard.type(`at ${travelNow}`);
      await page.getByRole('option', { name: `at ${travelNow} mm`, exact: true }).waitFor();
      await note('now', 'Enter', answered('.reach td'));
      for (const travel of travels.filter((one) => one !== travelNow)) {
        await page.keyboard.type(String(travel).slice(0, -1));
        await note('digit', String(travel).slice(-1), `offers('→ ${travel} mm')`);
        await note('plan', 'Enter', answered('.verdict'));
        await note('back', 'Backspace', answered('.reach td'));
      }
      const cell = page.locator('[data-chosen="true"]');
      await cell.focus();
      if (travels.length < 2) continue;
      const first = (await cell.getAttribute('data-at'))?.endsWith(' 0') === true;
      await note(
        'arrow',
        first ? 'ArrowRight' : 'ArrowLeft',
        `told(${JSON.stringify(await page.locator('.about').textContent())})`,
      );
      await note('cell', 'Enter', answered('.verdict'));
    }
  await browser.close();
  console.log('From a key to the frame after the answer to it is in the document (bar: median 100 ms)');
  for (const [name, all] of [...times, ['all', [...times.values()].flat()]] as const) {
    const { median: middle, p95, most } = sampled(all);
    const figures = `median ${middle.toFixed(0)}, p95 ${p95.toFixed(0)}, most ${most.toFixed(0)} ms of ${all.length}`;
    console.log(`${ROWS[name].padEnd(48)} ${figures}`);
  }
}

const { child, url } = await startService();
try {
  if (ONLY !== 'scores') await benchKeys(url);
  if (ONLY !== 'keys') await benchScores(url);
} finally {
  child.kill();
  await once(child, 'exit');
}

import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { Agent, get } from 'node:http';
import { fileURLToPath } from 'node:url';

/** `npm run bench:service [REQUESTS] [ROUNDS]`. On a machine that does other work, trust the CPU and not the rate. */
const REQUESTS = Number(process.argv[2] ?? 3_000);
const ROUNDS = Number(process.argv[3] ?? 7);
const TOGETHER = 16;

interface Server {
  readonly child: ChildProcess;
  readonly url: string;
}
interface Cost {
  /** CPU of the server process, in microseconds a request. */
  readonly cpu: number;
  /** Requests a second. */
  readonly rate: number;
}

async function serverOf(kind: 'bare' | 'service'): Promise<Server> {
  const child = fork(fileURLToPath(new URL('service-child.ts', import.meta.url)), [kind], {
    execArgv: ['--import', 'tsx'],
    env: { ...process.env, NODE_ENV: 'production' },
  });
  const [{ url }] = await once(child, 'message');
  return { child, url };
}

async function usedBy({ child }: Server): Promise<number> {
  child.send('used');
  const [{ used }] = await once(child, 'message');
  return used.user + used.system;
}

/** Asks the same again and again over connections that stay open. */
async function load({ url }: Server, paths: readonly string[], requests: number): Promise<void> {
  const agent = new Agent({ keepAlive: true, maxSockets: TOGETHER });
  let next = 0;
  const asker = async (): Promise<void> => {
    while (next < requests) {
      const path = paths[next++ % paths.length] ?? '/';
      await new Promise<void>((resolve, reject) => {
        get(`${url}${path}`, { agent }, (response) => {
          response.resume();
          response.on('end', () =>
            response.statusCode === 200 ? resolve() : reject(new Error(`${response.statusCode} ${path}`)),
          );
        }).on('error', reject);
      });
    }
  };
  await Promise.all(Array.from({ length: TOGETHER }, asker));
  agent.destroy();
}

async function costOf(server: Server, paths: readonly string[]): Promise<Cost> {
  const [before, begun] = [await usedBy(server), performance.now()];
  await load(server, paths, REQUESTS);
  const seconds = (performance.now() - begun) / 1000;
  return { cpu: ((await usedBy(server)) - before) / REQUESTS, rate: REQUESTS / seconds };
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;

/** Median and greatest time of single verdicts, one after the other, in ms. */
async function latencies(server: Server, path: string): Promise<readonly number[]> {
  const times: number[] = [];
  for (let at = 0; at < 300; at++) {
    const begun = performance.now();
    await load(server, [path], 1);
    times.push(performance.now() - begun);
  }
  return times;
}

const [bare, service] = [await serverOf('bare'), await serverOf('service')];
const fits = ['QN-AIR-192', 'QN-AIR-212', 'QN-VS', 'QN-DMP-155', 'VH-DMP-FN', 'BR-TS-10'].flatMap((part) =>
  ['quennet-622', 'quennet-584', 'brastle-622', 'kerrolt-622'].map(
    (chassis) => `/v1/fit?chassis=${chassis}&part=${part}`,
  ),
);
const rows = { bare: [bare, ['/v1/constant']], constant: [service, ['/v1/constant']], fit: [service, fits] } as const;
for (const [server, paths] of Object.values(rows)) await load(server, paths, REQUESTS);
const costs: Record<keyof typeof rows, Cost[]> = { bare: [], constant: [], fit: [] };
// in turns, so that what else runs on the machine falls on all of them alike
for (let round = 0; round < ROUNDS; round++) {
  costs.bare.push(await costOf(bare, rows.bare[1]));
  costs.constant.push(await costOf(service, rows.constant[1]));
  costs.fit.push(await costOf(service, rows.fit[1]));
}
for (const [name, all] of Object.entries(costs))
  console.log(
    `${name.padEnd(10)} ${median(all.map(({ cpu }) => cpu))
      .toFixed(0)
      .padStart(5)} us of server CPU a request, ${median(all.map(({ rate }) => rate))
      .toFixed(0)
      .padStart(6)} a second`,
  );
const ratio = (one: keyof typeof rows, other: keyof typeof rows, of: keyof Cost): string =>
  (median(costs[one].map((cost) => cost[of])) / median(costs[other].map((cost) => cost[of]))).toFixed(2);
console.log(
  `fit against a constant behind the same chain: ${ratio('fit', 'constant', 'rate')} of the rate (bar 0.80); by server CPU alone ${ratio('constant', 'fit', 'cpu')}`,
);
console.log(`the chain against one bare route: ${ratio('constant', 'bare', 'cpu')} times the CPU (bar 1.60)`);

const quiet = await latencies(service, fits[0] ?? '');
const long = encodeURIComponent(
  JSON.stringify({
    chassis: 'kerrolt-622',
    travelNow: 160,
    wants: { travel: 200 },
    maybe: { damper: [{ sku: 'KO-DMP-T-178', quantity: 1 }], wipers: [{ sku: 'VH-W-34', quantity: 2 }] },
    allowUnknown: true,
  }),
);
const search = load(service, [`/v1/plan?question=${long}`], 1);
let searching = true;
void search.finally(() => {
  searching = false;
});
const busy: number[] = [];
while (searching && busy.length < 3_000) busy.push(...(await latencies(service, fits[0] ?? '')));
console.log(
  `a verdict alone: ${median(quiet).toFixed(2)} ms; beside a long search: ${median(busy).toFixed(2)} ms, ${busy.length} of them while one search went on`,
);
bare.child.kill();
service.child.kill();

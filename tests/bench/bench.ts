import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { counterTimes } from './counter.ts';
import { firstReadTimes } from './first-read.ts';
import { sampled } from './measure.ts';
import { ROWS, WELL_WARMED } from './rows.ts';

/** `npm run bench`: medians and ratios, all peers in one run. Start-up of Node is taken as the unit for the command. */
const ROUNDS = 9;
const WARM_UP = 4;

const shown = (ms: number): string => `${ms.toFixed(2)} ms`;
const root = fileURLToPath(new URL('../..', import.meta.url));

/** What a user waits for: answers, the first read, the start of the command. */
async function everyday(): Promise<void> {
  const [day, alone] = [
    await counterTimes(ROUNDS, WARM_UP, 'each-round'),
    await counterTimes(ROUNDS, WARM_UP, 'each-question'),
  ];
  console.log(
    `questions from the counter, ${day.size}, each answered whole: CPU time of one process, median of ${ROUNDS} rounds after ${WARM_UP} to warm up.`,
  );
  console.log('  Verdicts on parts are remembered from the first round on. What was bought before is forgotten');
  for (const [when, times] of [
    ['before each round, as in the course of a day', day],
    ['before each question', alone],
  ] as const) {
    const { median, p95, most } = sampled([...times.values()].map((one) => one.median));
    console.log(`  ${when}: median ${shown(median)}, p95 ${shown(p95)}, most ${shown(most)}`);
  }
  const slowest = [...day].sort((a, b) => b[1].median - a[1].median).slice(0, 5);
  for (const [name, { median }] of slowest) console.log(`  ${name.padEnd(24)} ${shown(median)}`);

  const [bareYaml, whole] = await firstReadTimes(ROUNDS);
  console.log(
    `first read of changed files: ${shown(whole)} from text to a linked catalogue, ${(whole / bareYaml).toFixed(2)} times the ${shown(bareYaml)} of the bare YAML library on the same bytes (CPU time, medians, in turn)`,
  );

  const wall = (args: readonly string[]): number => {
    const from = performance.now();
    spawnSync(process.execPath, [...args], { cwd: root, stdio: 'ignore' });
    return performance.now() - from;
  };
  const plan = [
    'dist/legwork.js',
    'plan',
    '--catalog',
    'demo-catalog',
    '--chassis',
    'quennet-622',
    '--travel-now',
    '150',
    '--travel',
    '130',
  ];
  wall(plan);
  const [bare, command]: [number[], number[]] = [[], []];
  for (let round = 0; round < ROUNDS; round++) {
    bare.push(wall(['-e', '0']));
    command.push(wall(plan));
  }
  const [one, other] = [sampled(bare).median, sampled(command).median];
  console.log(
    `the command from a warm cache: ${shown(other)} against ${shown(one)} of a bare start of Node, ${(other / one).toFixed(2)} times`,
  );
}

const { world } = await loadCatalogFolder(demoFolder);
const wanted = process.argv.slice(2);
if (wanted.length === 0) await everyday();
console.log(
  `generated catalogues and peers: CPU time after ${WELL_WARMED} rounds to warm up (12 x 6: two, 20 x 20: one), models of all built apart.`,
);
for (const [name, row] of Object.entries(ROWS))
  if (wanted.length === 0 || wanted.includes(name)) for (const line of await row(world)) console.log(`  ${line}`);

/** Before the tests: installs Debian's Chromium for those in a browser, where there is none and this may be done. */
import { spawnSync } from 'node:child_process';
import { findChromium } from './chromium.ts';

if (findChromium() === null) {
  console.log('The browser tests need Chromium. Installing it with apt-get ...');
  const lead = process.getuid?.() === 0 ? [] : ['sudo', '-n'];
  const run = (...command: readonly string[]): boolean => {
    const [program = '', ...rest] = [...lead, ...command];
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    return spawnSync(program, rest, { stdio: ['ignore', 'ignore', 'inherit'], env }).status === 0;
  };
  const done = run('apt-get', 'update', '-qq') && run('apt-get', 'install', '-y', '-qq', 'chromium');
  if (!done || findChromium() === null)
    console.error('Chromium could not be installed. Install it, or name one in LEGWORK_CHROMIUM.');
}

/** Before the tests: installs Debian's Chromium for those in a browser, where there is none and this may be done. */
import { spawnSync } from 'node:child_process';
import { findChromium, installCommands } from './chromium.ts';

if (findChromium() === null) {
  console.log('The browser tests need Chromium. Installing it with apt-get ...');
  const done = installCommands(process.getuid?.()).every(
    ([program = '', ...rest]) => spawnSync(program, rest, { stdio: ['ignore', 'ignore', 'inherit'] }).status === 0,
  );
  if (!done || findChromium() === null)
    console.error('Chromium could not be installed. Install it, or name one in LEGWORK_CHROMIUM.');
}

/** Draws the counter page of the README anew: docs/pictures/page.png. Needs a built dist/ and Chromium. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chromium } from 'playwright-core';
import { findChromium } from './chromium.ts';

const QUESTION = '/?fork=quennet-622&now=150&travel=130';
const FILE = 'docs/pictures/page.png';

const executablePath = findChromium();
if (executablePath === null)
  throw new Error('There is no Chromium: `npx tsx scripts/install-chromium.ts` installs it.');
const service = spawn('node', ['dist/legwork.js', 'serve', '--port', '0', '--log', 'silent'], {
  stdio: ['ignore', 'pipe', 'inherit'],
});
const [said] = (await once(service.stdout, 'data')) as [Buffer];
const address = /http:\/\/\S+/.exec(String(said))?.[0];
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
const page = await browser.newPage({ viewport: { width: 1000, height: 548 } });
await page.goto(`${address}${QUESTION}`);
await page.locator('main .verdict h1').waitFor();
await page.evaluate('document.fonts.ready');
await page.screenshot({ path: FILE });
await browser.close();
service.kill('SIGINT');
console.log(FILE);

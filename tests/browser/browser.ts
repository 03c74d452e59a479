import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { findChromium } from '../../scripts/chromium.ts';

/** How patient a step in the browser is: a loaded machine is slow, and not wrong. */
const PATIENCE = 120_000;

/** Starts the browser; what needs it fails with what to do where there is none. */
export async function launch(more: readonly string[] = []): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === null)
    throw new Error(
      'There is no Chromium: `npx tsx scripts/install-chromium.ts` installs it, or name one in LEGWORK_CHROMIUM.',
    );
  return chromium.launch({
    executablePath,
    timeout: PATIENCE,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--disable-dev-shm-usage',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      ...more,
    ],
  });
}

/** A page of the counter, and what went wrong on it: errors on its console, and what it asked of anybody else. */
export interface Counter {
  readonly page: Page;
  readonly wrong: readonly string[];
  readonly close: () => Promise<void>;
}

export async function openCounter(browser: Browser, url: string, width: number, path = '/'): Promise<Counter> {
  const context: BrowserContext = await browser.newContext({ viewport: { width, height: 900 } });
  context.setDefaultTimeout(PATIENCE);
  const page = await context.newPage();
  const wrong: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') wrong.push(message.text());
  });
  page.on('pageerror', (error) => void wrong.push(error.message));
  page.on('request', (request) => {
    if (new URL(request.url()).origin !== url) wrong.push(`asked ${request.url()}`);
  });
  await page.goto(`${url}${path}`);
  return { page, wrong, close: () => context.close() };
}

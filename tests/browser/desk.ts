import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { serve, type Tried } from '../server/service.ts';
import { type Counter, launch, openCounter } from './browser.ts';

/** The service and a browser for the tests of a file. */
export interface Desk {
  /** Where the service answers. */
  readonly url: () => string;
  readonly open: (width: number, path?: string) => Promise<Counter>;
}

/** Starts the service, on the demo catalogue or on that of a folder, and a browser before the tests of a file; stops both behind them. */
export function openDesk(folder?: string): Desk {
  let tried: Tried;
  let browser: Browser;
  beforeAll(async () => {
    [tried, browser] = await Promise.all([serve({}, folder), launch()]);
  });
  afterAll(async () => {
    await browser.close();
    await tried.service.stop();
  });
  return {
    url: () => tried.service.url,
    open: (width, path) => openCounter(browser, tried.service.url, width, path),
  };
}

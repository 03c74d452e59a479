import { existsSync } from 'node:fs';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** The Chromium that the browser tests run: the one LEGWORK_CHROMIUM names, or where systems put it; null where there is none. */
export function findChromium(): string | null {
  const named = process.env.LEGWORK_CHROMIUM;
  return [...(named === undefined ? [] : [named]), ...PLACES].find((place) => existsSync(place)) ?? null;
}

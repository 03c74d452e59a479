import { existsSync } from 'node:fs';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** The Chromium that the browser tests run: the one LEGWORK_CHROMIUM names, or where systems put it; null where there is none. */
export function findChromium(
  named: string | undefined = process.env.LEGWORK_CHROMIUM,
  exists: (place: string) => boolean = existsSync,
): string | null {
  return [...(named === undefined ? [] : [named]), ...PLACES].find(exists) ?? null;
}

/** What installs Debian's Chromium, in order: for root as it is, for anybody else where sudo asks for no password. */
export function installCommands(user: number | undefined): readonly (readonly string[])[] {
  const lead = [...(user === 0 ? [] : ['sudo', '-n']), 'env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get'];
  return [
    [...lead, 'update', '-qq'],
    [...lead, 'install', '-y', '-qq', 'chromium'],
  ];
}

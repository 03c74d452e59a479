import { describe, expect, it } from 'vitest';
import { findChromium, installCommands } from '../../scripts/chromium.ts';

describe('Chromium', () => {
  it('the one that is named comes first; then where systems put it; else there is none', () => {
    const all = (): boolean => true;
    expect(findChromium('/opt/browser', all)).toBe('/opt/browser');
    expect(findChromium(undefined, all)).toBe('/usr/bin/chromium');
    expect(findChromium('/opt/browser', (place) => place === '/usr/bin/chromium')).toBe('/usr/bin/chromium');
    expect(findChromium('/opt/browser', () => false)).toBeNull();
  });

  it('root installs it as it is, anybody else only where no password is asked for; nothing asks a question', () => {
    const [update, install] = installCommands(0);
    expect(update).toEqual(['env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', 'update', '-qq']);
    expect(install).toEqual(['env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', 'install', '-y', '-qq', 'chromium']);
    for (const user of [1000, undefined])
      for (const command of installCommands(user)) expect(command.slice(0, 3)).toEqual(['sudo', '-n', 'env']);
  });
});

import { defineConfig } from 'vitest/config';

/** Everything that takes minutes: run by hand and before a release, not with every change. */
export default defineConfig({
  test: {
    include: ['tests/long/**/*.test.ts'],
    testTimeout: 6 * 3_600_000,
    hookTimeout: 120_000,
  },
});

import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/long/**'],
    testTimeout: 240_000,
    hookTimeout: 240_000,
  },
});

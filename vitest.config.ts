import { defineConfig } from 'vitest/config';

/** Two projects: `unit` in Node, `e2e` in a real browser one file after the other. */
export default defineConfig({
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/e2e/**', 'tests/bench/**'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'e2e',
          include: ['tests/e2e/**/*.e2e.ts'],
          fileParallelism: false,
          // A browser beside other work can miss a moment; a fault stays a fault at the third look.
          retry: 2,
          expect: { poll: { timeout: 10_000, interval: 50 } },
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
    ],
  },
});

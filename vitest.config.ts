import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { aheadOf } from './tests/e2e/support/hour.ts';

// The browser tests run at any hour: REELWARD_AT=23:50 puts the clock of tests, servers and pages there, TZ the zone.
const at = process.env['REELWARD_AT'];
if (at) process.env['REELWARD_AHEAD_MS'] ??= String(aheadOf(at, new Date()));

// By itself vitest leaves one core free, which on a machine of two is half of it.
const inNode = Math.max(2, availableParallelism() - 1);

// A browser with its page and its server keeps one core busy; more than four need more memory than many computers have.
const inBrowser = Math.min(4, Math.max(2, availableParallelism()));

/**
 * Five projects: `core` and `unit` in Node; `e2e` in a real browser, a file a core, each with a server and a browser of its own; `after` for
 * what can only be said once those have all been run; `pictures` takes the README's, where it is asked to.
 */
export default defineConfig({
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/shared/**/*.test.ts'],
          // What the pure core remembers between two calls goes by what it was computed from, so that no file's answers hang on the files before it:
          // modules are read once by a worker, not by each file anew.
          isolate: false,
          sequence: { groupOrder: 0 },
          maxWorkers: inNode,
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/shared/**', 'tests/e2e/**', 'tests/bench/**'],
          setupFiles: ['tests/src/app/every-word.ts'],
          globalSetup: ['tests/cli/built-folder.ts'],
          maxWorkers: inNode,
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'e2e',
          include: ['tests/e2e/**/*.e2e.ts'],
          setupFiles: ['tests/e2e/support/ahead.mjs'],
          globalSetup: ['tests/e2e/support/look-script.ts'],
          sequence: { groupOrder: 1 },
          maxWorkers: inBrowser,
          maxConcurrency: 2,
          expect: { poll: { timeout: 30_000, interval: 50 } },
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'pictures',
          include: ['tests/e2e/**/*.pictures.ts'],
          setupFiles: ['tests/e2e/support/ahead.mjs'],
          globalSetup: ['tests/e2e/support/look-script.ts'],
          sequence: { groupOrder: 3 },
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
      {
        extends: true,
        test: { name: 'after', include: ['tests/e2e/**/*.after.ts'], sequence: { groupOrder: 2 } },
      },
    ],
  },
});

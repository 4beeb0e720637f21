// Runs the browser tests at the hours and in the zones where a day, a shift or a date changes: `npm run e2e:hours`, after
// `npm run build`. Arguments are passed on (`npm run e2e:hours -- tests/e2e/run.e2e.ts`). Goes on after a failure; says which failed.

import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const vitest = path.join(root, 'node_modules/.bin/vitest');

/** Just after midnight, before and at a change of shift, just before midnight; far east of Greenwich, and half an hour off the hour. */
const moments = [
  { at: '00:30', zone: 'UTC' },
  { at: '05:55', zone: 'Asia/Tokyo' },
  { at: '13:58', zone: 'America/St_Johns' },
  { at: '23:50', zone: 'UTC' },
  { at: '23:50', zone: 'Asia/Tokyo' },
  { at: '00:30', zone: 'America/St_Johns' },
];

const failed = [];
for (const { at, zone } of moments) {
  console.log(`--- ${at} ${zone}`);
  const { status } = spawnSync(
    vitest,
    ['run', '--project', 'e2e', '--project', 'after', ...process.argv.slice(2)],
    {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, REELWARD_AT: at, TZ: zone },
    },
  );
  if (status !== 0) failed.push(`${at} ${zone}`);
}
console.log(
  failed.length === 0 ? `green at all ${moments.length} moments` : `FAILED at ${failed.join(', ')}`,
);
process.exitCode = failed.length === 0 ? 0 : 1;

// The alert rules watch many plants at once: each names the one it is about, or the server where nothing tells a plant.

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

it('every alert says whose it is, what it is about and what to do', () => {
  const alerts = readFileSync('src/server/deploy/alerts.yml', 'utf8').split('- alert: ').slice(1);
  expect(alerts).not.toEqual([]);
  const says = /^ +summary: "\{\{ \$labels\.(plant|instance) \}\}[^"]+\."$/m;
  expect(alerts.filter((alert) => !says.test(alert))).toEqual([]);
});

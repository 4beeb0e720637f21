// The alert rules watch many plants at once: each names the one it is about, or the server where nothing tells a plant.

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

it('every alert says whose it is', () => {
  const rules = readFileSync('src/server/deploy/alerts.yml', 'utf8');
  const summaries = [...rules.matchAll(/summary: "([^"]+)"/g)].map(([, text = '']) => text);
  expect(summaries.length).toBeGreaterThan(8);
  expect(summaries.filter((text) => !/^\{\{ \$labels\.(plant|instance) \}\}/.test(text))).toEqual([]);
});

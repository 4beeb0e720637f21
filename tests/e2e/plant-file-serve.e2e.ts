// A second plant begun in the terminal, from the file of the first: the first tablet that joins finds its lines and goes on with the first steps.

import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { plantFileText } from '../../shared/floor/plant-file.ts';
import { emptyState } from '../../shared/floor/state.ts';
import { startBrowser } from './support/browser.ts';
import { expectWhole, readLog } from './support/floor.ts';
import { joinPlant } from './support/joined.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';

let browser: Browser;
let server: PlantServer;
beforeAll(async () => {
  [browser, server] = await Promise.all([startBrowser(), startServe()]);
});
afterAll(async () => {
  await Promise.all([browser.close(), server.stop()]);
});

it('is there for the first tablet that joins', async () => {
  const state = emptyState();
  const banks = [{ bank: 'F', name: 'F', positions: 25, first: 'M1-F-001' }];
  const machines = [{ machine: 'M1', name: 'M1', banks }];
  state.lines.set('L1', { line: 'L1', name: 'Line 1', zone: 'Europe/Berlin', machines });
  const file = path.join(server.folder, 'first.json');
  await writeFile(file, plantFileText(state));
  await server.kill();
  expect(await server.act('begin', file)).toContain('lines 1, slots 25');
  await server.start();
  const page = await joinPlant(browser, server.url, { code: await server.newCode(), name: 'Line tablet' });
  await page.goto(`${server.url}#/plant/begin`);
  await expect.poll(() => page.getByTestId('step-line').getAttribute('data-state')).toBe('done');
  await expect.poll(() => page.getByTestId('step-engineer').getAttribute('data-state')).toBe('open');
  await expect.poll(() => page.getByTestId('step-plant').getAttribute('data-state')).toBe('next');
  await look(page, { where: 'first steps of a plant begun from a file' });
  const log = await readLog(page, 'reelward-log');
  expect(log.find(({ kind }) => kind === 'line.defined')?.payload).toMatchObject({ line: 'L1' });
  expectWhole(log);
  await page.context().close();
});

// A server whose old months lie in files: it does not start without knowing where, serves all but them while a file is away and says which, and a
// new tablet gets the whole log through it. On both stores.

import { renameSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { entryId } from '../../../shared/log/entry.ts';
import { tracedSchema } from '../../../shared/wire/messages-trace.ts';
import { makeTicket } from '../../../src/server/codes.ts';
import { type RunningServer, startServer } from '../../../src/server/main.ts';
import { newOldPlant, type OldPlant, shift } from '../../cli/old-months.ts';
import { startPostgres, type TestPostgres } from '../../contract/databases.ts';
import { enrolAt, newTablet, settingsFor, until } from './tablets.ts';

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

async function exported(server: RunningServer) {
  const asked = { format: 'json', from: null, to: null, line: null } as const;
  const { path } = await makeTicket(server.store, asked, server.context.nowMs());
  const answer = await fetch(server.url + path);
  return { status: answer.status, text: await answer.text() };
}

async function letLeave(plant: OldPlant) {
  expect((await plant.act('month', plant.files, '--month', '2026-03')).code).toBe(0);
  expect((await plant.act('month-out', '2026-03')).code).toBe(0);
}

describe.each(['sqlite', 'postgres'] as const)('a server on %s whose old months lie in files', (kind) => {
  it('starts where it knows the folder, says what is away, and hands everything on', async () => {
    const plant = await newOldPlant(kind, postgres);
    const settings = (months: string | null) =>
      settingsFor(plant.data, { database: plant.database, months, plant: null });
    await letLeave(plant);
    await expect(startServer(settings(null))).rejects.toThrow(
      'the texts of 2026-03 left the store, and lie in reelward-2026-03.ndjson.gz: name the folder of that file with --months',
    );
    const away = join(plant.files, 'away');
    renameSync(plant.file('2026-03'), away);
    const server = await startServer(settings(plant.files));
    const tablet = await newTablet('new', server.url);
    try {
      expect(server.context.health.troubles()).toEqual(['month-away']);
      const refused = await exported(server);
      expect(refused).toEqual({
        status: 500,
        text: expect.stringContaining('the texts of 2026-03 left the store, and cannot be read now'),
      });
      // Where the server looks is nobody's business but its own.
      expect(refused.text).not.toContain(plant.files);
      // What is new is taken all the same.
      await enrolAt(server, tablet);
      tablet.log.write(3);
      tablet.start();
      await until('its own entries to be held', () => tablet.log.memory.acked['new/e1'] === 3);
      await expect(server.store.page(0, 300)).rejects.toThrow('left the store');
      // An index that was never made cannot be made now: that is said, and not that material was nowhere.
      await expect(server.context.trace.caughtUp()).rejects.toThrow('the texts of 2026-03');
      await expect(
        tablet.caller.call('/api/trace', tracedSchema, { json: { lot: 'any' } }),
      ).resolves.toMatchObject({
        ok: false,
        error: { code: 'server-fault' },
      });
      const busy = await plant.act('month-out', '2026-04');
      expect([busy.code, busy.err]).toEqual([2, expect.stringContaining('a server runs on this')]);

      renameSync(away, plant.file('2026-03'));
      tablet.now();
      await until('the whole log', () => tablet.log.entries().length === shift.length + 3);
      const held = new Map(tablet.log.entries().map((entry) => [entryId(entry), entry.hash]));
      for (const entry of shift) expect(held.get(entryId(entry))).toBe(entry.hash);
      await server.context.trace.caughtUp();
      await server.context.health.lookForMonths();
      expect(server.context.health.troubles()).toEqual([]);
      const whole = await exported(server);
      expect(whole.status).toBe(200);
      expect(whole.text.split('\n').filter((line) => line.includes('"prev"')).length).toBeGreaterThanOrEqual(
        shift.length,
      );
    } finally {
      await tablet.stop();
      await server.stop();
      plant.remove();
    }
  });
});

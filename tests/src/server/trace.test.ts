// The trace over the wire: any tablet of the plant may ask, nobody else, and bad questions get a clear no.

import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { simulateShift } from '../../../demo/simulate.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { tracePanel, tracePlaces } from '../../../shared/trace/ask.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { tracedSchema } from '../../../shared/wire/messages-trace.ts';
import { enrolAt, newTablet, startTestServer, type TestServer, type TestTablet } from './tablets.ts';

const shift = [...simulateShift({ seed: 8, hours: 2, startMs: Date.UTC(2026, 2, 2, 6) }).entries].sort(
  compareEntries,
);
const index = traceLog(shift);

let server: TestServer;
let tablet: TestTablet;
beforeAll(async () => {
  server = await startTestServer();
  tablet = await newTablet('asks', server.running.url);
  await enrolAt(server.running, tablet);
  await tablet.log.takeIn(shift);
  tablet.start();
  while (Object.values(tablet.log.memory.acked).reduce((sum, seq) => sum + seq, 0) < shift.length)
    await new Promise((resolve) => setTimeout(resolve, 20));
  await tablet.stop();
  await server.running.context.trace.caughtUp();
});
afterAll(() => server.stop());

const ask = (json: object) => tablet.caller.call('/api/trace', tracedSchema, { json });

describe('`POST /api/trace`', () => {
  it('answers which panels carry a lot, and what is on a panel, as the whole log says', async () => {
    const lot = index.stretches.find((stretch) => stretch.lot !== null)?.lot ?? '';
    const answer = await ask({ lot });
    expect(answer).toEqual({
      ok: true,
      value: { places: tracePlaces(index, { lot }), panel: null, more: false, behind: 0 },
    });
    const [serial = ''] = index.serials.keys();
    const panel = await ask({ panel: serial });
    expect(panel.ok && panel.value.panel).toEqual(tracePanel(index, serial));
    expect(panel.ok && panel.value.panel?.slots.length).toBeGreaterThan(10);
  });

  it('finds a lot in any letter case, and what a slot and a person had', async () => {
    const [stretch] = index.stretches.filter(({ lot, who }) => lot !== null && who !== null);
    const lot = stretch?.lot?.toLowerCase() ?? '';
    expect(lot).not.toBe(stretch?.lot);
    const places = tracePlaces(index, { lot });
    expect(places.length).toBeGreaterThan(0);
    expect(await ask({ lot })).toMatchObject({ ok: true, value: { places } });
    const question = { slot: stretch?.slot.toLowerCase() ?? '', who: stretch?.who ?? '' };
    const ofPerson = tracePlaces(index, question);
    expect(ofPerson.length).toBeGreaterThan(0);
    expect(await ask(question)).toMatchObject({ ok: true, value: { places: ofPerson } });
  });

  it('finds nothing where there is nothing, whatever the text', async () => {
    for (const lot of ["'; drop table entries;--", '<b>x</b>', '%', '\u0000', 'é'.repeat(200)]) {
      expect(await ask({ lot })).toMatchObject({ ok: true, value: { places: [] } });
    }
    expect(await ask({ panel: '999999' })).toMatchObject({ ok: true, value: { panel: null } });
    expect((await server.running.store.head()).pos).toBe(shift.length);
  });

  it.each([
    ['no question', {}],
    ['an empty text', { lot: '' }],
    ['a text too long', { lot: 'x'.repeat(201) }],
    ['a number', { lot: 7 }],
    ['a moment without a zone', { lot: 'a', from: '2026-03-02T06:00:00' }],
    ['a panel and a lot', { panel: 'P-1', lot: 'L-1' }],
    ['a list', []],
  ])('refuses %s', async (_, json) => {
    expect(await ask(json)).toMatchObject({ ok: false, error: { code: 'bad-body' } });
  });

  it('answers no tablet that was not let in', async () => {
    const stranger = await newTablet('stranger', server.running.url);
    expect(await stranger.caller.call('/api/trace', tracedSchema, { json: { lot: 'a' } })).toMatchObject({
      ok: false,
      error: { code: 'tablet-unknown' },
    });
    const plain = await fetch(`${server.running.url}/api/trace`, { method: 'POST' });
    expect(plain.status).toBeGreaterThanOrEqual(400);
    expect(plain.status).toBeLessThan(500);
  });
});

// One tablet with developer's tools against the plant: what it writes into the log's text fields and clocks harms nobody else's
// entries, neither at the server nor on a tablet that pulls them.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Entry, isBounded } from '../../../shared/log/entry.ts';
import { entrySchema } from '../../../shared/log/entry-schema.ts';
import { canonicalText, draftOf, sealEntry } from '../../../shared/log/seal.ts';
import { pushedSchema } from '../../../shared/wire/messages.ts';
import { entryText } from '../../../shared/wire/signing.ts';
import { isPlainEntry } from '../../../src/server/envelope.ts';
import { openStore } from '../../../src/server/stores/open.ts';
import { entryJson } from '../../../src/server/stores/queries.ts';
import type { Checked } from '../../../src/server/stores/store.ts';
import { makeChain, startMs, toChecked } from '../../contract/entries.ts';
import { enrolAt, newClock, newTablet, type TestTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();

const breaksOut = '"';
const takesOver = `x","payload":{"text":"other"},"sig":"y`;
const pageOf = (entries: readonly unknown[]) => ({ json: { sentMs: Date.now(), entries } });
const onServer = async () =>
  (await plant.server.running.store.page(0, 1_000)).map((row) => JSON.parse(row.text) as Entry);

describe('a signature that is none', () => {
  const [entry] = makeChain({ tablet: 't1', count: 1 });

  it.each([
    breaksOut,
    takesOver,
    '\u0000',
    '',
    'A'.repeat(85),
    'A'.repeat(87),
    `${'A'.repeat(85)}B`,
    'A'.repeat(128),
  ])('as %j is accepted by no reader', (sig) => {
    expect(entrySchema.safeParse({ ...entry, sig }).success).toBe(false);
    expect(isPlainEntry({ ...entry, sig })).toBe(false);
  });

  it('in the middle of a run is refused, and the other tablets go on', async () => {
    const [evil, honest] = [await plant.join('evil'), await plant.join('honest')];
    const chain = makeChain({ tablet: 'evil', count: 3 });
    const signed = await Promise.all(
      chain.map(async (one) => ({ ...one, sig: await evil.key.sign(entryText(one.hash)) })),
    );
    for (const sig of [breaksOut, takesOver]) {
      const page = signed.map((one, at) => (at === 1 ? { ...one, sig } : one));
      const pushed = await evil.caller.call('/api/push', pushedSchema, pageOf(page));
      expect(pushed).toMatchObject({ ok: false, error: { code: 'bad-body' } });
    }
    honest.log.write(2);
    honest.start();
    await until("the honest tablet's entries", async () => (await onServer()).length === 2);
  });

  it('that an older version took is quarantined at the start, and everybody reads the entry as it was sealed', async () => {
    const honest = await plant.join('honest');
    const chain = makeChain({ tablet: 'old', count: 3, kind: 'person.added' });
    const forged = chain.map(
      (one, at): Checked =>
        toChecked({ ...one, sig: at === 2 ? null : ([breaksOut, takesOver][at] ?? null) }),
    );
    await plant.server.running.store.append([{ sender: 'old', entries: forged }], startMs);
    await plant.server.restart();
    const rows = await onServer();
    expect(rows.map((row) => row.payload)).toEqual(chain.map((one) => one.payload));
    expect(rows.map((row) => row.sig)).toEqual([null, null, null]);
    const quarantined = await plant.server.running.store.quarantined();
    expect(quarantined.map(({ id }) => id).sort()).toEqual(['old/e1/1', 'old/e1/2']);
    expect(quarantined.map(({ text }) => (JSON.parse(text) as Entry).sig).sort()).toEqual(
      [breaksOut, takesOver].sort(),
    );
    honest.start();
    await until('the log', () => honest.log.entries().length === 3);
    await plant.server.restart();
    expect(await plant.server.running.store.quarantined()).toHaveLength(2);
  });

  it('whatever it is, leaves a stored row that gives back the text that was sealed', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 130 }),
      fc.constantFrom(breaksOut, takesOver, '\u0000'),
    );
    fc.assert(
      fc.property(
        fc.option(text),
        fc.dictionary(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'grapheme' })),
        (sig, payload) => {
          const sealed = sealEntry({
            ...draftOf(entry as Entry),
            payload: JSON.parse(JSON.stringify(payload)),
          });
          const body = canonicalText(draftOf(sealed));
          const read = JSON.parse(entryJson({ body, hash: sealed.hash, sig })) as Entry;
          expect(canonicalText(draftOf(read))).toBe(body);
          expect([read.hash, read.sig]).toEqual([sealed.hash, sig]);
        },
      ),
    );
  });
});

describe('a clock that is out of all bounds', () => {
  const dated = (hlc: Entry['hlc'], tablet = 'evil') => {
    const [first] = makeChain({ tablet, count: 1 });
    return sealEntry({ ...draftOf(first as Entry), hlc });
  };
  const push = async (tablet: TestTablet, entry: Entry) =>
    tablet.caller.call(
      '/api/push',
      pushedSchema,
      pageOf([{ ...entry, sig: await tablet.key.sign(entry.hash) }]),
    );

  it.each([
    { ms: 2 ** 53 - 1, n: 2 ** 53 - 1 },
    { ms: startMs, n: 2 ** 31 },
    { ms: 2 ** 42, n: 0 },
  ])('as %j is accepted by no reader', (hlc) => {
    expect(isBounded(hlc)).toBe(false);
    expect(entrySchema.safeParse(dated(hlc)).success).toBe(false);
    expect(isPlainEntry(dated(hlc))).toBe(false);
  });

  it('or two hours ahead is quarantined under a fault of its own, and half an hour ahead is taken and told', async () => {
    const evil = await plant.join('evil');
    const far = await push(evil, dated({ ms: Date.now() + 2 * 3_600_000, n: 0 }));
    expect(far).toMatchObject({
      ok: true,
      value: { faults: [{ id: 'evil/e1/1', fault: 'clock-ahead' }], acks: [{ seq: 0 }] },
    });
    const near = await push(evil, dated({ ms: Date.now() + 1_800_000, n: 0 }));
    expect(near).toMatchObject({
      ok: true,
      value: { faults: [], ahead: [{ id: 'evil/e1/1' }], acks: [{ seq: 1 }] },
    });
  });

  it('that an older version took reaches nobody, and is listed', async () => {
    const honest = await plant.join('honest');
    const hlc = { ms: 2 ** 53 - 1, n: 2 ** 53 - 1 };
    const row = toChecked(dated(hlc), { aheadMs: hlc.ms - startMs });
    await plant.server.running.store.append([{ sender: 'evil', entries: [row] }], startMs);
    honest.log.write(1);
    honest.start();
    await until('the honest entry', async () => (await onServer()).length === 1);
    await until('a round', () => honest.status()?.phase === 'live');
    expect(honest.log.entries()).toHaveLength(1);
    expect((await plant.server.running.store.quarantined()).map(({ id, fault }) => [id, fault])).toEqual([
      ['evil/e1/1', 'clock-ahead'],
    ]);
  });
});

describe('a tablet whose clock is a day off', () => {
  it('is told of on the screens of the others', async () => {
    const clock = newClock();
    clock.shiftMs = 86_400_000;
    const off = await newTablet('off', plant.server.running.url, clock);
    plant.tablets.push(off);
    await enrolAt(plant.server.running, off);
    off.log.write(1);
    off.start();
    await until('its entry', async () => (await onServer()).length === 1);
    const lead = await plant.join('lead');
    lead.start();
    await until('the news', () => lead.status()?.clocksOff.length === 1);
    const [told] = lead.status()?.clocksOff ?? [];
    expect(told).toMatchObject({ tablet: 'off', name: 'Tablet off' });
    expect(Math.abs((told?.offMs ?? 0) - 86_400_000)).toBeLessThan(60_000);
  });
});

describe('entries that fail to be written', () => {
  it('beside others fail alone', async () => {
    const folder = plant.server.folder;
    const store = await openStore({ folder: `${folder}/other`, database: null, nowMs: () => startMs });
    const { createAppender } = await import('../../../src/server/appender.ts');
    const appender = createAppender(store, () => startMs);
    const [good, bad] = ['good', 'bad'].map((tablet) =>
      makeChain({ tablet, count: 1 }).map((one) => toChecked(one)),
    );
    // A value that no database takes, as PostgreSQL takes no U+0000.
    const unfit = (bad ?? []).map((one) => ({ ...one, kind: {} as string }));
    const answers = await Promise.allSettled([
      appender.append('good', good ?? []),
      appender.append('bad', unfit),
    ]);
    expect(answers.map((one) => one.status)).toEqual(['fulfilled', 'rejected']);
    expect((await store.page(0, 10)).map((row) => (JSON.parse(row.text) as Entry).tablet)).toEqual(['good']);
    await appender.drained();
    await store.close();
  });
});

describe('a tablet that pulls', () => {
  it('quarantines one bad entry, tells it, and takes the rest', async () => {
    const { fetch: reach } = globalThis;
    const [a, b] = [await plant.join('a'), await plant.join('b')];
    a.log.write(4);
    a.start();
    await until('four entries', async () => (await onServer()).length === 4);
    // A server, or what stands before it, that changes three of the four on the way.
    const twisted: typeof fetch = async (input, init) => {
      const response = await reach(input, init);
      if (!String(input).includes('/api/pull')) return response;
      const page = (await response.json()) as { entries: Entry[] };
      const [one, two, three, four] = page.entries;
      const entries = [
        one,
        { ...two, payload: { text: 'other' } },
        { ...three, sig: '"' },
        four,
        null,
        { v: 1 },
      ];
      return new Response(JSON.stringify({ ...page, entries }), { headers: response.headers });
    };
    Object.assign(b.world, { fetch: twisted });
    b.start();
    await until('the rest', () => b.log.entries().length === 2);
    expect(b.log.entries().map(({ seq }) => seq)).toEqual([1, 4]);
    expect(b.status()?.quarantinedHere).toBe(4);
    expect(b.status()?.reason).toBeNull();
  });
});

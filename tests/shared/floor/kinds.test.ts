// Payloads kind by kind: what is taken, what is refused, and that nothing is lost between writing and reading.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import {
  checkPayload,
  entryKinds,
  isEntryKind,
  type PayloadOf,
  readFloorEntry,
  schemaOf,
} from '../../../shared/floor/kinds.ts';
import type { JsonObject } from '../../../shared/log/entry.ts';
import { sealEntry } from '../../../shared/log/seal.ts';
import { payloadExamples } from './examples.ts';
import { brookSetup, counted, verified } from './story.ts';

const envelope = {
  tablet: 'T1',
  epoch: 'e',
  seq: 1,
  at: '2026-03-02T06:00:00Z',
  hlc: { ms: 1, n: 0 },
  who: null,
  v: 1 as const,
  prev: '0'.repeat(64),
};
const entryOf = (kind: string, payload: object) =>
  sealEntry({ ...envelope, kind, payload: JSON.parse(JSON.stringify(payload)) as JsonObject }); // parsed from an object

describe('readFloorEntry()', () => {
  test('takes an example of every kind through writing, sealing, JSON and reading, unchanged', () => {
    for (const kind of entryKinds) {
      const written = checkPayload(kind, payloadExamples[kind]);
      const read = readFloorEntry(JSON.parse(JSON.stringify(entryOf(kind, written))));
      expect(read, kind).toEqual(entryOf(kind, payloadExamples[kind]));
    }
  });

  test('answers null for a kind that it does not know', () => {
    for (const kind of ['reel.painted', 'toString', '__proto__']) {
      expect(isEntryKind(kind)).toBe(false);
      expect(readFloorEntry(entryOf(kind, {}))).toBeNull();
    }
  });

  test('answers null where a key is missing, unknown or of another type, for every kind and key', () => {
    const optional: readonly string[] = [
      'reel.verified.cut',
      'reel.packed.tray',
      'reel.unloaded.sd',
      'panels.counted.skipped',
      'person.added.pin',
      'person.added.badge',
    ];
    for (const kind of entryKinds) {
      const good = payloadExamples[kind] as Record<string, unknown>; // any payload is an object
      expect(readFloorEntry(entryOf(kind, { ...good, extra: 1 })), `${kind} with a key too many`).toBeNull();
      for (const key of Object.keys(good)) {
        const { [key]: _, ...without } = good;
        if (!optional.includes(`${kind}.${key}`))
          expect(readFloorEntry(entryOf(kind, without)), `${kind} without ${key}`).toBeNull();
        // Any JSON object may be a key.
        if (kind === 'tablet.opened' && key === 'key') continue;
        const other = entryOf(kind, { ...good, [key]: { wrong: [true] } });
        expect(readFloorEntry(other), `${kind} with another ${key}`).toBeNull();
      }
    }
  });

  test('still reads a setup of an old log whose slots carry a key that means nothing any more', () => {
    const [first, ...rest] = brookSetup.slots;
    const old = entryOf('setup.taken', { ...brookSetup, slots: [{ ...first, shares: 'G1' }, ...rest] });
    expect(readFloorEntry(old)).not.toBeNull();
  });

  test('never throws, whatever the payload holds', () => {
    fc.assert(
      fc.property(fc.constantFrom(...entryKinds), fc.object(), (kind, payload) => {
        const safe = JSON.parse(JSON.stringify(payload));
        const read = readFloorEntry({ ...envelope, kind, payload: safe, hash: 'f'.repeat(64), sig: null });
        expect(read === null || z.safeParse(schemaOf(kind), safe).success).toBe(true);
      }),
    );
  });
});

describe('checkPayload()', () => {
  test('throws with kind and path where a payload does not fit', () => {
    expect(() => checkPayload('panels.counted', { ...counted('r', 1), panels: -1 })).toThrow(
      /Cannot write panels.counted as panels must fit/,
    );
    const bad = {
      ...brookSetup,
      slots: [{ ...brookSetup.slots[0], perPanel: -2 }],
    } as PayloadOf<'setup.taken'>; // a wrong number on purpose
    expect(() => checkPayload('setup.taken', bad)).toThrow(/slots.0.perPanel/);
  });

  test('refuses numbers that are not finite', () => {
    for (const quantity of [Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => checkPayload('reel.verified', verified('M1-F-001', 'R-100', { quantity }))).toThrow(
        TypeError,
      );
  });
});

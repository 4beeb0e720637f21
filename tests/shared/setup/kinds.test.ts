// Payloads kind by kind: what is taken, what is refused, and that nothing is lost between writing and reading.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { JsonObject } from '../../../shared/log/entry.ts';
import { sealEntry } from '../../../shared/log/seal.ts';
import {
  checkPayload,
  type EntryKind,
  entryKinds,
  isEntryKind,
  type PayloadOf,
  payloadSchemas,
  readFloorEntry,
} from '../../../shared/setup/kinds.ts';
import { brookSetup, counted, started, unloaded, verified } from './story.ts';

/** One payload of every kind: a new kind without an example is a compile error. */
const examples: { readonly [K in EntryKind]: PayloadOf<K> } = {
  'tablet.opened': { name: 'front', app: '0.1.0', key: { kty: 'EC' }, previous: { epoch: 'e', seq: 4 } },
  'tablet.named': { name: 'rear' },
  'person.added': {
    person: 'ana',
    name: 'Ana',
    role: 'lead',
    badge: 'B-1',
    pin: { salt: 's', hash: 'h', rounds: 1 },
  },
  'person.removed': { person: 'ana' },
  'person.signed-in': { person: 'ana', how: 'badge-and-pin', checked: 'tablet' },
  'person.signed-out': { person: 'ana' },
  'line.defined': { line: 'L1', name: 'one', zone: 'Europe/London', machines: [] },
  'line.ruled': {
    ...{
      line: 'L1',
      leadSeconds: 600,
      walkSeconds: 60,
      spliceSeconds: 60,
      hubToPickMm: 700,
      intakeToPickMm: null,
    },
    ...{ loss: 0.01, stops: [], feedersKnown: true },
    shifts: [{ days: [1, 2, 3, 4, 5], from: '06:00', to: '14:00' }],
    breaks: [{ days: [1], from: '09:00', to: '09:15' }],
    comparison: { ignoreCase: true, ignoreSpaces: false, ignoreDashes: false, packingSuffixes: ['-TR'] },
  },
  'feeder.known': { feeder: 'F-7', tapeWidthMm: 8, pitchesMm: [2, 4], positions: 1 },
  'feeder.withdrawn': { feeder: 'F-7', reason: 'worn' },
  'supplier.approved': { supplierPart: 'SUP-1', part: 'R-100' },
  'supplier.withdrawn': { supplierPart: 'SUP-1', part: 'R-100' },
  'setup.taken': brookSetup,
  'setup.chosen': { line: 'L1', setup: 's' },
  'run.started': started('run-1'),
  'run.stopped': { run: 'run-1', line: 'L1', reason: 'jam', note: '' },
  'run.resumed': { run: 'run-1', line: 'L1' },
  'run.ended': { run: 'run-1', line: 'L1', panels: 5, note: '' },
  'panels.counted': counted('run-1', -1),
  'reel.verified': verified('M1-F-001', 'R-100', {
    reasons: [{ code: 'by-alternate', wanted: 'a', found: null }],
    cut: 3,
  }),
  'hold.cleared': { of: 'T1/e/1', line: 'L1', slot: null, reason: 'looked at', by: 'ana', checked: 'server' },
  'hold.declined': { of: 'T1/e/1', line: 'L1', slot: 'M1-F-001', by: null, reason: 'no' },
  'reel.unloaded': unloaded('M1-F-001', { quantity: 12.5, sd: 2, basis: 'weighed' }),
  'reel.counted': {
    ...{
      line: null,
      slot: null,
      reel: 'K1',
      part: null,
      lot: null,
      quantity: 10,
      sd: 1.5,
      basis: 'weighed',
      panels: 0,
    },
  },
  'reel.calibrated': {
    ...{ part: 'R-100', parts: 10_000, outerMm: 137, hubMm: 60, massG: null, emptyG: 0 },
  },
  'material.blocked': { block: 'b', reel: null, lot: 'L-7', part: null, reason: 'quality' },
  'material.released': { block: 'b', reason: 'looked at', by: 'ana' },
  'sweep.started': { line: 'L1', sweep: 's' },
  'sweep.ended': { line: 'L1', sweep: 's', seen: 3, missing: ['M1-F-001'] },
  'warning.acknowledged': { line: 'L1', slot: 'M1-F-001', need: 'splice', level: 'due' },
  'warning.raised': {
    line: 'L1',
    slot: 'M1-F-001',
    need: 'splice',
    level: 'soon',
    due: '2026-03-02T06:00:00Z',
  },
  'entry.corrected': { of: 'T1/e/1', line: null, slot: null, reason: 'slip' },
  'conflict.settled': { conflict: 'c', line: 'L1', slot: null, keep: null, reason: 'seen', by: 'ana' },
  'log.exported': { format: 'csv', filter: '{}', rows: 10 },
};

const envelope = {
  ...{ tablet: 'T1', epoch: 'e', seq: 1, at: '2026-03-02T06:00:00Z', hlc: { ms: 1, n: 0 }, who: null },
  v: 1 as const,
  prev: '0'.repeat(64),
};
const entryOf = (kind: string, payload: object) =>
  sealEntry({ ...envelope, kind, payload: JSON.parse(JSON.stringify(payload)) as JsonObject }); // parsed from an object

describe('readFloorEntry()', () => {
  test('takes an example of every kind through writing, sealing, JSON and reading, unchanged', () => {
    for (const kind of entryKinds) {
      const written = checkPayload(kind, examples[kind]);
      const read = readFloorEntry(JSON.parse(JSON.stringify(entryOf(kind, written))));
      expect(read, kind).toEqual(entryOf(kind, examples[kind]));
    }
  });

  test('answers null for a kind that it does not know', () => {
    for (const kind of ['reel.painted', 'toString', '__proto__']) {
      expect(isEntryKind(kind)).toBe(false);
      expect(readFloorEntry(entryOf(kind, {}))).toBeNull();
    }
  });

  test('answers null where a key is missing, unknown or of another type, for every kind and key', () => {
    const optional: readonly string[] = ['reel.verified.cut', 'reel.unloaded.sd'];
    for (const kind of entryKinds) {
      const good = examples[kind] as Record<string, unknown>; // any payload is an object
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

  test('never throws, whatever the payload holds', () => {
    fc.assert(
      fc.property(fc.constantFrom(...entryKinds), fc.object(), (kind, payload) => {
        const safe = JSON.parse(JSON.stringify(payload));
        const read = readFloorEntry({ ...envelope, kind, payload: safe, hash: 'f'.repeat(64), sig: null });
        expect(read === null || payloadSchemas[kind].safeParse(safe).success).toBe(true);
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

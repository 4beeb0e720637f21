// What one message carries: envelopes alone and in arrays, packed and plain, of every version; and everything that is none.

import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { readEnvelopes } from '../../../../src/link/ipc2591/envelope.ts';
import { readSaid } from '../../../../src/link/ipc2591/messages.ts';
import * as said from './said.ts';

const read = (value: unknown, pack = false) => {
  const bytes = Buffer.from(JSON.stringify(value));
  return readEnvelopes(pack ? gzipSync(bytes) : bytes, pack);
};
const one = (value: unknown) => {
  const [first] = read(value).envelopes;
  if (!first) throw new Error('no envelope');
  return first;
};

describe('readEnvelopes()', () => {
  test('reads one and several, plain and packed, also where nothing says that it is packed', () => {
    const two = [said.heartbeat(), said.workCompleted('w1')];
    for (const pack of [false, true]) {
      expect(read(said.heartbeat(), pack).envelopes).toHaveLength(1);
      expect(read(two, pack).envelopes.map(({ name }) => name)).toEqual([
        'CFX.Heartbeat',
        'CFX.Production.WorkCompleted',
      ]);
    }
    expect(readEnvelopes(gzipSync(JSON.stringify(two)), false).envelopes).toHaveLength(2);
    const marked = Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(JSON.stringify(two))]);
    expect(readEnvelopes(marked, false).envelopes).toHaveLength(2);
  });

  test('reads versions 1.2 to 2.1 with fields it does not know, and a moment of seven digits', () => {
    for (const Version of ['1.2', '1.7', '2.0', '2.1'])
      expect(one(said.envelope('Heartbeat', {}, { Version, Future: [1] }))).toMatchObject({
        source: 'L1.Placer',
        atMs: said.START_MS,
      });
    const at = (TimeStamp: unknown) => one(said.envelope('Heartbeat', {}, { TimeStamp })).atMs;
    expect(at('2018-03-26T16:52:25.3769532-04:00')).toBe(Date.parse('2018-03-26T20:52:25.376Z'));
    for (const none of ['2018-03-26T16:52:25', '2018-02-31T25:00:00Z', 'now', 7, null])
      expect(at(none)).toBeNull();
  });

  test('the same message has the same key; another under one id, or without any, has its own', () => {
    const id = { UniqueID: '11111111-2222-4333-8444-555555555555' };
    const first = said.workCompleted('w1', 'Completed', id);
    const again = structuredClone(first);
    const other = said.workCompleted('w2', 'Completed', {
      ...id,
      TimeStamp: said.stampOf(said.START_MS + 20_000),
    });
    expect(one(again).key).toBe(one(first).key);
    expect(one(other).key).not.toBe(one(first).key);
    const none = { UniqueID: '00000000-0000-0000-0000-000000000000' };
    const [a, b] = [said.workCompleted('w1', 'Completed', none), said.workCompleted('w2', 'Completed', none)];
    expect(one(a).key).not.toBe(one(b).key);
    expect(one(a).key).toBe(one(structuredClone(a)).key);
  });

  test('tells what it cannot read, and reads the rest of an array', () => {
    const cases: readonly (readonly [Buffer, boolean, string])[] = [
      [Buffer.from('{"MessageName":'), false, 'not JSON'],
      [Buffer.from(JSON.stringify(said.heartbeat()), 'utf16le'), false, 'not JSON'],
      [Buffer.from([0xff, 0xfe, 0x00, 0x80]), false, 'not UTF-8'],
      [Buffer.alloc(0), false, 'not JSON'],
      [gzipSync('x').subarray(0, 12), true, 'gzip: cannot be unpacked'],
      [Buffer.from('plain'), true, 'gzip: cannot be unpacked'],
      [gzipSync(Buffer.alloc(50_000_000)), true, 'gzip: unpacks to more than 1 MB'],
      [Buffer.alloc(2_000_000, 32), false, 'more than 1 MB'],
      [Buffer.from('['.repeat(300_000)), false, 'not JSON'],
      [
        Buffer.from(JSON.stringify(Array(1001).fill(1))),
        false,
        'an array of 1001 envelopes, at most 1000 are read',
      ],
      [Buffer.from('7'), false, 'no envelope'],
      [Buffer.from('{}'), false, 'an envelope without MessageName'],
      [
        Buffer.from(JSON.stringify(said.envelope('Heartbeat', {}, { Version: '3.0' }))),
        false,
        'CFX.Heartbeat: version 3.0',
      ],
      [
        Buffer.from(JSON.stringify(said.envelope('Heartbeat', {}, { Source: '\u0000' }))),
        false,
        'CFX.Heartbeat: no Source',
      ],
      [
        Buffer.from(JSON.stringify(said.envelope('Heartbeat', {}, { MessageBody: [] }))),
        false,
        'CFX.Heartbeat: no MessageBody',
      ],
    ];
    for (const [bytes, isGzip, why] of cases)
      expect(readEnvelopes(bytes, isGzip)).toEqual({ envelopes: [], unread: [why] });
    const mixed = read([said.heartbeat(), null, said.workCompleted('w1')]);
    expect([mixed.envelopes.length, mixed.unread]).toEqual([2, ['no envelope']]);
  });
});

describe('readSaid()', () => {
  const of = (value: object) => readSaid(one(value));

  test('a beat with its span', () => {
    expect(of(said.heartbeat('00:05:00'))).toEqual({ is: 'beat', everyMs: 300_000 });
    expect(of(said.heartbeat('1.00:00:01.5000000'))).toEqual({ is: 'beat', everyMs: 86_401_500 });
    expect(of(said.heartbeat('often'))).toEqual({ is: 'beat', everyMs: null });
  });

  test('panels: completed and failed are, broken off and skipped are none; units are circuits', () => {
    const units = [said.unit(1, 'Pass'), said.unit(2, 'Skip'), said.unit(3, 'Skip')];
    expect(of(said.workStarted('w1', 'P-1', units))).toEqual({
      is: 'started',
      work: 'w1',
      code: 'P-1',
      skipped: [2, 3],
      lane: 1,
    });
    for (const result of ['Completed', 'Failed'])
      expect(of(said.workCompleted('w1', result))).toMatchObject({
        is: 'panel',
        by: 'work-completed',
        skipped: null,
      });
    for (const result of ['Aborted', 'Skipped'])
      expect(of(said.workCompleted('w1', result))).toEqual({ is: 'no-panel' });
    expect(of(said.workCompleted('w1', 'Perhaps'))).toEqual({ is: 'unread', why: 'Result Perhaps' });
    expect(of(said.unitsDeparted(null))).toMatchObject({
      is: 'panel',
      by: 'units-departed',
      code: null,
      skipped: null,
    });
  });

  test('states by the numbers of SEMI E58, as number, text and name', () => {
    const cases: readonly (readonly [unknown, number])[] = [
      [1000, 1000],
      [1100, 1100],
      [2000, 2000],
      [2200, 2200],
      [3000, 3000],
      [4400, 4400],
      [4500, 4500],
      [5400, 5400],
      [5500, 5500],
      [6000, 6000],
      [7123, 7123],
      ['2200', 2200],
      ['SBY_NoProduct', 2000],
      ['PRD', 1000],
    ];
    for (const [state, code] of cases) expect(of(said.stateChanged(state))).toEqual({ is: 'state', code });
    for (const none of ['constructor', 'odd', 1.5, null, {}, 1e12])
      expect(of(said.stateChanged(none))).toMatchObject({ is: 'unread' });
  });

  test('tapes and parts with their places', () => {
    const place = { names: ['SLOT22', 'ID-SLOT22'], reel: 'K2', quantity: 5000, feeder: 'F-22', grey: 10 };
    expect(of(said.splicePoint('K1', 'K2', 10))).toMatchObject({
      is: 'splice',
      from: { reel: 'K1', quantity: 0 },
      to: place,
    });
    expect(of(said.materialsEmpty('K1'))).toMatchObject({ is: 'empty', places: [{ reel: 'K1' }] });
    const use = { place: { reel: 'K1' }, used: 42, spoiled: 2 };
    expect(of(said.materialsConsumed('K1', 42, 2))).toMatchObject({
      is: 'used',
      by: 'consumed',
      uses: [use],
    });
    expect(of(said.materialsInstalled('K1', 42, 2))).toMatchObject({
      is: 'used',
      by: 'installed',
      uses: [use],
    });
    expect(of(said.materialsConsumed('K1', -1, 2))).toMatchObject({ is: 'unread' });
    expect(of(said.envelope('Materials.Storage.SplicePointDetected', {}))).toMatchObject({ is: 'unread' });
    expect(of(said.envelope('__proto__', {}))).toEqual({ is: 'unused' });
  });
});

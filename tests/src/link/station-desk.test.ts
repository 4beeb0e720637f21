// What a link makes of a device's messages: what goes into its log, when, and what is told of devices that misbehave.

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openHeld } from '../../../src/link/held.ts';
import { SPARED_MOST } from '../../../src/link/log-budget.ts';
import { type CountMessage, openStationDesk, type StationDesk } from '../../../src/link/station-desk.ts';
import { newFolder } from '../../contract/databases.ts';

const START_MS = Date.UTC(2026, 2, 2, 6);
let folder: ReturnType<typeof newFolder>;
let held: ReturnType<typeof openHeld>;
let desk: StationDesk;
let entries: [string, Record<string, unknown>][] = [];
let second = 0;

const now = () => ({ ms: second * 1000, wallMs: START_MS + second * 1000 });

function open(): void {
  held = openHeld(folder.path, false);
  desk = openStationDesk(
    { station: 'exit', line: 'L1' },
    {
      held,
      start: now(),
      write: async (kind, payload) => void entries.push([kind, payload as Record<string, unknown>]),
    },
  );
}

beforeEach(() => {
  folder = newFolder();
  [entries, second] = [[], 0];
  open();
});
afterEach(async () => {
  await held.close();
  folder.remove();
});

function say(boot: string, total: number, more: Partial<CountMessage> = {}) {
  const none = { atMs: null, serial: null, skipped: null, state: null };
  return desk.take({ boot, total, ...none, ...more }, now());
}

/** Lets time pass second by second. */
async function pass(seconds: number): Promise<void> {
  for (let at = 0; at < seconds; at += 1) {
    second += 1;
    await desk.tick(now());
  }
}

const of = (kind: string) => entries.flatMap(([each, payload]) => (each === kind ? [payload] : []));
const totals = () => of('station.counted').map(({ boot, total }) => `${boot}:${total}`);

describe('a station’s desk', () => {
  test('logs each total at once, those of one moment together, and a code whatever it costs', async () => {
    await say('a', 5);
    for (const total of [6, 7]) {
      await pass(5);
      await say('a', total);
    }
    expect(totals()).toEqual(['a:5', 'a:6', 'a:7']);
    // What a relay had kept comes at one time.
    for (const total of [8, 9, 10]) await say('a', total);
    await pass(1);
    expect(totals()).toEqual(['a:5', 'a:6', 'a:7', 'a:10']);
    await say('a', 11, { serial: 'SN-11' });
    await say('a', 11, { serial: 'SN-11' });
    expect(totals()).toEqual(['a:5', 'a:6', 'a:7', 'a:10', 'a:11']);
    expect(of('station.counted').at(-1)).toMatchObject({ serial: 'SN-11' });
  });

  test('with its budget spent logs one total every twenty-two seconds, codes at once, also after a start', async () => {
    held.keepSpared('exit', 1);
    await held.close();
    open();
    await say('a', 5);
    for (const total of [6, 7, 8]) {
      await pass(5);
      await say('a', total);
    }
    expect(totals()).toEqual(['a:5']);
    await pass(6);
    expect(totals()).toEqual(['a:5']);
    await pass(1);
    expect(totals()).toEqual(['a:5', 'a:8']);
    await say('a', 9, { serial: 'SN-9' });
    expect(totals()).toEqual(['a:5', 'a:8', 'a:9']);
    // What was left is known to the next start.
    await desk.settle();
    await held.close();
    open();
    expect(held.spared('exit')).toBe(0);
    await say('a', 10);
    await pass(2);
    await say('a', 11);
    await pass(19);
    expect(totals().slice(3)).toEqual(['a:10']);
    await pass(1);
    expect(totals().slice(3)).toEqual(['a:10', 'a:11']);
  });

  test('keeps what is left of its budget every hour, as a power cut ends no link in order', async () => {
    await say('a', 0);
    for (let total = 1; total <= 3_600; total += 1) {
      await pass(1);
      await say('a', total);
    }
    await pass(1);
    const spared = held.spared('exit') ?? Number.NaN;
    expect(SPARED_MOST - spared).toBeGreaterThan(3_600 - 3_600 / 22 - 5);
    expect(SPARED_MOST - spared).toBeLessThan(3_600 - 3_600 / 22 + 5);
  });

  test('keeps it with the first total after a start and every few hundred, so that power cuts give none back', async () => {
    for (let start = 1; start <= 5; start += 1) {
      second += 1;
      await say('a', start);
      await held.close();
      open();
    }
    expect(SPARED_MOST - (held.spared('exit') ?? Number.NaN)).toBe(5);
    for (let total = 6; total <= 406; total += 1) {
      second += 1;
      await say('a', total);
    }
    const used = SPARED_MOST - (held.spared('exit') ?? Number.NaN);
    // As many came in by time as fit into it, less than 201 are not counted yet.
    expect(used).toBeGreaterThan(406 - 200 - 1 - 406 / 22);
    expect(used).toBeLessThanOrEqual(406);
  });

  test('answers the highest total held of the boot, in any order', async () => {
    expect(await say('a', 5)).toEqual({ boot: 'a', total: 5 });
    expect(await say('a', 3)).toEqual({ boot: 'a', total: 5 });
    expect(await say('b', 1)).toEqual({ boot: 'b', total: 1 });
    expect(await say('a', 6)).toEqual({ boot: 'a', total: 6 });
  });

  test('a code that comes late is logged with its own total, behind the newest', async () => {
    await say('a', 5);
    await pass(1);
    await say('a', 7, { serial: 'SN-7' });
    await say('a', 6, { serial: 'SN-6' });
    expect(of('station.counted').map(({ total, serial }) => [total, serial])).toEqual([
      [5, null],
      [7, 'SN-7'],
      [6, 'SN-6'],
    ]);
    await say('a', 8, { serial: 'SN-6' });
    expect(of('station.noticed')).toMatchObject([{ what: 'code-twice', said: 'SN-6: 6, 8' }]);
  });

  test('tells a silence after three missed beats, with all that is held before it, and the return', async () => {
    await say('a', 5);
    await pass(3);
    await say('a', 6);
    await pass(32);
    expect(of('station.silent')).toEqual([]);
    await pass(1);
    expect(totals()).toEqual(['a:5', 'a:6']);
    expect(of('station.silent')).toEqual([
      { station: 'exit', line: 'L1', since: new Date(START_MS + 3000).toISOString(), told: 'link' },
    ]);
    await pass(600);
    await say('a', 6);
    expect(totals()).toEqual(['a:5', 'a:6', 'a:6']);
    await pass(40);
    expect(of('station.silent')).toHaveLength(2);
  });

  test('beats into the log every two minutes while the device beats and nothing rises', async () => {
    await say('a', 5);
    for (let at = 0; at < 25; at += 1) {
      await pass(10);
      await say('a', 5);
    }
    expect(totals()).toEqual(['a:5', 'a:5', 'a:5']);
  });

  test('goes on from its disk after a kill: what was held is logged, and nothing is told twice', async () => {
    await say('a', 5);
    await say('a', 8, { atMs: 0 });
    await held.close();
    open();
    await desk.settle();
    expect(totals()).toEqual(['a:5', 'a:8']);
    expect(await say('a', 7, { atMs: 0 })).toEqual({ boot: 'a', total: 8 });
    expect(of('station.noticed')).toMatchObject([{ what: 'clock-off', times: 1 }]);
    await pass(3700);
    expect(of('station.noticed').map(({ times }) => times)).toEqual([1, 1]);
  });

  test('a clock that is years off is told once, counted, and dates nothing', async () => {
    for (let at = 0; at < 9; at += 1) await say('a', at, { atMs: 0 });
    expect(of('station.noticed')).toEqual([
      { station: 'exit', line: 'L1', what: 'clock-off', said: '1970-01-01T00:00:00.000Z', times: 1 },
    ]);
    await pass(3600);
    expect(of('station.noticed').map(({ times }) => times)).toEqual([1, 9]);
  });

  test('a total that falls and stays down counts on from there under a name of its own', async () => {
    await say('a', 100);
    await pass(20);
    for (const total of [1, 2, 3]) {
      await say('a', total);
      await pass(10);
    }
    await say('a', 4);
    await pass(20);
    expect(of('station.noticed')).toMatchObject([{ what: 'total-fell', said: '100 > 3' }]);
    // From 1, the least that was seen: three panels more for certain.
    expect(totals()).toEqual(['a:100', 'a~1:3']);
    expect(await say('a', 6)).toEqual({ boot: 'a', total: 6 });
    // Back where it was, it is the first count again.
    await pass(20);
    await say('a', 102);
    expect(totals().at(-1)).toBe('a:102');
  });

  test('late messages of a boot that is over are no second device, and a fall they are not either', async () => {
    await say('a', 100);
    await pass(5);
    await say('b', 1);
    for (const total of [98, 101, 99, 102]) {
      await pass(3);
      await say('a', total);
      await say('b', 2);
    }
    expect(of('station.doubled')).toEqual([]);
    expect(of('station.noticed')).toEqual([]);
  });

  test('two devices under one name: the second is taken out and told once', async () => {
    let [one, two] = [100, 50];
    await say('a', one);
    for (let at = 0; at < 20; at += 1) {
      await pass(10);
      one += 1;
      two += 1;
      await say('x', two);
      await say('a', one);
    }
    expect(of('station.doubled')).toEqual([{ station: 'exit', line: 'L1', boot: 'x', kept: 'a' }]);
    expect(of('station.noticed')).toMatchObject([{ what: 'two-devices' }]);
    const after = entries.slice(entries.findIndex(([kind]) => kind === 'station.doubled'));
    expect(after.some(([, { boot, total }]) => boot === 'x' && total !== undefined)).toBe(false);
    // Switched off and on again the one that counts has a new name, and counts.
    await pass(20);
    await say('c', 1);
    expect(totals().at(-1)).toBe('c:1');
  });

  test('tells the device’s state when it changes, every seventeen seconds at most', async () => {
    await pass(20);
    for (const state of [1100, 1100, 2201, 1100]) await say('a', 1, { state });
    expect(of('station.state').map(({ code }) => code)).toEqual([1100]);
    await say('a', 1, { state: 2201 });
    await pass(20);
    expect(of('station.state').map(({ code }) => code)).toEqual([1100, 2201]);
  });

  test('tells since when the state is so, those that a broker kept as far apart as they were, and anew after a silence', async () => {
    await pass(20);
    await say('a', 1, { state: 1100 });
    await pass(5);
    await say('a', 1, { state: 5200 });
    await pass(12);
    expect(of('station.state')).toEqual([
      { station: 'exit', line: 'L1', code: 1100 },
      { station: 'exit', line: 'L1', code: 5200, late: 12 },
    ]);
    const ago = (seconds: number) => (second - seconds) * 1000;
    await pass(9);
    second += 3600;
    await say('a', 2, { state: 1100, stateMs: ago(3000) });
    await say('a', 2, { state: 4400, stateMs: ago(2000) });
    await say('a', 2, { state: 1100, stateMs: ago(1995) });
    await say('a', 2, { state: 4500, stateMs: ago(1000) });
    expect(of('station.state').slice(2)).toMatchObject([
      { code: 1100, late: 3000 },
      { code: 4400, late: 2000 },
      { code: 4500, late: 1000 },
    ]);
    await pass(40);
    expect(of('station.silent')).toHaveLength(1);
    await say('a', 2, { state: 4500 });
    expect(of('station.state').at(-1)).toEqual({ station: 'exit', line: 'L1', code: 4500 });
    expect(of('station.state')).toHaveLength(6);
  });
});

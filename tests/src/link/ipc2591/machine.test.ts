// What a machine's stream of messages comes to: one total through kills, doubles, silences and two machines under one name.

import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { checkPayload, type EntryKind } from '../../../../shared/floor/kinds.ts';
import type { JsonObject } from '../../../../shared/log/entry.ts';
import { canonicalText } from '../../../../shared/log/seal.ts';
import { openHeld } from '../../../../src/link/held.ts';
import { readEnvelopes } from '../../../../src/link/ipc2591/envelope.ts';
import { type Journal, openJournal } from '../../../../src/link/ipc2591/journal.ts';
import { type Machine, openMachine, type Peer } from '../../../../src/link/ipc2591/machine.ts';
import { openStationDesk, type StationDesk } from '../../../../src/link/station-desk.ts';
import { newFolder } from '../../../contract/databases.ts';
import { beginStory, counted, started, tellPlant } from '../../../shared/floor/story.ts';
import * as said from './said.ts';

let folder: ReturnType<typeof newFolder>;
let held: ReturnType<typeof openHeld>;
let journal: Journal;
let desk: StationDesk;
let machine: Machine;
let entries: [string, Record<string, unknown>][] = [];
let faults: unknown[] = [];
let second = 0;
/** When the broker was last away, s; null: there is none. */
let away: number | null = null;

const now = () => ({ ms: second * 1000, wallMs: said.START_MS + second * 1000 });
const peer = (host: string, open = true): Peer => ({ host, isOpen: () => open });
const here = peer('10.0.0.5');
const stamp = (more = {}) => ({ TimeStamp: said.stampOf(said.START_MS + second * 1000), ...more });

function open(): void {
  held = openHeld(folder.path, false);
  journal = openJournal(folder.path, 'L1-placer', false);
  // As the spool does: what would not fit the log is a fault.
  const write = async (kind: EntryKind, payload: object) => {
    const checked = checkPayload(kind, payload as never);
    canonicalText(checked as unknown as JsonObject);
    entries.push([kind, checked as unknown as Record<string, unknown>]);
  };
  const [station, line] = ['L1-placer', 'L1'];
  desk = openStationDesk(
    { station, line },
    { held, write, start: now(), silentMs: () => machine.silentMs(), isOwnCount: true },
  );
  machine = openMachine(
    { station, line, counts: 'work-completed', lane: null, slots: new Map([['SLOT22', 'M1-F-022']]) },
    {
      desk,
      journal,
      write,
      now,
      onFault: (fault) => faults.push(fault),
      brokerAwayMs: away === null ? null : () => (away ?? 0) * 1000,
    },
  );
}

async function kill(): Promise<void> {
  await Promise.all([held.close(), journal.close()]);
  open();
}

beforeEach(() => {
  folder = newFolder();
  [entries, faults, second, away] = [[], [], 0, null];
  open();
});
afterEach(async () => {
  expect(faults).toEqual([]);
  await Promise.all([held.close(), journal.close()]);
  folder.remove();
});

async function send(message: object, from: Peer | null = here): Promise<void> {
  for (const envelope of readEnvelopes(Buffer.from(JSON.stringify(message)), false).envelopes)
    await machine.take(envelope, away === null ? from : null);
  await new Promise((resolve) => setImmediate(resolve));
}
const panel = (more = {}) => send(said.workCompleted(`w-${second}`, 'Completed', stamp(more)));

/** Lets time pass second by second. */
async function pass(seconds: number): Promise<void> {
  for (let at = 0; at < seconds; at += 1) {
    second += 1;
    machine.tick(now());
    await desk.tick(now());
  }
}
const of = (kind: string) => entries.flatMap(([each, payload]) => (each === kind ? [payload] : []));
const highest = () => Math.max(...of('station.counted').map(({ total }) => Number(total)));

describe('a machine’s count', () => {
  test('begins at none, rises by one a panel, with its code from the work’s start and the boards it skipped', async () => {
    await send(said.heartbeat('00:01:00', stamp()));
    await send(said.workStarted('w-0', 'P-1', [said.unit(1, 'Pass'), said.unit(2, 'Skip')], stamp()));
    await panel();
    await pass(20);
    await panel();
    await send(said.workCompleted('w-x', 'Aborted', stamp()));
    await pass(20);
    expect(of('station.counted').map(({ total, serial, skipped }) => [total, serial, skipped])).toEqual([
      [0, null, null],
      [1, 'P-1', [2]],
      [2, null, null],
    ]);
  });

  test('counts a message once, also when it comes again after a kill', async () => {
    const message = said.workCompleted('w1', 'Completed', stamp());
    await send([message, message]);
    await send(message);
    await kill();
    await send(message);
    await machine.settle();
    await desk.settle();
    expect(highest()).toBe(1);
  });

  test('what was accepted before a kill is not lost, nor is the code of work that had begun', async () => {
    await send(said.workStarted('w1', 'P-7', [], stamp()));
    await panel();
    await panel();
    const before = journal.total(journal.boot() ?? '');
    expect(before).toBe(2);
    away = -1; // a broker keeps what is said meanwhile
    await kill();
    machine.resume();
    await send(said.workCompleted('w1', 'Completed', stamp()));
    await machine.settle();
    await desk.settle();
    expect(highest()).toBe(3);
    expect(of('station.counted').at(-1)).toMatchObject({ serial: 'P-7' });
  });

  test('a code that was accepted and not told before a kill is told after it', async () => {
    away = -1;
    await kill();
    await send(said.heartbeat('00:01:00', stamp()));
    await panel();
    machine.backAt(now()); // gathers, so that nothing of the next is told yet
    await send(said.workStarted('w7', 'P-7', [said.unit(1, 'Skip')], stamp()));
    await send(said.workCompleted('w7', 'Completed', stamp()));
    expect(of('station.counted').filter(({ serial }) => serial !== null)).toEqual([]);
    await kill();
    machine.resume();
    await machine.settle();
    expect(of('station.counted').at(-1)).toMatchObject({ total: 2, serial: 'P-7', skipped: [1] });
    await kill();
    machine.resume();
    await machine.settle();
    expect(of('station.counted').filter(({ serial }) => serial !== null)).toHaveLength(1);
  });

  test('does not wait for more where what comes has just happened', async () => {
    away = -1;
    await kill();
    machine.backAt(now());
    for (let at = 0; at < 10; at += 1) {
      await panel({ UniqueID: `live-${at}` });
      await pass(1);
    }
    expect(highest()).toBeGreaterThan(0);
  });

  test('three missed beats of the machine’s own span are a silence; then it counts under a new name from none', async () => {
    await send(said.heartbeat('00:00:20', stamp()));
    await panel();
    await pass(60);
    expect(of('station.silent')).toEqual([]);
    await pass(3);
    expect(of('station.silent')).toHaveLength(1);
    await panel();
    await pass(20);
    const boots = new Set(of('station.counted').map(({ boot }) => boot));
    expect(boots.size).toBe(2);
    expect(of('station.counted').map(({ total }) => total)).toEqual([0, 1, 0, 1]);
  });

  test('what it says later of a silence goes under the name before', async () => {
    await send(said.heartbeat('00:00:20', stamp()));
    await panel();
    await pass(100);
    await send(said.heartbeat('00:00:20', stamp()));
    const { TimeStamp } = { TimeStamp: said.stampOf(said.START_MS + 50_000) };
    await send([
      said.workCompleted('k1', 'Completed', { TimeStamp }),
      said.workCompleted('k2', 'Completed', { TimeStamp }),
    ]);
    await panel();
    await pass(20);
    const [first, second_] = [...new Set(of('station.counted').map(({ boot }) => boot))];
    const top = (boot: unknown) =>
      Math.max(
        ...of('station.counted').flatMap((each) => (each['boot'] === boot ? [Number(each['total'])] : [])),
      );
    expect([top(first), top(second_)]).toEqual([3, 1]);
    expect(of('station.doubled')).toEqual([]);
  });

  test('goes on under its name where a broker kept what was said, and tells it as one rise', async () => {
    away = 0;
    await kill();
    await send(said.heartbeat('00:00:20', stamp()));
    await panel();
    await pass(10);
    for (let at = 0; at < 200; at += 1) {
      away = second;
      await pass(1);
    }
    expect(of('station.silent')).toHaveLength(1);
    machine.backAt(now());
    for (let at = 0; at < 9; at += 1) await send(said.workStarted(`w${at}`, `P-${at}`, [], stamp()));
    for (let at = 0; at < 9; at += 1) await send(said.workCompleted(`w${at}`, 'Completed', stamp()));
    const told = of('station.counted').length;
    await pass(3);
    expect(new Set(of('station.counted').map(({ boot }) => boot)).size).toBe(1);
    const since = of('station.counted')
      .slice(told)
      .map(({ total, serial }) => [total, serial]);
    expect(since[0]).toEqual([10, null]);
    expect(since.slice(1)).toEqual(Array.from({ length: 9 }, (_, at) => [at + 2, `P-${at}`]));
  });

  test('counts under a new name where the broker was there and the machine was not', async () => {
    away = 0;
    await kill();
    await send(said.heartbeat('00:00:20', stamp()));
    await pass(200);
    await panel();
    expect(new Set(of('station.counted').map(({ boot }) => boot)).size).toBe(2);
  });

  test('of two machines under one handle the first counts, until it is silent', async () => {
    const other = peer('10.0.0.6');
    await send(said.heartbeat('00:00:20', stamp()));
    await panel();
    await send(said.workCompleted('x', 'Completed', stamp()), other);
    await send(said.workCompleted('y', 'Completed', stamp()), other);
    expect(of('station.noticed')).toMatchObject([
      { what: 'two-devices', said: 'L1.Placer: 10.0.0.5, 10.0.0.6' },
    ]);
    await machine.settle();
    await desk.settle();
    expect(highest()).toBe(1);
    await pass(70);
    await send(said.workCompleted('z', 'Completed', stamp()), other);
    await pass(20);
    expect(of('station.counted').at(-1)).toMatchObject({ total: 1 });
    expect(new Set(of('station.counted').map(({ boot }) => boot)).size).toBe(2);
  });

  test('a clock years off is told once and nothing is dated by it; the count goes on', async () => {
    const TimeStamp = '1999-01-01T00:00:00.0000000Z';
    await send(said.heartbeat('00:01:00', { TimeStamp }));
    await panel({ TimeStamp });
    await send(said.heartbeat('00:01:00', { TimeStamp }));
    await machine.settle();
    await desk.settle();
    expect(of('station.noticed')).toMatchObject([{ what: 'clock-off' }]);
    expect(highest()).toBe(1);
  });

  test('state, unused messages by their names, and what cannot be understood', async () => {
    await send(said.stateChanged(2200));
    await send(said.envelope('Production.RecipeActivated', {}, stamp()));
    await send(said.envelope('ResourcePerformance.FaultOccurred', {}, stamp()));
    await send(said.unitsDeparted('P-1', [], stamp()));
    await send(said.workCompleted('w', 'Maybe', stamp()));
    await pass(61);
    expect(of('station.state')).toMatchObject([{ code: 2200 }]);
    expect(of('station.noticed')).toEqual([
      expect.objectContaining({ what: 'not-understood', said: 'CFX.Production.WorkCompleted: Result Maybe' }),
      expect.objectContaining({
        what: 'not-used',
        said: 'Production.RecipeActivated, Production.UnitsDeparted, ResourcePerformance.FaultOccurred',
        times: 3,
      }),
    ]);
  });

  test('a splice point goes into the log behind the panels before it, once', async () => {
    await send(said.heartbeat('00:01:00', stamp()));
    for (let at = 0; at < 5; at += 1) await panel({ UniqueID: `a-${at}` });
    const joint = said.splicePoint('K1', 'K2', 10, stamp());
    await send([joint, joint]);
    await send(joint);
    expect(entries.slice(-2)).toEqual([
      ['station.counted', expect.objectContaining({ total: 5 })],
      [
        'tape.changed',
        {
          station: 'L1-placer',
          line: 'L1',
          slot: 'M1-F-022',
          depleted: 'K1',
          active: 'K2',
          feeder: 'F-22',
          quantity: 5000,
          grey: 10,
          late: 0,
        },
      ],
    ]);
    expect(of('tape.changed')).toHaveLength(1);
  });

  test('parts are summed for an hour: what is consumed, and what is installed only where that is not told', async () => {
    await send(said.materialsInstalled('K1', 40, 1));
    await send(said.materialsInstalled('K1', 40, 0));
    await pass(3600);
    expect(of('parts.used')).toMatchObject([
      { uses: [{ slot: 'M1-F-022', reel: 'K1', used: 80, spoiled: 1 }] },
    ]);
    await send(said.materialsInstalled('K1', 40, 1));
    await send(said.materialsConsumed('K1', 100, 3));
    await send(said.materialsInstalled('K1', 40, 1));
    await machine.settle();
    expect(of('parts.used').slice(1)).toMatchObject([{ uses: [{ used: 100, spoiled: 3 }] }]);
  });
});

describe('on the floor', () => {
  test.each([
    ['the machine’s own of the silence, where it kept more than people counted', 7, 3 + 7 + 2],
    ['the number by hand, where the machine kept less', 3, 3 + 5 + 2],
    ['the number by hand, where the machine kept none', 0, 3 + 5 + 2],
  ])('a silence in which people counted ends with %s', async (_what, kept, done) => {
    const story = beginStory();
    const tell = () => {
      for (const [kind, payload] of entries.splice(0))
        story.tell(kind as EntryKind, payload as never, { tablet: 'LINK', who: null });
    };
    tellPlant(story);
    const known = { machine: 'M1', at: 'work', means: 'ipc2591', version: '0.1.0', address: '' } as const;
    story.tell(
      'station.known',
      { station: 'L1-placer', line: 'L1', ...known },
      { tablet: 'LINK', who: null },
    );
    await send(said.heartbeat('00:00:20', stamp()));
    tell();
    story.tell('line.counted-by', { line: 'L1', station: 'L1-placer' });
    story.tell('run.started', started('run-1'));
    for (let at = 0; at < 3; at += 1) {
      await pass(20);
      await panel();
    }
    await pass(70);
    tell();
    story.tell('panels.counted', counted('run-1', 5));
    await send(said.heartbeat('00:00:20', stamp()));
    const of = { TimeStamp: said.stampOf(said.START_MS + (second - 30) * 1000) };
    for (let at = 0; at < kept; at += 1) await send(said.workCompleted(`k${at}`, 'Completed', of));
    for (let at = 0; at < 2; at += 1) {
      await pass(20);
      await panel();
    }
    await pass(20);
    await machine.settle();
    await desk.settle();
    tell();
    expect(story.floor().runs.get('run-1')?.done).toBe(done);
  });
});

test('whatever stands in a message, it is taken or told, never a fault, and never a panel that was none', async () => {
  const names = [
    'Heartbeat',
    'Production.WorkStarted',
    'Production.WorkCompleted',
    'ResourcePerformance.StationStateChanged',
    'Materials.Storage.SplicePointDetected',
    'Materials.Management.MaterialsConsumed',
    'Production.Assembly.MaterialsInstalled',
    'Materials.Storage.MaterialsEmpty',
    'constructor',
  ];
  const odd = fc.oneof(
    fc.constantFrom('\ud800', '', ' ', 'x'.repeat(300), 'a\u0000b', 1e308, -1, 0.5, null, true, [], {}),
    fc.constant({ toString: 1, valueOf: 1 }),
    fc.jsonValue(),
  );
  const location = fc.record(
    {
      LocationIdentifier: odd,
      LocationName: odd,
      MaterialPackage: fc.oneof(odd, fc.record({ UniqueIdentifier: odd, Quantity: odd, GreyZone: odd })),
      CarrierInformation: odd,
    },
    { requiredKeys: [] },
  );
  const rows = fc.array(
    fc.record({ MaterialLocation: location, QuantityUsed: odd, QuantitySpoiled: odd }, { requiredKeys: [] }),
  );
  const body = fc.record(
    {
      Result: fc.oneof(odd, fc.constantFrom('Completed', 'Failed')),
      TransactionID: odd,
      PrimaryIdentifier: odd,
      Units: fc.oneof(odd, fc.array(fc.record({ Status: fc.constantFrom('Skip', 7), PositionNumber: odd }))),
      Lane: odd,
      NewState: odd,
      HeartbeatFrequency: odd,
      DepletedMaterial: location,
      NewlyActiveMaterial: location,
      ConsumedMaterials: rows,
      EmptyMaterials: fc.array(location),
    },
    { requiredKeys: [] },
  );
  const messages = fc.array(
    fc.record({ name: fc.constantFrom(...names), body, UniqueID: odd, TimeStamp: odd }),
    { maxLength: 30 },
  );
  let panels = 0;
  await fc.assert(
    fc.asyncProperty(messages, async (all) => {
      for (const { name, body: MessageBody, ...more } of all) {
        const before = journal.total(journal.boot() ?? '');
        await send(said.envelope(name, {}, { ...more, MessageBody }));
        const result = 'Result' in MessageBody ? MessageBody.Result : null;
        const isPanel =
          name === 'Production.WorkCompleted' && ['Completed', 'Failed'].includes(result as string);
        const after = journal.total(journal.boot() ?? '');
        expect(after - before).toBeLessThanOrEqual(isPanel ? 1 : 0);
        panels += after - before;
      }
      await pass(1);
      expect(faults).toEqual([]);
    }),
    { numRuns: 60 },
  );
  await machine.settle();
  await desk.settle();
  expect(panels).toBeGreaterThan(0);
  expect(highest()).toBe(panels);
});

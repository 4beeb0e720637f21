// A machine heard on its supervisory channel over a real connection: what it tells, told twice, cut off, frozen, restarted, and what is no
// such machine at all. What is counted is asked of the tablets' own fold.

import { afterEach, describe, expect, test } from 'vitest';
import { openOwnTotal } from '../../../../src/link/hermes/own-total.ts';
import { until } from '../../server/tablets.ts';
import { openPlant, type Plant, quick, stationAt } from './heard.ts';
import {
  clock,
  departed,
  element,
  guid,
  hermes,
  type Machine,
  startMachine,
  subBoards,
  type Ways,
} from './machine.ts';

let plant: Plant;
let machine: Machine;
afterEach(async () => {
  expect(plant.faults).toEqual([]);
  await plant.remove();
  await machine.stop();
});

async function begin(ways: Ways = {}, more: Parameters<typeof stationAt>[2] = {}): Promise<void> {
  machine = await startMachine(ways);
  plant = openPlant([stationAt(machine.at, 'L1', more)]);
  await plant.start();
}

/** The link listens, and has the machine's word. */
const heard = () =>
  until('a first total', async () => machine.clients() > 0 && (await plant.of('station.counted')).length > 0);

/** All that was sent so far is read: a question that is sent last is answered last. */
let asked = 0;
async function read(): Promise<void> {
  asked += 1;
  const id = `read-${asked}`;
  machine.tell(element('CheckAlive', { Type: 1, Id: id }));
  await until('an answer', () => machine.said().includes(`<CheckAlive Type="2" Id="${id}"`));
}

/** Time passes while the machine is heard. */
async function live(seconds: number): Promise<void> {
  for (let at = 0; at < seconds; at += 25) {
    await plant.pass(25);
    await read();
  }
}

const counted = async () => {
  await read();
  await plant.pass(1); // totals of one moment go into the log together, a moment later
  await read();
  return plant.done();
};
const board = (at: number, more: Parameters<typeof departed>[0] = {}, within = '') =>
  departed({ BoardId: guid(at), ...more }, within);

describe('a machine on its supervisory channel', () => {
  test('is asked to tell its boards, tells them, and is never told anything else', async () => {
    await begin();
    await heard();
    for (const at of [1, 2, 3]) machine.tell(board(at, { TopBarcode: `SN-${at}` }, subBoards([1, 4, 1, 4])));
    machine.tell(element('BoardArrived', { BoardTransfer: 1, BoardId: guid(4) }));
    expect(await counted()).toBe(3);
    const totals = (await plant.of('station.counted')).map(({ total, serial, skipped, once }) => [
      total,
      serial,
      skipped,
      once,
    ]);
    expect(totals).toEqual([
      [0, null, null, undefined],
      [1, 'SN-1', [2, 4], true],
      [2, 'SN-2', [2, 4], true],
      [3, 'SN-3', [2, 4], true],
    ]);
    expect(await plant.noticed()).toEqual([]);
    machine.tell('<GetConfiguration/><QueryWorkOrderInfo/><SendHermesCapabilities/>');
    await read();
    await live(50);
    const said = [...machine.said().matchAll(/<Hermes [^>]*><(\w+)/g)].map(([, name]) => name);
    expect(new Set(said)).toEqual(new Set(['SupervisoryServiceDescription', 'CheckAlive']));
    expect(machine.said()).toContain('<FeatureBoardTracking/>');
    expect(await plant.noticed()).toEqual([]);
  });

  test('may send byte by byte, or a hundred messages at once', async () => {
    await begin();
    await heard();
    const first = Buffer.from(hermes(board(1, { TopBarcode: 'ß–1' })));
    for (const byte of first) {
      machine.send(Uint8Array.of(byte));
      await new Promise((resolve) => setImmediate(resolve));
    }
    machine.send(Array.from({ length: 100 }, (_, at) => hermes(board(at + 2))).join(''));
    expect(await counted()).toBe(101);
    expect((await plant.of('station.counted')).map(({ serial }) => serial)).toContain('ß–1');
    expect(await plant.noticed()).toEqual([]);
  });

  test('that tells boards again after its connection broke is not believed twice, over a power cut of the link too', async () => {
    await begin();
    await heard();
    for (const at of [1, 2]) machine.tell(board(at));
    await read();
    machine.cut();
    await until('the link again', () => machine.clients() > 0);
    for (const at of [1, 2, 3]) machine.tell(board(at));
    expect(await counted()).toBe(3);
    plant.cutPower();
    await until('nobody there', () => machine.clients() === 0);
    await plant.start();
    await until('the link again', () => machine.clients() === 1);
    for (const at of [2, 3, 4]) machine.tell(board(at));
    expect(await counted()).toBe(4);
    // The same panel with the other side up is another passage; without a number nothing can be told apart.
    machine.tell(board(4, { FlippedBoard: 2 }));
    for (let at = 0; at < 2; at += 1)
      machine.tell(departed({ BoardId: '00000000-0000-0000-0000-000000000000' }));
    expect(await counted()).toBe(7);
    const [first, second, third] = await plant.noticed();
    expect(first).toMatch(/^not-heard: 2026-03-02T06:00:05.000Z – 2026-03-02T06:00:05.000Z$/);
    expect(second).toBe(`board-twice: ${guid(1)}`);
    expect(third).toBe(undefined);
  });

  test('counted on the disk and not yet in the log when the power went is told at the next start', async () => {
    machine = await startMachine();
    plant = openPlant([stationAt(machine.at)]);
    const total = openOwnTotal(plant.folder(), 'L1-exit', false);
    await total.begin(0);
    for (const at of [1, 2])
      await total.add({ key: `${guid(at)} top`, serial: `SN-${at}`, skipped: [at] }, 0);
    const boot = total.now()?.boot;
    await plant.start();
    await until('the machine', () => machine.clients() > 0);
    machine.tell(board(2));
    await counted();
    const [first, second, third, ...more] = await plant.of('station.counted');
    expect(first).toMatchObject({ boot, total: 1, serial: 'SN-1', skipped: [1], once: true });
    expect(second).toMatchObject({ boot, total: 2, serial: 'SN-2', skipped: [2], once: true });
    expect(third).toMatchObject({ total: 0, serial: null });
    expect([third?.boot === boot, more]).toEqual([false, []]);
    await total.close(0);
  });

  test('counts a panel’s code once a run, under whatever number its board goes', async () => {
    await begin();
    await heard();
    for (const at of [1, 2, 3]) machine.tell(board(at, { TopBarcode: at === 3 ? 'SN-1' : `SN-${at}` }));
    expect(await counted()).toBe(2);
    expect(await plant.noticed()).toEqual(['code-again: SN-1: 1, 3']);
    // The next run builds its other side.
    const job = {
      setup: 's',
      product: 'p',
      panelsWanted: 10,
      panelPrefix: null,
      panelSeconds: 12,
      panelSd: 0,
    };
    plant.people.tell('run.ended', { run: 'run-L1', line: 'L1', panels: 2, note: '' }, { at: 100 });
    plant.people.tell('run.started', { run: 'run-2', line: 'L1', ...job }, { at: 101 });
    await live(200);
    machine.tell(board(11, { TopBarcode: 'SN-1' }));
    await counted();
    expect((await plant.floor()).runs.get('run-2')?.done).toBe(1);
  });

  test('that does not answer is silent after three beats; people’s counts stand when it is back', async () => {
    await begin();
    await heard();
    machine.tell(board(1));
    expect(await counted()).toBe(1);
    machine.freeze(true);
    await plant.pass(29);
    expect(await plant.of('station.silent')).toEqual([]);
    await plant.pass(5);
    expect(await plant.of('station.silent')).toMatchObject([{ told: 'link' }]);
    const told = { run: 'run-L1', line: 'L1', panels: 0, serial: null, via: 'typed' } as const;
    for (const add of [3, 2])
      plant.people.tell('panels.counted', { ...told, add }, { at: plant.clock.ms / 1000 });
    await until('the link has hung up', () => machine.clients() === 0);
    await plant.pass(20);
    machine.freeze(false);
    await until('the link again', async () => {
      await plant.pass(1);
      return machine.clients() > 0 && (await plant.of('station.counted')).length > 2;
    });
    machine.tell(board(2));
    expect(await counted()).toBe(7);
    expect((await plant.floor()).counters.get('L1')?.both).toMatchObject([
      { hand: 5, machine: 0, stands: 'hand' },
    ]);
    expect(
      (await plant.of('station.counted'))
        .map(({ boot }) => boot)
        .filter((boot, at, all) => boot !== all[at - 1]),
    ).toHaveLength(2);
    expect(await plant.noticed()).toEqual([expect.stringMatching(/^not-heard: /)]);
  });

  test('answers a machine that asks, and goes by the machine’s own beat where it does not answer', async () => {
    await begin({ features: ['FeatureBoardTracking'] });
    await heard();
    machine.tell('<CheckAlive Type="1" Id="a&amp;b"/>');
    await until('an answer', () => machine.said().includes('<CheckAlive Type="2" Id="a&#38;b"/>'));
    await plant.pass(170);
    expect(machine.clients()).toBe(1);
    expect(await plant.of('station.silent')).toEqual([]);
    machine.tell('<CheckAlive/>');
    await read();
    await plant.pass(170);
    expect(machine.clients()).toBe(1);
    expect(await plant.of('station.silent')).toEqual([]);
  });

  test('that does not tell boards is never taken as heard, and says why', async () => {
    await begin({ features: ['FeatureCheckAliveResponse'] });
    await until('its word', async () => (await plant.noticed()).length > 0);
    await live(75);
    expect(await plant.noticed()).toEqual(['no-boards: FeatureBoardTracking']);
    expect(await plant.of('station.counted')).toEqual([]);
    machine.tell(board(1));
    await until('a board all the same', async () => {
      await plant.pass(1);
      return (await plant.done()) === 1;
    });
  });

  test('moved by hand, failed, of another machine or lane, or by an unknown word: told, and counted as it should be', async () => {
    await begin({}, { lane: 1 });
    await heard();
    machine.tell(board(1, { BoardTransfer: 2 }));
    machine.tell(board(2, { BoardTransfer: 3 }));
    machine.tell(board(3, { FailedBoard: 2 }));
    machine.tell(board(4, { MachineId: 'M2' }));
    machine.tell(board(5, { DownstreamLaneId: 2 }));
    machine.tell(board(7, { DownstreamLaneId: '' }));
    machine.tell(board(6, { TopBarcode: 'x'.repeat(201) }));
    machine.tell('<Dance/>');
    machine.tell(element('Notification', { NotificationCode: 5, Severity: 2, Description: 'door open' }));
    machine.tell(element('Notification', { NotificationCode: 6, Severity: 4, Description: 'all well' }));
    expect(await counted()).toBe(3);
    expect(await plant.noticed()).toEqual([
      `by-hand: ${guid(2)}`,
      `failed-board: ${guid(3)}`,
      'other-machine: M2, not M1',
      `not-understood: a board of no lane, where lane 1 counts: ${guid(7)}`,
      'machine-says: 5: door open',
    ]);
    await live(3_600);
    const times = (await plant.of('station.noticed'))
      .filter(({ what }) => what === 'not-understood')
      .map((each) => each.times);
    expect(times).toEqual([1, 3]);
  });

  test('counts what comes to it where the link’s file says so, of the machine that it names', async () => {
    await begin({}, { counts: 'arrived', machineId: 'M2' });
    await heard();
    const arrived = { BoardTransfer: 1, UpstreamLaneId: 1 };
    machine.tell(element('BoardArrived', { MachineId: 'M2', BoardId: guid(1), ...arrived }));
    machine.tell(element('BoardArrived', { MachineId: 'M1', BoardId: guid(2), ...arrived }));
    machine.tell(board(1, { MachineId: 'M2' }));
    expect(await counted()).toBe(1);
  });

  test('whose clock is off is told so; a zone is no fault, and nothing is dated by either', async () => {
    await begin();
    await heard();
    const at = (ms: number) => new Date(clock.ms + ms).toISOString().slice(0, -1);
    machine.send(hermes(board(1), at(5.5 * 3_600_000)));
    await read();
    const wrong = at(-7 * 60_000);
    machine.send(hermes(board(2), wrong));
    machine.send(hermes(board(3), '1970-01-01T00:00:00'));
    machine.send(hermes(board(4), 'soon'));
    machine.send(hermes(board(5), ''));
    expect(await counted()).toBe(5);
    const [off] = (await plant.noticed()).filter((each) => each.startsWith('clock-off'));
    expect(off).toBe(`clock-off: ${wrong}`);
  });
});

describe('what is no such machine', () => {
  test('the channel between neighbours is left at once, and not called again', async () => {
    const greets = hermes(element('ServiceDescription', { LaneId: 1, MachineId: 'M1', Version: '1.5' }));
    await begin({ isMute: true, greets });
    await until('the word of it', async () => (await plant.noticed()).length > 0);
    await until('nobody there', () => machine.clients() === 0);
    await plant.pass(3_000);
    expect(await plant.noticed()).toEqual([`wrong-channel: ${machine.at}: ServiceDescription`]);
    // It would be back in no time.
    let looks = 0;
    await until('a while', () => {
      looks += 1;
      return machine.calls() > 1 || looks > 20;
    });
    expect(machine.calls()).toBe(1);
    expect(await plant.of('station.counted')).toEqual([]);
  });

  test('a port that refuses us is left at once, and left alone for a while', async () => {
    const greets = hermes(
      element('Notification', { NotificationCode: 2, Severity: 1, Description: 'in use' }),
    );
    machine = await startMachine({ isMute: true, greets });
    plant = openPlant([stationAt(machine.at)], { ...quick, strangeMs: 60_000 });
    await plant.start();
    await until('the word of it', async () => (await plant.noticed()).length > 0);
    await until('nobody there', () => machine.clients() === 0);
    let looks = 0;
    await until('a while', () => {
      looks += 1;
      return machine.calls() > 1 || looks > 20;
    });
    expect(machine.calls()).toBe(1);
    expect(await plant.noticed()).toEqual(['machine-says: 2: in use']);
    expect(await plant.of('station.counted')).toEqual([]);
  });

  test('hostile bytes are told, counted, and count nothing; the machine behind them is heard', async () => {
    await begin();
    await heard();
    machine.tell(board(1));
    await read();
    const bomb = `<!DOCTYPE x [<!ENTITY a "${'b'.repeat(1000)}">]>`;
    const hostile: readonly (string | Uint8Array)[] = [
      'GET / HTTP/1.1\r\nHost: x\r\n\r\n',
      Buffer.from(hermes(board(21)), 'utf16le'),
      Uint8Array.from({ length: 5_000 }, (_, at) => (at * 7_919) % 256),
      hermes(`${bomb}${board(22)}`),
      hermes(board(23)).slice(0, 80),
      `<Hermes>${'<a>'.repeat(20_000)}</Hermes>`,
      `<Hermes>${'x'.repeat(70_000)}</Hermes>`,
      hermes('<BoardDeparted BoardTransfer="1"'),
      hermes('<BoardDeparted __proto__="x" constructor="y" BoardTransfer="3"/>'),
    ];
    for (const bytes of hostile) {
      machine.send(bytes);
      machine.tell(board(1));
    }
    machine.tell(board(2));
    expect(await counted()).toBe(2);
    const noticed = await plant.noticed();
    expect(noticed).toContain('not-understood: bytes that are no message (27 bytes)');
    await live(3_600);
    const told = (await plant.of('station.noticed')).filter(({ what }) => what === 'not-understood');
    expect(told.at(-1)?.times).toBeGreaterThanOrEqual(8);
  });

  test('noise without end is hung up on', async () => {
    await begin({ isMute: true, greets: 'z'.repeat(70_000) });
    await until('two calls', () => machine.said().split('<SupervisoryServiceDescription').length > 2);
    expect(await plant.of('station.counted')).toEqual([]);
    expect(await plant.of('station.noticed')).toHaveLength(1);
  });
});

// Three machines on real connections, and all that goes wrong between them and a link: messages doubled, split, cut off and mixed with
// noise, connections that break, machines without power, a link whose power is cut in the middle of a message. Is the count exact wherever it
// can be, and is every other difference explained?
// What differs between the machines is what they say of a board: its number and its code, its code alone, or nothing.

import { cpSync } from 'node:fs';
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { seededChance } from '../../../../shared/kit/chance.ts';
import { openOwnTotal } from '../../../../src/link/hermes/own-total.ts';
import { newFolder } from '../../../contract/databases.ts';
import { until } from '../../server/tablets.ts';
import { openPlant, type Plant, stationAt } from './heard.ts';
import { departed, element, guid, hermes, type Machine, startMachine } from './machine.ts';

const NONE = '00000000-0000-0000-0000-000000000000';
const BATCH = 84;

let plant: Plant | null = null;
let machines: Machine[] = [];
afterEach(async () => {
  expect(plant?.faults ?? []).toEqual([]);
  await plant?.remove();
  await Promise.all(machines.map((machine) => machine.stop()));
  [plant, machines] = [null, []];
});

/** What a machine says of its panel `at`. */
const sayings: readonly ((at: number) => string)[] = [
  (at) => departed({ BoardId: guid(at), TopBarcode: `A-${at}` }),
  (at) => departed({ BoardId: NONE, FlippedBoard: 2, BottomBarcode: `B-${at}` }),
  () => departed({ BoardId: NONE }),
];

interface Line {
  readonly name: string;
  readonly machine: Machine;
  readonly say: (at: number) => string;
  passed: number;
  /** Left while nobody listened, by the machine's own knowledge of its clients. */
  unseen: number;
}

let asked = 0;
/** All that was sent on the line is read. */
async function read({ machine }: Line): Promise<void> {
  asked += 1;
  const id = `r${asked}`;
  machine.tell(element('CheckAlive', { Type: 1, Id: id }));
  await until('an answer', () => machine.said().includes(`Type="2" Id="${id}"`));
}

const listened = ({ machine }: Line) => until('the link', () => machine.clients() > 0);

/** Panels leave; the stream is cut and joined by chance, and some is told twice where a board can be told from another. */
function leave(line: Line, panels: number, chance: () => number): void {
  const texts: string[] = [];
  for (let at = 0; at < panels; at += 1) {
    line.passed += 1;
    if (line.machine.clients() === 0) line.unseen += 1;
    texts.push(hermes(line.say(line.passed)));
    if (line.name !== 'L3' && chance() < 0.1) texts.push(hermes(line.say(line.passed)));
    if (chance() < 0.05)
      texts.push(chance() < 0.5 ? '\0\0 noise >' : hermes('<BoardDeparted BoardTransfer="1"'));
    if (chance() < 0.05)
      texts.push(hermes(departed({ BoardTransfer: 3, BoardId: guid(900_000 + line.passed) })));
    if (chance() < 0.05)
      texts.push(hermes(departed({ MachineId: 'M9', BoardId: guid(800_000 + line.passed) })));
  }
  const bytes = Buffer.from(texts.join(''));
  for (let from = 0; from < bytes.length; ) {
    const to = from + 1 + Math.floor(chance() * 3_000);
    line.machine.send(bytes.subarray(from, to));
    from = to;
  }
}

/** What the machine tells again after a break: the last of what it told before. */
function again(line: Line): void {
  if (line.name === 'L3') return;
  for (let at = Math.max(1, line.passed - BATCH - 5); at <= line.passed; at += 1)
    line.machine.tell(line.say(at));
}

describe('three machines', () => {
  test('end with the panels that passed, of 10,080', async () => {
    const chance = seededChance(1);
    machines = await Promise.all(sayings.map(() => startMachine()));
    const lines = machines.map((machine, at): Line => {
      const say = sayings[at] as Line['say']; // one for each
      return { name: `L${at + 1}`, machine, say, passed: 0, unseen: 0 };
    });
    plant = openPlant(lines.map(({ machine, name }) => stationAt(machine.at, name)));
    const here = plant;
    await here.start();
    await Promise.all(lines.map(listened));
    await Promise.all(lines.map(read));
    const did = { cuts: 0, away: 0, kills: 0 };
    for (let round = 0; round < 40; round += 1) {
      for (const line of lines) leave(line, BATCH, chance);
      const luck = chance();
      if (luck < 0.3) {
        // The wire: what is on its way is lost, and the first two machines tell it again.
        const [third] = lines.slice(-1) as [Line]; // there are three
        await read(third);
        for (const { machine } of lines) machine.cut();
        did.cuts += 1;
      } else if (luck < 0.4) {
        await Promise.all(lines.map(read));
        for (const { machine } of lines) await machine.stop();
        for (const line of lines) leave(line, 3, chance);
        did.away += 1;
        await Promise.all(machines.map((machine) => machine.restart()));
      } else if (luck < 0.6) {
        const [third] = lines.slice(-1) as [Line]; // there are three
        await read(third);
        here.cutPower();
        await here.start();
        for (const { machine } of lines) await until('one link', () => machine.clients() <= 1);
        did.kills += 1;
      }
      await Promise.all(lines.map(listened));
      for (const line of lines) if (luck < 0.6) again(line);
      await Promise.all(lines.map(read));
      await here.pass(20);
      await Promise.all(lines.map(read));
    }
    for (const { name, passed, unseen } of lines) {
      // What left while nobody listened is told again by the first two, within their last words.
      const lost = name === 'L3' ? unseen : 0;
      expect([name, await here.done(name)]).toEqual([name, passed - lost]);
      expect(passed).toBeGreaterThan(3_333);
    }
    expect(Math.min(did.cuts, did.away, did.kills)).toBeGreaterThan(0);
    const told = new Set((await here.noticed()).map((each) => each.split(':')[0]));
    for (const what of [
      'not-heard',
      'by-hand',
      'other-machine',
      'not-understood',
      'board-twice',
      'code-again',
    ])
      expect(told).toContain(what);
  }, 120_000);
});

describe('the link’s own total', () => {
  test('counts each board once, wherever the power goes and whatever is told again', async () => {
    const step = fc.record({
      from: fc.nat(30),
      panels: fc.integer({ min: 1, max: 12 }),
      cut: fc.boolean(),
      tell: fc.boolean(),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 12 }), async (steps) => {
        const folders = [newFolder()];
        const opened: ReturnType<typeof openOwnTotal>[] = [];
        const open = () => {
          const total = openOwnTotal(folders.at(-1)?.path ?? '', 'exit/1', false);
          opened.push(total);
          return total;
        };
        const seen = new Set<string>();
        const told = new Map<string, number>();
        try {
          let total = open();
          await total.begin(0);
          for (const { from, panels, cut, tell } of steps) {
            for (let at = from; at < from + panels; at += 1) {
              const counted = await total.add({ key: `b${at}`, serial: null, skipped: null }, at);
              expect(counted === null).toBe(seen.has(`b${at}`));
              seen.add(`b${at}`);
              if (!tell) continue;
              for (const each of total.untold()) told.set(`${each.boot} ${each.total}`, each.total);
              total.told();
            }
            if (!cut) continue;
            const { boot } = total.now() ?? { boot: '' };
            // What is noted and not flushed goes with the power; what is added is there.
            const after = newFolder();
            cpSync(folders.at(-1)?.path ?? '', after.path, { recursive: true });
            folders.push(after);
            total = open();
            expect(total.now()?.boot).toBe(boot);
            for (const each of total.untold()) told.set(`${each.boot} ${each.total}`, each.total);
            total.told();
            await total.begin(0);
            expect(total.now()).toMatchObject({ total: 0 });
          }
          for (const each of total.untold()) told.set(`${each.boot} ${each.total}`, each.total);
          expect(told.size).toBe(seen.size);
        } finally {
          for (const each of opened) await each.close(0);
          for (const each of folders) each.remove();
        }
      }),
      { numRuns: 40 },
    );
  });
});

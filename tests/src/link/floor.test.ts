// The floor that a link follows: what answers ask for of all of the log folded at once, whatever comes late; gone on from where it was at the next start; and
// judged by the plant's tickets as tablets do.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { answersAs } from '../../../shared/floor/interlock.ts';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { copyState, type FloorState } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { checkedSchema } from '../../../shared/wire/messages.ts';
import { type FloorWatch, followFloor } from '../../../src/link/floor.ts';
import { thinState } from '../../../src/link/floor-thin.ts';
import { type LinkIdentity, openIdentity } from '../../../src/link/identity.ts';
import { newFolder } from '../../contract/databases.ts';
import { beginStory, brookSetup, type Story, tellPlant, verified } from '../../shared/floor/story.ts';
import { joinChain } from '../server/chains.ts';
import { newClock, pinRecord, startTestServer } from '../server/tablets.ts';

let folder: ReturnType<typeof newFolder>;
let identity: LinkIdentity;
let nowMs = 0;
/** The server's log, in the order of arrival, and what was asked for. */
let log: readonly Entry[] = [];
let asked: number[] = [];
const PAGE = 50;

function answer(url: string): object {
  const common = { serverEpoch: 'e1', serverMs: Date.now() };
  if (url.endsWith('/api/keys')) return { ...common, keys: 'none' };
  const at = Number(/after=(\d+)/.exec(url)?.[1]);
  asked.push(at);
  const next = Math.min(log.length, at + PAGE);
  const cursor = `${next}.0000000000000000`;
  return { ...common, cursor, more: next < log.length, entries: log.slice(at, next) };
}

const follow = (): FloorWatch =>
  followFloor({
    folder: folder.path,
    identity,
    world: {
      origin: 'http://plant',
      fetch: async (url) => Response.json(answer(String(url))),
      nowMs: () => nowMs,
      sawServer: () => undefined,
      chance: () => 0.5,
      sleep: async () => undefined,
      nonce: () => 'n',
    },
    signal: new AbortController().signal,
    serverKey: async () => 'none',
    say: () => undefined,
  });

beforeEach(() => {
  folder = newFolder();
  identity = openIdentity(folder.path);
  [log, asked, nowMs] = [[], [], 1_000_000];
});
afterEach(() => folder.remove());

/** A plant with so many reels put away, one of them on a slot. */
function plant(reels: number): Story {
  const story = beginStory();
  tellPlant(story);
  const put = {
    part: 'R-100',
    supplierPart: null,
    quantity: 5,
    lot: null,
    dateCode: null,
    place: 'A',
    via: 'typed',
  } as const;
  for (let at = 0; at < reels; at += 1) story.tell('reel.put', { ...put, reel: `K${at}` });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  return story;
}
/** What a link keeps of a floor. */
const thin = (floor: FloorState): FloorState => {
  const copy = copyState(floor);
  thinState(copy, new Set());
  return copy;
};
const got = async (watch: FloorWatch): Promise<FloorState> => {
  const state = await watch.upToDate(60_000);
  if (!state) throw new Error('not to be had');
  return state;
};

describe('the floor that a link follows', () => {
  test('is that of the whole log, and a second start asks for what is new alone', async () => {
    const story = plant(120);
    log = story.entries;
    expect(await got(follow())).toEqual(thin(story.floor()));
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K2' }));
    const had = log.length - 1;
    asked = [];
    const again = follow();
    expect(await got(again)).toEqual(thin(story.floor()));
    expect(asked).toEqual([had]);
    expect([...(await got(again)).reels.keys()].sort()).toEqual(['K1', 'K2']);
    expect(['K1', 'K77', 'K119', 'K120'].map(again.knows)).toEqual([true, true, true, false]);
  });

  test('reads the log from its start where what is kept is damaged, cut off, or of another fold', async () => {
    const story = plant(120);
    log = story.entries;
    await got(follow());
    const file = join(folder.path, 'floor.ndjson');
    const whole = readFileSync(file, 'utf8');
    for (const text of [
      whole.slice(0, 900),
      whole.replace('floor-', 'floor-0'),
      whole.replace('["entry"', '["mop'),
      '',
    ]) {
      writeFileSync(file, text);
      asked = [];
      expect(await got(follow())).toEqual(thin(story.floor()));
      expect(asked[0]).toBe(0);
    }
  });

  test('takes entries of a tablet that was away for thousands of others, at a first read and later', async () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }), { tablet: 'AWAY' });
    const put = {
      part: 'R-100',
      supplierPart: null,
      quantity: 5,
      lot: null,
      dateCode: null,
      place: 'A',
      via: 'typed',
    } as const;
    for (let at = 0; at < 2_400; at += 1) story.tell('reel.put', { ...put, reel: `K${at % 40}` });
    const away = story.entries.filter(({ tablet }) => tablet === 'AWAY');
    const others = story.entries.filter(({ tablet }) => tablet !== 'AWAY');
    log = [...others, ...away];
    expect(await got(follow())).toEqual(thin(story.floor()));
    // Known without them first, kept, and then they come.
    folder.remove();
    folder = newFolder();
    log = others;
    const watch = follow();
    await got(watch);
    log = [...others, ...away];
    expect(await got(watch)).toEqual(thin(story.floor()));
    expect(await got(follow())).toEqual(thin(story.floor()));
  });

  test('keeps a lane that changes over or is swept as tablets do, and no changeover that is over', async () => {
    const story = plant(0);
    const lane2 = laneLine('L1', 2);
    const facts = { line: lane2, setup: 'right' };
    story.tell('line.defined', { line: lane2, name: 'Lane 2', zone: 'UTC', machines: [] });
    story.tell('setup.taken', { ...brookSetup, ...facts });
    story.tell('setup.chosen', facts);
    const changeover = { from: null, product: 'Fell', lastPanel: null };
    story.tell('changeover.began', { ...changeover, ...facts, changeover: 'x' });
    story.tell('lane.withdrawn', { line: lane2 });
    story.tell('sweep.started', { line: lane2, sweep: 's' });
    story.tell('changeover.released', { changeover: 'x', line: lane2, by: 'lea', reason: '' });
    story.tell('lane.withdrawn', { line: lane2 });
    log = story.entries;
    const state = await got(follow());
    expect(state).toEqual(thin(story.floor()));
    expect(state.chosen.get(lane2)).toBe('right');
    expect(state.changeovers.size).toBe(0);
  });

  test('does not read the log anew for what another link said long ago, the same answer again too', async () => {
    const story = beginStory();
    tellPlant(story);
    const away = { tablet: 'AWAY' };
    const rows = [{ slot: 'M1-F-001', reel: 'K1', part: null, result: 'Success', why: 'verified' }] as const;
    const of = { station: 'exit', line: 'L1' };
    story.tell('station.answered', { ...of, results: [...rows] }, away);
    story.tell('station.answered-again', { ...of, times: 3 }, away);
    const put = { part: 'R-100', supplierPart: null, quantity: 5, lot: null, dateCode: null } as const;
    for (let at = 0; at < 2_400; at += 1)
      story.tell('reel.put', { ...put, reel: `K${at % 40}`, place: 'A', via: 'typed' });
    const others = story.entries.filter(({ tablet }) => tablet !== 'AWAY');
    log = others;
    const watch = follow();
    await got(watch);
    log = [...others, ...story.entries.filter(({ tablet }) => tablet === 'AWAY')];
    asked = [];
    await got(watch);
    expect(asked).toEqual([others.length]);
  });

  test('judges by the plant’s tickets: an engineer’s word without one turns no answer on', async () => {
    const clock = newClock();
    const server = await startTestServer({ clock });
    try {
      const tablet = await joinChain(server.running, 't1', clock);
      const bad = await joinChain(server.running, 't2', clock);
      const max = {
        person: 'max',
        name: 'Max',
        role: 'engineer',
        badge: 'B-3',
        pin: pinRecord('3333'),
      } as const;
      await tablet.tell('person.added', max, { who: 'max' });
      await tablet.push();
      clock.shiftMs += 1000;
      const json = { badge: 'B-3', person: null, pin: '3333', stays: true };
      const checked = await tablet.tablet.caller.call('/api/people/check', checkedSchema, { json });
      if (!checked.ok || checked.value.ticket === undefined) throw new Error('no ticket');
      await tablet.tell('ticket.taken', { person: 'max', ticket: checked.value.ticket });
      const rule = { line: 'L1', on: true, unsure: 'Failed' } as const;
      await tablet.tell('station.interlock-ruled', { ...rule, station: 'honest' }, { who: 'max' });
      await bad.tell('station.interlock-ruled', { ...rule, station: 'forged' }, { who: 'max' });
      await tablet.push();
      await bad.push();
      const asks = await joinChain(server.running, 't3', clock);
      const { key } = asks.tablet;
      const watch = followFloor({
        folder: folder.path,
        identity: { ...identity, key },
        world: {
          origin: server.running.url,
          fetch: (...args) => fetch(...args),
          nowMs: clock.nowMs,
          sawServer: () => undefined,
          chance: () => 0.5,
          sleep: async () => undefined,
          nonce: () => Math.random().toString(36).slice(2).padEnd(22, 'n'),
        },
        signal: new AbortController().signal,
        serverKey: async () => server.running.context.key.publicKey,
        say: () => undefined,
      });
      const state = await got(watch);
      expect(state.interlocks.size).toBe(2);
      expect([answersAs(state, 'honest'), answersAs(state, 'forged')]).toEqual(['Failed', null]);
    } finally {
      await server.stop();
    }
  });
});

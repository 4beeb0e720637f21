// A machine that asks a running listener about its materials over AMQP: answered by the last verdicts where an engineer turned that on, each
// answer in the log; anything else is refused in the standard's own words. Fields: CFX/InformationSystem/TopicValidation/
// ValidateTopicRequest.cs:146 and ValidateTopicResponse.cs.

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { EntryKind } from '../../../../shared/floor/kinds.ts';
import { checkPayload } from '../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import type { Ipc2591Station } from '../../../../src/link/config.ts';
import { openHeld } from '../../../../src/link/held.ts';
import { ask } from '../../../../src/link/ipc2591/ask.ts';
import { type Ipc2591, openIpc2591 } from '../../../../src/link/ipc2591/source.ts';
import { newFolder } from '../../../contract/databases.ts';
import { beginStory, tellPlant, verified } from '../../../shared/floor/story.ts';
import * as said from './said.ts';

const NAME = 'CFX.InformationSystem.TopicValidation.ValidateTopicRequest';
const station = { station: 'L1-placer', line: 'L1' };
let folder: ReturnType<typeof newFolder>;
let held: ReturnType<typeof openHeld>;
let source: Ipc2591 | null = null;
let entries: [string, Record<string, unknown>][] = [];
/** The floor as the log has it now; null: it cannot be read. */
let floor: FloorState | null = null;
let known: FloorState | null = null;

const now = () => ({ ms: performance.now(), wallMs: Date.now() });
const of = (kind: string) => entries.flatMap(([each, payload]) => (each === kind ? [payload] : []));

/** Reels that the log names and the floor does not hold. */
let forgotten = new Set<string>();

function floorWith(unsure: 'Warning' | 'Failed' | null): FloorState {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LOT-1' }));
  story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K2', lot: 'LOT-2' }));
  if (unsure) story.tell('station.interlock-ruled', { ...station, on: true, unsure });
  return story.floor();
}

async function open(answers: boolean): Promise<string> {
  const placer: Ipc2591Station = {
    ...station,
    machine: 'M1',
    at: 'work',
    source: {
      kind: 'ipc2591',
      listen: '127.0.0.1:0',
      handle: 'L1.Placer',
      slots: { P1: 'M1-F-001', P2: 'M1-F-002' },
      ...(answers ? { answers: true } : {}),
    },
  };
  source = await openIpc2591([placer], [placer], {
    folder: folder.path,
    held,
    write: async (kind: EntryKind, payload: object) =>
      void entries.push([kind, checkPayload(kind, payload as never) as unknown as Record<string, unknown>]),
    now,
    onFault: (fault) => {
      throw fault;
    },
    floor: {
      upToDate: async () => floor,
      known: () => known,
      knows: (reel) => forgotten.has(reel),
      tick: () => undefined,
    },
    flush: false,
  });
  source.begin();
  return source.at('L1-placer');
}

beforeEach(() => {
  folder = newFolder();
  held = openHeld(folder.path, false);
  entries = [];
  floor = floorWith('Warning');
  known = floor;
  forgotten = new Set();
});
afterEach(async () => {
  await source?.stop();
  source = null;
  await held.close();
  folder.remove();
});

/** What a machine asks, and the body of what it hears. */
async function asked(at: string, body: object, from = 'L1.Placer') {
  const door = { connect: `amqp://${at}`, address: 'reelward.L1-placer' };
  // Whoever is no machine of the station gets none: that is not waited for so long.
  const answer = await ask(door, { name: NAME, body, from }, from === 'L1.Placer' ? 30_000 : 4_000);
  return answer.ok ? answer.envelope.body : answer.why;
}
const materials = (rows: readonly unknown[], topic = 'Materials') => ({
  ValidationTopic: topic,
  ValidationTopicData: { ValidationTopicData: rows },
});

describe('a machine that asks about its materials', () => {
  test('is answered place by place, in their order, and each answer is in the log', async () => {
    const at = await open(true);
    const rows = [
      said.location('P2', 'K2', 10),
      said.location('P1', 'K2', 10),
      said.location('P9', 'K3', 10),
    ];
    expect(await asked(at, materials(rows))).toEqual({
      ValidationTopic: 'Materials',
      Result: [
        { Result: 'Success', ResultCode: 0, Message: 'Ok' },
        { Result: 'Failed', ResultCode: 3, Message: 'Another reel was verified here' },
        { Result: 'Warning', ResultCode: 8, Message: 'No such slot is known' },
      ],
    });
    expect(of('station.answered')).toEqual([
      {
        ...station,
        results: [
          { slot: 'M1-F-002', reel: 'K2', part: 'R-100', result: 'Success', why: 'verified' },
          { slot: 'M1-F-001', reel: 'K2', part: 'R-100', result: 'Failed', why: 'other-reel' },
          { slot: 'P9', reel: 'K3', part: 'R-100', result: 'Warning', why: 'unknown-slot' },
        ],
      },
    ]);
  });

  test('hears of a reel that no slot names any more that it is another one, and of one that was never scanned that nobody knows it', async () => {
    const at = await open(true);
    forgotten.add('K77');
    const rows = [said.location('P1', 'K77', 10), said.location('P1', 'K78', 10)];
    await asked(at, materials(rows));
    expect(of('station.answered')).toMatchObject([
      {
        results: [
          { result: 'Failed', why: 'other-reel' },
          { result: 'Warning', why: 'unknown-reel' },
        ],
      },
    ]);
  });

  test('hears the plant’s choice for everything while the log cannot be read', async () => {
    const at = await open(true);
    known = floorWith('Failed');
    floor = null;
    const { Result } = (await asked(at, materials([said.location('P1', 'K1', 10)]))) as { Result: unknown };
    expect(Result).toEqual([{ Result: 'Failed', ResultCode: 13, Message: 'The log cannot be read' }]);
    expect(of('station.answered')).toMatchObject([{ results: [{ why: 'out-of-date' }] }]);
  });

  test('is not answered until an engineer has turned it on, nor while nobody can know whether one has', async () => {
    const at = await open(true);
    for (const [fresh, last] of [
      [floorWith(null), null],
      [null, null],
    ] as const) {
      [floor, known] = [fresh, last];
      expect(await asked(at, materials([said.location('P1', 'K1', 10)]))).toBe(
        'CFX.NotSupportedResponse: not turned on',
      );
    }
    expect(of('station.answered')).toEqual([]);
    expect(of('station.noticed')).toMatchObject([{ what: 'asked-off' }]);
  });

  test('is not even heard on a link for answers where the link’s file does not say so', async () => {
    const at = await open(false);
    const why = await asked(at, materials([said.location('P1', 'K1', 10)]));
    expect(why).toContain('not-allowed');
    expect(of('station.answered')).toEqual([]);
  });

  test('another machine’s question, another topic, half a question: refused or told, never a Success', async () => {
    const at = await open(true);
    expect(await asked(at, materials([said.location('P1', 'K1', 1)], 'Tools'))).toContain('NotSupported');
    expect(await asked(at, { ValidationTopic: 'Materials' })).toContain('NotSupported');
    expect(await asked(at, materials([]))).toContain('NotSupported');
    expect(await asked(at, materials(Array.from({ length: 2_001 }, () => null)))).toContain('NotSupported');
    expect(await asked(at, materials([said.location('P1', 'K1', 1)]), 'L1.Oven')).toContain('no answer');
    const odd = [
      null,
      7,
      'M1-F-001',
      {},
      { LocationName: 'P1' },
      { MaterialPackage: { UniqueIdentifier: 'K1' } },
    ];
    const body = (await asked(at, materials(odd))) as { Result: { Result: string }[] };
    expect(body.Result.map(({ Result }) => Result)).toEqual(odd.map(() => 'Warning'));
    expect(of('station.answered')).toHaveLength(1);
    expect(of('station.noticed').map(({ what }) => what)).toContain('other-handle');
  });

  test('two thousand places are answered in one message and stand in ten entries', async () => {
    const at = await open(true);
    const rows = Array.from({ length: 2_000 }, (_, place) => ({
      LocationName: `P${place}`,
      MaterialPackage: { UniqueIdentifier: `K${place}` },
    }));
    const body = (await asked(at, materials(rows))) as { Result: { Result: string }[] };
    expect(body.Result.flatMap(({ Result }, place) => (Result === 'Success' ? [place] : []))).toEqual([1, 2]);
    expect(of('station.answered').map(({ results }) => (results as unknown[]).length)).toEqual(
      Array.from({ length: 10 }, () => 200),
    );
  });

  test('that asks without end is answered sixty times a minute, and the rest is told', async () => {
    const at = await open(true);
    const heard: unknown[] = [];
    for (let round = 0; round < 7; round += 1) {
      const ten = Array.from({ length: 10 }, () => asked(at, materials([said.location('P1', 'K1', 1)])));
      heard.push(...(await Promise.all(ten)));
    }
    expect(heard.filter((each) => typeof each === 'object')).toHaveLength(60);
    expect(of('station.answered')).toHaveLength(1);
    expect(of('station.noticed')).toMatchObject([{ what: 'asked-often' }]);
    await source?.stop();
    source = null;
    expect(of('station.answered-again')).toEqual([{ ...station, times: 59 }]);
  });

  test('is told the same as before without a new row, and each change stands in the log after what was said before it', async () => {
    const at = await open(true);
    const rows = [
      said.location('P1', 'K1', 10),
      said.location('P2', 'K2', 10),
      said.location('P9', 'K3', 10),
    ];
    const first = await asked(at, materials(rows));
    expect(await asked(at, materials(rows))).toEqual(first);
    expect(await asked(at, materials(rows))).toEqual(first);
    const changed = [rows[0], said.location('P2', 'K1', 10), rows[2]];
    expect(await asked(at, materials(changed))).toMatchObject({
      Result: [{ Result: 'Success' }, { Result: 'Failed' }, { Result: 'Warning' }],
    });
    expect(await asked(at, materials(rows))).toEqual(first);
    expect(
      entries.map(([kind, { results, times }]) => [
        kind,
        times ?? (results as { slot: string; reel: string }[]).map(({ slot, reel }) => `${slot} ${reel}`),
      ]),
    ).toEqual([
      ['station.answered', ['M1-F-001 K1', 'M1-F-002 K2', 'P9 K3']],
      ['station.answered-again', 2],
      ['station.answered', ['M1-F-002 K1']],
      ['station.answered-again', 1],
      ['station.answered', ['M1-F-002 K2']],
    ]);
  });
});

// A second feeder is made ready by scans: its code, then the whole label of its reel, whichever way that comes.

import { describe, expect, test } from 'vitest';
import type { Draft } from '../../../../shared/floor/draft.ts';
import { judgePart, readMeter } from '../../../../shared/floor/meter.ts';
import type { Person } from '../../../../shared/floor/state.ts';
import type { ValueCheck } from '../../../../shared/floor/value-check.ts';
import type { App } from '../../../../src/app/app.ts';
import { createReadyDesk } from '../../../../src/app/frame/ready-desk.ts';
import { beginStory, startMs, tellPlant } from '../../../shared/floor/story.ts';
import { listed } from '../../../shared/floor/value-story.ts';

const scan = (text: string) => ({
  codes: [{ text, format: null, symbologyId: null }],
  via: 'wedge' as const,
  atMs: startMs,
});
const label = (part: string) => `[)>\x1e06\x1dP${part}\x1dQ5000\x1d1TLOT7\x1d3SK-NEW\x1e\x04`; // ISO/IEC 15434 format 06

/** A second feeder's desk whose writes are kept; `write` waits until `end` is called. */
function readyDesk({ hasPeople = false, isMeasured = false } = {}) {
  const story = beginStory();
  tellPlant(story);
  if (hasPeople) story.tell('person.added', { person: 'ana', name: 'Ana', role: 'operator', badge: 'B-1' });
  if (isMeasured) {
    listed(story, [{ part: 'R-100', value: '10k', tolerance: '1 %' }]);
    story.tell('line.values-ruled', { line: 'L1', begins: ['R-'], percent: 0.5, digits: 2, guard: 100 });
  }
  const floor = story.floor();
  const ana = floor.people.get('ana') ?? null;
  let person: Person | null = ana;
  const writes: (readonly Draft[])[] = [];
  const ends: ((fails: boolean) => void)[] = [];
  const ready: string[] = [];
  const app = {
    store: { floor: () => floor },
    clock: { nowMs: () => startMs },
    person: { peek: () => person },
    write: (drafts: readonly Draft[]) =>
      new Promise<readonly []>((resolve, reject) => {
        writes.push(drafts);
        ends.push((fails) => (fails ? reject(new Error('the disk is full')) : resolve([])));
      }),
  } as unknown as App; // what the desk asks of it
  const at = { line: 'L1', setup: 'brook-top-a', slot: 'M1-F-001' };
  const desk = createReadyDesk(app, { ...at, onReady: (feeder) => ready.push(feeder) });
  const end = async (fails = false) => {
    ends.shift()?.(fails);
    await settled();
  };
  const signOut = () => {
    person = null;
  };
  const signIn = () => {
    person = ana;
  };
  return { desk, writes, ready, end, signOut, signIn };
}

const payloadOf = (drafts: readonly Draft[] | undefined) => {
  const [first] = drafts ?? [];
  return typeof first === 'function' ? null : first?.payload;
};

/** Lets what was scanned be judged: all of it waits for promises alone. */
const settled = async () => {
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
};

async function takeAll({ desk }: ReturnType<typeof readyDesk>, ...texts: readonly string[]): Promise<void> {
  for (const text of texts) {
    expect(desk.take(scan(text))).toBe(true);
    await settled();
  }
}

describe('createReadyDesk()', () => {
  test('is ready by a feeder and the label of a right reel', async () => {
    const run = readyDesk();
    await takeAll(run, 'FD-2', label('R-100'));
    expect(run.writes).toHaveLength(1);
    await run.end();
    expect(run.ready).toEqual(['FD-2']);
  });

  test('judges a label that comes code by code by all of its codes', async () => {
    const run = readyDesk();
    await takeAll(run, 'FD-2', 'PR-100', 'Q5000');
    expect(run.writes).toEqual([]);
    expect(run.desk.desk.value.partial).toMatchObject({ part: 'R-100', quantity: 5000 });
    await takeAll(run, '1TLOT7');
    expect(payloadOf(run.writes[0])).toMatchObject({ lot: 'LOT7', quantity: 5000, verdict: 'accepted' });
  });

  test('judges what there is of it where a person says that it has no more', async () => {
    const run = readyDesk();
    await takeAll(run, 'FD-2', 'PR-100');
    run.desk.enough();
    await settled();
    expect(payloadOf(run.writes[0])).toMatchObject({ part: 'R-100', lot: null });
  });

  test('says what is wrong with a label, and asks what it does not say for sure', async () => {
    const run = readyDesk();
    await takeAll(run, 'FD-2', 'PCUß77');
    expect(run.desk.told.value).toMatchObject({ tell: 'wrong-keyboard' });
    const portion = { index: 0, of: 2, id: '7' };
    run.desk.take({
      ...scan('x'),
      codes: [{ text: 'PR-100', format: 'QRCode', symbologyId: null, portion }],
    });
    await settled();
    expect(run.desk.told.value).toMatchObject({ tell: 'symbols-missing', have: 1, of: 2 });
    run.desk.take({ ...scan('PX-4711'), via: 'typed' });
    await settled();
    expect(run.desk.desk.value.question).toMatchObject({ ask: 'meaning' });
    run.desk.answers.chooseMeaning('part', 'PX-4711');
    await settled();
    await run.end();
    expect(run.desk.told.value).toMatchObject({ tell: 'refused', reason: { code: 'wrong-part' } });
  });

  test('a scan while one is written waits for it, and a write that fails stops none', async () => {
    const run = readyDesk();
    await takeAll(run, 'FD-2', label('R-999'), label('R-100'));
    expect(run.writes).toHaveLength(1);
    await run.end(true);
    expect(run.writes).toHaveLength(2);
    await run.end();
    expect(run.ready).toEqual(['FD-2']);
  });

  test('takes no other slot and no other feeder for the reel', async () => {
    const run = readyDesk();
    await takeAll(run, 'FD-2', 'M1-F-002');
    expect(run.desk.told.value).toEqual({ tell: 'unread' });
    await takeAll(run, label('R-100'));
    expect(payloadOf(run.writes[0])).toMatchObject({ readying: true, feeder: 'FD-2', part: 'R-100' });
  });

  test('writes nothing for somebody who was signed out meanwhile', async () => {
    const run = readyDesk({ hasPeople: true });
    await takeAll(run, 'FD-2', 'PR-100');
    run.signOut();
    run.desk.enough();
    await takeAll(run, label('R-100'));
    expect(run.desk.told.value).toEqual({ tell: 'sign-in' });
    expect(run.writes).toEqual([]);
  });

  test('what was measured is not lost where the tablet signed out meanwhile: the reel’s next scan is judged with it', async () => {
    const run = readyDesk({ hasPeople: true, isMeasured: true });
    await takeAll(run, 'FD-2', label('R-100'));
    const { question } = run.desk.desk.value;
    if (question?.ask !== 'value') throw new Error('the value is asked for');
    run.signOut();
    run.desk.answers.chooseValue(measuredNow(question.check));
    await settled();
    expect(run.desk.told.value).toEqual({ tell: 'sign-in' });
    expect(run.desk.desk.value.reel?.measured).toMatchObject({ quantity: 10.02 });
    run.signIn();
    await takeAll(run, label('R-100'));
    expect(run.desk.desk.value.question).toBeNull();
    expect(run.writes[0]?.map((draft) => (typeof draft === 'function' ? null : draft.kind))).toContain(
      'reel.measured',
    );
  });

  test('an answer waits while a scan before it is written', async () => {
    const run = readyDesk();
    await takeAll(run, 'FD-2', label('R-999'));
    expect(run.writes).toHaveLength(1);
    run.desk.answers.leaveQuestion();
    run.desk.take(scan(label('R-100')));
    await settled();
    expect(run.writes).toHaveLength(1);
    expect(run.desk.desk.value.reel).toMatchObject({ part: 'R-999' });
    run.desk.enough();
    await run.end();
    expect(run.writes).toHaveLength(2);
    await run.end();
    expect(run.ready).toEqual(['FD-2']);
  });
});

function measuredNow(check: ValueCheck) {
  const [wanted] = check.wanted;
  const shown = readMeter('10.02', 'kΩ');
  if (wanted === undefined || shown === null) throw new Error('10.02 is a reading of a wanted value');
  return judgePart(check, wanted, shown, 'typed');
}

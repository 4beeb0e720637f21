// A cart is filled by scans: each verdict is one write, with what stands on the cart by it.

import { describe, expect, test } from 'vitest';
import type { Draft } from '../../../../../shared/floor/draft.ts';
import { judgePart, readMeter } from '../../../../../shared/floor/meter.ts';
import type { App } from '../../../../../src/app/app.ts';
import { createCartDesk } from '../../../../../src/app/screens/change/cart-desk.ts';
import { beginStory, startMs, tellPlant } from '../../../../shared/floor/story.ts';
import { listed } from '../../../../shared/floor/value-story.ts';

const scan = (text: string) => ({
  codes: [{ text, format: null, symbologyId: null }],
  via: 'wedge' as const,
  atMs: startMs,
});
const label = (part: string) => `[)>\x1e06\x1dP${part}\x1dQ5000\x1d1TLOT7\x1d3SK-NEW\x1e\x04`; // ISO/IEC 15434 format 06

/** A cart's desk whose writes are kept; `write` may fail. */
function cartDesk({ fails = false, hasPeople = false, isMeasured = false } = {}) {
  const story = beginStory();
  tellPlant(story);
  if (hasPeople) story.tell('person.added', { person: 'ana', name: 'Ana', role: 'operator', badge: 'B-1' });
  if (isMeasured) {
    listed(story, [{ part: 'R-100', value: '10k', tolerance: '1 %' }]);
    story.tell('line.values-ruled', { line: 'L1', begins: ['R-'], percent: 0.5, digits: 2, guard: 100 });
  }
  const floor = story.floor();
  const writes: (readonly Draft[])[] = [];
  let person = floor.people.get('ana') ?? null;
  const signOut = () => {
    person = null;
  };
  const app = {
    store: { floor: () => floor },
    clock: { nowMs: () => startMs },
    person: { peek: () => person },
    write: async (drafts: readonly Draft[]) => {
      writes.push(drafts);
      if (fails) throw new Error('the disk is full');
      return [];
    },
  } as unknown as App; // what the desk asks of it
  const signIn = () => {
    person = floor.people.get('ana') ?? null;
  };
  return { writes, signOut, signIn, desk: createCartDesk(app, { line: 'L1', setup: 'brook-top-a' }) };
}

const kindsOf = (drafts: readonly Draft[] | undefined) =>
  drafts?.map((draft) => (typeof draft === 'function' ? draft(['T1/e/1'], 'T1/e/2') : draft).kind);

/** Lets what was scanned be judged and written: all of it waits for promises alone. */
const settled = async () => {
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
};

describe('createCartDesk()', () => {
  test('writes an accepted reel and its place on the cart at once', async () => {
    const { desk, writes } = cartDesk();
    desk.use('CA');
    for (const text of ['M1-F-001', label('R-100')]) {
      expect(desk.take(scan(text))).toBe(true);
      await settled();
    }
    expect(writes.map(kindsOf)).toEqual([['reel.verified', 'cart.filled']]);
    expect(desk.told.value).toEqual({ tell: 'accepted', slot: 'M1-F-001' });
    expect(desk.desk.value).toMatchObject({ slot: null, reel: null });
  });

  test('writes a refusal alone and asks for another reel', async () => {
    const { desk, writes } = cartDesk();
    desk.use('CA');
    for (const text of ['M1-F-001', label('R-999')]) {
      desk.take(scan(text));
      await settled();
    }
    expect(writes.map(kindsOf)).toEqual([['reel.verified']]);
    expect(desk.told.value).toMatchObject({ tell: 'refused', reason: { code: 'wrong-part' } });
    expect(desk.desk.value).toMatchObject({ slot: 'M1-F-001', reel: null });
  });

  test('asks what a text means that may be several things, and goes on with the answer', async () => {
    const { desk, writes } = cartDesk();
    desk.use('CA');
    for (const text of ['M1-F-001', 'PX-4711']) {
      desk.take({ ...scan(text), via: 'typed' });
      await settled();
    }
    expect(desk.desk.value.question).toMatchObject({ ask: 'meaning', question: { text: 'PX-4711' } });
    desk.answers.chooseMeaning('part', 'PX-4711');
    await settled();
    expect(desk.told.value).toMatchObject({ tell: 'refused', reason: { code: 'wrong-part' } });
    expect(writes.map(kindsOf)).toEqual([['reel.verified']]);
  });

  test('judges no answer of somebody who was signed out meanwhile', async () => {
    const { desk, writes, signOut } = cartDesk({ hasPeople: true });
    desk.use('CA');
    for (const text of ['M1-F-001', 'PX-4711']) {
      desk.take({ ...scan(text), via: 'typed' });
      await settled();
    }
    signOut();
    desk.answers.chooseMeaning('part', 'PX-4711');
    await settled();
    expect(desk.told.value).toEqual({ tell: 'sign-in' });
    expect(writes).toEqual([]);
  });

  test('keeps what was measured where the tablet signed out meanwhile', async () => {
    const { desk, writes, signOut, signIn } = cartDesk({ hasPeople: true, isMeasured: true });
    desk.use('CA');
    for (const text of ['M1-F-001', label('R-100')]) {
      desk.take(scan(text));
      await settled();
    }
    const { question } = desk.desk.value;
    if (question?.ask !== 'value') throw new Error('the value is asked for');
    const [wanted] = question.check.wanted;
    const shown = readMeter('10.02', 'kΩ');
    if (wanted === undefined || shown === null) throw new Error('10.02 is a reading of a wanted value');
    signOut();
    desk.answers.chooseValue(judgePart(question.check, wanted, shown, 'typed'));
    await settled();
    expect(desk.told.value).toEqual({ tell: 'sign-in' });
    signIn();
    desk.take(scan(label('R-100')));
    await settled();
    expect(writes.map(kindsOf)).toEqual([['reel.verified', 'reel.measured', 'cart.filled']]);
  });

  test('leaves a question where a person says so, and says what it cannot use', async () => {
    const { desk } = cartDesk();
    desk.use('CA');
    desk.take({ ...scan('PX-4711'), via: 'typed' });
    await settled();
    desk.answers.leaveQuestion();
    expect(desk.desk.value).toMatchObject({ question: null, reel: null });
    for (const [text, told] of [
      ['PCUß77', { tell: 'wrong-keyboard', layout: 'German (QWERTZ)' }],
      ['M9-F-001', { tell: 'unknown-code', text: 'M9-F-001' }],
      ['Q100', { tell: 'half-label' }],
    ] as const) {
      desk.take(scan(text));
      await settled();
      expect(desk.told.value, text).toMatchObject(told);
    }
  });

  test('a write that fails says nothing of ready, and keeps what was scanned', async () => {
    const { desk, writes } = cartDesk({ fails: true });
    desk.use('CA');
    for (const text of ['M1-F-001', label('R-100')]) {
      desk.take(scan(text));
      await settled();
    }
    expect(writes).toHaveLength(1);
    expect(desk.told.value).toBeNull();
    expect(desk.desk.value).toMatchObject({ slot: 'M1-F-001', reel: { reel: 'K-NEW' } });
  });

  test('without a cart in hand, a code that nobody knows may be a cart’s name', () => {
    const { desk } = cartDesk();
    expect(desk.take(scan('CART-9'))).toBe(true);
    expect(desk.typed.value).toBe('CART-9');
    expect(desk.take(scan('M1-F-001'))).toBe(false);
  });
});

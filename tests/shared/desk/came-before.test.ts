// A reel without an id of its own that comes a second time: it is asked whether it is the one that came off, and where its floor life or its count
// matters it cannot begin afresh. 168 h at level 3 by J-STD-020.

import { describe, expect, test } from 'vitest';
import { judgeForCart, judgeReel, type ReadyDesk } from '../../../shared/desk/judgement.ts';
import { type Desk, type DeskView, emptyDesk } from '../../../shared/desk/model.ts';
import { answerCameBefore, takeScan } from '../../../shared/desk/take-scan.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { beginStory, startMs, tellPlant, unloaded, verified, wantedSlot } from '../floor/story.ts';

const slot = 'M1-F-001';
/** A label by ISO/IEC 15434 format 06 without a package id: P part, Q quantity, 1T lot. */
const label = (lot = 'LOT7', id = '') => `[)>\x1e06\x1dPR-100\x1dQ5000\x1d1T${lot}${id}\x1e\x04`;
const scan = (text: string): Scan => ({
  codes: [{ text, format: null, symbologyId: null }],
  via: 'wedge',
  atMs: 0,
});

function view(msl: string | null, left: number | null = 1200): DeskView {
  const story = beginStory();
  tellPlant(story);
  const slots = [wantedSlot(slot, 'R-100', msl === null ? {} : { msl })];
  const setup = {
    setup: 'again',
    product: 'Brook',
    side: 'top',
    revision: 'B',
    line: 'L1',
    source: '',
  } as const;
  story.tell('setup.taken', { ...setup, slots });
  story.tell('setup.chosen', { line: 'L1', setup: 'again' });
  story.tell('reel.verified', verified(slot, 'R-100', { setup: 'again', lot: 'LOT7', quantity: 5000 }));
  story.tell('reel.unloaded', unloaded(slot, { quantity: left, basis: left === null ? null : 'typed' }));
  return { floor: story.floor(), line: 'L1' };
}
const at: Desk = { ...emptyDesk, slot, atSlot: true };
const take = (seen: DeskView, text = label()) => takeScan(at, scan(text), seen);

function judge(seen: DeskView, desk: Desk) {
  if (desk.reel === null) throw new Error('Cannot judge as no reel is in hand');
  const ready: ReadyDesk = { ...desk, slot, reel: desk.reel };
  return judgeReel(seen, ready, startMs + 3_600_000).answer;
}

describe('a second load of the same part and lot without an id', () => {
  test('is asked about, with what the reel before had left', () => {
    expect(take(view(null))).toMatchObject({
      reel: null,
      question: { ask: 'came-before', left: 1200, lot: 'LOT7' },
    });
  });

  test.each([
    ['another lot', label('LOT8')],
    ['an id of its own', label('LOT7', '\x1d3SK-77')],
  ])('is not asked about where it has %s', (_, text) => {
    expect(take(view(null), text)).toMatchObject({ question: null, reel: { part: 'R-100' } });
  });

  test('goes on with the count of the reel before where it is that one', () => {
    const seen = view(null);
    const desk = answerCameBefore(take(seen), true);
    expect(desk.reel).toMatchObject({ quantity: 1200, basis: 'counted-down' });
    expect(judge(seen, desk).verdict).toBe('accepted');
  });

  test('has its label’s count where a person says that it is new', () => {
    const seen = view(null);
    const desk = answerCameBefore(take(seen), false);
    expect(desk.reel).toMatchObject({ quantity: 5000, isFresh: true });
    expect(judge(seen, desk).verdict).toBe('accepted');
  });

  test('is held where its floor life is limited, whatever was answered: it may have lain open', () => {
    const seen = view('3');
    for (const isSame of [true, false]) {
      const answer = judge(seen, answerCameBefore(take(seen), isSame));
      expect(answer.verdict).toBe('held');
      expect(answer.reasons[0]).toMatchObject({ code: 'reel-unnamed', floorLife: true });
    }
  });

  test('is held at a cart, where nothing is asked', () => {
    const seen = view(null);
    const { question } = take(seen);
    if (question?.ask !== 'came-before') throw new Error('nothing was asked');
    const place = { line: 'L1', setup: 'again', cart: 'CART-1' };
    const { answer } = judgeForCart(seen.floor, place, { slot, feeder: null, reel: question.reel }, startMs);
    expect(answer).toMatchObject({ verdict: 'held', reasons: [{ code: 'reel-unnamed' }] });
  });

  test('is not asked about where the reel before came off empty', () => {
    expect(take(view(null, 0)).question).toBeNull();
  });
});

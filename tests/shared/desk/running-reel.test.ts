// Is the label in hand that of the reel which runs on the slot? As the old reel of a splice, as one that must come out, or as neither.

import { describe, expect, test } from 'vitest';
import { type Desk, type DeskView, deskAct, emptyDesk, isDeskReady } from '../../../shared/desk/model.ts';
import { answerCameBefore, answerRunsHere, takeScan } from '../../../shared/desk/take-scan.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from '../floor/story.ts';

/** ISO/IEC 15434 format 06 with the data identifiers of ANS MH10.8.2: P part, 1P supplier part, Q quantity, 1T lot, 3S package. */
const label = (...elements: string[]) => `[)>\x1e06\x1d${elements.join('\x1d')}\x1e\x04`;
const scan = (text: string, via: Scan['via'] = 'camera'): Scan => ({
  codes: [{ text, format: null, symbologyId: null }],
  via,
  atMs: 0,
});
const slot = 'M1-F-001';

function viewOf(before: (story: Story) => void): DeskView {
  const story = beginStory();
  tellPlant(story);
  before(story);
  return { floor: story.floor(), line: 'L1' };
}
const play = (view: DeskView, texts: readonly string[], desk: Desk = emptyDesk) =>
  texts.reduce((now, text) => takeScan(now, scan(text), view), desk);
/** A slot that was chosen on the screen: its running reel is asked for first. */
const chosen: Desk = { ...emptyDesk, slot };

describe('the running reel without an id', () => {
  const facts = { lot: 'LOT7', quantity: 1000 };
  test.each<[what: string, isIt: boolean, running: Parameters<typeof verified>[2], text: string]>([
    ['its part and lot', true, facts, label('PR-100', 'Q1000', '1TLOT7')],
    ['its part, and no lot', true, facts, label('PR-100', 'Q1000')],
    ['its part, where its own lot is not known', true, { lot: null }, label('PR-100', 'Q1000', '1TLOT8')],
    ['another lot', false, facts, label('PR-100', 'Q1000', '1TLOT8')],
    ['another part of the same lot', false, facts, label('PC-200', 'Q1000', '1TLOT7')],
    ['another part, and no lot', false, facts, label('PC-200', 'Q1000')],
    ['a supplier’s number that it did not have', false, facts, label('1PSUP-9', 'Q1000', '1TLOT7')],
    ['its supplier’s number', true, { ...facts, supplierPart: 'SUP-9' }, label('1PSUP-9', 'Q9', '1TLOT7')],
    ['another supplier’s number', false, { ...facts, supplierPart: 'SUP-9' }, label('1PSUP-8', '1TLOT7')],
  ])('is known by its label or not: %s', (_, isIt, running, text) => {
    const view = viewOf((story) => story.tell('reel.verified', verified(slot, 'R-100', running)));
    const desk = play(view, [text], chosen);
    expect(desk).toMatchObject({ reel: null, atSlot: isIt, oldSeen: isIt });
    expect(desk.told?.tell ?? null).toBe(isIt ? null : 'old-reel-differs');
  });

  test.each([
    [label('PC-200', 'Q1000'), 'C-200'],
    [label('1PSUP-9', 'Q1000', '1TLOT7'), 'SUP-9'],
    [label('PC-200', 'Q1000', '3SK7'), 'K7'],
  ])('is told by its part beside what was found instead', (text, found) => {
    const view = viewOf((story) => story.tell('reel.verified', verified(slot, 'R-100', facts)));
    expect(play(view, [text], chosen).told).toMatchObject({ found, loaded: 'R-100' });
  });

  test('is either tape where two are joined', () => {
    const view = viewOf((story) => {
      story.tell('reel.verified', verified(slot, 'R-100', facts));
      story.tell('reel.verified', verified(slot, 'R-100', { act: 'splice', reel: 'K2', lot: 'LOT8' }));
    });
    for (const text of [label('PR-100', '1TLOT7'), label('PR-100', '1TLOT8', '3SK2')])
      expect(play(view, [text], chosen), text).toMatchObject({ atSlot: true, told: null });
    // The label of the first, once more: the same reel, or a second one that reads like it?
    const again = play(view, [slot, label('PR-100', 'Q1000', '1TLOT7')]);
    expect(again.question).toMatchObject({ ask: 'runs-here', slot });
  });
});

describe('a label that reads like that of the running reel', () => {
  const running = (count: number | null, basis: 'label' | 'weighed' | null) =>
    viewOf((story) =>
      story.tell('reel.verified', verified(slot, 'R-100', { lot: 'LOT7', quantity: count, basis })),
    );

  test.each<[quantity: string, count: number | null, basis: 'label' | 'weighed' | null, isAsked: boolean]>([
    ['Q1000', 1000, 'label', true],
    ['Q900', 1000, 'label', false], // another number is printed: another label
    ['Q900', 1000, 'weighed', true], // what a scale said is on no label
    ['Q900', null, null, true],
    ['', 1000, 'label', true],
  ])('%s against %s by %s is asked about: %s', (quantity, count, basis, isAsked) => {
    const text = label(...['PR-100', quantity, '1TLOT7'].filter((each) => each !== ''));
    const { question, reel } = play(running(count, basis), [slot, text]);
    expect(question?.ask ?? null).toBe(isAsked ? 'runs-here' : null);
    expect(reel === null).toBe(isAsked);
  });

  test('is no question for a load, on an empty slot or in a sweep', () => {
    const view = running(1000, 'label');
    const text = label('PR-100', 'Q1000', '1TLOT7');
    expect(play(view, ['M1-R-003', text])).toMatchObject({ question: null, reel: { part: 'R-100' } });
    expect(play(view, [slot, text], { ...emptyDesk, mode: 'sweep' })).toMatchObject({ question: null });
  });

  test('after the answer it is the old reel that was seen, or a new one and no longer asked about', () => {
    const view = running(1000, 'label');
    const text = label('PR-100', 'Q1000', '1TLOT7');
    const asked = play(view, [slot, text]);
    expect(answerRunsHere(asked, false)).toMatchObject({ reel: null, atSlot: true, oldSeen: true });
    const second = answerRunsHere(asked, true);
    expect(second).toMatchObject({ reel: { isSecond: true, lot: 'LOT7' }, oldSeen: false });
    expect(isDeskReady(second, view)).toBe(true);
    expect(answerRunsHere(chosen, true)).toBe(chosen);
    expect(answerCameBefore(asked, true)).toBe(asked);
  });
});

describe('the running reel by its id', () => {
  const view = viewOf((story) => {
    story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', lot: 'LOT7' }));
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K3', lot: 'LOT7' }));
  });
  const one = label('PR-100', 'Q1000', '1TLOT7', '3SK1');
  const three = label('PR-100', 'Q1000', '1TLOT7', '3SK3');

  test('names its slot, and is asked about the second time it is scanned there', () => {
    const named = play(view, [one]);
    expect(named).toMatchObject({ slot, atSlot: true, oldSeen: true, reel: null, old: { reel: 'K1' } });
    expect(play(view, [one, one]).question).toMatchObject({ ask: 'runs-here', slot });
    expect(play(view, [slot, one])).toMatchObject({ question: null, oldSeen: true });
    expect(play(view, [one], chosen)).toMatchObject({ atSlot: true, oldSeen: true, question: null });
    expect(play(view, [one, one], chosen).question).toMatchObject({ ask: 'runs-here', slot });
  });

  test('that was seen at one slot says nothing of the next slot’s', () => {
    const moved = play(view, [slot, one, 'M1-R-003']);
    expect(moved).toMatchObject({ slot: 'M1-R-003', oldSeen: false });
    expect(play(view, [three], { ...moved, reel: null })).toMatchObject({ oldSeen: true, question: null });
  });

  test('in hand for one slot, it goes on to the next that is scanned', () => {
    const desk = play(view, ['M1-F-002', label('PC-200', 'Q10', '1TX', '3SK9'), 'M1-F-010']);
    expect(desk).toMatchObject({ slot: 'M1-F-010', feeder: null, reel: { reel: 'K9' } });
  });

  test('names no slot in a sweep, on another line, or where it belongs to an earlier setup', () => {
    expect(play(view, [one], { ...emptyDesk, mode: 'sweep' })).toMatchObject({
      slot: null,
      reel: { reel: 'K1' },
    });
    expect(play({ ...view, line: 'L2' }, [one])).toMatchObject({ slot: null, reel: { reel: 'K1' } });
    const left = viewOf((story) => {
      story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', lot: 'LOT7' }));
      story.tell('setup.taken', { ...brookSetup, setup: 'fell', slots: [wantedSlot(slot, 'C-900')] });
      story.tell('setup.chosen', { line: 'L1', setup: 'fell' });
    });
    expect(play(left, [one])).toMatchObject({ slot: null, reel: { reel: 'K1' } });
  });
});

describe('while a changeover is open', () => {
  const facts = { changeover: 'ch-1', line: 'L1', from: 'brook-top-a', product: 'Fell', lastPanel: null };
  /** F-001 wants another part now, F-002 the same, F-010 is not used any more. */
  const view = viewOf((story) => {
    story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', lot: 'LOT7' }));
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K2', lot: 'LOT8' }));
    story.tell('reel.verified', verified('M1-F-010', 'U-300', { reel: 'K3', lot: 'LOT9' }));
    const slots = [
      wantedSlot(slot, 'C-900'),
      wantedSlot('M1-F-002', 'C-200'),
      wantedSlot('M1-F-003', 'U-300'),
    ];
    story.tell('setup.taken', { ...brookSetup, setup: 'fell', product: 'Fell', slots });
    story.tell('changeover.began', { ...facts, setup: 'fell' });
    story.tell('setup.chosen', { line: 'L1', setup: 'fell' });
  });
  const k1 = label('PR-100', 'Q1000', '1TLOT7', '3SK1');
  const k2 = label('PC-200', 'Q1000', '1TLOT8', '3SK2');
  const k3 = label('PU-300', 'Q1000', '1TLOT9', '3SK3');

  test('the reel of a slot that wants another part, or is not used any more, is to be taken out', () => {
    expect(play(view, [slot, k1])).toMatchObject({ reel: null, told: { tell: 'take-out', slot } });
    expect(play(view, ['M1-F-010', k3]).told).toEqual({ tell: 'take-out', slot: 'M1-F-010' });
  });

  test('the reel that stays is none of those: it is the old one of a splice', () => {
    expect(play(view, ['M1-F-002', k2])).toMatchObject({ told: null, atSlot: true, oldSeen: true });
    expect(play(view, [k2])).toMatchObject({ slot: 'M1-F-002', old: { reel: 'K2' } });
  });

  test('a reel that comes out names no slot by itself: it may go on elsewhere', () => {
    const desk = play(view, [k3]);
    expect(desk).toMatchObject({ slot: null, reel: { reel: 'K3' }, told: null });
    const moved = play(view, [k3, 'M1-F-003']);
    expect(moved).toMatchObject({ slot: 'M1-F-003', reel: { reel: 'K3' } });
    expect(deskAct(moved, view)).toBe('load');
  });

  test('nothing comes out of an empty slot, nor another reel than stands there', () => {
    expect(play(view, ['M1-F-003', k3])).toMatchObject({ told: null, reel: { reel: 'K3' } });
    expect(play(view, [slot, label('PC-900', 'Q10', '1TX', '3SK9')])).toMatchObject({
      told: null,
      reel: { reel: 'K9' },
    });
  });
});

describe('a reel without an id that came off before', () => {
  const view = (left: number | null) =>
    viewOf((story) => {
      const basis = left === null ? null : ('typed' as const);
      story.tell('reel.verified', verified(slot, 'R-100', { lot: 'LOT7', quantity: left, basis }));
      story.tell('reel.unloaded', unloaded(slot, { quantity: left, basis }));
    });
  const text = label('PR-100', 'Q5000', '1TLOT7');

  test('has no count and says so, where the one before had none', () => {
    const asked = play(view(null), [slot, text]);
    expect(asked.question).toMatchObject({ ask: 'came-before', left: null });
    expect(answerCameBefore(asked, true).reel).toMatchObject({ quantity: null, basis: null });
  });

  test('is not asked about again once a person said that it is new, nor in a sweep', () => {
    const seen = view(1200);
    const fresh = answerCameBefore(play(seen, [slot, text]), false);
    expect(fresh).toMatchObject({ question: null, reel: { isFresh: true, quantity: 5000 } });
    expect(isDeskReady(fresh, seen)).toBe(true);
    expect(play(seen, [slot, text], { ...emptyDesk, mode: 'sweep' }).question).toBeNull();
  });
});

// The desk refuses at the scan that shows a reel wrong, asks about a label that reads like the running reel's, and offers an unknown word
// as a place.

import { describe, expect, test } from 'vitest';
import { isTrailing, judgeEarly, leadWanted } from '../../../shared/desk/judgement.ts';
import { type DeskView, emptyDesk, isDeskReady } from '../../../shared/desk/model.ts';
import { answerMeaning, answerRunsHere, takeScan } from '../../../shared/desk/take-scan.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { beginStory, type Story, startMs, tellPlant, verified } from '../floor/story.ts';

const scan = (text: string): Scan => ({
  codes: [{ text, format: null, symbologyId: null }],
  via: 'wedge',
  atMs: 0,
});
const envelope = (...elements: string[]) => `[)>\x1e06\x1d${elements.join('\x1d')}\x1e\x04`; // ISO/IEC 15434 format 06
function viewOf(before: (story: Story) => void = () => undefined): DeskView {
  const story = beginStory();
  tellPlant(story, { rules: { feedersKnown: true } });
  story.tell('feeder.known', { feeder: 'FD-24', tapeWidthMm: 24, pitchesMm: [4], positions: 3 });
  before(story);
  return { floor: story.floor(), line: 'L1' };
}
const play = (view: DeskView, ...texts: readonly string[]) =>
  texts.reduce((desk, text) => takeScan(desk, scan(text), view), emptyDesk);

describe('judgeEarly()', () => {
  test('refuses slot and label, slot and feeder, a label alone, and a label whose first code came: one entry each', () => {
    const view = viewOf();
    const cases = [
      { codes: ['M1-F-001', envelope('PC-200', 'Q500', '1TLOT7')], reason: 'wrong-part', slot: 'M1-F-001' },
      { codes: [envelope('PC-200', 'Q500', '1TLOT7'), 'M1-F-001'], reason: 'wrong-part', slot: 'M1-F-001' },
      { codes: ['M1-F-001', 'FD-24'], reason: 'feeder-width', slot: 'M1-F-001' },
      { codes: [envelope('PZ-9', 'Q500', '1TLOT7')], reason: 'not-in-setup', slot: null },
      { codes: ['M1-F-001', 'PC-200'], reason: 'wrong-part', slot: 'M1-F-001' },
    ];
    for (const { codes, reason, slot } of cases) {
      const told = codes.join(' then ');
      const desk = play(view, ...codes);
      expect(isDeskReady(desk, view), told).toBe(false);
      const judged = judgeEarly(view, desk, startMs);
      expect(judged?.drafts, told).toMatchObject([
        { kind: 'reel.verified', payload: { verdict: 'refused', slot, reasons: [{ code: reason }] } },
      ]);
    }
  });

  test('says nothing where nothing refuses yet, or where something is still asked', () => {
    const view = viewOf();
    for (const codes of [
      ['M1-F-001'],
      ['M1-F-001', envelope('PR-100', 'Q500', '1TLOT7')],
      ['FD-24'],
      ['PX-4711'],
    ])
      expect(judgeEarly(view, play(view, ...codes), startMs), codes.join(' then ')).toBeNull();
  });

  test('says at the scan of an expired reel that a lead must decide, while the feeder is still wanted', () => {
    const view = viewOf();
    const desk = play(view, 'M1-F-001', envelope('PR-100', 'Q500', '1TLOT7', '14D20260101'));
    expect(judgeEarly(view, desk, startMs)).toBeNull();
    expect(leadWanted(view, desk, startMs)).toMatchObject({ code: 'expired', expires: '2026-01-01' });
    const fine = play(view, 'M1-F-001', envelope('PR-100', 'Q500', '1TLOT7', '14D20270101'));
    expect(leadWanted(view, fine, startMs)).toBeNull();
  });

  test('takes what trails of a refused label for no new reel', () => {
    const view = viewOf();
    const { partial } = play(view, 'M1-F-001', 'PC-200');
    if (!partial) throw new TypeError('Cannot go on as a label must have begun');
    const goesOn = (text: string, codes: readonly string[] = partial.codes) =>
      isTrailing(view, { ...partial, codes }, scan(text));
    expect([goesOn('Q500'), goesOn('1TLOT7')]).toEqual([true, true]);
    for (const other of ['PR-100', 'M1-F-001', 'FD-24', envelope('PR-100', 'Q5', '1TL')])
      expect(goesOn(other), other).toBe(false);
    expect(goesOn('Q900', ['PC-200', 'Q500'])).toBe(false);
    expect(goesOn('Q500', [])).toBe(false);
  });
});

describe('the label of the reel that runs, as the new one of a splice', () => {
  const nameless = envelope('PR-100', 'Q1000', '1TLOT7');
  const named = envelope('PR-100', 'Q1000', '1TLOT7', '3SK-OLD');

  test('is asked about without an id, and goes on only as a second reel', () => {
    const view = viewOf((story) =>
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'LOT7', quantity: 1000 })),
    );
    const desk = play(view, 'M1-F-001', nameless);
    expect(desk).toMatchObject({ reel: null, question: { ask: 'runs-here', slot: 'M1-F-001' } });
    expect(isDeskReady(desk, view)).toBe(false);
    const same = answerRunsHere(desk, false);
    expect(same).toMatchObject({ reel: null, question: null, slot: 'M1-F-001' });
    const second = answerRunsHere(desk, true);
    expect(second.reel).toMatchObject({ part: 'R-100', isSecond: true });
    expect(isDeskReady(second, view)).toBe(true);
    // Another quantity printed, another lot: another label.
    expect(play(view, 'M1-F-001', envelope('PR-100', 'Q900', '1TLOT7')).question).toBeNull();
    expect(play(view, 'M1-F-001', envelope('PR-100', 'Q1000', '1TLOT8')).question).toBeNull();
  });

  test('with an id is the old reel once, and asked about the second time', () => {
    const view = viewOf((story) =>
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K-OLD', lot: 'LOT7' })),
    );
    expect(play(view, 'M1-F-001', named)).toMatchObject({ reel: null, question: null, atSlot: true });
    expect(play(view, named, 'M1-F-001')).toMatchObject({ reel: null, question: null, atSlot: true });
    const again = play(view, 'M1-F-001', named, named);
    expect(again).toMatchObject({ reel: null, question: { ask: 'runs-here' } });
    const fresh = takeScan(
      answerRunsHere(again, false),
      scan(envelope('PR-100', 'Q9', '1TB', '3SK-NEW')),
      view,
    );
    expect(fresh.reel?.reel).toBe('K-NEW');
  });
});

describe('a word that no list knows', () => {
  test('is offered as a place and as a reel, whole, whatever its first letter', () => {
    const view = viewOf();
    for (const word of ['SHELF-A1', 'PALLET-3', 'SRACK12']) {
      const desk = play(view, word);
      expect(desk.question, word).toMatchObject({
        ask: 'meaning',
        question: { text: word },
      });
      const { question } = desk;
      expect(question?.ask === 'meaning' && question.question.candidates.slice(0, 2)).toEqual([
        { field: 'place', value: word },
        { field: 'reel', value: word },
      ]);
      expect(answerMeaning(desk, 'place', word, view)).toMatchObject({
        reel: null,
        question: null,
        told: { tell: 'place', place: word },
      });
      expect(answerMeaning(desk, 'reel', word, view).reel?.reel).toBe(word);
    }
  });

  test('is the place where a reel lies there', () => {
    const view = viewOf((story) =>
      story.tell('reel.put', {
        reel: 'K1',
        part: 'R-100',
        supplierPart: null,
        quantity: 5,
        lot: null,
        dateCode: null,
        place: 'SHELF-A1',
        via: 'typed',
      }),
    );
    expect(play(view, 'SHELF-A1')).toMatchObject({
      question: null,
      told: { tell: 'place', place: 'SHELF-A1' },
    });
  });
});

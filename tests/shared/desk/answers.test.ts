// What a person answers at the desk, and what the desk makes of labels that come in pieces or of which the log knows more.

import { describe, expect, test } from 'vitest';
import { judgeEarly } from '../../../shared/desk/judgement.ts';
import { type Desk, type DeskView, emptyDesk, type ReelInHand } from '../../../shared/desk/model.ts';
import { arePieces, continuesLabel, joinPieces } from '../../../shared/desk/pieces.ts';
import { answerMeaning, answerWhich, takeScan } from '../../../shared/desk/take-scan.ts';
import type { LabelQuestion, LabelReading } from '../../../shared/labels/reading.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { beginStory, type Story, started, startMs, tellPlant } from '../floor/story.ts';

/** ISO/IEC 15434 format 06 with the data identifiers of ANS MH10.8.2: P part, Q quantity, 1T lot, 3S package. */
const label = (...elements: string[]) => `[)>\x1e06\x1d${elements.join('\x1d')}\x1e\x04`;
const scanOf = (via: Scan['via'], ...texts: string[]): Scan => ({
  codes: texts.map((text) => ({ text, format: null, symbologyId: null })),
  via,
  atMs: 0,
});
const scan = (...texts: string[]) => scanOf('wedge', ...texts);

function viewOf(before: (story: Story) => void = () => undefined): DeskView {
  const story = beginStory();
  tellPlant(story, { rules: { feedersKnown: true } });
  story.tell('feeder.known', { feeder: 'FD-24', tapeWidthMm: 24, pitchesMm: [4], positions: 3 });
  // A badge that reads like a feeder: every scan of it is asked about.
  story.tell('person.added', { person: 'bo', name: 'Bo', role: 'operator', badge: 'FD-24', pin: null });
  before(story);
  return { floor: story.floor(), line: 'L1' };
}
const play = (view: DeskView, ...texts: readonly string[]) =>
  texts.reduce((desk, text) => takeScan(desk, scan(text), view), emptyDesk);

/** A known reel that lies off the line: counted by weight, with all that a label can say. */
const known = (story: Story) => {
  const facts = { reel: 'K-1', part: 'R-100', supplierPart: 'SUP-9', lot: 'LOT7', dateCode: '2610' };
  story.tell('reel.put', { ...facts, quantity: 700, place: 'SHELF-A1', via: 'typed' });
  const counted = { line: null, slot: null, reel: 'K-1', part: null, lot: null, quantity: 321, sd: 0 };
  story.tell('reel.counted', { ...counted, basis: 'weighed', panels: 0 });
};

describe('a reel that the log knows', () => {
  test('stands with all that the log has, where only its id is scanned, with or without blanks around it', () => {
    const view = viewOf(known);
    const all = { part: 'R-100', supplierPart: 'SUP-9', lot: 'LOT7', dateCode: '2610' };
    for (const text of ['K-1', ' K-1 '])
      expect(play(view, text).reel).toMatchObject({ reel: 'K-1', ...all, quantity: 321, basis: 'weighed' });
    // Two codes are no bare id.
    expect(takeScan(emptyDesk, scanOf('camera', 'K-1', 'Z-9'), view).reel?.reel ?? null).toBeNull();
  });

  test('keeps what its label says otherwise', () => {
    const text = label('PR-100', '1PSUP-8', 'Q5000', '1TLOT8', '10D2611', '3SK-1');
    const said = { supplierPart: 'SUP-8', lot: 'LOT8', dateCode: '2611', labelQuantity: 5000 };
    expect(play(viewOf(known), text).reel).toMatchObject({ ...said, quantity: 321, basis: 'weighed' });
  });

  test('has no basis where neither label nor log says how many', () => {
    const camera = scanOf('camera', label('PR-100', '1TLOT8'));
    expect(takeScan(emptyDesk, camera, viewOf()).reel).toMatchObject({ quantity: null, basis: null });
  });
});

describe('answerMeaning()', () => {
  const asked = (text: string): LabelQuestion => ({ text, candidates: [] });
  const inHand: ReelInHand = {
    codes: ['X'],
    via: 'wedge',
    reel: null,
    part: null,
    supplierPart: null,
    quantity: null,
    labelQuantity: null,
    basis: null,
    lot: null,
    dateCode: null,
    expires: null,
    msl: null,
    questions: [asked('one'), asked('two')],
  };
  const desk: Desk = { ...emptyDesk, reel: inHand, question: { ask: 'meaning', question: asked('one') } };

  test('goes on to the next text while no part is named, and ends with the part', () => {
    const view = viewOf();
    const lot = answerMeaning(desk, 'lot', 'LX', view);
    expect(lot).toMatchObject({ question: { ask: 'meaning', question: { text: 'two' } } });
    expect(lot.reel).toMatchObject({ lot: 'LX', questions: [{ text: 'two' }] });
    const part = answerMeaning(lot, 'part', 'R-100', view);
    expect(part).toMatchObject({ question: null, reel: { part: 'R-100', lot: 'LX', questions: [] } });
    for (const field of ['part', 'supplierPart'])
      expect(answerMeaning(desk, field, 'R-100', view), field).toMatchObject({ question: null });
  });

  test('that it is a reel’s id brings all that the log has of that reel; another answer brings nothing of it', () => {
    const view = viewOf(known);
    const brought = { part: 'R-100', lot: 'LOT7', quantity: 321, basis: 'weighed' };
    expect(answerMeaning(desk, 'reel', 'K-1', view).reel).toMatchObject({ reel: 'K-1', ...brought });
    expect(answerMeaning(desk, 'part', 'K-1', view).reel).toMatchObject({ part: 'K-1', lot: null });
    const own = { ...desk, reel: { ...inHand, part: 'R-9', lot: 'L9' } };
    expect(answerMeaning(own, 'reel', 'K-1', view).reel).toMatchObject({ part: 'R-9', lot: 'L9' });
  });

  test('that it is a quantity is the label’s word; other answers leave label and basis as they were', () => {
    const view = viewOf();
    const twelve = answerMeaning(desk, 'quantity', '12', view).reel;
    expect(twelve).toMatchObject({ quantity: 12, labelQuantity: 12, basis: 'label' });
    const counted = { ...inHand, quantity: 7, labelQuantity: 9, basis: 'typed' as const };
    expect(answerMeaning({ ...desk, reel: counted }, 'lot', 'LX', view).reel).toMatchObject({
      quantity: 7,
      labelQuantity: 9,
      basis: 'typed',
    });
  });

  test('offers a place only for what looks like one: a word and a number', () => {
    for (const [text, isPlace] of [
      ['SHELF-A1', true],
      ['PX-4711', false],
    ] as const) {
      const { question } = play(viewOf(), text);
      const fields =
        question?.ask === 'meaning' ? question.question.candidates.map(({ field }) => field) : [];
      expect(fields.includes('place'), text).toBe(isPlace);
    }
  });
});

describe('a code that may be two things', () => {
  const view = viewOf();
  const badge = { is: 'person', person: 'bo' } as const;

  test('is asked about once, however often it is scanned meanwhile', () => {
    const desk = play(view, 'FD-24', 'FD-24');
    expect(desk.question).toMatchObject({ ask: 'which', text: 'FD-24', rest: { codes: [] } });
  });

  test('waits with the label of its scan; only a newer label takes that one’s place, not a slot', () => {
    const first = takeScan(emptyDesk, scan('FD-24', label('PR-100', 'Q5', '1TA', '3SK1')), view);
    const answered = (desk: Desk) => answerWhich(desk, { is: 'feeder', feeder: 'FD-24' }, view);
    expect(answered(takeScan(first, scan('M1-F-001'), view)).reel?.reel).toBe('K1');
    const both = takeScan(first, scan('M1-F-001', label('PR-100', 'Q5', '1TA', '3SK2')), view);
    expect(answered(both)).toMatchObject({ slot: 'M1-F-001', reel: { reel: 'K2' } });
  });

  test('tells what the answer says, unless what waited for it has something to tell itself', () => {
    const fine = takeScan(emptyDesk, scan('FD-24', label('PR-100', 'Q5', '1TA', '3SK1')), view);
    expect(answerWhich(fine, badge, view)).toMatchObject({ told: { tell: 'badge' }, reel: { reel: 'K1' } });
    const half = takeScan(emptyDesk, scan('FD-24', label('Q5')), view);
    expect(answerWhich(half, badge, view).told).toMatchObject({ tell: 'no-part' });
  });
});

describe('a code that no list knows', () => {
  test('is told without the blanks around it, and is asked about as a feeder only while one is wanted', () => {
    const view = viewOf();
    expect(takeScan(emptyDesk, scan(' ?! '), view).told).toMatchObject({ tell: 'unknown-code', text: '?!' });
    expect(play(view, 'M1-F-001', 'ZZ-1').question).toMatchObject({ ask: 'unlisted-feeder', text: 'ZZ-1' });
    const filled: Desk = { ...emptyDesk, slot: 'M1-F-001', atSlot: true, feeder: 'FD-24' };
    expect(takeScan(filled, scan('ZZ-1'), view)).toMatchObject({ question: null, told: { text: 'ZZ-1' } });
    const sweep: Desk = { ...emptyDesk, mode: 'sweep', slot: 'M1-F-001', atSlot: true };
    expect(takeScan(sweep, scan('ZZ-1'), view).question).toBeNull();
  });
});

describe('a label that comes code by code', () => {
  const reading = (more: Partial<LabelReading> = {}) =>
    ({ rules: [], unidentified: [], ambiguous: [], ...more }) as unknown as LabelReading;

  test('is one where each code has its identifier, and no rule of the site, no plain text and no question is in it', () => {
    expect(arePieces(['PR-100', 'Q5'], reading())).toBe(true);
    expect(arePieces(['PR-100', '?'], reading())).toBe(false);
    expect(arePieces(['PR-100'], reading({ rules: ['brae-1'] }))).toBe(false);
    expect(arePieces(['PR-100'], reading({ unidentified: ['x'] }))).toBe(false);
    expect(arePieces(['PR-100'], reading({ ambiguous: [{ text: 'x', candidates: [] }] }))).toBe(false);
  });

  test.each<[before: readonly string[], now: readonly string[], joined: readonly string[] | null]>([
    [['PR-100'], ['Q5'], ['PR-100', 'Q5']],
    [
      ['PR-100', 'Q5'],
      ['Q5', '1TA'],
      ['PR-100', 'Q5', '1TA'],
    ], // scanned twice, counted once
    [['PR-100', 'Q5'], ['Q6'], null], // a second quantity is of another label
    [['PR-100', 'Q5'], ['PR-100'], null], // a part named anew begins anew
    [['PR-100'], ['?'], null],
    [['?'], ['Q5'], null],
  ])('%j goes on with %j as %j', (before, now, joined) => {
    expect(joinPieces(before, now)).toEqual(joined);
    expect(continuesLabel(before, now)).toBe(joined !== null);
  });

  test('that was judged is continued by codes with an identifier alone, and not by none', () => {
    expect(continuesLabel([], ['Q5'])).toBe(false);
    expect(continuesLabel(['PR-100'], [])).toBe(false);
    expect(continuesLabel(['PR-100'], ['Q5', '?'])).toBe(false);
    expect(continuesLabel(['PR-100', '?'], ['Q5'])).toBe(false);
  });

  test('comes from a scanner alone: a typed code begins anew and is all there is', () => {
    const view = viewOf();
    const begun = play(view, 'PR-100');
    expect(takeScan(begun, scan('Q5'), view).partial?.codes).toEqual(['PR-100', 'Q5']);
    expect(takeScan(begun, scanOf('typed', '1TLOT7'), view).reel?.part ?? null).not.toBe('R-100');
  });
});

describe('a refusal that stands early', () => {
  test('says how many panels the run has, and of which label it is, whole or begun', () => {
    const none = judgeEarly(viewOf(), play(viewOf(), 'M1-F-001', 'PC-200'), startMs);
    expect(none?.drafts[0]?.payload).toMatchObject({
      run: null,
      panels: 0,
      part: 'C-200',
      codes: ['PC-200'],
    });
    expect(none?.reel.part).toBe('C-200');
    const view = viewOf((story) => story.tell('run.started', started('run-1')));
    const begun = judgeEarly(view, play(view, 'M1-F-001', 'PC-200'), startMs);
    expect(begun?.drafts[0]?.payload).toMatchObject({ run: 'run-1', panels: 0 });
  });
});

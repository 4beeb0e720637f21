// The desk: what is scanned, in whatever order, ends in the same task; what is not understood is asked or told, never guessed.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeReel } from '../../../shared/desk/judgement.ts';
import {
  type Desk,
  type DeskView,
  deskAct,
  deskWells,
  emptyDesk,
  isDeskReady,
  missingPieces,
  type ReelInHand,
  suggestedSlots,
  takeKnown,
} from '../../../shared/desk/model.ts';
import {
  answerMeaning,
  answerWhich,
  checkStanding,
  takeEnough,
  takeScan,
} from '../../../shared/desk/take-scan.ts';
import { growLine } from '../../../shared/floor/line-grow.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { verifyReel } from '../../../shared/verdict/verify.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
  wantedSlot,
} from '../floor/story.ts';

/** A label by ISO/IEC 15434 format 06 with the data identifiers of ANS MH10.8.2: P part, 1P supplier part, Q quantity, 1T lot, 3S package. */
const envelope = (...elements: string[]) => `[)>\x1e06\x1d${elements.join('\x1d')}\x1e\x04`;
const label = (part: string, reel: string) => envelope(`P${part}`, 'Q5000', '1TLOT7', `3S${reel}`);
const scan = (...texts: string[]): Scan => ({
  codes: texts.map((text) => ({ text, format: null, symbologyId: null })),
  via: 'wedge',
  atMs: 0,
});

function viewOf(before: (story: Story) => void = () => undefined, feedersKnown = false): DeskView {
  const story = beginStory();
  tellPlant(story, { rules: { feedersKnown } });
  story.tell('feeder.known', { feeder: 'FD-07', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  before(story);
  return { floor: story.floor(), line: 'L1' };
}
const loaded = (story: Story) =>
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K-OLD', lot: 'OLD', quantity: 1000 }));
const play = (view: DeskView, scans: readonly Scan[], desk: Desk = emptyDesk) =>
  scans.reduce((now, each) => takeScan(now, each, view), desk);

function permutations<T>(list: readonly T[]): readonly (readonly T[])[] {
  if (list.length <= 1) return [list];
  return list.flatMap((each, at) =>
    permutations(list.filter((_, other) => other !== at)).map((rest) => [each, ...rest]),
  );
}

describe('a load', () => {
  const pieces = ['M1-F-001', 'FD-07', label('R-100', 'K-NEW')];

  test('is ready once slot, feeder and reel are scanned, in any order and not before', () => {
    const view = viewOf(undefined, true);
    for (const order of permutations(pieces)) {
      let desk = emptyDesk;
      order.forEach((text, at) => {
        expect(isDeskReady(desk, view), order.join(' then ')).toBe(false);
        desk = takeScan(desk, scan(text), view);
        expect(deskWells(desk, view).filter(({ filled }) => filled)).toHaveLength(at + 1);
      });
      expect(isDeskReady(desk, view)).toBe(true);
      expect(desk).toMatchObject({
        slot: 'M1-F-001',
        feeder: 'FD-07',
        question: null,
        told: null,
        via: 'wedge',
        reel: { reel: 'K-NEW', part: 'R-100', quantity: 5000, basis: 'label', lot: 'LOT7' },
      });
      expect(deskAct(desk, view)).toBe('load');
    }
  });

  test('takes everything from one look of the camera', () => {
    const view = viewOf(undefined, true);
    for (const order of permutations(pieces))
      expect(isDeskReady(takeScan(emptyDesk, scan(...order), view), view)).toBe(true);
  });

  test('needs no feeder where the line does not know feeders, but keeps one that was scanned', () => {
    const view = viewOf();
    expect(isDeskReady(play(view, [scan('M1-F-001'), scan(label('R-100', 'K'))]), view)).toBe(true);
    expect(play(view, [scan('FD-07'), scan('M1-F-001')]).feeder).toBe('FD-07');
  });

  test('starts over with another slot: the feeder of the first is not taken along', () => {
    const desk = play(viewOf(), [scan('M1-F-001'), scan('FD-07'), scan('M1-F-002')]);
    expect(desk).toMatchObject({ slot: 'M1-F-002', feeder: null });
  });

  test('lets a newer label replace the one in hand', () => {
    const desk = play(viewOf(), [scan(label('R-100', 'K1')), scan(label('C-200', 'K2'))]);
    expect(desk.reel).toMatchObject({ reel: 'K2', part: 'C-200' });
  });
});

describe('a splice', () => {
  test('follows from what is on the slot', () => {
    const view = viewOf(loaded);
    const desk = play(view, [scan('M1-F-001')]);
    expect(deskAct(desk, view)).toBe('splice');
    expect(deskWells(desk, view).map(({ well, filled }) => [well, filled])).toEqual([
      ['slot', true],
      ['old-reel', true],
      ['reel', false],
    ]);
  });

  test('from a slot chosen on the screen wants the old reel first, by id or by part and lot', () => {
    const view = viewOf(loaded);
    const chosen: Desk = { ...emptyDesk, slot: 'M1-F-001' };
    const old = takeScan(chosen, scan(label('R-100', 'K-OLD')), view);
    expect(old).toMatchObject({ atSlot: true, reel: null, told: null });
    const done = takeScan(old, scan(label('R-100', 'K-NEW')), view);
    expect(isDeskReady(done, view)).toBe(true);
    expect(done.reel?.reel).toBe('K-NEW');
    const nameless = viewOf((story) =>
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'LOT7', quantity: 1000 })),
    );
    expect(takeScan(chosen, scan(label('R-100', 'K9')), nameless)).toMatchObject({
      atSlot: true,
      reel: null,
    });
  });

  test('is ready with old reel and new reel, in any order of the two and with the slot anywhere between', () => {
    const view = viewOf(loaded);
    const old = label('R-100', 'K-OLD');
    const fresh = label('R-100', 'K-NEW');
    for (const order of permutations(['M1-F-001', old, fresh])) {
      let desk = emptyDesk;
      const seen: (string | null)[] = [];
      for (const text of order) {
        desk = takeScan(desk, scan(text), view);
        seen.push(isDeskReady(desk, view) ? (desk.reel?.reel ?? null) : null);
      }
      const told = order.join(' then ');
      expect(seen[0], told).toBeNull();
      expect(seen[2], told).toBe('K-NEW'); // the slot is certain, and never is the running reel taken for the new one
      expect(seen[1], told).toBe(seen[1] === null ? null : 'K-NEW');
      expect(desk, told).toMatchObject({ slot: 'M1-F-001', atSlot: true, told: null, question: null });
      expect(deskAct(desk, view)).toBe('splice');
    }
  });

  test('is refused where the reel that named it is in front of another slot', () => {
    const view = viewOf((story) => {
      loaded(story);
      story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K-3', lot: 'L3', quantity: 900 }));
    });
    const desk = play(view, [scan(label('R-100', 'K-OLD')), scan('M1-R-003')]);
    expect(desk).toMatchObject({ slot: 'M1-R-003', old: null, reel: { reel: 'K-OLD' } });
    expect(isDeskReady(desk, view)).toBe(true);
    const { reel, slot } = desk;
    if (!reel || slot === null) throw new TypeError('Cannot judge as the desk must hold slot and reel');
    const question = {
      act: deskAct(desk, view),
      line: 'L1',
      setup: brookSetup.setup,
      slot,
      feeder: null,
      reel,
    };
    expect(verifyReel(view.floor, { ...question, today: '2026-03-02' })).toMatchObject({
      verdict: 'refused',
      reasons: [
        { code: 'reel-elsewhere', slot: 'M1-F-001' },
        { code: 'quantity-corrected' },
        { code: 'mixed-lots' },
      ],
    });
    // A reel of another slot scanned as the new one is refused too, not taken for the old one.
    const other = play(view, [scan(label('R-100', 'K-OLD')), scan(label('R-100', 'K-3'))]);
    expect(other).toMatchObject({ slot: 'M1-F-001', reel: { reel: 'K-3' } });
  });

  test('takes a reel without an id for the new one, even where part and lot are those that run', () => {
    const nameless = viewOf((story) =>
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'LOT7', quantity: 1000 })),
    );
    const desk = play(nameless, [scan('M1-F-001'), scan(envelope('PR-100', 'Q5000', '1TLOT7'))]);
    expect(isDeskReady(desk, nameless)).toBe(true);
  });

  test('knows the old reel by an answer about its label as by the label', () => {
    const view = viewOf((story) =>
      story.tell('reel.verified', verified('M1-F-001', 'X-4711', { reel: 'K-X', lot: null, quantity: 1000 })),
    );
    const chosen: Desk = { ...emptyDesk, slot: 'M1-F-001' };
    const asked = takeScan(chosen, scan('PX-4711'), view);
    expect(asked.question).toMatchObject({ ask: 'meaning' });
    const other = answerMeaning(asked, 'part', 'PX-4711', view);
    expect(other).toMatchObject({ reel: null, atSlot: false, told: { tell: 'old-reel-differs' } });
    expect(answerMeaning(asked, 'reel', 'K-X', view)).toMatchObject({ reel: null, atSlot: true, told: null });
  });

  test('tells where another reel was scanned as the old one, and does not take it as the new one', () => {
    const view = viewOf(loaded);
    const desk = takeScan({ ...emptyDesk, slot: 'M1-F-001' }, scan(label('R-100', 'K-NEW')), view);
    expect(desk).toMatchObject({
      atSlot: false,
      reel: null,
      told: { tell: 'old-reel-differs', slot: 'M1-F-001', found: 'K-NEW', loaded: 'K-OLD' },
    });
    expect(isDeskReady(desk, view)).toBe(false);
  });

  test('checks the slot with the reel that stands there instead of the one that the log has', () => {
    const view = viewOf(loaded);
    const told = takeScan({ ...emptyDesk, slot: 'M1-F-001' }, scan(label('R-100', 'K-NEW')), view);
    const check = checkStanding(told);
    expect([deskAct(check, view), isDeskReady(check, view)]).toEqual(['sweep', true]);
    expect(check).toMatchObject({ mode: 'check', slot: 'M1-F-001', reel: { reel: 'K-NEW' }, told: null });
    const { slot, reel } = check;
    if (slot === null || reel === null) throw new TypeError('Cannot go on as both are in hand');
    const judged = judgeReel(view, { ...check, slot, reel }, startMs);
    expect(judged.answer).toMatchObject({ verdict: 'refused', reasons: [{ code: 'not-the-loaded-reel' }] });
    expect(judged.drafts[0]).toMatchObject({
      kind: 'reel.verified',
      payload: { act: 'sweep', reel: 'K-NEW' },
    });
    expect(checkStanding(emptyDesk)).toBe(emptyDesk);
  });

  test('is none on what an earlier setup left: there a new reel is a load', () => {
    const view = viewOf((story) => {
      loaded(story);
      story.tell('setup.taken', {
        ...brookSetup,
        setup: 'fell',
        product: 'Fell',
        slots: [wantedSlot('M1-F-001', 'C-900')],
      });
      story.tell('setup.chosen', { line: 'L1', setup: 'fell' });
    });
    expect(deskAct(play(view, [scan('M1-F-001')]), view)).toBe('load');
  });
});

describe('a sweep', () => {
  test('wants slot and reel, in either order, and no feeder', () => {
    const view = viewOf(loaded, true);
    for (const order of permutations(['M1-F-001', label('R-100', 'K-OLD')])) {
      const desk = play(
        view,
        order.map((text) => scan(text)),
        { ...emptyDesk, mode: 'sweep' },
      );
      expect(deskAct(desk, view)).toBe('sweep');
      expect(isDeskReady(desk, view)).toBe(true);
    }
  });
});

describe('a text that is not plain', () => {
  const both = (story: Story) =>
    story.tell('person.added', { person: 'bo', name: 'Bo', role: 'operator', badge: 'FD-07', pin: null });

  test('is asked where two lists know it, and goes on with the answer', () => {
    const view = viewOf(both, true);
    const desk = play(view, [scan('M1-F-001'), scan(label('R-100', 'K1')), scan('FD-07')]);
    expect(desk).toMatchObject({ feeder: null, question: { ask: 'which', text: 'FD-07' } });
    expect(isDeskReady(desk, view)).toBe(false);
    const [first] = desk.question?.ask === 'which' ? desk.question.options : [];
    if (!first) throw new TypeError('Cannot go on as the question must have options');
    const answered = answerWhich(desk, first, view);
    expect(answered.feeder).toBe('FD-07');
    expect(isDeskReady(answered, view)).toBe(true);
  });

  test('keeps the other codes of its scan until the answer, wherever it stands among them', () => {
    const view = viewOf(both, true);
    for (const order of permutations(['M1-F-001', 'FD-07', label('R-100', 'K1')])) {
      const desk = takeScan(emptyDesk, scan(...order), view);
      expect(desk).toMatchObject({ slot: 'M1-F-001', question: { ask: 'which', text: 'FD-07' } });
      const answered = answerWhich(desk, { is: 'feeder', feeder: 'FD-07' }, view);
      expect(answered).toMatchObject({ feeder: 'FD-07', question: null, reel: { reel: 'K1' } });
      expect(isDeskReady(answered, view)).toBe(true);
      const badge = answerWhich(desk, { is: 'person', person: 'bo' }, view);
      expect(badge).toMatchObject({ told: { tell: 'badge' }, feeder: null, reel: { reel: 'K1' } });
    }
  });

  test('stays asked while other codes are scanned, and a newer label replaces the one that waits', () => {
    const view = viewOf(both, true);
    const asked = takeScan(emptyDesk, scan('FD-07', label('R-100', 'K1')), view);
    const later = play(view, [scan('M1-F-001'), scan(label('R-100', 'K2')), scan('FD-07')], asked);
    expect(later).toMatchObject({ slot: 'M1-F-001', question: { ask: 'which', text: 'FD-07' } });
    const answered = answerWhich(later, { is: 'feeder', feeder: 'FD-07' }, view);
    expect(answered).toMatchObject({ feeder: 'FD-07', question: null, reel: { reel: 'K2' } });
  });

  test('is told where nobody can read it, and the desk keeps what it had', () => {
    const view = viewOf();
    const before = play(view, [scan('M1-F-001')]);
    const desk = takeScan(before, scan('?????'), view);
    expect(desk.told).toEqual({ tell: 'unknown-code', text: '?????', codes: ['?????'] });
    expect({ ...desk, told: null }).toEqual(before);
  });

  test('is told as a slot that the line does not have where it is written like one', () => {
    const desk = takeScan(emptyDesk, scan('M9-F-001'), viewOf());
    expect(desk.told).toEqual({ tell: 'unknown-slot', slot: 'M9-F-001' });
  });

  test('is asked whether it is the feeder where nothing but a feeder is wanted from the plant', () => {
    const view = viewOf(undefined, true);
    expect(takeScan(emptyDesk, scan('FD-99'), view).told).toEqual({
      tell: 'unknown-code',
      text: 'FD-99',
      codes: ['FD-99'],
    });
    const asked = play(view, [scan('M1-F-001'), scan('FD-99')]);
    expect(asked.question).toMatchObject({ ask: 'unlisted-feeder', text: 'FD-99' });
    const known = takeKnown({ ...asked, question: null }, { is: 'feeder', feeder: 'FD-99' });
    expect(known).toMatchObject({ slot: 'M1-F-001', feeder: 'FD-99' });
  });

  test('is told where a label says something, but not which part', () => {
    const desk = takeScan(emptyDesk, scan(envelope('Q5000')), viewOf());
    expect(desk).toMatchObject({ reel: null, told: { tell: 'no-part' } });
  });

  test('is asked where a bare code may be a part number or carry an identifier', () => {
    const view = viewOf();
    const desk = takeScan(emptyDesk, scan('PX-4711'), view);
    expect(desk.question).toMatchObject({ ask: 'meaning', question: { text: 'PX-4711' } });
    expect(isDeskReady({ ...desk, slot: 'M1-F-001', atSlot: true }, view)).toBe(false);
    const answered = answerMeaning(desk, 'part', 'X-4711', view);
    expect(answered).toMatchObject({ question: null, reel: { part: 'X-4711' } });
  });

  test('is no question where the setup knows the part', () => {
    expect(takeScan(emptyDesk, scan('R-100'), viewOf())).toMatchObject({
      question: null,
      reel: { part: 'R-100' },
    });
    expect(takeScan(emptyDesk, scan('PR-100'), viewOf())).toMatchObject({
      question: null,
      partial: { part: 'R-100' },
    });
  });

  test('of a badge or a panel is told and leaves the task alone', () => {
    const view = viewOf((story) => {
      story.tell('person.added', { person: 'ana', name: 'Ana', role: 'lead', badge: 'B-100', pin: null });
      story.tell('run.started', started('run-1', { panelPrefix: 'BW-' }));
    });
    const before = play(view, [scan('M1-F-001')]);
    expect(takeScan(before, scan('B-100'), view)).toEqual({
      ...before,
      told: { tell: 'badge', person: 'ana' },
    });
    expect(takeScan(before, scan('BW-0042'), view)).toEqual({
      ...before,
      told: { tell: 'panel', serial: 'BW-0042', run: 'run-1' },
    });
  });
});

describe('a reel that the log knows', () => {
  test('by its bare id stands with part, lot and the count that the log has', () => {
    const view = viewOf((story) => {
      loaded(story);
      story.tell('reel.counted', {
        line: null,
        slot: null,
        reel: 'K-OLD',
        part: null,
        lot: null,
        quantity: 321,
        sd: 0,
        basis: 'weighed',
        panels: 0,
      });
    });
    expect(takeScan(emptyDesk, scan('K-OLD'), view).old).toMatchObject({
      reel: 'K-OLD',
      part: 'R-100',
      lot: 'OLD',
      quantity: 321,
      labelQuantity: null,
      basis: 'weighed',
    });
    expect(takeScan(emptyDesk, scan(label('R-100', 'K-OLD')), view).old).toMatchObject({
      quantity: 321,
      labelQuantity: 5000,
      basis: 'weighed',
    });
  });

  test('a quantity in another unit than pieces is no count', () => {
    const desk = takeScan(emptyDesk, scan(envelope('PR-100', 'Q100MTR')), viewOf());
    expect(desk.reel).toMatchObject({ part: 'R-100', quantity: null });
  });
});

describe('answerMeaning()', () => {
  const held = (): Desk => takeScan(emptyDesk, scan(label('R-100', 'K1')), viewOf());

  test('puts each answer where it belongs; a quantity that is no number changes none', () => {
    const rows: readonly (readonly [field: string, value: string, reel: object])[] = [
      ['part', 'X', { part: 'X' }],
      ['supplierPart', 'X', { supplierPart: 'X', part: 'R-100' }],
      ['lot', 'X', { lot: 'X' }],
      ['reel', 'X', { reel: 'X' }],
      ['quantity', '12', { quantity: 12 }],
      ['quantity', 'many', { quantity: 5000 }],
      ['country', 'DE', { part: 'R-100', lot: 'LOT7' }],
    ];
    for (const [field, value, reel] of rows)
      expect(answerMeaning(held(), field, value, viewOf()).reel, field).toMatchObject(reel);
  });

  test('without a reel in hand only closes the question', () => {
    expect(answerMeaning(emptyDesk, 'part', 'X', viewOf())).toEqual(emptyDesk);
  });
});

describe('suggestedSlots()', () => {
  test('names the slots that take the reel in hand, missing ones first', () => {
    const view = viewOf(loaded);
    const inHand = (text: string, floor: FloorState = view.floor) =>
      suggestedSlots(takeScan(emptyDesk, scan(text), { ...view, floor }), { ...view, floor });
    expect(inHand(label('R-100', 'K1'))).toEqual(['M1-R-003', 'M1-F-001']);
    expect(inHand(label('C-201', 'K1'))).toEqual(['M1-F-002']);
    expect(inHand(envelope('1PSUP-300'))).toEqual(['M1-F-010']);
    expect(inHand(label('X-1', 'K1'))).toEqual([]);
    expect(suggestedSlots(emptyDesk, view)).toEqual([]);
  });
});

describe('a label that comes code by code', () => {
  const view = viewOf();
  const atSlot = play(view, [scan('M1-F-001')]);
  const codes = (reel: Desk['reel']) => reel?.codes;

  test('is judged once part, quantity and lot are there, whatever comes between', () => {
    const first = play(view, [scan('PR-100')], atSlot);
    expect(first).toMatchObject({ reel: null, partial: { part: 'R-100', quantity: null } });
    expect(isDeskReady(first, view)).toBe(false);
    const most = play(view, [scan('3SK-NEW'), scan('Q5000'), scan('Q5000')], first);
    expect(missingPieces(most.partial as ReelInHand)).toEqual(['lot']); // a second beep at one code changes nothing
    const whole = play(view, [scan('1TLOT7')], most);
    expect(whole).toMatchObject({
      partial: null,
      reel: { part: 'R-100', quantity: 5000, lot: 'LOT7', reel: 'K-NEW' },
    });
    expect(isDeskReady(whole, view)).toBe(true);
  });

  test('waits for the slot too where the label comes first', () => {
    const label = [scan('PR-100'), scan('Q5000')];
    const desk = play(view, [...label, scan('M1-F-001'), scan('1TLOT7')]);
    expect(desk).toMatchObject({ slot: 'M1-F-001', reel: { lot: 'LOT7', quantity: 5000 } });
    expect(suggestedSlots(play(view, label), view)).toContain('M1-F-001');
  });

  test('is judged as it is where a person says that this is all', () => {
    const desk = takeEnough(play(view, [scan('PR-100'), scan('1TLOT7')], atSlot), view);
    expect(desk).toMatchObject({ partial: null, reel: { part: 'R-100', lot: 'LOT7', quantity: null } });
    expect(takeEnough(atSlot, view)).toBe(atSlot);
  });

  test('begins anew with each part, so that no code of one reel is taken for another', () => {
    const two = play(view, [scan('PR-100'), scan('Q100'), scan('1TOLD'), scan('3SK-OLD')], emptyDesk);
    expect(two).toMatchObject({ reel: { lot: 'OLD', reel: 'K-OLD' }, partial: null });
    const next = play(view, [scan('PR-100'), scan('Q200')], two);
    expect(next).toMatchObject({ reel: null, partial: { quantity: 200, lot: null, reel: null } });
    const again = play(view, [scan('PR-100'), scan('Q100'), scan('PR-100')], atSlot);
    expect(codes(again.partial)).toEqual(['PR-100']);
    const differs = play(view, [scan('PR-100'), scan('Q100'), scan('Q200')], atSlot);
    expect(differs).toMatchObject({ partial: null, told: { tell: 'half-label' } });
    const other = play(view, [scan('PR-100'), scan(label('R-100', 'K-NEW'))], atSlot);
    expect(other).toMatchObject({ partial: null, reel: { reel: 'K-NEW', lot: 'LOT7' } });
  });

  test('does not open with a lot or a quantity, which may trail from the label before', () => {
    for (const text of ['Q5000', '1TLOT7', '3SK-12345'])
      expect(play(view, [scan(text)], atSlot)).toMatchObject({ partial: null, told: { tell: 'half-label' } });
  });

  test('is no matter of the camera, which gathers by itself', () => {
    const seen: Scan = { ...scan('PR-100'), via: 'camera' };
    expect(takeScan(atSlot, seen, view)).toMatchObject({ partial: null, reel: { part: 'R-100' } });
  });
});

test('`takeScan()` never throws and never changes the desk that it was given', () => {
  const view = viewOf(loaded, true);
  const text = fc.oneof(
    fc.string({ maxLength: 30 }),
    fc.constantFrom('M1-F-001', 'FD-07', 'K-OLD', 'R-100', 'PR-100', 'Q', label('R-100', 'K1'), '[)>\x1e06'),
  );
  fc.assert(
    fc.property(fc.array(fc.array(text, { maxLength: 4 }), { maxLength: 6 }), (scans) => {
      let desk: Desk = Object.freeze({ ...emptyDesk });
      for (const texts of scans) desk = Object.freeze(takeScan(desk, scan(...texts), view));
      expect(deskWells(desk, view).length).toBeGreaterThan(1);
    }),
    { numRuns: 300 },
  );
});

test('where trays stand no feeder is asked for, on a line that knows its feeders too', () => {
  const view = viewOf((story) => {
    const banks = [
      { bank: 'F', name: 'front', positions: 20 },
      { bank: 'T', name: 'lift', positions: 12, holds: 'trays' as const },
    ];
    const machines = [{ machine: 'M1', name: 'first', banks }];
    story.tell('line.defined', { line: 'L1', name: 'one', zone: 'Europe/London', machines });
    const slots = [wantedSlot('M1-T-003', 'R-100', { comesIn: 'tray' }), wantedSlot('M1-F-003', 'R-100')];
    story.tell('setup.taken', { ...brookSetup, setup: 'lift', slots });
    story.tell('setup.chosen', { line: 'L1', setup: 'lift' });
  }, true);
  const readyOn = (slot: string) => isDeskReady(play(view, [scan(slot), scan(label('R-100', 'K-1'))]), view);
  expect([readyOn('M1-T-003'), readyOn('M1-F-003')]).toEqual([true, false]);
});

test('a tape on a bank that had trays alone in an earlier setup asks for its feeder', () => {
  const view = viewOf((story) => {
    const tray = (slot: string) => wantedSlot(slot, 'R-100', { comesIn: 'tray', tapeWidthMm: null });
    const earlier = [tray('M1-T-001'), tray('M1-T-002'), tray('M1-T-003'), tray('M1-T-004')];
    const before = story.floor().lines.get('L1');
    if (!before) throw new Error('told by tellPlant()');
    const { machines } = growLine(before, earlier, { machine: (name) => name, bank: (name) => name }).line;
    story.tell('line.defined', { line: 'L1', name: 'one', zone: 'Europe/London', machines: [...machines] });
    story.tell('setup.taken', { ...brookSetup, setup: 'lift', slots: earlier });
    const later = [
      wantedSlot('M1-T-001', 'R-100'),
      wantedSlot('M1-T-002', 'R-100', { comesIn: 'tube', tapeWidthMm: null }),
      wantedSlot('M1-T-003', 'R-100', { tapeWidthMm: null }),
      tray('M1-T-004'),
    ];
    story.tell('setup.taken', { ...brookSetup, setup: 'tape', slots: later });
    story.tell('setup.chosen', { line: 'L1', setup: 'tape' });
  }, true);
  const asksForFeeder = (slot: string) =>
    deskWells({ ...emptyDesk, slot, atSlot: true }, view).some(({ well }) => well === 'feeder');
  const asked = ['M1-T-001', 'M1-T-002', 'M1-T-003', 'M1-T-004', 'M1-T-005'].map(asksForFeeder);
  // What nobody says of a part leaves it at what the line's record has there.
  expect(asked).toEqual([true, true, false, false, false]);
});

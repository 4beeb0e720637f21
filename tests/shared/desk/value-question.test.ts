// A line wants some parts measured before they feed: asked at the line, at a cart and for a second feeder, and told to the log.

import { describe, expect, test } from 'vitest';
import { judgeForCart, judgeForFeeder, judgeReel } from '../../../shared/desk/judgement.ts';
import { emptyDesk, leaveQuestion, type ReelInHand } from '../../../shared/desk/model.ts';
import { takeScan } from '../../../shared/desk/take-scan.ts';
import { answerValue, keepMeasured } from '../../../shared/desk/value-question.ts';
import type { DraftEntry } from '../../../shared/floor/kinds.ts';
import { judgePart, readMeter } from '../../../shared/floor/meter.ts';
import { type MeasuredPart, valueCheckOf } from '../../../shared/floor/value-check.ts';
import { beginStory, idOf, type Story, startMs, tellPlant } from '../floor/story.ts';
import { listed } from '../floor/value-story.ts';

const reel = (more: Partial<ReelInHand> = {}): ReelInHand => ({
  codes: ['[)>'],
  via: 'wedge',
  reel: 'K-9',
  part: 'R-100',
  supplierPart: null,
  quantity: 5000,
  labelQuantity: 5000,
  basis: 'label',
  lot: 'lot-7',
  dateCode: null,
  expires: null,
  msl: null,
  questions: [],
  ...more,
});

function ruled(): Story {
  const story = beginStory();
  tellPlant(story);
  listed(story, [{ part: 'R-100', value: '10k', tolerance: '1 %' }]);
  story.tell('line.values-ruled', { line: 'L1', begins: ['R-'], percent: 0.5, digits: 2, guard: 100 });
  return story;
}

function measured(story: Story, text: string): MeasuredPart {
  const check = valueCheckOf(story.floor(), 'L1', { part: 'R-100' });
  const [wanted] = check?.wanted ?? [];
  const shown = wanted && readMeter(text, wanted.unit);
  const judged = check && wanted && shown ? judgePart(check, wanted, shown, 'wedge') : null;
  if (judged === null) throw new Error(`${text} is a reading of R-100`);
  return judged;
}

const at = (story: Story, inHand: ReelInHand, slot = 'M1-F-001') =>
  judgeReel(
    { floor: story.floor(), line: 'L1' },
    { ...emptyDesk, slot, atSlot: true, reel: inHand },
    startMs,
  );

const kinds = (drafts: readonly unknown[]) => drafts.map((draft) => (draft as { kind?: string }).kind);

describe('at the line', () => {
  test('is asked before the verdict, with what the part should measure', () => {
    const judged = at(ruled(), reel());
    expect(judged.answer.verdict).toBe('held');
    expect(judged.question).toMatchObject({
      ask: 'value',
      check: { part: 'R-100', wanted: [{ nominal: 10, unit: 'kΩ', least: 9.9, most: 10.1 }] },
    });
  });

  test.each([
    ['10.02', 'accepted', 'value-within'],
    ['10.05', 'held', 'value-unsure'],
    ['11.00', 'refused', 'value-outside'],
  ] as const)('%s kΩ is %s, with its arithmetic, and told to the log', (text, verdict, code) => {
    const story = ruled();
    const judged = at(story, reel({ measured: measured(story, text) }));
    expect(judged.question).toBeNull();
    expect(judged.answer.verdict).toBe(verdict);
    expect(judged.answer.reasons).toContainEqual(
      expect.objectContaining({ code, unit: 'kΩ', least: 9.9, most: 10.1, quantity: Number(text) }),
    );
    const told = judged.drafts.find(({ kind }) => kind === 'reel.measured');
    expect(told?.payload).toMatchObject({
      slot: 'M1-F-001',
      reel: 'K-9',
      lot: 'lot-7',
      verdict,
      via: 'wedge',
    });
    for (const draft of judged.drafts) story.tell(draft.kind, draft.payload as never);
    expect(story.floor().values.get('K-9')).toMatchObject({ quantity: Number(text), verdict });
    expect(story.floor().slots.size).toBe(verdict === 'accepted' ? 1 : 0);
  });

  test('a part that cannot be measured is a lead’s, and is not asked again', () => {
    const judged = at(ruled(), reel({ measured: null }));
    expect(judged.question).toBeNull();
    expect(judged.answer.reasons[0]).toMatchObject({ code: 'value-unmeasured', part: 'R-100' });
    expect(kinds(judged.drafts)).not.toContain('reel.measured');
  });

  test('nothing is asked of a reel that is refused anyway, and what was measured as another part does not count', () => {
    const story = ruled();
    expect(at(story, reel({ part: 'R-999' })).question).toBeNull();
    const other = { ...measured(story, '10.02'), part: 'R-200' };
    expect(at(story, reel({ measured: other })).question).toMatchObject({ ask: 'value' });
  });

  test('a part without a value on any list is a lead’s', () => {
    const story = ruled();
    story.tell('line.values-ruled', { line: 'L1', begins: ['C-'], percent: 0, digits: 0, guard: 0 });
    const judged = at(story, reel({ part: 'C-200' }), 'M1-F-002');
    expect(judged.question).toBeNull();
    expect(judged.answer.reasons).toContainEqual({ code: 'value-unknown', part: 'C-200', lack: 'value' });
    expect(judged.answer.verdict).toBe('held');
  });

  test('a line without such a rule, and a sweep, ask nothing', () => {
    const story = beginStory();
    tellPlant(story);
    expect(at(story, reel()).answer.verdict).toBe('accepted');
    const asked = ruled();
    const floor = asked.floor();
    const sweep = { ...emptyDesk, mode: 'sweep' as const, slot: 'M1-F-001', reel: reel() };
    expect(judgeReel({ floor, line: 'L1' }, sweep, startMs).question).toBeNull();
  });
});

describe('away from the line', () => {
  const on = { slot: 'M1-F-001', feeder: 'F-1' };
  const place = { line: 'L1', setup: 'brook-top-a' };

  test('a cart and a second feeder ask too, and log what was measured', () => {
    const story = ruled();
    const floor = story.floor();
    const fine = reel({ measured: measured(story, '10.02') });
    expect(
      judgeForCart(floor, { ...place, cart: 'C1' }, { ...on, reel: reel() }, startMs).question,
    ).not.toBeNull();
    expect(judgeForFeeder(floor, place, { ...on, reel: reel() }, startMs).question).not.toBeNull();
    for (const { question, answer, drafts } of [
      judgeForCart(floor, { ...place, cart: 'C1' }, { ...on, reel: fine }, startMs),
      judgeForFeeder(floor, place, { ...on, reel: fine }, startMs),
    ]) {
      expect(question).toBeNull();
      expect(answer.verdict).toBe('accepted');
      expect(kinds(drafts)).toContain('reel.measured');
    }
  });

  test('what was measured as a feeder was made ready counts at the slot, and is told once', () => {
    const story = ruled();
    const fine = reel({ measured: measured(story, '10.02') });
    const { drafts } = judgeForFeeder(story.floor(), place, { ...on, reel: fine }, startMs);
    let first = '';
    for (const draft of drafts) {
      const plain: DraftEntry = typeof draft === 'function' ? draft([first], '') : draft;
      const entry = story.tell(plain.kind, plain.payload as never);
      if (first === '') first = idOf(entry);
    }
    const view = { floor: story.floor(), line: 'L1' };
    const scan = (text: string) =>
      ({ codes: [{ text, format: null, symbologyId: null }], via: 'wedge', atMs: 0 }) as const;
    const desk = takeScan(takeScan(emptyDesk, scan('M1-F-001'), view), scan('F-1'), view);
    const { slot, reel: ready } = desk;
    if (slot === null || ready === null) throw new Error('slot and reel are on the desk');
    const judged = judgeReel(view, { ...desk, slot, reel: ready }, startMs);
    expect(judged.question).toBeNull();
    expect(judged.answer.reasons).toContainEqual(expect.objectContaining({ code: 'value-within' }));
    expect(kinds(judged.drafts)).not.toContain('reel.measured');
  });

  /** The reel that stands ready on a feeder, at its slot. */
  const atSlot = (story: Story) => {
    const view = { floor: story.floor(), line: 'L1' };
    const scan = (text: string) =>
      ({ codes: [{ text, format: null, symbologyId: null }], via: 'wedge', atMs: 0 }) as const;
    const desk = takeScan(takeScan(emptyDesk, scan('M1-F-001'), view), scan('F-1'), view);
    const { slot, reel: ready } = desk;
    if (slot === null || ready === null) throw new Error('slot and reel are on the desk');
    return { view, desk: { ...desk, slot, reel: ready } };
  };
  const makeReady = (story: Story, inHand: ReelInHand) => {
    let first = '';
    for (const draft of judgeForFeeder(story.floor(), place, { ...on, reel: inHand }, startMs).drafts) {
      const plain: DraftEntry = typeof draft === 'function' ? draft([first], '') : draft;
      const entry = story.tell(plain.kind, plain.payload as never);
      if (first === '') first = idOf(entry);
    }
  };

  test('what is measured at the slot alone, as the feeder was made ready before the rule, is told then', () => {
    const story = beginStory();
    tellPlant(story);
    listed(story, [{ part: 'R-100', value: '10k', tolerance: '1 %' }]);
    makeReady(story, reel());
    story.tell('line.values-ruled', { line: 'L1', begins: ['R-'], percent: 0.5, digits: 2, guard: 100 });
    const { view, desk } = atSlot(story);
    const { question } = judgeReel(view, desk, startMs);
    expect(question).toMatchObject({ ask: 'value', reel: { reel: 'K-9' } });
    const answered = answerValue({ ...desk, question }, measured(story, '10.02'));
    if (answered.reel === null) throw new Error('the reel stays in hand');
    const judged = judgeReel(view, { ...desk, reel: answered.reel }, startMs);
    expect(judged.answer.verdict).toBe('accepted');
    expect(kinds(judged.drafts)).toContain('reel.measured');
  });

  test('an old measurement proves nothing of limits that were corrected since: it is asked anew, and told', () => {
    const story = ruled();
    listed(story, [{ part: 'R-100', value: '10k', tolerance: '10 %' }]);
    makeReady(story, reel({ measured: measured(story, '10.50') }));
    expect(judgeReel(...judgedAt(atSlot(story))).answer.verdict).toBe('accepted');
    listed(story, [{ part: 'R-100', value: '10k', tolerance: '1 %' }]);
    const { view, desk } = atSlot(story);
    const judged = judgeReel(view, desk, startMs);
    expect(judged.answer.reasons).toContainEqual({ code: 'value-unmeasured', part: 'R-100' });
    expect(judged.question).toMatchObject({ ask: 'value', check: { wanted: [{ least: 9.9, most: 10.1 }] } });
  });

  test('an old measurement is judged by the guard band and the meter of now', () => {
    const story = ruled();
    story.tell('line.values-ruled', { line: 'L1', begins: ['R-'], percent: 0.5, digits: 2, guard: 0 });
    makeReady(story, reel({ measured: measured(story, '10.08') }));
    expect(judgeReel(...judgedAt(atSlot(story))).answer.verdict).toBe('accepted');
    story.tell('line.values-ruled', { line: 'L1', begins: ['R-'], percent: 0.5, digits: 2, guard: 100 });
    const judged = judgeReel(...judgedAt(atSlot(story)));
    expect(judged.answer.reasons).toContainEqual(
      expect.objectContaining({ code: 'value-unsure', guard: 0.0704 }),
    );
    story.tell('line.values-ruled', { line: 'L1', begins: ['R-'], percent: 2, digits: 2, guard: 100 });
    expect(judgeReel(...judgedAt(atSlot(story))).answer.reasons).toContainEqual(
      expect.objectContaining({ code: 'value-unsure', uncertainty: 0.2016 }),
    );
  });

  const judgedAt = ({ view, desk }: ReturnType<typeof atSlot>) => [view, desk, startMs] as const;
});

test('what was measured goes on with the same reel scanned again, and with no other', () => {
  const value = measured(ruled(), '10.02');
  const before = { reel: reel({ measured: value }) };
  const again = { ...emptyDesk, reel: reel({ via: 'camera' }) };
  expect(keepMeasured(again, before).reel?.measured).toEqual(value);
  expect(keepMeasured({ ...emptyDesk, reel: reel({ reel: 'K-8' }) }, before).reel?.measured).toBeUndefined();
  const unnamed = reel({ reel: null, codes: ['PR-100', 'Q5000'] });
  const had = { reel: { ...unnamed, measured: null } };
  expect(keepMeasured({ ...emptyDesk, reel: unnamed }, had).reel?.measured).toBeNull();
  const other = { ...unnamed, codes: ['PR-100', 'Q4000'] };
  expect(keepMeasured({ ...emptyDesk, reel: other }, had).reel?.measured).toBeUndefined();
});

test('the answer goes with the reel in hand; leaving the question puts the reel down', () => {
  const story = ruled();
  const { question } = at(story, reel());
  const asked = { ...emptyDesk, slot: 'M1-F-001', reel: reel(), question };
  const value = measured(story, '10.02');
  expect(answerValue(asked, value)).toMatchObject({ question: null, reel: { measured: value } });
  expect(answerValue(asked, null).reel?.measured).toBeNull();
  expect(answerValue(asked, { ...value, part: 'R-200' })).toBe(asked);
  expect(leaveQuestion(asked)).toMatchObject({ question: null, reel: null, slot: 'M1-F-001' });
});

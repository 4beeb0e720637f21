// What leaves the state of changeovers that are over. Property: over random histories nothing that is still open, nor what anybody begins with later,
// is otherwise than with all of it.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyAll, applyEntry } from '../../../shared/floor/fold.ts';
import { forgetAnswers, OVER_AFTER_MS } from '../../../shared/floor/over-change.ts';
import { copyState, emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { isOpenStill } from '../../../shared/handover/still-open.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { beginStory, type Story, startMs, tellPlant } from './story.ts';

const facts = { sideChanges: false, stencilChanges: true, productChanges: true, programChanges: true };
const line = 'L1';
const changes = ['ch-1', 'ch-2'] as const;
const lists = [
  { checklist: 'a', changeover: 'ch-1' },
  { checklist: 'b', changeover: 'ch-2' },
  { checklist: 'c', changeover: null },
] as const;

const actArb = fc.record({
  is: fc.constantFrom(
    'answer',
    'answer',
    'sign',
    'sign',
    'unsign',
    'skip',
    'reopen',
    'close',
    'close',
    'measure',
    'look',
    'release',
    'release',
    'drop',
  ),
  list: fc.constantFrom(...lists),
  change: fc.constantFrom(...changes),
  step: fc.constantFrom('s1', 's2'),
  who: fc.constantFrom('ana', 'lea'),
  part: fc.constantFrom('R-100', 'C-10'),
});
type Act = typeof actArb extends fc.Arbitrary<infer A> ? A : never;

function begin(): Story {
  const story = beginStory();
  tellPlant(story);
  const setup = { from: null, setup: 'brook-top-a', product: 'Brook', lastPanel: null };
  for (const changeover of changes) story.tell('changeover.began', { changeover, line, ...setup });
  for (const list of lists)
    story.tell('checklist.opened', { ...list, template: 'changeover', version: 1, line, slot: null, facts });
  return story;
}

function tell(story: Story, { is, list, change: changeover, step, who: by, part }: Act): void {
  const { checklist } = list;
  const at = { checklist, line, step };
  const panel = { changeover, line, setup: 'brook-top-a', slot: `M1-F-${part}`, part };
  const told: Readonly<Record<Act['is'], () => void>> = {
    answer: () => story.tell('step.answered', { ...at, value: 'yes', unit: null }, { who: by }),
    sign: () => story.tell('step.signed', { ...at, by, role: 'lead', how: 'pin', checked: 'tablet' }),
    unsign: () => story.tell('step.unsigned', { ...at, by, checked: 'tablet' }),
    skip: () => story.tell('step.skipped', { ...at, by, reason: 'none here' }),
    reopen: () => story.tell('step.reopened', { ...at, reason: 'again' }),
    close: () => story.tell('checklist.closed', { checklist, line, done: 1, asked: 2, note: '' }),
    measure: () => {
      const value = { quantity: 100, unit: 'Ohm', uncertainty: 1, least: 99, most: 101 };
      story.tell('panel.measured', { ...panel, ...value, verdict: 'accepted' });
    },
    look: () => story.tell('panel.looked', { ...panel, right: true, note: '' }),
    release: () => story.tell('changeover.released', { changeover, line, by, reason: 'good' }),
    drop: () => story.tell('changeover.dropped', { changeover, line, reason: 'other job' }),
  };
  told[is]();
}

/** The newest measurement of each part, which the next one begins with. */
function lastMeasured({ changeovers }: FloorState) {
  const all = [...changeovers.values()].flatMap(({ measured }) => measured);
  return ['R-100', 'C-10'].map((part) =>
    all
      .filter((each) => each.part === part)
      .sort((a, b) => b.atMs - a.atMs)
      .at(0),
  );
}

/** How many answers are gone. */
function compare(thin: FloorState, whole: FloorState): number {
  let gone = 0;
  for (const [id, list] of whole.checklists) {
    const left = thin.checklists.get(id);
    expect({ ...left, answers: null }).toEqual({ ...list, answers: null });
    const rest = { slot: null, reel: null, part: null, sinceMs: null, dueMs: null, count: null, why: null };
    const item = { what: 'checklist', of: id, ...rest } as const;
    const asked = { line, nowMs: startMs };
    expect(isOpenStill(thin, item, asked)).toBe(isOpenStill(whole, item, asked));
    if (list.closedMs === null) expect(left).toEqual(list);
    else gone += list.answers.size - (left?.answers.size ?? 0);
  }
  expect([...thin.changeovers.keys()]).toEqual([...whole.changeovers.keys()]);
  for (const [id, changeover] of whole.changeovers)
    if (changeover.releasedMs === null) expect(thin.changeovers.get(id)).toEqual(changeover);
  expect(lastMeasured(thin)).toEqual(lastMeasured(whole));
  expect([...thin.changing]).toEqual([...whole.changing]);
  return gone;
}

describe('a state without the answers of changeovers that are over', () => {
  test('is the whole one in all that is open, and in what the next begins with', () => {
    let gone = 0;
    fc.assert(
      fc.property(fc.array(actArb, { minLength: 12, maxLength: 40 }), fc.nat(10), (acts, part) => {
        const story = begin();
        for (const act of acts) tell(story, act);
        const sorted = [...story.entries].sort(compareEntries);
        const at = sorted.length - Math.min(part, acts.length);
        const whole = applyAll(emptyState(), sorted.slice(0, at));
        const thin = copyState(whole);
        forgetAnswers(thin, startMs + OVER_AFTER_MS + 3_600_000);
        gone += compare(thin, whole);
        for (const entry of sorted.slice(at)) {
          applyEntry(whole, entry);
          applyEntry(thin, entry);
        }
        gone += compare(thin, whole);
      }),
      { numRuns: 400 },
    );
    expect(gone).toBeGreaterThan(50);
  });

  test('comes about as the next list is opened, a week after the end', () => {
    const story = begin();
    const act = { list: lists[0], change: 'ch-1', step: 's1', who: 'ana', part: 'R-100' } as const;
    for (const is of ['answer', 'look', 'close', 'release'] as const) tell(story, { ...act, is });
    const open = (checklist: string, days: number) =>
      story.tell(
        'checklist.opened',
        { checklist, changeover: null, template: 'changeover', version: 1, line, slot: null, facts },
        { at: days * 24 * 3600 },
      );
    open('d', 6);
    expect(story.floor().checklists.get('a')?.answers.size).toBe(1);
    open('e', 8);
    expect(story.floor().checklists.get('a')).toMatchObject({ answers: new Map(), changeover: 'ch-1' });
    expect(story.floor().changeovers.get('ch-1')?.looked).toEqual([]);
  });

  test('keeps what was measured before a changeover of which a lead may still say that it was cancelled', () => {
    const story = begin();
    const act = { list: lists[0], step: 's1', who: 'ana', part: 'R-100' } as const;
    for (const is of ['measure', 'release'] as const) tell(story, { ...act, is, change: 'ch-1' });
    for (const is of ['measure', 'drop', 'release'] as const) tell(story, { ...act, is, change: 'ch-2' });
    const floor = story.floor();
    forgetAnswers(floor, startMs + OVER_AFTER_MS + 3_600_000);
    expect(changes.map((change) => floor.changeovers.get(change)?.measured.length)).toEqual([1, 1]);
  });
});

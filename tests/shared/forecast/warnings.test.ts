// Warnings over a shift: each level announced once, no flicker, memory that outlives a reload.

import { describe, expect, test } from 'vitest';
import { needWarning, type WarningLook, type WarningState } from '../../../shared/forecast/warnings.ts';
import { seededChance } from '../../../shared/kit/chance.ts';

const minute = 60_000;
const look: WarningLook = {
  nowMs: 0,
  need: 'M1-F-014/R1',
  opensMs: 60 * minute,
  closesMs: 70 * minute,
  risk: 1,
  leadSeconds: 900,
  previous: null,
};

describe('needWarning()', () => {
  test.each([
    { at: 44, level: 'quiet', reason: 'far-off' },
    { at: 45, level: 'soon', reason: 'within-lead' },
    { at: 60, level: 'due', reason: 'window-open' },
    { at: 70, level: 'due', reason: 'window-open' },
    { at: 71, level: 'late', reason: 'past-closing' },
  ])('is $level at minute $at', ({ at, level, reason }) => {
    expect(needWarning({ ...look, nowMs: at * minute })).toMatchObject({ level, reason });
  });

  test('changes to the millisecond', () => {
    const at = (nowMs: number, more: Partial<WarningLook> = {}) =>
      needWarning({ ...look, ...more, nowMs }).level;
    expect([at(45 * minute - 1), at(45 * minute), at(60 * minute - 1), at(70 * minute + 1)]).toEqual([
      'quiet',
      'soon',
      'soon',
      'late',
    ]);
    // It fell back by a quarter of the lead, 3 min 45 s, and no more: the level stays.
    const previous: WarningState = {
      need: look.need,
      level: 'soon',
      reason: 'within-lead',
      sinceMs: 0,
      announced: 'soon',
    };
    const back = 45 * minute - 225_000;
    expect([at(back, { previous }), at(back - 1, { previous })]).toEqual(['soon', 'quiet']);
  });

  test('speaks a lead time before the moment at which the window may open already', () => {
    const spread = { ...look, earlySeconds: 240 };
    expect(needWarning({ ...spread, nowMs: 40 * minute }).level).toBe('quiet');
    expect(needWarning({ ...spread, nowMs: 41 * minute })).toMatchObject({ level: 'soon' });
    expect(needWarning({ ...spread, nowMs: 59 * minute })).toMatchObject({ level: 'soon' });
    expect(needWarning({ ...spread, nowMs: 60 * minute })).toMatchObject({ level: 'due' });
  });

  test('says why it fell quiet: since the run ends first, though the moment has moved away too', () => {
    const previous: WarningState = {
      need: look.need,
      level: 'soon',
      reason: 'within-lead',
      sinceMs: 0,
      announced: 'soon',
    };
    expect(needWarning({ ...look, risk: 0.03, previous })).toMatchObject({
      level: 'quiet',
      reason: 'run-ends-first',
      announce: false,
      announced: 'soon',
    });
  });

  test('is quiet when the run ends first', () => {
    expect(needWarning({ ...look, nowMs: 65 * minute, risk: 0.01 })).toMatchObject({
      level: 'quiet',
      reason: 'run-ends-first',
      announce: false,
    });
  });

  test('announces each level once over a shift whose forecast trembles', () => {
    const chance = seededChance(3);
    let previous: WarningState | null = null;
    const announced: string[] = [];
    const levels: string[] = [];
    for (let second = 0; second < 75 * 60; second += 5) {
      const tremble = (chance() - 0.5) * 240_000; // two minutes either way, inside the margin of 225 s
      const state: ReturnType<typeof needWarning> = needWarning({
        ...look,
        nowMs: second * 1000,
        opensMs: look.opensMs + tremble,
        closesMs: look.closesMs + tremble,
        previous: previous === null ? null : JSON.parse(JSON.stringify(previous)),
      });
      if (state.announce) announced.push(state.level);
      if (levels.at(-1) !== state.level) levels.push(state.level);
      previous = state;
    }
    expect(announced).toEqual(['soon', 'due', 'late']);
    expect(levels).toEqual(['quiet', 'soon', 'due', 'late']);
  });

  test('falls when the moment has moved well away, and does not announce the same level again', () => {
    const soon = needWarning({ ...look, nowMs: 46 * minute });
    expect(soon).toMatchObject({ level: 'soon', announce: true });
    const held = needWarning({ ...look, nowMs: 46 * minute, opensMs: 63 * minute, previous: soon });
    expect(held).toMatchObject({
      level: 'soon',
      reason: 'held-level',
      announce: false,
      sinceMs: soon.sinceMs,
    });
    const fallen = needWarning({ ...look, nowMs: 46 * minute, opensMs: 90 * minute, previous: soon });
    expect(fallen).toMatchObject({ level: 'quiet', announce: false });
    const again = needWarning({
      ...look,
      nowMs: 76 * minute,
      opensMs: 90 * minute,
      closesMs: 99 * minute,
      previous: fallen,
    });
    expect(again).toMatchObject({ level: 'soon', announce: false });
  });

  test('starts afresh for a new reel', () => {
    const late = needWarning({ ...look, nowMs: 75 * minute });
    const next = needWarning({
      ...look,
      need: 'M1-F-014/R2',
      nowMs: 76 * minute,
      opensMs: 80 * minute,
      closesMs: 99 * minute,
      previous: late,
    });
    expect(next).toMatchObject({ level: 'soon', announce: true });
  });

  test('holds a raised level while the risk trembles about its limit', () => {
    const due = needWarning({ ...look, nowMs: 61 * minute, risk: 0.06 });
    expect(needWarning({ ...look, nowMs: 62 * minute, risk: 0.045, previous: due }).level).toBe('due');
    expect(needWarning({ ...look, nowMs: 62 * minute, risk: 0.02, previous: due }).level).toBe('quiet');
  });
});

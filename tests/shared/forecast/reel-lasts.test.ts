// How long a reel would last on its slot: usage, pace, what is there already, breaks, the run's end.

import { describe, expect, test } from 'vitest';
import { type ReelComing, reelLastsSeconds } from '../../../shared/forecast/reel-lasts.ts';
import { beginStory, counted, started, startMs, tellPlant, verified } from '../floor/story.ts';

const coming = (more: Partial<ReelComing> = {}): ReelComing => ({
  act: 'load',
  line: 'L1',
  setup: 'brook-top-a',
  slot: 'M1-F-001',
  quantity: 400,
  ...more,
});

function begun(panelsWanted = 5000) {
  const story = beginStory();
  tellPlant(story, {
    rules: { breaks: [], stops: [{ from: '2026-03-02T07:00:00Z', to: '2026-03-02T08:00:00Z', note: '' }] },
  });
  story.tell('run.started', started('run-1', { panelsWanted, panelSeconds: 30 }));
  return story;
}

describe('reelLastsSeconds()', () => {
  test('400 parts at 2 a panel and 30 s are 100 minutes, and the planned hour besides', () => {
    expect(reelLastsSeconds(begun().floor(), coming(), startMs)).toBeCloseTo(200 * 30 + 3600, 3);
  });

  test('the run’s end comes first', () => {
    expect(reelLastsSeconds(begun(50).floor(), coming(), startMs)).toBeCloseTo(50 * 30, 3);
  });

  test('a spliced reel begins where the running one ends', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 100, run: 'run-1' }));
    story.tell('panels.counted', counted('run-1', 10));
    const splice = reelLastsSeconds(story.floor(), coming({ act: 'splice' }), startMs);
    expect(splice).toBeCloseTo((80 / 2 + 200) * 30 + 3600, 0);
  });

  test('a reel spliced to one that nobody counted is taken to begin at once', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: null, run: 'run-1' }));
    const from = Date.parse('2026-03-02T08:00:00Z');
    expect(reelLastsSeconds(story.floor(), coming({ act: 'splice' }), from)).toBeCloseTo(200 * 30, 6);
  });

  test('a reel that is loaded begins at once, whatever stands there', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 100, run: 'run-1' }));
    const from = Date.parse('2026-03-02T08:00:00Z');
    expect(reelLastsSeconds(story.floor(), coming(), from)).toBeCloseTo(200 * 30, 6);
  });

  test('the newest run of the setup tells the pace where none is in hand, and then no run’s end counts', () => {
    const story = begun(50);
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 50, note: '' });
    expect(reelLastsSeconds(story.floor(), coming(), startMs)).toBeCloseTo(200 * 30 + 3600, 3);
  });

  test('no run of another line or setup tells the pace where the setup had one here', () => {
    const story = begun();
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 50, note: '' });
    story.tell('run.started', started('run-2', { setup: 'other', panelSeconds: 10 }));
    story.tell('run.ended', { run: 'run-2', line: 'L1', panels: 50, note: '' });
    story.tell('run.started', started('run-3', { line: 'L2', panelSeconds: 20 }));
    expect(reelLastsSeconds(story.floor(), coming(), startMs)).toBeCloseTo(200 * 30 + 3600, 3);
  });

  test('before its first run a setup is judged by the panels and the pace of the line’s plan', () => {
    const story = beginStory();
    tellPlant(story, { rules: { breaks: [], stops: [] } });
    const job = (panels: number) => ({
      id: 'j',
      setup: 'brook-top-a',
      panels,
      panelSeconds: 30,
      dueMs: null,
      isHeld: false,
    });
    story.tell('plan.kept', { line: 'L1', jobs: [job(5000)], byHand: {} });
    expect(reelLastsSeconds(story.floor(), coming(), startMs)).toBeCloseTo(200 * 30, 3);
    story.tell('plan.kept', { line: 'L1', jobs: [job(40)], byHand: {} });
    expect(reelLastsSeconds(story.floor(), coming(), startMs)).toBeCloseTo(40 * 30, 3);
  });

  test('without a plan the pace of the line’s newest run counts, and no run’s end', () => {
    const story = beginStory();
    tellPlant(story, { rules: { breaks: [], stops: [] } });
    story.tell('run.started', started('run-0', { setup: 'other', panelsWanted: 10, panelSeconds: 20 }));
    story.tell('run.ended', { run: 'run-0', line: 'L1', panels: 10, note: '' });
    expect(reelLastsSeconds(story.floor(), coming(), startMs)).toBeCloseTo(200 * 20, 3);
  });

  test('null where count, usage or pace is not known', () => {
    const story = beginStory();
    tellPlant(story);
    expect(reelLastsSeconds(story.floor(), coming(), startMs)).toBeNull();
    const floor = begun().floor();
    expect(reelLastsSeconds(floor, coming({ quantity: null }), startMs)).toBeNull();
    expect(reelLastsSeconds(floor, coming({ slot: 'M1-F-019' }), startMs)).toBeNull();
  });
});

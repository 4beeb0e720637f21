// What leaves the floor's state stays in the trace.

import { describe, expect, test, vi } from 'vitest';
import { tracePlaces } from '../../../shared/trace/ask.ts';
import { emptyTrace, traceEntry, traceLog } from '../../../shared/trace/stretches.ts';
import { beginStory, counted, idOf, started, tellPlant, unloaded, verified } from '../floor/story.ts';

const days = (count: number) => count * 24 * 3600;

describe('a reel that was used up long ago', () => {
  test('and comes back without its lot on the label is on its panels by the lot that the log has from before', () => {
    const story = beginStory();
    tellPlant(story);
    const load = (reel: string, lot: string | null) =>
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel, lot }));
    const useUp = (reel: string) =>
      story.tell('reel.unloaded', unloaded('M1-F-001', { reel, part: 'R-100', quantity: 0 }));
    load('K1', 'LOT-A');
    useUp('K1');
    load('K2', 'LOT-B');
    useUp('K2');
    story.tell('run.started', started('r1'));
    story.tell('run.started', started('r2'), { at: days(31) });
    expect(story.floor().reels.has('K1')).toBe(false);
    const held = story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', verdict: 'held' }));
    const facts = { line: 'L1', slot: 'M1-F-001', by: 'lea', checked: 'tablet', reason: 'seen' } as const;
    story.tell('hold.cleared', { of: idOf(held), ...facts });
    story.tell('panels.counted', counted('r2', 20));
    story.tell('run.started', started('r3'));
    story.tell('panels.counted', counted('r3', 5));
    const index = traceLog(story.entries);
    const runs = tracePlaces(index, { lot: 'LOT-A' }).map(({ run, lot, reel }) => ({ run, lot, reel }));
    expect(runs).toEqual([
      { run: 'r2', lot: 'LOT-A', reel: 'K1' },
      { run: 'r3', lot: 'LOT-A', reel: 'K1' },
    ]);
    // Also the reel itself is whole there, and no lead is asked about it in what is kept of the trace.
    expect(index.state.reels.get('K1')).toMatchObject({ lot: 'LOT-A' });
    expect(index.state.reels.get('K2')).toMatchObject({ lot: 'LOT-B', count: 0 });
    expect([index.state.usedUp.size, index.state.goneReels.size]).toEqual([0, 0]);
  });

  test('is not even noted as a run starts: a server has years of them', () => {
    const story = beginStory();
    tellPlant(story);
    for (const reel of ['K1', 'K2']) {
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel }));
      story.tell('reel.unloaded', unloaded('M1-F-001', { reel, part: 'R-100', quantity: 0 }));
    }
    story.tell('run.started', started('r1'));
    expect(story.floor().usedUp.size).toBe(2);
    const index = emptyTrace();
    const noted = vi.spyOn(index.state.usedUp, 'set');
    for (const entry of story.entries) traceEntry(index, entry);
    expect(index.state.runs.has('r1')).toBe(true);
    expect(noted).not.toHaveBeenCalled();
  });
});

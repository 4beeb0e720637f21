// A verdict's answer and what the log is told of it; the rehearsal goes the same way.

import { describe, expect, test } from 'vitest';
import { judgeReel, rehearseVerdict } from '../../../shared/desk/judgement.ts';
import { type DeskView, emptyDesk } from '../../../shared/desk/model.ts';
import { takeScan } from '../../../shared/desk/take-scan.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { verifyReel } from '../../../shared/verdict/verify.ts';
import { beginStory, startMs, tellPlant } from '../floor/story.ts';

const scan = (text: string): Scan => ({
  codes: [{ text, format: null, symbologyId: null }],
  ...{ via: 'wedge', atMs: 0 },
});

function view(): DeskView {
  const story = beginStory();
  tellPlant(story);
  return { floor: story.floor(), line: 'L1' };
}

describe('judgeReel()', () => {
  test('answers as the verdict does, and tells the log what was scanned', () => {
    const seen = view();
    const label = '[)>\x1e06\x1dPR-999\x1dQ5000\x1d1TLOT7\x1d3SK-NEW\x1e\x04'; // ISO/IEC 15434 format 06
    const { slot, reel } = [scan('M1-F-001'), scan(label)].reduce(
      (desk, each) => takeScan(desk, each, seen),
      emptyDesk,
    );
    if (slot === null || reel === null) throw new Error('slot and reel are on the desk');
    const { act, answer, wishes } = judgeReel(seen, { ...emptyDesk, slot, reel }, startMs);
    const asked = { act, line: 'L1', setup: 'brook-top-a', slot, feeder: null, reel };
    expect(answer).toEqual(verifyReel(seen.floor, { ...asked, today: '2026-03-02', floorLife: null }));
    expect(answer.verdict).toBe('refused');
    expect(wishes).toHaveLength(1);
    expect(wishes[0]).toMatchObject({
      kind: 'reel.verified',
      payload: { slot: 'M1-F-001', part: 'R-999', reel: 'K-NEW', verdict: 'refused', codes: [label] },
    });
  });

  test('refuses a line without a setup', () => {
    const { floor } = view();
    expect(() =>
      judgeReel({ floor, line: 'L9' }, { ...emptyDesk, slot: 'M1-F-001', reel: null as never }, startMs),
    ).toThrow(/L9/);
  });
});

describe('rehearseVerdict()', () => {
  test('reads and judges a reel that fits, and leaves the floor as it is', () => {
    const seen = view();
    const before = structuredClone(seen.floor);
    expect(rehearseVerdict(seen, startMs)).toMatchObject([
      {
        kind: 'reel.verified',
        payload: { act: 'load', slot: 'M1-F-001', part: 'R-100', verdict: 'accepted' },
      },
    ]);
    expect(seen.floor).toEqual(before);
  });

  test('has nothing to judge where no setup is chosen', () => {
    expect(rehearseVerdict({ ...view(), line: 'L9' }, startMs)).toEqual([]);
  });
});

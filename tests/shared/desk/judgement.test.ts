// A verdict's answer and what the log is told of it.

import { describe, expect, test } from 'vitest';
import { judgeForCart, judgeReel } from '../../../shared/desk/judgement.ts';
import { type DeskView, emptyDesk, type ReelInHand } from '../../../shared/desk/model.ts';
import { takeScan } from '../../../shared/desk/take-scan.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { verifyReel } from '../../../shared/verdict/verify.ts';
import { payloadExamples } from '../floor/examples.ts';
import { beginStory, startMs, tellPlant, verified } from '../floor/story.ts';

const scan = (text: string): Scan => ({
  codes: [{ text, format: null, symbologyId: null }],
  via: 'wedge',
  atMs: 0,
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
    const { act, answer, drafts } = judgeReel(seen, { ...emptyDesk, slot, reel }, startMs);
    const asked = { act, line: 'L1', setup: 'brook-top-a', slot, feeder: null, reel };
    expect(answer).toEqual(verifyReel(seen.floor, { ...asked, today: '2026-03-02', floorLife: null }));
    expect(answer.verdict).toBe('refused');
    expect(drafts).toHaveLength(1);
    expect(drafts[0]).toMatchObject({
      kind: 'reel.verified',
      payload: { slot: 'M1-F-001', part: 'R-999', reel: 'K-NEW', verdict: 'refused', codes: [label] },
    });
  });

  test('takes what is spliced onto a tape for tape, and what is poured over bulk for bulk, whatever a list says', () => {
    for (const [standing, listed, act, comesIn] of [
      ['tape', 'bulk', 'splice', undefined],
      ['bulk', 'tube', 'refill', 'bulk'],
      // One tray or tube is taken off for the other: the list says what comes.
      ['tray', 'tube', 'exchange', 'tube'],
    ] as const) {
      const story = beginStory();
      tellPlant(story);
      const [part] = payloadExamples['parts.listed'].parts;
      if (part === undefined) throw new Error('a part must be listed');
      story.tell('parts.listed', { source: 'list', parts: [{ ...part, part: 'R-100', comesIn: listed }] });
      const facts = { reel: 'K-OLD', ...(standing === 'tape' ? {} : { comesIn: standing }) };
      story.tell('reel.verified', verified('M1-F-001', 'R-100', facts));
      const seen = { floor: story.floor(), line: 'L1' };
      const label = '[)>\x1e06\x1dPR-100\x1dQ5000\x1d1TLOT7\x1d3SK-NEW\x1e\x04';
      const at = { ...emptyDesk, slot: 'M1-F-001', atSlot: true };
      const { reel } = takeScan(at, scan(label), seen);
      if (reel === null) throw new Error('the label is whole');
      const judged = judgeReel(seen, { ...at, slot: 'M1-F-001', reel }, startMs);
      expect(judged.act).toBe(act);
      const [verdict] = judged.drafts;
      if (verdict?.kind !== 'reel.verified') throw new Error('the verdict comes first');
      expect(verdict.payload.comesIn).toBe(comesIn);
    }
  });

  test('refuses a line without a setup', () => {
    const { floor } = view();
    expect(() =>
      judgeReel({ floor, line: 'L9' }, { ...emptyDesk, slot: 'M1-F-001', reel: null as never }, startMs),
    ).toThrow(/L9/);
  });
});

describe('judgeForCart()', () => {
  const label = (part: string, quantity = 'Q5000\x1d') =>
    `[)>\x1e06\x1dP${part}\x1d${quantity}1TLOT7\x1d3SK-NEW\x1e\x04`;
  const inHand = (seen: DeskView, text: string): ReelInHand => {
    const { reel } = takeScan({ ...emptyDesk, slot: 'M1-F-001', atSlot: true }, scan(text), seen);
    if (reel === null) throw new Error('the label is whole');
    return reel;
  };
  const judged = (text: string) => {
    const seen = view();
    const at = { line: 'L1', setup: 'brook-top-a', cart: 'CA' };
    const ready = { slot: 'M1-F-001', feeder: 'F-7', reel: inHand(seen, text) };
    const { answer, drafts } = judgeForCart(seen.floor, at, ready, startMs);
    return {
      answer,
      told: drafts.map((draft) => (typeof draft === 'function' ? draft(['T1/e/9'], 'T1/e/10') : draft)),
    };
  };

  test('an accepted reel is one append: a verdict without a slot, and what stands on the cart by it', () => {
    const { answer, told } = judged(label('R-100'));
    expect(answer.verdict).toBe('accepted');
    expect(told).toMatchObject([
      {
        kind: 'reel.verified',
        payload: { act: 'load', slot: null, run: null, panels: 0, verdict: 'accepted', reel: 'K-NEW' },
      },
      {
        kind: 'cart.filled',
        payload: { cart: 'CA', slot: 'M1-F-001', feeder: 'F-7', part: 'R-100', reel: 'K-NEW', of: 'T1/e/9' },
      },
    ]);
    expect(told[0]?.payload).not.toHaveProperty('cart');
  });

  test('a refused or held reel names its slot and stands on no cart; a held one says at which cart it waits', () => {
    const refused = judged(label('R-999'));
    expect(refused.told).toMatchObject([{ kind: 'reel.verified', payload: { slot: 'M1-F-001' } }]);
    expect(refused.told[0]?.payload).not.toHaveProperty('cart');
    const held = judged(label('R-100', ''));
    expect(held.told).toMatchObject([
      { kind: 'reel.verified', payload: { verdict: 'held', slot: 'M1-F-001', cart: 'CA' } },
    ]);
  });
});

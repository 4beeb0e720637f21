// Every practice label keeps its promise: it reads back to what it says, and gets the verdict that its group names.

import { describe, expect, test } from 'vitest';
import { openPlaying } from '../../demo/playing.ts';
import { practiceLabels } from '../../demo/practice.ts';
import { type Practice, practiceGroups } from '../../demo/practice-label.ts';
import { lineId } from '../../demo/setups.ts';
import { recognise } from '../../shared/floor/recognise.ts';
import { parseLabel } from '../../shared/labels/label.ts';
import { verifyReel } from '../../shared/verdict/verify.ts';

const openedMs = Date.UTC(2026, 9, 14, 10, 37);
const playing = openPlaying({ seed: 1, openedMs, speed: 1, zone: 'Europe/London' });
playing.tell(openedMs);
const { state } = playing;
const all = practiceLabels({ state, line: lineId, nowMs: openedMs });
const reels = all.flatMap((practice) =>
  practice.promise ? [{ ...practice, promise: practice.promise }] : [],
);
const named = reels.map((reel) => [reel.label.title, reel] as const);

function codesOf(practice: Practice): string[] {
  return practice.label.codes.map((code) => code.text);
}

describe('practiceLabels()', () => {
  test('has labels in every group, each with an id of its own', () => {
    expect(new Set(all.map((practice) => practice.label.group))).toEqual(new Set(practiceGroups));
    expect(new Set(all.map((practice) => practice.label.id)).size).toBe(all.length);
  });

  test('comes in every dialect: Data Matrix, Code 128 and QR code', () => {
    const formats = reels.flatMap((reel) => reel.label.codes.map((code) => code.format));
    expect(new Set(formats)).toEqual(new Set(['DataMatrix', 'Code128', 'QRCode']));
  });

  test('offers every verdict and the reasons that a label can give', () => {
    expect(new Set(reels.map((reel) => reel.promise.verdict))).toEqual(
      new Set(['accepted', 'held', 'refused']),
    );
    expect(reels.map((reel) => reel.promise.reason)).toEqual(
      expect.arrayContaining([
        'by-alternate',
        'by-supplier-part',
        'by-comparison',
        'expired',
        'no-quantity',
        'wrong-part',
        'supplier-part-not-approved',
        'part-contradicts',
        'alternate-not-approved',
        'reel-blocked',
        'no-part',
        'reel-elsewhere',
      ]),
    );
  });

  test.each(named)('%s reads back to what it says', (_, practice) => {
    const reading = parseLabel(codesOf(practice));
    const { reel, part, supplierPart, quantity, lot, dateCode, expires } = practice.promise.facts;
    expect(reading).toMatchObject({
      reel,
      part,
      supplierPart,
      quantity,
      lot,
      dateCode,
      expires: expires ?? null,
    });
    expect(reading.ambiguous).toEqual([]);
  });

  test.each(named)('%s gets the verdict that it promises', (_, practice) => {
    const { act, slot, feeder, verdict, reason } = practice.promise;
    const { reel, part, supplierPart, quantity, lot, expires } = parseLabel(codesOf(practice));
    const answer = verifyReel(state, {
      act,
      line: lineId,
      setup: state.chosen.get(lineId) ?? '',
      slot,
      feeder,
      reel: { reel, part, supplierPart, quantity, lot, expires },
      today: new Date(openedMs).toISOString().slice(0, 10),
    });
    expect(answer.verdict).toBe(verdict);
    if (reason !== null) expect(answer.reasons.map((given) => given.code)).toContain(reason);
  });

  test('slots, feeders, badges and panels are recognised as what they are; one feeder and empty carts as nothing', () => {
    const kinds = {
      Slots: 'slot',
      Feeders: 'feeder',
      Carts: 'cart',
      Badges: 'person',
      Panels: 'panel',
    } as const;
    const unknown: string[] = [];
    for (const practice of all) {
      if (practice.promise) continue;
      const kind = kinds[practice.label.group as keyof typeof kinds]; // labels without a promise are in these groups
      for (const text of codesOf(practice)) {
        const found = recognise(state, lineId, text);
        if (found.length === 0) unknown.push(text);
        else
          expect(
            found.map((one) => one.is),
            text,
          ).toEqual([kind]);
      }
    }
    expect(unknown).toEqual(['F-9999', 'CART-1', 'CART-2', 'CART-3']);
  });

  test('feeders offered for the slots to load fit them', () => {
    const loads = reels.filter((reel) => reel.promise.act === 'load');
    expect(loads).toHaveLength(3);
    for (const { promise } of loads) expect(promise.feeder).not.toBeNull();
  });

  test('never gives one id to two reels, whatever the hour', () => {
    const later = openPlaying({ seed: 1, openedMs, speed: 1, zone: 'Europe/London' });
    const labels = new Map<string, string>();
    for (let minutes = 0; minutes < 600; minutes += 20) {
      const nowMs = openedMs + minutes * 60_000;
      later.tell(nowMs);
      for (const { promise } of practiceLabels({ state: later.state, line: lineId, nowMs })) {
        // A reel that runs on the line is shown again on purpose.
        if (!promise?.facts.reel || promise.reason === 'reel-elsewhere') continue;
        const text = JSON.stringify(promise.facts);
        expect(labels.get(promise.facts.reel) ?? text).toBe(text);
        labels.set(promise.facts.reel, text);
      }
    }
    expect(labels.size).toBeGreaterThan(60);
  });

  test('keeps its promises on every product of the day, also in the night after', () => {
    const later = openPlaying({ seed: 4, openedMs, speed: 1, zone: 'Europe/London' });
    for (let hour = 1; hour <= 22; hour += 3) {
      const nowMs = openedMs + hour * 3_600_000;
      later.tell(nowMs);
      const labels = practiceLabels({ state: later.state, line: lineId, nowMs });
      expect(labels.length).toBeGreaterThan(50);
      for (const { promise, label } of labels) {
        if (!promise) continue;
        const { reel, part, supplierPart, quantity, lot, expires } = parseLabel(
          label.codes.map((code) => code.text),
        );
        const answer = verifyReel(later.state, {
          act: promise.act,
          line: lineId,
          setup: later.state.chosen.get(lineId) ?? '',
          slot: promise.slot,
          feeder: promise.feeder,
          reel: { reel, part, supplierPart, quantity, lot, expires },
          today: new Date(nowMs).toISOString().slice(0, 10),
        });
        expect(answer.verdict, `${label.title} after ${hour} h: ${JSON.stringify(answer.reasons)}`).toBe(
          promise.verdict,
        );
      }
    }
  });
});

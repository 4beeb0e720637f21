// The command `forecast` from text to text: worked values, edges of breaks, and refusals with their path.

import { describe, expect, test } from 'vitest';
import { call } from './call.ts';

const slot = {
  slot: 'M1-F-014',
  perPanel: 12,
  left: 4000,
  sd: 0,
  loss: 0,
  pitch: 4,
  hubToPick: 700,
  intakeToPick: 250,
};
const input = {
  now: '2026-03-02T06:00:00+01:00',
  panel: { seconds: 30, sd: 0 },
  panelsLeft: 2000,
  breaks: [] as object[],
  slots: [slot] as object[],
};
const at = (time: string) => `2026-03-02T${time}+01:00`;
const ask = async (change: object) => {
  const { code, out, err } = await call(['forecast', '-'], JSON.stringify({ ...input, ...change }));
  return { code, err, slots: code === 0 ? JSON.parse(out).slots : null };
};

describe('reelward forecast', () => {
  test('answers one slot with run-out, window and risk', async () => {
    const { slots } = await ask({});
    expect(slots).toEqual([
      {
        slot: 'M1-F-014',
        fullPanels: 333,
        runOut: { early: at('08:46:40'), expected: at('08:46:40'), late: at('08:46:40') },
        window: { opens: at('08:39:22.500'), closes: at('08:44:05') },
        risk: 1,
        outlasts: false,
      },
    ]);
  });

  test.each([
    { reason: 'no break', breaks: [], expected: '08:46:40' },
    { reason: 'a break before', breaks: [['08:00:00', '08:15:00']], expected: '09:01:40' },
    { reason: 'a break that starts on the moment', breaks: [['08:46:40', '09:00:00']], expected: '08:46:40' },
    { reason: 'now inside a break', breaks: [['05:50:00', '06:10:00']], expected: '08:56:40' },
    {
      reason: 'breaks unsorted and overlapping',
      breaks: [
        ['08:10:00', '08:20:00'],
        ['07:00:00', '07:10:00'],
        ['08:00:00', '08:15:00'],
      ],
      expected: '09:16:40',
    },
    { reason: 'a break after', breaks: [['09:00:00', '09:15:00']], expected: '08:46:40' },
  ])('gives $expected with $reason', async ({ breaks, expected }) => {
    const { slots } = await ask({ breaks: breaks.map(([from, to]) => ({ from: at(from!), to: at(to!) })) });
    expect(slots[0].runOut.expected).toBe(at(expected));
  });

  test('keeps the offset of now, whatever offset the breaks have', async () => {
    const breaks = [{ from: '2026-03-02T07:00:00Z', to: '2026-03-02T07:15:00Z' }];
    const { slots } = await ask({ now: '2026-03-02T00:00:00-05:00', breaks });
    expect(slots[0].runOut.expected).toBe('2026-03-02T03:01:40-05:00');
    const zulu = await ask({ now: '2026-03-02T05:00:00Z' });
    expect(zulu.slots[0].runOut.expected).toBe('2026-03-02T07:46:40Z');
  });

  test('computes the panel from a rate', async () => {
    const { slots } = await ask({ panel: { placements: 1234, cph: 60_000, share: 0.8 } });
    expect(slots[0].runOut.expected).toBe(at('14:34:10')); // 92.55 s · 4000 / 12 = 30 850 s
  });

  test('orders slots by expected run-out and leaves windows out where lengths are not given', async () => {
    const slots = [
      { slot: 'M1-F-003', perPanel: 2, left: 4000 },
      { slot: 'M1-F-001', perPanel: 4, left: 4000 },
    ];
    const answer = await ask({ slots });
    expect(answer.slots.map((found: { slot: string }) => found.slot)).toEqual(['M1-F-001', 'M1-F-003']);
    expect(answer.slots[0].window).toEqual({ opens: null, closes: null });
  });

  test('spreads with count, loss and panel', async () => {
    const lossy = await ask({ slots: [{ ...slot, loss: 0.01 }] });
    const counted = await ask({ slots: [{ ...slot, sd: 60 }] });
    const paced = await ask({ panel: { seconds: 30, sd: 5 } });
    for (const { slots } of [lossy, counted, paced]) {
      const { early, expected, late } = slots[0].runOut;
      expect([Date.parse(early) < Date.parse(expected), Date.parse(expected) < Date.parse(late)]).toEqual([
        true,
        true,
      ]);
    }
    // 60 parts of spread: 1.645 · 60 / 12 · 30 s = 246.7 s either way.
    expect(
      Date.parse(counted.slots[0].runOut.late) - Date.parse(counted.slots[0].runOut.expected),
    ).toBeCloseTo(246_728, -2);
  });

  test('outlasts a run that the reel covers exactly', async () => {
    const exact = await ask({ panelsLeft: 100, slots: [{ ...slot, left: 1200 }] });
    expect([exact.slots[0].risk, exact.slots[0].outlasts]).toEqual([0, true]);
    const short = await ask({ panelsLeft: 100, slots: [{ ...slot, left: 1199 }] });
    expect([short.slots[0].risk, short.slots[0].outlasts]).toEqual([1, false]);
  });

  test.each([
    {
      reason: 'no placements per panel',
      change: { slots: [{ ...slot, perPanel: 0 }] },
      path: 'slots[0].perPanel',
    },
    { reason: 'a negative count', change: { slots: [{ ...slot, left: -1 }] }, path: 'slots[0].left' },
    { reason: 'a loss in percent', change: { slots: [{ ...slot, loss: 2 }] }, path: 'slots[0].loss' },
    { reason: 'a key misspelt', change: { slots: [{ ...slot, pitchh: 4 }] }, path: 'slots[0].pitchh' },
    { reason: 'an unknown key on top', change: { paneles: 4 }, path: 'paneles' },
    { reason: 'no offset', change: { now: '2026-03-02T06:00:00' }, path: 'now' },
    { reason: 'a day that is none', change: { now: '2026-02-30T06:00:00Z' }, path: 'now' },
    {
      reason: 'a break backwards',
      change: { breaks: [{ from: at('09:00:00'), to: at('08:00:00') }] },
      path: 'breaks[0].to',
    },
    { reason: 'a panel without time', change: { panel: { sd: 1 } }, path: 'panel.seconds' },
    { reason: 'a panel with both', change: { panel: { seconds: 30, cph: 100 } }, path: 'panel.cph' },
    { reason: 'half a rate', change: { panel: { placements: 30 } }, path: 'panel.cph' },
    {
      reason: 'the intake behind the hub',
      change: { slots: [{ ...slot, intakeToPick: 900 }] },
      path: 'slots[0].intakeToPick',
    },
    { reason: 'a slot twice', change: { slots: [slot, slot] }, path: 'slots[1].slot' },
    {
      reason: 'an answer beyond all calendars',
      change: { slots: [{ ...slot, left: 1e16 }] },
      path: 'M1-F-014',
    },
  ])('refuses with $path for $reason', async ({ change, path }) => {
    const { code, err } = await ask(change);
    expect(code).toBe(2);
    expect(err).toContain(`${path}: `);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});

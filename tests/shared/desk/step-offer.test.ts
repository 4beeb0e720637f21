// A scan while a checklist's step is next: for the step where it fits what the step asks, for the desk else.

import { describe, expect, test } from 'vitest';
import { type Desk, emptyDesk } from '../../../shared/desk/model.ts';
import { type OpenStep, offerToStep } from '../../../shared/desk/step-offer.ts';
import { takeScan } from '../../../shared/desk/take-scan.ts';
import type { ScanWant } from '../../../shared/floor/checklist.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { beginStory, tellPlant, verified } from '../floor/story.ts';

const envelope = (...elements: string[]) => `[)>\x1e06\x1d${elements.join('\x1d')}\x1e\x04`; // ISO/IEC 15434 format 06
const scan = (...texts: string[]): Scan => ({
  codes: texts.map((text) => ({ text, format: null, symbologyId: null })),
  via: 'camera',
  atMs: 0,
});

function seen() {
  const story = beginStory();
  tellPlant(story);
  story.tell('person.added', { person: 'ana', name: 'Ana', role: 'operator', badge: 'B-100', pin: null });
  story.tell('feeder.known', { feeder: 'F-7', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  return { floor: story.floor(), line: 'L1' };
}

const step = (
  wants: ScanWant,
  more: Partial<OpenStep> & { expects?: string; taken?: string[] } = {},
): OpenStep => ({
  line: 'L1',
  isMeant: more.isMeant ?? false,
  asks: { wants, expects: more.expects ?? null, taken: more.taken ?? [] },
});
const offer = (asks: OpenStep, scanned: Scan, desk: Desk = emptyDesk) =>
  offerToStep(seen(), desk, asks, scanned);

describe('offerToStep()', () => {
  test('gives the step what it asks for', () => {
    expect(offer(step('stencil'), scan('ST-204/B'))).toEqual({ ok: true, value: 'ST-204/B' });
    expect(offer(step('stencil'), scan('ST-GN-F'))).toEqual({ ok: true, value: 'ST-GN-F' });
    expect(offer(step('stencil', { expects: 'ST-9' }), scan('ST-9'))).toEqual({ ok: true, value: 'ST-9' });
    expect(offer(step('feeder'), scan('F-7'))).toEqual({ ok: true, value: 'F-7' });
    expect(offer(step('slot'), scan('M1-F-002'))).toEqual({ ok: true, value: 'M1-F-002' });
    expect(offer(step('reel'), scan(envelope('PR-100', 'Q500', '3SK1')))).toEqual({ ok: true, value: 'K1' });
  });

  test.each([
    ['a badge', 'B-100'],
    ['a slot', 'M1-F-002'],
    ['a feeder', 'F-7'],
    ['a reel', 'K1'],
    ['a part', 'C-200'],
    ['the label of a part that nobody knows', envelope('PZ-9', 'Q500', '1TLOT7')],
    ['a label with a supplier’s number alone', envelope('1PSUP-9', '1TLOT7')],
    ['a label with a quantity alone', envelope('Q500', '1TLOT7')],
    ['the code of another step', 'ST-9'],
  ])('leaves %s to the desk where a stencil is asked for', (_, text) => {
    expect(offer(step('stencil', { taken: ['ST-9'] }), scan(text))).toBeNull();
  });

  test('leaves another text to the desk where one is expected', () => {
    expect(offer(step('stencil', { expects: 'ST-9' }), scan('ST-8'))).toBeNull();
  });

  test('takes a paste jar by its lot and date', () => {
    expect(offer(step('paste'), scan(envelope('1TP-77', '14D20261201')))).toMatchObject({ ok: true });
  });

  test('leaves everything to the desk while something is in hand there', () => {
    const atSlot = takeScan(emptyDesk, scan('M1-F-002'), seen());
    expect(atSlot.slot).toBe('M1-F-002');
    expect(offer(step('stencil'), scan('ST-204/B'), atSlot)).toBeNull();
    expect(offer(step('feeder'), scan('F-7'), atSlot)).toBeNull();
  });

  test('gives the step all that is scanned while a person is in its field, and says what is wrong', () => {
    const meant = step('stencil', { isMeant: true });
    expect(offer(meant, scan('B-100'))).toEqual({ ok: false, is: 'person', name: 'Ana' });
    const atSlot = takeScan(emptyDesk, scan('M1-F-002'), seen());
    expect(offer(meant, scan('ST-204/B'), atSlot)).toEqual({ ok: true, value: 'ST-204/B' });
  });
});

// What the camera's view says of the task: always what the desk would make of the same codes.

import { describe, expect, test } from 'vitest';
import { type DeskView, emptyDesk } from '../../../../shared/desk/model.ts';
import { takeScan } from '../../../../shared/desk/take-scan.ts';
import type { ScannedCode } from '../../../../shared/labels/scan.ts';
import {
  framesToWait,
  nameOfCode,
  slotInHand,
  toldByCodes,
  toldByDesk,
  wantedThings,
} from '../../../../src/app/frame/camera-task.ts';
import { beginStory, tellPlant, verified } from '../../../shared/floor/story.ts';

// Data identifiers of ANS MH10.8.2: P part, 1P supplier part, Q quantity, 1T lot, 3S package.
const envelope = (...elements: string[]) => `[)>\x1e06\x1d${elements.join('\x1d')}\x1e\x04`;
const code = (text: string): ScannedCode => ({ text, format: 'Code128', symbologyId: null });
const codes = (...texts: string[]) => texts.map(code);
const scan = (...texts: string[]) => ({ codes: codes(...texts), via: 'camera' as const, atMs: 0 });

function viewOf(isRunning = false): DeskView {
  const story = beginStory();
  tellPlant(story, { rules: { feedersKnown: true } });
  story.tell('feeder.known', { feeder: 'FD-07', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  if (isRunning)
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K-OLD', lot: 'OLD', quantity: 1000 }));
  return { floor: story.floor(), line: 'L1' };
}

describe('nameOfCode()', () => {
  const view = viewOf();
  test.each([
    ['M1-F-001', { is: 'slot', text: 'M1-F-001' }],
    ['FD-07', { is: 'feeder', text: 'FD-07' }],
    ['PR-100', { is: 'part', text: 'R-100' }],
    ['Q4000', { is: 'quantity', quantity: 4000 }],
    ['1TLOT7', { is: 'lot', text: 'LOT7' }],
    [envelope('PR-100', 'Q5000', '1TLOT7'), { is: 'label' }],
    ['WH|7734|2500', null],
  ])('calls %j what it is', (text, name) => {
    expect(nameOfCode(code(text), view)).toEqual(name);
  });

  test('believes an identifier by the codes beside it', () => {
    const company = codes('PR-100', '1PABC0603-103', '3SK-1', '9D2631', 'WH|7734|2500');
    expect(company.map((each) => nameOfCode(each, view, company))).toEqual([
      { is: 'part', text: 'R-100' },
      { is: 'part', text: 'ABC0603-103' },
      { is: 'reel', text: 'K-1' },
      { is: 'date' },
      null,
    ]);
  });
});

describe('framesToWait()', () => {
  const view = viewOf();
  test('waits as usual for what is no label in pieces, and for a label that says all', () => {
    expect(framesToWait(codes('M1-F-001'), view, 4)).toBe(4);
    expect(framesToWait(codes('FD-07', 'PR-100'), view, 4)).toBe(4);
    expect(framesToWait(codes('WH|7734|2500'), view, 4)).toBe(4);
    expect(framesToWait(codes('PR-100', 'Q4000', '1TLOT7'), view, 4)).toBe(4);
    expect(framesToWait(codes('PR-100'), null, 4)).toBe(4);
  });

  test('waits for a person where the part or the quantity is not read, and longer where it is the lot alone', () => {
    expect(framesToWait(codes('PR-100'), view, 4)).toBeNull();
    expect(framesToWait(codes('PR-100', '1TLOT7'), view, 4)).toBeNull();
    expect(framesToWait(codes('Q4000', '1TLOT7'), view, 4)).toBeNull();
    expect(framesToWait(codes('PR-100', 'Q4000'), view, 4)).toBeGreaterThan(4);
  });

  test('asks no more of a reel that the log knows by its id', () => {
    expect(framesToWait(codes('3SK-OLD'), viewOf(true), 4)).toBe(4);
  });
});

describe('what a label has told', () => {
  const view = viewOf();
  test('is the same before and after it lands on the desk', () => {
    for (const texts of [
      [envelope('PR-100', 'Q5000', '1TLOT7', '3SK-1')],
      ['PR-100', 'Q5000'],
      ['1PABC0603-103', 'Q5000', '1TLOT7'],
    ]) {
      const seen = toldByCodes(codes(...texts), view);
      expect(seen).not.toBeNull();
      expect(seen).toEqual(toldByDesk(takeScan(emptyDesk, scan(...texts), view)));
    }
  });

  test('names what is missing, the part before all else', () => {
    expect(toldByCodes(codes('PR-100'), view)).toEqual({
      part: 'R-100',
      quantity: null,
      lot: null,
      reel: null,
      missing: ['quantity', 'lot'],
    });
    expect(toldByCodes(codes('Q4000'), view)).toMatchObject({ quantity: 4000, missing: ['part'] });
  });

  test('is nothing for a slot, a feeder and a code that nobody knows', () => {
    expect(toldByCodes(codes('M1-F-001', 'FD-07'), view)).toBeNull();
    expect(toldByCodes(codes('WH|7734|2500'), view)).toBeNull();
  });
});

describe('what is wanted', () => {
  test('is anything at first, then what the wells lack, the next first', () => {
    const view = viewOf();
    expect(wantedThings(emptyDesk, view)).toEqual([]);
    const atSlot = takeScan(emptyDesk, scan('M1-F-001'), view);
    expect(wantedThings(atSlot, view)).toEqual(['feeder', 'reel']);
    expect(slotInHand(atSlot, view)).toEqual({ slot: 'M1-F-001', part: 'R-100' });
    expect(wantedThings(takeScan(atSlot, scan('FD-07'), view), view)).toEqual(['reel']);
  });

  test('is the new reel where the slot runs', () => {
    const view = viewOf(true);
    expect(wantedThings(takeScan(emptyDesk, scan('M1-F-001'), view), view)).toEqual(['new-reel']);
  });

  test('is the badge where all is there and nobody is signed in', () => {
    expect(wantedThings({ ...emptyDesk, told: { tell: 'sign-in' } }, viewOf())).toEqual(['badge']);
  });
});

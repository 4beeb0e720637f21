// A tablet serves two lines: whose slot, reel and panel is it? The line that knows it; a code that both know is asked; nothing is refused for
// one line that the other wants.

import { describe, expect, test } from 'vitest';
import { judgeEarly, leadWanted } from '../../../shared/desk/judgement.ts';
import { type Desk, type DeskView, emptyDesk } from '../../../shared/desk/model.ts';
import { namedIn } from '../../../shared/desk/named-in.ts';
import { lineOfScan } from '../../../shared/desk/scan-line.ts';
import { takeScan } from '../../../shared/desk/take-scan.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { beginStory, brookSetup, started, startMs, tellPlant, verified, wantedSlot } from '../floor/story.ts';

const scan = (...texts: string[]): Scan => ({
  codes: texts.map((text) => ({ text, format: null, symbologyId: null })),
  via: 'camera',
  atMs: 0,
});
const label = (...elements: string[]) => `[)>\x1e06\x1d${elements.join('\x1d')}\x1e\x04`;

/** Line 1 as always; line 2 with one slot of the same name, one of its own and a part that only it wants. */
function twoLines(): DeskView {
  const story = beginStory();
  tellPlant(story);
  const [machine] = story.floor().lines.get('L1')?.machines ?? [];
  if (!machine)
    throw new TypeError('Cannot tell two lines as the first must have a machine: current value is none');
  story.tell('line.defined', {
    line: 'L2',
    name: 'Brae line 2',
    zone: 'Europe/London',
    machines: [{ ...machine, banks: [...machine.banks, { bank: 'X', name: 'extra', positions: 9 }] }],
  });
  const slots = [wantedSlot('M1-X-001', 'Z-900'), wantedSlot('M1-F-001', 'R-100')];
  story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-a', product: 'Fell', line: 'L2', slots });
  story.tell('setup.chosen', { line: 'L2', setup: 'fell-top-a' });
  const on = { line: 'L2', setup: 'fell-top-a' };
  story.tell('reel.verified', verified('M1-X-001', 'Z-900', { ...on, reel: 'K9' }));
  story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K2' }));
  story.tell('run.started', started('run-1', { panelPrefix: 'BR' }));
  story.tell('run.started', started('run-2', { ...on, panelPrefix: 'FE' }));
  return { floor: story.floor(), line: 'L1', beside: ['L2'] };
}
const view = twoLines();
const at = (desk: Desk, ...texts: string[]) => lineOfScan(desk, scan(...texts), view);
const reelInHand: Desk = takeScan(emptyDesk, scan(label('PZ-900', 'Q500', '3SK77')), view);

describe('lineOfScan()', () => {
  test.each([
    ['a slot of the line in hand', emptyDesk, ['M1-F-002'], 'L1'],
    ['a slot of the other line', emptyDesk, ['M1-X-001'], 'L2'],
    ['a slot of the other line, with a reel in hand', reelInHand, ['M1-X-001'], 'L2'],
    ['a slot of the other line, with a slot in hand', { ...emptyDesk, slot: 'M1-F-002' }, ['M1-X-001'], 'L2'],
    ['a slot of that name on both', emptyDesk, ['M1-F-001'], 'L1'],
    ['both codes of which only one is on both', emptyDesk, ['M1-F-001', 'M1-X-001'], 'L2'],
    ['a reel that stands on the line in hand', emptyDesk, ['K2'], 'L1'],
    ['a reel that stands on the other line', emptyDesk, ['K9'], 'L2'],
    ['its whole label', emptyDesk, [label('PZ-900', 'Q500', '3SK9')], 'L2'],
    ['that reel, with a slot in hand', { ...emptyDesk, slot: 'M1-F-002' }, ['K9'], 'L1'],
    ['a new reel', emptyDesk, [label('PZ-900', 'Q500', '3SK77')], 'L1'],
    ['what nobody knows', emptyDesk, ['hm'], 'L1'],
  ])('%s', (_, desk, texts, line) => {
    expect(at(desk, ...texts)).toBe(line);
  });

  test('takes all for the one line that a tablet serves', () => {
    const alone = { floor: view.floor, line: 'L1' };
    expect(lineOfScan(emptyDesk, scan('M1-X-001'), alone)).toBe('L1');
    expect(takeScan(emptyDesk, scan('M1-X-001'), alone).told).toMatchObject({ tell: 'unknown-slot' });
  });
});

test('a slot of that name on both lines is asked, and what is in hand waits for the answer', () => {
  const desk = takeScan(reelInHand, scan('M1-F-001'), view);
  expect(desk.reel).toEqual(reelInHand.reel);
  expect(desk.question).toMatchObject({
    ask: 'which',
    options: [
      { is: 'slot', line: 'L1', slot: 'M1-F-001' },
      { is: 'slot', line: 'L2', slot: 'M1-F-001' },
    ],
  });
});

test('a panel of the other line is that line’s panel', () => {
  expect(namedIn(view, 'FE001')).toEqual([{ is: 'panel', run: 'run-2', serial: 'FE001' }]);
  expect(takeScan(emptyDesk, scan('FE001'), view).told).toEqual({
    tell: 'panel',
    run: 'run-2',
    serial: 'FE001',
  });
});

describe('before any slot is scanned', () => {
  test('a reel that only the other line wants is not refused, and nobody calls a lead for it', () => {
    const alone = { floor: view.floor, line: 'L1' };
    expect(judgeEarly(alone, reelInHand, startMs)?.answer.verdict).toBe('refused');
    expect(judgeEarly(view, reelInHand, startMs)).toBeNull();
    expect(leadWanted(view, reelInHand, startMs)).toBeNull();
  });

  test('a reel that neither line wants is refused as ever', () => {
    const other = takeScan(emptyDesk, scan(label('PQ-1', 'Q500', '3SK78')), view);
    expect(judgeEarly(view, other, startMs)?.answer.verdict).toBe('refused');
  });

  test('a line without a setup wants nothing', () => {
    const floor = { ...view.floor, chosen: new Map([['L1', 'brook-top-a']]) };
    expect(judgeEarly({ ...view, floor }, reelInHand, startMs)?.answer.verdict).toBe('refused');
  });
});

describe('a tablet of two lanes', () => {
  const lane2 = 'L1~lane2';
  const story = beginStory();
  tellPlant(story);
  const line = story.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  story.tell('line.defined', { ...line, line: lane2, name: 'Brae line 1, lane 2' });
  const slots = [wantedSlot('M1-F-001', 'R-100'), wantedSlot('M1-F-009', 'Z-900')];
  story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-a', product: 'Fell', line: lane2, slots });
  story.tell('setup.chosen', { line: lane2, setup: 'fell-top-a' });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  const on = { line: lane2, setup: 'fell-top-a' };
  story.tell('reel.verified', verified('M1-F-009', 'Z-900', { ...on, reel: 'K9' }));
  const served = (own: string, other: string): DeskView => ({
    floor: story.floor(),
    line: own,
    beside: [other],
  });

  test.each([
    ['a slot that both take from stays with the lane in hand', 'M1-F-001', 'L1', 'L1'],
    ['and so it does on the other', 'M1-F-001', lane2, lane2],
    ['a slot that one lane takes from is its', 'M1-F-009', 'L1', lane2],
    ['a slot that the first alone takes from is its', 'M1-F-002', lane2, 'L1'],
    ['a reel that runs for both stays with the lane in hand', 'K1', lane2, lane2],
    ['a reel that runs for one lane is its', 'K9', 'L1', lane2],
  ])('%s', (_, text, own, line) => {
    const both = served(own, own === 'L1' ? lane2 : 'L1');
    expect(lineOfScan(emptyDesk, scan(text), both)).toBe(line);
    // It is one slot, so nobody is asked which.
    expect(takeScan(emptyDesk, scan(text), both).question).toBeNull();
  });
});

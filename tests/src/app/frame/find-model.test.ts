// What a label is that the camera passed over: by the same rules as the verdict and the pick lists.

import { describe, expect, test } from 'vitest';
import { laneLine } from '../../../../shared/floor/lanes.ts';
import type { ScannedCode } from '../../../../shared/labels/scan.ts';
import {
  type FindList,
  type FindView,
  type FoundThing,
  foundThing,
  isAloneFor,
  panClaim,
} from '../../../../src/app/frame/find-model.ts';
import { beginStory, type Story, startMs, tellPlant, verified } from '../../../shared/floor/story.ts';

// Data identifiers of ANS MH10.8.2: P part, Q quantity, 1T lot, S or 3S package.
const envelope = (...elements: string[]) => `[)>\x1e06\x1d${elements.join('\x1d')}\x1e\x04`;
const code = (text: string): ScannedCode => ({ text, format: 'DataMatrix', symbologyId: null });
const reel = (part: string, id: string | null = null, lot = 'LOT7') => [
  code(envelope(`P${part}`, 'Q5000', `1T${lot}`, ...(id === null ? [] : [`3S${id}`]))),
];

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('person.added', { person: 'ana', name: 'Ana', role: 'operator', badge: 'BADGE-1' });
  return story;
}

function put(story: Story, id: string, part: string, lot = 'LOT7') {
  const facts = { reel: id, part, supplierPart: null, quantity: 900, lot, dateCode: null };
  story.tell('reel.put', { ...facts, place: 'A-1', via: 'wedge' });
}

const wantedParts: FindList = {
  setup: 'brook-top-a',
  reels: new Map(),
  parts: new Map([
    ['R-100', ['M1-F-001', 'M1-R-003']],
    ['C-200', ['M1-F-002']],
  ]),
};

const viewOf = (story: Story, list: FindList = wantedParts): FindView => ({
  floor: story.floor(),
  line: 'L1',
  list,
  nowMs: startMs,
  lifeOf: () => null,
});

const told = (thing: FoundThing | null) =>
  thing !== null && 'reel' in thing ? [thing.is, thing.text, thing.slots, thing.why] : thing;

describe('a reel that the camera passes over', () => {
  test('is wanted where a slot of the list takes its part, or an alternate of it', () => {
    const view = viewOf(begun());
    expect(told(foundThing(reel('R-100'), view))).toEqual([
      'wanted',
      'R-100',
      ['M1-F-001', 'M1-R-003'],
      null,
    ]);
    expect(told(foundThing(reel('C-201'), view))).toEqual(['wanted', 'C-201', ['M1-F-002'], null]);
    expect(told(foundThing(reel('U-300'), view))).toEqual(['other', 'U-300', [], null]);
    expect(told(foundThing(reel('Z-9'), view))).toEqual(['other', 'Z-9', [], null]);
  });

  test('is wanted by its id where the list names reels; another one of the part is not', () => {
    const story = begun();
    put(story, 'K1', 'R-100');
    put(story, 'K2', 'R-100');
    const view = viewOf(story, { ...wantedParts, reels: new Map([['K1', ['M1-F-001']]]), parts: new Map() });
    expect(told(foundThing(reel('R-100', 'K1'), view))).toEqual(['wanted', 'R-100', ['M1-F-001'], null]);
    expect(told(foundThing(reel('R-100', 'K2'), view))).toEqual(['other', 'R-100', [], null]);
  });

  test('is crossed out where it is blocked or expired, wanted or not', () => {
    const story = begun();
    put(story, 'K-old', 'U-300', 'OLD');
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'BAD', part: null, reason: 'bent' });
    story.tell('reel.dated', { reel: 'K-old', expires: '2026-01-01' });
    const view = viewOf(story);
    expect(told(foundThing(reel('R-100', null, 'BAD'), view))).toEqual([
      'barred',
      'R-100',
      [],
      'reel-blocked',
    ]);
    expect(told(foundThing(reel('U-300', 'K-old', 'OLD'), view))).toEqual(['barred', 'U-300', [], 'expired']);
  });

  test('is told by its floor life as the pick list has it', () => {
    const story = begun();
    put(story, 'K1', 'R-100');
    const over = { leftSeconds: 0, neededSeconds: null };
    const view = { ...viewOf(story), lifeOf: () => over };
    expect(told(foundThing(reel('R-100', 'K1'), view))).toEqual(['barred', 'R-100', [], 'floor-life-over']);
  });

  test('stands where the log has it', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LOT7' }));
    expect(told(foundThing(reel('R-100', 'K1'), viewOf(story)))).toEqual([
      'stands',
      'R-100',
      ['M1-F-001'],
      null,
    ]);
  });
});

describe('anything else', () => {
  test('is told by the plant’s lists; a badge is nobody’s business', () => {
    const story = begun();
    put(story, 'K1', 'R-100');
    story.tell('feeder.known', { feeder: 'FD-07', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
    story.tell('feeder.known', { feeder: 'FD-08', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { feeder: 'FD-07' }));
    const view = viewOf(story);
    const is = (text: string) => foundThing([code(text)], view);
    expect(is('M1-F-001')).toEqual({ is: 'slot', text: 'M1-F-001', slot: 'M1-F-001' });
    expect(is('FD-07')).toEqual({ is: 'feeder', text: 'FD-07', slot: 'M1-F-002' });
    expect(is('FD-08')).toEqual({ is: 'feeder', text: 'FD-08', slot: null });
    expect(is('A-1')).toEqual({ is: 'thing', text: 'A-1' });
    expect(is('BADGE-1')).toBeNull();
    expect(is('WH|7734|2500')).toEqual({ is: 'unknown' });
  });

  test.each([
    [envelope('PR-100', 'Q5000'), true],
    ['M1-F-001', true],
    ['FD-07', true],
    ['PR-100', false],
    ['Q5000', false],
    ['WH|7734|2500', false],
  ])('%j is a label by itself: %s', (text, isAlone) => {
    const story = begun();
    story.tell('feeder.known', { feeder: 'FD-07', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
    expect(isAloneFor(code(text), viewOf(story))).toBe(isAlone);
  });

  test('a symbol that carries a part of a message is no label by itself', () => {
    const head = { ...code('[)>\x1e06\x1dPR-100\x1dQ50'), portion: { index: 0, of: 2, id: '7' } };
    expect(isAloneFor(head, viewOf(begun()))).toBe(false);
  });

  test.each([
    [envelope('PR-100'), 'envelope'],
    ['1TLOT', '1T'],
    ['PR-100', 'P'],
    ['Q500', 'Q'],
    ['12-0805', null],
  ])('%j claims %j', (text, claim) => {
    expect(panClaim(code(text))).toBe(claim);
  });
});

test('what stands on the slots of a conveyor stands there for each of its lanes', () => {
  const story = begun();
  story.tell('feeder.known', { feeder: 'FD-07', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', feeder: 'FD-07' }));
  const view = { ...viewOf(story), line: laneLine('L1', 2) };
  expect(told(foundThing(reel('R-100', 'K1'), view))).toEqual(['stands', 'R-100', ['M1-F-001'], null]);
  expect(foundThing([code('FD-07')], view)).toEqual({ is: 'feeder', text: 'FD-07', slot: 'M1-F-001' });
});

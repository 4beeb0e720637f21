// A scan while a part is to be measured: what the meter typed, and what goes on to the desk.

import { describe, expect, test } from 'vitest';
import { meterText } from '../../../../src/app/frame/meter-scan.ts';
import { beginStory, started, tellPlant } from '../../../shared/floor/story.ts';

const codes = ['PR-100', 'Q5000'];

function floor() {
  const story = beginStory();
  tellPlant(story);
  story.tell('person.added', { person: 'ana', name: 'Ana', role: 'operator', badge: '4401' });
  story.tell('run.started', { ...started('run-1'), panelPrefix: '10' });
  return story.floor();
}

const take = (...texts: readonly string[]) =>
  meterText(
    floor(),
    { line: 'L1', codes },
    { codes: texts.map((text) => ({ text, format: null, symbologyId: null })), via: 'wedge', atMs: 0 },
  );

describe('meterText()', () => {
  test.each([
    ['10.02 kOhm', true],
    ['+1.002E+04 Ohm', true],
    ['99 nF', true],
    ['99.1 F', true],
    ['2432', false],
    ['2432F', false],
    ['12MH', false],
    ['10.02', false],
    ['+1.00200E+04', false],
    ['+9.90000000E+37', false],
  ])('%s is the meter’s; sure of itself: %s', (text, isSure) => {
    expect(take(text)).toEqual({ text, isSure });
  });

  test.each([
    ['a badge', '4401'],
    ['a part of another label', 'PR-200'],
    ['a code of the label in hand', '1TLOT7'],
    ['the id of something', '100200300'],
    ['a slot', 'M1-F-001'],
  ])('%s goes on to the desk', (_, text) => {
    expect(take(text)).toBeNull();
  });

  test('a label of several codes, and what a camera or a person brings, go on too', () => {
    expect(take('10.02', '10.03')).toBeNull();
    const scan = { codes: [{ text: '10.02', format: null, symbologyId: null }], atMs: 0 };
    for (const via of ['camera', 'typed'] as const)
      expect(meterText(floor(), { line: 'L1', codes }, { ...scan, via })).toBeNull();
  });
});

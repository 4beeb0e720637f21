// Panels between a machine and the count: as the plant entered them, else the widest that a line of so many machines can mean.

import { describe, expect, test } from 'vitest';
import { MISSED_GUESS, MOST_A_MACHINE, MOST_BEHIND, panelsInLine } from '../../../shared/floor/in-line.ts';
import { beginStory, type Story } from './story.ts';

function told(): Story {
  const story = beginStory();
  const banks = [{ bank: 'F', name: 'front', positions: 20 }];
  story.tell('line.defined', {
    line: 'L1',
    name: 'Brae line 1',
    zone: 'Europe/London',
    machines: ['M1', 'M2', 'M3'].map((machine) => ({ machine, name: machine, banks })),
  });
  return story;
}

describe('panelsInLine()', () => {
  test('guesses by the machines before and behind, wherever the count stands, and says so', () => {
    const floor = told().floor();
    const at = (slot: string) => panelsInLine(floor, 'L1', slot);
    expect(at('M1-F-001')).toEqual({
      least: -MOST_A_MACHINE,
      most: 3 * MOST_A_MACHINE + MOST_BEHIND,
      missed: MISSED_GUESS,
      isGuess: true,
    });
    expect(at('M3-F-001')).toMatchObject({ least: -3 * MOST_A_MACHINE, most: MOST_A_MACHINE + MOST_BEHIND });
    expect(at('M9-F-001')).toMatchObject({
      least: -3 * MOST_A_MACHINE,
      most: 3 * MOST_A_MACHINE + MOST_BEHIND,
    });
    expect(panelsInLine(floor, 'L9', 'M1-F-001')).toMatchObject({
      least: -MOST_A_MACHINE,
      most: MOST_A_MACHINE + MOST_BEHIND,
      isGuess: true,
    });
  });

  test('takes what was entered for the machine; none is always possible, since lines fill and empty', () => {
    const story = told();
    story.tell('line.panels-ruled', {
      line: 'L1',
      machines: [
        { machine: 'M1', least: 2, most: 6 },
        { machine: 'M2', least: -5, most: -2 },
      ],
      missed: 0.01,
    });
    const at = (slot: string) => panelsInLine(story.floor(), 'L1', slot);
    expect(at('M1-F-001')).toEqual({ least: 0, most: 6, missed: 0.01, isGuess: false });
    expect(at('M2-F-001')).toEqual({ least: -5, most: 0, missed: 0.01, isGuess: false });
    expect(at('M3-F-001')).toMatchObject({ missed: 0.01, isGuess: true });
  });

  test('a range of one figure may be entered, one that ends before it begins may not', () => {
    const rule = (least: number, most: number) => () =>
      told().tell('line.panels-ruled', { line: 'L1', machines: [{ machine: 'M1', least, most }], missed: 0 });
    expect(rule(3, 3)).not.toThrow();
    expect(rule(4, 3)).toThrow(TypeError);
  });
});

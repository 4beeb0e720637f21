// A setup that a line cannot take, in words: each fault with its slot and its figures.

import { afterEach, describe, expect, test } from 'vitest';
import { partsTwice, setupFaults } from '../../../../../shared/changeover/diff.ts';
import { faultText } from '../../../../../src/app/screens/change/fault-text.ts';
import { changeWords } from '../../../../../src/app/words/change.ts';
import { language, say } from '../../../../../src/app/words/words.ts';

afterEach(() => {
  language.value = 'en';
});

const banks = { 'M1-F': 20 };
const said = (...feeders: (readonly [slot: string, part: string, width: number])[]) =>
  setupFaults(
    feeders.map(([slot, part, width]) => ({ slot, part, width })),
    'wanted',
    banks,
  ).map(faultText);

describe('faultText()', () => {
  test('tells a feeder that reaches past the end of its bank from a slot that the bank does not have', () => {
    expect(said(['M1-F-020', 'L-400', 3], ['M1-F-019', 'C-9', 1], ['M1-F-021', 'R-1', 1])).toEqual([
      'L-400 on M1-F-020 reaches 2 positions past the end of its bank.',
      'There is no M1-F-021 for R-1: its bank has 20 slots.',
      'R-1 on M1-F-021 and L-400 (M1-F-020) overlap.',
    ]);
  });

  test('says which slot the line does not have, and which neighbour is in the way', () => {
    expect(said(['M7-F-001', 'R-1', 1])).toEqual(['This line has no slot M7-F-001 for R-1.']);
    expect(said(['M1-F-001', 'L-4', 2], ['M1-F-002', 'R-1', 1])).toEqual([
      'R-1 on M1-F-002 and L-4 (M1-F-001) overlap.',
    ]);
    expect(said(['M1-F-001', 'L-4', 1], ['M1-F-001', 'R-1', 1])).toEqual([
      'The setup uses M1-F-001 twice, once for R-1.',
    ]);
  });

  test('says the same in Spanish', () => {
    language.value = 'es';
    expect(said(['M1-F-021', 'R-1', 1], ['M1-F-020', 'L-400', 3], ['M7-F-001', 'C-9', 1])).toEqual([
      'No existe M1-F-021 para R-1: su banco tiene 20 posiciones.',
      'L-400 en M1-F-020 sobrepasa en 2 posiciones el final de su banco.',
      'L-400 en M1-F-020 invade el sitio de R-1 (M1-F-021).',
      'Esta línea no tiene la posición M7-F-001 para C-9.',
    ]);
  });

  test.each([
    ['en', 'R-1 goes on M1-F-002, M1-F-010. Do not miss one.'],
    ['es', 'R-1 va en M1-F-002, M1-F-010. No olvide ninguna.'],
  ] as const)('names each slot of a part that is wanted on more than one (%s)', (code, sentence) => {
    language.value = code;
    const wanted = ['M1-F-010', 'M1-F-002'].map((slot) => ({ slot, part: 'R-1', width: 1 }));
    expect(
      partsTwice(wanted).map(({ part, slots }) => say(changeWords).twice(part, slots.join(', '))),
    ).toEqual([sentence]);
  });
});

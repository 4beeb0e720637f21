// What a label says at goods-in and of a jar: as the plant taught it, and by the way it came in.

import { expect, test } from 'vitest';
import type { ScannedCode } from '../../../../../shared/labels/scan.ts';
import { readJar, readReel } from '../../../../../src/app/screens/stock/read-label.ts';
import { beginStory, type Story } from '../../../../shared/floor/story.ts';

const code = (text: string): ScannedCode => ({ text, format: null, symbologyId: null });

/** A plant that taught a label of its own: part and id behind marks. */
function taught(): Story {
  const story = beginStory();
  const codes = (['part', 'reel'] as const).map((field) => ({
    pieces: [{ text: field === 'part' ? 'ART#' : 'ROLL#' }, { takes: 'any' as const, field }],
  }));
  const definition = { rule: 'glen', version: 1, codes };
  story.tell('label.taught', { rule: 'glen', version: 1, definition, by: 'ana' });
  return story;
}

test('a label of the plant’s own says its part and its id', () => {
  const floor = taught().floor();
  expect(readReel(floor, { codes: [code('ART#BW-1'), code('ROLL#K-7')] })).toMatchObject({
    part: 'BW-1',
    reel: 'K-7',
  });
});

test('symbols of one message are read together, and say nothing while one is missing', () => {
  const floor = beginStory().floor();
  const portion = (index: number) => ({ index, of: 2, id: '7' });
  const [head, tail] = ['[)>\x1e06\x1dPBW-1\x1dQ50', '00\x1d3SK-7\x1e\x04'];
  const symbols = [head, tail].map((text, at) => ({ ...code(text ?? ''), portion: portion(at) }));
  expect(readReel(floor, { codes: symbols })).toMatchObject({ part: 'BW-1', quantity: 5000, reel: 'K-7' });
  expect(readReel(floor, { codes: symbols.slice(0, 1) })).toBeNull();
});

test('a jar is known by the way its label came in', () => {
  const story = taught();
  const hours = { thawHours: 4, outHours: 72, openHours: 24, stencilHours: 8 };
  story.tell('paste.ruled', { paste: 'BW-1', ...hours, source: 'sheet' });
  const scan = { codes: [code('ART#BW-1'), code('ROLL#J-1')], via: 'camera' as const };
  expect(readJar(story.floor(), scan)).toMatchObject({ jar: 'J-1', paste: 'BW-1', via: 'camera' });
});

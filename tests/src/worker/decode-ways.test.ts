// Each way of a place, by itself.

import { beforeAll, expect, it } from 'vitest';
import { findPlaces, type Place } from '../../../src/worker/decode-places.ts';
import { DEFAULT_FORMATS } from '../../../src/worker/decode-protocol.ts';
import type { CodeReader } from '../../../src/worker/decode-reader.ts';
import { readPlace, waysOf } from '../../../src/worker/decode-ways.ts';
import { drawCode, loadReader, onDesk } from './reader.ts';

let reader: CodeReader;
beforeAll(async () => {
  reader = await loadReader();
});

it('a square is read in every way though its place misses two of its columns, as beside other print', () => {
  const image = onDesk(
    drawCode('datamatrix', '[)>\u001e06\u001dPCUST-0042\u001dQ4000\u001e\u0004', 8),
    960,
    540,
    235,
  );
  const [found] = findPlaces(image, 12).filter(({ kind }) => kind === 'matrix');
  expect(found).toBeDefined();
  const place: Place = { ...found!, x: found!.x + 16 }; // looked at above
  const read = Array.from({ length: waysOf(place) }, (_, turn) =>
    readPlace(reader, { image, formats: DEFAULT_FORMATS }, { place, turn }).map(({ format }) => format),
  );
  expect(read).toEqual(read.map(() => ['DataMatrix']));
});

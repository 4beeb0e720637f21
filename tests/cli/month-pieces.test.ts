// Pieces of a month's file: each short enough to be unpacked for one text, however long the lots are that the lines come in.

import { gunzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { packPieces, piecesIn } from '../../src/cli/month-pieces.ts';

async function packed(lots: readonly string[]): Promise<Buffer> {
  const pieces: Buffer[] = [];
  const given = async function* () {
    for (const lot of lots) yield Buffer.from(lot);
  };
  for await (const piece of packPieces(given())) pieces.push(piece);
  return Buffer.concat(pieces);
}

const line = (length: number, sign: string) => `${sign.repeat(length)}\n`;

it('are cut at the ends of lines within a lot', async () => {
  // A lot of a hundred entries of the greatest length that is taken in.
  const lot = Array.from({ length: 100 }, (_, at) => line(384 * 1024, String(at % 10))).join('');
  const small = Array.from({ length: 5_000 }, (_, at) => line(200, String(at % 10))).join('');
  const file = await packed([lot, small]);
  const pieces = [...piecesIn(file)];
  expect(pieces).not.toContain(null);
  expect(gunzipSync(file).toString()).toBe(lot + small);
  const lengths = pieces.map((piece) => (piece?.lines ?? []).join('\n').length);
  expect(Math.max(...lengths)).toBe(384 * 1024 + 1);
  // Small lines share a piece.
  expect(pieces.length).toBeLessThan(110);
});

it('may be one long line that is no entry, and nothing else that is long', async () => {
  const proof = line(9_000_000, 'p');
  const pieces = [...piecesIn(await packed([line(10, 'a'), proof]))];
  expect(pieces.map((piece) => piece?.lines.length)).toEqual([2, 2]);
});

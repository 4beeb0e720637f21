// The real wasm reader in Node, and codes drawn by an independent encoder (bwip-js), for the decoder's tests.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import bwip from 'bwip-js/node';
import { prepareZXingModule } from 'zxing-wasm/reader';
import type { GrayImage } from '../../../src/worker/decode-protocol.ts';
import { type CodeReader, createCodeReader, type ReaderModule } from '../../../src/worker/decode-reader.ts';

export async function loadReader(): Promise<CodeReader> {
  const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
  const module = await prepareZXingModule({
    overrides: { wasmBinary: new Uint8Array(wasm).buffer },
    fireImmediately: true,
  });
  return createCodeReader(module as unknown as ReaderModule); // its declared type leaves out the memory members
}

interface RawSymbol {
  readonly pixs?: readonly number[];
  readonly pixx?: number;
  readonly pixy?: number;
  readonly sbs?: readonly number[];
}

/** Draws one symbol with whole pixels per module and its quiet zone. `more`: what its writer wants besides, such as check characters. */
export function drawCode(bcid: string, text: string, modulePx = 4, more: object = {}): GrayImage {
  const escaped = [...text]
    .map((char) => (char < ' ' ? `^${String(char.charCodeAt(0)).padStart(3, '0')}` : char))
    .join('');
  const isGs1 = bcid.startsWith('gs1');
  // The typings of `raw` name neither its fields nor its single-object call.
  const [raw] = (bwip as unknown as { raw(options: object): readonly RawSymbol[] }).raw({
    bcid,
    text: isGs1 ? text : escaped,
    parse: !isGs1,
    ...more,
  });
  const bars = raw?.sbs?.flatMap((width, at) => Array.from({ length: width }, () => (at % 2 === 0 ? 1 : 0)));
  const columns = bars?.length ?? raw?.pixx ?? 0;
  const rows = bars === undefined ? (raw?.pixy ?? 0) : 30;
  const dark = (x: number, y: number) => (bars === undefined ? raw?.pixs?.[y * columns + x] : bars[x]) === 1;
  const quiet = 10 * modulePx;
  const width = columns * modulePx + 2 * quiet;
  const height = rows * modulePx + 2 * quiet;
  const data = new Uint8Array(width * height).fill(235);
  for (let y = 0; y < rows * modulePx; y++) {
    for (let x = 0; x < columns * modulePx; x++) {
      if (dark(Math.floor(x / modulePx), Math.floor(y / modulePx)))
        data[(y + quiet) * width + x + quiet] = 25;
    }
  }
  return { data, width, height };
}

export function mapPixels(image: GrayImage, from: (x: number, y: number) => number): GrayImage {
  const data = new Uint8Array(image.data.length);
  for (let y = 0; y < image.height; y++) {
    for (let x = 0; x < image.width; x++) data[y * image.width + x] = from(x, y);
  }
  return { data, width: image.width, height: image.height };
}

/** A picture in the middle of a larger plain one. */
export function onDesk(image: GrayImage, width: number, height: number, tone = 90): GrayImage {
  const data = new Uint8Array(width * height).fill(tone);
  const left = Math.floor((width - image.width) / 2);
  const top = Math.floor((height - image.height) / 2);
  for (let row = 0; row < image.height; row++) {
    data.set(image.data.subarray(row * image.width, (row + 1) * image.width), (top + row) * width + left);
  }
  return { data, width, height };
}

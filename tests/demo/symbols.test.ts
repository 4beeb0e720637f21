// The symbols on the sheet hold what the labels say: drawn by bwip-js, read back by zxing-wasm, compared byte by byte.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import bwipjs from 'bwip-js/node';
import { beforeAll, describe, expect, test } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { openPlaying } from '../../demo/playing.ts';
import { practiceLabels } from '../../demo/practice.ts';
import { lineId } from '../../demo/setups.ts';
import { sheetPage } from '../../demo/sheet-page.ts';
import { drawingOf, loadSymbols } from '../../demo/symbols.ts';

const openedMs = Date.UTC(2026, 9, 14, 10, 37);
const playing = openPlaying({ seed: 1, openedMs, speed: 1, zone: 'UTC' });
playing.tell(openedMs);
const labels = practiceLabels({ state: playing.state, line: lineId, nowMs: openedMs }).map(
  ({ label }) => label,
);
const reels = labels.filter((label) => label.id.startsWith('reel-'));

beforeAll(async () => {
  const file = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  const wasm = readFileSync(file);
  await prepareZXingModule({
    overrides: { wasmBinary: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) },
    fireImmediately: true,
  });
});

describe('drawingOf()', () => {
  test.each(reels.map((label) => [label.title, label] as const))('%s', async (_, label) => {
    for (const symbol of label.codes) {
      const png = await bwipjs.toBuffer(drawingOf(symbol));
      const [found, ...others] = await readBarcodes(new Uint8Array(png), { formats: [symbol.format] });
      expect(others).toEqual([]);
      expect(found?.format).toBe(symbol.format);
      expect(Buffer.from(found?.bytes ?? []).toString('utf8')).toBe(symbol.text);
    }
  });

  test('draws the short symbols of slots, feeders, badges and panels as readable', async () => {
    for (const label of labels.filter((one) => !reels.includes(one)).filter((_, index) => index % 9 === 0)) {
      const png = await bwipjs.toBuffer(drawingOf(label.codes[0] ?? { text: '', format: 'Code128' }));
      const [found] = await readBarcodes(new Uint8Array(png), { formats: ['Code128'] });
      expect(found?.text).toBe(label.codes[0]?.text);
    }
  });
});

describe('sheetPage()', () => {
  test('shows every label with one picture a code, and nothing that could be taken for markup', async () => {
    const page = sheetPage(labels, await loadSymbols());
    const codes = labels.reduce((sum, label) => sum + label.codes.length, 0);
    expect(page.match(/<svg /g)).toHaveLength(codes);
    expect(page).not.toMatch(/<(GS|RS|EOT)>/);
    expect(page).not.toMatch(/style=|<script|<style/);
    for (const label of labels) expect(page).toContain(`<h3>${label.title.replaceAll('&', '&amp;')}</h3>`);
  });
});

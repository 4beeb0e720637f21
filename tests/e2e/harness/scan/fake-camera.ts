// A picture as a fake camera: Chromium plays a file of concatenated JPEG pictures as if it were a lens.

import { mkdtempSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import bwip from 'bwip-js/node';
import type { Browser } from 'playwright-core';

export interface FakeCode {
  readonly bcid: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly turnDeg?: number;
  readonly scale?: number;
}

/** Draws codes on paper and writes the film; answers the switches that make Chromium see it. */
export async function filmCodes(browser: Browser, codes: readonly FakeCode[]): Promise<readonly string[]> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 720 } });
  const symbols = codes.map(({ bcid, text, x, y, turnDeg = 0, scale = 3 }) => {
    const isGs1 = bcid.startsWith('gs1');
    const escaped = [...text]
      .map((char) => (char < ' ' ? `^${String(char.charCodeAt(0)).padStart(3, '0')}` : char))
      .join('');
    const svg = bwip.toSVG({
      bcid,
      text: isGs1 ? text : escaped,
      parse: !isGs1,
      scale,
      ...(bcid === 'code128' ? { height: 12 } : {}),
    });
    const sized = /viewBox="0 0 (\d+) (\d+)"/.exec(svg);
    const [width, height] = [Number(sized?.[1] ?? 0), Number(sized?.[2] ?? 0)];
    return `<div style="position:absolute;left:${x}px;top:${y}px;width:${width}px;height:${height}px;transform:rotate(${turnDeg}deg)">${svg}</div>`;
  });
  await page.setContent(`<body style="margin:0;background:#f4f4f0">${symbols.join('')}</body>`);
  const shot = await page.screenshot({ type: 'jpeg', quality: 92 });
  await page.close();
  const film = path.join(mkdtempSync(path.join(os.tmpdir(), 'reelward-film-')), 'film.mjpeg');
  writeFileSync(film, Buffer.concat(Array.from({ length: 30 }, () => shot)));
  return [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-video-capture=${film}`,
  ];
}

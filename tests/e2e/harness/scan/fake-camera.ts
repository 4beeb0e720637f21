// A picture as a fake camera: Chromium plays a file of concatenated JPEG pictures as if it were a lens.

import { mkdtempSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import bwip from 'bwip-js/node';
import type { Browser } from 'playwright-core';
import { drawn } from '../../support/clock.ts';

export interface FakeCode {
  readonly bcid: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly turnDeg?: number;
  readonly scale?: number;
}

/** A code as SVG, with its size in pixels. */
function drawCode({ bcid, text, scale = 3 }: Pick<FakeCode, 'bcid' | 'text' | 'scale'>): {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
} {
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
  return { svg, width: Number(sized?.[1] ?? 0), height: Number(sized?.[2] ?? 0) };
}

/** Writes the film of one still picture of 1280 × 720; answers the switches that make Chromium see it. */
async function film(browser: Browser, body: string): Promise<readonly string[]> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 720 } });
  await page.setContent(body);
  // A window that was not drawn yet has nothing to take a picture of.
  await drawn(page);
  const shot = await page.screenshot({ type: 'jpeg', quality: 92 });
  await page.close();
  return playing(Array.from({ length: 30 }, () => shot));
}

/** Writes a film; answers the switches that make Chromium play it as a lens, over and over. */
function playing(shots: readonly Buffer[]): readonly string[] {
  const file = path.join(mkdtempSync(path.join(os.tmpdir(), 'reelward-film-')), 'film.mjpeg');
  writeFileSync(file, Buffer.concat(shots));
  return [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-video-capture=${file}`,
  ];
}

/** A square code as the outline of its dark squares, an SVG path: for a lens that a page draws itself, whose policy lets no picture in. */
export function codeOutline(code: Pick<FakeCode, 'bcid' | 'text' | 'scale'>): string {
  return [...drawCode(code).svg.matchAll(/<path d="([^"]+)"/g)].map(([, outline]) => outline).join(' ');
}

/** Draws codes on paper and films them. */
export async function filmCodes(browser: Browser, codes: readonly FakeCode[]): Promise<readonly string[]> {
  const symbols = codes.map((code) => {
    const { svg, width, height } = drawCode(code);
    const { x, y, turnDeg = 0 } = code;
    return `<div style="position:absolute;left:${x}px;top:${y}px;width:${width}px;height:${height}px;transform:rotate(${turnDeg}deg)">${svg}</div>`;
  });
  return film(browser, `<body style="margin:0;background:#f4f4f0">${symbols.join('')}</body>`);
}

/** A label of a shelf or a bank: one square code on paper, with a line of print. */
export interface ShelfLabel {
  readonly text: string;
  readonly print: string;
  readonly x: number;
  readonly y: number;
}

/** Where the hand is at a moment: how far the tablet has moved along, pixels. */
export interface HandAt {
  readonly x: number;
  readonly y: number;
}

/** Draws labels on a shelf and films them as a hand passes a tablet along it: a picture for each place of the hand, with a spot of glare. */
export async function filmPan(
  browser: Browser,
  labels: readonly ShelfLabel[],
  hand: readonly HandAt[],
): Promise<readonly string[]> {
  const papers = labels.map(({ text, print, x, y }) => {
    const { svg, width, height } = drawCode({ bcid: 'datamatrix', text, scale: 3 });
    return `<div style="position:absolute;left:${x}px;top:${y}px;padding:12px 16px;background:#f5f5f1;color:#1a1a1a;font:15px sans-serif"><div style="width:${width}px;height:${height}px">${svg}</div><b>${print}</b></div>`;
  });
  const glare =
    '<div id="glare" style="position:absolute;width:420px;height:420px;border-radius:50%;background:radial-gradient(rgb(255 255 255/45%),rgb(255 255 255/0) 70%)"></div>';
  const body = `<body style="margin:0;background:#4b4e50;overflow:hidden"><div id="shelf" style="position:absolute;inset:0">${papers.join('')}</div>${glare}</body>`;
  const page = await browser.newPage({ viewport: { width: 1280, height: 720 } });
  await page.setContent(body);
  await drawn(page);
  const shots: Buffer[] = [];
  for (const [at, { x, y }] of hand.entries()) {
    await page.evaluate(
      ([along, down, spot]) => {
        const move = (id: string, left: number, top: number) => {
          const element = document.getElementById(id);
          if (element) element.style.transform = `translate(${left}px, ${top}px)`;
        };
        move('shelf', -(along ?? 0), -(down ?? 0));
        move('glare', spot ?? 0, 180);
      },
      [x, y, (at * 97) % 900],
    );
    shots.push(await page.screenshot({ type: 'jpeg', quality: 88 }));
  }
  await page.close();
  // The lens gives 30 pictures a second; the hand is at each place for a seventh of one.
  return playing(shots.flatMap((shot) => [shot, shot, shot, shot]));
}

/** A label whose facts are bar codes of their own, one under the other. */
export interface FakeLabel {
  readonly part: string;
  readonly codes: readonly { readonly text: string; readonly name: string }[];
}

/** Draws labels on reels, side by side, and films them: paper on dark plastic, as a hand holds it before the lens. */
export async function filmLabel(
  browser: Browser,
  ...labels: readonly FakeLabel[]
): Promise<readonly string[]> {
  const drawn = labels.map(({ part, codes }, at) => {
    const rows = codes.map(({ text, name }) => {
      const { svg, width } = drawCode({ bcid: 'code128', text, scale: 1 });
      return `<p style="margin:8px 0 4px">${name}</p><div style="width:${width * 1.5}px">${svg}</div>`;
    });
    // As near to each other as they are held to be seen at once.
    const middle = 640 + (at - (labels.length - 1) / 2) * 400;
    return {
      reel: `<div style="position:absolute;left:${middle - 500}px;top:60px;width:1000px;height:1000px;border-radius:50%;background:#313c48"></div>`,
      paper: `<div style="position:absolute;left:${middle - 190}px;top:190px;width:380px;padding:14px 30px;box-sizing:border-box;background:#f5f5f1;color:#1a1a1a;font:15px sans-serif"><b style="font-size:19px">${part}</b>${rows.join('')}</div>`,
    };
  });
  const all = [...drawn.map(({ reel }) => reel), ...drawn.map(({ paper }) => paper)];
  return film(browser, `<body style="margin:0;background:#4b4e50;overflow:hidden">${all.join('')}</body>`);
}

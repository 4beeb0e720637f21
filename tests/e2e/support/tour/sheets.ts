// Contact sheets: all stops of one size and theme on one picture, side by side under their names, for a person's eyes.

import { appendFile, mkdir, readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';

/** Each part of the tour has a folder of its own here. */
export const sheetsFolder = path.resolve(import.meta.dirname, '../../../../.tmp/sheets');

interface Shot {
  readonly name: string;
  readonly file: string;
}

/** Pictures of the stops of one part, by sheet; each lies on the disk as soon as it is taken. */
export class Shots {
  readonly #sheets = new Map<string, Shot[]>();
  readonly #folder: string;

  constructor(part: string) {
    this.#folder = path.join(sheetsFolder, part);
  }

  /** Takes away what an earlier tour left. */
  async clear(): Promise<void> {
    await rm(this.#folder, { recursive: true, force: true });
    await mkdir(this.#folder, { recursive: true });
  }

  /** Keeps what was found so far beside the pictures. */
  async keepFound(wrong: readonly string[]): Promise<void> {
    await appendFile(path.join(this.#folder, 'found.txt'), wrong.map((each) => `${each}\n`).join(''));
  }

  /** Takes a picture of where a leg could not go on. */
  async takeLost(page: Page, leg: string): Promise<void> {
    await page.screenshot({ path: path.join(this.#folder, `lost-${fileName(leg)}.png`) });
  }

  /** Takes a picture of a stop at which something was found. */
  async takeFound(page: Page, stop: string): Promise<void> {
    await page.screenshot({ path: path.join(this.#folder, `found-${fileName(stop)}.png`) });
  }

  /** Takes one picture for a sheet. */
  async take(page: Page, sheet: string, name: string): Promise<void> {
    const shots = this.#sheets.get(sheet) ?? [];
    const number = String(shots.length + 1).padStart(3, '0');
    const file = path.join(this.#folder, sheet, `${number}-${fileName(name)}.jpg`);
    // Its place is taken before the picture is: another tablet's tour goes on meanwhile.
    this.#sheets.set(sheet, [...shots, { name, file }]);
    await page.screenshot({ type: 'jpeg', quality: 70, path: file });
  }

  /** Writes one PNG a sheet. */
  async write(browser: Browser): Promise<void> {
    for (const [sheet, shots] of this.#sheets) {
      await compose(browser, shots, /^1280/.test(sheet) ? 400 : 240, path.join(this.#folder, `${sheet}.png`));
    }
  }
}

function fileName(words: string): string {
  return words.replace(/\W+/g, '-');
}

const COLUMNS = 8;

async function compose(
  browser: Browser,
  shots: readonly Shot[],
  widthPx: number,
  file: string,
): Promise<void> {
  const page = await browser.newPage({ viewport: { width: COLUMNS * (widthPx + 12), height: 600 } });
  const figures = await Promise.all(
    shots.map(async ({ name, file: picture }, at) => {
      const jpeg = await readFile(picture, 'base64').catch(() => ''); // a page that was lost has none
      return `<figure><figcaption>${at + 1} ${name}</figcaption><img src="data:image/jpeg;base64,${jpeg}"></figure>`;
    }),
  );
  await page.setContent(
    `<style>body{margin:0;display:flex;flex-wrap:wrap;gap:12px;background:#888;font:13px sans-serif}` +
      `figure{margin:0;width:${widthPx}px}img{width:100%;display:block}figcaption{background:#fff;padding:2px 4px}</style>${figures.join('')}`,
  );
  await page.screenshot({ path: file, fullPage: true });
  await page.close();
}

// The look itself: each planted fault is found, and a page without a fault has none.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startBrowser } from './support/browser.ts';
import { wrongIn } from './support/look/sentences.ts';
import { findings, type LookOptions, listen, look, withLargeText } from './support/look.ts';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await startBrowser();
  page = await browser.newPage({ viewport: { width: 800, height: 600 } });
  listen(page);
});
afterAll(async () => browser?.close());

const sheet = `
  * { box-sizing: border-box; margin: 0 } body { font: 1rem/1.4 sans-serif; background: #fff; color: #111 }
  button, input, select { min-height: 48px; min-width: 48px; font: inherit }
  .cut { width: 60px; overflow: hidden; white-space: nowrap }
  .over { position: absolute; inset: 0; background: #eef }
  .hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap }
`;

async function found(body: string, options: LookOptions = {}): Promise<readonly string[]> {
  await page.setContent(
    `<!doctype html><html lang="en"><head><title>Small page</title><style>${sheet}</style></head><body><main>${body}</main></body></html>`,
  );
  return findings(page, { patienceMs: 0, ...options });
}

const clean = `
  <h1>Line 1</h1>
  <p>1 slot is empty, 2 slots are due. Slot M1-F-010 takes part 10-0402-101.</p>
  <button>Close</button> <button aria-label="Splice M1-F-010"><svg width="20" height="20"><path d="M0 0h20v20"/></svg></button>
  <label>Name <input placeholder="Ann"></label>
  <label style="display:flex;min-height:48px;align-items:center"><input type="checkbox" style="min-height:0;min-width:0"> Tick</label>
  <label style="display:inline-flex;min-height:48px;min-width:90px">Choose a file<input class="hidden" type="file"></label>
  <div style="height:100px;overflow:auto"><p style="height:300px">Long list</p><button>Far below</button></div>
  <span class="hidden">Only read aloud</span>
  <div inert style="position:relative;height:60px"><button>Under a cover</button><div class="over"></div></div>`;

describe('a page without a fault', () => {
  it('has no finding, axe included', async () => {
    expect(await found(clean, { axe: true })).toEqual([]);
    await look(page);
  });

  it('in which the table head stays while its rows go by has none', async () => {
    const rows = Array.from({ length: 30 }, (_, row) => `<tr><td>Row ${row}</td></tr>`).join('');
    const table = `<div style="height:200px;overflow:auto"><table><thead><tr><th style="position:sticky;top:0;background:#fff">Head</th></tr></thead>${rows}</table></div>`;
    await found(table);
    await page
      .locator('div')
      .first()
      .evaluate((element) => element.scrollTo(0, 37));
    expect(await findings(page, { patienceMs: 0 })).toEqual([]);
  });

  it('with a dialog open is judged by the dialog alone', async () => {
    await found(
      '<button style="min-height:20px;height:20px">Small</button><dialog><h2>Ask</h2><button>Yes</button></dialog>',
    );
    await page.locator('dialog').evaluate((element) => (element as HTMLDialogElement).showModal());
    expect(await findings(page, { patienceMs: 0 })).toEqual([]);
  });
});

const planted: readonly (readonly [name: string, body: string, wanted: RegExp])[] = [
  [
    'a Close button under another layer',
    '<div style="position:relative;height:200px"><button>Close</button><div class="over"></div></div>',
    /out of reach: button "Close" lies under div\.over/,
  ],
  [
    'a button outside the window with nothing to scroll',
    '<button style="position:fixed;left:790px;width:90px;top:10px">Other camera</button>',
    /out of reach: button "Other camera" lies outside/,
  ],
  [
    'a button cut off by a box that no finger scrolls',
    '<div style="height:60px;overflow:hidden"><p style="height:100px">x</p><button>Lost</button></div>',
    /out of reach: button "Lost" is cut off by div/,
  ],
  [
    'a button that takes no touch',
    '<button style="pointer-events:none">Dead</button>',
    /out of reach: button "Dead" lies under/,
  ],
  [
    'a low button',
    '<button style="min-height:20px;height:20px">Ok</button>',
    /small: \d+ × 20 px, button "Ok"/,
  ],
  ['a narrow button', '<button style="min-width:20px;width:30px">+</button>', /small: 30 × 48 px/],
  [
    'a checkbox with a small label',
    '<label><input type="checkbox" style="min-height:0"> Tick</label>',
    /small: .*label "Tick"/,
  ],
  ['a link of one line', '<p>See <a href="#log">the log</a></p>', /small: .*"the log"/],
  [
    'a button without a name',
    '<button><svg width="20" height="20"><path d="M0 0h20"/></svg></button>',
    /no name: button/,
  ],
  ['a field without a name', '<input>', /no name: input/],
  [
    'a choice named by its options alone',
    '<label><select><option>One</option></select></label>',
    /no name: select/,
  ],
  ['a clipped word', '<p class="cut">Runningout</p>', /cut off: "Runningout"/],
  [
    'an ellipsis',
    '<p class="cut" style="text-overflow:ellipsis">Tide gauge, top side</p>',
    /cut off: "Tide gauge, top side"/,
  ],
  [
    'lines cut off below',
    '<p style="height:20px;width:80px;overflow:hidden">One two three four five six seven</p>',
    /cut off: "One two/,
  ],
  [
    'a field too narrow for its example',
    '<label>Job <input style="width:60px" placeholder="Tide gauge, top side, C"></label>',
    /cut off: "Tide gauge/,
  ],
  [
    'text over text',
    '<p>One thing is said here</p><p style="margin-top:-20px">Another thing is said here</p>',
    /overlap: "One thing is said here" and "Another thing/,
  ],
  [
    'labels of a drawing over each other',
    '<svg width="200" height="40"><text x="5" y="20">10:15 first</text><text x="30" y="20">10:20 second</text></svg>',
    /overlap: "10:15 first" and "10:20 second"/,
  ],
  [
    'a word under a badge',
    '<div style="position:relative;width:80px">Plan<b style="position:absolute;left:0;top:0;width:60px;height:24px;background:#ddd"></b></div>',
    /covered: "Plan" by b/,
  ],
  [
    'a word that is broken in two',
    '<button style="width:80px;overflow-wrap:anywhere;padding:0">Maintenance</button>',
    /broken: "Maintenance" in button "Maintenance"/,
  ],
  [
    'a word that leaves its button',
    '<button style="width:60px;border:1px solid;white-space:nowrap;padding:0">Changeover begins</button>',
    /sticks out: "Changeover begins"/,
  ],
  [
    'a toast over a caution',
    '<p class="caution">Stop the machine first.</p><div role="status" style="position:fixed;top:0;left:0;background:#ddd">Kept</div>',
    /under the toast: "Stop the machine first\."/,
  ],
  [
    'sideways scrolling',
    '<div style="width:900px;height:10px"></div>',
    /sideways: html is \d+ px too wide: div/,
  ],
  [
    'a video without height',
    '<video style="width:300px;height:0"></video>',
    /empty picture: video is 300 × 0 px/,
  ],
  [
    'a video without a frame',
    '<video width="300" height="200"></video>',
    /empty picture: video shows no frame/,
  ],
  [
    'a canvas of one colour',
    '<canvas width="80" height="40"></canvas>',
    /empty picture: canvas is one colour/,
  ],
  [
    'an image that is not there',
    '<img alt="Label" width="80" height="40" src="data:image/png;base64,AAAA">',
    /empty picture: img .*is not loaded/,
  ],
  ['a drawing with nothing in it', '<svg width="20" height="20"></svg>', /empty picture: svg/],
  ['undefined in a sentence', '<p>Reel undefined is on M1-F-010.</p>', /undefined: "Reel undefined/],
  ['NaN in a name', '<button aria-label="NaN parts left">Left</button>', /NaN: .*\(aria-label\)/],
  ['null in an example', '<label>Lot <input placeholder="null"></label>', /null: "null" \(placeholder\)/],
  ['a sentence broken over elements', '<p>M1-F-010 already carries <b></b>.</p>', /a space before the stop/],
  ['a wrong plural over elements', '<p><b>1</b> slots are empty</p>', /a wrong plural: "1 slots are empty"/],
];

describe('a planted fault is found', () => {
  it.each(planted)('%s', async (_, body, wanted) => {
    expect((await found(body)).join('\n')).toMatch(wanted);
  });

  it('a canvas that is drawn on, and an image with something in it, are none', async () => {
    await found('<canvas width="80" height="40"></canvas><img alt="Label" width="80" height="40">');
    await page.evaluate(() => {
      const [canvas] = document.getElementsByTagName('canvas');
      const pen = canvas?.getContext('2d');
      if (!canvas || !pen) throw new TypeError('no canvas');
      pen.fillRect(10, 10, 30, 20);
      document.images[0]?.setAttribute('src', canvas.toDataURL());
    });
    expect(await findings(page)).toEqual([]);
  });

  it('a text that is scrolled to, in a box that cuts it off, is none; where the scrolled box itself is cut, it is one', async () => {
    const list = (height: number) =>
      `<div style="height:120px;overflow:hidden"><div style="height:${height}px;overflow:auto"><p style="height:300px">List</p><p style="margin:0">Far below</p></div></div>`;
    expect(await found(list(120))).toEqual([]);
    expect((await found(list(200))).join()).toContain('cut off: "Far below"');
  });

  it('what axe alone knows', async () => {
    expect((await found('<p style="color:#bbb">Pale</p>', { axe: true })).join()).toContain(
      'axe color-contrast',
    );
  });

  it('what the console tells', async () => {
    await found(clean);
    await page.evaluate(() => console.error('a part is missing'));
    expect(await findings(page)).toEqual(['console: a part is missing']);
    expect(await findings(page)).toEqual([]);
  });

  it('what letters of twice the size push out of reach', async () => {
    const box = '<div style="height:72px;overflow:hidden"><p>Two words</p><button>Act</button></div>';
    expect(await found(box)).toEqual([]);
    await withLargeText(page, async () => {
      expect((await findings(page, { patienceMs: 0 })).join()).toMatch(/"Act" is cut off/);
    });
    expect(await findings(page)).toEqual([]);
  });

  it('all of them are told in one list, with the place', async () => {
    await found('<p>NaN</p><button></button>');
    await expect(look(page, { where: 'line', patienceMs: 0 })).rejects.toThrow(
      /line: NaN[\s\S]*|line: no name/,
    );
  });
});

describe('a sentence', () => {
  it.each([
    ['run n7ns09kq2w8d4hj5m6p1 stands', 'a raw id'],
    ['Written by 8d4hj5/ab12/31', 'a raw id'],
    ['Run run-1 is open', 'a raw id'],
    ['At 2026-11-28T22:58', 'an ISO stamp'],
    ['reel.verified by Ann', 'a key name'],
    ['Needs panelSeconds', 'a key name'],
    ['1 tries left', 'a wrong plural'],
    ['Queda 1 posiciones', 'a wrong plural'],
    ['M1-F-010 already carries .', 'a space before the stop'],
    ['Kept..', 'two stops'],
    ['Part ()', 'an empty pair'],
    ['Tide gauge · · rev C', 'a separator with nothing beside it'],
  ])('“%s” has %s', (sentence, what) => {
    expect(wrongIn(sentence)).toContain(what);
  });

  it.each([
    '21 slots are full, 0.1 parts a panel, M1 feeders.',
    'Run-out in 23 min (14:07), 2 Mar 14:07, 4.7 kΩ ± 1 %, 800 mm.',
    'Choose a file: setup.csv or setup.xlsx. Wait …',
    '1 slot is empty, 1 reel waits.',
    'R-970001 · 10-0402-101 · LT-9400-H',
  ])('“%s” is whole', (sentence) => {
    expect(wrongIn(sentence)).toEqual([]);
  });
});

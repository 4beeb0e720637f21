// The shift's report on one page of paper, A4 or Letter, upright or across. A copy of it is laid out for paper and made as much smaller as it
// takes; letters stay readable, and what of a list does not go on the page then is counted at its foot. Method: the copy is measured at the
// width of either page at several sizes, since words break anew at each. A fixed size was refused: a busy shift has three times the rows.

import { h, render } from 'preact';
import { PracticeMark, practiceMark } from '../../ui/PracticeMark.tsx';
import { handoverWords } from '../../words/handover.ts';
import { say } from '../../words/words.ts';

/** CSS's inch has 96 px, whatever the screen. */
const MM = 96 / 25.4;
const MARGIN_MM = 10;
/** What of a page is written on inside its margins, mm: the smaller of A4 (210 × 297) and Letter (216 × 279) each way. */
const pages = { portrait: { across: 190, down: 259 }, landscape: { across: 259, down: 190 } } as const;
type Way = keyof typeof pages;

/** A browser's printing may break words a little otherwise than its screen does: so much of the page stays free. */
const SPARE = 0.97;
/** Letters of 9 points become no smaller than 6: read at arm's length. Common practice. */
const LEAST = 2 / 3;
/** Halvings of what is left: to a hundredth. */
const STEPS = 6;

/** Lays the copy out for paper; returns what takes it away again. */
export function layOnePage(report: HTMLElement): () => void {
  const copy = report.cloneNode(true) as HTMLElement; // of an HTMLElement
  for (const part of copy.querySelectorAll('button, details, .field, .row')) part.remove();
  copy.querySelector('.shift-head > :not(h2)')?.remove();
  markPractice(copy);
  const sheet = document.createElement('div');
  sheet.id = 'shift-page';
  sheet.append(copy);
  document.body.append(sheet);
  document.body.classList.add('prints-shift');
  // Only while it is printed: other screens have pages of their own.
  const margins = new CSSStyleSheet();
  margins.replaceSync(`@page { margin: ${MARGIN_MM}mm; }`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, margins];
  const { theme } = document.documentElement.dataset;
  document.documentElement.dataset['theme'] = 'light'; // paper is white
  for (let rows = longestList(copy); ; rows = Math.floor(rows * 0.8)) {
    keepRows(copy, rows);
    const sizes = { portrait: sizeOn(sheet, 'portrait'), landscape: sizeOn(sheet, 'landscape') };
    sheet.style.setProperty('--portrait', String(sizes.portrait));
    sheet.style.setProperty('--landscape', String(sizes.landscape));
    if (rows <= 1 || Math.min(sizes.portrait, sizes.landscape) >= LEAST) break;
  }
  return () => {
    sheet.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== margins);
    document.body.classList.remove('prints-shift');
    if (theme !== undefined) document.documentElement.dataset['theme'] = theme;
  };
}

/** A report of made-up entries says so at its head: the band over the screen is not printed. */
function markPractice(copy: HTMLElement): void {
  if (!practiceMark.peek()) return;
  const host = document.createElement('div');
  render(h(PracticeMark, { brief: true }), host);
  copy.prepend(host);
}

const listsOf = (copy: HTMLElement) => [...copy.querySelectorAll<HTMLElement>('.matters')];
const longestList = (copy: HTMLElement) => Math.max(0, ...listsOf(copy).map((list) => list.children.length));

/** Keeps the first rows of each list, and says how many are left out. */
function keepRows(copy: HTMLElement, rows: number): void {
  for (const list of listsOf(copy)) {
    const over = [...list.children].slice(rows);
    if (over.length === 0) continue;
    for (const row of over) row.remove();
    const told = list.nextElementSibling;
    const before = told?.classList.contains('left-out') ? told : null;
    const left = over.length + Number(before?.getAttribute('data-count') ?? 0);
    before?.remove();
    const note = document.createElement('p');
    note.className = 'left-out';
    note.dataset['count'] = String(left);
    note.textContent = say(handoverWords).more(left);
    list.after(note);
  }
}

/** The largest size, at most 1, at which it stands on the page; below the least where none does. */
function sizeOn(sheet: HTMLElement, way: Way): number {
  const { across, down } = pages[way];
  sheet.style.inlineSize = `${across * MM}px`;
  sheet.dataset['way'] = way;
  const fits = (size: number) => {
    sheet.style.setProperty('--size', String(size));
    return sheet.getBoundingClientRect().height <= down * MM * SPARE;
  };
  let [low, high] = [LEAST / 2, 1];
  if (fits(high)) low = high;
  for (let step = 0; step < STEPS && low < high; step += 1) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  sheet.style.removeProperty('inline-size');
  sheet.style.removeProperty('--size');
  delete sheet.dataset['way'];
  return low;
}

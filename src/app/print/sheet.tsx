// Gives labels to the printer. Method: the pages stand beside the app in the document, shown on paper only, on pages of the paper's own size; the browser's own print
// dialog does the rest, on tablets as on computers. Refused: a PDF made here, which would still have to be printed by a browser.

import { type ComponentChild, render } from 'preact';
import { type Paper, pagesOf } from '../../../shared/labels/label-paper.ts';
import { FaceDrawing, type ReadyLabel } from './Face.tsx';
import './sheet.css';
import { setPrintsLabels } from '../device/prints-labels.ts';

/** How this tablet's printer wants it. */
export interface PrinterWants {
  readonly first: number;
  readonly offsetXMm: number;
  readonly offsetYMm: number;
}

/** What stands on the pages: labels, or a test of where they lie. */
export type Printed = { readonly labels: readonly ReadyLabel[] } | { readonly test: string };

function Pages({
  paper,
  printed,
  wants,
}: {
  readonly paper: Paper;
  readonly printed: Printed;
  readonly wants: PrinterWants;
}) {
  const isTest = 'test' in printed;
  const count = isTest ? paper.columns * paper.rows : printed.labels.length;
  const { widthMm, heightMm } = paper;
  return (
    <>
      {pagesOf(paper, count, isTest ? { ...wants, first: 0 } : wants).map((page) => (
        <svg
          class="label-page"
          role="presentation"
          key={page[0]?.index}
          width={`${paper.pageWidthMm}mm`}
          height={`${paper.pageHeightMm}mm`}
          viewBox={`0 0 ${paper.pageWidthMm} ${paper.pageHeightMm}`}
        >
          {page.map(({ index, xMm, yMm }) => (
            <g key={index} transform={`translate(${xMm} ${yMm})`}>
              {isTest ? (
                <TestFace
                  widthMm={widthMm}
                  heightMm={heightMm}
                  marginMm={paper.marginMm}
                  text={printed.test}
                />
              ) : (
                printed.labels[index] && <FaceDrawing {...printed.labels[index]} />
              )}
            </g>
          ))}
        </svg>
      ))}
    </>
  );
}

/** Edge, margin, centre and a length that a ruler can be held to. */
function TestFace(props: {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marginMm: number;
  readonly text: string;
}) {
  const { widthMm: width, heightMm: height, marginMm: margin, text } = props;
  const ruler = Math.min(20, Math.floor((width - 2 * margin) / 5) * 5);
  const left = (width - ruler) / 2;
  return (
    <g fill="none" stroke="#000" stroke-width="0.25" direction="ltr">
      <rect x="0.125" y="0.125" width={width - 0.25} height={height - 0.25} />
      <rect
        x={margin}
        y={margin}
        width={width - 2 * margin}
        height={height - 2 * margin}
        stroke-dasharray="1 1"
      />
      <path d={`M${width / 2} ${height / 2 - 3}v6M${width / 2 - 3} ${height / 2}h6`} />
      <path d={`M${left} ${height / 2 + 5}v-2m0 1h${ruler}m0 -1v2`} />
      <text
        x={width / 2}
        y={height / 2 - 4}
        font-size="2.6"
        text-anchor="middle"
        fill="#000"
        stroke="none"
        font-family="system-ui, sans-serif"
      >
        {text.replace('{mm}', String(ruler))}
      </text>
    </g>
  );
}

let styles: CSSStyleSheet | null = null;

/** The size of the pages: a sheet of its own, since it is not known before. */
function sizePages({ pageWidthMm, pageHeightMm }: Paper): void {
  if (styles === null) {
    styles = new CSSStyleSheet();
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, styles];
  }
  styles.replaceSync(`@page { size: ${pageWidthMm}mm ${pageHeightMm}mm; margin: 0; }`);
}

/** Takes the pages away again. */
function clear(): void {
  const host = document.getElementById('label-pages');
  if (host) {
    render(null, host);
    host.remove();
  }
  styles?.replaceSync('');
  setPrintsLabels(false);
}

/** Shows the browser's print dialog with these pages. Returns once the dialog is up, or, where it waits, closed. */
export function printPages(paper: Paper, printed: Printed, wants: PrinterWants): void {
  putOnPaper(<Pages paper={paper} printed={printed} wants={wants} />);
  sizePages(paper);
  askPrinter();
}

/** Shows the browser's print dialog with this alone, on whatever paper it says. */
export function printAlone(content: ComponentChild): void {
  putOnPaper(content);
  askPrinter();
}

function putOnPaper(content: ComponentChild): void {
  clear();
  const host = document.createElement('div');
  host.id = 'label-pages';
  document.body.append(host);
  render(content, host);
}

let stopWaiting: (() => void) | null = null;

/** Keys that say nothing alone, or that have no name, as a scanner's on some tablets: a scan may begin with them, and the wedge lets them pass. */
const silentKeys: readonly string[] = [
  'Shift',
  'Control',
  'Alt',
  'AltGraph',
  'Meta',
  'CapsLock',
  'Unidentified',
];

/** Does something at a person's next touch or key. A scanner's keys are none: the wedge, which hears them first, keeps them from the page. Answers how to stop. */
export function onceTouched(page: Pick<Window, 'addEventListener'>, act: () => void): () => void {
  const listening = new AbortController();
  const { signal } = listening;
  const touched = (event: Event) => {
    const isSilent = 'key' in event && silentKeys.includes(String(event.key));
    if (event.defaultPrevented || isSilent) return;
    listening.abort();
    act();
  };
  for (const touch of ['pointerdown', 'keydown'] as const)
    page.addEventListener(touch, touched, { capture: true, signal });
  return () => listening.abort();
}

function askPrinter(): void {
  setPrintsLabels(true);
  // Not at `afterprint`: on some tablets that comes before the dialog has drawn the pages. Whoever touches the page again has printed.
  stopWaiting?.();
  stopWaiting = onceTouched(globalThis, clear);
  window.print();
}

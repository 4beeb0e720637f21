// How long does it take to read a setup sheet of 10 MB (about 150 000 rows, more than any line has slots)?
// Baseline of the same run: splitting the text at line ends and separators, which reads nothing and checks nothing.

import { readPlacements } from '../../shared/sheet/placements.ts';
import { readSheet } from '../../shared/sheet/read.ts';
import { bytesToText, guessSeparator, textToRows } from '../../shared/sheet/text.ts';

const target = 10 * 1024 * 1024;

function makeSheet(): string {
  const lines = ['Slot;Part number;Qty per panel;Tape width (mm);Pitch (mm);Alternates;Description'];
  let length = 0;
  for (let at = 0; length < target; at++) {
    const slot = `M${1 + Math.floor(at / 2000)}-${at % 2 === 0 ? 'F' : 'R'}-${String(1 + Math.floor((at % 2000) / 2)).padStart(3, '0')}`;
    const line = `${slot};BW-${10_000 + (at % 3000)};${1 + (at % 40)};8 mm;4,0;"BW-A${at % 900}, BW-B${at % 700}";resistor 10k 1 %`;
    lines.push(line);
    length += line.length + 1;
  }
  return lines.join('\r\n');
}

function makePlacements(): string {
  const lines = ['Designator,Part,Layer,Center-X(mm),Center-Y(mm),Rotation'];
  let length = 0;
  for (let at = 0; length < target; at++) {
    const line = `R${at},BW-${10_000 + (at % 3000)},${at % 3 === 0 ? 'Bottom' : 'Top'}Layer,${at % 400}.25,${at % 300}.5,90`;
    lines.push(line);
    length += line.length + 1;
  }
  return lines.join('\n');
}

/** Median of five runs in ms. */
function median(run: () => unknown): number {
  const times: number[] = [];
  for (let round = 0; round < 5; round++) {
    const start = performance.now();
    run();
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[2] ?? Number.NaN;
}

function report(what: string, ms: number, baselineMs: number): void {
  console.log(
    `${what.padEnd(48)} ${ms.toFixed(0).padStart(6)} ms  ${(ms / baselineMs).toFixed(1).padStart(6)} x baseline`,
  );
}

const text = makeSheet();
const bytes = new TextEncoder().encode(text);
const decode = (input: Uint8Array, encoding: string) =>
  new TextDecoder(encoding, { fatal: true }).decode(input);
const { rows } = textToRows(text);
const reading = readSheet(rows);
console.log(
  `sheet: ${(bytes.length / 1024 / 1024).toFixed(1)} MB, ${rows.length} rows, ${reading.slots.length} slots, ${reading.problems.length} problems`,
);

const split = median(() => text.split('\r\n').map((line) => line.split(';')));
report('baseline: split at line ends and separators', split, split);
report(
  'bytesToText()',
  median(() => bytesToText(bytes, decode)),
  split,
);
report(
  'guessSeparator()',
  median(() => guessSeparator(text)),
  split,
);
report(
  'textToRows()',
  median(() => textToRows(text)),
  split,
);
report(
  'readSheet()',
  median(() => readSheet(rows)),
  split,
);
report(
  'bytes to slots, all together',
  median(() => {
    const decoded = bytesToText(bytes, decode);
    return readSheet(textToRows(decoded.text ?? '').rows);
  }),
  split,
);

const broken = textToRows(text.replaceAll(';8 mm;', ';9 mm;')).rows;
report(
  'readSheet(), an error in every row',
  median(() => readSheet(broken)),
  split,
);

const placementText = makePlacements();
const placementSplit = median(() => placementText.split('\n').map((line) => line.split(',')));
report('placement file, baseline split', placementSplit, placementSplit);
report(
  'readPlacements()',
  median(() => readPlacements(placementText)),
  placementSplit,
);

// How long does it take to lay a placement file of 10,000 rows over a bill of 2,000 rows, from text to joined parts?
// Baseline of the same run: splitting both texts at line ends and separators, which reads nothing and joins nothing.

import { readBill } from '../../shared/sheet/bill.ts';
import { billRows } from '../../shared/sheet/bill-rows.ts';
import { joinBill } from '../../shared/sheet/join.ts';
import { readPlacements } from '../../shared/sheet/placements.ts';

const places = 10_000;
const lines = 2_000;

const letters = ['R', 'C', 'U', 'D', 'L'];
const nameOf = (at: number) => `${letters[at % letters.length]}${1 + Math.floor(at / letters.length)}`;

function placementText(): string {
  const rows = Array.from(
    { length: places },
    (_, at) =>
      `${nameOf(at)},${at % lines}k,R0603,${(at % 400) + 0.25},${(at % 300) + 0.5},90,${at % 3 === 0 ? 'bottom' : 'top'}`,
  );
  return ['Ref,Val,Package,PosX,PosY,Rot,Side', ...rows].join('\n');
}

function billText(): string {
  const namesByLine = Array.from({ length: lines }, (): string[] => []);
  for (let at = 0; at < places; at++) namesByLine[at % lines]?.push(nameOf(at));
  const rows = namesByLine.map(
    (names, at) =>
      `${at + 1};BW-${10_000 + at};${names.length};"${names.join(', ')}";resistor ${at}k;KP-${at} | SR-${at}`,
  );
  return ['Item;Part Number;Qty;Designators;Description;MPN', ...rows].join('\r\n');
}

/** Milliseconds of processor so far: a machine with other work on it shows the same. */
function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Median of nine runs in ms of processor; the first run of all is shown on its own, since a worker reads once. */
function times(run: () => unknown): { readonly first: number; readonly median: number } {
  const taken: number[] = [];
  for (let round = 0; round < 9; round++) {
    const start = cpuMs();
    run();
    taken.push(cpuMs() - start);
  }
  return { first: taken[0] ?? 0, median: [...taken].sort((a, b) => a - b)[4] ?? 0 };
}

const [place, bill] = [placementText(), billText()];
const read = () => joinBill(readPlacements(place, { hasBill: true }), readBill(billRows(bill).rows));
const joined = times(read);
const split = times(() => [place, bill].map((text) => text.split(/\r?\n/).map((line) => line.split(/[,;]/))));
const { parts, placements, problems } = read();
console.log(
  `bill: ${places} + ${lines} rows, ${parts.length} parts, ${placements.length} placements, ${problems.length} problems`,
);
console.log(
  `read and joined: first ${joined.first.toFixed(0)} ms of processor, median ${joined.median.toFixed(0)} ms, ${(joined.median / split.median).toFixed(1)} x splitting alone`,
);

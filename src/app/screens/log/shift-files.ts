// A question of the shift's report as a file: its bars for a spreadsheet, numbers plain, and its picture as it stands on the screen.

import { toCsv } from '../../../../shared/log/table-csv.ts';
import type { Plot } from './plot.ts';

/** The bars as CSV (RFC 4180) with a byte order mark: name, value in the plot's unit, and what stands beside it; its own table where it has one. */
export function plotToCsv({ question, unit, bars, table }: Plot): string {
  if (table) return toCsv(table.heads, table.rows);
  const rows = bars.map(({ name, value, text }) => [name, Math.round(value * 1000) / 1000, text]);
  return toCsv([question, unit, 'text'], rows);
}

const WIDTH = 960;
const EDGE = 32;
const ROW = 44;
const HEAD = 128;
const NAME_SHARE = 0.34;
const TEXT_ROOM = 260;
const HOURS_HIGH = 280;
const NOTE_HIGH = 36;
const BLUE = '#14498f';

interface Drawing {
  readonly pen: CanvasRenderingContext2D;
  readonly plot: Plot;
  readonly at: (x: number) => number;
  readonly write: (
    text: string,
    x: number,
    y: number,
    how: { readonly font: string; readonly colour: string; readonly room: number },
  ) => void;
  readonly room: number;
}

const largestOf = ({ bars }: Plot) => Math.max(...bars.map(({ value }) => value), 0) || 1;

function drawRows({ pen, plot, at, write, room }: Drawing, isRtl: boolean): void {
  const barFrom = EDGE + room * NAME_SHARE;
  const barRoom = room - room * NAME_SHARE - TEXT_ROOM;
  for (const [index, { name, value, text }] of plot.bars.entries()) {
    const top = HEAD + index * ROW;
    write(name, EDGE, top + 27, { font: '18px', colour: '#111', room: room * NAME_SHARE - 16 });
    const length = Math.max(value > 0 ? 2 : 0, (value / largestOf(plot)) * barRoom);
    pen.fillStyle = BLUE;
    pen.fillRect(isRtl ? at(barFrom) - length : barFrom, top + 8, length, ROW - 16);
    write(text, barFrom + length + 12, top + 27, { font: '18px', colour: '#111', room: TEXT_ROOM - 12 });
  }
}

/** Time runs from left to right in every language. */
function drawHours({ pen, plot, room }: Drawing): void {
  const step = room / plot.bars.length;
  const every = Math.ceil(plot.bars.length / 12);
  const foot = HEAD + HOURS_HIGH - 40;
  pen.textAlign = 'center';
  pen.font = '16px sans-serif';
  for (const [index, { name, value, text }] of plot.bars.entries()) {
    const left = EDGE + index * step;
    const height = (value / largestOf(plot)) * (HOURS_HIGH - 80);
    pen.fillStyle = BLUE;
    pen.fillRect(left + 2, foot - height, step - 4, height);
    pen.fillStyle = '#111';
    if (value > 0) pen.fillText(text, left + step / 2, foot - height - 8);
    if (index % every === 0) pen.fillText(name, left + step / 2, foot + 24);
  }
}

/** The plot as a PNG on white, readable on its own: where and when, question, answer, bars, what they mean. Null where the browser makes none. */
export function plotToPng(plot: Plot, title: string, isRtl: boolean): Promise<Blob | null> {
  const canvas = document.createElement('canvas');
  canvas.width = WIDTH;
  const foot = HEAD + (plot.isByHour ? HOURS_HIGH : plot.bars.length * ROW);
  canvas.height = foot + (plot.note === undefined ? 0 : NOTE_HIGH) + EDGE;
  const pen = canvas.getContext('2d');
  if (!pen) return Promise.resolve(null);
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.direction = isRtl ? 'rtl' : 'ltr';
  pen.textAlign = isRtl ? 'right' : 'left';
  const at = (x: number) => (isRtl ? WIDTH - x : x);
  const write = (
    text: string,
    x: number,
    y: number,
    how: { readonly font: string; readonly colour: string; readonly room: number },
  ) => {
    pen.font = `${how.font} sans-serif`;
    pen.fillStyle = how.colour;
    pen.fillText(text, at(x), y, how.room);
  };
  const room = WIDTH - 2 * EDGE;
  write(title, EDGE, 36, { font: '18px', colour: '#555', room });
  write(plot.question, EDGE, 70, { font: 'bold 26px', colour: '#111', room });
  write(plot.answer, EDGE, 102, { font: '20px', colour: '#111', room });
  if (plot.note !== undefined) write(plot.note, EDGE, foot + 24, { font: '16px', colour: '#555', room });
  const draw = { pen, plot, at, write, room };
  if (plot.isByHour) drawHours(draw);
  else drawRows(draw, isRtl);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/png'));
}

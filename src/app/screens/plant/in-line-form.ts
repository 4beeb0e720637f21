// Panels in the line as texts in a form, and back; what does not fit is refused whole.

import { seenInLine } from '../../../../shared/floor/fold-seen.ts';
import { MISSED_GUESS, panelsInLine } from '../../../../shared/floor/in-line.ts';
import type { PayloadOf } from '../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';

/** One machine of the form: panels as typed, empty where nobody has entered them. */
export interface InLineRow {
  readonly machine: string;
  readonly name: string;
  /** Done by it and not yet counted. */
  readonly behind: string;
  /** Counted and not yet done by it. */
  readonly before: string;
  /** What is assumed of either where it stays empty. */
  readonly assumed: { readonly behind: number; readonly before: number };
  /** What panels scanned at both places showed; null where none was. */
  readonly seen: { readonly panels: number; readonly behind: number; readonly before: number } | null;
}

/** The form. */
export interface InLineForm {
  readonly rows: readonly InLineRow[];
  /** Per cent of all panels. */
  readonly missed: string;
}

/** What is entered for a line. */
export function toInLineForm(
  floor: Pick<FloorState, 'lines' | 'inLines' | 'passed'>,
  line: string,
): InLineForm {
  const ruled = floor.inLines.get(line);
  const rows = (floor.lines.get(line)?.machines ?? []).map(({ machine, name }): InLineRow => {
    const entered = ruled?.machines.find((each) => each.machine === machine);
    const none = { lines: floor.lines, inLines: new Map(), passed: new Map() };
    const seen = seenInLine(floor, line, machine);
    const { least, most } = panelsInLine(none, line, `${machine}-F-1`);
    return {
      machine,
      name,
      behind: entered ? String(Math.max(0, entered.most)) : '',
      before: entered ? String(Math.max(0, -entered.least)) : '',
      assumed: { behind: most, before: -least },
      seen: seen && { panels: seen.panels, behind: seen.most, before: Math.abs(seen.least) },
    };
  });
  return { rows, missed: ruled ? String(Number((ruled.missed * 100).toFixed(4))) : '' };
}

/** The form with what scans showed, machine by machine; what was entered and is more stays. */
export function withSeen(form: InLineForm): InLineForm {
  const more = (typed: string, seen: number) => String(Math.max(wholeOf(typed) ?? 0, seen));
  const rows = form.rows.map((row) =>
    row.seen === null
      ? row
      : { ...row, behind: more(row.behind, row.seen.behind), before: more(row.before, row.seen.before) },
  );
  return { ...form, rows };
}

/** The form as an entry; machines left empty stay a guess. Null where a number does not fit. */
export function fromInLineForm(form: InLineForm, line: string): PayloadOf<'line.panels-ruled'> | null {
  const machines: PayloadOf<'line.panels-ruled'>['machines'] = [];
  for (const { machine, behind, before } of form.rows) {
    if (behind.trim() === '' && before.trim() === '') continue;
    const [most, least] = [wholeOf(behind), wholeOf(before)];
    if (most === null || least === null) return null;
    machines.push({ machine, least: least === 0 ? 0 : -least, most });
  }
  const isGuess = form.missed.trim() === '';
  const missed = isGuess ? MISSED_GUESS * 100 : Number(form.missed.replace(',', '.'));
  if (!Number.isFinite(missed) || missed < 0 || missed >= 50) return null;
  return { line, machines, missed: missed / 100 };
}

/** A whole number from 0 to 500; an empty text is 0, null where it is neither. */
function wholeOf(text: string): number | null {
  const value = Number(text.trim());
  return Number.isInteger(value) && value >= 0 && value <= 500 ? value : null;
}

// What the log is told when a line's rules are saved: the rules themselves, and beside them only what changed. Pure.

import type { DraftEntry } from '../../../../shared/floor/kinds.ts';
import { IDLE_MINUTES, longestShiftMinutes } from '../../../../shared/floor/sign-out.ts';
import type { FloorState, LineRules, PictureRule } from '../../../../shared/floor/state.ts';
import type { ValueRule } from '../../../../shared/floor/store-state.ts';
import { weeksOf } from '../../../../shared/forecast/line-calendar.ts';
import { lineClimate } from '../../../../shared/moisture/line-climate.ts';
import {
  formToClimate,
  formToCosts,
  formToIdle,
  formToRules,
  type RulesForm,
  readLength,
} from './rules-form.ts';
import { rulesHours, type WeekFault, type Weeks, weekFault, weeksPayload } from './week/model.ts';

/** One class of parts while it is typed. */
export interface AgeRow {
  readonly begins: string;
  readonly months: string;
}

/** Whose value is measured, and the meter, while it is typed. */
export interface ValuesForm {
  readonly begins: readonly string[];
  readonly percent: string;
  readonly digits: string;
  readonly guard: string;
}

/** Where nobody set it: no part, and what is proposed of the meter when one is added. */
const NO_VALUES: ValueRule = { begins: [], percent: 0.5, digits: 2, guard: 100 };

/** What is kept of labels, while it is typed. */
export interface PicturesForm {
  readonly evidence: boolean;
  readonly days: string;
  readonly megabytes: string;
}

/** Where nobody set it: off, and what is proposed when it is turned on. */
const NO_PICTURES: PictureRule = { evidence: false, days: 90, megabytes: 200 };

/** All that the screen of a line's rules holds. */
export interface RulesPage {
  readonly form: RulesForm;
  readonly weeks: Weeks;
  readonly ages: readonly AgeRow[];
  readonly trailerMm: string;
  readonly leaderMm: string;
  readonly values: ValuesForm;
  readonly pictures: PicturesForm;
}

/** What does not fit, first of all; the words stand in the screen. */
export type RulesFault =
  | { readonly code: 'numbers' | 'climate' | 'ages' | 'values' | 'splice' | 'pictures' }
  | { readonly code: 'idle'; readonly most: number }
  | { readonly code: 'week'; readonly fault: WeekFault };

/** The screen's beyond the form of the rules, as the log has it. */
export function pageOf(floor: FloorState, rules: LineRules, form: RulesForm): RulesPage {
  const { line } = rules;
  const { line: _, ...weeks } = weeksOf(floor, line, rules);
  const tape = floor.tapeRules.get(line);
  const text = (mm: number | null | undefined) => (mm === null || mm === undefined ? '' : String(mm));
  return {
    form,
    weeks,
    trailerMm: text(tape?.trailerMm),
    leaderMm: text(tape?.leaderMm),
    values: valuesForm(floor.valueRules.get(line) ?? NO_VALUES),
    pictures: picturesForm(floor.pictureRules.get(line) ?? NO_PICTURES),
    ages: (floor.ageLimits.get(line) ?? []).map(({ begins, months }) => ({ begins, months: String(months) })),
  };
}

/** The page with other weeks; the rules' own shifts, which older tablets read, go with them. */
export function withWeeks(page: RulesPage, weeks: Weeks): RulesPage {
  return { ...page, weeks, form: { ...page.form, ...rulesHours(weeks) } };
}

/** The entries of a page that is saved, or what keeps it from that. `rules`: as they stood when it was opened. */
export function rulesDrafts(
  floor: FloorState,
  rules: LineRules,
  page: RulesPage,
): { readonly drafts: readonly DraftEntry[] } | { readonly fault: RulesFault } {
  const { form, weeks } = page;
  const { line } = rules;
  const next = formToRules(form, rules);
  const climate = formToClimate(form);
  const idle = formToIdle(form);
  const ages = readAges(page.ages);
  const costs = formToCosts(form);
  const [trailerMm, leaderMm] = [readLength(page.trailerMm, 0), readLength(page.leaderMm, 0)];
  const fault = weekFault(weeks);
  if (!next || trailerMm === undefined || leaderMm === undefined) return { fault: { code: 'numbers' } };
  if (!climate) return { fault: { code: 'climate' } };
  if (fault !== null) return { fault: { code: 'week', fault } };
  if (idle === null) return { fault: { code: 'idle', most: longestShiftMinutes(form) } };
  if (costs === null) return { fault: { code: 'splice' } };
  if (ages === null) return { fault: { code: 'ages' } };
  const valuesBefore = floor.valueRules.get(line) ?? NO_VALUES;
  const values = readValues(page.values, valuesBefore);
  if (values === null) return { fault: { code: 'values' } };
  const pictures = readPictures(page.pictures);
  if (pictures === null) return { fault: { code: 'pictures' } };
  const { entered } = lineClimate(floor, line);
  const drafts: DraftEntry[] = [
    {
      kind: 'line.ruled',
      payload: { ...next, shifts: [...next.shifts], breaks: [...next.breaks], stops: [...next.stops] },
    },
    ...weekDrafts(floor, rules, weeks),
  ];
  if (entered.celsius !== climate.celsius || entered.humidity !== climate.humidity)
    drafts.push({ kind: 'line.climate-ruled', payload: { line, ...climate } });
  if (idle !== (floor.idles.get(line) ?? IDLE_MINUTES))
    drafts.push({ kind: 'line.idle-ruled', payload: { line, minutes: idle } });
  if (!isSame(costs, floor.spliceCosts.get(line) ?? []))
    drafts.push({ kind: 'line.splices-ruled', payload: { line, costs } });
  if (!isSame(ages, floor.ageLimits.get(line) ?? []))
    drafts.push({ kind: 'line.age-ruled', payload: { line, limits: ages } });
  if (!isSame(inRow(values), inRow(valuesBefore)))
    drafts.push({ kind: 'line.values-ruled', payload: { line, ...values, begins: [...values.begins] } });
  const tape = floor.tapeRules.get(line);
  if (trailerMm !== (tape?.trailerMm ?? null) || leaderMm !== (tape?.leaderMm ?? null))
    drafts.push({ kind: 'line.tape-ruled', payload: { line, trailerMm, leaderMm } });
  if (!isSame(pictures, floor.pictureRules.get(line) ?? NO_PICTURES))
    drafts.push({ kind: 'line.pictures-ruled', payload: { line, ...pictures } });
  return { drafts };
}

function valuesForm({ begins, percent, digits, guard }: ValueRule): ValuesForm {
  return { begins, percent: String(percent), digits: String(digits), guard: String(guard) };
}

/** An entry's fields come in any order. */
function inRow({ begins, percent, digits, guard }: ValueRule): readonly unknown[] {
  return [begins, percent, digits, guard];
}

/** Null where a figure is none that the log takes, or two rows begin alike. Where no class is left, figures are not asked: those before stand. */
function readValues(form: ValuesForm, before: ValueRule): ValueRule | null {
  if (form.begins.length === 0) return { ...before, begins: [] };
  const within = (typed: string, most: number) => {
    const read = Number(typed.trim().replace(',', '.') || Number.NaN);
    return read >= 0 && read <= most ? read : null;
  };
  const [percent, digits, guard] = [
    within(form.percent, 100),
    within(form.digits, 1000),
    within(form.guard, 500),
  ];
  const begins = form.begins.map((each) => each.trim());
  const areOne = new Set(begins.map((each) => each.toUpperCase())).size === begins.length;
  if (percent === null || digits === null || guard === null) return null;
  return Number.isInteger(digits) && areOne ? { begins, percent, digits, guard } : null;
}

function picturesForm({ evidence, days, megabytes }: PictureRule): PicturesForm {
  return { evidence, days: String(days), megabytes: String(megabytes) };
}

/** Null where days or room are no whole numbers that the log takes. */
function readPictures({ evidence, days, megabytes }: PicturesForm): PictureRule | null {
  const within = (typed: string, most: number) => {
    const read = Number(typed.trim() || Number.NaN);
    return Number.isInteger(read) && read >= 1 && read <= most ? read : null;
  };
  const [forDays, inMegabytes] = [within(days, 3650), within(megabytes, 10_000)];
  return forDays === null || inMegabytes === null
    ? null
    : { evidence, days: forDays, megabytes: inMegabytes };
}

/** The weeks, where somebody changed them; after the rules, whose changed shifts would take their place. */
function weekDrafts(floor: FloorState, rules: LineRules, weeks: Weeks): readonly DraftEntry[] {
  const payload = weeksPayload(rules.line, weeks);
  const before = weeksOf(floor, rules.line, rules);
  return isSame(payload, weeksPayload(rules.line, before)) ? [] : [{ kind: 'line.calendar-ruled', payload }];
}

function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** Null where a row's months are no whole number from 1 to 600, or two rows begin alike. */
function readAges(rows: readonly AgeRow[]): { begins: string; months: number }[] | null {
  const read = rows.map(({ begins, months }) => ({
    begins: begins.trim(),
    months: Number(months.trim() || Number.NaN),
  }));
  const isFine = read.every(({ months }) => Number.isInteger(months) && months >= 1 && months <= 600);
  const names = new Set(read.map(({ begins }) => begins.toUpperCase()));
  return isFine && names.size === read.length ? read : null;
}

// The rules as texts in a form, and back; what does not fit is refused whole, nothing is clamped.

import type { DraftEntry, PayloadOf } from '../../../../shared/floor/kinds.ts';
import { LABEL_SHARE } from '../../../../shared/floor/remaining.ts';
import { IDLE_MINUTES, longestShiftMinutes } from '../../../../shared/floor/sign-out.ts';
import type { FloorState, LineRules } from '../../../../shared/floor/state.ts';
import type { PickOrder } from '../../../../shared/floor/vocabulary.ts';
import { standardClimate } from '../../../../shared/moisture/levels.ts';
import type { Climate } from '../../../../shared/moisture/timeline.ts';

/** Parts that splices lose, by width of tape. */
type SpliceCosts = PayloadOf<'line.splices-ruled'>['costs'];

/** The form: numbers as typed. */
export interface RulesForm {
  readonly leadMinutes: string;
  readonly walkSeconds: string;
  readonly spliceSeconds: string;
  readonly hubMm: string;
  readonly intakeMm: string;
  readonly lossPercent: string;
  readonly labelPercent: string;
  /** The floor's highest, °C and % relative humidity. */
  readonly floorCelsius: string;
  readonly floorHumidity: string;
  readonly shifts: LineRules['shifts'];
  readonly breaks: LineRules['breaks'];
  readonly ignoreCase: boolean;
  readonly ignoreSpaces: boolean;
  readonly ignoreDashes: boolean;
  readonly suffixes: string;
  /** Lengths of the Code 93 and ITF codes that the camera reads, with spaces between; empty: none are read. */
  readonly code93: string;
  readonly itf: string;
  readonly feedersKnown: boolean;
  /** Parts that a splice itself loses, by the width of tape in mm; empty key: every other width; empty text: not known. */
  readonly spliceParts: Readonly<Record<string, string>>;
  readonly pickOrder: PickOrder;
  /** Minutes without a touch after which people are signed out. */
  readonly idleMinutes: string;
}

/** A line's rules before anybody set them. Common practice: ten minutes of warning, a minute a splice; tape lengths unknown. */
export function firstRules(line: string): LineRules {
  return {
    line,
    leadSeconds: 600,
    walkSeconds: 60,
    spliceSeconds: 60,
    hubToPickMm: null,
    intakeToPickMm: null,
    loss: 0.003,
    shifts: [],
    breaks: [],
    stops: [],
    comparison: { ignoreCase: false, ignoreSpaces: false, ignoreDashes: false, packingSuffixes: [] },
    feedersKnown: false,
  };
}

/** What gives a new line its first rules. */
export function firstRulesDraft(line: string): DraftEntry {
  const rules = firstRules(line);
  return {
    kind: 'line.ruled',
    payload: { ...rules, shifts: [...rules.shifts], breaks: [...rules.breaks] },
  };
}

/** Rules as the form shows them. `climate`: the floor's, where somebody entered it. */
export function rulesToForm(
  rules: LineRules,
  climate: Climate = standardClimate,
  idleMinutes: number = IDLE_MINUTES,
  costs: SpliceCosts = [],
): RulesForm {
  const { ignoreCase, ignoreSpaces, ignoreDashes, packingSuffixes } = rules.comparison;
  const { shifts, breaks, feedersKnown } = rules;
  return {
    shifts,
    breaks,
    feedersKnown,
    ignoreCase,
    ignoreSpaces,
    ignoreDashes,
    leadMinutes: String(rules.leadSeconds / 60),
    walkSeconds: String(rules.walkSeconds),
    spliceSeconds: String(rules.spliceSeconds),
    hubMm: rules.hubToPickMm === null ? '' : String(rules.hubToPickMm),
    intakeMm: rules.intakeToPickMm === null ? '' : String(rules.intakeToPickMm),
    lossPercent: percentText(rules.loss),
    labelPercent: percentText(rules.labelShare ?? LABEL_SHARE),
    floorCelsius: String(climate.celsius),
    floorHumidity: String(climate.humidity),
    suffixes: packingSuffixes.join(' '),
    code93: (rules.alsoRead?.code93 ?? []).join(' '),
    itf: (rules.alsoRead?.itf ?? []).join(' '),
    idleMinutes: String(idleMinutes),
    spliceParts: Object.fromEntries(
      costs.map(({ tapeWidthMm, parts }) => [String(tapeWidthMm ?? ''), String(parts)]),
    ),
    pickOrder: rules.pickOrder ?? 'oldest-first',
  };
}

/** Rules as typed over those that stood; null where a number does not fit. */
export function formToRules(form: RulesForm, before: LineRules): LineRules | null {
  const lead = read(form.leadMinutes);
  const walk = read(form.walkSeconds);
  const splice = read(form.spliceSeconds);
  const hub = readLength(form.hubMm);
  const intake = readLength(form.intakeMm);
  const loss = read(form.lossPercent);
  const label = read(form.labelPercent);
  const code93 = readLengths(form.code93, 1);
  // Interleaved 2 of 5 takes digits in pairs.
  const itf = readLengths(form.itf, 2);
  if (code93 === null || itf === null) return null;
  if (lead === null || walk === null || splice === null || loss === null || loss >= 100) return null;
  if (label === null || label >= 100) return null;
  if (hub === undefined || intake === undefined) return null;
  if (hub !== null && intake !== null && hub < intake) return null;
  return {
    ...before,
    leadSeconds: Math.round(lead * 60),
    walkSeconds: Math.round(walk),
    spliceSeconds: Math.round(splice),
    hubToPickMm: hub,
    intakeToPickMm: intake,
    loss: loss / 100,
    labelShare: label / 100,
    shifts: form.shifts,
    breaks: form.breaks,
    comparison: {
      ignoreCase: form.ignoreCase,
      ignoreSpaces: form.ignoreSpaces,
      ignoreDashes: form.ignoreDashes,
      packingSuffixes: form.suffixes.split(/\s+/).filter((suffix) => suffix !== ''),
    },
    feedersKnown: form.feedersKnown,
    ...(code93.length + itf.length === 0 && before.alsoRead === undefined
      ? {}
      : { alsoRead: { code93: [...code93], itf: [...itf] } }),
    // The usual order is left unsaid until somebody has chosen another.
    ...(form.pickOrder === 'oldest-first' && before.pickOrder === undefined
      ? {}
      : { pickOrder: form.pickOrder }),
  };
}

/** The floor's climate as typed; null where it is none from 0 to 60 °C and from 0 to 100 %. */
export function formToClimate(form: Pick<RulesForm, 'floorCelsius' | 'floorHumidity'>): Climate | null {
  const celsius = read(form.floorCelsius);
  const humidity = read(form.floorHumidity);
  if (celsius === null || humidity === null || celsius > 60 || humidity > 100) return null;
  return { celsius, humidity };
}

/** The minutes until people are signed out, as typed; null where they are none from 1 to the form's longest shift. */
export function formToIdle(form: Pick<RulesForm, 'idleMinutes' | 'shifts'>): number | null {
  const minutes = read(form.idleMinutes);
  if (minutes === null || !Number.isInteger(minutes) || minutes < 1) return null;
  return minutes <= longestShiftMinutes(form) ? minutes : null;
}

/** What splices lose as typed, wide tapes last; null where a figure is no number from 0 to 1000. */
export function formToCosts({ spliceParts }: Pick<RulesForm, 'spliceParts'>): SpliceCosts | null {
  const costs: { tapeWidthMm: number | null; parts: number }[] = [];
  for (const [width, typed] of Object.entries(spliceParts)) {
    if (typed.trim() === '') continue;
    const parts = read(typed);
    if (parts === null || parts > 1000) return null;
    costs.push({ tapeWidthMm: width === '' ? null : Number(width), parts });
  }
  const order = (width: number | null) => width ?? Number.POSITIVE_INFINITY;
  return costs.sort((a, b) => (order(a.tapeWidthMm) < order(b.tapeWidthMm) ? -1 : 1));
}

/** Widths of tape that a line's setups and the plant's feeders name, narrow first. */
export function tapeWidthsOn(floor: FloorState, line: string): readonly number[] {
  const widths = new Set<number>();
  for (const setup of floor.setups.values())
    if (setup.line === line)
      for (const { tapeWidthMm } of setup.slots) if (tapeWidthMm) widths.add(tapeWidthMm);
  for (const { tapeWidthMm } of floor.feeders.values()) widths.add(tapeWidthMm);
  return [...widths].sort((a, b) => a - b);
}

/** Numbers of characters from 1 to 80, each a multiple of `step`; null where one is none of these. */
function readLengths(typed: string, step: number): readonly number[] | null {
  const lengths = typed
    .split(/[\s,;]+/)
    .filter((text) => text !== '')
    .map(Number);
  const fits = (length: number) =>
    Number.isInteger(length) && length >= 1 && length <= 80 && length % step === 0;
  return lengths.length <= 20 && lengths.every(fits) ? [...new Set(lengths)].sort((a, b) => a - b) : null;
}

function percentText(share: number): string {
  return String(Number((share * 100).toFixed(4)));
}

/** A number of zero or more, comma or point; null where it is none. */
function read(text: string): number | null {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && Number.isFinite(value) && value >= 0 ? value : null;
}

/** A length in mm, null where it is left empty, undefined where it is no number above `least`, or `least` itself where that is 0. */
export function readLength(text: string, least?: 0): number | null | undefined {
  if (text.trim() === '') return null;
  const value = read(text);
  return value === null || (value === 0 && least === undefined) ? undefined : value;
}

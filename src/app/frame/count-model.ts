// The count dialog's arithmetic: what was typed in, how it is known, and the count with its spread. Pure. Figures are texts as
// typed; what is missing or out of range has a code, and no number is guessed.

import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import type { FullReel } from '../../../shared/floor/state.ts';
import type { CountBasis, PackageKind } from '../../../shared/floor/vocabulary.ts';
import {
  type CombinedCount,
  type Count,
  combineCounts,
  countFromCalibratedTape,
  countFromMachine,
  countFromTape,
  countFromWeight,
} from '../../../shared/forecast/counts.ts';

/** Ways to count, in the order in which they are offered. */
export const countWays = ['typed', 'machine', 'weighed', 'measured'] as const;
export type CountWay = (typeof countWays)[number];

/** The ways that a package of this kind can be counted: only tape that is wound on a reel can be measured. */
export function waysFor(kind: PackageKind): readonly CountWay[] {
  return kind === 'tape' ? countWays : countWays.filter((way) => way !== 'measured');
}

/** The figures of every way, as typed. */
export interface CountForm {
  readonly parts: string;
  readonly massG: string;
  readonly emptyG: string;
  readonly fullMassG: string;
  readonly outerMm: string;
  readonly hubMm: string;
  readonly fullOuterMm: string;
  readonly thicknessMm: string;
  readonly pitchMm: string;
  readonly fullParts: string;
}

export const emptyForm: CountForm = {
  parts: '',
  massG: '',
  emptyG: '',
  fullMassG: '',
  outerMm: '',
  hubMm: '',
  fullOuterMm: '',
  thicknessMm: '',
  pitchMm: '',
  fullParts: '',
};

export type CountField = keyof CountForm;

/** Why there is no count yet. `order`: a figure contradicts another one's size. */
export interface CountWrong {
  readonly field: CountField;
  readonly code: 'missing' | 'notNumber' | 'tooSmall' | 'tooLarge';
}

/** A count, and the full reel's figures to remember, where they are new. */
export interface ComputedCount {
  readonly count: Count;
  readonly calibration: PayloadOf<'reel.calibrated'> | null;
}

/** One deviation of each figure, assumption for pocket tools: calliper over wound tape 0.5 mm, scale 0.1 g, counter 1 in 1000. */
const SD_OUTER_MM = 0.5;
const SD_HUB_MM = 0.5;
const SD_THICKNESS_SHARE = 0.03;
const SD_SCALE_G = 0.1;
const SD_MACHINE_SHARE = 0.001;
/** A full reel's own count, as its label says. */
const SD_FULL_SHARE = 0.0025;

/** The least deviation of a printed or typed figure, parts: a few go with the leader or are miscounted on any reel (common practice). */
export const PRINTED_LEAST = 3;

/** One deviation of a printed or typed figure, parts. `share`: the line's, or the usual one; nothing at all is certain. */
export function printedSd(parts: number, share: number): number {
  return parts === 0 ? 0 : Math.max(PRINTED_LEAST, share * parts);
}

/** A figure as typed: comma or point. */
export function readFigure(text: string): number | null {
  const plain = text
    .trim()
    .replace(/[\s\u202f\u00a0']/g, '')
    .replace(',', '.');
  return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : null;
}

interface Reader {
  readonly take: (field: CountField, least: number) => number;
  readonly wrong: () => CountWrong | null;
}

function reader(form: CountForm): Reader {
  let found: CountWrong | null = null;
  return {
    wrong: () => found,
    take: (field, least) => {
      const value = readFigure(form[field]);
      if (value === null) found ??= { field, code: form[field].trim() === '' ? 'missing' : 'notNumber' };
      else if (value < least || (least === 0 && field !== 'parts' && field !== 'emptyG' && value <= 0))
        found ??= { field, code: 'tooSmall' };
      return value ?? 0;
    },
  };
}

/** Computes a count from the form. */
export function computeCount(
  way: CountWay,
  form: CountForm,
  about: { readonly part: string | null; readonly labelShare?: number },
): { readonly ok: true; readonly value: ComputedCount } | { readonly ok: false; readonly wrong: CountWrong } {
  const figures = reader(form);
  const no = (wrong: CountWrong) => ({ ok: false, wrong }) as const;
  if (way === 'typed' || way === 'machine') {
    const parts = figures.take('parts', 0);
    const wrong = figures.wrong();
    if (wrong) return no(wrong);
    if (!Number.isInteger(parts)) return no({ field: 'parts', code: 'notNumber' });
    const byMachine = parts === 0 ? 0 : Math.max(1, SD_MACHINE_SHARE * parts);
    const sd = way === 'machine' ? byMachine : printedSd(parts, about.labelShare ?? SD_FULL_SHARE);
    return { ok: true, value: { count: countFromMachine(parts, sd), calibration: null } };
  }
  return way === 'weighed' ? countByWeight(form, about.part) : countByTape(form, about.part);
}

function countByWeight(form: CountForm, part: string | null): ReturnType<typeof computeCount> {
  const figures = reader(form);
  const massG = figures.take('massG', 0);
  const emptyG = figures.take('emptyG', 0);
  const fullMassG = figures.take('fullMassG', 0);
  const fullParts = figures.take('fullParts', 1);
  const wrong = figures.wrong();
  if (wrong) return { ok: false, wrong };
  if (fullMassG <= emptyG) return { ok: false, wrong: { field: 'fullMassG', code: 'tooSmall' } };
  if (massG < emptyG) return { ok: false, wrong: { field: 'massG', code: 'tooSmall' } };
  const count = countFromWeight({
    massG,
    emptyG,
    sdMassG: SD_SCALE_G,
    sdEmptyG: SD_SCALE_G,
    full: { massG: fullMassG, parts: fullParts, sdMassG: SD_SCALE_G, sdParts: SD_FULL_SHARE * fullParts },
  });
  const calibration =
    part === null ? null : { part, parts: fullParts, outerMm: null, hubMm: null, massG: fullMassG, emptyG };
  return { ok: true, value: { count, calibration } };
}

function countByTape(form: CountForm, part: string | null): ReturnType<typeof computeCount> {
  const figures = reader(form);
  const outerMm = figures.take('outerMm', 1);
  const hubMm = figures.take('hubMm', 1);
  const pitchMm = figures.take('pitchMm', 0.5);
  const byFull = form.fullOuterMm.trim() !== '' || form.thicknessMm.trim() === '';
  const first = figures.wrong();
  if (first) return { ok: false, wrong: first };
  if (outerMm < hubMm) return { ok: false, wrong: { field: 'outerMm', code: 'tooSmall' } };
  if (!byFull) {
    const thicknessMm = figures.take('thicknessMm', 0.1);
    const wrong = figures.wrong();
    if (wrong) return { ok: false, wrong };
    const count = countFromTape({
      outerMm,
      hubMm,
      thicknessMm,
      pitchMm,
      sdOuterMm: SD_OUTER_MM,
      sdHubMm: SD_HUB_MM,
      sdThicknessMm: SD_THICKNESS_SHARE * thicknessMm,
    });
    return { ok: true, value: { count, calibration: null } };
  }
  const fullOuterMm = figures.take('fullOuterMm', 1);
  const fullParts = figures.take('fullParts', 1);
  const wrong = figures.wrong();
  if (wrong) return { ok: false, wrong };
  if (fullOuterMm <= hubMm) return { ok: false, wrong: { field: 'fullOuterMm', code: 'tooSmall' } };
  if (outerMm > fullOuterMm * 1.02) return { ok: false, wrong: { field: 'outerMm', code: 'tooLarge' } };
  const count = countFromCalibratedTape({
    outerMm,
    hubMm,
    pitchMm,
    sdOuterMm: SD_OUTER_MM,
    sdHubMm: SD_HUB_MM,
    full: {
      outerMm: fullOuterMm,
      parts: fullParts,
      sdOuterMm: SD_OUTER_MM,
      sdParts: SD_FULL_SHARE * fullParts,
    },
  });
  const calibration =
    part === null ? null : { part, parts: fullParts, outerMm: fullOuterMm, hubMm, massG: null, emptyG: null };
  return { ok: true, value: { count, calibration } };
}

/** The form with what is known of full reels of the part filled in. */
export function startForm(
  known: FullReel | null,
  facts: { readonly pitchMm: number | null; readonly fullParts: number | null },
): CountForm {
  const text = (value: number | null | undefined) => (value == null ? '' : String(value));
  return {
    ...emptyForm,
    pitchMm: text(facts.pitchMm),
    fullParts: text(known?.measured?.parts ?? known?.weighed?.parts ?? facts.fullParts),
    hubMm: text(known?.measured?.hubMm),
    fullOuterMm: text(known?.measured?.outerMm),
    emptyG: text(known?.weighed?.emptyG),
    fullMassG: text(known?.weighed?.massG),
  };
}

/** What the log thought before against the new count: alone, joined, or in contradiction. */
export function weigh(before: Count | null, now: Count): CombinedCount {
  const both = combineCounts(before === null || before.sd === 0 ? [now] : [before, now]);
  if (!both) throw new TypeError('Cannot join counts as one must be there: current value is none');
  return both;
}

/** The bases of the log in the words of the forecast. */
export function basisOf(way: CountWay): CountBasis {
  return way;
}

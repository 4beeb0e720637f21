// How sentences for people are kept: a folder a language, a file an area, typed from the English one, so that a missing sentence is
// a compile error. A sentence with facts is a function of them. Precompiled messages and `Intl` do without a message parser.
// Only the language in use is fetched (`fetch.ts`), and only the areas of the parts that are here.

import { signal } from '@preact/signals';
import type { AreaName, Words } from './areas.ts';

/** Languages that the app speaks; English first. */
export const languages = ['en', 'es', 'de', 'fr', 'pt', 'pl', 'hu', 'vi', 'zh', 'ja', 'ko', 'ar'] as const;
export type Language = (typeof languages)[number];

/** How a language is told: its own name, the locale of its numbers and dates, the way it runs. */
interface Tongue {
  readonly name: string;
  /** BCP 47. Figures are Latin everywhere, as they are on labels and machines. */
  readonly locale: string;
  readonly runs: 'ltr' | 'rtl';
}

/** Every language. */
export const tongues: Readonly<Record<Language, Tongue>> = {
  en: { name: 'English', locale: 'en-GB', runs: 'ltr' },
  es: { name: 'Español', locale: 'es', runs: 'ltr' },
  de: { name: 'Deutsch', locale: 'de', runs: 'ltr' },
  fr: { name: 'Français', locale: 'fr', runs: 'ltr' },
  pt: { name: 'Português', locale: 'pt-BR', runs: 'ltr' },
  pl: { name: 'Polski', locale: 'pl', runs: 'ltr' },
  hu: { name: 'Magyar', locale: 'hu', runs: 'ltr' },
  vi: { name: 'Tiếng Việt', locale: 'vi', runs: 'ltr' },
  zh: { name: '简体中文', locale: 'zh-CN', runs: 'ltr' },
  ja: { name: '日本語', locale: 'ja', runs: 'ltr' },
  ko: { name: '한국어', locale: 'ko', runs: 'ltr' },
  ar: { name: 'العربية', locale: 'ar-u-nu-latn', runs: 'rtl' },
};

/** The first language of these tags of BCP 47, e.g. `pt-BR`, that is spoken here; English where none is. */
export function languageOf(...tags: readonly (string | null | undefined)[]): Language {
  const codes = tags.map((tag) => tag?.toLowerCase().split('-')[0]);
  return codes.flatMap((code) => languages.filter((each) => each === code))[0] ?? 'en';
}

/** The language in use; the composition root sets it from the tablet's preference. */
export const language = signal<Language>('en');

/** The sentences of English, as another language has them: the same, with the same facts. */
export type Sentences<W> = {
  readonly [K in keyof W]: W[K] extends (...facts: infer F) => string
    ? (...facts: F) => string
    : W[K] extends string
      ? string
      : W[K] extends object
        ? Sentences<W[K]>
        : W[K];
};

/** An area of sentences, as the parts that say them name it. */
export interface Area<A extends AreaName> {
  readonly name: A;
}

/** The sentences that are here, by language and area; `fetch.ts` fills it. */
export const spoken = Object.fromEntries(languages.map((code) => [code, {}])) as Readonly<
  Record<Language, { -readonly [A in AreaName]?: Words<A> }>
>; // a key for each language by construction

/** The areas of the parts that are here. */
export const wanted = new Set<AreaName>();

/** The door to an area. A part that imports it is drawn once its sentences are here too. */
export function area<A extends AreaName>(name: A): Area<A> {
  wanted.add(name);
  return { name };
}

/** What changes English sentences on their way to the screen, where a layout is tried; null in use. */
export const disguise = signal<(<W>(english: W) => W) | null>(null);

/**
 * The sentences of an area in the language in use; reading it in a component follows the language. Throws where they were not waited
 * for: a part that is fetched comes by `lazy` or `withWords`.
 */
export function say<A extends AreaName>({ name }: Area<A>): Words<A> {
  const words = spoken[disguise.value ? 'en' : language.value][name];
  if (words === undefined) {
    throw new TypeError(
      `Cannot say "${name}" as its words must be fetched first: current language is ${language.value}`,
    );
  }
  return disguise.value ? disguise.value(words) : words;
}

/** The locale for numbers and dates. */
export function locale(): string {
  return tongues[language.value].locale;
}

/** Makes a formatter once for each language and zone: making one costs a hundred times more than using it. */
function kept<F>(make: (locale: string, zone: string) => F): (zone?: string) => F {
  const made = new Map<string, F>();
  return (zone = '') => {
    const key = `${locale()} ${zone}`;
    let formatter = made.get(key);
    if (formatter === undefined) {
      formatter = make(locale(), zone);
      made.set(key, formatter);
    }
    return formatter;
  };
}

const counts = kept((name) => new Intl.NumberFormat(name, { maximumFractionDigits: 0, useGrouping: true }));
const numbers = kept((name) => new Intl.NumberFormat(name, { maximumFractionDigits: 2, useGrouping: true }));
const figures = kept(
  (name) => new Intl.NumberFormat(name, { maximumSignificantDigits: 5, useGrouping: false }),
);
const shares = [0, 1, 2].map((digits) =>
  kept((name) => new Intl.NumberFormat(name, { maximumFractionDigits: digits })),
);
const plurals = kept((name) => new Intl.PluralRules(name));
const wallClock = { hour: '2-digit', minute: '2-digit', hour12: false } as const;
const times = kept((name, timeZone) => new Intl.DateTimeFormat(name, { ...wallClock, timeZone }));
const days = kept(
  (name, timeZone) =>
    new Intl.DateTimeFormat(name, { day: 'numeric', month: 'short', ...wallClock, timeZone }),
);

/** A whole number with thousands marks, e.g. `12 400`. */
export function formatCount(value: number): string {
  return counts().format(value);
}

/** A number with thousands marks and at most two digits behind the point, e.g. `1,200.5`. */
export function formatNumber(value: number): string {
  return numbers().format(value);
}

/** A measured figure for people: five figures that count. */
export function formatFigure(value: number): string {
  return figures().format(value);
}

/** A share with two digits that count, e.g. `0.31 %`, `2.1 %`. `share`: 0..1. */
export function formatShare(share: number): string {
  const percent = share * 100;
  const digits = percent < 1 ? 2 : percent < 10 ? 1 : 0;
  return `${shares[digits]?.().format(percent)} %`;
}

/** The sentences for a number, by the plural categories of Unicode CLDR; what a language does not tell apart is left out. */
export interface NumberForms {
  readonly zero?: string;
  readonly one?: string;
  readonly two?: string;
  readonly few?: string;
  readonly many?: string;
  readonly other: string;
}

/**
 * The number that a sentence tells; none (`NaN`, told as many) for what lies below zero or begins with `0.`, as the form for one may
 * say a bare 1. `value`: the number, or what `formatCount` or `formatNumber` made of it.
 */
function numberIn(value: number | string): number {
  if (typeof value === 'number') return value < 0 ? Number.NaN : value;
  return /^[-\u2212]|^0\D/.test(value) ? Number.NaN : Number(value.replace(/\D/g, ''));
}

/**
 * Chooses the sentence for a number, by the rules of the language in use. Every sentence with a number goes through here or through
 * `plural`. `value`: the number, or what `formatCount` made of it.
 */
export function byNumber(value: number | string, forms: NumberForms): string {
  return forms[plurals().select(numberIn(value))] ?? forms.other;
}

/**
 * Chooses the sentence for a number in a language that tells only one from many: `one` for what its rules call one, else `many`.
 * `value`: the number, or what `formatCount` made of it.
 */
export function plural(value: number | string, one: string, many: string): string {
  return plurals().select(numberIn(value)) === 'one' ? one : many;
}

/** Commas that are not Latin. */
const commas: { readonly [L in Language]?: string } = { zh: '，', ja: '、', ar: '، ' };

/** What stands between two facts of one sentence in the language in use, its space with it: `, `. */
export function comma(): string {
  return commas[language.value] ?? ', ';
}

/** Wall clock of a moment in a zone, e.g. `14:07`. */
export function formatTime(ms: number, zone: string): string {
  return times(zone).format(ms);
}

/** Date and wall clock of a moment in a zone, e.g. `2 Mar 14:07`. */
export function formatDay(ms: number, zone: string): string {
  return days(zone).format(ms);
}

/** A length of time for people, rounded to what matters: `45 s`, `23 min`, `1 h 04`, from left to right. `seconds` >= 0. */
export function formatSpan(seconds: number): string {
  return alone(spanOf(seconds));
}

function spanOf(seconds: number): string {
  // One figure on one line: its parts never stand apart.
  if (seconds < 90) return `${Math.round(seconds)}\u00a0s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return `${minutes}\u00a0min`;
  return `${Math.floor(minutes / 60)}\u00a0h\u00a0${String(minutes % 60).padStart(2, '0')}`;
}

/** A figure and its unit that stand alone would turn round where words run from right to left: there they keep a direction of their own. */
function alone(figure: string): string {
  return tongues[language.value].runs === 'rtl' ? `\u2066${figure}\u2069` : figure;
}

// How sentences for people are kept: one file an area, every language beside the other, so that a missing sentence is a
// compile error. A sentence with facts is a function of them. Precompiled messages and `Intl` do without a message parser.

import { signal } from '@preact/signals';

/** Languages that the app speaks; English first. */
export const languages = ['en', 'es'] as const;
export type Language = (typeof languages)[number];

/** Each language under its own name. */
export const languageNames: Readonly<Record<Language, string>> = { en: 'English', es: 'Español' };

/** The language in use; the composition root sets it from the tablet's preference. */
export const language = signal<Language>('en');

/** The sentences of one area. */
export type Area<W> = Readonly<Record<Language, W>>;

/** Ties the languages of an area together: each has the sentences of the first, with the same facts. */
export function area<const W extends object>(
  sentences: Readonly<{ en: W } & Record<Exclude<Language, 'en'>, Sentences<W>>>,
): Area<Sentences<W>> {
  return sentences as unknown as Area<Sentences<W>>; // English has its own sentences by construction
}

type Sentences<W> = {
  readonly [K in keyof W]: W[K] extends (...facts: infer F) => string
    ? (...facts: F) => string
    : W[K] extends string
      ? string
      : W[K] extends object
        ? Sentences<W[K]>
        : W[K];
};

/** What changes English sentences on their way to the screen, where a layout is tried; null in use. */
export const disguise = signal<(<W>(english: W) => W) | null>(null);

/** The sentences of an area in the language in use; reading it in a component follows the language. */
export function say<W>(sentences: Area<W>): W {
  return disguise.value ? disguise.value(sentences.en) : sentences[language.value];
}

/** The locale for numbers and dates. */
export function locale(): string {
  return language.value === 'es' ? 'es' : 'en-GB';
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

/** A share with two digits that count, e.g. `0.31 %`, `2.1 %`. `share`: 0..1. */
export function formatShare(share: number): string {
  const percent = share * 100;
  const digits = percent < 1 ? 2 : percent < 10 ? 1 : 0;
  return `${shares[digits]?.().format(percent)} %`;
}

/**
 * Chooses the sentence for a number, by the rules of the language in use: `one` for 1, else `many`. Every sentence with a number goes
 * through here. `value`: the number, or what `formatCount` made of it.
 */
export function plural(value: number | string, one: string, many: string): string {
  const number = typeof value === 'number' ? value : Number(value.replace(/\D/g, ''));
  return plurals().select(number) === 'one' ? one : many;
}

/** Wall clock of a moment in a zone, e.g. `14:07`. */
export function formatTime(ms: number, zone: string): string {
  return times(zone).format(ms);
}

/** Date and wall clock of a moment in a zone, e.g. `2 Mar 14:07`. */
export function formatDay(ms: number, zone: string): string {
  return days(zone).format(ms);
}

/** A length of time for people, rounded to what matters: `45 s`, `23 min`, `1 h 04`. `seconds` >= 0. */
export function formatSpan(seconds: number): string {
  if (seconds < 90) return `${Math.round(seconds)} s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
}

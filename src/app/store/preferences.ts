// This tablet's preferences and other small things that may be lost: kept in the cache database, read once at the start.

import type { QuietHours } from '../device/quiet.ts';
import type { WedgeSettings } from '../scan/wedge.ts';
import type { CacheDatabase } from './database.ts';

/** This tablet's own preferences; they are not part of the log. */
export interface Preferences {
  readonly line: string | null;
  /** The line in hand where `line` was taken away, which people were told; null where `line` itself is in hand, or none was taken. */
  readonly movedTo: string | null;
  /** The two lines that this tablet serves, where its people answer for two; empty where it serves the line in hand alone. */
  readonly serves: readonly string[];
  readonly person: string | null;
  /** Spoken here where nobody is signed in who chose a language: a tag of BCP 47. */
  readonly language: string;
  /** Words that nobody speaks, to try a layout with; offered nowhere. */
  readonly pseudo: 'long' | 'mirrored' | null;
  readonly theme: 'auto' | 'light' | 'dark';
  /** Whatever is touched is 72 px at least. */
  readonly gloves: boolean;
  /** On whose side what is pressed most stands; null: where lines of the language end. */
  readonly hand: 'left' | 'right' | null;
  readonly camera: string | null;
  readonly sound: boolean;
  /** When this tablet makes no sound; null: at no time. */
  readonly quiet: QuietHours | null;
  /** Verdicts are said aloud. */
  readonly spoken: boolean;
  /** Where panels are scanned at this tablet: before a machine, by its id; null where they are counted. */
  readonly panelsAt: string | null;
  /** When they signed in, by the device's clock. */
  readonly signedInMs: number | null;
  /** How columns of sheets with these headers were mapped by hand: header line -> field -> column. */
  readonly sheetColumns: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Pace and ending of this tablet's scanner as its self-test found them; null = the usual ones. */
  readonly scanner: Partial<WedgeSettings> | null;
  /** Its scanner was tested here and read right. */
  readonly scannerTested: boolean;
  /** A printed label was read here as what it names. */
  readonly labelTested: boolean;
  /** A practice was begun here. */
  readonly practised: boolean;
  /** True on a tablet that hangs on a wall: it shows all lines and takes nothing. */
  readonly wall: boolean;
  /** True where panels leave a line: it counts each code that is scanned and does nothing else. */
  readonly exit: boolean;
  /** The size of labels that this tablet prints on, by name; null: the plant's first. */
  readonly labelSize: string | null;
  /** How far its printer must be told to move a label, mm. */
  readonly labelOffset: { readonly xMm: number; readonly yMm: number };
}

export const firstPreferences: Preferences = {
  line: null,
  movedTo: null,
  serves: [],
  person: null,
  language: 'en',
  pseudo: null,
  theme: 'auto',
  gloves: false,
  hand: null,
  camera: null,
  sound: true,
  quiet: null,
  spoken: false,
  panelsAt: null,
  signedInMs: null,
  sheetColumns: {},
  scanner: null,
  scannerTested: false,
  labelTested: false,
  practised: false,
  wall: false,
  exit: false,
  labelSize: null,
  labelOffset: { xMm: 0, yMm: 0 },
};

/** Reads the preferences; what is missing or unreadable is as on the first day, when it speaks as its browser does. */
export async function readPreferences(cache: CacheDatabase): Promise<Preferences> {
  const row = await cache.kept.get('preferences').catch(() => undefined); // a broken cache is a fresh one
  const language = globalThis.navigator?.language ?? firstPreferences.language;
  return { ...firstPreferences, language, ...(row?.value as Partial<Preferences> | undefined) };
}

/** Keeps the preferences. */
export async function keepPreferences(cache: CacheDatabase, preferences: Preferences): Promise<void> {
  await cache.kept.put({ key: 'preferences', value: preferences }).catch(() => undefined); // may be lost by its nature
}

/** Reads a named small thing from the cache. */
export async function readKept<T>(cache: CacheDatabase, key: string): Promise<T | null> {
  const row = await cache.kept.get(key).catch(() => undefined);
  return (row?.value as T | undefined) ?? null; // written by keep() under the same key only
}

/** Keeps a named small thing in the cache. */
export async function keep(cache: CacheDatabase, key: string, value: unknown): Promise<void> {
  await cache.kept.put({ key, value }).catch(() => undefined);
}

/** Where it is kept when the server last confirmed a person here. */
export function seenName(person: string): string {
  return `${SEEN}${person}`;
}

const SEEN = 'seen-';

/** Forgets whom the server ever confirmed here. */
export async function forgetSeen({ kept }: CacheDatabase): Promise<void> {
  await kept.where('key').startsWith(SEEN).delete();
}

// Fetches the words: the pack of the language in use, and of it the areas of the parts that are here. Each is fetched once. A file with
// all languages was refused, as each language would make every start longer; so were words beside each screen, as nobody could list
// what a language lacks.

import type { Pack } from './areas.ts';
import { type Language, language, spoken, wanted } from './words.ts';

/** Where the languages are. */
const packs: Readonly<Record<Language, () => Promise<Pack>>> = {
  en: () => import('./en/pack.ts'),
  es: () => import('./es/pack.ts'),
  de: () => import('./de/pack.ts'),
  fr: () => import('./fr/pack.ts'),
  pt: () => import('./pt/pack.ts'),
  pl: () => import('./pl/pack.ts'),
  hu: () => import('./hu/pack.ts'),
  vi: () => import('./vi/pack.ts'),
  zh: () => import('./zh/pack.ts'),
  ja: () => import('./ja/pack.ts'),
  ko: () => import('./ko/pack.ts'),
  ar: () => import('./ar/pack.ts'),
};

/** What was asked for, by language and area (or the pack itself). */
const asked = new Map<string, Promise<unknown>>();

/** Asks once; what failed is asked for again. */
function once<T>(key: string, ask: () => Promise<T>): Promise<T> {
  const before = asked.get(key);
  if (before !== undefined) return before as Promise<T>; // the key names what is asked for
  const promise = ask();
  asked.set(key, promise);
  promise.catch(() => asked.delete(key));
  return promise;
}

function fetchPack(code: Language): Promise<Pack> {
  return once(code, async () => {
    const pack = await packs[code]();
    Object.assign(spoken[code], pack.first);
    return pack;
  });
}

async function fetchArea(code: Language, name: keyof Pack['later']): Promise<void> {
  const { later } = await fetchPack(code);
  await once(`${code} ${name}`, async () => {
    const { words } = await later[name]();
    Object.assign(spoken[code], { [name]: words });
  });
}

/** Areas that the parts here say and that are not here yet; the first ones come with the pack. */
function lacking(code: Language): (keyof Pack['later'])[] {
  return [...wanted].filter((name): name is keyof Pack['later'] => !(name in spoken[code]));
}

/** Fetches what the parts that are here say in a language; rejects where it is out of reach. */
export async function fetchWords(code: Language): Promise<void> {
  await fetchPack(code);
  // Parts may arrive meanwhile, with areas of their own.
  for (let lack = lacking(code); lack.length > 0; lack = lacking(code)) {
    await Promise.all(lack.map((name) => fetchArea(code, name)));
  }
}

/** Every area of a language, whatever parts are here: for checks of the sentences. */
export async function fetchEveryArea(code: Language): Promise<void> {
  const { later } = await fetchPack(code);
  await Promise.all(Object.keys(later).map((name) => fetchArea(code, name as keyof Pack['later']))); // its own keys
}

let next: Language | null = null;

/** Changes to a language once its words are here; false where another change was asked for meanwhile. Rejects where they are out of reach. */
export async function changeLanguage(code: Language): Promise<boolean> {
  next = code;
  try {
    await fetchWords(code);
    if (next !== code) return false;
    language.value = code;
    return true;
  } finally {
    if (next === code) next = null;
  }
}

/** Waits until whatever is here can be said, in the language in use and in the one that it changes to. */
export async function wordsHere(): Promise<void> {
  do {
    await fetchWords(language.peek());
    if (next !== null) await fetchWords(next).catch(() => undefined); // told by the change itself, which then does not come
  } while (lacking(language.peek()).length > 0);
}

/** A part of the app, once the words that it says are here too. */
export async function withWords<P>(part: Promise<P>): Promise<P> {
  const arrived = await part;
  await wordsHere();
  return arrived;
}

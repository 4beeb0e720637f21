// The words of a language: fetched once, only for the language in use, and waited for before anything is said in them.

import { beforeEach, expect, test, vi } from 'vitest';
import type { Pack } from '../../../../src/app/words/areas.ts';
import type { Sentences } from '../../../../src/app/words/words.ts';

const folder = '../../../../src/app/words';
const packs = { en: `${folder}/en/pack.ts`, es: `${folder}/es/pack.ts` } as const;

/** The modules of the words as a page finds them when it starts: nothing is here yet. */
async function freshWords() {
  const fetching = await import('../../../../src/app/words/fetch.ts');
  const words = await import('../../../../src/app/words/words.ts');
  const { shellWords } = await import('../../../../src/app/words/shell.ts');
  return { ...fetching, ...words, shellWords, arrive: () => import('../../../../src/app/words/kit.ts') };
}

/** A pack whose areas tell when they are asked for, and come when they are let go. */
function slowPack(pack: Pack) {
  const asked: string[] = [];
  let letGo = (): void => undefined;
  const gate = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  const later = Object.fromEntries(
    Object.entries(pack.later).map(([name, ask]) => [
      name,
      async () => {
        asked.push(name);
        await gate;
        return ask();
      },
    ]),
  );
  return { pack: { first: pack.first, later }, asked, letGo };
}

async function withSlow(code: 'en' | 'es') {
  const slow = slowPack((await import(packs[code])) as Pack);
  vi.doMock(packs[code], () => slow.pack);
  return slow;
}

beforeEach(() => {
  vi.resetModules();
  vi.doUnmock(packs.en);
  vi.doUnmock(packs.es);
});

test('nothing is said before it is here: the fault names the area and how to wait', async () => {
  const { say, shellWords, fetchWords } = await freshWords();
  expect(() => say(shellWords)).toThrow(/Cannot say "shell".*must be fetched first/);
  await fetchWords('en');
  expect(say(shellWords).close).toBe('Close');
});

test('of a language only the areas of the parts that are here are fetched, each once', async () => {
  const en = await withSlow('en');
  const { fetchWords, spoken, arrive } = await freshWords();
  await arrive();
  en.letGo();
  await Promise.all([fetchWords('en'), fetchWords('en')]);
  await fetchWords('en');
  expect(en.asked).toEqual(['kit']);
  expect(Object.keys(spoken.en).sort()).toEqual(['kit', ...Object.keys(en.pack.first)].sort());
  expect(spoken.es).toEqual({});
});

test('a change of language waits for its words; what is shown meanwhile is said as before', async () => {
  const es = await withSlow('es');
  const { changeLanguage, fetchWords, language, say, shellWords, arrive } = await freshWords();
  await fetchWords('en');
  await arrive();
  const changed = changeLanguage('es');
  await expect.poll(() => es.asked).toEqual(['kit']);
  expect(language.value).toBe('en');
  expect(say(shellWords).close).toBe('Close');
  es.letGo();
  expect(await changed).toBe(true);
  expect(say(shellWords).close).toBe('Cerrar');
});

test('a part that arrives during a change is shown once both languages have its words', async () => {
  const es = await withSlow('es');
  const { changeLanguage, fetchWords, withWords, language, say, arrive } = await freshWords();
  await fetchWords('en');
  const changed = changeLanguage('es');
  const part = withWords(arrive());
  await expect.poll(() => es.asked).toEqual(['kit']);
  es.letGo();
  const { kitWords } = await part;
  expect(say(kitWords).list).toMatch(/./);
  await changed;
  expect(language.value).toBe('es');
  expect(say(kitWords).list).toBe('Lista de picking');
});

test('the newest wish counts, in whatever order the words arrive', async () => {
  const es = await withSlow('es');
  const { changeLanguage, language, arrive } = await freshWords();
  await arrive();
  const first = changeLanguage('es');
  expect(await changeLanguage('en')).toBe(true);
  es.letGo();
  expect(await first).toBe(false);
  expect(language.value).toBe('en');
});

test('a language out of reach leaves the one in use, keeps no part waiting, and is asked for again', async () => {
  const pack = (await import(packs.es)) as Pack;
  let isThere = false;
  const kit = () => (isThere ? pack.later.kit() : Promise.reject(new TypeError('offline')));
  vi.doMock(packs.es, () => ({ first: pack.first, later: { ...pack.later, kit } }));
  const { changeLanguage, fetchWords, withWords, language, say, arrive } = await freshWords();
  await fetchWords('en');
  const { kitWords } = await withWords(arrive());
  await expect(changeLanguage('es')).rejects.toThrow('offline');
  expect(language.value).toBe('en');
  await withWords(Promise.resolve());
  isThere = true;
  expect(await changeLanguage('es')).toBe(true);
  expect(say(kitWords).list).toBe('Lista de picking');
});

// Checked by the compiler, with `npm run types`: each of these must be an error.
type English = { readonly close: 'Close'; readonly due: (slot: string, parts: number) => string };
const due: Sentences<English>['due'] = (slot, parts) => `${slot}: ${parts}`;
const byText = (slot: string, parts: string) => `${slot}: ${parts}`;
const kit = () => import('../../../../src/app/words/es/kit.ts');
const planted: readonly unknown[] = [
  // @ts-expect-error a sentence is missing
  { close: 'Cerrar' } satisfies Sentences<English>,
  // @ts-expect-error a sentence that English does not have
  { close: 'Cerrar', due, open: 'Abrir' } satisfies Sentences<English>,
  // @ts-expect-error a fact of another type than in English
  { close: 'Cerrar', due: byText } satisfies Sentences<English>,
  // @ts-expect-error a language without the other areas
  { kit } satisfies Pack['later'],
  // @ts-expect-error the words of another area
  { ...({} as Pack['later']), kit, order: kit } satisfies Pack['later'],
];

test('what the compiler accepts is what English has', () => {
  expect(planted).toHaveLength(5);
  expect({ close: 'Cerrar', due } satisfies Sentences<English>).toHaveProperty('due');
});

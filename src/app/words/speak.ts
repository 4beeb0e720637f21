// Puts a language on the page: its words, its name for readers of the screen, the way it runs.

import { changeLanguage } from './fetch.ts';
import type { Pseudo } from './pseudo.ts';
import { disguise, type Language, tongues } from './words.ts';

/** What a tablet speaks. */
export interface Spoken {
  readonly language: Language;
  /** Words that a layout is tried with, in the language's stead. */
  readonly pseudo: Pseudo | null;
}

let wishes = 0;

/**
 * Speaks as it is wished once the words are here; until then, and where they are out of reach (it rejects), all stays as it is.
 * `page`: the element that tells readers of the screen.
 */
export async function speak(
  { language, pseudo }: Spoken,
  page: { lang: string; dir: string },
): Promise<void> {
  wishes += 1;
  const wish = wishes;
  const made = pseudo === null ? null : (await import('./pseudo.ts')).makePseudo(pseudo);
  const spoken = pseudo === null ? language : 'en';
  if (wish !== wishes || !(await changeLanguage(spoken)) || wish !== wishes) return;
  disguise.value = made;
  page.lang = spoken;
  page.dir = pseudo === 'mirrored' ? 'rtl' : tongues[spoken].runs;
}

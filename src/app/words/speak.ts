// Puts a language on the page: its words, its name for readers of the screen, the way it runs.

import type { Pseudo } from './pseudo.ts';
import { disguise, type Language, language } from './words.ts';

/** What a tablet speaks. */
export interface Spoken {
  readonly language: Language;
  /** Words that a layout is tried with, in the language's stead. */
  readonly pseudo: Pseudo | null;
}

let wanted: Pseudo | null = null;

/** Speaks as it is wished from now on; `page`: the element that tells readers of the screen. */
export function speak({ language: chosen, pseudo }: Spoken, page: { lang: string; dir: string }): void {
  wanted = pseudo;
  language.value = pseudo === null ? chosen : 'en';
  page.lang = language.value;
  page.dir = pseudo === 'mirrored' ? 'rtl' : 'ltr';
  if (pseudo === null) disguise.value = null;
  else
    void import('./pseudo.ts').then(({ makePseudo }) => {
      if (wanted === pseudo) disguise.value = makePseudo(pseudo);
    });
}

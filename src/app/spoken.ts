// The language of this page: as it was last spoken here until the preferences are read, then as they wish. The first is a guess that
// saves a wait, as the words are fetched while the log opens; the preferences are what counts.

import { effect } from '@preact/signals';
import type { App } from './app.ts';
import { fetchWords } from './words/fetch.ts';
import { shellWords } from './words/shell.ts';
import { speak } from './words/speak.ts';
import { type Language, language, languageOf, say } from './words/words.ts';

const lastKey = 'reelward-language';

/** Begins to fetch the words of the language that was spoken here last. */
export function speakAsBefore(): void {
  const last = localStorage.getItem(lastKey);
  language.value = languageOf(last, navigator.language);
  fetchWords(language.value).catch(() => undefined); // asked for again once the preferences are read
}

/** The language that is wished here: of who is signed in, where they chose one, else of the tablet. */
export function wishedLanguage({ person, preferences }: Pick<App, 'person' | 'preferences'>): Language {
  return languageOf(person.value?.language, preferences.value.language);
}

/** Speaks as is wished, from now on; a language that is out of reach is told, and the one in use stays. */
export function followLanguage(app: App, page: HTMLElement): void {
  effect(() => {
    const { pseudo } = app.preferences.value;
    speak({ language: wishedLanguage(app), pseudo }, page).then(
      () => localStorage.setItem(lastKey, language.peek()),
      () => {
        app.preferences.value = { ...app.preferences.peek(), language: language.peek(), pseudo: null };
        app.notice.value = { tone: 'care', text: say(shellWords).languageLater };
      },
    );
  });
}

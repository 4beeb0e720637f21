// Says a short text aloud with a voice that lies on the tablet itself. A voice that asks a service for its sound is never used: it needs a
// network, and would tell others what is said here.

import { type ReadonlySignal, signal } from '@preact/signals';

/** Speaks. */
export interface Speaker {
  /** The languages (first part of their tag) that this tablet can speak; voices come after the start. */
  readonly languages: ReadonlySignal<ReadonlySet<string>>;
  /** Says a text in a language in place of what is being said; false where no voice of the tablet's own speaks it. */
  readonly speak: (text: string, language: string) => boolean;
}

/** The first part of a language's tag. */
const baseOf = (tag: string) => tag.toLowerCase().split(/[-_]/)[0] ?? '';

let own: Speaker | null = null;

/** The tablet's speaker: one for all who speak, as it hears of voices for as long as the page lives. */
export function ownSpeaker(): Speaker {
  own ??= createSpeaker();
  return own;
}

/** Makes the speaker out of the browser's; one without voices has no languages. */
export function createSpeaker(synthesis: SpeechSynthesis | undefined = globalThis.speechSynthesis): Speaker {
  const languages = signal<ReadonlySet<string>>(new Set());
  const voices = () => synthesis?.getVoices().filter(({ localService }) => localService) ?? [];
  const look = () => {
    languages.value = new Set(voices().map(({ lang }) => baseOf(lang)));
  };
  look();
  synthesis?.addEventListener?.('voiceschanged', look);
  return {
    languages,
    speak: (text, language) => {
      const voice =
        voices().find(({ lang }) => lang.toLowerCase() === language.toLowerCase()) ??
        voices().find(({ lang }) => baseOf(lang) === baseOf(language));
      if (!synthesis || !voice) return false;
      synthesis.cancel(); // the newest verdict is the one that counts
      const said = new SpeechSynthesisUtterance(text);
      said.voice = voice;
      said.lang = voice.lang;
      synthesis.speak(said);
      return true;
    },
  };
}

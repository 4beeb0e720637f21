// Quiet hours over midnight, and which voice speaks.

import { describe, expect, test } from 'vitest';
import { isQuiet } from '../../../../src/app/device/quiet.ts';
import { createSpeaker } from '../../../../src/app/device/speech.ts';

const at = (hours: number, minutes: number) => new Date(2026, 2, 2, hours, minutes);

describe('quiet hours', () => {
  test('hold from the first minute to before the last, over midnight too', () => {
    const night = { from: '22:00', to: '06:00' };
    expect(
      [at(21, 59), at(22, 0), at(23, 59), at(0, 0), at(5, 59), at(6, 0)].map((each) => isQuiet(night, each)),
    ).toEqual([false, true, true, true, true, false]);
    const noon = { from: '12:00', to: '12:30' };
    expect([at(11, 59), at(12, 0), at(12, 30)].map((each) => isQuiet(noon, each))).toEqual([
      false,
      true,
      false,
    ]);
  });

  test('are none where none are set, or both ends are one moment', () => {
    expect(isQuiet(null, at(3, 0))).toBe(false);
    expect(isQuiet({ from: '08:00', to: '08:00' }, at(8, 0))).toBe(false);
  });
});

describe('a voice', () => {
  function browser(voices: readonly { lang: string; localService: boolean }[]) {
    const said: { text: string; lang: string }[] = [];
    globalThis.SpeechSynthesisUtterance = class {
      lang = '';
      voice: unknown = null;
      readonly text: string;
      constructor(text: string) {
        this.text = text;
      }
    } as unknown as typeof SpeechSynthesisUtterance; // the part of it that is used
    const synthesis = {
      getVoices: () => voices,
      addEventListener: () => undefined,
      cancel: () => undefined,
      speak: ({ text, lang }: { text: string; lang: string }) => said.push({ text, lang }),
    } as unknown as SpeechSynthesis; // the part of it that is used
    return { said, speaker: createSpeaker(synthesis) };
  }

  test('that asks a service is never used', () => {
    const { said, speaker } = browser([{ lang: 'en-GB', localService: false }]);
    expect(speaker.languages.value.size).toBe(0);
    expect(speaker.speak('Right reel', 'en')).toBe(false);
    expect(said).toEqual([]);
  });

  test('of the language speaks, whatever its country', () => {
    const { said, speaker } = browser([
      { lang: 'pl-PL', localService: true },
      { lang: 'es_MX', localService: true },
    ]);
    expect([...speaker.languages.value]).toEqual(['pl', 'es']);
    expect(speaker.speak('Bobina correcta', 'es')).toBe(true);
    expect(speaker.speak('Right reel', 'en')).toBe(false);
    expect(said).toEqual([{ text: 'Bobina correcta', lang: 'es_MX' }]);
  });
});

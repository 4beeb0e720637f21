// What is said aloud of a verdict: how it came out, where, and which slot is next.

import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import type { App } from '../../../../src/app/app.ts';
import type { ShownVerdict } from '../../../../src/app/desk/desk.ts';
import { speakVerdicts, spokenCode, spokenVerdict } from '../../../../src/app/frame/spoken-verdict.ts';
import { verdictWords } from '../../../../src/app/words/verdict.ts';
import { say } from '../../../../src/app/words/words.ts';

const shown = (change: Partial<ShownVerdict>): ShownVerdict =>
  ({
    act: 'load',
    slot: 'M1-F-001',
    verdict: 'accepted',
    reasons: [],
    next: 'M1-F-002',
    ...change,
  }) as ShownVerdict; // what is asked of it

test('a code is read by its parts', () => {
  expect(spokenCode('M1-F-001')).toBe('M1 F 001');
  expect(spokenCode('B1.F/45')).toBe('B1 F 45');
});

test('a right reel, and the slot that is next', () => {
  const words = say(verdictWords);
  expect(spokenVerdict(shown({}))).toBe(`${words.accepted.load}. M1 F 001. ${words.nextIs('M1 F 002')}`);
  expect(spokenVerdict(shown({ next: null, isAllLoaded: true }))).toContain(words.allLoaded);
});

test('where another slot waits for a lead nobody is told that every slot is loaded', () => {
  const words = say(verdictWords);
  expect(spokenVerdict(shown({ next: null, isAllLoaded: false }))).toBe(`${words.accepted.load}. M1 F 001`);
});

test('a refusal says why first and sends nobody on', () => {
  const refused = shown({
    verdict: 'refused',
    reasons: [{ code: 'wrong-part' } as ShownVerdict['reasons'][number]],
  });
  expect(spokenVerdict(refused)).toBe(`${say(verdictWords).reasons['wrong-part'].title}. M1 F 001`);
});

test('a verdict is said once: not again where somebody signs in or chooses something while it stands', () => {
  const person = signal<{ readonly language: string | null } | null>(null);
  const preferences = signal({ spoken: true, language: 'en' });
  const on = signal<ShownVerdict | null>(null);
  const said: string[] = [];
  const app = { person, preferences } as unknown as App; // what is asked of it
  speakVerdicts(app, { shown: on }, { languages: signal(new Set()), speak: (text) => said.push(text) > 0 });
  on.value = shown({});
  person.value = { language: 'es' };
  preferences.value = { spoken: true, language: 'de' };
  expect(said).toHaveLength(1);
  on.value = shown({ slot: 'M1-F-010' });
  expect(said).toHaveLength(2);
});

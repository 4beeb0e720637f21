import { afterEach, expect, test } from 'vitest';
import { makePseudo } from '../../../../src/app/words/pseudo.ts';
import { shellWords } from '../../../../src/app/words/shell.ts';
import { speak } from '../../../../src/app/words/speak.ts';
import { disguise, language, plural, say } from '../../../../src/app/words/words.ts';

const english = {
  close: 'Close',
  shapes: { held: 'Held back' },
  steps: ['One', 'Two'],
  due: (slot: string, parts: number) => `${slot} runs out: ${parts} ${plural(parts, 'part', 'parts')} left`,
};

const page = { lang: '', dir: '' };

afterEach(() => speak({ language: 'en', pseudo: null }, page));

test('long words are a third longer, accented and in brackets; facts stay as they are', () => {
  const words = makePseudo('long')(english);
  expect(words.shapes.held).toMatch(/^\[Ĥ.*\]$/);
  expect(words.shapes.held.length).toBeGreaterThanOrEqual(english.shapes.held.length * 1.3);
  expect(words.close).not.toMatch(/[a-zA-Z]{2}/);
  expect(words.steps).toHaveLength(2);
  const due = words.due('M1-F-010', 12);
  expect(due.startsWith('[M1-F-010 ')).toBe(true);
  expect(due).toContain(' 12 ');
  expect(due.length).toBeGreaterThanOrEqual(english.due('M1-F-010', 12).length * 1.2);
});

test('mirrored words run from right to left, facts from left to right', () => {
  const due = makePseudo('mirrored')(english).due('M1-F-010', 1);
  expect(due).toContain('M1-F-010 \u200f\u202eruns\u202c\u200f');
  expect(due).toContain(': 1 \u200f\u202epart\u202c');
  expect(due.replace(/[\u200f\u202c\u202e]/g, '')).toBe(english.due('M1-F-010', 1));
});

test('every letter has another one', () => {
  const alphabet = makePseudo('long')({ a: 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ' }).a;
  expect(alphabet).not.toMatch(/[a-zA-Z]/);
});

test('the same sentences give the same object, so that what is drawn is drawn once', () => {
  const turn = makePseudo('long');
  expect(turn(english)).toBe(turn(english));
  expect(turn(english).due).toBe(turn(english).due);
});

test('a wish for a language that is taken back before its words are there is not met', async () => {
  const first = speakTo('long');
  const second = speak({ language: 'es', pseudo: null }, page);
  await Promise.all([first, second]);
  expect(disguise.value).toBeNull();
  expect(language.value).toBe('es');
});

test('the words in use follow the wish', async () => {
  await speakTo('mirrored');
  expect(say(shellWords).close).toContain('\u202eClose');
  expect(page).toEqual({ lang: 'en', dir: 'rtl' });
  await speak({ language: 'es', pseudo: null }, page);
  expect(say(shellWords).close).toBe('Cerrar');
  expect(page).toEqual({ lang: 'es', dir: 'ltr' });
});

function speakTo(pseudo: 'long' | 'mirrored') {
  return speak({ language: 'es', pseudo }, page);
}

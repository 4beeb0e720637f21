// What is told by itself waits while a question or a verdict shuts its place off, and comes once as soon as it is heard. A modal dialog makes the
// rest of its document inert (HTML, "modal dialogs and inert subtrees"), and what is inert is not in the tree that readers are given.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { whenHeard } from '../../../../src/app/ui/heard.ts';

/** A place with what is around it. */
interface Place {
  isInert: boolean;
}
interface Question {
  readonly holds: Place | null;
}

let questions: readonly Question[] = [];
let watchers: (() => void)[] = [];

beforeEach(() => {
  questions = [];
  watchers = [];
  vi.stubGlobal('document', {
    body: {},
    querySelectorAll: () =>
      questions.map(({ holds }) => ({ contains: (element: { place: Place }) => element.place === holds })),
  });
  vi.stubGlobal(
    'MutationObserver',
    class {
      readonly #seen: () => void;
      constructor(seen: () => void) {
        this.#seen = seen;
      }
      observe() {
        watchers.push(this.#seen);
      }
      disconnect() {
        watchers = watchers.filter((each) => each !== this.#seen);
      }
    },
  );
});
afterEach(() => {
  vi.unstubAllGlobals();
});

/** The page changes. */
const changes = () => {
  for (const seen of watchers) seen();
};

function waits(place: Place = { isInert: false }) {
  const tell = vi.fn();
  const element = { place, closest: () => (place.isInert ? {} : null) };
  const giveUp = whenHeard(element as unknown as Element, tell); // as much of an element as it asks
  return { place, giveUp, times: () => tell.mock.calls.length };
}

test('tells at once where nothing lies over it', () => {
  expect(waits().times()).toBe(1);
});

test('waits for a question over it, and tells once', () => {
  questions = [{ holds: null }];
  const { times } = waits();
  changes();
  expect(times()).toBe(0);
  questions = [];
  changes();
  changes();
  expect(times()).toBe(1);
});

test('tells at once within the question that lies on top', () => {
  const place = { isInert: false };
  questions = [{ holds: null }, { holds: place }];
  expect(waits(place).times()).toBe(1);
});

test('waits while its part of the page is shut off', () => {
  const { place, times } = waits({ isInert: true });
  expect(times()).toBe(0);
  place.isInert = false;
  changes();
  expect(times()).toBe(1);
});

test('tells nothing after it was given up', () => {
  questions = [{ holds: null }];
  const { giveUp, times } = waits();
  giveUp();
  questions = [];
  changes();
  expect(times()).toBe(0);
});

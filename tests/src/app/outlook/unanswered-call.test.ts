// Leads elsewhere are called for what nobody answers; other lines are looked at every few seconds only, whatever is written meanwhile.

import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { ESCALATE_MS, type Unanswered } from '../../../../shared/outlook/unanswered.ts';
import type { App } from '../../../../src/app/app.ts';
import { callForUnanswered } from '../../../../src/app/outlook/unanswered-call.ts';
import { beginStory, started, tellPlant, verified } from '../../../shared/floor/story.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A lead at another line, while a reel of a running line is late. */
function away() {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 4 }));
  story.tell('run.started', started('r1'));
  const need = [...story.floor().slots.values()][0]?.tapes.at(-1)?.entry ?? '';
  const due = '2026-03-02T06:10:00.000Z';
  const warning = { line: 'L1', slot: 'M1-F-001', need, level: 'late' } as const;
  story.tell('warning.raised', { ...warning, due });
  const raisedMs = story.entries.at(-1)?.hlc.ms ?? 0;
  let looks = 0;
  class Calendars extends Map<string, never> {
    // Each outlook asks when its line works.
    override get(line: string): undefined {
      looks += 1;
      return super.get(line);
    }
  }
  const floorNow = (): FloorState => ({ ...story.floor(), calendars: new Calendars() });
  let floor = floorNow();
  const tick = signal(0);
  const line = signal<string | null>('L2');
  const person = signal<{ readonly role: string } | null>({ role: 'lead' });
  const clock = { nowMs: () => raisedMs + ESCALATE_MS };
  const store = { floor: () => floor };
  const app = { tick, line, beside: signal([]), person, clock, store, practice: null } as unknown as App; // the part of it that is asked
  const open = signal<readonly Unanswered[]>([]);
  const heard: string[] = [];
  callForUnanswered(app, { call: (level) => heard.push(level) }, open);
  const write = () => {
    floor = floorNow();
    tick.value += 1;
  };
  return { story, warning, line, person, open, heard, write, looks: () => looks };
}

test('calls for a warning of another line, and looks at that line anew after some seconds only', () => {
  const { open, heard, write, looks } = away();
  expect(open.value.map(({ level }) => level)).toEqual(['late']);
  expect(heard).toEqual(['late']);
  const once = looks();
  expect(once).toBeGreaterThan(0);
  for (let at = 0; at < 20; at += 1) write();
  expect(looks()).toBe(once);
  vi.advanceTimersByTime(15_000);
  expect(looks()).toBe(2 * once);
});

test('shows it no more as soon as somebody took note, or nobody here leads', () => {
  const { story, warning, person, open, write } = away();
  expect(open.value).toHaveLength(1);
  story.tell('warning.acknowledged', warning);
  write();
  expect(open.value).toEqual([]);
  const other = away();
  expect(other.open.value).toHaveLength(1);
  other.person.value = null;
  expect(other.open.value).toEqual([]);
  expect(person.value).not.toBeNull();
});

test('leaves the line that is worked at to its own watch', () => {
  const { line, open, looks } = away();
  const before = looks();
  line.value = 'L1';
  expect(open.value).toEqual([]);
  expect(looks()).toBe(before);
});

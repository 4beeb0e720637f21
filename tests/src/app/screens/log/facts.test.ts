// Every kind of entry is told in words: each value says what it is, and no id, stamp or empty word is left over.

import { beforeAll, describe, expect, test } from 'vitest';
import { type EntryKind, entryKinds } from '../../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import type { Entry, JsonObject } from '../../../../../shared/log/entry.ts';
import { kindName } from '../../../../../src/app/screens/log/EntryRow.tsx';
import { allFacts, rowFacts } from '../../../../../src/app/screens/log/facts.ts';
import { fetchEveryArea } from '../../../../../src/app/words/fetch.ts';
import { language, languages } from '../../../../../src/app/words/words.ts';
import { payloadExamples } from '../../../../shared/floor/examples.ts';
import { beginStory, started, tellPlant, verified } from '../../../../shared/floor/story.ts';

beforeAll(async () => {
  await Promise.all(languages.map(fetchEveryArea));
});

const runId = 'n7ns09qk2v';

/** A floor that knows what the entries name, and one that knows nothing of it. */
function floorOf(knows: boolean): FloorState {
  const story = beginStory();
  if (!knows) return story.floor();
  tellPlant(story);
  story.tell('person.added', { person: 'ana', name: 'Ana', role: 'lead', badge: 'B-1', pin: null });
  story.tell('run.started', started(runId));
  story.tell('checklist.template', payloadExamples['checklist.template']);
  story.tell('checklist.opened', payloadExamples['checklist.opened']);
  return story.floor();
}

const entryOf = (kind: EntryKind, payload: object): Entry =>
  ({
    v: 1,
    tablet: 'T1',
    epoch: 'T1-life-1',
    seq: 9,
    at: '2026-03-02T06:00:00Z',
    who: 'ana',
    kind,
    hlc: { ms: 1, n: 0 },
    payload: payload as JsonObject,
    prev: '',
    hash: '',
    sig: null,
  }) as Entry;

/** What no sentence may hold: empty words, stamps, names of entries, JSON. */
const wrong = /undefined|null|NaN|\[object|\d{4}-\d\d-\d\dT|T1\/|life-1|[{}"]|(^|\s)n7ns09/;
/** Ids of the examples that mean nothing to people. */
const ids = ['run-1', 'brook-top-a', 'changeover-brae', runId, 'b7-front', 'L1'];

describe.each(languages)('facts of entries in %s', (code) => {
  test.each(entryKinds.map((kind) => [kind]))('%s is told in plain words', (kind) => {
    language.value = code;
    const payload = payloadExamples[kind];
    const withRun = 'run' in payload && payload.run !== null ? { ...payload, run: runId } : payload;
    for (const floor of [floorOf(true), floorOf(false)]) {
      const entry = entryOf(kind, withRun);
      expect(kindName(entry)).not.toContain('.');
      const row = rowFacts(entry, floor);
      // A key that marks badges has nothing to say to people.
      if (kind !== 'state.differed' && kind !== 'badges.keyed') expect(row.length).toBeGreaterThan(0);
      for (const { label, text } of [...row, ...allFacts(entry, floor)]) {
        // One sign is a word where signs are.
        expect(label).toMatch(/\p{L}\p{M}*\p{L}|\p{Script=Han}|\p{Script=Hangul}/u);
        expect(text.trim()).not.toBe('');
        expect(text).not.toMatch(wrong);
        for (const id of ids) expect(text.split(/[\s,·]+/)).not.toContain(id);
      }
    }
    language.value = 'en';
  });
});

describe('a row of the log', () => {
  const rowOf = (kind: EntryKind, payload: object) =>
    rowFacts(entryOf(kind, payload), floorOf(true)).map(({ label, text }) => `${label} ${text}`);

  test('says of each number what it is', () => {
    const facts = { lot: 'LX', quantity: 3000, reel: 'R-17' };
    expect(rowOf('reel.verified', verified('M1-F-001', 'R-100', facts))).toEqual([
      'Slot M1-F-001',
      'Part R-100',
      'Reel R-17',
      'Lot LX',
      'Quantity 3,000 parts',
    ]);
    expect(rowOf('panels.counted', { ...payloadExamples['panels.counted'], run: runId })).toEqual(
      expect.arrayContaining(['Counted -1 panels']),
    );
    expect(rowOf('line.climate-ruled', payloadExamples['line.climate-ruled'])).toEqual([
      'Temperature 28 °C',
      'Humidity 65 %',
    ]);
  });

  test('says a measured figure as fine as it was measured, and what a part costs', () => {
    const measured = {
      ...payloadExamples['reel.measured'],
      nominal: 3.3,
      unit: 'Ω',
      quantity: 3.305,
      uncertainty: 0.0165,
      guard: 0.004,
      least: 3.267,
      most: 3.333,
    };
    const told = allFacts(entryOf('reel.measured', measured), floorOf(true)).map(({ text }) => text);
    for (const figure of ['3.3 Ω', '3.305 Ω', '0.0165 Ω', '0.004 Ω', '3.267 Ω', '3.333 Ω'])
      expect(told).toContain(figure);
    expect(rowOf('parts.priced', payloadExamples['parts.priced']).join()).toContain('R-100: 0.012 EUR');
  });

  test('calls a run by product, side, line and start', () => {
    const [told] = rowOf('run.resumed', { run: runId, line: 'L1' });
    expect(told).toMatch(/^Run Brook · top · Brae line 1 · 2 Mar,? 06:00$/);
  });
});

// Panels that are held: how many, what is written, in which order they are listed, and what a spreadsheet gets.

import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import type { Suspects } from '../../../../../shared/trace/suspects.ts';
import { heldCsv, heldList, heldPayload, panelsIn } from '../../../../../src/app/screens/log/held-model.ts';
import { beginStory, tellPlant } from '../../../../shared/floor/story.ts';

type SuspectRun = Suspects['runs'][number];
const run = (name: string, more: Partial<SuspectRun> = {}): SuspectRun => ({
  run: name,
  line: 'L1',
  slot: 'M1-F-001',
  sure: null,
  possible: { first: 1, last: 10 },
  ...more,
});

describe('panelsIn()', () => {
  test('counts each panel of a run once, however many slots it is suspect for, both ends included', () => {
    const runs = [
      run('r1', { sure: { first: 3, last: 5 } }),
      run('r1', { slot: 'M1-F-002', sure: { first: 5, last: 6 }, possible: { first: 8, last: 12 } }),
      run('r2', { possible: { first: 1, last: 1 } }),
    ];
    expect(panelsIn(runs, 'sure')).toBe(4);
    expect(panelsIn(runs, 'possible')).toBe(13);
    expect(panelsIn([], 'possible')).toBe(0);
  });
});

function held() {
  const story = beginStory();
  tellPlant(story);
  story.tell('person.added', { person: 'lea', name: 'Lea Arden', role: 'lead', badge: 'B-7', pin: null });
  const hold = (containment: string, codes: string[]) => {
    const found: Suspects = { runs: [run('r1')], codes, guessed: [], goesOn: false };
    story.tell(
      'panels.contained',
      heldPayload(found, {
        containment,
        line: 'L9',
        cause: 'blocked',
        of: null,
        reason: 'bent',
        material: { lot: 'LOT7' },
      }),
    );
  };
  const sign = (containment: string, codes: string[] | null, reason: string) =>
    story.tell('containment.signed', {
      containment,
      line: 'L1',
      codes,
      reason,
      by: 'lea',
      checked: 'tablet',
    });
  return { story, hold, sign };
}

describe('what is written and listed', () => {
  test('is the line and slot of the first suspect run, and those in hand where there is none', () => {
    const of = (runs: readonly SuspectRun[]) =>
      heldPayload(
        { runs, codes: ['P1'], guessed: [], goesOn: false },
        {
          containment: 'c',
          line: 'L9',
          cause: 'blocked',
          of: null,
          reason: 'bent',
          material: { lot: 'LOT7' },
        },
      );
    expect(of([run('r1'), run('r2', { line: 'L2' })])).toMatchObject({
      line: 'L1',
      slot: 'M1-F-001',
      lot: 'LOT7',
      reel: null,
      part: null,
    });
    expect(of([])).toMatchObject({ line: 'L9', slot: null });
  });

  test('is what waits for a lead first, the newest of each kind on top', () => {
    const { story, hold, sign } = held();
    for (const name of ['c1', 'c2', 'c3', 'c4']) hold(name, ['P1']);
    sign('c4', null, 'looked at');
    sign('c2', null, 'looked at');
    expect(heldList(story.floor()).map(({ containment }) => containment)).toEqual(['c3', 'c1', 'c4', 'c2']);
  });
});

describe('heldCsv()', () => {
  test('names who signed what, leaves open ones empty, and gives a spreadsheet no formula', () => {
    const { story, hold, sign } = held();
    hold('c1', ['P1', '=1+1']);
    sign('c1', ['P1'], 'seen, "good"');
    const floor = story.floor();
    const text = heldCsv(floor.contained.get('c1')!, floor);
    expect(text.startsWith('\ufeff"panel"')).toBe(true);
    const { data } = Papa.parse<string[]>(text.slice(1), { skipEmptyLines: true });
    expect(data).toEqual([
      ['panel', 'signedBy', 'signedAt', 'reason'],
      ['P1', 'Lea Arden', expect.stringMatching(/^2026-03-02T06:/), 'seen, "good"'],
      ["'=1+1", '', '', ''],
    ]);
  });
});

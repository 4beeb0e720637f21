// Which code answers which step: a badge is no stencil, a reel is no paste, a feeder is one of this plant.

import { describe, expect, test } from 'vitest';
import type { ScanWant } from '../../../shared/floor/checklist.ts';
import { judgeStepScan } from '../../../shared/floor/step-scan.ts';
import { beginStory, tellPlant, verified } from './story.ts';

function floor() {
  const story = beginStory();
  tellPlant(story);
  story.tell('person.added', { person: 'ana', name: 'Ana', role: 'operator', badge: 'B-100', pin: null });
  story.tell('feeder.known', { feeder: 'F-7', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  return story.floor();
}

const judge = (wants: ScanWant, text: string, taken: readonly string[] = []) =>
  judgeStepScan(floor(), 'L1', { wants, expects: null, taken }, [text]);

describe('judgeStepScan()', () => {
  test.each<[ScanWant]>([['stencil'], ['paste'], ['program'], ['other']])(
    'takes for a %s no badge, slot, reel, feeder or part',
    (wants) => {
      expect(judge(wants, 'B-100')).toEqual({ ok: false, is: 'person', name: 'Ana' });
      expect(judge(wants, 'M1-F-002')).toEqual({ ok: false, is: 'slot', name: 'M1-F-002' });
      expect(judge(wants, 'K1')).toEqual({ ok: false, is: 'reel', name: 'K1' });
      expect(judge(wants, 'F-7')).toEqual({ ok: false, is: 'feeder', name: 'F-7' });
      expect(judge(wants, 'C-200')).toEqual({ ok: false, is: 'part', name: 'C-200' });
      expect(judge(wants, 'SUP-300')).toMatchObject({ ok: false, is: 'part' });
      expect(judge(wants, ' ST-204/B ')).toEqual({ ok: true, value: 'ST-204/B' });
    },
  );

  test('takes a structured label of a part that the plant knows for no paste', () => {
    const label = '[)>\u001e06\u001dPR-100\u001dQ4000\u001d1TLT-7\u001e\u0004';
    expect(judge('paste', label)).toMatchObject({ ok: false, is: 'part' });
  });

  test('takes only a feeder, slot or reel of this plant where it asks for one', () => {
    expect(judge('feeder', 'F-7')).toEqual({ ok: true, value: 'F-7' });
    expect(judge('feeder', 'F-8')).toEqual({ ok: false, is: 'unknown', name: 'F-8' });
    expect(judge('feeder', 'B-100')).toMatchObject({ ok: false, is: 'person' });
    expect(judge('slot', 'M1-R-003')).toEqual({ ok: true, value: 'M1-R-003' });
    expect(judge('slot', 'F-7')).toMatchObject({ ok: false, is: 'feeder' });
    expect(judge('reel', 'K1')).toEqual({ ok: true, value: 'K1' });
    expect(judge('reel', 'K2')).toMatchObject({ ok: false, is: 'unknown' });
    const label = '[)>\u001e06\u001dPR-100\u001dQ4000\u001d3SK1\u001e\u0004';
    expect(judge('reel', label)).toEqual({ ok: true, value: 'K1' });
  });

  test('takes the code that answered another step for no answer', () => {
    expect(judge('paste', 'ST-204', ['ST-204'])).toEqual({ ok: false, is: 'taken', name: 'ST-204' });
  });

  test('takes the expected text and nothing else, and says what the other is', () => {
    const asks = { wants: 'stencil' as const, expects: 'ST-9', taken: [] };
    expect(judgeStepScan(floor(), 'L1', asks, ['ST-9'])).toEqual({ ok: true, value: 'ST-9' });
    expect(judgeStepScan(floor(), 'L1', asks, ['ST-8'])).toMatchObject({ ok: false, is: 'not-expected' });
    expect(judgeStepScan(floor(), 'L1', asks, ['B-100'])).toMatchObject({ ok: false, is: 'person' });
    expect(judgeStepScan(floor(), 'L1', asks, ['  '])).toMatchObject({ ok: false, is: 'unknown' });
  });
});

// What of a machine's answers is written, whatever comes between a question and the log.

import { expect, test } from 'vitest';
import type { EntryKind } from '../../../../shared/floor/kinds.ts';
import { AGAIN_AFTER_MS, openToldAnswers } from '../../../../src/link/ipc2591/told-answers.ts';
import { openValidator } from '../../../../src/link/ipc2591/validate.ts';
import { beginStory, tellPlant } from '../../../shared/floor/story.ts';
import * as said from './said.ts';

const now = { ms: 1000, wallMs: 1000 };
const station = { station: 'L1-placer', line: 'L1' };

function open(write: (kind: EntryKind) => Promise<unknown>) {
  const story = beginStory();
  tellPlant(story);
  story.tell('station.interlock-ruled', { ...station, on: true, unsure: 'Warning' });
  const floor = story.floor();
  return openValidator({
    ...station,
    floor: { upToDate: async () => floor, known: () => floor, knows: () => false, tick: () => undefined },
    slotOf: () => 'M1-F-001',
    write,
    notice: async () => undefined,
  });
}
const question = {
  key: 'q',
  name: '',
  source: 'L1.Placer',
  request: 'q',
  body: {
    ValidationTopic: 'Materials',
    ValidationTopicData: { ValidationTopicData: [said.location('P1', 'K1', 10)] },
  },
} as unknown as Parameters<ReturnType<typeof openValidator>['answer']>[0];

test('no answer is sent before its row is written, though the same was asked a moment before', async () => {
  const written: EntryKind[] = [];
  let letOn = () => undefined as undefined;
  const held = new Promise<void>((resolve) => {
    letOn = () => void resolve();
  });
  let sent = 0;
  const validator = open(async (kind) => {
    await held;
    written.push(kind);
  });
  const both = [0, 1].map(() =>
    validator.answer(
      question,
      () => {
        expect(written).toEqual(['station.answered']);
        sent += 1;
        return true;
      },
      now,
    ),
  );
  await Promise.resolve();
  expect(sent).toBe(0);
  letOn();
  await Promise.all(both);
  expect(sent).toBe(2);
  await validator.tick(now, true);
  expect(written).toEqual(['station.answered', 'station.answered-again']);
});

test('what could not be written is not taken for told, neither a row nor a count', async () => {
  let isFull = true;
  const written: EntryKind[] = [];
  const validator = open(async (kind) => {
    if (isFull) throw new Error('disk full');
    written.push(kind);
  });
  const ask = () => validator.answer(question, () => true, now);
  await expect(ask()).rejects.toThrow('disk full');
  isFull = false;
  await ask();
  await ask();
  isFull = true;
  await expect(validator.tick(now, true)).rejects.toThrow('disk full');
  isFull = false;
  await validator.tick(now, true);
  expect(written).toEqual(['station.answered', 'station.answered-again']);
});

test('two lanes of one place have a row each, and the same of both is no news', () => {
  const told = openToldAnswers();
  const row = (reel: string) =>
    ({ slot: 'M1-F-001', reel, part: null, result: 'Success', why: 'verified' }) as const;
  const rows = [row('K1'), row('K2')];
  expect(told.fresh(rows)).toEqual(rows);
  told.told(rows, rows, 0);
  expect(told.fresh(rows)).toEqual([]);
  told.told(rows, [], 5);
  expect(told.again(AGAIN_AFTER_MS)).toBe(0);
  expect(told.again(AGAIN_AFTER_MS + 5)).toBe(1);
  expect(told.fresh([row('K1'), row('K3')])).toHaveLength(2);
});

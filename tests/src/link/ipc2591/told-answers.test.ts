// What of a machine's answers is written, whatever comes between a question and the log.

import { expect, test } from 'vitest';
import type { AnsweredRow } from '../../../../shared/floor/interlock.ts';
import type { EntryKind } from '../../../../shared/floor/kinds.ts';
import { AGAIN_AFTER_MS, answerPages, openToldAnswers } from '../../../../src/link/ipc2591/told-answers.ts';
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

/** What the floor has after questions, each written as a link writes it, and what each had to write. */
function played(questions: readonly (readonly AnsweredRow[])[]) {
  const told = openToldAnswers();
  const story = beginStory();
  const written = questions.map((rows) => {
    const fresh = told.fresh(rows);
    for (const results of answerPages(fresh))
      story.tell('station.answered', { ...station, results: [...results] });
    told.told(rows, fresh, 0);
    return fresh;
  });
  return { written, has: story.floor().interlocks.get(station.station)?.last?.results ?? [] };
}
const answered = (slot: string, reel: string | null): AnsweredRow => ({
  slot,
  reel,
  part: null,
  result: 'Warning',
  why: 'unknown-reel',
});

test('a reel that is asked of at no slot, at a slot and at none again is news each time, as the floor has it', () => {
  const [nowhere, there] = [[answered('?', 'R')], [answered('M1-F-005', 'R')]];
  const { written, has } = played([nowhere, there, nowhere, nowhere]);
  expect(written).toEqual([nowhere, there, nowhere, []]);
  expect(has).toEqual([...there, ...nowhere]);
  // Both in one question: each stands, and the same once more is no news.
  const both = [...nowhere, ...there];
  const whole = played([both, both, [answered('M1-F-005', 'S')], both, both]);
  expect(whole.written).toEqual([both, [], [answered('M1-F-005', 'S')], both, []]);
  expect(new Set(whole.has)).toEqual(new Set(both));
});

test('the floor has all rows of a question, whatever a page has to be cut at', () => {
  const lanes = [answered('M1-F-500', 'A'), answered('M1-F-500', 'B')];
  const rows = Array.from({ length: 199 }, (_, at) => answered(`M1-F-${at}`, `K${at}`));
  const elsewhere = Array.from({ length: 60 }, (_, at) => answered('?', at === 0 ? 'A' : `X${at}`));
  const question = [...elsewhere, ...rows, ...lanes];
  const { written, has } = played([question, question]);
  expect(written).toEqual([question, []]);
  expect(new Set(has)).toEqual(new Set(question));
  expect(answerPages(question).every((page) => page.length <= 200)).toBe(true);
  // One place with more rows than an entry takes.
  const many = Array.from({ length: 450 }, () => answered('?', null));
  expect(answerPages(many).map((page) => page.length)).toEqual([200, 200, 50]);
});

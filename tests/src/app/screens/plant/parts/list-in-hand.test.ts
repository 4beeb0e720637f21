// A list on its way in: the columns shown and the rows that may be taken in come from one reading, whatever was asked and refused between.

import { expect, test } from 'vitest';
import {
  answerList,
  askList,
  choiceOf,
  emptyDesk,
  type ListDesk,
  type ListQuestion,
  shownColumns,
} from '../../../../../../src/app/screens/plant/parts/list-in-hand.ts';
import { readList } from '../../../../../../src/worker/list-desk.ts';
import type { ListReply } from '../../../../../../src/worker/list-protocol.ts';

const tools = {
  decode: (bytes: Uint8Array) => new TextDecoder().decode(bytes),
  readWorkbook: () => Promise.reject(new Error('no workbook')),
};
const list = { name: 'parts.csv', content: 'Part;Value;Text\nNEW-100;4k7;Resistor\n' };
const picture = { name: 'parts.png', content: new Blob([new Uint8Array([137, 80, 78, 71, 0, 0, 0, 13])]) };
const asked = (source: ListQuestion['source']): ListQuestion => ({ source, chosen: null, page: null });

/** What the reader says to a question. */
function replyTo({ source, chosen, page }: ListQuestion): Promise<ListReply> {
  const columns = chosen?.map ?? null;
  return readList({ list: 'parts', source: { ...source, number: 1 }, columns, remembered: {}, page }, tools);
}

async function answered(desk: ListDesk, question: ListQuestion): Promise<ListDesk> {
  return answerList(desk, question, await replyTo(question));
}

/** The list in hand, as it reads by itself. */
async function begin(): Promise<ListDesk> {
  const question = asked(list);
  return answered(askList(emptyDesk, question), question);
}

function choose(desk: ListDesk, index: number, field: string | null): readonly [ListQuestion, ListDesk] {
  if (desk.inHand === null) throw new Error('no list');
  const question = choiceOf(desk, desk.inHand, { index, field });
  return [question, askList(desk, question)];
}

const fieldsOf = (desk: ListDesk) => shownColumns(desk).map(({ field }) => field);
const partsOf = (desk: ListDesk) =>
  desk.inHand?.summary.parts.map(({ part }) => [part.value, part.description]);

test("a choice stands while the list is read by it, and is the list's own with the answer alone", async () => {
  const first = await begin();
  expect([fieldsOf(emptyDesk), fieldsOf(first), first.asked]).toEqual([
    [],
    ['part', 'value', 'description'],
    null,
  ]);
  const [note, reading] = choose(first, 1, 'note');
  expect(fieldsOf(reading)).toEqual(['part', 'note', 'description']);
  expect(reading.inHand).toBe(first.inHand);
  expect(reading.asked).toBe(note);
  const read = await answered(reading, note);
  expect([fieldsOf(read), partsOf(read), read.asked]).toEqual([
    ['part', 'note', 'description'],
    [[null, 'Resistor']],
    null,
  ]);
});

test('a choice given up for a file that cannot be read is gone: columns and rows are those before it', async () => {
  const first = await begin();
  const [note, reading] = choose(first, 1, 'note');
  const other = asked(picture);
  const both = askList(reading, other);
  const dropped = await answered(both, note);
  expect(dropped).toBe(both);
  const refused = await answered(dropped, other);
  expect(refused.fault).toEqual({ name: 'parts.png', is: 'other-file' });
  expect(refused.asked).toBe(null);
  expect([fieldsOf(refused), partsOf(refused)]).toEqual([
    ['part', 'value', 'description'],
    [['4k7', 'Resistor']],
  ]);
});

test('a choice by which the list cannot be read again is gone; the next one that can clears the fault', async () => {
  const first = await begin();
  const [note, reading] = choose(first, 1, 'note');
  const failed = answerList(reading, note, { kind: 'refused', fault: 'failed' });
  expect(failed).toEqual({ ...first, fault: { name: 'parts.csv', is: 'failed' } });
  expect(fieldsOf(failed)).toEqual(['part', 'value', 'description']);
  const [unused, again] = choose(failed, 2, null);
  const read = await answered(again, unused);
  expect([read.fault, fieldsOf(read), partsOf(read)]).toEqual([
    null,
    ['part', 'value', null],
    [['4k7', null]],
  ]);
});

test('a second choice while the first is read counts with it', async () => {
  const [note, one] = choose(await begin(), 1, 'note');
  const [unused, two] = choose(one, 2, null);
  expect(fieldsOf(two)).toEqual(['part', 'note', null]);
  expect(await answered(two, note)).toBe(two);
  expect(partsOf(await answered(two, unused))).toEqual([[null, '4k7']]);
});

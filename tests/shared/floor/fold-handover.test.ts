// A handover counts once the lead going off signed it, is taken by another lead, and keeps its holds in view until they are decided.

import { describe, expect, test } from 'vitest';
import { heldSinceHandover, lastHandover } from '../../../shared/floor/held-at-handover.ts';
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import { payloadExamples } from './examples.ts';
import { beginStory, idOf, type Story, tellPlant, verified } from './story.ts';

const handed = payloadExamples['shift.handed'];
const taken = payloadExamples['shift.taken'];

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}

function tellHold(story: Story, reel: string) {
  return story.tell('reel.verified', {
    ...verified('M1-F-001', 'R-100', { reel, quantity: null }),
    verdict: 'held',
    reasons: [{ code: 'no-quantity', facts: {} }],
  });
}

/** Hands over with one hold on the list. */
function hand(story: Story, of: string, reel: string, handover = 'h') {
  const left = handed.left.map((item) => ({ ...item, of, reel }));
  return story.tell('shift.handed', { ...handed, handover, left });
}

describe('foldHandover()', () => {
  test('keeps who handed over what, and who took it', () => {
    const story = begun();
    const first = story.tell('shift.handed', handed, { at: 100 });
    expect(lastHandover(story.floor(), 'L1')).toMatchObject({
      entry: idOf(first),
      by: 'lea',
      note: 'Feeder F-7 to repair',
      taken: null,
    });
    const second = story.tell('shift.taken', taken, { at: 200 });
    expect(lastHandover(story.floor(), 'L1')?.taken).toMatchObject({ by: 'bo', entry: idOf(second) });
    expect(lastHandover(story.floor(), 'L2')).toBeNull();
  });

  test('lists a reel by the id that it got since', () => {
    const story = begun();
    const load = story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: null }));
    const [was, reel] = [`~${idOf(load)}`, packageIdOf(idOf(load))];
    hand(story, idOf(load), was);
    const label = { part: 'R-100', supplierPart: null, lot: 'L-1', dateCode: null, quantity: 500 };
    story.tell('reel.named', { ...label, reel, was, sd: 0, basis: 'label', via: 'typed' });
    expect(lastHandover(story.floor(), 'L1')?.left).toMatchObject([{ of: idOf(load), reel }]);
  });

  test('takes no signature of the lead who handed over, and no second one', () => {
    const story = begun();
    story.tell('shift.handed', handed);
    story.tell('shift.taken', { ...taken, by: 'lea' });
    expect(lastHandover(story.floor(), 'L1')?.taken).toBeNull();
    story.tell('shift.taken', taken);
    story.tell('shift.taken', { ...taken, by: 'cy' });
    expect(lastHandover(story.floor(), 'L1')?.taken?.by).toBe('bo');
  });

  test('signs the handover that was meant where a newer one is there', () => {
    const story = begun();
    story.tell('shift.handed', handed);
    story.tell('shift.handed', { ...handed, handover: 'h2', by: 'cy' });
    story.tell('shift.taken', taken);
    const all = story.floor().handovers.get('L1') ?? [];
    expect(all.map(({ handover, taken: by }) => [handover, by?.by ?? null])).toEqual([
      ['h', 'bo'],
      ['h2', null],
    ]);
  });

  test('keeps the newest four of a line', () => {
    const story = begun();
    for (const handover of ['a', 'b', 'c', 'd', 'e']) story.tell('shift.handed', { ...handed, handover });
    const all = story.floor().handovers.get('L1') ?? [];
    expect(all.map(({ handover }) => handover)).toEqual(['b', 'c', 'd', 'e']);
  });
});

describe('heldSinceHandover()', () => {
  test('tells a hold that was open at a handover until a lead decides, whoever took over', () => {
    const story = begun();
    const held = tellHold(story, 'K1');
    expect(heldSinceHandover(story.floor(), 'L1')).toEqual([]);
    hand(story, idOf(held), 'K1');
    story.tell('shift.taken', taken);
    hand(story, 'T1/e/9', 'K7', 'h2');
    expect(heldSinceHandover(story.floor(), 'L1').map(({ entry }) => entry)).toEqual([idOf(held)]);
    story.tell('hold.cleared', {
      ...payloadExamples['hold.cleared'],
      of: idOf(held),
      line: 'L1',
      slot: 'M1-F-001',
    });
    expect(heldSinceHandover(story.floor(), 'L1')).toEqual([]);
  });

  test('goes on where the same reel is scanned and held again, and not with another reel', () => {
    const story = begun();
    const held = tellHold(story, 'K1');
    hand(story, idOf(held), 'K1');
    const again = tellHold(story, 'K1');
    tellHold(story, 'K2');
    expect(heldSinceHandover(story.floor(), 'L1').map(({ entry }) => entry)).toEqual([idOf(again)]);
  });

  test('tells what came up between both signatures', () => {
    const story = begun();
    story.tell('shift.handed', { ...handed, left: [] });
    const held = tellHold(story, 'K1');
    const came = taken.came.map((item) => ({ ...item, what: 'hold' as const, of: idOf(held), reel: 'K1' }));
    story.tell('shift.taken', { ...taken, came });
    expect(heldSinceHandover(story.floor(), 'L1')).toHaveLength(1);
  });
});

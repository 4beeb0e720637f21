// How more of a part comes onto a slot: by what stands there, and by the feeder in hand; a second feeder by one scan.

import { describe, expect, test } from 'vitest';
import { judgeForFeeder, judgeReel } from '../../../shared/desk/judgement.ts';
import { deskAct, deskWells, emptyDesk, isDeskReady } from '../../../shared/desk/model.ts';
import { takeScan } from '../../../shared/desk/take-scan.ts';
import { applyEntry } from '../../../shared/floor/fold.ts';
import type { PackageKind } from '../../../shared/floor/vocabulary.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { beginStory, idOf, type Story, startMs, tellPlant, verified } from '../floor/story.ts';

const slot = 'M1-F-001';
/** A label by ISO/IEC 15434 format 06 with the data identifiers of ANS MH10.8.2. */
const label = (reel: string) =>
  `[)>\x1e06\x1d${['PR-100', 'Q500', `1TLOT-${reel}`, `3S${reel}`].join('\x1d')}\x1e\x04`;
const scan = (...texts: string[]): Scan => ({
  codes: texts.map((text) => ({ text, format: null, symbologyId: null })),
  via: 'wedge',
  atMs: 0,
});

function plant(kind: PackageKind | null, feeder: string | null = null): Story {
  const story = beginStory();
  tellPlant(story);
  for (const each of ['F-1', 'F-2'])
    story.tell('feeder.known', { feeder: each, tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  const comesIn = kind === null ? {} : { comesIn: kind };
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'OLD', feeder, ...comesIn }));
  return story;
}
const viewOf = (story: Story) => ({ floor: story.floor(), line: 'L1' });

describe('a slot on which something stands', () => {
  test.each([
    [null, 'splice'],
    ['cut-tape', 'splice'],
    ['tray', 'exchange'],
    ['tube', 'exchange'],
    ['bulk', 'refill'],
  ] as const)('with %s takes more by a %s', (kind, act) => {
    const view = viewOf(plant(kind));
    const desk = takeScan(takeScan(emptyDesk, scan(slot), view), scan(label('NEW')), view);
    expect(deskAct(desk, view)).toBe(act);
    expect(isDeskReady(desk, view)).toBe(true);
    if (desk.slot === null || desk.reel === null) throw new Error('slot and reel must be in hand');
    const { drafts } = judgeReel(view, { ...desk, slot: desk.slot, reel: desk.reel }, startMs);
    expect(drafts[0]?.payload).toMatchObject({ act, verdict: 'accepted' });
    expect(drafts[0]?.payload).toMatchObject(kind === null ? {} : { comesIn: kind });
  });

  test('is exchanged where another feeder is in hand, spliced where it is the same', () => {
    const view = viewOf(plant(null, 'F-1'));
    const at = takeScan(emptyDesk, scan(slot), view);
    expect(deskAct(takeScan(at, scan('F-1'), view), view)).toBe('splice');
    expect(deskAct(takeScan(at, scan('F-2'), view), view)).toBe('exchange');
  });

  test('an exchange names what stood there when it was judged', () => {
    const story = plant('tray');
    const view = viewOf(story);
    const desk = takeScan(takeScan(emptyDesk, scan(slot), view), scan(label('NEW')), view);
    const ready = { ...desk, slot, reel: desk.reel ?? never() };
    const [first] = judgeReel(view, ready, startMs).drafts;
    expect(first?.payload).toMatchObject({ replaces: idOf(story.entries.at(-1) ?? never()) });
  });

  test('the empty tray asks for no label of its own: the slot is enough', () => {
    const view = viewOf(plant('tray'));
    const desk = { ...emptyDesk, slot };
    expect(deskWells(desk, view).map(({ well }) => well)).toEqual(['slot', 'reel']);
  });
});

function never(): never {
  throw new Error('must be there');
}

describe('a second feeder', () => {
  const at = { line: 'L1', setup: 'brook-top-a' };

  // Where no list of feeders is kept, nobody may ever have scanned the one that stands there.
  test.each(['F-1', null])(
    'is made ready for a slot with feeder %s, and goes on by one scan of it',
    (there) => {
      const story = plant(null, there);
      const view = viewOf(story);
      const empty = { floor: view.floor, line: 'L1' };
      const scanned = takeScan({ ...emptyDesk, slot: 'M1-R-003' }, scan(label('NEW')), empty);
      const reel = scanned.reel ?? never();
      const { answer, drafts } = judgeForFeeder(view.floor, at, { slot, feeder: 'F-2', reel }, startMs);
      expect(answer.verdict).toBe('accepted');
      const [verdict, ...others] = drafts;
      if (typeof verdict !== 'object' || verdict.kind !== 'reel.verified') throw new Error('a verdict first');
      expect(verdict.payload).toMatchObject({ slot: null, feeder: 'F-2', readying: true });
      const of = idOf(story.tell('reel.verified', verdict.payload));
      const last = others.at(-1);
      const readied = typeof last === 'function' ? last([of], '') : never();
      if (readied.kind !== 'feeder.readied') throw new Error('it is ready last');
      story.tell('feeder.readied', readied.payload);
      expect(
        story
          .floor()
          .slots.get(`L1/${slot}`)
          ?.tapes.map((tape) => tape.reel),
      ).toEqual(['OLD']);

      const now = viewOf(story);
      const desk = takeScan({ ...emptyDesk, slot }, scan('F-2'), now);
      expect(deskAct(desk, now)).toBe('exchange');
      expect(desk.reel?.reel).toBe('NEW');
      expect(isDeskReady(desk, now)).toBe(true);
      const judged = judgeReel(now, { ...desk, slot, reel: desk.reel ?? never() }, startMs);
      expect(judged.answer.verdict).toBe('accepted');
      const [first] = judged.drafts;
      if (first?.kind !== 'reel.verified') throw new Error('a verdict first');
      const entry = story.tell('reel.verified', first.payload);
      const floor = story.floor();
      expect(applyEntry(floor, entry)).toBe(true);
      expect(story.floor().slots.get(`L1/${slot}`)).toMatchObject({ feeder: 'F-2' });
      expect(story.floor().ready.size).toBe(0);
      expect(story.floor().conflicts.size).toBe(0);
    },
  );

  test('that was set aside is refused, with the reason', () => {
    const story = plant(null, 'F-1');
    story.tell('feeder.set-aside', { feeder: 'F-2', reason: 'loses parts' });
    const view = viewOf(story);
    const scanned = takeScan({ ...emptyDesk, slot: 'M1-R-003' }, scan(label('NEW')), view);
    const reel = scanned.reel ?? never();
    const { answer, drafts } = judgeForFeeder(view.floor, at, { slot, feeder: 'F-2', reel }, startMs);
    expect(answer.verdict).toBe('refused');
    expect(answer.reasons[0]).toMatchObject({ code: 'feeder-aside', why: 'loses parts' });
    expect(drafts.some((draft) => typeof draft === 'function')).toBe(false);
  });

  test('for another part than the slot wants is refused', () => {
    const view = viewOf(plant(null, 'F-1'));
    const scanned = takeScan({ ...emptyDesk, slot: 'M1-R-003' }, scan(label('NEW')), view);
    const reel = scanned.reel ?? never();
    const wrong = judgeForFeeder(view.floor, at, { slot: 'M1-F-010', feeder: 'F-2', reel }, startMs);
    expect(wrong.answer.verdict).toBe('refused');
  });
});

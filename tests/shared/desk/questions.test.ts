// Whatever is scanned, a question of the desk has at least one answer, and each answer leads on: to the next question, to something in hand,
// or to a sentence that says what to do. Also when "only part of the label" is said, and when not.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Desk,
  type DeskQuestion,
  type DeskView,
  emptyDesk,
  takeKnown,
} from '../../../shared/desk/model.ts';
import {
  answerCameBefore,
  answerMeaning,
  answerRunsHere,
  answerWhich,
  takeScan,
} from '../../../shared/desk/take-scan.ts';
import { answerValue } from '../../../shared/desk/value-question.ts';
import type { Scan, ScanPath } from '../../../shared/labels/scan.ts';
import { beginStory, tellPlant, verified } from '../floor/story.ts';

const [RS, GS, EOT] = ['\x1e', '\x1d', '\x04'];
const scan = (via: ScanPath, ...texts: readonly string[]): Scan => ({
  codes: texts.map((text) => ({ text, format: null, symbologyId: null })),
  via,
  atMs: 0,
});

/** A line with a reel on it, one that came off, a feeder whose name is a badge, and feeders that are scanned. */
function busyView(): DeskView {
  const story = beginStory();
  tellPlant(story, { rules: { feedersKnown: true } });
  story.tell('feeder.known', { feeder: 'FD-24', tapeWidthMm: 24, pitchesMm: [4], positions: 3 });
  story.tell('person.added', { person: 'bo', name: 'Bo', role: 'operator', badge: 'FD-24', pin: null });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K-OLD', lot: 'OLD', quantity: 1000 }));
  return { floor: story.floor(), line: 'L1' };
}
const view = busyView();

/** Every answer that the page offers to a question. */
function answersTo(desk: Desk, question: DeskQuestion): readonly (() => Desk)[] {
  switch (question.ask) {
    case 'which':
      return question.options.map((option) => () => answerWhich(desk, option, view));
    case 'unlisted-feeder':
      return question.options.map((option) => () => takeKnown({ ...desk, question: null }, option));
    case 'meaning':
      return question.question.candidates.map(
        ({ field, value }) =>
          () =>
            answerMeaning(desk, field, value, view),
      );
    case 'runs-here':
      return [() => answerRunsHere(desk, true), () => answerRunsHere(desk, false)];
    case 'came-before':
      return [() => answerCameBefore(desk, true), () => answerCameBefore(desk, false)];
    case 'value':
      return [() => answerValue(desk, null)];
  }
}

/** Follows every answer to its end; a question that is asked again, or an answer after which nothing is there, is a dead end. */
function expectWaysOn(desk: Desk, depth = 0): void {
  const { question } = desk;
  if (question === null) {
    const has = desk.told ?? desk.slot ?? desk.feeder ?? desk.reel ?? desk.partial ?? desk.old;
    if (depth > 0 && has === null) expect.fail('an answer left nothing in hand and said nothing');
    if (desk.told !== null || desk.reel === null) return;
    const { part, supplierPart, reel } = desk.reel;
    if (part === null && supplierPart === null && reel === null)
      expect.fail('a reel is in hand of which nothing is known');
    return;
  }
  if (depth > 12) expect.fail(`asked on and on: ${JSON.stringify(question)}`);
  const answers = answersTo(desk, question);
  if (answers.length === 0) expect.fail(`no answer to ${JSON.stringify(question)}`);
  // Every answer the first time, then the first and the last: texts of many questions would branch without end.
  const tried = depth === 0 ? answers : [answers[0], answers.at(-1)];
  for (const answer of tried) {
    const next = answer?.() ?? desk;
    expect(next.question, JSON.stringify(question)).not.toEqual(question);
    expectWaysOn(next, depth + 1);
  }
}

const pieces = [
  'PX-9', 'PR-100', '1PR-100', 'R-100', '1PSUP-1', 'Q5000', 'Q4,000', '1TLOT7', '1TLOT8', '3SK-OLD', '3SK-2', 'S123', 'SHELF-A1', 'FD-24',
  'FD-99', 'M1-F-001', 'M1-F-002', 'M9-F-001', '10D2610', '4LMY', '13E3', 'V77', 'PNX-9', 'PN:X-9,QTY:5', 'PNX9;QT5;LTA', '9D2610',
  'PX,Q5, AB', 'PX-9 Q500 AB', 'Qčééé', 'PCUß77', '01095011015300031', `]C11012345${GS}2199`, '30PCAT-1', 'K1', '?!', '', ' ',
  'S12;P77;Q5', '{pbn:PICK1,on:SO1,pc:C1000,pm:MK-1,qty:100,cc:1}',
]; // biome-ignore format: a list of codes
const envelope = fc
  .subarray(['PX-9', '1PSUP-1', 'Q5000', '1TA', '1TB', '30PCAT-1', '10D2610', 'PZ-1', '3SK-2', '9DXX', 'K77'])
  .chain((fields) =>
    fc.constantFrom(
      `[)>${RS}06${GS}${fields.join(GS)}${RS}${EOT}`,
      `[)>${RS}06${GS}${fields.join(GS)}`,
      `[)>06${fields.join('')}`,
      `[)>05${fields.join('')}`,
      `[>${fields.join(GS)}`,
      fields.join(';'),
      fields.join(' '),
    ),
  );
const someScan = fc
  .tuple(
    fc.constantFrom<ScanPath>('wedge', 'camera', 'typed'),
    fc.array(
      fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...pieces) }, envelope, fc.string({ maxLength: 20 })),
      {
        minLength: 1,
        maxLength: 4,
      },
    ),
  )
  .map(([via, texts]) => scan(via, ...texts));

describe('a question of the desk', () => {
  test('has at least one answer, and every answer leads on', () => {
    fc.assert(
      fc.property(fc.array(someScan, { minLength: 1, maxLength: 3 }), (scans) => {
        let desk = emptyDesk;
        for (const each of scans) {
          desk = takeScan(desk, each, view);
          expectWaysOn(desk);
        }
      }),
      { numRuns: 3000 },
    );
  });

  test('is not asked about a text that nobody can say anything about', () => {
    const unseparated = takeScan(emptyDesk, scan('wedge', '[)>\x1e05\x1d99ABCDEF'), view);
    expect(unseparated.question).toBeNull();
    expect(unseparated.told).not.toBeNull();
  });

  test('about a label stays while a slot is scanned, and goes with the next label', () => {
    const asked = takeScan(emptyDesk, scan('typed', 'PX-9'), view);
    const atSlot = takeScan(asked, scan('wedge', 'M1-F-002'), view);
    expect(atSlot).toMatchObject({
      slot: 'M1-F-002',
      question: { ask: 'meaning', question: { text: 'PX-9' } },
    });
    expect(answerMeaning(atSlot, 'part', 'X-9', view)).toMatchObject({
      slot: 'M1-F-002',
      reel: { part: 'X-9' },
    });
    const newer = takeScan(atSlot, scan('camera', `[)>${RS}06${GS}PR-100${GS}Q5${GS}1TZ${RS}${EOT}`), view);
    expect(newer).toMatchObject({ question: null, reel: { part: 'R-100' } });
  });

  test('ends with a word on the missing part, where what was answered names none', () => {
    const twoLots = `[)>${RS}06${GS}1TA${GS}1TB${GS}Q5${RS}${EOT}`;
    const asked = takeScan(emptyDesk, scan('camera', twoLots), view);
    expect(asked.question).toMatchObject({ ask: 'meaning' });
    expect(answerMeaning(asked, 'lot', 'A', view)).toMatchObject({ reel: null, told: { tell: 'no-part' } });
  });
});

describe('only part of the label', () => {
  const whole = (...fields: readonly string[]) => `[)>${RS}06${GS}${fields.join(GS)}${RS}${EOT}`;

  test.each([
    ['wedge', ['Q5000']],
    ['wedge', ['1TLOT7']],
    ['camera', ['Q5000', '1TLOT7']],
    ['wedge', [`[)>${RS}06${GS}Q5000${GS}1TLO`]],
  ] as const)(
    'is said of bar codes of one fact each, and of an envelope without its end: %s %j',
    (via, texts) => {
      expect(takeScan(emptyDesk, scan(via, ...texts), view).told).toMatchObject({ tell: 'half-label' });
    },
  );

  test.each([
    ['wedge', [whole('Q5000', '1TLOT7')]],
    ['camera', [whole('30PNOBODY', 'Q100')]],
    ['typed', ['{pbn:PICK1,on:SO1,pc:C1000,qty:100,cc:1}']],
  ] as const)('is not said of a label that was read whole: %s %j', (via, texts) => {
    expect(takeScan(emptyDesk, scan(via, ...texts), view).told).toMatchObject({
      tell: 'no-part',
      codes: [...texts],
    });
  });

  test('is not said of what another keyboard spoiled: the keyboard is, and what was in hand stays', () => {
    const desk = takeScan(emptyDesk, scan('wedge', 'M1-F-002'), view);
    expect(takeScan(desk, scan('wedge', 'PCUß77'), view)).toMatchObject({
      slot: 'M1-F-002',
      reel: null,
      told: { tell: 'wrong-keyboard', layout: 'German (QWERTZ)', text: 'PCUß77' },
    });
  });
});

test('codes of a label that a scanner sends one by one answer the question about its first', () => {
  let desk: Desk = emptyDesk;
  for (const text of ['P25-0023-13H', 'Q4000', '1TLT-9500']) desk = takeScan(desk, scan('wedge', text), view);
  expect(desk.question).toBeNull();
  expect(desk.reel).toMatchObject({ part: '25-0023-13H', quantity: 4000, lot: 'LT-9500' });
});

// Walks of one or several people in one question: who keeps which slots, what is missed and what would save it. A minute's walk, 40 s a
// splice; windows in seconds.

import { describe, expect, test } from 'vitest';
import { scheduleWalks } from '../../../shared/forecast/walk-schedule.ts';
import { answerWalks, type WalkAnswer, type WalkQuestion } from '../../../shared/forecast/walks.ts';

const order = ['M1-F-001', 'M1-F-002', 'M2-F-001', 'M2-F-002'];

function asked(
  windows: readonly (readonly [slot: string, opens: number, closes: number])[],
  more: Partial<WalkQuestion> = {},
): WalkQuestion {
  return {
    walks: {
      nowMs: 0,
      walkSeconds: 60,
      eachSeconds: 40,
      splices: windows.map(([slot, opens, closes]) => ({
        slot,
        opensMs: opens * 1000,
        closesMs: closes * 1000,
      })),
    },
    operators: 1,
    walkingOrder: order,
    partsPerSecond: windows.map(() => 0.4),
    remediesFor: 0,
    keepShares: false,
    ...more,
  };
}
/** What each person does: the slots of each walk, told by their place in the question. */
const doneBy = ({ walks }: WalkQuestion, { shares }: WalkAnswer) =>
  shares.map((share) =>
    share.walks.map(({ splices }) => splices.map(({ need }) => walks.splices[need]?.slot ?? '').join(' ')),
  );
const walk = (start: number, ...slots: readonly string[]) => ({ startMs: start * 1000, slots });

describe('answerWalks()', () => {
  test('is scheduleWalks() for one, who holds on to what was shown', () => {
    const question = asked([
      ['M1-F-001', 100, 500],
      ['M2-F-001', 150, 600],
    ]);
    const [fresh] = answerWalks(question).shares;
    expect(fresh).toEqual(scheduleWalks(question.walks));
    const known = [[walk((fresh?.walks[0]?.startMs ?? 0) / 1000 - 20, 'M1-F-001', 'M2-F-001')]];
    expect(answerWalks({ ...question, known }).shares).toMatchObject([
      { kept: true, walks: [{ startMs: known[0]?.[0]?.startMs }] },
    ]);
  });

  test('looks for remedies of what is missed first, as many as are asked for', () => {
    const question = asked(
      [
        ['M1-F-001', 1000, 1045],
        ['M1-F-002', 1000, 1050],
        ['M2-F-001', 500, 545],
        ['M2-F-002', 500, 550],
      ],
      { partsPerSecond: [1, 1, 3, 3] },
    );
    const kinds = (remediesFor: number) =>
      answerWalks({ ...question, remediesFor }).remedies.map((remedies) =>
        remedies.map(({ kind }) => kind).sort(),
      );
    const all = ['cutEarly', 'secondPerson', 'secondSlot'];
    expect([kinds(0), kinds(1), kinds(5)]).toEqual([[], [all], [all, all]]);
    const { shares, remedies } = answerWalks({ ...question, remediesFor: 1 });
    const missed = shares[0]?.missed.map(({ byMs }) => byMs) ?? [];
    expect(remedies[0]).toContainEqual({ kind: 'secondSlot', cost: 200, byMs: Math.min(...missed) });
    // Some 30 to 40 s before the window opens, at three parts a second.
    const cut = remedies[0]?.find(({ kind }) => kind === 'cutEarly');
    expect(cut?.cost).toBeGreaterThanOrEqual(84);
    expect(cut?.cost).toBeLessThanOrEqual(120);
  });
});

describe('of two people', () => {
  const apart = [
    ['M1-F-001', 100, 145],
    ['M2-F-001', 100, 145],
  ] as const;

  test('each takes a stretch of the line where nobody had any', () => {
    const question = asked(apart, { operators: 2 });
    expect(doneBy(question, answerWalks(question))).toEqual([['M1-F-001'], ['M2-F-001']]);
  });

  test('each keeps the slots that were theirs, and a new one goes to who has the slot before it', () => {
    const known = [[walk(40, 'M2-F-001')], [walk(40, 'M1-F-001')]];
    const windows = [
      ['M2-F-002', 700, 900],
      ['M2-F-001', 100, 145],
      ['M1-F-002', 1200, 1300],
      ['M1-F-001', 100, 145],
    ] as const;
    const question = asked(windows, { operators: 2, known });
    const answer = answerWalks(question);
    expect(doneBy(question, answer)).toEqual([
      ['M2-F-001', 'M2-F-002'],
      ['M1-F-001', 'M1-F-002'],
    ]);
    expect(answer.shares.map(({ missed }) => missed)).toEqual([[], []]);
    // Before the first that anybody had, it is the first person's.
    const first = asked([...apart.slice(1), ['M1-F-001', 100, 145]], {
      operators: 2,
      known: [[], [walk(40, 'M2-F-001')]],
    });
    expect(doneBy(first, answerWalks(first))).toEqual([['M1-F-001'], ['M2-F-001']]);
  });

  test('share anew where one of them would miss what two can do, unless who does what is to stay', () => {
    const known = [[walk(40, 'M1-F-001', 'M2-F-001')], []];
    const question = asked(apart, { operators: 2, known });
    expect(doneBy(question, answerWalks(question))).toEqual([['M1-F-001'], ['M2-F-001']]);
    const kept = answerWalks({ ...question, keepShares: true });
    expect(kept.shares.map(({ walks, missed }) => [walks.length, missed.length])).toEqual([
      [1, 1],
      [0, 0],
    ]);
    // The miss is told by its place in the question.
    const [served] = kept.shares[0]?.walks[0]?.splices ?? [];
    expect([served?.need, kept.shares[0]?.missed[0]?.need].sort()).toEqual([0, 1]);
  });

  test('keep their slots where sharing anew would save nothing', () => {
    // Nobody can reach the third.
    const windows = [...apart, ['M2-F-002', 0, 50]] as const;
    const known = [[walk(40, 'M2-F-001')], [walk(40, 'M1-F-001')]];
    const question = asked(windows, { operators: 2, known });
    const answer = answerWalks(question);
    expect(doneBy(question, answer)).toEqual([['M2-F-001'], ['M1-F-001']]);
    expect(answer.shares.flatMap(({ missed }) => missed.map(({ need }) => need))).toEqual([2]);
  });

  test('share anew where the same is missed in fewer walks', () => {
    // Both could be done in one walk, and nobody can reach the third.
    const windows = [
      ['M1-F-001', 100, 500],
      ['M1-F-002', 100, 500],
      ['M2-F-002', 0, 50],
    ] as const;
    const known = [[walk(300, 'M1-F-001')], [walk(300, 'M1-F-002')]];
    const question = asked(windows, { operators: 2, known });
    expect(answerWalks(question).shares.flatMap(({ walks }) => walks)).toHaveLength(1);
    expect(answerWalks({ ...question, keepShares: true }).shares.flatMap(({ walks }) => walks)).toHaveLength(
      2,
    );
    // What is known of another number of people is no share of theirs.
    expect(answerWalks({ ...question, known: known.slice(0, 1), keepShares: true }).shares).toHaveLength(2);
  });
});

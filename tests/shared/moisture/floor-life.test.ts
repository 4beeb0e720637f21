import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Air } from '../../../shared/floor/vocabulary.ts';
import { type FloorLifeInput, floorLife, floorLifeAt } from '../../../shared/moisture/floor-life.ts';
import type { MoistureLevel } from '../../../shared/moisture/levels.ts';
import type { FloorLifeNoteCode } from '../../../shared/moisture/notes.ts';
import type { AirSpan } from '../../../shared/moisture/timeline.ts';

const hour = 3_600_000;
// Monday 2 March 2026, 08:00 UTC.
const monday = Date.parse('2026-03-02T08:00:00Z');

type Step = readonly [hours: number, where: Air | 'gap', celsius?: number | null, humidity?: number | null];

/** Stretches one after the other from Monday 08:00 on; hours, place, climate. */
function historyOf(steps: readonly Step[]): { history: AirSpan[]; nowMs: number } {
  let at = monday;
  const history: AirSpan[] = [];
  for (const [hours, where, celsius = 30, humidity = 60] of steps) {
    const toMs = at + hours * hour;
    if (where !== 'gap') history.push({ fromMs: at, toMs, where, celsius, humidity });
    at = toMs;
  }
  return { history, nowMs: at };
}

function ask(level: MoistureLevel, steps: readonly Step[], more: Partial<FloorLifeInput> = {}) {
  const input: FloorLifeInput = {
    level,
    thicknessMm: 3.5,
    openedMs: monday,
    ...historyOf(steps),
    ...more,
  };
  const answer = floorLife(Object.freeze(input));
  if (!answer.ok) throw new Error(`refused: ${answer.error.code}`);
  return answer.value;
}

function codes(level: MoistureLevel, steps: readonly Step[], more: Partial<FloorLifeInput> = {}) {
  return ask(level, steps, more).notes.map((note) => note.code);
}

interface Case {
  readonly level: MoistureLevel;
  readonly steps: readonly Step[];
  readonly thickness?: number;
  readonly left: number | null;
  readonly reason: string;
}

// Worked out by hand from the rules of J-STD-033; the rules of pause and undoing are from memory.
const cases: readonly Case[] = [
  {
    level: '3',
    steps: [
      [20, 'floor'],
      [48, 'dry', 25, 10],
    ],
    left: 148,
    reason: 'dry storage pauses',
  },
  {
    level: '3',
    steps: [
      [10, 'floor'],
      [50, 'dry', 25, 10],
    ],
    left: 168,
    reason: '5 times a short exposure undoes it',
  },
  {
    level: '3',
    steps: [
      [10, 'floor'],
      [49, 'dry', 25, 10],
    ],
    left: 158,
    reason: 'less than 5 times only pauses',
  },
  {
    level: '3',
    steps: [
      [12 + 1 / 60, 'floor'],
      [70, 'dry', 25, 10],
    ],
    left: 155 + 59 / 60,
    reason: 'exposed for more than 12 h',
  },
  {
    level: '3',
    steps: [
      [12, 'floor'],
      [60, 'dry', 25, 10],
    ],
    left: 168,
    reason: 'exactly 12 h is still short',
  },
  {
    level: '3',
    steps: [
      [6, 'floor'],
      [1, 'dry', 25, 5],
      [7, 'floor'],
      [65, 'dry', 25, 5],
    ],
    left: 155,
    reason: 'exposures add up to 13 h',
  },
  {
    level: '3',
    steps: [
      [10, 'floor'],
      [20, 'dry', 25, 5],
      [30, 'dry', 20, 9],
    ],
    left: 168,
    reason: 'two cabinets are one storage',
  },
  {
    level: '3',
    steps: [
      [10, 'floor', 31, 60],
      [50, 'dry', 25, 10],
    ],
    left: 134,
    reason: 'nothing is undone above 30 °C; 6 days at 35/60',
  },
  {
    level: '5',
    steps: [
      [8, 'floor'],
      [80, 'dry', 25, 5],
    ],
    left: 48,
    reason: '10 times at 5 % undoes it',
  },
  {
    level: '5',
    steps: [
      [8, 'floor'],
      [80, 'dry', 25, 8],
    ],
    left: 0,
    reason: '8 % is not dry enough at level 5',
  },
  {
    level: '4',
    steps: [
      [10, 'floor'],
      [20, 'dry', 25, 5],
    ],
    left: 42,
    reason: 'level 4 knows no pause',
  },
  {
    level: '3',
    steps: [[0, 'floor', 30, 70]],
    thickness: 1,
    left: 24,
    reason: 'thin at 30 °C and 70 %: 1 day',
  },
  { level: '3', steps: [[1, 'floor', 25, 50]], left: 215, reason: 'class A at 25 °C and 50 %: 9 days' },
  {
    level: '3',
    steps: [
      [20, 'floor'],
      [10, 'dry', 25, 15],
    ],
    left: 168 - 20 - (10 * 168) / 312,
    reason: '15 % is not dry: its share of 13 days',
  },
  {
    level: '3',
    steps: [
      [84, 'floor', 30, 60],
      [60, 'floor', 25, 50],
    ],
    left: 216 * (1 - 84 / 168 - 60 / 216),
    reason: 'shares of each climate add up, by the rule of this tool',
  },
  { level: '1', steps: [[5000, 'floor']], left: null, reason: 'level 1 has no limit' },
  { level: '2', steps: [[24, 'floor', 20, 40]], left: 364 * 24, reason: 'level 2 lasts one year' },
  {
    level: '2',
    steps: [[10, 'floor', 30, 70]],
    left: 230,
    reason: 'level 2 beyond 60 % takes the 10 days of 2a',
  },
  {
    level: '3',
    steps: [
      [200, 'floor'],
      [500, 'dry', 25, 5],
    ],
    left: 0,
    reason: 'dry storage does not undo an exceeded floor life',
  },
  {
    level: '3',
    steps: [
      [200, 'floor'],
      [24, 'bake', 125, 5],
      [8, 'floor'],
    ],
    left: 160,
    thickness: 1.4,
    reason: 'a bake starts it again',
  },
  { level: '3', steps: [[100, 'floor', 30, 5]], left: null, reason: 'at 5 % the table sets no limit' },
  { level: '3', steps: [[1, 'floor', 40, 50]], left: 0, reason: 'outside the table no life is known' },
  { level: '6', steps: [[1, 'floor']], left: 0, reason: 'level 6 is baked before use' },
];

describe('floorLife()', () => {
  it.each(cases)('leaves $left h at level $level: $reason', ({ level, steps, thickness, left }) => {
    const life = ask(level, steps, thickness === undefined ? {} : { thicknessMm: thickness });
    if (left === null) expect(life.leftSeconds).toBeNull();
    else expect((life.leftSeconds ?? Number.NaN) / 3600).toBeCloseTo(left, 9);
  });

  it('ends level 3, opened on Monday at 08:00 at 30 °C and 60 %, on the next Monday at 08:00', () => {
    const life = ask('3', [[30, 'floor']]);
    expect(new Date(life.expiresMs ?? 0).toISOString()).toBe('2026-03-09T08:00:00.000Z');
    expect(life).toMatchObject({
      usedSeconds: 30 * 3600,
      leftSeconds: 138 * 3600,
      packageClass: 'A',
      running: true,
    });
  });

  it('gives no end while the reel is in dry storage', () => {
    expect(
      ask('3', [
        [20, 'floor'],
        [5, 'dry', 25, 5],
      ]),
    ).toMatchObject({ expiresMs: null, running: false });
  });

  it('gives the moment at which an exceeded floor life ended and by how much', () => {
    const life = ask('5a', [
      [10, 'floor'],
      [24, 'floor'],
    ]);
    expect(life.expiresMs).toBe(monday + 24 * hour);
    expect(life).toMatchObject({ leftSeconds: 0, exceededSeconds: expect.closeTo(10 * 3600, 6) });
  });

  it('takes the time on the label after the bake of level 6', () => {
    const steps: Step[] = [
      [1, 'floor'],
      [48, 'bake', 125, 5],
      [2, 'floor'],
    ];
    expect(ask('6', steps, { timeOnLabelSeconds: 6 * 3600 }).leftSeconds).toBe(4 * 3600);
    expect(ask('6', steps).leftSeconds).toBe(0);
  });

  it('takes the shortest of the three classes when the thickness is not known', () => {
    expect(ask('3', [[0, 'floor', 30, 70]], { thicknessMm: null }).leftSeconds).toBe(24 * 3600);
    expect(ask('3', [[1, 'floor', 25, 50]], { thicknessMm: null }).leftSeconds).toBe(215 * 3600);
  });

  it('takes a class stated by hand before the thickness', () => {
    const life = ask('3', [[0, 'floor', 30, 70]], { thicknessMm: 1, packageClass: 'A' });
    expect(life).toMatchObject({ packageClass: 'A' });
    expect(ask('3', [[1, 'floor', 30, 70]], { thicknessMm: 1, packageClass: 'A' }).leftSeconds).toBe(
      119 * 3600,
    );
  });

  it('counts from the opening in the standard climate when there is no history', () => {
    const life = ask('3', [], { nowMs: monday + 10 * hour });
    expect(life.leftSeconds).toBe(158 * 3600);
    expect(life.notes.map((note) => note.code)).toContain('standardClimate');
  });

  it.each<{
    note: FloorLifeNoteCode;
    level: MoistureLevel;
    steps: Step[];
    more?: Partial<FloorLifeInput>;
    reason: string;
  }>([
    {
      note: 'bakeAirAssumed',
      level: '3',
      steps: [
        [200, 'floor'],
        [240, 'bake', 90, null],
        [8, 'floor'],
      ],
      more: { thicknessMm: 1.4 },
      reason: 'the oven’s air was not stated, and below 125 °C it decides',
    },
    {
      note: 'paused',
      level: '3',
      steps: [
        [20, 'floor'],
        [5, 'dry', 25, 5],
      ],
      reason: 'dry storage',
    },
    {
      note: 'noPause',
      level: '5',
      steps: [
        [2, 'floor'],
        [5, 'dry', 25, 5],
      ],
      reason: 'level 5 in dry storage',
    },
    {
      note: 'resetByDryStorage',
      level: '3',
      steps: [
        [2, 'floor'],
        [10, 'dry', 25, 5],
      ],
      reason: '5 times 2 h',
    },
    {
      note: 'notDry',
      level: '3',
      steps: [
        [2, 'floor'],
        [10, 'dry', 25, 11],
      ],
      reason: '11 % is not dry',
    },
    {
      note: 'gapAsFloor',
      level: '3',
      steps: [
        [2, 'floor'],
        [3, 'gap'],
        [2, 'floor'],
      ],
      reason: 'a gap',
    },
    {
      note: 'mixedClimates',
      level: '3',
      steps: [
        [2, 'floor'],
        [2, 'floor', 25, 50],
      ],
      reason: 'two climates',
    },
    { note: 'roundedUp', level: '3', steps: [[2, 'floor', 23, 45]], reason: 'between rows' },
    { note: 'outsideTable', level: '3', steps: [[2, 'floor', 36, 45]], reason: 'too warm' },
    { note: 'levelTwoDerated', level: '2', steps: [[2, 'floor', 25, 65]], reason: 'no row of level 2' },
    { note: 'aboveLevelOne', level: '1', steps: [[2, 'floor', 25, 90]], reason: 'level 1 at 90 %' },
    {
      note: 'classFromMemory',
      level: '3',
      steps: [[2, 'floor', 25, 50]],
      more: { thicknessMm: 1 },
      reason: 'class C',
    },
    { note: 'classByThickness', level: '3', steps: [[2, 'floor']], reason: 'class not stated' },
    {
      note: 'bakeShort',
      level: '3',
      steps: [
        [2, 'floor'],
        [1, 'bake', 125, 5],
      ],
      reason: '1 h is shorter than 48 h',
    },
    {
      note: 'bakeUnknown',
      level: '3',
      steps: [
        [2, 'floor'],
        [1, 'bake', null, null],
      ],
      reason: 'no temperature',
    },
    {
      note: 'bakeRunning',
      level: '3',
      steps: [
        [2, 'floor'],
        [9, 'bake', 90, 5],
      ],
      more: { nowMs: monday + 5 * hour },
      reason: 'still in the oven',
    },
    {
      note: 'afterNow',
      level: '3',
      steps: [[9, 'floor']],
      more: { nowMs: monday + 5 * hour },
      reason: 'a stretch in the future',
    },
    {
      note: 'beforeOpening',
      level: '3',
      steps: [[9, 'floor']],
      more: { openedMs: monday + 5 * hour },
      reason: 'a stretch before the opening',
    },
    { note: 'bake', level: '3', steps: [[200, 'floor']], reason: 'exceeded: how to bake' },
    { note: 'labelTime', level: '6', steps: [[2, 'floor']], reason: 'level 6' },
    { note: 'noLimitHere', level: '3', steps: [[2, 'floor', 25, 5]], reason: '5 %' },
  ])('notes $note for $reason', ({ note, level, steps, more }) => {
    expect(codes(level, steps, more)).toContain(note);
  });

  it('lets the floor count before dry storage and the worse climate before the better where stretches overlap', () => {
    const over: AirSpan[] = [
      { fromMs: monday, toMs: monday + 20 * hour, where: 'floor', celsius: 30, humidity: 60 },
      { fromMs: monday + 10 * hour, toMs: monday + 40 * hour, where: 'dry', celsius: 25, humidity: 5 },
    ];
    const life = ask('3', [], { history: over, nowMs: monday + 40 * hour });
    expect(life.usedSeconds).toBe(20 * 3600);
    expect(life.notes.find((note) => note.code === 'overlap')?.facts).toEqual({
      from: monday + 10 * hour,
      to: monday + 20 * hour,
    });
  });

  it('runs from now on where a floor stretch begins now after dry storage', () => {
    const { history, nowMs } = historyOf([
      [20, 'floor'],
      [48, 'dry', 25, 10],
    ]);
    const out: AirSpan = { fromMs: nowMs, toMs: null, where: 'floor', celsius: 30, humidity: 60 };
    const life = ask('3', [], { history: [...history, out], nowMs });
    expect(life).toMatchObject({ running: true, leftSeconds: 148 * 3600, expiresMs: nowMs + 148 * hour });
  });

  it('lets an open stretch last until now', () => {
    const open: AirSpan[] = [{ fromMs: monday, toMs: null, where: 'floor', celsius: 30, humidity: 60 }];
    expect(ask('3', [], { history: open, nowMs: monday + 7 * hour }).leftSeconds).toBe(161 * 3600);
  });

  it.each([
    ['openedAfterNow', { nowMs: monday - 1 }],
    ['thicknessNotPositive', { thicknessMm: 0 }],
    [
      'stretchEndsBeforeItStarts',
      { history: [{ fromMs: monday + 1, toMs: monday, where: 'floor', celsius: 30, humidity: 60 }] },
    ],
    [
      'humidityOutOfRange',
      { history: [{ fromMs: monday, toMs: monday + 1, where: 'floor', celsius: 30, humidity: 101 }] },
    ],
  ] as const)('refuses with %s', (code, more) => {
    const answer = floorLife({
      level: '3',
      thicknessMm: 1,
      openedMs: monday,
      nowMs: monday,
      history: [],
      ...more,
    });
    expect(answer).toMatchObject({ ok: false, error: { code } });
  });
});

const stepArbitrary = fc.tuple(
  fc.integer({ min: 1, max: 40 }),
  fc.constantFrom('floor', 'floor', 'dry', 'gap', 'bake') as fc.Arbitrary<Air | 'gap'>,
  fc.integer({ min: 15, max: 36 }),
  fc.integer({ min: 3, max: 92 }),
);
const levelArbitrary = fc.constantFrom<MoistureLevel>('1', '2', '2a', '3', '4', '5', '5a', '6');

describe('floorLife() on any history', () => {
  it('does not depend on the order of the entries, nor on an entry being written in two halves', () => {
    fc.assert(
      fc.property(levelArbitrary, fc.array(stepArbitrary, { maxLength: 8 }), (level, steps) => {
        const { history, nowMs } = historyOf(steps);
        const whole = ask(level, steps);
        const halves = history.flatMap((stretch) => {
          if (stretch.where === 'bake' || stretch.toMs === null) return [stretch];
          const middle = (stretch.fromMs + stretch.toMs) / 2;
          return [
            { ...stretch, toMs: middle },
            { ...stretch, fromMs: middle },
          ];
        });
        const again = ask(level, [], { history: halves.reverse(), nowMs });
        if (whole.leftSeconds === null) expect(again.leftSeconds).toBeNull();
        else expect(again.leftSeconds).toBeCloseTo(whole.leftSeconds, 3);
        expect(again.usedSeconds).toBeCloseTo(whole.usedSeconds, 3);
      }),
    );
  });

  it('never leaves more than the whole life of the climate, nor less than nothing, and never says NaN', () => {
    fc.assert(
      fc.property(levelArbitrary, fc.array(stepArbitrary, { maxLength: 8 }), (level, steps) => {
        const life = ask(level, steps);
        expect(life.usedSeconds).toBeGreaterThanOrEqual(0);
        expect(life.usedFraction).not.toBeNaN();
        if (life.leftSeconds === null) return;
        expect(life.leftSeconds).toBeGreaterThanOrEqual(0);
        if (level !== '6') {
          const fresh = ask(level, [], {
            history: [{ fromMs: monday, toMs: null, where: 'floor', ...life.climate }],
            nowMs: monday,
          });
          expect(life.leftSeconds).toBeLessThanOrEqual(
            (fresh.leftSeconds ?? Number.POSITIVE_INFINITY) + 1e-6,
          );
        }
      }),
    );
  });

  it('leaves less after one more hour on the floor in the same climate', () => {
    fc.assert(
      fc.property(
        levelArbitrary,
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 20, max: 35 }),
        (level, hours, celsius) => {
          const one = ask(level, [[hours, 'floor', celsius, 60]]);
          const two = ask(level, [[hours + 1, 'floor', celsius, 60]]);
          if (one.leftSeconds === null) expect(two.leftSeconds).toBeNull();
          else expect(two.leftSeconds).toBe(Math.max(0, one.leftSeconds - 3600));
        },
      ),
    );
  });
});

describe('floorLifeAt()', () => {
  it.each<[left: number, runOut: number, ends: boolean, over: number, reason: string]>([
    [10, 9, false, 1, 'lasts an hour longer'],
    [10, 10, false, 0, 'ends with it'],
    [10, 11, true, -1, 'ends an hour before'],
    [0, -5, true, 0, 'has ended already'],
  ] as const)(
    'says for %s h left and a run-out in %s h: ends %s, %s h over: %s',
    (left, runOut, ends, over) => {
      const moments = { nowMs: monday, untilMs: monday + runOut * hour };
      expect(floorLifeAt({ leftSeconds: left * 3600 }, moments)).toEqual({
        ends,
        marginSeconds: over * 3600,
      });
    },
  );

  it('never ends where there is no limit', () => {
    expect(floorLifeAt({ leftSeconds: null }, { nowMs: 0, untilMs: 1e15 })).toEqual({
      ends: false,
      marginSeconds: null,
    });
  });
});

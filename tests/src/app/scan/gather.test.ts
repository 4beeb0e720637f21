import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DEFAULT_GATHER_SETTINGS,
  EMPTY_GATHER,
  type GatherAnswer,
  gatherAnswer,
  gatherFrame,
  type SeenCode,
} from '../../../../src/app/scan/gather.ts';

const ENVELOPE_A = '[)>\u001e06\u001dPA-1\u001dQ4000\u001e\u0004';
const ENVELOPE_B = '[)>\u001e06\u001dPB-2\u001dQ4000\u001e\u0004';

function code(
  text: string,
  x: number,
  y: number,
  more: { width?: number; height?: number; format?: string } = {},
): SeenCode {
  const { width = 60, height = 60, format = 'DataMatrix' } = more;
  return {
    text,
    format,
    symbologyId: null,
    quad: [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ],
  };
}

const bar = (text: string, x: number, y: number, format = 'Code128') =>
  code(text, x, y, { width: 240, height: 40, format });

function answerAfter(frames: readonly (readonly SeenCode[])[]): GatherAnswer {
  return gatherAnswer(frames.reduce((state, codes) => gatherFrame(state, codes), EMPTY_GATHER));
}

const textsOf = (answer: GatherAnswer) =>
  answer.kind === 'several'
    ? answer.labels.map(({ codes }) => codes.map(({ text }) => text).sort())
    : answer.kind === 'nothing'
      ? []
      : answer.label.codes.map(({ text }) => text).sort();

describe('gatherAnswer()', () => {
  it('is complete at the second look at a whole two-dimensional code', () => {
    const one = [code(ENVELOPE_A, 100, 100)];
    expect(answerAfter([one]).kind).toBe('gathering');
    expect(answerAfter([one, one]).kind).toBe('complete');
  });

  it('gathers stripes that are read in different frames, and waits until nothing new comes', () => {
    const frames = [
      [bar('P1', 0, 0)],
      [bar('P1', 2, 1), bar('Q5', 2, 61)],
      [bar('Q5', 2, 61)],
      [bar('L9', 2, 121), bar('Q5', 2, 61)],
      [bar('L9', 2, 121), bar('P1', 2, 1)],
    ];
    expect(answerAfter(frames).kind).toBe('gathering');
    const quiet = [...frames, ...Array.from({ length: 4 }, () => [bar('P1', 0, 0)])];
    const answer = answerAfter(quiet);
    expect([answer.kind, textsOf(answer)]).toEqual(['complete', ['L9', 'P1', 'Q5']]);
  });

  it('carries a code along while the hand moves and turns', () => {
    // 100 pixels to the right within a frame; the first stripe is not read again.
    const answer = answerAfter([
      [bar('P1', 100, 100), bar('Q5', 100, 160)],
      [bar('P1', 100, 100), bar('Q5', 100, 160)],
      [bar('Q5', 200, 160)],
      ...Array.from({ length: 5 }, () => [bar('Q5', 200, 160)]),
    ]);
    expect([answer.kind, textsOf(answer)]).toEqual(['complete', ['P1', 'Q5']]);
    if (answer.kind === 'complete')
      expect(answer.label.codes.find(({ text }) => text === 'P1')?.quad[0].x).toBeCloseTo(200);
  });

  it('begins anew where a text that many labels carry jumps far: it may be another label', () => {
    const answer = answerAfter([
      [bar('P1', 100, 100), bar('Q5', 100, 160)],
      [bar('P1', 100, 100), bar('Q5', 100, 160)],
      ...Array.from({ length: 6 }, () => [bar('Q5', 400, 160)]),
    ]);
    expect([answer.kind, textsOf(answer)]).toEqual(['complete', ['Q5']]);
  });

  it('joins no codes that nothing ties: they may be of two labels, one after the other', () => {
    const first = [bar('P1', 100, 100), bar('Q5', 100, 160)];
    const second = [bar('SN2', 100, 220), bar('L9', 100, 280)];
    const answer = answerAfter([first, first, ...Array.from({ length: 6 }, () => second)]);
    expect([answer.kind, textsOf(answer)]).toEqual(['complete', ['L9', 'SN2']]);
    // A frame that holds a code of each ties them.
    const tied = answerAfter([
      first,
      first,
      second,
      second,
      [...first, ...second],
      ...Array.from({ length: 6 }, () => second),
    ]);
    expect([tied.kind, textsOf(tied)]).toEqual(['complete', ['L9', 'P1', 'Q5', 'SN2']]);
  });

  it('never mixes two labels that were seen whole, whichever codes a frame misses and however the hand trembles', () => {
    // Side by side and one above the other; quantity and lot are the same on both.
    const lots = ['Q5', 'L9'];
    const layouts = [
      { dx: 426, dy: 0, across: { x: 0, y: 70 } },
      { dx: 0, dy: 420, across: { x: 0, y: 60 } },
    ];
    const settings = { ...DEFAULT_GATHER_SETTINGS, claim: ({ text }: { text: string }) => text[0] ?? null };
    const chance = fc.double({ min: 0, max: 1, noNaN: true });
    const frame = fc.record({
      dropped: fc.array(chance, { minLength: 8, maxLength: 8 }),
      x: fc.integer({ min: -40, max: 40 }),
      y: fc.integer({ min: -25, max: 25 }),
    });
    fc.assert(
      fc.property(
        fc.constantFrom(...layouts),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.array(frame, { minLength: 1, maxLength: DEFAULT_GATHER_SETTINGS.staleFrames }),
        ({ dx, dy, across }, share, frames) => {
          let state = EMPTY_GATHER;
          let isAsking = false;
          const whole = { dropped: [1, 1, 1, 1, 1, 1, 1, 1], x: 0, y: 0 };
          for (const { dropped, x, y } of [whole, whole, ...frames]) {
            const codes = [0, 1].flatMap((label) =>
              [`P${label}`, ...lots, `S${label}`].map((text, at) =>
                bar(text, 300 + x + label * dx + at * across.x, 200 + y + label * dy + at * across.y),
              ),
            );
            state = gatherFrame(
              state,
              codes.filter((_, at) => (dropped[at] ?? 0) >= share),
              settings,
            );
            const answer = gatherAnswer(state, settings, isAsking);
            isAsking = answer.kind === 'several';
            const labels =
              answer.kind === 'several' ? answer.labels : answer.kind === 'nothing' ? [] : [answer.label];
            for (const { codes: own } of labels) {
              const owners = new Set(
                own
                  .map(({ text }) => text)
                  .filter((text) => /^[PS]/.test(text))
                  .map((text) => text[1]),
              );
              expect([...owners].length, own.map(({ text }) => text).join(' ')).toBeLessThanOrEqual(1);
            }
          }
        },
      ),
      { seed: 5, numRuns: 400 },
    );
  });

  it('asks when two labels are far apart, and numbers them from left to right', () => {
    const both = [code(ENVELOPE_B, 900, 100), code(ENVELOPE_A, 100, 100)];
    const answer = answerAfter([both, both]);
    expect([answer.kind, textsOf(answer)]).toEqual(['several', [[ENVELOPE_A], [ENVELOPE_B]]]);
  });

  it('asks when two labels touch but contradict each other', () => {
    const both = [code(ENVELOPE_A, 100, 100), code(ENVELOPE_B, 170, 100)];
    expect(answerAfter([both, both]).kind).toBe('several');
  });

  it('asks when the same text stands twice in view: two reels of one lot', () => {
    const both = [code(ENVELOPE_A, 100, 100), code(ENVELOPE_A, 180, 100)];
    expect(answerAfter([both, both]).kind).toBe('several');
  });

  it('gives stripes between two square codes to the nearer one', () => {
    const frame = [code(ENVELOPE_A, 100, 100), bar('1PX', 180, 110), code(ENVELOPE_B, 560, 100)];
    const answer = answerAfter([frame, frame, frame]);
    expect(textsOf(answer)).toEqual([['1PX', ENVELOPE_A].sort(), [ENVELOPE_B]]);
  });

  it.each(['Code39', 'Code128', 'ITF'])('takes %s only when two frames agree', (format) => {
    const doubtful = [bar('PART-1', 0, 0, format)];
    expect(answerAfter([doubtful]).kind).toBe('nothing');
    expect(answerAfter([doubtful, doubtful]).kind).toBe('gathering');
    const misread = answerAfter([doubtful, [bar('PART-7', 0, 0, format)], [], []]);
    expect(misread.kind).toBe('nothing');
  });

  it('takes PDF417 only when two frames agree, as its error correction can make up a text', () => {
    const good = [code(ENVELOPE_A, 0, 0, { width: 240, format: 'PDF417' })];
    const madeUp = [code('Yf\u0016\u001dP24', 0, 0, { width: 240, format: 'PDF417' })];
    expect(answerAfter([madeUp]).kind).toBe('nothing');
    expect(textsOf(answerAfter([good, madeUp, good]))).toEqual([ENVELOPE_A]);
  });

  it('is not complete from a frame that also holds a contradicting code', () => {
    const settings = {
      ...DEFAULT_GATHER_SETTINGS,
      claim: ({ text }: { text: string }) => (text.startsWith('1P') ? '1P' : null),
    };
    let state = EMPTY_GATHER;
    for (let frame = 0; frame < 8; frame++)
      state = gatherFrame(state, [bar('1PA', 0, 0), bar('1PB', 0, 60)], settings);
    expect(gatherAnswer(state, settings).kind).toBe('several');
  });

  it('keeps asking which of several is meant while more is read, and no longer than there are several', () => {
    const two = [bar('PA', 0, 0), bar('PB', 900, 600)];
    let state = EMPTY_GATHER;
    for (let frame = 0; frame < 12; frame++) state = gatherFrame(state, two);
    expect(gatherAnswer(state).kind).toBe('several');
    // A bar code is believed, and news, once two frames agree on it.
    const three = [...two, bar('Q100', 900, 660)];
    const more = gatherFrame(gatherFrame(state, three), three);
    expect(gatherAnswer(more).kind).toBe('gathering');
    expect(gatherAnswer(more, DEFAULT_GATHER_SETTINGS, true).kind).toBe('several');
    let one = more;
    for (let frame = 0; frame <= DEFAULT_GATHER_SETTINGS.staleFrames; frame++)
      one = gatherFrame(one, [bar('PA', 0, 0)]);
    expect(gatherAnswer(one, DEFAULT_GATHER_SETTINGS, true).kind).not.toBe('several');
  });

  it('takes a label as read though a ghost of a bar code is in every other frame', () => {
    const label = [bar('P22-0603-B', 0, 0), bar('Q4000', 0, 90)];
    let state = EMPTY_GATHER;
    for (let frame = 0; frame < 40; frame++)
      state = gatherFrame(state, frame % 2 === 0 ? label : [...label, bar(`GHOST-${frame}`, 0, 300)]);
    state = gatherFrame(state, label);
    expect(gatherAnswer(state)).toMatchObject({ kind: 'complete', label: { codes: label } });
  });

  it('starts afresh after the label was taken away', () => {
    const frames = [
      [code(ENVELOPE_A, 100, 100)],
      ...Array.from({ length: 6 }, () => []),
      [code(ENVELOPE_B, 100, 100)],
    ];
    expect(textsOf(answerAfter(frames))).toEqual([ENVELOPE_B]);
  });

  it('drops a code that the camera has moved away from', () => {
    const frames = [
      [bar('P1', 0, 0)],
      [bar('P1', 0, 0)],
      ...Array.from({ length: 20 }, () => [bar('P2', 900, 600)]),
    ];
    const answer = answerAfter(frames);
    expect([answer.kind, textsOf(answer)]).toEqual(['complete', ['P2']]);
  });
});

describe('half a label', () => {
  // Part and lot are not enough here; with a quantity it is all.
  const settings = {
    ...DEFAULT_GATHER_SETTINGS,
    settleFor: (codes: readonly { readonly text: string }[]) =>
      codes.some(({ text }) => text.startsWith('Q')) ? DEFAULT_GATHER_SETTINGS.settleFrames : null,
  };
  const heldBack = (frames: readonly (readonly SeenCode[])[]) =>
    gatherAnswer(
      frames.reduce((state, codes) => gatherFrame(state, codes, settings), EMPTY_GATHER),
      settings,
    );
  const part = [bar('P1', 0, 0)];

  it('waits however long nothing new comes, and says so once it is quiet', () => {
    expect(heldBack(Array.from({ length: 3 }, () => part))).toMatchObject({
      kind: 'gathering',
      isHalf: false,
    });
    for (const frames of [8, 50])
      expect(heldBack(Array.from({ length: frames }, () => part))).toMatchObject({
        kind: 'gathering',
        isHalf: true,
      });
  });

  it('is complete once the rest was read too', () => {
    const both = [bar('P1', 0, 0), bar('Q5', 0, 60)];
    const answer = heldBack([
      ...Array.from({ length: 20 }, () => part),
      ...Array.from({ length: 7 }, () => both),
    ]);
    expect([answer.kind, textsOf(answer)]).toEqual(['complete', ['P1', 'Q5']]);
  });
});

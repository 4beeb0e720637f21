import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkPayload } from '../../../../../../shared/floor/kinds.ts';
import { parseLabel } from '../../../../../../shared/labels/label.ts';
import { type LabelRule, labelRulesSchema } from '../../../../../../shared/labels/rules.ts';
import type { LabelTap } from '../../../../../../shared/labels/teach.ts';
import {
  beginTrial,
  createGatherer,
  dropCode,
  type LogLabel,
  moveEnd,
  nameSpan,
  rulesDocument,
  type Span,
  statedFields,
  type Teaching,
  tapToken,
  teach,
  tokensOf,
} from '../../../../../../src/app/screens/plant/labels/model.ts';
import { addCodes, firstTeaching } from '../../../../../../src/app/screens/plant/labels/session.ts';
import { beginStory, counted, tellPlant, verified } from '../../../../../shared/floor/story.ts';

const code = 'ART#22-0603-B#MENGE#4000#CH#A-4711#DC#2618';

/** Names stretches of the label's first code by their text. */
function teachingOf(
  wanted: Readonly<Partial<Record<LabelTap['field'], string>>>,
  more: Partial<Teaching> = {},
) {
  let taps: readonly LabelTap[] = [];
  for (const [field, text] of Object.entries(wanted)) {
    const from = code.indexOf(text);
    taps = nameSpan(taps, { code: 0, from, to: from + text.length }, field as LabelTap['field']);
  }
  return { ...firstTeaching, codes: [code], taps, name: 'Glen labels', ...more };
}

/** What a rule does to some labels, all taken at once. */
function tried(rule: LabelRule, others: readonly LabelRule[], labels: readonly LogLabel[]) {
  const trial = beginTrial(rule, others);
  trial.take(labels);
  return trial.outcome();
}

function ruleOf(teaching: Teaching, known: Parameters<typeof teach>[1] = null) {
  const taught = teach(teaching, known);
  if (taught.is !== 'rule') throw new Error(`Cannot go on as no rule came: ${taught.code}`);
  return taught;
}

const full = teachingOf({ part: '22-0603-B', quantity: '4000', lot: 'A-4711' });

describe('tokensOf()', () => {
  test('gives pieces and the marks between them', () => {
    expect(tokensOf('A-1 #Ü2;', 0, []).map(({ from, to, isPiece }) => [from, to, isPiece])).toEqual([
      [0, 3, true],
      [3, 5, false],
      [5, 7, true],
      [7, 8, false],
    ]);
  });

  test('keeps named stretches whole and never loses a character', () => {
    const tap = fc.tuple(fc.nat(20), fc.nat(20));
    fc.assert(
      fc.property(
        fc.string({ minLength: 1, maxLength: 20 }),
        fc.array(tap, { maxLength: 4 }),
        (text, spans) => {
          const fields = ['part', 'lot', 'quantity', 'reel'] as const;
          let taps: readonly LabelTap[] = [];
          for (const [at, [a, b]] of spans.entries()) {
            const [from, to] = [Math.min(a, b), Math.max(a, b) + 1];
            if (to <= text.length) taps = nameSpan(taps, { code: 0, from, to }, fields[at] ?? 'part');
          }
          const tokens = tokensOf(text, 0, taps);
          expect(tokens.map(({ from, to }) => text.slice(from, to)).join('')).toBe(text);
          expect(tokens.filter(({ field }) => field !== null)).toHaveLength(taps.length);
        },
      ),
    );
  });
});

describe('tapping', () => {
  const [art, , part] = tokensOf(code, 0, []);
  if (!art || !part) throw new Error('no tokens');

  test('a second piece stretches the selection, the same one ends it', () => {
    const first = tapToken(null, art);
    expect(first).toEqual({ code: 0, from: 0, to: 3 });
    expect(tapToken(first, part)).toEqual({ code: 0, from: 0, to: 13 });
    expect(tapToken(first, art)).toBeNull();
  });

  test('a piece of another code, or one that has a name, begins anew', () => {
    const first = tapToken(null, art);
    expect(tapToken(first, { ...part, code: 1 })).toEqual({ code: 1, from: 4, to: 13 });
    expect(tapToken(first, { ...part, field: 'part' })).toEqual({ code: 0, from: 4, to: 13 });
  });

  test.each([
    ['from', -1, { from: 4, to: 13 }, { from: 3, to: 13 }],
    ['to', 1, { from: 4, to: 13 }, { from: 4, to: 14 }],
    ['from', -1, { from: 0, to: 3 }, { from: 0, to: 3 }],
    ['to', 1, { from: 38, to: 42 }, { from: 38, to: 42 }],
    ['from', 1, { from: 4, to: 5 }, { from: 4, to: 5 }],
    ['to', -1, { from: 4, to: 5 }, { from: 4, to: 5 }],
  ] as const)('`moveEnd()` moves %s by %i within the code', (end, by, span, wanted) => {
    const selected: Span = { code: 0, ...span };
    expect(moveEnd(selected, code, { end, by })).toEqual({ code: 0, ...wanted });
  });

  test('`nameSpan()` lets a name be used once and pieces not overlap', () => {
    const one = nameSpan([], { code: 0, from: 4, to: 13 }, 'part');
    expect(nameSpan(one, { code: 0, from: 20, to: 24 }, 'part')).toEqual([
      { code: 0, from: 20, to: 24, field: 'part' },
    ]);
    expect(nameSpan(one, { code: 0, from: 10, to: 15 }, 'lot')).toEqual([
      { code: 0, from: 10, to: 15, field: 'lot' },
    ]);
    expect(nameSpan(one, { code: 1, from: 4, to: 13 }, 'lot')).toHaveLength(2);
    expect(nameSpan(one, { code: 0, from: 4, to: 13 }, null)).toEqual([]);
  });

  test('`dropCode()` takes a code with its names off and keeps the others', () => {
    const taps: readonly LabelTap[] = [
      { code: 0, from: 0, to: 1, field: 'part' },
      { code: 2, from: 0, to: 1, field: 'lot' },
    ];
    expect(dropCode(taps, 0)).toEqual([{ code: 1, from: 0, to: 1, field: 'lot' }]);
  });

  test('`addCodes()` takes each code once', () => {
    expect(addCodes({ ...firstTeaching, codes: ['A'] }, ['A', ' B ', 'B', '']).codes).toEqual(['A', 'B']);
  });
});

describe('teach()', () => {
  test('makes a rule that reads this label and others of its kind', () => {
    const { rule, reading } = ruleOf(full);
    expect(reading).toMatchObject({ part: '22-0603-B', quantity: 4000, lot: 'A-4711' });
    const other = parseLabel(['ART#X9#MENGE#12#CH#0815#DC#2601'], { rules: [rule] });
    expect(other).toMatchObject({ part: 'X9', quantity: 12, lot: '0815', rules: ['Glen labels'] });
  });

  test('says what is missing', () => {
    expect(teach({ ...full, taps: [] }, null)).toEqual({ is: 'missing', code: 'nothing-tapped' });
    const whole = nameSpan([], { code: 0, from: 0, to: code.length }, 'part');
    expect(teach({ ...full, taps: whole }, null)).toEqual({ is: 'missing', code: 'too-loose' });
  });

  test('reads a date as the person says that it is printed', () => {
    const dated = teachingOf({ part: '22-0603-B', dateCode: '2618' }, { dates: { dateCode: 'YYWW' } });
    expect(ruleOf(dated).reading.made).toEqual({ year: 2026, week: 18 });
    expect(statedFields(ruleOf(dated).reading)).toContainEqual({
      field: 'dateCode',
      value: '2618 (2026-W18)',
    });
  });

  test('a new version keeps the examples that it still reads and counts those that it does not', () => {
    const first = ruleOf(full).rule;
    const second = ruleOf({ ...full, codes: [code.replace('4000', '5000')] }, first);
    expect(second.rule.version).toBe(2);
    expect(second.rule.examples).toHaveLength(2);
    expect(second.lostExamples).toBe(0);
    const other = ruleOf(
      {
        ...full,
        codes: [code.replace('MENGE', 'STUECK')],
        taps: nameSpan([], { code: 0, from: 4, to: 13 }, 'part'),
      },
      first,
    );
    expect(other.lostExamples).toBe(1);
    expect(other.rule.examples).toHaveLength(1);
  });

  test('makes what the log takes and what the command line reads', () => {
    const { rule } = ruleOf(full);
    const payload = { rule: rule.rule, version: rule.version, definition: rule, by: 'ana' };
    expect(() => checkPayload('label.taught', payload)).not.toThrow();
    expect(labelRulesSchema.safeParse(JSON.parse(rulesDocument([rule]))).success).toBe(true);
  });
});

describe('the labels in the log', () => {
  const storyWith = (...codes: readonly (readonly [string, string])[]) => {
    const story = beginStory();
    tellPlant(story);
    for (const [text, part] of codes)
      story.tell(
        'reel.verified',
        verified('M1-F-001', part, { codes: [text], lot: null, supplierPart: null }),
      );
    story.tell('panels.counted', counted('run-1', 1));
    return story.entries;
  };
  const gather = (entries: ReturnType<typeof storyWith>) => {
    const gatherer = createGatherer();
    gatherer.take(entries);
    return gatherer.labels();
  };

  test('are gathered once each, all of them, the newest last', () => {
    const entries = storyWith(['A', 'R-1'], ['B', 'R-2'], ['A', 'R-3'], ['C', 'R-4']);
    expect(gather(entries).map(({ codes, part }) => [codes[0], part])).toEqual([
      ['B', 'R-2'],
      ['A', 'R-3'],
      ['C', 'R-4'],
    ]);
    const many = Array.from({ length: 6000 }, (_, at) => [`NR${at}`, `R-${at}`] as const);
    expect(gather(storyWith(...many))).toHaveLength(6000);
  });

  test('show what the rule would read of them, contradictions first', () => {
    const labels = gather(
      storyWith(
        ['ART#X9#MENGE#12#CH#0815#DC#2601', 'X9'],
        ['PR-100', 'R-100'],
        ['ART#X7#MENGE#12#CH#0815#DC#2601', 'Y7'],
      ),
    );
    const { shown } = tried(ruleOf(full).rule, [], labels);
    expect(shown.map(({ reading, isOtherwise }) => [reading.part, isOtherwise])).toEqual([
      ['X7', true],
      ['X9', false],
    ]);
  });
});

describe('beginTrial()', () => {
  const { rule } = ruleOf(full);
  const label = (codes: string): LogLabel => ({
    codes: [codes],
    part: null,
    supplierPart: null,
    lot: null,
  });
  const labels = [label('ART#X7#MENGE#5#CH#B-1#DC#2618'), label(code), label('SLOT-7')];
  /** The same labels with lot and part named the other way round. */
  const swapped = ruleOf(teachingOf({ lot: '22-0603-B', part: 'A-4711' }, { name: 'Swapped' })).rule;

  test('counts what it fits, and names no other rule where none meets it', () => {
    const trial = tried(rule, [], labels);
    expect([trial.labels, trial.fits, trial.otherwise, trial.collisions]).toEqual([3, 2, 0, []]);
  });

  test('counts what it says anew and what it contradicts, over all labels, and shows the contradictions first', () => {
    const known = (at: number, part: string | null) => ({
      ...label(`ART#X7#MENGE#5#CH#B-${at}#DC#2618`),
      part,
      lot: `B-${at}`,
    });
    const many = Array.from({ length: 700 }, (_, at) => known(at, at < 3 ? 'OTHER' : at < 10 ? null : 'X7'));
    const trial = tried(rule, [], [...many, label('SLOT-7')]);
    expect(trial).toMatchObject({ labels: 701, fits: 700, anew: 7, otherwise: 3 });
    expect(trial.shown.map(({ isOtherwise }) => isOtherwise)).toEqual([
      ...Array(3).fill(true),
      ...Array(5).fill(false),
    ]);
    const bitByBit = beginTrial(rule, []);
    for (let at = 0; at < many.length; at += 100) bitByBit.take(many.slice(at, at + 100));
    bitByBit.take([label('SLOT-7')]);
    expect(bitByBit.outcome()).toEqual(trial);
  });

  test('names a rule that fits the same labels, and how many the two read differently', () => {
    const twin = { ...rule, rule: 'Twin' };
    expect(tried(rule, [twin, swapped], labels).collisions).toEqual([
      { rule: 'Twin', labels: 2, disagreeing: 0 },
      { rule: 'Swapped', labels: 2, disagreeing: 2 },
    ]);
  });

  test('leaves out the version that it takes the place of, and rules that fit other labels', () => {
    const older = { ...swapped, rule: rule.rule };
    const far = { ...rule, rule: 'Far', codes: [{ pieces: [{ text: 'SLOT-7' }] }] };
    expect(tried(rule, [older, far], labels).collisions).toEqual([]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLabel } from '../../../shared/labels/label.ts';
import { fitRule, isFit, matchPattern } from '../../../shared/labels/rule-fit.ts';
import { type LabelRule, labelRuleSchema, labelRulesSchema } from '../../../shared/labels/rules.ts';
import {
  deriveRule,
  failedExamples,
  type LabelTap,
  readsAsWanted,
  tryRule,
  variedLabels,
} from '../../../shared/labels/teach.ts';

/** Taps every occurrence given as [code, text, field]. */
function taps(
  codes: readonly string[],
  wanted: readonly (readonly [number, string, LabelTap['field']])[],
): LabelTap[] {
  return wanted.map(([code, text, field]) => {
    const from = codes[code]?.indexOf(text) ?? -1;
    return { code, from, to: from + text.length, field };
  });
}

function taught(codes: readonly string[], wanted: Parameters<typeof taps>[1]): LabelRule {
  const rule = deriveRule(codes, taps(codes, wanted), { rule: 'brae-1' });
  if (!rule.ok) throw new Error(`Cannot go on as no rule came: ${rule.error.code}`);
  return rule.value;
}

describe('deriveRule()', () => {
  const codes = ['ART#CU-77/00:12#MENGE#4000#CH#A-4711#W26/18'];
  const rule = taught(codes, [
    [0, 'CU-77/00:12', 'part'],
    [0, '4000', 'quantity'],
    [0, 'A-4711', 'lot'],
  ]);

  it('makes a rule that reads the taught label and others of its kind', () => {
    expect(parseLabel(codes, { rules: [rule] })).toMatchObject({
      part: 'CU-77/00:12',
      quantity: 4000,
      lot: 'A-4711',
      rules: ['brae-1'],
    });
    expect(parseLabel(['ART#X9#MENGE#12#CH#0815#W01/02'], { rules: [rule] })).toMatchObject({
      part: 'X9',
      quantity: 12,
      lot: '0815',
    });
  });

  it('does not fit labels that lack its fixed text', () => {
    const trials = tryRule(rule, [codes, ['ART#X9#STK#12#CH#0815#W01/02'], ['PCU-77', 'Q4000']]);
    expect(trials.map(({ reading }) => reading?.part ?? null)).toEqual(['CU-77/00:12', null, null]);
  });

  it('keeps the label as its example, and passes its own check and schema', () => {
    expect(failedExamples(rule)).toEqual([]);
    expect(labelRuleSchema.parse(JSON.parse(JSON.stringify(rule)))).toEqual(rule);
    const wrong = { ...rule, examples: [{ codes, reads: { part: 'X' } }] };
    expect(failedExamples(wrong)).toEqual([
      { example: 0, found: { part: 'CU-77/00:12', quantity: '4000', lot: 'A-4711' } },
    ]);
    const foreign = { ...rule, examples: [{ codes: ['X'], reads: {} }] };
    expect(failedExamples(foreign)).toEqual([{ example: 0, found: null }]);
  });

  it('fixes lengths where no mark parts the pieces', () => {
    const packed = ['KX600160004000'];
    const fixed = taught(packed, [
      [0, 'X60016', 'part'],
      [0, '4000', 'quantity'],
    ]);
    expect(parseLabel(packed, { rules: [fixed] })).toMatchObject({ part: 'X60016', quantity: 4000 });
    expect(parseLabel(['KX600160012345'], { rules: [fixed] })).toMatchObject({
      part: 'X60016',
      quantity: 2345,
    });
    expect(parseLabel(['KX60016000400'], { rules: [fixed] }).rules).toEqual([]);
  });

  it('reads a bare part number that begins with P, told apart by its neighbour', () => {
    const codesOfBoth = ['P2103-A', '4000'];
    const both = taught(codesOfBoth, [
      [0, 'P2103-A', 'part'],
      [1, '4000', 'quantity'],
    ]);
    expect(parseLabel(['4000', 'P2103-A'], { rules: [both] })).toMatchObject({
      part: 'P2103-A',
      quantity: 4000,
    });
  });

  it('reads a date in the format that the site names', () => {
    const dated = taught(
      ['D:110526;P=X1'],
      [
        [0, '110526', 'dateCode'],
        [0, 'X1', 'part'],
      ],
    );
    expect(parseLabel(['D:110526;P=X1'], { rules: [dated] }).made).toBeNull();
    const pieces = dated.codes[0]?.pieces.map((piece) =>
      'takes' in piece && piece.field === 'dateCode' ? { ...piece, date: 'DDMMYY' as const } : piece,
    );
    const named = { ...dated, version: 2, codes: [{ pieces: pieces ?? [] }] };
    expect(parseLabel(['D:110526;P=X1'], { rules: [named] }).made).toEqual({ year: 2026, week: 20 });
  });

  it.each([
    ['nothing-tapped', ['A-1'], []],
    ['tap-outside', ['A-1'], [{ code: 0, from: 0, to: 9, field: 'part' }]],
    ['tap-outside', ['A-1'], [{ code: 1, from: 0, to: 1, field: 'part' }]],
    ['tap-outside', ['A-1'], [{ code: 0, from: 2, to: 2, field: 'part' }]],
    ['tap-outside', ['A 1'], [{ code: 0, from: 1, to: 2, field: 'part' }]],
    [
      'taps-overlap',
      ['A-1'],
      [
        { code: 0, from: 0, to: 2, field: 'part' },
        { code: 0, from: 1, to: 3, field: 'lot' },
      ],
    ],
    [
      'field-tapped-twice',
      ['A-1'],
      [
        { code: 0, from: 0, to: 1, field: 'part' },
        { code: 0, from: 2, to: 3, field: 'part' },
      ],
    ],
    ['too-loose', ['A-1'], [{ code: 0, from: 0, to: 3, field: 'part' }]],
    ['too-long', ['A-'.repeat(100)], [{ code: 0, from: 0, to: 1, field: 'part' }]],
  ] as const)('answers %s for %j with %j', (code, labelCodes, tapped) => {
    const rule = deriveRule(labelCodes, tapped, { rule: 'r' });
    expect(rule).toMatchObject({ ok: false, error: { code } });
  });

  it('makes a rule that reads any taught label as it was tapped', () => {
    const token = fc.stringMatching(/^[A-Z0-9-]{1,8}$/);
    const mark = fc.constantFrom('#', ';', '/', ' ', '--', '');
    fc.assert(
      fc.property(
        token,
        mark,
        token,
        mark,
        token,
        fc.constantFrom('', 'X:', 'L'),
        (a, m1, b, m2, c, front) => {
          const code = `${front}${a}${m1}${b}${m2}${c}`;
          let at = front.length;
          const tapped: LabelTap[] = [{ code: 0, from: at, to: at + a.length, field: 'part' }];
          at += a.length + m1.length + b.length + m2.length;
          tapped.push({ code: 0, from: at, to: at + c.length, field: 'lot' });
          const rule = deriveRule([code], tapped, { rule: 'r' });
          if (!rule.ok) {
            expect(rule.error.code).toBe('too-loose');
            return;
          }
          expect(failedExamples(rule.value)).toEqual([]);
          expect(parseLabel([code], { rules: [rule.value] })).toMatchObject({ part: a, lot: c });
        },
      ),
    );
  });
});

describe('a rule reads the next reel', () => {
  it.each([
    ['a longer part behind a word', ['NR CU77 LOT A1'], 'NR CU7765 LOT B12', { part: 'CU7765', lot: 'B12' }],
    [
      'letters where there were digits',
      ['NR:4711;CH:2618'],
      'NR:47A;CH:26Q18',
      { part: '47A', lot: '26Q18' },
    ],
    ['a mark in a part that had none', ['NR:CU77;CH:A1'], 'NR:CU-77.5;CH:A1', { part: 'CU-77.5', lot: 'A1' }],
    [
      'a part behind a prefix that runs on',
      ['ARTCU77;CHA1'],
      'ARTMK401;CHB77',
      { part: 'MK401', lot: 'B77' },
    ],
  ] as const)('with %s', (_, codes, next, reads) => {
    const [part, lot] = codes[0].includes('CU77') ? ['CU77', 'A1'] : ['4711', '2618'];
    const rule = taught(codes, [
      [0, part, 'part'],
      [0, lot, 'lot'],
    ]);
    expect(parseLabel(codes, { rules: [rule] })).toMatchObject({ part, lot });
    expect(parseLabel([next], { rules: [rule] })).toMatchObject({ ...reads, rules: ['brae-1'] });
  });

  it('fixes a length only between pieces that run into each other', () => {
    const rule = taught(
      ['KCU77004000#A1'],
      [
        [0, 'CU77', 'part'],
        [0, '4000', 'quantity'],
        [0, 'A1', 'lot'],
      ],
    );
    const lengths = rule.codes[0]?.pieces.map((piece) =>
      'takes' in piece ? (piece.length ?? null) : piece.text,
    );
    expect(lengths).toEqual(['K', 4, 2, 4, '#', null]);
  });

  it('shows three labels made up from the taught one, and which of them it would not read', () => {
    const codes = ['NR:CU77;STK:4000;CH:A1'];
    const tapped = taps(codes, [
      [0, 'CU77', 'part'],
      [0, '4000', 'quantity'],
      [0, 'A1', 'lot'],
    ]);
    const open = taught(codes, [
      [0, 'CU77', 'part'],
      [0, '4000', 'quantity'],
      [0, 'A1', 'lot'],
    ]);
    const varied = variedLabels(open, codes, tapped);
    expect(varied.map((each) => each.codes)).toEqual([
      ['NR:CU777;STK:40000;CH:A17'],
      ['NR:CU7;STK:400;CH:A'],
      ['NR:CU44;STK:7333;CH:AB'],
    ]);
    expect(varied.map(readsAsWanted)).toEqual([true, true, true]);
    expect(varied[0]?.reads).toEqual({ part: 'CU777', quantity: '40000', lot: 'A17' });

    const packed = ['KCU774000'];
    const fixed = taught(packed, [
      [0, 'CU77', 'part'],
      [0, '4000', 'quantity'],
    ]);
    const tight = variedLabels(
      fixed,
      packed,
      taps(packed, [
        [0, 'CU77', 'part'],
        [0, '4000', 'quantity'],
      ]),
    );
    expect(tight.map(readsAsWanted)).toEqual([false, false, true]);
  });
});

describe('rules', () => {
  const rule: LabelRule = {
    rule: 'r',
    version: 1,
    codes: [
      {
        pieces: [
          { text: 'A:' },
          { takes: 'any', field: 'part' },
          { text: ';' },
          { takes: 'digits', field: 'quantity' },
        ],
      },
    ],
  };

  it('`matchPattern()` says which piece did not fit, and where', () => {
    const [pattern] = rule.codes;
    if (pattern === undefined) throw new Error('Cannot go on as the rule has no pattern');
    expect(matchPattern(pattern, 'B:X;5')).toEqual({ piece: 0, at: 0 });
    expect(matchPattern(pattern, 'A:X')).toEqual({ piece: 1, at: 2 });
    expect(matchPattern(pattern, 'A:X;Y')).toEqual({ piece: 3, at: 4 });
    expect(matchPattern(pattern, 'A:X;5Y')).toEqual({ piece: 4, at: 5 });
    expect(isFit(matchPattern(pattern, 'A:X;5'))).toBe(true);
  });

  it('`fitRule()` finds the only way to give each pattern a code, and refuses to choose between two', () => {
    const pair: LabelRule = {
      rule: 'pair',
      version: 1,
      codes: [
        { pieces: [{ takes: 'any', field: 'part' }] },
        { pieces: [{ takes: 'digits', field: 'quantity' }] },
      ],
    };
    const only = [
      { field: 'part', value: 'A-1', date: undefined },
      { field: 'quantity', value: '4000', date: undefined },
    ];
    expect(fitRule(pair, ['A-1', '4000'])).toMatchObject({ named: only, unclear: false });
    expect(fitRule(pair, ['4000', 'A-1'])).toMatchObject({ named: only, unclear: false });
    expect(fitRule(pair, ['4000', '5000'])).toMatchObject({ named: [], unclear: true });
    const reading = parseLabel(['4000', '5000'], { rules: [pair] });
    expect(reading.part).toBeNull();
    expect(reading.warnings[0]).toEqual({ code: 'rule-unclear', rule: 'pair' });
  });

  it('`fitRule()` uses each code once', () => {
    const twice = {
      ...rule,
      codes: [
        { pieces: [{ takes: 'any' as const, field: 'part' as const }] },
        { pieces: [{ takes: 'any' as const, field: 'lot' as const }] },
      ],
    };
    expect(fitRule(twice, ['A'])).toBeNull();
    expect(fitRule(twice, ['A', 'B'])?.unclear).toBe(true);
  });

  it('leave standard labels to the standard, unless they were made for envelopes', () => {
    const any: LabelRule = { rule: 'any', version: 1, codes: [{ pieces: [{ takes: 'any', field: 'lot' }] }] };
    const envelope = '[)>\x1e06\x1dPX\x1dQ5\x1e\x04';
    expect(parseLabel([envelope], { rules: [any] })).toMatchObject({ part: 'X', lot: null, rules: [] });
    const own: LabelRule = {
      rule: 'own',
      version: 1,
      codes: [
        {
          pieces: [
            { text: '[)>\x1e06\x1dP' },
            { takes: 'any', field: 'supplierPart' },
            { text: '\x1d' },
            { takes: 'any' },
          ],
        },
      ],
    };
    expect(parseLabel([envelope], { rules: [own] })).toMatchObject({
      part: null,
      supplierPart: 'X',
      rules: ['own'],
    });
  });

  it('that disagree leave the field open and say so', () => {
    const other: LabelRule = { ...rule, rule: 's', codes: [{ pieces: [{ takes: 'any', field: 'part' }] }] };
    const reading = parseLabel(['A:X;5'], { rules: [rule, other] });
    expect(reading.part).toBeNull();
    expect(reading.quantity).toBe(5);
    expect(reading.warnings).toContainEqual({ code: 'conflict', field: 'part', values: ['X', 'A:X;5'] });
  });

  it('read the other codes of the label as ever', () => {
    expect(parseLabel(['A:X;5', '1TL7'], { rules: [rule] })).toMatchObject({
      part: 'X',
      quantity: 5,
      lot: 'L7',
    });
  });

  it.each([
    ['a piece that nothing is left for', [{ takes: 'any' }, { takes: 'digits', field: 'lot' }]],
    ['no named piece', [{ text: 'A' }]],
    [
      'the same name twice',
      [{ takes: 'digits', field: 'lot' }, { text: ';' }, { takes: 'digits', field: 'lot' }],
    ],
    ['an unknown key', [{ takes: 'digits', field: 'lot', regex: '(a+)+' }]],
    ['an unknown field', [{ takes: 'digits', field: 'colour' }]],
    ['no piece', []],
  ])('are refused for %s', (_, pieces) => {
    expect(labelRulesSchema.safeParse([{ rule: 'r', version: 1, codes: [{ pieces }] }]).success).toBe(false);
  });

  it('cost one walk over a long code', () => {
    const pieces = Array.from({ length: 25 }, () => [{ takes: 'any' as const }, { text: 'A' }]).flat();
    const slow: LabelRule = {
      rule: 'slow',
      version: 1,
      codes: [{ pieces: [...pieces, { text: '!' }, { takes: 'any', field: 'lot' }] }],
    };
    expect(parseLabel(['A'.repeat(300_000)], { rules: [slow] }).rules).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { parseLabel } from '../../../../../../shared/labels/label.ts';
import type { LabelRule } from '../../../../../../shared/labels/rules.ts';
import { readRulesFile, rulesToTake } from '../../../../../../src/app/screens/plant/labels/import.ts';
import { rulesDocument } from '../../../../../../src/app/screens/plant/labels/model.ts';

const label = 'ART#22-0603-B#CH#A-4711';
const rule: LabelRule = {
  // Not in the schema's order: a fold may have put the facts together otherwise.
  version: 2,
  rule: 'cells',
  codes: [
    {
      pieces: [
        { text: 'ART#' },
        { field: 'part', takes: 'any' },
        { text: '#CH#' },
        { takes: 'any', field: 'lot' },
      ],
    },
  ],
  examples: [{ codes: [label], reads: { part: '22-0603-B', lot: 'A-4711' } }],
};

function statuses(text: string, known: readonly LabelRule[]) {
  const read = readRulesFile(text, known);
  return read.ok ? read.rules.map(({ status }) => status) : read.problem;
}

describe('a file of rules', () => {
  test('that one tablet saved is taken in whole by another, and reads there', () => {
    const read = readRulesFile(rulesDocument([rule]), []);
    expect(read.ok && read.rules[0]?.status).toBe('new');
    const rules = read.ok ? rulesToTake(read.rules) : [];
    expect(rules).toEqual([rule]);
    expect(parseLabel([label], { rules })).toMatchObject({ part: '22-0603-B', lot: 'A-4711' });
  });

  test('changes nothing where it came from', () => {
    expect(statuses(rulesDocument([rule]), [rule])).toEqual(['same']);
  });

  test('counts by versions, and never changes the approved one in silence', () => {
    expect(statuses(rulesDocument([{ ...rule, version: 3 }]), [rule])).toEqual(['newer']);
    expect(statuses(rulesDocument([{ ...rule, version: 1 }]), [rule])).toEqual(['older']);
    const other = { ...rule, note: 'another' };
    expect(statuses(rulesDocument([other]), [rule])).toEqual(['differs']);
    const read = readRulesFile(rulesDocument([other]), [rule]);
    expect(read.ok && rulesToTake(read.rules)).toEqual([]);
  });

  test('keeps a rule out that does not read its own examples', () => {
    const examples = [{ codes: [label], reads: { part: 'X' } }];
    expect(statuses(rulesDocument([{ ...rule, examples }]), [])).toEqual(['fails']);
  });

  test.each([
    ['[{"rule":', { code: 'not-json' }],
    ['{"rule": "cells"}', { code: 'no-list' }],
    ['[]', { code: 'empty' }],
    [rulesDocument([rule, rule]), { code: 'twice', rule: 'cells' }],
    [
      JSON.stringify([rule, { ...rule, rule: 'b', version: 0 }]),
      { code: 'not-a-rule', rule: 'b', at: 'version' },
    ],
    [
      JSON.stringify([rule, { version: 1, codes: rule.codes }]),
      { code: 'not-a-rule', rule: '2', at: 'rule' },
    ],
  ])('is refused whole with the place: %s', (text, problem) => {
    expect(statuses(text, [])).toEqual(problem);
  });
});

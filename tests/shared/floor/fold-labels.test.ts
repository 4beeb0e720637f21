import { describe, expect, test } from 'vitest';
import { siteRules } from '../../../shared/floor/fold-labels.ts';
import { parseLabel } from '../../../shared/labels/label.ts';
import type { LabelRule } from '../../../shared/labels/rules.ts';
import { beginStory, type Story } from './story.ts';

const ruleOf = (rule: string, version: number, mark: string): LabelRule => ({
  rule,
  version,
  codes: [{ pieces: [{ text: mark }, { takes: 'any', field: 'part' }] }],
});
const teach = (story: Story, rule: LabelRule, telling: Parameters<Story['tell']>[2] = {}) =>
  story.tell(
    'label.taught',
    { rule: rule.rule, version: rule.version, definition: rule, by: 'ana' },
    telling,
  );
const partOf = (story: Story, text: string) => parseLabel([text], { rules: siteRules(story.floor()) }).part;

describe('rules for labels', () => {
  test('read labels from the moment they are taught, until they are withdrawn', () => {
    const story = beginStory();
    expect(partOf(story, 'ART#BW-1')).toBeNull();
    teach(story, ruleOf('glen', 1, 'ART#'));
    expect(partOf(story, 'ART#BW-1')).toBe('BW-1');
    story.tell('label.withdrawn', { rule: 'glen', reason: 'wrong', by: 'ana' });
    expect(partOf(story, 'ART#BW-1')).toBeNull();
    expect(story.floor().labelRules.size).toBe(0);
  });

  test('a later version takes the place of an earlier one, also where the earlier comes in late', () => {
    const story = beginStory();
    teach(story, ruleOf('glen', 1, 'ART#'), { at: 10 });
    teach(story, ruleOf('glen', 3, 'P!'), { at: 20 });
    teach(story, ruleOf('glen', 2, 'X!'), { tablet: 'T2', at: 30 });
    expect(siteRules(story.floor()).map(({ version }) => version)).toEqual([3]);
    expect(partOf(story, 'P!BW-1')).toBe('BW-1');
    expect(partOf(story, 'X!BW-1')).toBeNull();
  });

  test('two tablets that taught the same version end with the later one', () => {
    const story = beginStory();
    teach(story, ruleOf('glen', 1, 'ART#'), { tablet: 'T2', at: 20 });
    teach(story, ruleOf('glen', 1, 'P!'), { tablet: 'T1', at: 10 });
    expect(partOf(story, 'ART#BW-1')).toBe('BW-1');
  });

  test('stand in the order of their names', () => {
    const story = beginStory();
    for (const name of ['moor', 'fell', 'glen']) teach(story, ruleOf(name, 1, `${name}:`));
    expect(siteRules(story.floor()).map(({ rule }) => rule)).toEqual(['fell', 'glen', 'moor']);
  });
});

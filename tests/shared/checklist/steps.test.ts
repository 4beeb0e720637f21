import { describe, expect, test } from 'vitest';
import { shippedChecklists } from '../../../shared/checklist/shipped.ts';
import { type ChangeFacts, checkTemplate, inLanguage, isAsked } from '../../../shared/checklist/steps.ts';
import {
  type ChecklistStep,
  type ChecklistTemplate,
  checklistPurposes,
  checklistStepSchema,
} from '../../../shared/floor/checklist.ts';
import { makeStep } from './step.ts';

const nothing: ChangeFacts = {
  sideChanges: false,
  stencilChanges: false,
  productChanges: false,
  programChanges: false,
};

const templateOf = (...steps: ChecklistStep[]): ChecklistTemplate => ({
  template: 't',
  version: 1,
  purpose: 'changeover',
  title: { en: 'T' },
  steps,
});

describe('isAsked()', () => {
  test.each([
    ['always', null],
    ['side-changes', 'sideChanges'],
    ['stencil-changes', 'stencilChanges'],
    ['product-changes', 'productChanges'],
    ['program-changes', 'programChanges'],
  ] as const)('asks a step of condition %s where %s says so', (condition, fact) => {
    const step = makeStep('a', { condition });
    expect(isAsked(step, nothing)).toBe(fact === null);
    if (fact !== null) expect(isAsked(step, { ...nothing, [fact]: true })).toBe(true);
  });
});

describe('inLanguage()', () => {
  test.each<[Record<string, string>, string, string, string]>([
    [{ en: 'a', es: 'b' }, 'es', 'b', 'its own language'],
    [{ en: 'a' }, 'es', 'a', 'English where it is missing'],
    [{ fr: 'c', en: 'a' }, 'es', 'a', 'English wherever it stands'],
    [{ fr: 'c' }, 'es', 'c', 'what there is where English is missing too'],
    [{ pl: 'd', fr: 'c' }, 'es', 'c', 'the first by code, however they stand in the log'],
    [{ es: ' ', en: '', fr: 'c' }, 'es', 'c', 'nothing blank where another is written'],
    [{}, 'es', '', 'nothing where there is nothing'],
  ])('gives of %j in %s %j: %s', (texts, language, expected, _why) => {
    expect(inLanguage(texts, language)).toBe(expected);
  });
});

describe('checkTemplate()', () => {
  test.each([
    ['no-title', { ...templateOf(makeStep('a')), title: { en: ' ' } }],
    ['no-steps', templateOf()],
    ['step-twice', templateOf(makeStep('a'), makeStep('a'))],
    ['no-text', templateOf(makeStep('a', { text: { en: '  ', es: '' } }))],
    ['limits-crossed', templateOf(makeStep('a', { kind: 'measure', least: 3, most: 2, unit: 'mm' }))],
    ['no-unit', templateOf(makeStep('a', { kind: 'measure', unit: ' ' }))],
    ['no-options', templateOf(makeStep('a', { kind: 'choice', options: ['only'] }))],
    ['nothing-known', templateOf(makeStep('a', { kind: 'known' }))],
    ['signatures-differ', templateOf(makeStep('a', { kind: 'sign', signatures: 2, roles: ['lead'] }))],
    ['right-not-listed', templateOf(makeStep('a', { kind: 'choice', options: ['x', 'y'], right: ['z'] }))],
  ] as const)('finds %s', (code, template) => {
    expect(checkTemplate(template).map((fault) => fault.code)).toEqual([code]);
  });

  test('finds nothing where a text is in any one language', () => {
    for (const text of [{ hu: 'Saját lépés' }, { en: '', de: 'Ein Schritt' }])
      expect(checkTemplate(templateOf(makeStep('a', { text })))).toEqual([]);
  });

  test('finds nothing where limits meet and one of the options is right', () => {
    const measure = makeStep('a', { kind: 'measure', least: 2, most: 2, unit: 'mm' });
    const choice = makeStep('b', { kind: 'choice', options: ['x', 'y'], right: ['y'] });
    expect(checkTemplate(templateOf(measure, choice))).toEqual([]);
  });
});

describe('shippedChecklists', () => {
  test('has one usable template for each purpose but `other`', () => {
    expect(shippedChecklists.map((each) => each.purpose).sort()).toEqual(
      checklistPurposes.filter((purpose) => purpose !== 'other').sort(),
    );
    for (const template of shippedChecklists) expect(checkTemplate(template), template.template).toEqual([]);
  });

  test('can be written to the log as it is', () => {
    for (const template of shippedChecklists)
      for (const step of template.steps)
        expect(checklistStepSchema.safeParse(step).error, step.step).toBeUndefined();
  });

  test('speaks both languages in every title, heading, step and caution', () => {
    for (const template of shippedChecklists) {
      const texts = [
        template.title,
        ...template.steps.flatMap((step) => [step.group, step.text, ...(step.caution ? [step.caution] : [])]),
      ];
      for (const text of texts) {
        expect(Object.keys(text).sort()).toEqual(['en', 'es']);
        expect(text['en']?.trim(), JSON.stringify(text)).not.toBe('');
        expect(text['es']?.trim(), JSON.stringify(text)).not.toBe('');
        expect(text['es']).not.toBe(text['en']);
      }
    }
  });

  // Common practice; external and internal setup after SMED (Shingo 1985, from memory).
  test('prepares beside the running line before it asks for the line to stand', () => {
    const changeover = shippedChecklists.find((each) => each.purpose === 'changeover');
    const times = changeover?.steps.map((step) => step.time) ?? [];
    expect(times.slice(0, 3)).toEqual(['running', 'running', 'running']);
    expect(times.filter((time) => time === 'stopped').length).toBeGreaterThan(3);
  });

  test('asks a lead’s signature and cautions where hands go into the machine', () => {
    const changeover = shippedChecklists.find((each) => each.purpose === 'changeover');
    expect(changeover?.steps.some((step) => step.kind === 'sign' && step.mandatory)).toBe(true);
    expect(changeover?.steps.filter((step) => step.caution !== null).length).toBeGreaterThan(3);
  });
});

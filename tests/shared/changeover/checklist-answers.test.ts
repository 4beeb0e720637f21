import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerFits, viewChecklist } from '../../../shared/changeover/checklist-answers.ts';
import type { ChecklistStep, ChecklistTemplate } from '../../../shared/setup/checklist.ts';
import type { StepAnswer } from '../../../shared/setup/state.ts';
import { makeStep } from './checklist-step.ts';

const answered = (value: StepAnswer['value'], by: readonly string[] = ['ana']): StepAnswer => ({
  ...{ value, by, atMs: 0, skipped: null },
});
const limits = { kind: 'measure', least: 2, most: 3, unit: 'mm' } as const;
const choice = { kind: 'choice' as const, options: ['yes', 'no'] };

describe('answerFits()', () => {
  test.each<[string, Partial<ChecklistStep>, StepAnswer, boolean]>([
    ['a tick', { kind: 'tick' }, answered('done'), true],
    ['a note', { kind: 'note' }, answered('scratched'), true],
    ['an empty note', { kind: 'note' }, answered('  '), false],
    ['a value on its lower limit', limits, answered(2), true],
    ['a value on its upper limit', limits, answered(3), true],
    ['a value under its limit', limits, answered(1.999), false],
    ['a value over its limit', limits, answered(3.001), false],
    ['a text where a number is wanted', limits, answered('2.5'), false],
    ['a value without limits', { kind: 'measure' }, answered(-1e9), true],
    ['any scan where none is named', { kind: 'scan' }, answered('ABC'), true],
    ['the scan wanted', { kind: 'scan', expects: 'ST-1' }, answered('ST-1'), true],
    ['another scan', { kind: 'scan', expects: 'ST-1' }, answered('ST-2'), false],
    ['the right choice', { ...choice, right: ['yes'] }, answered('yes'), true],
    ['the wrong choice', { ...choice, right: ['yes'] }, answered('no'), false],
    ['any choice where all are right', choice, answered('no'), true],
    ['a choice that is none', choice, answered('maybe'), false],
    ['one of two signatures', { kind: 'sign', signatures: 2 }, answered('s', ['ana']), false],
    ['two signatures of one person', { kind: 'sign', signatures: 2 }, answered('s', ['ana', 'ana']), false],
    ['two signatures', { kind: 'sign', signatures: 2 }, answered('s', ['ana', 'bea']), true],
  ])('judges %s', (_, asked, answer, fits) => {
    expect(answerFits(makeStep('a', asked), answer)).toBe(fits);
  });
});

const facts = { sideChanges: false, stencilChanges: false, productChanges: true, programChanges: true };
const template: ChecklistTemplate = {
  ...{ template: 't', version: 1, purpose: 'changeover', title: { en: 'T' } },
  steps: [
    makeStep('papers'),
    makeStep('rails', { ...limits, time: 'stopped' }),
    makeStep('stencil', { condition: 'stencil-changes' }),
    makeStep('photo', { mandatory: false }),
  ],
};

describe('viewChecklist()', () => {
  test('lets steps that need the line to stand wait while it runs', () => {
    const view = viewChecklist(template, new Map(), { facts, isStopped: false });
    expect(view.steps.map((each) => each.state)).toEqual(['open', 'waiting', 'not-asked', 'open']);
    expect(view).toMatchObject({ asked: 3, done: 0, missing: ['papers', 'rails'], canClose: false });
  });

  test('can be closed without what is optional, but not with a value outside its limits', () => {
    const answers = new Map([
      ['papers', answered('done')],
      ['rails', answered(9)],
    ]);
    const short = viewChecklist(template, answers, { facts, isStopped: true });
    expect(short.steps[1]?.state).toBe('short');
    expect(short).toMatchObject({ missing: ['rails'], canClose: false });
    answers.set('rails', answered(2.5));
    expect(viewChecklist(template, answers, { facts, isStopped: true })).toMatchObject({
      ...{ done: 2, missing: [], canClose: true },
    });
  });

  test('counts a skipped step as settled', () => {
    const skipped = { ...answered(null), skipped: { by: 'lea', reason: 'same width' } };
    const answers = new Map([
      ['papers', answered('done')],
      ['rails', skipped],
    ]);
    const view = viewChecklist(template, answers, { facts, isStopped: true });
    expect(view.steps[1]?.state).toBe('skipped');
    expect(view.canClose).toBe(true);
  });

  test('never counts more done than asked, and closes only where nothing is missing', () => {
    const answer = fc.record({
      value: fc.oneof(fc.constant('done'), fc.double({ noNaN: true }), fc.constant(null)),
      by: fc.array(fc.constantFrom('ana', 'bea'), { maxLength: 3 }),
      atMs: fc.nat(),
      skipped: fc.constantFrom(null, { by: 'lea', reason: 'x' }),
    });
    const names = fc.constantFrom('papers', 'rails', 'stencil', 'photo', 'unknown');
    fc.assert(
      fc.property(fc.array(fc.tuple(names, answer)), fc.boolean(), (pairs, isStopped) => {
        const view = viewChecklist(template, new Map(pairs), { facts, isStopped });
        expect(view.done).toBeLessThanOrEqual(view.asked);
        expect(view.canClose).toBe(view.missing.length === 0);
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerFits, signaturesLeft, viewChecklist } from '../../../shared/checklist/answers.ts';
import type { ChecklistStep, ChecklistTemplate } from '../../../shared/floor/checklist.ts';
import type { StepAnswer } from '../../../shared/floor/state.ts';
import type { Role } from '../../../shared/floor/vocabulary.ts';
import { makeStep } from './step.ts';

const answered = (value: StepAnswer['value'], by: readonly string[] = ['ana']): StepAnswer => ({
  value,
  by,
  atMs: 0,
  skipped: null,
});
const signed = (...by: readonly (readonly [person: string, role: Role])[]): StepAnswer => ({
  ...answered(
    null,
    by.map(([person]) => person),
  ),
  signed: by.map(([person, role]) => ({ person, role, how: 'pin', checked: 'tablet', atMs: 0 })),
});
const twoRoles: Partial<ChecklistStep> = { kind: 'sign', signatures: 2, roles: ['operator', 'lead'] };
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
    ['an operator for a lead', twoRoles, signed(['ana', 'operator'], ['bea', 'operator']), false],
    ['the two roles', twoRoles, signed(['lea', 'lead'], ['ana', 'operator']), true],
    ['the two roles as they are named', twoRoles, signed(['ana', 'operator'], ['lea', 'lead']), true],
    ['taps where roles are asked', twoRoles, answered('signed', ['ana', 'bea']), false],
    ['what is known', { kind: 'known', knows: 'moves' }, answered('done'), false],
  ])('judges %s', (_, asked, answer, fits) => {
    expect(answerFits(makeStep('a', asked), answer)).toBe(fits);
  });
});

const facts = { sideChanges: false, stencilChanges: false, productChanges: true, programChanges: true };
const template: ChecklistTemplate = {
  template: 't',
  version: 1,
  purpose: 'changeover',
  title: { en: 'T' },
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
      done: 2,
      missing: [],
      canClose: true,
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

describe('signaturesLeft()', () => {
  test('names the roles that are missing', () => {
    const step = makeStep('a', twoRoles);
    expect(signaturesLeft(step, null)).toEqual(['operator', 'lead']);
    expect(signaturesLeft(step, signed(['lea', 'lead']))).toEqual(['operator']);
    expect(signaturesLeft(step, signed(['ana', 'operator'], ['bea', 'operator']))).toEqual(['lead']);
    expect(
      signaturesLeft(makeStep('a', { kind: 'sign', signatures: 2 }), signed(['ana', 'operator'])),
    ).toEqual(['operator']);
  });

  test('leave the step open, and not as answered wrongly', () => {
    const asked = { ...template, steps: [makeStep('release', twoRoles)] };
    const answers = new Map([['release', signed(['lea', 'lead'])]]);
    const view = viewChecklist(asked, answers, { facts, isStopped: true });
    expect(view.steps[0]?.state).toBe('open');
    expect(view.canClose).toBe(false);
  });
});

describe('a step that is known', () => {
  const asked = {
    ...template,
    steps: [makeStep('list', { kind: 'known', knows: 'moves', time: 'stopped' })],
  };
  const stateOf = (now: Partial<Parameters<typeof viewChecklist>[2]>, answer?: StepAnswer) =>
    viewChecklist(asked, new Map(answer ? [['list', answer]] : []), { facts, isStopped: true, ...now })
      .steps[0]?.state;

  test('is done where nothing is open of it, and never by an answer', () => {
    expect(stateOf({ known: { moves: 0 } })).toBe('done');
    expect(stateOf({ known: { moves: 33 } })).toBe('open');
    expect(stateOf({ known: { moves: 33 } }, answered('done'))).toBe('open');
    expect(stateOf({ known: { moves: null } })).toBe('open');
    expect(stateOf({})).toBe('open');
    expect(stateOf({ isStopped: false, known: { moves: 1 } })).toBe('waiting');
  });

  test('stays as it was closed, and may be skipped by a lead', () => {
    expect(stateOf({ isClosed: true, known: { moves: 3 } })).toBe('done');
    const skipped = { ...answered(null), skipped: { by: 'lea', reason: 'trial' } };
    expect(stateOf({ known: { moves: 3 } }, skipped)).toBe('skipped');
  });
});

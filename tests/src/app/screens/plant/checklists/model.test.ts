import { describe, expect, test } from 'vitest';
import { shippedChecklists } from '../../../../../../shared/checklist/shipped.ts';
import { checkTemplate } from '../../../../../../shared/checklist/steps.ts';
import { emptyState } from '../../../../../../shared/floor/state.ts';
import {
  askedLanguages,
  blankStep,
  moveStep,
  newestTemplates,
  nextVersion,
  ofKind,
  setSigner,
  setText,
  splitOptions,
} from '../../../../../../src/app/screens/plant/checklists/model.ts';
import { languages } from '../../../../../../src/app/words/words.ts';
import { makeStep } from '../../../../../shared/checklist/step.ts';

const steps = [makeStep('a'), makeStep('b'), makeStep('c')];

describe('newestTemplates()', () => {
  test('lists what ships until the site has its own version of it', () => {
    const floor = emptyState();
    expect(newestTemplates(floor).map((each) => each.version)).toEqual([2, 1, 1, 2]);
    const [first] = shippedChecklists;
    if (!first) throw new TypeError('ships by construction');
    const own = nextVersion(first, { steps });
    floor.templates.set(first.template, [own]);
    expect(newestTemplates(floor)).toHaveLength(4);
    expect(newestTemplates(floor)).toContain(own);
    expect(own.version).toBe(3);
    expect(first.version).toBe(2);
  });
});

describe('nextVersion()', () => {
  test('has the title that it is given, and else the one it had', () => {
    const template = { template: 't', version: 4, purpose: 'other' as const, title: { en: 'T' }, steps };
    expect(nextVersion(template, { steps: [] })).toEqual({ ...template, version: 5, steps: [] });
    const title = { hu: 'Reggel', pl: 'Rano' };
    expect(nextVersion(template, { title, steps })).toEqual({ ...template, version: 5, title });
  });
});

describe('askedLanguages()', () => {
  const asked = (
    title: Record<string, string>,
    ...rest: Parameters<typeof askedLanguages> extends [unknown, ...infer R] ? R : never
  ) =>
    askedLanguages({ title, steps: [makeStep('a', { text: { pl: 'Krok', de: ' ' }, group: {} })] }, ...rest);
  test('begins with the language in use and asks no other that nothing is written in', () => {
    expect(asked({}, 'hu')).toEqual(['hu', 'pl']);
    expect(asked({ es: 'Turno' }, 'pl')).toEqual(['pl', 'es']);
  });

  test('takes in each of the twelve that was added, once', () => {
    expect(asked({}, 'hu', ['ar', 'en', 'pl'])).toEqual(['hu', 'en', 'pl', 'ar']);
    expect(new Set(asked({}, 'hu', languages))).toEqual(new Set(languages));
    expect(asked({}, 'hu', languages)).toHaveLength(12);
  });
});

describe('blankStep()', () => {
  test('stands under the last heading and is no sound step before it has a text', () => {
    const blank = blankStep('new', steps, { de: 'Weiteres' });
    expect(blank.group).toEqual({ en: 'Group' });
    expect(blankStep('new', [], { de: 'Weiteres' }).group).toEqual({ de: 'Weiteres' });
    const template = { template: 't', version: 1, purpose: 'other' as const, title: { en: 'T' } };
    expect(checkTemplate({ ...template, steps: [...steps, blank] })).toEqual([
      { code: 'no-text', step: 'new' },
    ]);
  });
});

describe('moveStep()', () => {
  test.each([
    [0, 1, 'bac'],
    [2, -1, 'acb'],
    [0, -1, 'abc'],
    [2, 1, 'abc'],
  ] as const)('from %s by %s gives %s', (at, by, order) => {
    expect(
      moveStep(steps, at, by)
        .map((each) => each.step)
        .join(''),
    ).toBe(order);
  });
});

describe('setText() and splitOptions()', () => {
  test('leave an empty text out, so that another language stands in', () => {
    expect(setText({ en: 'a', es: 'b' }, 'es', ' ')).toEqual({ en: 'a' });
    expect(setText({ en: 'a', es: 'b' }, 'en', '')).toEqual({ es: 'b' });
    expect(setText(null, 'en', '')).toEqual({});
    expect(splitOptions(' yes, no ,, ')).toEqual(['yes', 'no']);
  });
});

describe('ofKind() and setSigner()', () => {
  test('give a step what its way of answering needs', () => {
    const step = makeStep('a', { signatures: 2 });
    expect(ofKind(step, 'sign')).toMatchObject({ roles: ['operator', 'operator'], signatures: 2 });
    expect(ofKind(step, 'known')).toMatchObject({ knows: 'moves' });
    expect(ofKind(step, 'scan')).toMatchObject({ wants: 'other' });
    expect(ofKind(step, 'note')).toEqual({ ...step, kind: 'note' });
    const template = { template: 't', version: 1, purpose: 'changeover' as const, title: { en: 'T' } };
    for (const kind of ['sign', 'known', 'scan'] as const)
      expect(checkTemplate({ ...template, steps: [ofKind(step, kind)] }), kind).toEqual([]);
  });

  test('keep at least one who signs, and no gaps', () => {
    expect(setSigner(['operator'], 1, 'lead')).toEqual(['operator', 'lead']);
    expect(setSigner(['operator', 'lead'], 0, 'engineer')).toEqual(['engineer', 'lead']);
    expect(setSigner(['operator', 'lead', 'engineer'], 1, '')).toEqual(['operator']);
    expect(setSigner(['operator'], 0, '')).toEqual(['operator']);
  });
});

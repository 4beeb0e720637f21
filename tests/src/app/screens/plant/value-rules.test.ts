// Which parts a line measures, through the screen of its rules: told only where it changed; what is no figure keeps all from being saved.

import { describe, expect, test } from 'vitest';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import { pageOf, rulesDrafts, type ValuesForm } from '../../../../../src/app/screens/plant/rules-drafts.ts';
import { rulesToForm } from '../../../../../src/app/screens/plant/rules-form.ts';
import { beginStory, tellPlant } from '../../../../shared/floor/story.ts';

function saved(floor: FloorState, values: Partial<ValuesForm>) {
  const rules = floor.rules.get('L1');
  if (rules === undefined) throw new Error('the line has rules');
  const page = pageOf(floor, rules, {
    ...rulesToForm(rules),
    floorCelsius: '23',
    floorHumidity: '50',
    idleMinutes: '20',
    spliceParts: {},
  });
  const told = rulesDrafts(floor, rules, { ...page, values: { ...page.values, ...values } });
  return 'fault' in told
    ? told.fault
    : (told.drafts.find(({ kind }) => kind === 'line.values-ruled')?.payload ?? null);
}

function plant(): FloorState {
  const story = beginStory();
  tellPlant(story);
  return story.floor();
}

describe('parts that a line measures', () => {
  test('are told with the meter, a comma as good as a point; nothing is told where nothing changed', () => {
    expect(saved(plant(), {})).toBeNull();
    expect(saved(plant(), { begins: [' R- ', 'C'], percent: '0,25', digits: '3', guard: '50' })).toEqual({
      line: 'L1',
      begins: ['R-', 'C'],
      percent: 0.25,
      digits: 3,
      guard: 50,
    });
    const story = beginStory();
    tellPlant(story);
    story.tell('line.values-ruled', { line: 'L1', begins: ['R-'], percent: 1, digits: 0, guard: 0 });
    expect(saved(story.floor(), {})).toBeNull();
    expect(saved(story.floor(), { begins: [] })).toMatchObject({ begins: [], percent: 1 });
  });

  test.each([
    { percent: 'much' },
    { percent: '-1' },
    { percent: '101' },
    { digits: '1.5' },
    { digits: '' },
    { guard: '501' },
    { begins: ['R-', 'r-'] },
  ])('%j is a fault', (values) => {
    expect(saved(plant(), { begins: ['R-'], ...values })).toEqual({ code: 'values' });
  });

  test('figures of a class that was taken out again keep nothing from being saved: those before stand', () => {
    expect(saved(plant(), { begins: [], percent: 'much', guard: '' })).toBeNull();
    const story = beginStory();
    tellPlant(story);
    story.tell('line.values-ruled', { line: 'L1', begins: ['R-'], percent: 1, digits: 3, guard: 50 });
    expect(saved(story.floor(), { begins: [], digits: 'x' })).toMatchObject({
      begins: [],
      percent: 1,
      digits: 3,
      guard: 50,
    });
  });
});

// Does a machine run the recipe of what the line builds? By text, by an engineer's word, and where nobody knows.

import { describe, expect, test } from 'vitest';
import { recipeName, recipesOn } from '../../../shared/floor/recipes.ts';
import { beginStory, brookSetup, type Story, started, tellPlant } from './story.ts';

const { product } = brookSetup;

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  const known = { machine: 'M1', at: 'work', means: 'ipc2591', version: '1', address: '' } as const;
  for (const station of ['placer', 'oven']) story.tell('station.known', { station, line: 'L1', ...known });
  return story;
}
const runs = (story: Story, recipe: string, revision: string | null = null) =>
  story.tell('station.recipe', { station: 'placer', line: 'L1', recipe, revision });
const differ = (story: Story) => recipesOn(story.floor(), 'L1');

test('a recipe’s name is without its folder and ending; capitals and what stands between words are one', () => {
  expect(recipeName('D:\\jobs\\Brook Top_A.prg')).toBe('brook-top-a');
  expect(recipeName('/jobs/BROOK')).toBe('brook');
  expect(recipeName('brook v2.1')).toBe('brook-v2.1');
});

describe('a machine’s recipe', () => {
  test('is right where it has the text of the product, of its side, and of the revision that is told', () => {
    const story = begun();
    expect(differ(story)).toEqual([]);
    for (const [recipe, revision] of [
      [product, null],
      [`x/${product.toUpperCase()}_top.rcp`, null],
      [product, brookSetup.revision],
    ] as const) {
      runs(story, recipe, revision);
      expect([recipe, differ(story)]).toEqual([recipe, []]);
    }
    runs(story, product, 'another');
    expect(differ(story)).toMatchObject([{ station: 'placer', builds: null, revision: 'another' }]);
  });

  test('of another product is told with what it builds, in the run and before it; of one that nobody knows without', () => {
    const story = begun();
    story.tell('setup.taken', { ...brookSetup, setup: 'glen', product: 'Glen' });
    runs(story, 'GLEN');
    const wanted = { product, side: 'top' };
    const glen = { station: 'placer', recipe: 'GLEN', wanted, builds: { product: 'Glen', side: 'top' } };
    expect(differ(story)).toMatchObject([glen]);
    story.tell('run.started', started('r1'));
    expect(differ(story)).toMatchObject([glen]);
    runs(story, 'P-4711');
    expect(differ(story)).toMatchObject([{ recipe: 'P-4711', wanted, builds: null }]);
  });

  test('an engineer’s one word makes it right for that product and side alone, and a text of the same name not', () => {
    const story = begun();
    runs(story, 'jobs/P-4711.prg', 'C');
    story.tell('recipe.known', { line: 'L1', recipe: 'jobs/P-4711.prg', product, side: 'top' });
    expect(differ(story)).toEqual([]);
    runs(story, 'P-4711', 'D');
    expect(differ(story)).toEqual([]);
    story.tell('recipe.known', { line: 'L1', recipe: 'P-4711', product, side: 'bottom' });
    expect(differ(story)).toMatchObject([{ builds: { product, side: 'bottom' } }]);
    runs(story, product);
    story.tell('recipe.known', { line: 'L1', recipe: product, product: 'Glen', side: 'top' });
    expect(differ(story)).toMatchObject([{ builds: { product: 'Glen' } }]);
    story.tell('recipe.known', { line: 'L2', recipe: product, product, side: 'top' });
    expect(differ(story)).toHaveLength(1);
  });

  test('of a product with two sides says which: its name alone does not', () => {
    const story = begun();
    story.tell('setup.taken', { ...brookSetup, setup: 'other-side', side: 'bottom' });
    runs(story, product);
    expect(differ(story)).toMatchObject([{ builds: null }]);
    runs(story, `${product}-bottom`);
    expect(differ(story)).toMatchObject([{ builds: { product, side: 'bottom' } }]);
    runs(story, `${product}-top`);
    expect(differ(story)).toEqual([]);
  });
});

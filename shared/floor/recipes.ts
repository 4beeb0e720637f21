// Does a machine run the recipe of what the line builds? Its last word of it against the run's setup, else against the chosen one.
// Method: a recipe belongs to a product's side where an engineer said so once, or where both have the same text. Else nobody knows, and that is
// said too. Refused: names that are merely alike; a wrong program under a name that is nearly right is what this is for.

import { setupTaking } from './lanes.ts';
import type { FloorState, Setup } from './state.ts';
import type { Side } from './vocabulary.ts';

/** One side of a product. */
export interface ProductSide {
  readonly product: string;
  readonly side: Side;
}

/** A machine that does not surely run the recipe of what the line builds. */
export interface RecipeDiffers {
  readonly station: string;
  /** As the machine calls it. */
  readonly recipe: string;
  readonly revision: string | null;
  /** When it told, ms since 1970. */
  readonly atMs: number;
  /** What the line builds. */
  readonly wanted: ProductSide;
  /** What the recipe builds; null where nobody said, and no text says. */
  readonly builds: ProductSide | null;
}

/** A recipe's name without its folder and ending: machines may tell a path. Capitals, spaces, dashes and underscores are one. */
export function recipeName(text: string): string {
  const base = text.split(/[/\\]/).at(-1) ?? '';
  return plain(base.replace(/\.[a-z]{2,4}$/i, ''));
}

const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, '-');

/** Names an engineer's word on a recipe. */
export function recipeKey(line: string, recipe: string): string {
  return JSON.stringify([line, recipeName(recipe)]);
}

/** Stations of a line whose machines do not surely run what it builds, by name. None where nothing is chosen. Never throws. */
export function recipesOn(state: FloorState, line: string): readonly RecipeDiffers[] {
  const setup = state.setups.get(setupTaking(state, line) ?? '');
  if (!setup) return [];
  const wanted = sideOf(setup);
  return [...state.stations.values()].flatMap(({ station, line: its, recipe }) => {
    if (its !== line || recipe === null) return [];
    const said = state.recipes.get(recipeKey(line, recipe.recipe));
    if (said ? isSame(said, wanted) : isByText(state, setup, recipe)) return [];
    const other = [...state.setups.values()].find((each) => isByText(state, each, recipe));
    return [{ station, ...recipe, wanted, builds: said ?? (other ? sideOf(other) : null) }];
  });
}

const sideOf = ({ product, side }: Setup): ProductSide => ({ product, side });
const isSame = (one: ProductSide, other: ProductSide): boolean =>
  one.product === other.product && one.side === other.side;

/** The text of product and side, or of the product where it has one side only; the revision where the machine tells one. */
function isByText(
  state: FloorState,
  setup: Setup,
  { recipe, revision }: { readonly recipe: string; readonly revision: string | null },
): boolean {
  if (revision !== null && plain(revision) !== plain(setup.revision)) return false;
  const name = recipeName(recipe);
  const product = plain(setup.product);
  if (name === `${product}-${setup.side}`) return true;
  const hasOther = [...state.setups.values()].some(
    (each) => each.product === setup.product && each.side !== setup.side,
  );
  return name === product && !hasOther;
}

// Steps of the schema, and which of them a server of before can live with. Expand first, contract later: what is new is added in one version, and what
// nobody needs any more is taken away in a later one, so that servers of both versions can serve one database while one after the other is replaced.

import type { Kysely } from 'kysely';
import type { Dialect } from './column-types.ts';
import type { Tables } from './tables.ts';

/** One step forward of the schema. */
export interface Step {
  (db: Kysely<Tables>, dialect: Dialect): Promise<void>;
  /** Absent: a program that does not know this step must not serve what took it. */
  readonly isAddition?: true;
}

/** Row of `meta`: the schema that a program has to know at least to serve this store; absent, all of the store's own. */
export const neededName = 'schema_needed';

/**
 * Marks a step that servers of before can live with: it only adds tables, or columns that have a value where nobody gives one; what they read and write means the same
 * after it, and nothing that they must heed stands in what it adds. It takes no lock for longer than a moment: no index over the log, no row written anew.
 * A new kind of entry that a server must heed changes no table: it needs an empty step that is no addition, so that no server of before serves beside one that heeds it.
 */
export function addition(step: Step): Step {
  return Object.assign((db: Kysely<Tables>, dialect: Dialect) => step(db, dialect), {
    isAddition: true as const,
  });
}

/** The schema that a program has to know at least to serve a store that took these steps: how many there are up to the last that is no mere addition. */
export function neededOf(taken: readonly Step[]): number {
  return taken.reduce((needed, step, at) => (step.isAddition === true ? needed : at + 1), 0);
}

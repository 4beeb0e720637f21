// A reader under test: how many of all cases are its own, what is drawn, and what it is given. A case fails where `read` throws or rejects:
// what a reader may answer (null, a problem, its own kind of refusal) is taken in `read` itself.

import fc from 'fast-check';
import { type Plan, plans } from './plan.ts';

/** A reader under test. */
export interface FuzzTarget {
  readonly name: string;
  /** Cases of a million; the shares of all targets together are a million at least. */
  readonly share: number;
  /** What the reader gets, for whoever looks at a failing case: a text, or bytes. */
  readonly input: (plan: Plan) => string | Uint8Array;
  /** Reads it. Throws, or rejects, where the reader did what it must not. */
  readonly read: (input: string | Uint8Array, plan: Plan) => void | Promise<void>;
}

/** A reader of texts. */
export function textTarget(target: {
  readonly name: string;
  readonly share: number;
  readonly input: (plan: Plan) => string;
  readonly read: (text: string, plan: Plan) => void | Promise<void>;
}): FuzzTarget {
  return { ...target, read: (input, plan) => target.read(String(input), plan) };
}

/** A reader of bytes. */
export function bytesTarget(target: {
  readonly name: string;
  readonly share: number;
  readonly input: (plan: Plan) => Uint8Array<ArrayBuffer>;
  readonly read: (bytes: Uint8Array<ArrayBuffer>, plan: Plan) => void | Promise<void>;
}): FuzzTarget {
  // As `input` made them.
  return { ...target, read: (input, plan) => target.read(input as Uint8Array<ArrayBuffer>, plan) };
}

/** What a run found; null in `failed` where nothing was. */
export interface FuzzRun {
  readonly cases: number;
  readonly failed: {
    readonly plan: Plan;
    readonly input: string | Uint8Array;
    readonly error: string;
    readonly path: string;
  } | null;
}

/** Draws cases from a seed and reads them, one after the other. `onCase` hears of each how long it took, in ms. */
export async function runTarget(
  target: FuzzTarget,
  {
    seed,
    cases,
    onCase,
  }: { readonly seed: number; readonly cases: number; readonly onCase?: (plan: Plan, ms: number) => void },
): Promise<FuzzRun> {
  const run = async (plan: Plan): Promise<void> => {
    const input = target.input(plan);
    const start = performance.now();
    await target.read(input, plan);
    onCase?.(plan, performance.now() - start);
  };
  const details = await fc.check(fc.asyncProperty(plans, run), { seed, numRuns: cases });
  const [plan] = details.counterexample ?? [];
  if (!plan) return { cases: details.numRuns, failed: null };
  const error =
    details.errorInstance instanceof Error
      ? (details.errorInstance.stack ?? details.errorInstance.message)
      : String(details.errorInstance);
  const failed = { plan, input: target.input(plan), error, path: details.counterexamplePath ?? '' };
  return { cases: details.numRuns, failed };
}

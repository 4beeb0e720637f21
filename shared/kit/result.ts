// How an expected failure travels: as a value with a closed code and the facts, never as a thrown surprise.

/** Either a value or an expected failure. Impossible states throw instead. */
export type Result<T, E> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E };

/** Wraps a value. */
export function ok<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

/** Wraps an expected failure. */
export function fail<E>(error: E): { readonly ok: false; readonly error: E } {
  return { ok: false, error };
}

/** For the `default` of a switch over a closed union: the compiler proves that it is never reached. */
export function unreachable(value: never): never {
  throw new TypeError(`Cannot handle value as its kind is unknown: current value is ${String(value)}`);
}

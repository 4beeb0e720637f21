// Says every sentence of an area, whatever facts it takes, so that tests can look at all that a language says.

/** One sentence as it was said, and where it stands. */
export interface Said {
  readonly where: string;
  readonly text: string;
}

/** A fact that is whatever the sentence takes it for, and the text when it is said. */
export function anything(text: string | number): unknown {
  const itself: unknown = new Proxy(() => text, {
    get: (_, key) => {
      if (key === Symbol.toPrimitive) return () => text;
      if (key === 'toString') return () => String(text);
      if (key === 'length') return Number(text);
      if (key === Symbol.iterator) return undefined;
      return itself;
    },
    apply: () => String(text),
  });
  return itself;
}

const keys = new Map<string, number>();

/** A fact with parts by name: each is a number of its own, the same wherever the name is asked. */
function record(): unknown {
  return new Proxy({} as Record<string, unknown>, {
    get: (_, key) => {
      if (typeof key !== 'string') return undefined;
      const known = keys.get(key) ?? 300 + keys.size;
      keys.set(key, known);
      return String(known);
    },
  });
}

/** Every number that a part of a fact was told as. */
export const toldParts = (): readonly number[] => [...keys.values()];

/**
 * The sentence with facts of the first shape that it can be said with whole, else with a hole; null where it can be said with none.
 * `fact`: by its place, from 0.
 */
export function sayWith(
  sentence: (...facts: unknown[]) => unknown,
  fact: (at: number) => number,
): string | null {
  const shapes = [
    (at: number) => fact(at),
    (at: number) => String(fact(at)),
    (at: number) => [String(fact(at))],
    () => record(),
    (at: number) => anything(fact(at)),
  ];
  // A sentence may leave out facts at its end that English has.
  const most = Math.max(4, sentence.length);
  let holed: string | null = null;
  for (const shape of shapes) {
    try {
      const text = sentence(...Array.from({ length: most }, (_, at) => shape(at)));
      if (typeof text !== 'string') continue;
      if (!/undefined|NaN|\[object/.test(text)) return text;
      holed ??= text;
    } catch {
      // Facts of another shape: the next.
    }
  }
  return holed;
}

/** All that an area says. `fact`: the number for a fact by its place, from 0. */
export function sentences(words: unknown, where: string, fact: (at: number) => number): Said[] {
  if (typeof words === 'string') return [{ where, text: words }];
  if (typeof words === 'function') {
    const text = sayWith(words as (...facts: unknown[]) => unknown, fact);
    return text === null ? [] : [{ where, text }];
  }
  if (typeof words !== 'object' || words === null) return [];
  return Object.entries(words).flatMap(([key, value]) => sentences(value, `${where}.${key}`, fact));
}

/** Functions that answer no text for any of those facts. */
export function unsayable(words: unknown, where: string): string[] {
  if (typeof words === 'function')
    return sayWith(words as (...facts: unknown[]) => unknown, () => 1) === null ? [where] : [];
  if (typeof words !== 'object' || words === null) return [];
  return Object.entries(words).flatMap(([key, value]) => unsayable(value, `${where}.${key}`));
}

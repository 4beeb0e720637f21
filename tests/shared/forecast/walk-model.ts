// A second, independent way to plan walks: a mixed-integer programme for a general solver. Slow and small, but it knows nothing
// of the search that it checks: places in sequence, one splice each, a walk where a walk begins, times by big-M.

import loadHighs from 'highs';

/** A problem in whole seconds; each splice may take its own time, so that published one-machine problems can be put in too. */
export interface ModelProblem {
  readonly now: number;
  readonly walk: number;
  readonly splices: readonly { readonly opens: number; readonly closes: number; readonly takes: number }[];
}

/** The optimum: fewest missed, then fewest walks, then the latest first start (null where nothing is done). */
export interface ModelAnswer {
  readonly missed: number;
  readonly walks: number;
  readonly firstStart: number | null;
}

/** Sum of terms as the LP format wants it. */
function sum(terms: readonly (readonly [number, string])[]): string {
  const text = terms
    .filter(([factor]) => factor !== 0)
    .map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`)
    .join(' ');
  return text === '' ? '0 s0' : text;
}

function constraints(problem: ModelProblem): string[] {
  const { splices, now, walk } = problem;
  const places = splices.map((_, k) => k);
  const takesAt = (k: number) => splices.map((splice, j) => [splice.takes, `x${j}_${k}`] as const);
  const far = Math.max(now, ...splices.map((splice) => splice.closes)) + 1;
  const big = 2 * far + walk + splices.reduce((total, splice) => total + splice.takes, 0);
  const lines: string[] = [];
  for (const [j] of splices.entries()) lines.push(`${sum(places.map((k) => [1, `x${j}_${k}`]))} <= 1`);
  for (const k of places) {
    const used = (place: number, factor: number) =>
      splices.map((_, j) => [factor, `x${j}_${place}`] as const);
    lines.push(`${sum(used(k, 1))} <= 1`);
    lines.push(`y${k} ${sum(used(k, -1))} <= 0`);
    // Begin at or after opening; end at or before closing, where the place is used.
    lines.push(`s${k} ${sum(splices.map((splice, j) => [-splice.opens, `x${j}_${k}`]))} >= 0`);
    const ends = splices.map((splice, j) => [splice.takes - splice.closes + big, `x${j}_${k}`] as const);
    lines.push(`s${k} ${sum(ends)} <= ${big}`);
    if (k === 0) {
      lines.push(`y0 ${sum(used(0, -1))} = 0`, `s0 >= ${now + walk}`);
      continue;
    }
    lines.push(`${sum(used(k - 1, 1))} ${sum(used(k, -1))} >= 0`);
    const gap = `s${k} - s${k - 1} ${sum(takesAt(k - 1).map(([factor, name]) => [-factor, name] as const))}`;
    lines.push(`${gap} - ${walk} y${k} >= 0`);
    // No waiting within a walk: unless a walk begins here or the place is unused.
    lines.push(`${gap} - ${big} y${k} ${sum(used(k, big))} <= ${big}`);
  }
  return lines;
}

function programme(problem: ModelProblem, objective: string, more: readonly string[]): string {
  const places = problem.splices.map((_, k) => k);
  const binaries = places.flatMap((k) => [`y${k}`, ...problem.splices.map((_, j) => `x${j}_${k}`)]);
  const lines = [...constraints(problem), ...more].map((line, i) => ` c${i}: ${line}`);
  return `${objective}\nSubject To\n${lines.join('\n')}\nBinary\n ${binaries.join(' ')}\nEnd\n`;
}

/** Loads the solver once and answers problems of up to about six splices. */
export async function makeModel(): Promise<(problem: ModelProblem) => ModelAnswer> {
  const highs = await loadHighs();
  return (problem) => {
    const { splices } = problem;
    const n = splices.length;
    const served = splices.flatMap((_, j) => splices.map((__, k) => [1, `x${j}_${k}`] as const));
    const begun = splices.map((_, k) => [1, `y${k}`] as const);
    const first = highs.solve(
      programme(
        problem,
        `Maximize\n obj: ${sum(served.map(([, name]) => [n + 1, name]))} ${sum(begun.map(([, name]) => [-1, name]))}`,
        [],
      ),
    );
    if (first.Status !== 'Optimal') throw new Error(`Cannot model walks as ${first.Status}`);
    const value = (name: string) => Math.round(first.Columns[name]?.Primal ?? 0);
    const done = served.reduce((total, [, name]) => total + value(name), 0);
    const walks = begun.reduce((total, [, name]) => total + value(name), 0);
    if (done === 0) return { missed: n, walks: 0, firstStart: null };
    const fixed = [`${sum(served)} >= ${done}`, `${sum(begun)} <= ${walks}`];
    const second = highs.solve(programme(problem, 'Maximize\n obj: s0', fixed));
    if (second.Status !== 'Optimal') throw new Error(`Cannot model walks as ${second.Status}`);
    const firstStart = Math.round((second.Columns['s0']?.Primal ?? 0) * 1000) / 1000 - problem.walk;
    return { missed: n - done, walks, firstStart };
  };
}

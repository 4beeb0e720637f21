// The faults that `npm run mutate` plants: each is one small change, and the file around it stays as it was.

import { describe, expect, test } from 'vitest';
import { type Equal, listedAmong, staleAmong } from './equal.ts';
import { edited, mutantsOf } from './mutants.ts';
import { sampleOf } from './mutate.ts';
import { armed, bodiesOf, bodyAt, counted, forgetting, marked, planted } from './plant.ts';

const file = (source: string) => ({ path: 'shared/x.ts', source });
const faults = (source: string) => mutantsOf(file(source)).map(({ edits }) => edited(source, edits));

describe('mutantsOf()', () => {
  test('moves a boundary and turns a comparison', () => {
    expect(faults('const f = (a: number) => a < x;')).toEqual([
      'const f = (a: number) => (a <= x);',
      'const f = (a: number) => (a >= x);',
    ]);
  });

  test('keeps what belongs together in brackets', () => {
    expect(faults('f(a && b && c);')).toEqual(['f((a && b || c));', 'f((a || b) && c);']);
  });

  test.each([
    ['f(a === b);', ['f((a !== b));']],
    ['f(a + b);', ['f((a - b));']],
    ["f(a + 'b');", []],
    ["f('a' + b + c);", []],
    ['f(!a);', ['f(a);']],
    ['a -= b;', ['a += b;']],
    ['a++;', ['a--;']],
    ['f(a ?? b);', ['f((a));']],
    ['f(a?.b);', ['f(a.b);']],
    ['f(a?.[b]);', ['f(a[b]);']],
    ['f(true);', ['f(false);']],
    ['f(7);', ['f(8);']],
    ['f(a.some(g));', ['f(a.every(g));']],
    ['f(a.filter(g));', ['f(a);']],
    ["f('text');", []],
    ['const a = b ? c : d;', ['const a = true ? c : d;', 'const a = false ? c : d;']],
    ['function f() { g(); }', ['function f() {}']],
    ["import { a } from 'b';", []],
    ['type A = 1 | 2; interface B { c: 3 }', []],
    ['const a = b as 4;', []],
  ])('makes of %s what a slip would', (source, expected) => {
    expect(faults(source)).toEqual(expected);
  });

  test('finds an operator past a comment that holds it', () => {
    expect(faults('f(a /* < */ < b);')[0]).toBe('f((a /* < */ <= b));');
  });

  test('tells faults that read the same apart by their number', () => {
    expect(mutantsOf(file('f(1);\nf(1);')).map(({ nth }) => nth)).toEqual([1, 2]);
  });
});

describe('what is planted', () => {
  const source = 'export function f(a) {\n  for (const b of a) {\n    g(b, (c) => c + 1);\n  }\n}\n';

  test('ends loops that a fault makes endless', () => {
    const [fault] = mutantsOf(file('while (a < b) { a += 1; }')).filter(({ was }) => was === 'a += 1');
    expect(planted(file('while (a < b) { a += 1; }'), fault!.edits)).toBe(
      'while (a < b) {globalThis.__turn?.(); a -= 1; }',
    );
  });

  test('can be switched fault by fault, and is the file as it was without one', () => {
    const lines = [
      'const list = [3, 1, 2];',
      'const none = undefined;',
      'function f(a, b) {',
      '  if (a < b && !none?.some((c) => c > 1).length) { return a - b; }',
      '  let sum = 0;',
      '  for (const each of list.filter((c) => c !== a)) { sum += each; }',
      '  return none?.[0] ?? sum;',
      '}',
    ];
    const program = file(lines.join('\n'));
    const mutants = mutantsOf(program);
    const answers = (source: string, fault: number) => {
      const calls =
        '[[1, 2], [2, 1], [3, 3]].map(([a, b]) => { try { return f(a, b); } catch { return "threw"; } })';
      return new Function('globalThis', `${source}\nreturn ${calls};`)({ __fault: fault });
    };
    const text = armed(program, new Map(mutants.map((mutant, at) => [mutant, at + 1])));
    expect(answers(text, 0)).toEqual(answers(program.source, 0));
    for (const [at, { edits, becomes }] of mutants.entries())
      expect(answers(text, at + 1), becomes).toEqual(answers(edited(program.source, edits), 0));
    expect(mutants.length).toBeGreaterThan(20);
  });

  test('marks the file and each function in it', () => {
    const marks = [...marked(file(source), 10).matchAll(/__reach\?\.\((\d+)\)/g)].map(([, each]) => each);
    expect(marks).toEqual(['10', '11', '12']);
  });

  test('knows the innermost function of a place', () => {
    const bodies = bodiesOf(file(source));
    expect(bodyAt(bodies, 0)).toBe(0);
    expect(bodyAt(bodies, source.indexOf('for'))).toBe(1);
    expect(bodyAt(bodies, source.indexOf('c + 1'))).toBe(2);
  });
});

describe('the sample', () => {
  const many = mutantsOf(file(Array.from({ length: 50 }, (_, at) => `f(${at});`).join('\n')));

  test('is the same for the same seed and file, another for another seed, and all for 0', () => {
    const texts = (seed: number) => sampleOf(many, 'a.ts', 5, seed).map(({ was }) => was);
    expect(texts(1)).toEqual(texts(1));
    expect(texts(1)).toHaveLength(5);
    expect(new Set(texts(1)).size).toBe(5);
    expect(texts(1)).not.toEqual(texts(2));
    expect(sampleOf(many, 'a.ts', 0, 1)).toHaveLength(50);
  });
});

describe('the list of equal faults', () => {
  const source = 'f(a < b);';
  const entry: Equal = {
    path: 'shared/x.ts',
    code: source,
    was: 'a < b',
    becomes: '(a <= b)',
    why: 'a is never b',
  };

  test('holds the fault that it names and no other', () => {
    expect(mutantsOf(file(source)).map(listedAmong([entry]))).toEqual([true, false]);
  });

  test('tells entries that fit nothing any more, and those without a reason', () => {
    expect(staleAmong([entry], [file(source)])).toEqual([]);
    expect(staleAmong([entry], [file('f(a <= b);')])).toEqual([entry]);
    expect(staleAmong([{ ...entry, why: ' ' }], [file(source)])).toHaveLength(1);
  });
});

test('what is kept by object is forgotten between two runs of a test, nothing else is', () => {
  expect(forgetting('const a = new WeakMap<object, number>();')).toBe(
    'const a = new (globalThis.__WeakMap ?? WeakMap)<object, number>();',
  );
  expect(forgetting('const a = new Map();')).toBe('const a = new Map();');
});

test('turns are counted in loops without braces too, one within the other', () => {
  expect(counted({ path: 'shared/x.ts', source: 'while (a) for (const b of c) g(b);\n' }).trim()).toBe(
    'while (a) { globalThis.__turn?.();for (const b of c) { globalThis.__turn?.();g(b); } }',
  );
});

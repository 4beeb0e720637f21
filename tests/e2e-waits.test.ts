// A browser test waits for what it means, never for a time, and is looked at once: a fixed wait is too short on a busy machine and
// too long on every other, and a second try hides what happens to people only sometimes. `support/clock.ts` moves the page's clock.

import { expect, test } from 'vitest';
import { lineAt, type Node, parseSource, readSources, type SourceFile, visit } from './source-scan.ts';

/** What may not stand in a browser test, and what to do instead. */
const banned: ReadonlyMap<string, string> = new Map([
  ['waitForTimeout', 'wait for what is meant, or let the clock go on: pass()'],
  ['setTimeout', 'wait for what is meant, or let the clock go on: pass()'],
  ['setInterval', 'wait for what is meant: expect.poll()'],
  ['retry', 'a test that fails now and then has found something'],
  ['delay', 'a person types by typeByHand()'],
]);

/** The page's own timers are made and checked there. */
const CLOCK = ['tests/e2e/support/clock.ts', 'tests/e2e/clock.e2e.ts'];

const nameOf = (node: unknown) => String((node as Node | undefined)?.['name']);

/** Waits for a time, retries and forced clicks of a file, as `path:line what: instead`. */
function findWaits(file: SourceFile): readonly string[] {
  const found: string[] = [];
  const tell = ({ start }: Node, what: string, instead: string) =>
    found.push(`${file.path}:${lineAt(file.source, start)} ${what}: ${instead}`);
  visit(parseSource(file).program, (node) => {
    const name = node.type === 'Identifier' ? nameOf(node) : '';
    const instead = banned.get(name);
    if (instead !== undefined) tell(node, name, instead);
    if (node.type !== 'CallExpression') return;
    const act = nameOf((node['callee'] as Node)['property']);
    if (!['click', 'tap', 'fill'].includes(act)) return;
    for (const given of node['arguments'] as readonly Node[]) {
      for (const each of (given['properties'] as readonly Node[] | undefined) ?? []) {
        if (nameOf(each['key']) === 'force') tell(each, 'force', 'a finger does not ask: tap()');
      }
    }
  });
  return found;
}

test('no browser test waits for a time, is tried again, or clicks through what a finger cannot reach', () => {
  const files = readSources(['']).filter(
    ({ path }) => /^(tests\/e2e\/|vitest\.config\.ts$)/.test(path) && !CLOCK.includes(path),
  );
  expect(files.length).toBeGreaterThan(20);
  expect(files.flatMap(findWaits)).toEqual([]);
});

test.each([
  ['await page.waitForTimeout(60);', 'waitForTimeout'],
  ['await new Promise((resolve) => setTimeout(resolve, 300));', 'setTimeout'],
  ['export default { test: { retry: 2 } };', 'retry'],
  ["await page.keyboard.type('ab', { delay: 90 });", 'delay'],
  ['await button.click({ force: true });', 'force'],
])('the check finds %s', (source, what) => {
  expect(findWaits({ path: 'x.ts', source })).toEqual([expect.stringContaining(`x.ts:1 ${what}: `)]);
});

test('the check leaves a removed folder and a comment alone', () => {
  const source = '// no setTimeout\nawait rm(folder, { recursive: true, force: true });';
  expect(findWaits({ path: 'x.ts', source })).toEqual([]);
});

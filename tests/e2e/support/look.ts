// One look at a page, as a person would see it: can everything be touched and read, is every picture there, does every sentence
// make sense, is the console quiet. Throws with a list of all that it finds.
//
// Called after every step of the browser tests and at every stop of the tour. What it finds must stand for a moment: a screen that
// is still being drawn is no fault.

import type { ConsoleMessage, Page } from 'playwright-core';
import { inject } from 'vitest';
import type { Checks, LookScope } from './look/page.ts';

/** What is looked at, and how. */
export interface LookOptions extends Partial<Checks> {
  /** Said before each finding: which stop, size, language. */
  readonly where?: string;
  /** Also ask axe-core: all of its rules, or those that depend on theme and size alone. */
  readonly axe?: boolean | 'contrast';
  /** Is the console looked at? */
  readonly console?: boolean;
  /** Findings that are known and let pass, each with its reason beside it in the caller. */
  readonly except?: readonly RegExp[];
  /** How long a fault must stand until it is one, ms. */
  readonly patienceMs?: number;
}

const told = new WeakMap<Page, string[]>();

/** A server out of reach is told by the browser itself; the tests that cut the network want just that. */
const expected =
  /Failed to load resource: (net::ERR_|the server responded)|net::ERR_(INTERNET_DISCONNECTED|CONNECTION_REFUSED|FAILED|NAME_NOT_RESOLVED)/;

/** Collects what a page writes on its console from now on. */
export function listen(page: Page): string[] {
  const known = told.get(page);
  if (known) return known;
  const lines: string[] = [];
  told.set(page, lines);
  const add = (message: ConsoleMessage) => {
    if (!['error', 'warning'].includes(message.type()) || expected.test(message.text())) return;
    lines.push(`console: ${message.text().slice(0, 300)}`);
  };
  page.on('console', add);
  page.on('pageerror', (error) => lines.push(`thrown: ${error.message}`));
  return lines;
}

/** All that a look finds, in plain lines. */
export async function findings(page: Page, options: LookOptions = {}): Promise<readonly string[]> {
  const { controls = true, texts = true, pictures = true, sentences = true, patienceMs = 2000 } = options;
  const checks: Checks = { controls, texts, pictures, sentences };
  const { except = [] } = options;
  const counts = (finding: string) => !except.some((each) => each.test(finding));
  const lines = listen(page);
  const untilMs = Date.now() + patienceMs;
  let found = (await lookOnce(page, checks)).filter(counts);
  while (found.length > 0 && Date.now() < untilMs) found = (await lookOnce(page, checks)).filter(counts);
  const violations = options.axe ? await axeFinds(page, options.axe) : [];
  const heard = options.console === false ? [] : lines.splice(0).filter(counts);
  return [...found, ...violations.filter(counts), ...heard];
}

const toured = new WeakSet<Page>();

/** From here on only the tour looks at this page: it collects what it finds and goes on. */
export function leaveToTour(page: Page): void {
  toured.add(page);
}

/** Throws with everything that is wrong on a page. */
export async function look(page: Page, options: LookOptions = {}): Promise<void> {
  if (toured.has(page)) return;
  const found = await findings(page, options);
  if (found.length === 0) return;
  const where = options.where ? `${options.where}: ` : '';
  throw new Error(`${where}${found.length} found\n${found.map((line) => `  ${where}${line}`).join('\n')}`);
}

async function lookOnce(page: Page, checks: Checks): Promise<readonly string[]> {
  const seen = await page.evaluate(
    (asked) => (globalThis as unknown as LookScope).lookInPage?.(asked) ?? null,
    checks,
  );
  if (seen) return seen;
  await page.evaluate(inject('lookScript'));
  return page.evaluate((asked) => (globalThis as unknown as LookScope).lookInPage?.(asked) ?? [], checks);
}

interface AxeScope {
  readonly axe: {
    run: (
      part: unknown,
      options: unknown,
    ) => Promise<{
      violations: { id: string; nodes: { html: string; failureSummary: string }[] }[];
    }>;
  };
}

/**
 * What axe-core finds, all of its weights. Of a page under a modal dialog only that: what lies behind answers to nobody, and was asked
 * at a stop of its own.
 */
async function axeFinds(page: Page, how: true | 'contrast'): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(inject('axeScript'));
  return page.evaluate(
    async (only) => {
      const scope = globalThis as unknown as AxeScope;
      const dialog = [...document.querySelectorAll('dialog:modal')].at(-1);
      const { violations } = await scope.axe.run(dialog ?? document, {
        resultTypes: ['violations'],
        ...(only ? { runOnly: only } : {}),
      });
      return violations.flatMap(({ id, nodes }) =>
        nodes.slice(0, 3).map((node) => {
          const why = node.failureSummary.split('\n')[1]?.trim() ?? '';
          return `axe ${id}: ${node.html.replace(/\s+/g, ' ').slice(0, 120)} ${why}`;
        }),
      );
    },
    how === 'contrast' ? ['color-contrast', 'scrollable-region-focusable'] : null,
  );
}

/** Runs a work with letters twice as large, as a person may have set their tablet to. */
export async function withLargeText(page: Page, work: () => Promise<void>): Promise<void> {
  const size = (percent: string) =>
    page.evaluate((value) => {
      document.documentElement.style.fontSize = value;
    }, percent);
  await size('212.5%'); // twice the 106.25 % that the app's own sheet sets
  await work();
  await size('');
}

/** Runs a work as a tablet stands that is set for gloves and for the left hand. */
export async function withGloves(page: Page, work: () => Promise<void>): Promise<void> {
  const set = (on: boolean) =>
    page.evaluate((isOn) => {
      document.documentElement.toggleAttribute('data-gloves', isOn);
      document.documentElement.dataset['hand'] = isOn ? 'left' : '';
    }, on);
  await set(true);
  await work();
  await set(false);
}

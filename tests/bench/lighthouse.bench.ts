// What does Lighthouse make of a first visit on a tablet in a hall? Processor 4 times slower, 10 Mbit/s, 40 ms there and back, the tablet's
// own screen; performance, accessibility and best practices. Method: its own simulation of the network and the processor, the median of
// some visits, each with an empty cache; the empty plant's server serves, compressed as it does. Its scores are its own: version 12.2.3.
// What it measured: First Contentful Paint 10 %, Speed Index 10 %, Largest Contentful Paint 25 %, Total Blocking Time 30 %, Layout Shift 25 %.

import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { chromiumPath, quietSwitches } from '../e2e/support/browser.ts';
import { freePort, startDemo } from '../e2e/support/demo.ts';
import { startServe } from '../e2e/support/serve.ts';
import { percentile } from './app-page.ts';

const VISITS = Number(process.env['REELWARD_TIMES'] ?? 5);
/** A category of its report that is told. */
const categories = ['performance', 'accessibility', 'best-practices'] as const;
const metrics = [
  'first-contentful-paint',
  'largest-contentful-paint',
  'speed-index',
  'total-blocking-time',
  'cumulative-layout-shift',
] as const;

interface Audit {
  readonly id: string;
  readonly title: string;
  readonly score: number | null;
  readonly numericValue?: number;
  readonly details?: { readonly items?: readonly unknown[] };
}
interface Report {
  readonly lhr: {
    readonly lighthouseVersion: string;
    readonly categories: Readonly<
      Record<
        string,
        { readonly score: number | null; readonly auditRefs: readonly { readonly id: string }[] }
      >
    >;
    readonly audits: Readonly<Record<string, Audit>>;
  };
}
type Lighthouse = (url: string, flags: object, config: object) => Promise<Report>;

/** It is installed beside the benches, not for everybody. */
async function fetchLighthouse(): Promise<Lighthouse> {
  const beside = createRequire(path.resolve('tests/bench/package.json'));
  const found = beside.resolve('lighthouse');
  const module = (await import(pathToFileURL(found).href)) as { readonly default: Lighthouse };
  return module.default;
}

const config = {
  extends: 'lighthouse:default',
  settings: {
    onlyCategories: categories,
    formFactor: 'mobile', // it knows no tablets: the scale is that of devices with a battery
    screenEmulation: { mobile: true, width: 1280, height: 800, deviceScaleFactor: 1, disabled: false },
    throttlingMethod: 'simulate',
    throttling: { cpuSlowdownMultiplier: 4, throughputKbps: 10_240, rttMs: 40, requestLatencyMs: 0 },
  },
};

/** Audits under the whole mark in the last report, but for what a metric tells. */
function lost({ lhr }: Report): readonly string[] {
  return ['accessibility', 'best-practices'].flatMap((name) =>
    (lhr.categories[name]?.auditRefs ?? []).flatMap(({ id }) => {
      const audit = lhr.audits[id];
      if (audit?.score === null || audit === undefined || audit.score >= 1) return [];
      return [`${name}: ${id} ${audit.score}: ${JSON.stringify(audit.details?.items ?? []).slice(0, 400)}`];
    }),
  );
}

async function measure(name: string, url: string, lighthouse: Lighthouse): Promise<void> {
  const reports: Report[] = [];
  for (let visit = 0; visit < VISITS; visit++) {
    const port = await freePort();
    const args = [...quietSwitches, `--remote-debugging-port=${port}`];
    const browser = await chromium.launch({ executablePath: chromiumPath(), args });
    try {
      reports.push(await lighthouse(url, { port, logLevel: 'error' }, config));
    } finally {
      await browser.close();
    }
  }
  const median = (of: (report: Report) => number) => percentile(reports.map(of), 0.5);
  console.log(`${name}, Lighthouse ${reports[0]?.lhr.lighthouseVersion}, ${VISITS} visits, medians`);
  for (const category of categories)
    console.log(
      `  ${category} ${(100 * median(({ lhr }) => lhr.categories[category]?.score ?? Number.NaN)).toFixed(0)}`,
    );
  for (const metric of metrics)
    console.log(
      `  ${metric} ${median(({ lhr }) => lhr.audits[metric]?.numericValue ?? Number.NaN).toFixed(metric === 'cumulative-layout-shift' ? 3 : 0)}`,
    );
  for (const line of new Set(reports.flatMap(lost))) console.log(`  ${line}`);
}

const lighthouse = await fetchLighthouse();
const [plant, demo] = await Promise.all([startServe(), startDemo()]);
try {
  await measure('an empty plant', plant.url, lighthouse);
  await measure('the demo plant', demo.url, lighthouse);
} finally {
  await Promise.all([plant.stop(), demo.stop()]);
}

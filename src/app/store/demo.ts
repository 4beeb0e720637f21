// On the demo server the plant's log is taken in once, as another tablet's entries, and the practice labels are kept beside it.

import * as z from 'zod/mini';
import { entrySchema } from '../../../shared/log/entry.ts';
import type { App } from '../app.ts';
import { keep, readKept } from './preferences.ts';

const labelsSchema = z.array(
  z.strictObject({
    id: z.string(),
    group: z.string(),
    title: z.string(),
    hint: z.string(),
    codes: z.array(z.strictObject({ text: z.string(), format: z.nullable(z.string()) })),
  }),
);

/** A label on the screen to practise with. */
export type PracticeLabel = Readonly<z.output<typeof labelsSchema>[number]>;

const labelsKey = 'practice-labels';

/** True where this page was served by the demo. */
export function isDemo(): boolean {
  return document.querySelector('meta[name="reelward-demo"]') !== null;
}

/** Takes the demo plant in where the log knows no line yet; a failure leaves an empty plant, which works too. */
export async function loadDemo(app: App): Promise<void> {
  if (!isDemo() || app.store.floor().lines.size > 0) return;
  try {
    const lines = (await (await fetch('/demo/log.ndjson')).text()).split('\n').filter((line) => line !== '');
    await app.store.takeIn(lines.map((line) => z.parse(entrySchema, JSON.parse(line))));
    await keep(
      app.store.cache,
      labelsKey,
      z.parse(labelsSchema, await (await fetch('/demo/labels.json')).json()),
    );
  } catch (error) {
    app.notice.value = { tone: 'care', text: `The demo plant could not be loaded: ${String(error)}` };
  }
}

/** The practice labels; empty outside the demo. */
export async function practiceLabels(app: App): Promise<readonly PracticeLabel[]> {
  return (await readKept<readonly PracticeLabel[]>(app.store.cache, labelsKey)) ?? [];
}

// On the demo server the plant's log is taken in once, as another tablet's entries, and the practice labels are kept beside it.

import * as z from 'zod/mini';
import type { Entry } from '../../../shared/log/entry.ts';
import { entrySchema } from '../../../shared/log/entry-schema.ts';
import type { App } from '../app.ts';
import { bySlices } from '../device/slices.ts';
import { keep, readKept } from '../store/preferences.ts';
import { demoWords } from '../words/demo.ts';
import { say } from '../words/words.ts';
import { type DemoState, followPlay } from './play.ts';

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
const openedKey = 'demo-opened';
/** A demo that was opened anew this much later plays another shift; the log kept here is yesterday's. */
const STALE_MS = 3_600_000;

/** Takes the demo plant in where the log knows no line yet, and follows it where it plays; a failure leaves what is here. */
export async function loadDemo(app: App, state: DemoState | null): Promise<void> {
  if (state === null) return;
  try {
    const isFresh = app.store.floor().lines.size === 0;
    if (!isFresh) await offerFreshStart(app, state);
    if (!isFresh && !state.live) return;
    const lines = (await (await fetch('/demo/log.ndjson')).text()).split('\n').filter((line) => line !== '');
    await app.store.takeIn(await bySlices(readEntries(lines)));
    if (isFresh) {
      await keep(app.store.cache, openedKey, state.openedMs);
      const labels = z.parse(labelsSchema, await (await fetch('/demo/labels.json')).json());
      await keep(app.store.cache, labelsKey, labels);
    }
    if (state.live) followPlay(app, lines.length);
  } catch (error) {
    app.notice.value = { tone: 'care', text: say(demoWords).failed(String(error)) };
  }
}

function* readEntries(lines: readonly string[]): Generator<undefined, readonly Entry[]> {
  const entries: Entry[] = [];
  for (const line of lines) {
    entries.push(z.parse(entrySchema, JSON.parse(line)));
    yield;
  }
  return entries;
}

/** Where the demo was started anew since, offers its fresh shift; the old practice log goes with it. */
async function offerFreshStart(app: App, state: DemoState): Promise<void> {
  const kept = await readKept<number>(app.store.cache, openedKey);
  if (kept !== null && state.openedMs - kept < STALE_MS) return;
  const words = say(demoWords);
  app.notice.value = {
    tone: 'plain',
    text: words.stale,
    act: {
      label: words.fresh,
      run: () => {
        const remove = async () => {
          await app.store.close();
          await Promise.all([app.store.log.delete(), app.store.cache.delete()]);
          location.reload();
        };
        remove().catch(() => location.reload()); // another window holds it: the reload asks again
      },
    },
  };
}

/** The practice labels; empty outside the demo. */
export async function practiceLabels(app: App): Promise<readonly PracticeLabel[]> {
  return (await readKept<readonly PracticeLabel[]>(app.store.cache, labelsKey)) ?? [];
}

// Entries: as they arrive at the server and at a tablet, as an export brings them, and as the floor folds them.

import { applyEntry } from '../../shared/floor/fold.ts';
import { emptyState } from '../../shared/floor/state.ts';
import { verifyChains } from '../../shared/log/chain.ts';
import { type Entry, entryId } from '../../shared/log/entry.ts';
import { entrySchema } from '../../shared/log/entry-schema.ts';
import { exportLog } from '../../shared/log/export.ts';
import { parseExport } from '../../shared/log/export-read.ts';
import { exportColumns, guardFormula, itemToCells, itemToJson } from '../../shared/log/export-rows.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { canonicalText, draftOf, hashDraft } from '../../shared/log/seal.ts';
import { checkPulled } from '../../src/app/sync/check.ts';
import { readEntry } from '../../src/server/checked.ts';
import { isPlainEntry } from '../../src/server/envelope.ts';
import { Refused } from '../../src/server/http/refuse.ts';
import { makeChain, newKey } from '../contract/entries.ts';
import { payloadExamples } from '../shared/floor/examples.ts';
import { beginStory, counted, started, tellPlant, verified } from '../shared/floor/story.ts';
import { mutateJson } from './jsons.ts';
import { type FuzzTarget, textTarget } from './target.ts';
import { mutateText } from './texts.ts';
import { parsed } from './wire.ts';

const story = beginStory();
tellPlant(story);
story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'L-1', reel: 'K1' }));
story.tell('run.started', started('run-1'));
story.tell('panels.counted', counted('run-1', 4), { tablet: 'T2' });
const told = [...story.entries].sort(compareEntries);
const signed = makeChain({
  tablet: 't1',
  count: 2,
  key: newKey(),
  payload: (seq) => ({ text: 'é 😀', seq, deep: { list: [1, [2.5], null] } }),
});
const entries = [...told, ...signed];

const onEntries: FuzzTarget = textTarget({
  name: 'entries at the server',
  share: 150_000,
  input: (plan) => mutateJson(entries, plan),
  read: (text) => {
    const value = parsed(text);
    // The server's quick look says yes to no more than its schema does, but for what a payload may hold.
    if (!isPlainEntry(value)) return;
    const entry = value as Entry;
    try {
      const arrived = readEntry(entry);
      if (arrived.body !== canonicalText(draftOf(entry))) throw new Error('another text than RFC 8785 says');
      if ((arrived.bodyHash === entry.hash) !== (hashDraft(entry) === entry.hash))
        throw new Error('another hash');
      if (!entrySchema.safeParse(value).success) throw new Error('the schema refuses it');
    } catch (error) {
      if (!(error instanceof Refused) || error.code !== 'bad-entry') throw error;
    }
  },
});

const onPulled: FuzzTarget = textTarget({
  name: 'entries at a tablet',
  share: 60_000,
  input: (plan) => mutateJson(entries, plan),
  read: async (text) => {
    const value = parsed(text);
    const { entries: taken, quarantined } = await checkPulled([value], {
      log: {},
      serverMs: Date.UTC(2026, 2, 3),
    });
    if (taken.length + quarantined.length !== 1) throw new Error('neither taken nor set aside');
    if (
      taken[0] &&
      !entries.some((one) => canonicalText(draftOf(one)) === canonicalText(draftOf(taken[0] as Entry)))
    )
      throw new Error('taken, though nobody sealed it');
  },
});

const items = exportLog(told);
const lines = items.map(itemToJson).join('\n');
const names = new Map<string, string>();
const csv = [
  exportColumns.join(','),
  ...items.map((item) => {
    const cells = itemToCells(item, names);
    return exportColumns.map((column) => `"${guardFormula(cells[column]).replaceAll('"', '""')}"`).join(',');
  }),
].join('\r\n');

const onExports: FuzzTarget = textTarget({
  name: 'exports',
  share: 15_000,
  input: (plan) =>
    mutateText(
      {
        samples: [lines.slice(0, 6_000), csv.slice(0, 6_000)],
        parts: /([\n,;\t{}:])/,
        odd: ['{"omitted":{}}', '"entry"', '{}'],
      },
      plan,
    ),
  read: (text) => {
    const reading = parseExport(text);
    verifyChains(reading.entries, { omitted: reading.omitted });
  },
});

/** One entry of each kind, behind the story's. */
const examples = Object.entries(payloadExamples).map(([kind, payload]) => ({ kind, payload }));

const onFolds: FuzzTarget = textTarget({
  name: 'entries at the fold',
  share: 25_000,
  input: (plan) => mutateJson(examples, plan),
  read: (text) => {
    const value = parsed(text);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
    const { kind, payload } = value as { kind?: unknown; payload?: unknown };
    if (typeof kind !== 'string' || typeof payload !== 'object' || payload === null || Array.isArray(payload))
      return;
    const state = emptyState();
    for (const entry of told) applyEntry(state, entry);
    const last = told.at(-1) as Entry;
    const next = {
      ...last,
      kind,
      payload: payload as Entry['payload'],
      seq: last.seq + 1,
      hlc: { ms: last.hlc.ms + 1, n: 0 },
    };
    // Twice: the second meets what the first left behind.
    for (const entry of [next, { ...next, seq: next.seq + 1 }]) {
      if (typeof applyEntry(state, entry) !== 'boolean') throw new Error(`no answer for ${entryId(entry)}`);
    }
  },
});

/** All of it. */
export const entryTargets: readonly FuzzTarget[] = [onEntries, onPulled, onExports, onFolds];

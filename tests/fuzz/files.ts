// Files that people hand the program or put in a folder of its own: a plant's file, and a month's file with the texts that left for it.

import { createHash } from 'node:crypto';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import * as z from 'zod/mini';
import { applyEntry } from '../../shared/floor/fold.ts';
import { schemaOf } from '../../shared/floor/kinds.ts';
import {
  countPlantFile,
  plantFileKinds,
  plantFileText,
  readPlantFile,
} from '../../shared/floor/plant-file.ts';
import { emptyState } from '../../shared/floor/state.ts';
import { canonicalText, draftOf } from '../../shared/log/seal.ts';
import { piecesIn } from '../../src/cli/month-pieces.ts';
import { isTextFault, type LeftMonth } from '../../src/server/stores/month-store.ts';
import { bodyOf, createMonthTexts, type TextRow } from '../../src/server/stores/month-texts.ts';
import { placeInFile, readPlaceInFile, wholeBody, withoutText } from '../../src/server/stores/packed.ts';
import { makeChain, newKey } from '../contract/entries.ts';
import { beginStory, startMs, tellPlant } from '../shared/floor/story.ts';
import { mutateBytes } from './bytes.ts';
import { mutateJson } from './jsons.ts';
import { pick } from './plan.ts';
import { bytesTarget, type FuzzTarget, textTarget } from './target.ts';
import { mutateText } from './texts.ts';

const story = beginStory();
tellPlant(story);
story.tell('plant.named', { name: 'Fell Works', zone: 'Europe/Berlin' });
story.tell('line.idle-ruled', { line: 'L1', minutes: 12 });
story.tell('supplier.approved', { supplierPart: 'KP-77', part: 'R-100' });
story.tell('place.described', { place: 'DRY', air: 'dry', celsius: null, humidity: 5 });
const hours = { thawHours: 4, outHours: 48, openHours: 24, stencilHours: 8 };
story.tell('paste.ruled', { paste: 'P-1', ...hours, source: 'sheet' });
const plantText = plantFileText(story.floor());
if (!readPlantFile(plantText).ok) throw new Error('the file of a plant is not read');
const kinds: readonly string[] = plantFileKinds;

const onPlants: FuzzTarget = textTarget({
  name: 'files of plants',
  share: 30_000,
  input: (plan) => (plan.sample % 8 === 0 ? '\ufeff' : '') + mutateJson([JSON.parse(plantText)], plan),
  read: (text) => {
    const read = readPlantFile(text);
    if (!read.ok) return;
    countPlantFile(read.value);
    const state = emptyState();
    const [first] = story.entries;
    for (const [at, { kind, payload }] of read.value.drafts.entries()) {
      if (!kinds.includes(kind)) throw new Error(`takes ${kind}`);
      if (!z.safeParse(schemaOf(kind), payload).success) throw new Error(`a ${kind} that is none`);
      // What is taken in can be folded.
      if (
        first &&
        !applyEntry(state, { ...first, kind, payload: payload as typeof first.payload, seq: at + 2 })
      )
        throw new Error(`a ${kind} that the floor does not know`);
    }
  },
});

const chain = makeChain({
  tablet: 't1',
  count: 6,
  key: newKey(),
  payload: (seq) => ({ text: 'é 😀'.repeat(seq), deep: { list: [1, [2.5], null] } }),
});
const lines = chain.map((entry) => JSON.stringify(entry));
const lots = [lines.slice(0, 2), lines.slice(2, 5), lines.slice(5)].map((lot) =>
  gzipSync(`${lot.join('\n')}\n`),
);
const whole = Uint8Array.from(Buffer.concat(lots));
const starts = lots.map((_, at) => lots.slice(0, at).reduce((sum, lot) => sum + lot.length, 0));
const rows: readonly TextRow[] = chain.map((entry, at) => ({
  tablet: entry.tablet,
  epoch: entry.epoch,
  seq: entry.seq,
  kind: entry.kind,
  hlc_ms: entry.hlc.ms,
  hlc_n: entry.hlc.n,
  at_ms: Date.parse(entry.at),
  pos: at + 1,
  hash: entry.hash,
  body: placeInFile({ piece: at < 2 ? 0 : at < 5 ? 1 : 2, line: at < 2 ? at : at < 5 ? at - 2 : 0 }),
}));
const folder = mkdtempSync(join(tmpdir(), 'reelward-fuzz-'));
const month: LeftMonth = {
  month: '2026-03',
  file: 'month-2026-03.jsonl.gz',
  bytes: whole.length,
  sha256: createHash('sha256').update(whole).digest('hex'),
  pieces: starts,
  texts: rows.length,
  leftMs: startMs,
  afterPos: 0,
  untilPos: rows.length,
};

/** Fills one row; why not is an answer of its own. */
async function fill(row: TextRow): Promise<string | null> {
  try {
    const [filled] = await createMonthTexts(folder, async () => [month]).fill([row]);
    return filled ? wholeBody(filled) : null;
  } catch (error) {
    if (isTextFault(error)) return null;
    throw error;
  }
}
const bodies = chain.map((entry) => canonicalText(draftOf(entry)));
writeFileSync(join(folder, month.file), whole);
for (const [at, row] of rows.entries())
  if ((await fill(row)) !== bodies[at]) throw new Error('the month to begin with is not read');

const onMonths: FuzzTarget = bytesTarget({
  name: 'files of months',
  share: 10_000,
  input: (plan) => mutateBytes([whole, ...lots.map((lot) => Uint8Array.from(lot))], plan),
  read: async (bytes, { sample }) => {
    writeFileSync(join(folder, month.file), bytes);
    const row = pick(rows, sample);
    const text = await fill(row);
    // Whatever the file holds, no other text than the one that left comes out of it.
    if (text !== null && text !== bodies[row.pos - 1]) throw new Error('another text');
    for (const piece of piecesIn(Buffer.from(bytes))) for (const line of piece?.lines ?? []) bodyOf(line);
  },
});

const onPlaces: FuzzTarget = textTarget({
  name: 'places of texts',
  share: 20_000,
  input: (plan) =>
    mutateText(
      {
        samples: [...rows.map(({ body }) => body), ...lines, '@16777216 99999'],
        parts: /([@ ,:{}"])/,
        odd: ['@', '@0', '@0 0 0', '@-1 0', '@1e3 0', '@0 9007199254740993', '@0 0\n'],
      },
      plan,
    ),
  read: async (text, { sample }) => {
    const place = readPlaceInFile(text);
    const row = { ...pick(rows, sample), body: text };
    if (place) {
      if (!(place.piece >= 0 && place.line >= 0)) throw new Error(`a place of ${text}`);
      wholeBody(withoutText(row));
      writeFileSync(join(folder, month.file), whole);
      const filled = await fill(row);
      if (filled !== null && filled !== bodies[row.pos - 1]) throw new Error('another text');
    }
    bodyOf(text);
  },
});

/** All of it. */
export const fileTargets: readonly FuzzTarget[] = [onPlants, onMonths, onPlaces];

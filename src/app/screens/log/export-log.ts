// Exports what the filters show, with the seal of every entry. Read in chunks, so that a long log does not fill the memory
// before it is written; the workbook's writer is loaded only when one is wanted.

import { standOfKind } from '../../../../shared/floor/acts.ts';
import type { SettledAs } from '../../../../shared/floor/kinds-rights.ts';
import { takeName } from '../../../../shared/floor/people.ts';
import { withoutSecrets } from '../../../../shared/floor/secrets.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import {
  createExporter,
  type ExportFilter,
  type ExportItem,
  isOmitted,
} from '../../../../shared/log/export.ts';
import type { ExportFormat } from '../../../../shared/log/export-formats.ts';
import {
  csvHeader,
  entryCellsOf,
  itemToCsv,
  itemToJson,
  type PeopleNames,
  type RightOf,
} from '../../../../shared/log/export-rows.ts';
import { parseNote } from '../../../../shared/log/note.ts';
import { parsePlantList } from '../../../../shared/log/plant-list.ts';
import { makeProofRecord } from '../../../../shared/log/proof-record.ts';
import { nameInFile } from '../../device/save-file.ts';
import { readPlantKeys } from '../../store/plant-keys.ts';
import { readSignedHeads, signHead, withHeads } from '../../store/signed-heads.ts';
import type { Store } from '../../store/store.ts';
import { createEndSigner } from './sign-ends.ts';

/** The exported file and how many entries it holds. */
export interface ExportedFile {
  readonly blob: Blob;
  readonly rows: number;
}

const mediaTypes: Readonly<Record<ExportFormat, string>> = {
  csv: 'text/csv;charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  json: 'application/x-ndjson',
};

/** Builds the export of a tablet's log. */
export async function exportStore(
  store: Store,
  filter: ExportFilter,
  format: ExportFormat,
): Promise<ExportedFile> {
  const exporter = createExporter(filter);
  const parts: string[] = [];
  const items: ExportItem[] = [];
  const names = new Map<string, string>();
  let rows = 0;
  const floor = store.floor();
  const trust = store.trust();
  const rightOf = (entry: Entry) => standOfKind(floor, entry, trust) ?? '';
  const textOf = (item: ExportItem, known: PeopleNames) =>
    format === 'csv' ? itemToCsv(item, known, rightOf) : `${itemToJson(item)}\n`;
  const ends = createEndSigner(store.identity);
  const put = (whole: ExportItem) => {
    const item = withoutSecrets(whole);
    const at = format === 'xlsx' ? items.push(item) - 1 : parts.push(textOf(item, names)) - 1;
    if (isOmitted(item)) return;
    rows += 1;
    const name = names.get(item.who ?? '');
    const known = new Map(item.who === null || name === undefined ? [] : [[item.who, name]]);
    ends.take(item, (signed) => {
      if (format === 'xlsx') items[at] = signed;
      else parts[at] = textOf(signed, known);
    });
  };
  const { tablet } = store.identity;
  await signHead(store.log, store.identity);
  const heads = await readSignedHeads(store.log);
  await store.readAll(async (entries: readonly Entry[]) => {
    for (const entry of withHeads(entries, tablet, heads)) {
      takeName(names, entry);
      for (const item of exporter.take(entry)) put(item);
      await ends.pass(entry);
    }
  });
  for (const item of exporter.end()) put(item);
  await signHead(store.log, store.identity);
  await ends.end(await readSignedHeads(store.log));
  if (format === 'json') parts.push(...(await plantLine(store)));
  if (format === 'xlsx') return { blob: await workbook(items, names, rightOf), rows };
  // A byte order mark, so that spreadsheets take the CSV for UTF-8.
  const head = format === 'csv' ? ['\ufeff', csvHeader()] : [];
  return { blob: new Blob([...head, ...parts], { type: mediaTypes[format] }), rows };
}

/** What the plant said of its tablets' keys when it was last heard: without it nothing in the file is proven. */
async function plantLine(store: Store): Promise<readonly string[]> {
  const keys = await readPlantKeys(store.log);
  const list = keys === null ? null : parsePlantList(parseNote(keys)?.text ?? '');
  if (keys === null || !list) return [];
  const marked = [...store.floor().unproven.values()];
  const those = (as: SettledAs | undefined) =>
    marked.filter(({ settled }) => settled?.as === as).map(({ entry }) => entry);
  const rights = { unproven: those(undefined), confirmed: those('confirmed'), rejected: those('rejected') };
  const record = makeProofRecord(
    { keys, rights },
    { epoch: store.identity.epoch, atMs: Date.parse(list.at) },
  );
  return [`${itemToJson(record)}\n`];
}

async function workbook(items: readonly ExportItem[], names: PeopleNames, rightOf: RightOf): Promise<Blob> {
  const { writeWorkbook } = await import('../../../../shared/log/workbook.ts');
  const entryCells = items.reduce((most, item) => Math.max(most, entryCellsOf(item)), 1);
  const parts: Uint8Array<ArrayBuffer>[] = [];
  for await (const part of writeWorkbook([items], { entryCells, namesOf: () => names, rightOf }))
    parts.push(part as Uint8Array<ArrayBuffer>); // never shared memory
  return new Blob(parts, { type: mediaTypes.xlsx });
}

/** The file's name: what, of which plant ('' = nobody named it), from when. `nowMs`: ms since 1970. */
export function exportName(format: ExportFormat, nowMs: number, plant: string): string {
  return `reelward-log-${stampOf(nowMs, plant)}.${format === 'json' ? 'ndjson' : format}`;
}

/** Of which plant ('' = nobody named it) and from when a file is, as part of its name. `nowMs`: ms since 1970. */
export function stampOf(nowMs: number, plant: string): string {
  const stamp = new Date(nowMs).toISOString().slice(0, 16).replaceAll(/[-:]/g, '').replace('T', '-');
  return [nameInFile(plant), stamp].filter((part) => part !== '').join('-');
}

// One entry on paper: `reelward log record` takes it out of an export with the proof that it is in the plant's log, as a text that fits a QR
// code, or as a page that has it; `reelward log verify --record` checks what was scanned, without the log.

import { writeFile } from 'node:fs/promises';
import { generate } from 'lean-qr';
import { lacksSecrets } from '../../shared/floor/secrets.ts';
import { fromHex } from '../../shared/log/bytes.ts';
import { chainId, type Entry, entryId } from '../../shared/log/entry.ts';
import { type EntryProof, noteForPaper, parseEntryProof, recordText } from '../../shared/log/entry-proof.ts';
import { entrySchema } from '../../shared/log/entry-schema.ts';
import type { ExportReading } from '../../shared/log/export-read.ts';
import { type NoteKey, parseNote } from '../../shared/log/note.ts';
import { readProofRecord } from '../../shared/log/proof-record.ts';
import { sealedHash } from '../../shared/log/seal.ts';
import { inclusionHolds, leafHash } from '../../shared/log/tree.ts';
import { parseTreeHead } from '../../shared/log/tree-head.ts';
import { noteHolds } from '../server/plant-key.ts';
import { type CommandIo, NotUnderstood, parseCall, printJson, readText } from './command.ts';
import { readLogFile } from './log-file.ts';
import { saySeen, seenUnder, tabletNames } from './log-seen.ts';
import { entryProver } from './log-tree.ts';
import { type KnownKeys, keysInExport, sayPlant } from './plant-keys.ts';

/** For the command's help. */
export const recordHelp = `log record FILE --entry ID [--page FILE]
takes one entry out of a JSON export by the server, with the proof that it is in the plant's log and the signed head: a text for a QR
code, with the entry itself where that fits. --page writes a page for paper with the code on it. log verify --record FILE checks
such a text without the log; - for what a scanner types.`;

const HASH_BYTES = 32;

/** The command's act. */
export async function record(args: readonly string[], io: CommandIo): Promise<number> {
  const text = { type: 'string' } as const;
  const { values, positionals } = parseCall(
    args,
    { entry: text, page: text },
    { min: 1, max: 1, names: 'one FILE' },
  );
  const [file = '-'] = positionals;
  if (values.entry === undefined)
    throw new NotUnderstood('--entry: expected an entry such as tablet/epoch/7, found nothing');
  const reading = await readLogFile(file, io);
  const entry = reading.entries.find((one) => entryId(one) === values.entry);
  if (!entry) throw new NotUnderstood(`--entry: ${file} has no entry ${values.entry}`);
  const told = recordOf(reading, entry);
  if (!told)
    throw new NotUnderstood(
      `${file}: has no proof for ${values.entry}: expected a JSON export by the server, whole and unchanged`,
    );
  if (values.page === undefined) io.stdout(told);
  else await writePage(values.page, pageOf(entry, told));
  return 0;
}

/** The record's text; null where the export does not prove the entry. */
function recordOf(reading: ExportReading, entry: Entry): string | null {
  const [line] = reading.proofs ?? [];
  const { key } = keysInExport(reading.proofs ?? []).plant ?? {};
  const proof = line && readProofRecord(line);
  const hash = fromHex(entry.hash, HASH_BYTES);
  if (!key || !proof?.tree || !hash) return null;
  const prove = entryProver(reading, entry);
  // A head that tablets signed, where the file has all that leads to it; else the file's own.
  for (const head of [...(proof.witnessed ?? []).map((one) => one.head), proof.tree.head]) {
    const note = parseNote(head);
    const size = note ? parseTreeHead(note.text)?.size : undefined;
    const place = size === undefined ? null : prove(size);
    const signed = note && noteForPaper(note, key);
    if (!place || signed === null) continue;
    const rest = { ...place, note: signed };
    if (judge({ ...rest, extra: hash }, key).fault !== null) continue;
    return recordText(rest, { entry: lacksSecrets(entry) ? null : entry, hash });
  }
  return null;
}

/** What a record holds, and what is wrong with it. `key`: null where nobody is known who could have signed. */
function judge(
  { extra, index, proof, note: text }: EntryProof,
  key: NoteKey | null,
): {
  readonly hash: string | null;
  readonly entry: Entry | null;
  readonly size: number;
  readonly isSigned: boolean;
  readonly fault: string | null;
} {
  const entry = extra.length === HASH_BYTES ? null : readEntry(extra);
  const hash = extra.length === HASH_BYTES ? Buffer.from(extra).toString('hex') : (entry?.hash ?? null);
  const note = parseNote(text);
  const head = note && parseTreeHead(note.text);
  const size = head?.size ?? 0;
  const no = (fault: string) => ({ hash, entry, size, isSigned: false, fault });
  if (hash === null) return no('the entry in it cannot be read');
  if (entry && sealedHash(entry) !== hash) return no("the entry's text is not what its hash says");
  const leaf = fromHex(hash, HASH_BYTES);
  if (!note || !head || !leaf) return no('the head in it cannot be read');
  if (!inclusionHolds({ leaf: leafHash(leaf), index, size, root: head.root }, proof))
    return no('the entry is not at its place in the log of that head');
  if (key && (head.origin !== key.name || !noteHolds(note, key)))
    return no("its head is not signed by the plant's key");
  return { hash, entry, size, isSigned: key !== null, fault: null };
}

function readEntry(bytes: Uint8Array): Entry | null {
  try {
    const checked = entrySchema.safeParse(
      JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)),
    );
    return checked.success ? checked.data : null;
  } catch {
    return null; // no UTF-8, or no JSON
  }
}

/** Checks a record; `known`: whose keys count, `reading`: an export that may hold the entry. Prints the answer; exit code. */
export async function verifyRecord(
  file: string,
  {
    known,
    fault: keyFault,
    reading,
  }: { readonly known: KnownKeys; readonly fault: string | null; readonly reading: ExportReading | null },
  io: CommandIo,
): Promise<number> {
  const read = parseEntryProof(await readText(file, io));
  if (!read) throw new NotUnderstood(`--record ${file}: expected a record as log record prints it`);
  const { hash, entry, size, isSigned, fault } = judge(read, known.plant?.key ?? null);
  const there =
    entry ?? reading?.entries.find((one) => one.hash === hash && sealedHash(one) === hash) ?? null;
  const seen = seenUnder(read.note, {
    listed: isSigned ? known.keys : [],
    names: tabletNames(reading?.entries ?? []),
  });
  const why = fault ?? keyFault ?? seen.fault;
  const isProven = why === null && isSigned;
  printJson(
    {
      ok: why === null,
      proven: isProven ? 1 : 0,
      claimed: isProven ? 0 : 1,
      hash,
      place: { index: read.index, size },
      entry: there,
      id: there === null ? null : entryId(there),
      chain: there === null ? null : chainId(there),
      keysFrom: known.from,
      plant: known.plant === null ? null : sayPlant(known.plant),
      seenBy: seen.by,
    },
    io,
  );
  const told = saySeen(seen.by);
  if (told !== null) io.stderr(`reelward log: ${told}\n`);
  if (why !== null) io.stderr(`reelward log: the record: ${why}\n`);
  return why === null ? 0 : 1;
}

async function writePage(file: string, page: string): Promise<void> {
  try {
    await writeFile(file, page);
  } catch (error) {
    throw new NotUnderstood(`--page ${file}: cannot be written (${(error as NodeJS.ErrnoException).code})`);
  }
}

const escaped = (text: string) => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** A page for paper: what the entry says, and the code. */
function pageOf(entry: Entry, told: string): string {
  const facts: [string, string][] = [
    ['entry', entryId(entry)],
    ['at', entry.at],
    ['kind', entry.kind],
    ['who', entry.who ?? '—'],
    ...(lacksSecrets(entry)
      ? []
      : Object.entries(entry.payload).map(([name, value]): [string, string] => [
          name,
          typeof value === 'string' ? value : JSON.stringify(value),
        ])),
    ['hash', entry.hash],
  ];
  const rows = facts
    .map(([name, value]) => `<tr><th>${escaped(name)}</th><td>${escaped(value)}</td></tr>`)
    .join('\n');
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${escaped(entryId(entry))}</title>
<style>body{font:11pt sans-serif;margin:15mm}table{border-collapse:collapse}th{text-align:left;vertical-align:top;padding-right:6mm}td{word-break:break-all}svg{margin-top:8mm}</style>
</head><body>
<table>
${rows}
</table>
${codeOf(told)}
</body></html>
`;
}

const MODULE_MM = 0.45;
const QUIET = 4;

/** The code as a drawing in millimetres. */
function codeOf(told: string): string {
  const code = generate(told);
  let path = '';
  for (let y = 0; y < code.size; y += 1)
    for (let x = 0; x < code.size; x += 1) if (code.get(x, y)) path += `M${x} ${y}h1v1h-1z`;
  const side = code.size + 2 * QUIET;
  const mm = (side * MODULE_MM).toFixed(1);
  return `<svg width="${mm}mm" height="${mm}mm" viewBox="${-QUIET} ${-QUIET} ${side} ${side}" shape-rendering="crispEdges"><path d="${path}"/></svg>`;
}

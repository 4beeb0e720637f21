// `reelward log`: is an exported log as it was written, and a part of it in another form.

import { writeFile } from 'node:fs/promises';
import { z } from 'zod';
import { lacksSecrets, withoutSecrets } from '../../../shared/floor/secrets.ts';
import type { Checkpoint } from '../../../shared/log/chain.ts';
import { isoMoment } from '../../../shared/log/entry-schema.ts';
import { type ExportFilter, exportLog } from '../../../shared/log/export.ts';
import { exportFormats } from '../../../shared/log/export-formats.ts';
import type { ExportFault, ExportReading } from '../../../shared/log/export-read.ts';
import { type ExportBreak, verifyExport } from '../../../shared/log/export-verify.ts';
import { parseNote } from '../../../shared/log/note.ts';
import {
  type Command,
  type CommandIo,
  NotUnderstood,
  parseCall,
  parseJson,
  printJson,
  readText,
} from '../command.ts';
import {
  checkSignatures,
  exportLines,
  exportWorkbook,
  namesAt,
  readLogFile,
  rightsFrom,
  rightsIn,
} from '../log-file.ts';
import { checkPasskeys } from '../log-passkeys.ts';
import { picturesHelp, picturesIn } from '../log-pictures.ts';
import { broughtIn, countProven } from '../log-proven.ts';
import { record, recordHelp, verifyRecord } from '../log-record.ts';
import { saySeen, seenIn } from '../log-seen.ts';
import { checkTree, proofOfPart } from '../log-tree.ts';
import { readWitnesses, witness, witnessesOf, witnessHelp } from '../log-witness.ts';
import { type KnownKeys, keysInExport, keysInFile, readFingerprint, sayPlant } from '../plant-keys.ts';

const help = `reelward log verify FILE [--keys FILE] [--plant FINGERPRINT] [--heads FILE [--witness FILE]] [--pictures ARCHIVE|FOLDER]
reelward log verify --record FILE [EXPORT] [--keys FILE] [--plant FINGERPRINT]
reelward log record FILE --entry ID [--page FILE]
reelward log witness --note FILE --key FILE [--keys FILE] | --make NAME --key FILE
reelward log export FILE --format ${exportFormats.join('|')} [--from MOMENT] [--to MOMENT] [--line LINE] [--slot SLOT]
                    [--who PERSON] [--verdict VERDICT] [--kind KIND ...] [--out FILE]

FILE is an exported log: JSON lines (one entry a line), CSV or XLSX; - for standard input.

verify walks every tablet's chain of hashes, checks the signatures, compares the readable columns of a table with the sealed entry
of each row, and prints one JSON document: {"entries", "tablets", "omitted", "ok", "firstBroken", "proven", "claimed", "plant",
"provenBy", "claims", "tree", "seenBy", "rights", "passkeys", "pictures", "heads", "faults", "signatures"}. The order of lines does not matter.
"proven" counts the entries vouched for by a signature that holds by a key of the plant's signed list: the list in a JSON export by the server, or
--keys FILE: a list as "reelward serve keys" prints it, an export that has one, or an own {"keys": [{"tablet", "key"}]} (65 bytes
in base64url, or as JWK). "claimed" counts all others: whoever wrote the file can have written them; "claims" says why, and
"broughtBy" which tablet of the plant signed that it brought the chain: of a tablet that the plant never let in nothing else is known.
A tablet signs the end of its chain and not each entry: a signature vouches for all before it, as far as the file holds all of that.
"signatures": {"signedTo"} says for each tablet's chain up to which number it is signed, and how many entries are "notVouched" for:
after that one, or before something that the file leaves out.
That the list is your plant's nobody but you can say: compare "plant": {"fingerprint"} with what "reelward serve" prints at its start,
or give it as --plant; another plant's list is then not taken, and the answer is no.
"tree" says where a JSON export by the server brings the signed head of the plant's whole log: how many "entries" of the file are proved
to be in it, how many of the log the file leaves out ("leftOut"; 0: the file is the whole log up to that head), and of how many the
head says nothing ("beyond"). A file whose entries are not those of the head is broken.
"seenBy" lists the tablets of the plant's list that signed a head with which this log begins: each checked that the log grew from what it had
seen, up to its "size". Signatures of tablets that are not in the list, or that had been shut out, count for nothing.
"rights" lists the entries of a JSON export that took a lead or an engineer and that no ticket of the plant's server stood behind when the
file was written: "unproven", or what a lead said of them since. It is the word of whoever wrote the file, and not checked again here.
"passkeys" says of acts that a person signs (holds, releases, steps …) which were signed by a passkey of that person ("proven"), where
that proves nothing and why ("refused"), and which rest on a PIN that only the tablet tells of ("pinOnly"). The keys are those that the
file's own entries registered: who registered each is told beside it ("registered", "registeredBy").
"textsLeftOut" lists entries that hold a badge or what checks a PIN: an export leaves these out, so that the rest of the entry's text is
only claimed; its hash, its place and its signature are checked as ever.
A cut-off end can only be seen with such a head, or with --heads: an earlier answer of verify (or its "heads"), kept elsewhere. Of an
earlier answer with a "tree", or of a signed head by itself, the log also has to begin with the log of then.
"witnesses": who of the keys in --witness (one a line, as log witness --make prints them) signed the head in --heads, and when: that the
log grew up to there from what they saw before. Whose keys those are is for you to say.
${picturesHelp}
Exit 0 whole, 1 broken (the first broken entry is also named on standard error), 2 not understood.

${recordHelp}

${witnessHelp}

export writes the wanted entries in folding order: text to standard output or --out, a workbook likewise. --from and --to are
moments such as 2026-03-02T06:00:00+01:00, both included. Entries left out are stood for by records {"omitted": ...}, so that
the export can still be verified. Exit 0 written, 2 not understood.
`;

const headsSchema = z.object({
  heads: z.array(
    z.strictObject({
      tablet: z.string(),
      epoch: z.string(),
      seq: z.int().min(1),
      hash: z.string().regex(/^[0-9a-f]{64}$/, 'expected 64 lower-case hex digits'),
    }),
  ),
  /** The head of the plant's whole log, where the earlier answer had one. */
  tree: z.object({ head: z.string() }).nullish(),
});

/** Refuses what is no log at all; a record that only does not hold is the answer, not a refusal. */
function refuseUnreadable(reading: ExportReading, file: string, strict: boolean): void {
  const fault = reading.faults.find((each) => strict || each.entry === null);
  if (!fault) return;
  throw new NotUnderstood(`${file}: ${sayFault(fault)}`);
}

function sayFault(fault: ExportFault): string {
  const where = fault.column === '' ? `line ${fault.row}` : `line ${fault.row}, ${fault.column}`;
  return `${where}: expected ${fault.wanted}, found ${fault.found === '' ? 'nothing' : fault.found}`;
}

function sayBreak({ id, fault, column, wanted, found }: ExportBreak): string {
  const where = column === null ? '' : ` in ${column}`;
  return `entry ${id}: ${fault}${where}: expected ${wanted}, found ${found === '' ? 'nothing' : found}`;
}

async function verify(args: readonly string[], io: CommandIo): Promise<number> {
  const text = { type: 'string' } as const;
  const options = { heads: text, keys: text, plant: text, witness: text, record: text, pictures: text };
  const min = args.some((arg) => /^--record(=|$)/.test(arg)) ? 0 : 1;
  const { values, positionals } = parseCall(args, options, { min, max: 1, names: 'one FILE' });
  if (values.record !== undefined) return verifyPaper(values.record, positionals[0], { wish: values, io });
  const [file = '-'] = positionals;
  const reading = await readLogFile(file, io);
  refuseUnreadable(reading, file, false);
  const earlier = values.heads === undefined ? null : await readEarlier(values.heads, io);
  const witnessed = await readWitnessed(earlier?.tree?.head, values.witness, io);
  const checkpoints: readonly Checkpoint[] = earlier?.heads ?? [];
  const { known, fault } = await knownKeys(reading, values, io);
  const signatures = checkSignatures(reading.entries, known.keys, reading.omitted);
  const report = verifyExport(reading, {
    checkpoints,
    signatureHolds: signatures.holds,
    mustBeSigned: signatures.lacksHead,
    lacksFields: lacksSecrets,
  });
  const { checked, withoutKey, signedTo } = signatures;
  const { tree, fault: treeFault } = checkTree(
    reading,
    known.plant?.key ?? null,
    earlier?.tree?.head ?? null,
  );
  const seen = seenIn(reading, tree, known);
  const pictures = values.pictures === undefined ? null : await picturesIn(values.pictures, reading, io);
  const faults = [fault, treeFault, witnessed.fault, seen.fault, pictures?.fault ?? null].filter(
    (one) => one !== null,
  );
  const ok = report.ok && faults.length === 0;
  printJson(
    {
      ...report,
      ok,
      ...countProven(reading.entries, signatures, {
        isWhole: report.ok,
        listed: known.keys,
        brought: broughtIn(reading),
      }),
      keysFrom: known.from,
      plant: known.plant === null ? null : sayPlant(known.plant),
      tree,
      witnesses: witnessed.by,
      seenBy: seen.by,
      rights: rightsIn(reading),
      passkeys: await checkPasskeys(reading.entries),
      pictures: pictures?.found ?? null,
      signatures: { checked, withoutKey, signedTo },
    },
    io,
  );
  if (report.firstBroken) io.stderr(`reelward log: ${sayBreak(report.firstBroken)}\n`);
  for (const one of faults) io.stderr(`reelward log: ${one}\n`);
  for (const told of [saySeen(seen.by), pictures?.told ?? null])
    if (told !== null) io.stderr(`reelward log: ${told}\n`);
  return ok ? 0 : 1;
}

/** An earlier answer, or a signed head by itself. */
async function readEarlier(file: string, io: CommandIo): Promise<z.infer<typeof headsSchema>> {
  const text = await readText(file, io);
  const head = parseNote(text);
  return head ? { heads: [], tree: { head: text } } : parseJson(text, headsSchema, file);
}

async function readWitnessed(head: string | undefined, file: string | undefined, io: CommandIo) {
  if (file === undefined) return { by: [], fault: null };
  if (head === undefined)
    throw new NotUnderstood('--witness: expected --heads with the head that was signed, found none');
  return witnessesOf(head, await readWitnesses(file, io));
}

/** Checks a record from paper, by keys that were given or stand in an export beside it. */
async function verifyPaper(
  record: string,
  file: string | undefined,
  {
    wish,
    io,
  }: {
    readonly wish: { readonly keys?: string | undefined; readonly plant?: string | undefined };
    readonly io: CommandIo;
  },
): Promise<number> {
  const reading = file === undefined ? null : await readLogFile(file, io);
  if (reading) refuseUnreadable(reading, file ?? '', true);
  const { known, fault } = await knownKeys(reading ?? { entries: [], omitted: [], faults: [] }, wish, io);
  return verifyRecord(
    record,
    { known: fault === null ? known : { ...known, plant: null }, fault, reading },
    io,
  );
}

/** The keys that count, and what is wrong with the list of them where something is. */
async function knownKeys(
  reading: ExportReading,
  wish: { readonly keys?: string | undefined; readonly plant?: string | undefined },
  io: CommandIo,
): Promise<{ readonly known: KnownKeys; readonly fault: string | null }> {
  const wanted = wish.plant === undefined ? null : readFingerprint(wish.plant);
  const inExport = keysInExport(reading.proofs ?? []);
  const known = wish.keys === undefined ? inExport : await keysInFile(wish.keys, io);
  const fault = known.fault ?? inExport.fault;
  if (wanted === null) return { known, fault };
  const found = known.plant === null ? 'none' : sayPlant(known.plant).fingerprint;
  if (found === wanted) return { known, fault };
  const none = { ...known, from: null, keys: [] };
  return {
    known: none,
    fault: fault ?? `the list of keys: expected one by the plant ${wanted}, found ${found}`,
  };
}

function momentOption(name: string, text: string | undefined): string | undefined {
  if (text === undefined || isoMoment.safeParse(text).success) return text;
  throw new NotUnderstood(`--${name}: expected a moment such as 2026-03-02T06:00:00+01:00, found ${text}`);
}

async function exportFile(args: readonly string[], io: CommandIo): Promise<number> {
  const text = { type: 'string' } as const;
  const { values, positionals } = parseCall(
    args,
    {
      format: text,
      from: text,
      to: text,
      line: text,
      slot: text,
      who: text,
      verdict: text,
      out: text,
      kind: { type: 'string', multiple: true },
    },
    { min: 1, max: 1, names: 'one FILE' },
  );
  const [file = '-'] = positionals;
  const format = exportFormats.find((known) => known === values.format);
  if (format === undefined) {
    throw new NotUnderstood(
      `--format: expected one of ${exportFormats.join(', ')}, found ${values.format ?? 'nothing'}`,
    );
  }
  const from = momentOption('from', values.from);
  const to = momentOption('to', values.to);
  const filter: ExportFilter = {
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(values.line === undefined ? {} : { line: values.line }),
    ...(values.slot === undefined ? {} : { slot: values.slot }),
    ...(values.who === undefined ? {} : { who: values.who }),
    ...(values.verdict === undefined ? {} : { verdict: values.verdict }),
    ...(values.kind === undefined ? {} : { kinds: values.kind }),
  };
  const reading = await readLogFile(file, io);
  refuseUnreadable(reading, file, true);
  const part = exportLog(reading.entries, filter, reading.omitted).map(withoutSecrets);
  // What the plant said of the log goes along where its form is known.
  const items = format === 'json' ? [...part, ...proofOfPart(reading, part)] : part;
  const rightOf = rightsFrom(rightsIn(reading));
  if (format === 'xlsx') {
    const bytes = await exportWorkbook(items, namesAt(reading.entries), rightOf);
    if (values.out !== undefined) await writeOut(values.out, bytes);
    else if (io.stdoutBytes) io.stdoutBytes(bytes);
    else throw new NotUnderstood('--out: expected a file for the workbook, found nothing');
    return 0;
  }
  const lines = exportLines(items, format, namesAt(reading.entries), rightOf);
  if (values.out !== undefined) await writeOut(values.out, lines.join(''));
  else io.stdout(lines.join(''));
  return 0;
}

async function writeOut(file: string, content: string | Uint8Array): Promise<void> {
  try {
    await writeFile(file, content);
  } catch (error) {
    throw new NotUnderstood(`--out ${file}: cannot be written (${(error as NodeJS.ErrnoException).code})`);
  }
}

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const [act, ...rest] = args;
  if (act === 'verify') return verify(rest, io);
  if (act === 'export') return exportFile(rest, io);
  if (act === 'record') return record(rest, io);
  if (act === 'witness') return witness(rest, io);
  throw new NotUnderstood(`expected verify, export, record or witness, found ${act ?? 'nothing'}`);
}

/** The command. */
export const command: Command = {
  name: 'log',
  summary:
    'check an exported log; write a part of it as CSV, XLSX or JSON lines; records for paper; witnesses',
  help,
  run,
};

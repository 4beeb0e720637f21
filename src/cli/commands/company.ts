// `reelward company`: several plants beside each other, out of an export of each. Where a lot, a part or a reel went, and the shift figures.

import { writeFile } from 'node:fs/promises';
import { isoMoment } from '../../../shared/log/entry-schema.ts';
import { toCsv } from '../../../shared/log/table-csv.ts';
import type { TraceQuestion } from '../../../shared/trace/question.ts';
import { type Command, type CommandIo, NotUnderstood, parseCall } from '../command.ts';
import { type PlantLog, readCompany, readPlants } from '../company.ts';
import {
  plantColumns,
  plantRow,
  type Row,
  shiftColumns,
  shiftRows,
  whereColumns,
  whereRows,
} from '../company-tables.ts';

const help = `reelward company plants EXPORT ...  [--plants FILE] [--out FILE]
reelward company where EXPORT ...   --lot LOT | --reel REEL | --part PART [--from MOMENT] [--to MOMENT] [--plants FILE] [--out FILE]
reelward company shifts EXPORT ...  --from MOMENT --to MOMENT [--plants FILE] [--out FILE]

Each EXPORT is the exported log of one plant: JSON lines as the server writes them, which bring the plant's signed list of keys, or CSV or XLSX
with that list beside it ("reelward serve keys" into brae.keys for brae.csv). Every one is checked as "reelward log verify" does; one that is broken
is named, and nothing is answered out of it. Plants share no database: a plant gives away its export and no more.

--plants FILE: the company's plants, a fingerprint a line as "reelward serve" prints it, and what the plant is called after it. The entries of a
plant that is not in it count as claimed, and the answer is no. Without it nobody has checked whose the lists are: compare the fingerprints.

plants  a row for each plant: its key, how many entries are proven and how many only claimed and why, how many of the log the export leaves out
where   rows "panels": panels that carry what is asked for, as "reelward trace" counts them, and rows "reel": reels known at the plant, where each was last
        and how many parts it has left, also pieces cut off and reels that it was joined into: "madeOf" names the others whose parts are in one.
        --from and --to bound the panels alone; jars of paste have no row "reel".
        Where plants number their own reels the same id at two plants may be two reels: part and lot tell.
        "asOf": when the export was written, by the signed list in it; what happened since, or was not sent by a tablet by then, is in no row
shifts  a row for each line of each plant: verdicts, splices, walks, stops, changeovers, lost parts between the two moments, up to where the
        export ends: "to" says where that is; no row where it ends before --from. A lane that was taken away since has its row where it built, or
        anything else was told of it.
        Lost parts of a conveyor, and the picks they are reckoned from, stand in the row of the line that has its machines

"standing" says how sure a row is: "proven": every entry of the plant's export is proven by a key of its list, and the export leaves out nothing of
the log whose signed head is in it. What a tablet had not sent by then is in no row. List and head are signed apart: "asOf" is the list's time; that
the head is as new, only a head or witness kept elsewhere says ("reelward log verify --heads"). "entry-proven": the entry that the row begins with
is proven; others that it is reckoned from are not all, or something is left out.
"claimed": it is the word of whoever wrote the file.

Two plants may be called alike: "fingerprint" tells them apart. One that is not in --plants stands under its file's name.

Columns, in their order; moments are ISO 8601, a cell is empty where nothing is known:
plants  plant, fingerprint, listSigned (moment), known (yes, no, not asked), entries, proven, claimed (entries each), claimedWhy (why, how many),
        leftOut (entries, or: not told), from, to (moments of the first and last entry), holds (yes, no), faults
where   plant, fingerprint, what (panels, reel), standing, asOf (moment), line, run, product, slot, place, reel, part, supplierPart, lot, dateCode,
        sureFirst, sureLast, possibleFirst, possibleLast (panels by number in the run, from 1), serials (codes of panels, a space between), guessed
        (what it rests on that nobody entered: in-line, label, boards), madeOf (reels), goesOn (yes, no), left (parts), at (moment), who, entry
shifts  plant, fingerprint, line, lineName, standing, from, to (moments), accepted, refused, held (verdicts each), splices, walks, stops (times each),
        stopSeconds (seconds), dryStops (stops because a slot ran dry), changeovers, picks (parts), lostParts (parts), lostPartsSd (parts, one
        standard deviation)

Answers are CSV (RFC 4180, UTF-8, a header row first), to standard output or --out; how each plant stands is said on standard error. Exit 0 found, 1 nothing found, or a plant is broken or
not in --plants, 2 not understood.
`;

const text = { type: 'string' } as const;
const options = { lot: text, reel: text, part: text, from: text, to: text, plants: text, out: text };

type Values = { readonly [K in keyof typeof options]?: string | undefined };

interface Table {
  readonly columns: readonly string[];
  readonly rowsOf: (log: PlantLog) => readonly Row[];
}

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const [act, ...rest] = args;
  if (act !== 'plants' && act !== 'where' && act !== 'shifts')
    throw new NotUnderstood(`expected plants, where or shifts, found ${act ?? 'nothing'}`);
  const { values, positionals } = parseCall(rest, options, {
    min: 1,
    max: 1_000,
    names: 'one EXPORT of each plant',
  });
  const table =
    act === 'where' ? whereTable(values) : act === 'shifts' ? shiftTable(values) : plantTable(values);
  const known = values.plants === undefined ? null : await readPlants(values.plants, io);
  const rows: Row[] = [];
  let isWhole = true;
  for await (const log of readCompany(positionals, known, io)) {
    io.stderr(`${sayPlantLog(log)}\n`);
    if (log.faults.length > 0 || log.isKnown === false) isWhole = false;
    if (act === 'plants' || log.faults.length === 0) rows.push(...table.rowsOf(log));
  }
  if (known === null)
    io.stderr(
      'Whose keys these are nobody has checked: compare the fingerprints, or give them with --plants\n',
    );
  const csv = toCsv(table.columns, rows);
  if (values.out === undefined) io.stdout(csv);
  else await writeOut(values.out, csv);
  return isWhole && rows.length > 0 ? 0 : 1;
}

function plantTable(values: Values): Table {
  refuse(values, ['lot', 'reel', 'part', 'from', 'to']);
  return { columns: plantColumns, rowsOf: (log) => [plantRow(log)] };
}

function whereTable(values: Values): Table {
  const { lot, reel, part } = values;
  const asked = { lot, reel, part, from: moment('from', values.from), to: moment('to', values.to) };
  if (lot === undefined && reel === undefined && part === undefined)
    throw new NotUnderstood('expected --lot, --reel or --part, found none');
  const question: TraceQuestion = Object.fromEntries(
    Object.entries(asked).filter(([, value]) => value !== undefined),
  );
  return { columns: whereColumns, rowsOf: (log) => whereRows(log, question) };
}

function shiftTable(values: Values): Table {
  refuse(values, ['lot', 'reel', 'part']);
  const [from, to] = [moment('from', values.from), moment('to', values.to)];
  if (from === undefined || to === undefined)
    throw new NotUnderstood('expected --from and --to, found not both');
  const span = { fromMs: Date.parse(from), toMs: Date.parse(to) };
  if (span.fromMs >= span.toMs) throw new NotUnderstood('--to: expected a moment after --from');
  return { columns: shiftColumns, rowsOf: (log) => shiftRows(log, span) };
}

function refuse(values: Values, names: readonly (keyof Values)[]): void {
  const found = names.find((name) => values[name] !== undefined);
  if (found !== undefined) throw new NotUnderstood(`--${found}: does not go with this question`);
}

function moment(name: string, value: string | undefined): string | undefined {
  if (value === undefined || isoMoment.safeParse(value).success) return value;
  throw new NotUnderstood(`--${name}: expected a moment such as 2026-03-02T06:00:00+01:00, found ${value}`);
}

/** One line on how a plant's log stands. */
function sayPlantLog({
  file,
  name,
  fingerprint,
  isKnown,
  entries,
  proven,
  leftOut,
  endsAt,
  faults,
}: PlantLog): string {
  const who = `${file}: ${name}`;
  if (faults.length > 0) return `${who}: BROKEN, nothing is answered out of it: ${faults.join('; ')}`;
  const left =
    leftOut === null ? 'the file does not tell what it leaves out' : `${leftOut} of the log left out`;
  const key = fingerprint === null ? 'no list of keys' : `key ${fingerprint}`;
  const stranger = isKnown === false ? ', NOT one of the company’s plants' : '';
  const end = endsAt === null ? 'when it was written it does not tell' : `ends at ${endsAt}`;
  return `${who}: ${entries} entries, ${proven} proven, ${entries - proven} claimed, ${left}; ${end}; ${key}${stranger}`;
}

async function writeOut(file: string, content: string): Promise<void> {
  try {
    await writeFile(file, content);
  } catch (error) {
    throw new NotUnderstood(`--out ${file}: cannot be written (${(error as NodeJS.ErrnoException).code})`);
  }
}

/** The command. */
export const command: Command = {
  name: 'company',
  summary: 'several plants beside each other, by their exports',
  help,
  run,
};

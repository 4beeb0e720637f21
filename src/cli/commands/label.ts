// `reelward label -`: what labels say, one label a line.

import { z } from 'zod';
import { dateFormats } from '../../../shared/labels/date-formats.ts';
import { parseLabel } from '../../../shared/labels/label.ts';
import { type LabelRule, labelRulesSchema } from '../../../shared/labels/rules.ts';
import { formatLabelWarning } from '../../../shared/labels/warnings.ts';
import { type Command, type CommandIo, formatIssue, parseCall, readBytes, readJson } from '../command.ts';

const help = `reelward label FILE|- [--rules FILE]

Reads labels, one a line (NDJSON), in order.
In:  {"codes": ["...", ...]}, every code read off one label in any order, control characters as JSON escapes.
Out: {"part", "supplierPart", "quantity", "unit", "lot", "dateCode", "made", "expires", "reel", "supplier", "country",
      "msl", "order", "fields": [{"id","title","value"}], "unidentified": [...], "ambiguous": [...], "warnings": [...]}
     What the label does not state, or not without guessing, is null; "ambiguous" lists the readings that a person or
     the setup must choose from. A line that cannot be read gives {"error"}; the rest goes on.
--rules FILE: a JSON list of site rules for labels that follow no standard, each
     {"rule": "name", "version": 1, "codes": [{"pieces": [{"text": "ART#"}, {"takes": "any", "field": "part"}, ...]}]}
     A pattern must cover its code to the end. "takes": digits, letters, alphanumeric, or any (up to the next text);
     with it "length" (exactly so many characters), "field" (what the piece is), "date" (how a date is printed:
     ${dateFormats.join(', ')}).`;

const lineSchema = z.strictObject({ codes: z.array(z.string()) });

/** Splits bytes at line feeds; an end without a line feed counts, empty lines at the end do not. */
function splitLines(bytes: Uint8Array): readonly Uint8Array[] {
  const lines: Uint8Array[] = [];
  let from = 0;
  while (from < bytes.length) {
    let to = bytes.indexOf(0x0a, from);
    if (to === -1) to = bytes.length;
    lines.push(bytes.subarray(from, to));
    from = to + 1;
  }
  while (lines.length > 0 && isBlank(lines[lines.length - 1])) lines.pop();
  return lines;
}

function isBlank(line: Uint8Array | undefined): boolean {
  return line?.every((byte) => byte === 0x20 || byte === 0x0d || byte === 0x09) ?? true;
}

const utf8 = new TextDecoder('utf-8', { fatal: true });

function readLine(bytes: Uint8Array, number: number, rules: readonly LabelRule[]): unknown {
  const expected = 'expected {"codes": ["...", ...]}';
  let text: string;
  try {
    text = utf8.decode(bytes);
  } catch {
    return { error: `line ${number}: expected UTF-8 text, found bytes that are not UTF-8` };
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return { error: `line ${number}: not JSON: ${(error as Error).message}; ${expected}` };
  }
  const line = lineSchema.safeParse(value);
  if (!line.success) return { error: `line ${number}: ${formatIssue(line.error)}; ${expected}` };
  const reading = parseLabel(line.data.codes, { rules });
  return { ...reading, warnings: reading.warnings.map(formatLabelWarning) };
}

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = parseCall(
    args,
    { rules: { type: 'string' } },
    { min: 1, max: 1, names: 'a file of labels, or - for standard input' },
  );
  const rules = values.rules === undefined ? [] : await readJson(values.rules, labelRulesSchema, io);
  const lines = splitLines(await readBytes(positionals[0] ?? '-', io));
  // Printed in batches, so that a long file neither waits for its end nor pays for a write per line.
  let batch: string[] = [];
  for (const [index, bytes] of lines.entries()) {
    batch.push(`${JSON.stringify(readLine(bytes, index + 1, rules))}\n`);
    if (batch.length >= 1000) {
      io.stdout(batch.join(''));
      batch = [];
    }
  }
  if (batch.length > 0) io.stdout(batch.join(''));
  return 0;
}

/** The command `label`. */
export const command: Command = { name: 'label', summary: 'read what labels say', help, run };

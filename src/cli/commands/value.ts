// `reelward value CODE`: every reading of a component's value code.

import {
  readValueCode,
  VALUE_KINDS,
  type ValueKind,
  type ValueTolerance,
} from '../../../shared/labels/value-codes.ts';
import { type Command, type CommandIo, NotUnderstood, parseCall, printJson } from '../command.ts';

const help = `reelward value CODE [--kind resistor|capacitor]

Reads a component's value code: letter codes of IEC 60062, three and four digits, EIA-96.
Out: {"readings": [{"kind", "value", "unit", "tolerance", "code", "series"}]}, every reading that the code allows.
  value      in ohms (Ω) or farads (F)
  tolerance  percent where it is the same up and down; {"plus","minus","unit"} where it is not, or is in pF; null where none is stated
  code       the system: IEC 60062, 3-digit, 4-digit, EIA-96
  series     series of IEC 60063 that hold the value
Exit 1 where the code has no reading.`;

function isKind(text: string): text is ValueKind {
  return (VALUE_KINDS as readonly string[]).includes(text);
}

function toleranceToJson(tolerance: ValueTolerance | null): number | ValueTolerance | null {
  if (tolerance === null) return null;
  return tolerance.unit === '%' && tolerance.plus === tolerance.minus ? tolerance.plus : tolerance;
}

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = parseCall(
    args,
    { kind: { type: 'string' } },
    { min: 1, max: 1, names: 'one value code' },
  );
  const kind = values.kind;
  if (kind !== undefined && !isKind(kind)) {
    throw new NotUnderstood(`--kind: expected ${VALUE_KINDS.join(' or ')}, found ${kind}`);
  }
  const readings = readValueCode(positionals[0] ?? '', kind);
  printJson({ readings: readings.map((one) => ({ ...one, tolerance: toleranceToJson(one.tolerance) })) }, io);
  if (readings.length === 0) io.stderr(`reelward value: ${positionals[0]}: no value code known here\n`);
  return readings.length === 0 ? 1 : 0;
}

/** The command `value`. */
export const command: Command = { name: 'value', summary: 'read a component value code', help, run };

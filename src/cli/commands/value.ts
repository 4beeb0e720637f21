// `reelward value CODE`: every reading of a component's value code.

import { type NoValueReason, readPlainValue, whyNoValue } from '../../../shared/labels/plain-values.ts';
import {
  readValueCode,
  type ValueKind,
  type ValueTolerance,
  valueKinds,
} from '../../../shared/labels/value-codes.ts';
import { type Command, type CommandIo, NotUnderstood, parseCall, printJson } from '../command.ts';

const help = `reelward value CODE [--kind resistor|capacitor]

Reads a component's value: letter codes of IEC 60062, three and four digits, EIA-96, and values in plain (4.7k, 4,7 kΩ, 100 nF).
Out: {"readings": [{"kind", "value", "unit", "tolerance", "code", "series"}]}, every reading that the code allows.
  value      in ohms (Ω) or farads (F)
  tolerance  percent where it is the same up and down; {"plus","minus","unit"} where it is not, or is in pF; null where none is stated
  code       the system: IEC 60062, 3-digit, 4-digit, EIA-96, plain
  series     series of IEC 60063 that hold the value
Exit 1 where the code has no reading; why not stands on the error output.`;

function isKind(text: string): text is ValueKind {
  return (valueKinds as readonly string[]).includes(text);
}

function toleranceToJson(tolerance: ValueTolerance | null): number | ValueTolerance | null {
  if (tolerance === null) return null;
  return tolerance.unit === '%' && tolerance.plus === tolerance.minus ? tolerance.plus : tolerance;
}

function sayReason(reason: NoValueReason): string {
  switch (reason.code) {
    case 'empty':
      return 'expected a value code, found none';
    case 'too-long':
      return `longer than ${reason.longest} characters, which no value is`;
    case 'another-quantity':
      return `a value in ${reason.unit}: only resistors and capacitors are read`;
    case 'another-kind':
      return `it can be read as the value of a ${reason.kind} only`;
    case 'no-value':
      return 'no value code known here, and no number with a prefix or unit';
  }
}

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = parseCall(
    args,
    { kind: { type: 'string' } },
    { min: 1, max: 1, names: 'one value code' },
  );
  const kind = values.kind;
  if (kind !== undefined && !isKind(kind)) {
    throw new NotUnderstood(`--kind: expected ${valueKinds.join(' or ')}, found ${kind}`);
  }
  const text = positionals[0] ?? '';
  const readings = [...readValueCode(text, kind), ...readPlainValue(text, kind)];
  printJson({ readings: readings.map((one) => ({ ...one, tolerance: toleranceToJson(one.tolerance) })) }, io);
  if (readings.length === 0) io.stderr(`reelward value: ${text}: ${sayReason(whyNoValue(text, kind))}\n`);
  return readings.length === 0 ? 1 : 0;
}

/** The command `value`. */
export const command: Command = { name: 'value', summary: 'read a component value code', help, run };

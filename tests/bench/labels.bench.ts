// How many labels are read in a second on one core? Target: at least 200,000 envelopes a second.
// Baseline of the same run: a split at GS and one regular expression per element, which sees whole envelopes only, checks
// no value, knows no dialect and asks nothing.

import { formatEnvelope } from '../../shared/labels/envelope.ts';
import { formatGs1 } from '../../shared/labels/gs1.ts';
import { parseLabel } from '../../shared/labels/label.ts';
import { ownRule } from '../shared/labels/own-rule.ts';

const COUNT = 20_000;
const ROUNDS = 9;

function fieldsOf(at: number): { id: string; value: string }[] {
  return [
    { id: 'P', value: `BW-${10_000 + (at % 3000)}` },
    { id: '1P', value: `MK-0402-${at % 900}K/T` },
    { id: 'Q', value: String(1000 + (at % 9000)) },
    { id: '1T', value: `L${at}` },
    { id: '10D', value: `26${String(1 + (at % 52)).padStart(2, '0')}` },
    { id: '4L', value: 'MY' },
    { id: '13E', value: '3' },
    { id: '3S', value: `R${100_000 + at}` },
  ];
}

const labels = Array.from({ length: COUNT }, (_, at) => fieldsOf(at));
const envelopes = labels.map((fields) => [formatEnvelope({ format: '06', fields })]);
const wedge = envelopes.map(([text = '']) => [
  text.replaceAll('\x1d', ']').replace('\x1e\x04', '^').replace('\x1e', '^'),
]);
const wordsForGs = envelopes.map(([text = '']) => [
  text.replaceAll('\x1d', '{GS}').replaceAll('\x1e', '{RS}').replace('\x04', '{EOT}'),
]);
const gs1 = labels.map((fields, at) => [
  formatGs1([
    { id: '01', value: '09501101530003' },
    { id: '10', value: fields[3]?.value ?? '' },
    { id: '11', value: `26${String(1 + (at % 12)).padStart(2, '0')}05` },
    { id: '21', value: fields[7]?.value ?? '' },
    { id: '240', value: fields[1]?.value ?? '' },
    { id: '241', value: fields[0]?.value ?? '' },
    { id: '30', value: fields[2]?.value ?? '' },
  ]),
]);
const separate = labels.map((fields) => fields.map(({ id, value }) => id + value));
const run = labels.map((fields) => [`[)>06${fields.map(({ id, value }) => id + value).join('')}`]);
const words = labels.map((fields) => [
  `MPN:${fields[1]?.value} QTY:${fields[2]?.value} LOT:${fields[3]?.value} DC:${fields[4]?.value} COO:MY`,
]);
const own = labels.map((fields) => [
  `ART#${fields[0]?.value}#MENGE#${fields[2]?.value}#CH#${fields[3]?.value}`,
]);
const rules = [ownRule];

const element = /^(\d{0,3}[A-Z])(.*)$/;

function baseline(codes: readonly string[]): Record<string, string> {
  const out: Record<string, string> = {};
  for (const code of codes) {
    for (const part of code
      .replace(/^\[\)>\x1e06\x1d/, '')
      .replace(/\x1e\x04$/, '')
      .split('\x1d')) {
      const match = element.exec(part);
      if (match !== null) out[match[1] ?? ''] = match[2] ?? '';
    }
  }
  return out;
}

/** Labels a second, from the median of the rounds; the first two warm the compiler up. */
function rate(sets: readonly (readonly string[])[], read: (codes: readonly string[]) => unknown): number {
  const times: number[] = [];
  let kept = 0;
  for (let round = 0; round < ROUNDS + 2; round += 1) {
    const start = performance.now();
    for (const codes of sets) if (read(codes) !== null) kept += 1;
    if (round >= 2) times.push(performance.now() - start);
  }
  if (kept !== sets.length * (ROUNDS + 2)) throw new Error('Cannot measure as a label was not read');
  const median = times.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? Number.NaN;
  return (sets.length / median) * 1000;
}

const first = parseLabel(envelopes[0] ?? []);
if (first.part !== 'BW-10000' || first.quantity !== 1000 || first.warnings.length > 0) {
  throw new Error('Cannot measure as the first label is read wrong');
}

const base = rate(envelopes, baseline);
console.log(`labels: ${COUNT} of each kind, 8 fields, median of ${ROUNDS} rounds`);
console.log(
  `${'baseline: split and regular expression'.padEnd(44)} ${Math.round(base).toLocaleString('en')} labels/s`,
);
for (const [name, sets, options] of [
  ['envelopes', envelopes, {}],
  ['envelopes with ] and ^ for GS and RS', wedge, {}],
  ['envelopes with {GS}, {RS} and {EOT}', wordsForGs, {}],
  ['GS1 element strings, no mark in front', gs1, {}],
  ['separate codes', separate, {}],
  ['envelopes without separators', run, {}],
  ['words with colons', words, {}],
  ['a site rule', own, { rules }],
] as const) {
  const labelsPerSecond = rate(sets, (codes) => parseLabel(codes, options));
  console.log(
    `${name.padEnd(44)} ${Math.round(labelsPerSecond).toLocaleString('en')} labels/s  ${(labelsPerSecond / base).toFixed(2)} x baseline`,
  );
}

// Labels in every form, site rules, and the codes of component values.

import { formatEnvelope } from '../../shared/labels/envelope.ts';
import { formatGs1 } from '../../shared/labels/gs1.ts';
import { parseLabel } from '../../shared/labels/label.ts';
import { readValueCode } from '../../shared/labels/value-codes.ts';
import { formatLabelWarning } from '../../shared/labels/warnings.ts';
import { ownRule } from '../shared/labels/own-rule.ts';
import { type FuzzTarget, textTarget } from './target.ts';
import { mutateText } from './texts.ts';

const fields = [
  { id: 'P', value: 'BW-10001' },
  { id: '1P', value: 'MK-0402-11K/T' },
  { id: 'Q', value: '4000' },
  { id: '1T', value: 'L77-A' },
  { id: '10D', value: '2612' },
  { id: '4L', value: 'MY' },
  { id: '13E', value: '3' },
  { id: '3S', value: 'R100001' },
];
const envelope = formatEnvelope({ format: '06', fields });
const gs1 = formatGs1([
  { id: '01', value: '09501101530003' },
  { id: '10', value: 'L77-A' },
  { id: '11', value: '260305' },
  { id: '21', value: 'R100001' },
  { id: '240', value: 'MK-0402' },
  { id: '241', value: 'BW-10001' },
  { id: '30', value: '4000' },
]);
/** Codes of one label with line ends between them. */
const samples = [
  envelope,
  envelope.replaceAll('\x1d', '{GS}').replaceAll('\x1e', '{RS}').replace('\x04', '{EOT}'),
  envelope.replaceAll('\x1d', ']').replace('\x1e\x04', '^').replace('\x1e', '^'),
  `[)>06${fields.map(({ id, value }) => id + value).join('')}`,
  gs1,
  `]C1${gs1}`,
  '(01)09501101530003(10)L77-A(30)4000',
  fields.map(({ id, value }) => id + value).join('\n'),
  fields.map(({ id, value }) => id + value).join(','),
  'MPN:MK-0402 QTY:4000 LOT:L77-A DC:2612 COO:MY',
  '{pbn:PB1,on:SO26,pc:C25804,pm:MK-0402,qty:4000,mc:,cc:1,pdi:1,hp:0}',
  'ART#BW-10001#MENGE#4000#CH#L77-A',
  'RW-PKG-0000123',
  '*PBW-10001*\nQ4,000\n1TL77-A',
  '10K5\n1R0\n01C\n4u7',
];
const rules = [ownRule];
const odd = [
  '[)>',
  '\x1e',
  '\x1d',
  '\x04',
  '06',
  ']C1',
  ']d2',
  '{GS}',
  '^]',
  '(01)',
  '(',
  'Q',
  '1P',
  '10D',
  ':',
  '=',
  '│',
  '␝',
  'QTY',
  'ART#',
];
const expected = { parts: new Set(['BW-10001', 'PBW']), supplierParts: new Set(['MK-0402']) };

const onLabels: FuzzTarget = textTarget({
  name: 'labels',
  share: 250_000,
  input: (plan) => mutateText({ samples, parts: /([\x1d\x1e\x04\n:,#{}()|; ]|\{GS\}|\{RS\})/, odd }, plan),
  read: (text, { sample }) => {
    const codes = text.split('\n');
    const reading = parseLabel(codes, sample % 2 === 0 ? { expected, rules } : {});
    const { quantity } = reading;
    if (quantity !== null && !(Number.isFinite(quantity) && quantity >= 0))
      throw new Error(`a quantity of ${quantity}`);
    for (const warning of reading.warnings)
      if (formatLabelWarning(warning) === '') throw new Error('a warning without words');
    for (const { value } of reading.fields) if (!text.includes(value)) throw new Error(`made up: ${value}`);
    for (const code of codes.slice(0, 4))
      for (const { value } of readValueCode(code))
        if (!Number.isFinite(value)) throw new Error(`a value of ${value}`);
  },
});

/** All of it. */
export const labelTargets: readonly FuzzTarget[] = [onLabels];

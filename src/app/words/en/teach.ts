import type { RuleField } from '../../../../shared/labels/rules.ts';
import type { Problems } from '../teach.ts';
import { plural } from '../words.ts';

const fieldsEn: Readonly<Record<RuleField, string>> = {
  part: 'Site part number',
  supplierPart: 'Supplier part number',
  quantity: 'Quantity',
  lot: 'Lot',
  dateCode: 'Date code',
  expires: 'Use before',
  reel: 'Reel id',
  supplier: 'Supplier',
  country: 'Country',
  msl: 'MSL',
  order: 'Order',
};

const problemsEn: Problems = {
  'nothing-tapped': 'Tap a piece and say what it is',
  'tap-outside': 'A piece reaches beyond the code',
  'taps-overlap': 'Two pieces overlap',
  'field-tapped-twice': 'Two pieces have the same meaning',
  'too-loose': 'It would fit almost any label: name one more piece',
  'too-long': 'The label is too long for a rule',
};

export const words = {
  fields: fieldsEn,
  problems: problemsEn,
  listHelp: 'Scan any label to see how it is read.',
  teach: 'Teach a label',
  export: 'Save the rules as a file',
  exported: (name: string) => `Saved as ${name}.`,
  import: 'Import rules from a file',
  importTitle: 'Rules in this file',
  importFailed: 'This file was not imported',
  importAgain:
    'Nothing was changed. Correct the file, or save the rules again where they come from. Then choose it again.',
  importProblems: {
    'not-json': 'The file is not valid JSON: it is cut off, or another kind of file.',
    'no-list': 'The file holds no list of rules.',
    empty: 'The list in the file is empty.',
    'not-a-rule': (rule: string, at: string) =>
      `Rule “${rule}” is not a valid rule${at === '' ? '' : `: look at ${at}`}.`,
    twice: (rule: string) => `Rule “${rule}” is in the file twice: keep one.`,
  },
  importStatus: {
    new: (version: number, _here: number) => `+ new, version ${version}`,
    newer: (version: number, here: number) => `↑ version ${version} instead of ${here}`,
    same: (version: number, _here: number) => `= the same here, version ${version}`,
    older: (version: number, here: number) => `△ version ${version} is older than ${here} here: not imported`,
    differs: (version: number, _here: number) =>
      `△ another rule is version ${version} here: not imported until the file gives it a higher version`,
    fails: (version: number, _here: number) =>
      `✕ version ${version} does not read its own examples: not imported`,
  },
  importNothing: 'No rule in this file is new or newer.',
  importTake: (count: number) => plural(count, 'Import 1 rule', `Import ${count} rules`),
  imported: (count: number) => plural(count, '1 rule imported.', `${count} rules imported.`),
  none: 'No label has been taught yet.',
  noneHelp: 'Standard labels need no rule. Scan a label that is not read, then teach it once.',
  version: (version: number) => `version ${version}`,
  approvedBy: (name: string, when: string) => `approved by ${name}, ${when}`,
  needsAll: (count: number) =>
    `${plural(count, 'Its code', `Its ${count} codes`)} must be in one camera picture, or typed together.`,
  examples: (count: number) => plural(count, 'reads its example', `reads its ${count} examples`),
  examplesFail: (failed: number, count: number) =>
    plural(count, 'reads its example differently', `reads ${failed} of its ${count} examples differently`),
  again: 'Teach again',
  withdraw: 'Withdraw',
  withdrawTitle: (rule: string) => `Withdraw the rule “${rule}”`,
  withdrawWhy: 'Why?',
  withdrawn: (rule: string) => `Labels are no longer read by “${rule}”.`,
  pieces: {
    digits: (length: number | null) =>
      length === null ? 'digits' : plural(length, '1 digit', `${length} digits`),
    letters: (length: number | null) =>
      length === null ? 'letters' : plural(length, '1 letter', `${length} letters`),
    alphanumeric: (length: number | null) =>
      length === null
        ? 'letters or digits'
        : plural(length, '1 letter or digit', `${length} letters or digits`),
    any: (length: number | null) =>
      length === null ? 'anything' : plural(length, '1 character', `${length} characters`),
  },
  skipped: 'skipped',
  scanned: 'Scanned just now',
  readBy: (rule: string) => `read by the rule “${rule}”`,
  readByStandard: 'read by a standard',
  notRead: 'Nothing on it is read.',
  teachThis: 'Teach this label',
  lookAgain: 'Clear',
  codesTitle: 'The label',
  codesHelp: 'Scan every code on one label; each scan adds to it.',
  waiting: 'Waiting for a scan…',
  addTyped: 'Type a code instead',
  remove: 'Remove this code',
  alreadyRead: 'This label is already read without a rule:',
  tapHelp: 'Tap a piece, then say what it is. Tap a second piece to cover both.',
  what: 'What is it?',
  nothing: 'Nothing',
  from: 'Begins',
  to: 'Ends',
  earlier: 'earlier',
  later: 'later',
  ruleTitle: 'The rule',
  name: 'Name of the rule',
  nameHelp: 'For instance whose labels they are.',
  nameMissing: 'Name the rule',
  replaces: (version: number) => `Replaces version ${version}.`,
  datePrinted: (field: string) => `${field}: printed as`,
  asPrinted: 'leave as printed',
  reads: 'It reads from this label',
  pattern: 'A label fits if it says',
  tried: (count: string) =>
    plural(count, 'Tried against 1 label in the log', `Tried against ${count} labels in the log`),
  trying: 'Trying it against the log…',
  fitsNone: 'It fits none of them, so nothing that is read now changes.',
  fits: (count: number) => plural(count, 'It fits 1 of them:', `It fits ${count} of them:`),
  contradicts: (count: number) =>
    plural(
      count,
      '1 was read differently before. Make the rule tighter.',
      `${count} were read differently before. Make the rule tighter.`,
    ),
  fitsAlso: (rule: string, count: number) =>
    plural(count, `The rule “${rule}” fits 1 of them too.`, `The rule “${rule}” fits ${count} of them too.`),
  disagrees: (rule: string, count: number) =>
    plural(
      count,
      `The rule “${rule}” fits 1 of them too and reads it differently. Make one of the two tighter.`,
      `The rule “${rule}” fits ${count} of them too and reads them differently. Make one of the two tighter.`,
    ),
  readsAnew: (count: number) => `Says more of them than before: ${count}.`,
  variedTitle: 'Labels made up from this one',
  variedNot: 'Not read: here each piece must be as long as on the label you taught.',
  before: 'before',
  now: 'with this rule',
  lostExamples: (count: number) =>
    plural(
      count,
      '1 label that the current version reads is no longer read.',
      `${count} labels that the current version reads are no longer read.`,
    ),
  approve: 'Let a lead approve it',
  approveTitle: (rule: string) => `Approve the rule “${rule}”`,
  approveHelp: 'Every tablet then reads labels of this kind by this rule.',
  approved: (rule: string) => `Labels are now read by “${rule}”.`,
  doesNotRead: 'It does not read the label as tapped',
} as const;

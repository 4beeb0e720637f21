import type { SeparatorName } from '../../scan/calibration.ts';
import type { Layout } from '../../scan/layouts.ts';
import { plural } from '../words.ts';

const layoutsEn: Readonly<Record<Layout, string>> = {
  us: 'US English',
  uk: 'UK English',
  german: 'German',
  'swiss-german': 'Swiss German',
  french: 'French',
  spanish: 'Spanish',
  italian: 'Italian',
  swedish: 'Swedish',
};

export const words = {
  layouts: layoutsEn,
  title: 'Scan this code with the scanner',
  help: 'From this screen, another one, or the printed sheet. While this page is open, scans go nowhere else.',
  codeLabel: 'Calibration code',
  striped: 'A scanner that reads bar codes only',
  stripedLabel: 'Calibration bar code',
  stripedHelp:
    'Too wide for a small screen: there, print the sheet. Bar codes carry one separator, so only that one is tested.',
  stripedSheet: 'For a scanner that reads bar codes only:',
  print: 'Print the sheet',
  waiting: 'Waiting for a scan…',
  right: 'This scanner is set right.',
  rightText: 'Letters, signs and separators arrive as printed.',
  plainOnly: 'Plain codes are read; labels with separators are not.',
  plainOnlyText: 'Such labels are refused until the scanner is set as below.',
  wrong: 'This scanner cannot be trusted yet.',
  wrongText: 'What is scanned with it does not arrive as printed.',
  findings: {
    'all-equal': 'Every character arrived as printed.',
    'half-arrived': (found: number, wanted: number) =>
      `Only ${plural(wanted, `${found} of 1 character`, `${found} of ${wanted} characters`)} arrived: the scan was cut off. Set the delay between characters to none, or bring the scanner closer to its base.`,
    'layout-differs': (scanner: string, tablet: string) =>
      `The scanner types for a ${scanner} keyboard, the tablet expects ${tablet}. Set the scanner’s keyboard to ${tablet}, or the tablet’s layout to ${scanner}.`,
    'characters-differ':
      'Characters arrive changed, and no keyboard layout known here explains it. Set the scanner’s keyboard to the tablet’s layout and scan again.',
    'case-inverted':
      'Capital and small letters arrive swapped. Turn Caps Lock off, and set the scanner to leave letters as printed.',
    'separators-lost': (names: string) =>
      `Separators do not arrive (${names}). Set the scanner to send control characters, as Ctrl with a key or as Alt with the number pad.`,
    'separator-replaced': (name: SeparatorName, by: string) =>
      `The separator ${name} arrives as “${by}”. Set the scanner to send control characters as they are.`,
    'terminator-missing':
      'No Enter at the end, so the end of a scan is a guess. Set the scanner’s suffix to Enter.',
    'unknown-key': (key: string) =>
      `The key “${key}” came in the middle of the scan. Take such keys out of the scanner’s settings.`,
    slow: (pace: number) =>
      `${pace} ms between two characters is slow. Set the delay between characters to none.`,
    'symbology-id-sent': (id: string) =>
      `The scanner sends the kind of code in front (${id}). That is understood and may stay.`,
  },
  wanted: 'printed',
  found: 'arrived',
  label: {
    title: 'Scan a printed label',
    help: 'Of a slot, a feeder, a badge or a reel.',
    read: 'This label is read.',
    unknown: 'This tablet does not know this label.',
    unknownHelp: 'Scan it again. If that does not help, print it larger, or add it to the plant first.',
  },
  arrived: 'What arrived',
  none: 'Nothing yet. Scan anything: it shows here, control characters included.',
  characters: (count: number) => plural(count, '1 character', `${count} characters`),
  pace: (ms: string) => `${ms} ms each`,
  endedBy: { Enter: 'then Enter', Tab: 'then Tab', silence: 'no Enter' },
  reads: 'reads as',
  readsNothing: 'no known label',
  settingsTitle: 'How a scanner should be set',
  settings: [
    'Works as a keyboard (HID).',
    'Keyboard country: the same as the tablet’s.',
    'Sends control characters, as Ctrl with a key or Alt with the number pad.',
    'Suffix: Enter. No prefix.',
    'Letters as printed: no change of case.',
    'No delay between characters.',
  ],
  keep: 'Save this scanner’s pace on this tablet',
  keptNow: 'Saved. This tablet tells scans from typing by this pace.',
  isKept: 'This tablet has saved its scanner’s pace.',
  forget: 'Use the usual pace',
  sheetTitle: 'Scanner calibration',
  sheetText: 'Open Plant, Scanner on the tablet, then scan this code.',
  sheetHolds: 'The code holds:',
  fields: {
    part: 'part',
    supplierPart: 'supplier part',
    quantity: 'quantity',
    lot: 'lot',
    dateCode: 'date code',
    reel: 'reel',
  },
} as const;

import { plural } from '../words.ts';

export const words = {
  title: 'Panels in the line',
  help: 'Where a reel changes, these panels are in doubt. Enter the most there can ever be, a panel at rest before a machine too. A guess stands in for what nobody has entered.',
  behind: (machine: string) => `${machine}: panels done here and not yet counted, at most`,
  before: (machine: string) => `${machine}: panels counted before they reach it, at most`,
  missed: 'Panels that pass uncounted, at most',
  guess: (most: string) => `Not entered: up to ${most} are assumed (common practice).`,
  seen: (panels: number, most: string) =>
    plural(
      panels,
      `1 panel was scanned at both places: up to ${most} lay between.`,
      `${panels} panels were scanned at both places: up to ${most} lay between.`,
    ),
  takeSeen: 'Take what scans showed',
  takeHelp:
    'What was seen is no limit: enter more where more can ever be. What scans show beyond it widens it by itself.',
  scansHere: 'Panels scanned at this tablet',
  count: 'Are counted',
  goInto: (machine: string) => `Go into ${machine}`,
  scansHelp:
    'Scan some panels before a machine and again where they are counted: so the line learns how many lie between.',
  save: 'Save panels in the line',
  saved: 'Saved. Traces go by it from now on.',
  wrong: 'Enter whole numbers from 0 to 500, and a share below 50 %.',
} as const;

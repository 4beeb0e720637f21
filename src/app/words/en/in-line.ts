import { plural } from '../words.ts';

export const words = {
  title: 'Panels in the line',
  help: 'When a reel changes, these panels are in doubt. Enter the most there can ever be, also one that waits before a machine. What nobody entered is assumed.',
  behind: (machine: string) => `${machine}: panels done here and not yet counted, at most`,
  before: (machine: string) => `${machine}: panels counted before they reach it, at most`,
  missed: 'Panels that pass uncounted, at most',
  guess: (most: string) => `Not entered: up to ${most} are assumed (common practice).`,
  seen: (panels: number, most: string) =>
    plural(
      panels,
      `1 panel was scanned at both places: up to ${most} were between.`,
      `${panels} panels were scanned at both places: up to ${most} were between.`,
    ),
  takeSeen: 'Use what scans showed',
  takeHelp:
    'Scans do not show the limit: enter more where more can be there. If scans show more, the number grows by itself.',
  scansHere: 'Panels scanned at this tablet',
  count: 'Are counted',
  goInto: (machine: string) => `Go into ${machine}`,
  scansHelp:
    'Scan some panels before a machine and again where they are counted. That shows how many are between.',
  save: 'Save panels in the line',
  saved: 'Saved. Traces use it from now on.',
  wrong: 'Enter whole numbers from 0 to 500, and a share below 50 %.',
  exitOpen: 'Open the exit screen',
  exitTitle: 'Panels built',
  exitHelp: 'Scan each panel as it leaves the line.',
  exitCounted: 'Counted:',
  exitBefore: 'Scanned before, nothing added:',
  exitOther: 'Not a panel, nothing added:',
  exitNoRun: 'No run on this line. Start it first.',
  exitLost: 'This page has lost the keyboard. Tap here before you scan.',
  exitLeave: 'Leave this screen',
} as const;

export const words = {
  title: 'Panels in the line',
  help: 'Where a reel changes, these panels are in doubt. Enter the most there can ever be, a panel at rest before a machine too. A guess stands in for what nobody has entered.',
  behind: (machine: string) => `${machine}: panels done here and not yet counted, at most`,
  before: (machine: string) => `${machine}: panels counted before they reach it, at most`,
  missed: 'Panels that pass uncounted, at most',
  guess: (most: string) => `Not entered: up to ${most} are assumed (common practice).`,
  save: 'Save panels in the line',
  saved: 'Saved. Traces go by it from now on.',
  wrong: 'Enter whole numbers from 0 to 500, and a share below 50 %.',
} as const;

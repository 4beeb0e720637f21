import { plural } from '../words.ts';

export const words = {
  add: 'Add a line',
  edit: 'Change',
  editOf: (name: string) => `Change ${name}`,
  machines: (count: number) => plural(count, '1 machine', `${count} machines`),
  slots: (count: number) => plural(count, '1 slot', `${count} slots`),
  fromSheets: 'Some slots are known from setup sheets alone. Open the line to name them as they are written.',
  newTitle: 'A new line',
  newName: (number: number) => `Line ${number}`,
  name: 'Name',
  zone: 'Time zone',
  zoneHelp: 'Where the line stands, such as Europe/Berlin.',
  help: 'For each bank, enter the first and the last slot as they are written on the machine.',
  bankOf: (number: number) => `Bank ${number}`,
  removeOf: (number: number) => `Remove bank ${number}`,
  first: 'First slot',
  last: 'Last slot',
  addAcross: (slot: string) => `Add the other side: ${slot}`,
  addMachine: (slot: string) => `Add the next machine: ${slot}`,
  addBank: 'Add a bank',
  holdsTrays: 'Trays, no feeders',
  trays: 'trays',
  picture: 'What the line looks like',
  save: 'Save line',
  saved: (name: string) => `${name} saved.`,
  faults: {
    'no-number': 'Both must end in a number: M1-F-001 and M1-F-025.',
    differs: 'Only the number at the end may differ.',
    'not-from-one': 'The first slot must be number 1.',
    backwards: 'The last number is below the first.',
    'too-many': 'A bank has 500 slots at most.',
    twice: 'This bank is there already.',
  },
  obstacles: {
    ranges: (count: number) =>
      plural(count, 'Mend the bank marked above.', `Mend the ${count} banks marked above.`),
    'name-missing': 'Enter a name.',
    'zone-unknown': 'Choose a time zone from the list.',
    'no-banks': 'Enter the slots of one bank first.',
    lost: (slots: string, count: number) =>
      plural(
        count,
        `Slot ${slots} is in use. Keep it.`,
        `${count} slots in use would go: ${slots}. Keep them.`,
      ),
  },
} as const;

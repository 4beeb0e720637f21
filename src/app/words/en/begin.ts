export const words = {
  about: 'From an empty tablet to the first right reel. Stop at any step; go on here or on another tablet.',
  language: 'Language of this tablet',
  done: 'done',
  steps: {
    plant: {
      title: 'The plant',
      text: 'Its name and time zone. Prints and exports carry the name.',
      act: 'Name the plant',
    },
    engineer: {
      title: 'First engineer',
      text: 'A name, a badge and a PIN. The engineer adds everybody else.',
      act: 'Add the engineer',
    },
    line: {
      title: 'The line',
      text: 'Its machines and banks, with slots as they are written on the machines.',
      act: 'Describe the line',
    },
    people: {
      title: 'People and badges',
      text: 'Operators and leads. Badges can be printed here.',
      act: 'Add people',
    },
    product: {
      title: 'First product',
      text: 'A setup sheet, or the board’s placement file and bill of materials.',
      act: 'Import the product',
    },
    labels: {
      title: 'Labels for slots',
      text: 'Each slot gets a code to scan. Feeders and carts print there too.',
      act: 'Print labels',
    },
    scanner: {
      title: 'The scanner',
      text: 'One test shows whether this tablet reads it right.',
      act: 'Test the scanner',
    },
    label: {
      title: 'A printed label',
      text: 'Scan one slot label: it must be read as its slot.',
      act: 'Test a label',
    },
    practice: {
      title: 'A first load, to practise',
      text: 'On a copy of the line. Nothing counts there.',
      act: 'Start practice',
    },
    load: {
      title: 'The first reel',
      text: 'Scan slot, feeder and reel. The tablet says whether they belong together.',
      act: 'Load the line',
    },
  },
  fromFile: 'Begin from another plant’s file',
  badges: 'Print badges',
  more: 'Open',
  openOf: (step: string) => `Open: ${step}`,
} as const;

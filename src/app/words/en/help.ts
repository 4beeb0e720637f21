export const words = {
  title: (screen: string) => `Help: ${screen}`,
  practise: 'Practise with a guide',
  lines: {
    line: [
      'A tape ends where its reel runs out. Splice within its bracket.',
      'The band on top names the next walk. Tap it when you go.',
      'The strip above it starts, stops and counts the run.',
    ],
    load: [
      'Tap a bank to see its slots. The line shows what is still to load.',
      'Scan the slot, then the reel.',
      'Circle: accepted. Eight corners: refused. Diamond: held for a lead.',
    ],
    change: [
      'Choose the next product. Each move then stands in a list.',
      'Do one move at a time and scan what you put in.',
      'Finish the checklist and check the first panel. Then release the run.',
    ],
    stock: [
      'See which reels to bring, and by when.',
      'Open a reel to count it, put it away or block it.',
      'A reel that must stay dry shows its floor life.',
    ],
    log: [
      'Every act stands here with its time and person. Nothing is ever removed.',
      'Trace a lot to its panels, or a panel to its reels.',
      'See the shift, hand it over, and export the log.',
    ],
    plant: [
      'Import a setup and choose what to build.',
      'Add people, labels and the rules of the line.',
      'Practise on a copy of the line. Nothing counts there.',
    ],
    search: ['Scan or type any code, name or number.', 'Finds are sorted by kind.', 'Tap a find to open it.'],
    lines: [
      'Each row is a line, with its run and its next walk.',
      'A bell: a warning waits. A diamond: a reel is held.',
      'Tap a row to work on that line.',
    ],
  },
} as const;

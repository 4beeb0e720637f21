import { plural } from '../words.ts';

export const words = {
  way: 'Placement file and bill',
  wayHelp:
    'No sheet with slots? Start with the placement file of the board. A bill of materials can follow; slots are then proposed for your line.',
  choosePlacements: 'Choose a placement file',
  isPlacements: 'This file names no slots, so it is read as a placement file.',
  isBill: 'This is a bill of materials. Now choose the placement file of the same board.',
  readAsSheet: 'Read it as a setup sheet',
  billColumnsTitle: 'Columns of the bill of materials',
  putAway: 'Close this file',
  correctColumns: 'Correct columns',
  variant: 'Variant that is built',
  variantNone: 'not chosen',
  variantHelp: 'The bill differs between variants.',
  sidesOf: (top: string, bottom: string) => `Placements: top ${top}, bottom ${bottom}.`,
  notPlacedTitle: (count: string) =>
    `Not placed: ${plural(count, '1 designator', `${count} designators`)}. Listed, not counted.`,
  left: {
    notFitted: 'Not fitted',
    fiducial: 'Fiducials',
    testPoint: 'Test points',
    hole: 'Holes',
    mark: 'Marks',
    throughHole: 'Through-hole',
    noPart: 'Without a part',
    doubled: 'Listed twice',
  },
  leftByBill: 'Not fitted by the bill, or not in both files',
  noSide: 'Choose the side first. Each side is a setup of its own.',
  noParts: 'No parts on this side.',
  namedByValue: (count: string) =>
    `${plural(count, '1 part has no number and is', `${count} parts have no number and are`)} called by value. Reels are checked against that name. Add a bill with part numbers.`,
  filesWrong: (count: number) =>
    `Correct ${plural(count, 'the error', `the ${count} errors`)} in the files first`,
  filesHelp: 'Correct a column above, or correct the file and choose it again. Warnings do not block.',
  noLine: 'No line with machines and slots is known yet.',
  noLineHelp:
    'Slots can only be proposed for a known line. Import a setup sheet of the line first; it says which machines and slots there are. Your files can then be chosen again.',
  toSheet: 'Import a setup sheet first',
  chooseLine: 'Choose the line',
  slotsTitle: 'Slots',
  isProposal:
    'This is a proposal for feeders, not a placement program. It does not say which head places what or when. Make your program use the same slots.',
  proposalHelp:
    'Parts keep the slots that they have on the line or in its other setups. New parts get free slots.',
  propose: 'Propose slots',
  proposeAgain: 'Propose again',
  proposing: 'Looking for slots…',
  stopProposing: 'Stop',
  proposeFailed: 'No proposal could be made. Try again, or choose slots by hand.',
  toPutIn: (count: number) => plural(count, '1 feeder to put in', `${count} feeders to put in`),
  difference: (fresh: number, moves: number, stays: number) =>
    `${fresh} new, ${moves} from another slot of the line. ${plural(stays, '1 feeder stays', `${stays} feeders stay`)}.`,
  comeOut: (count: number) =>
    `${plural(count, '1 other feeder stands', `${count} other feeders stand`)} in the way and must come out.`,
  openTitle: (count: number) => plural(count, '1 part without a slot', `${count} parts without a slot`),
  leftTitle: (count: number) =>
    plural(count, '1 part that this line does not place', `${count} parts that this line does not place`),
  reasons: {
    'too-wide': 'Its feeder is wider than any bank of the line.',
    'no-room': 'No room is left on the line.',
  },
  noneYet: 'No slot was proposed yet.',
  ownPlaces: 'Places of their own',
  perPanel: (count: string) => `${count} per panel`,
  stays: 'stays',
  moves: (from: string) => `from ${from}`,
  fresh: 'new',
  inFile: (part: string) => `${part} in the file`,
  said: 'chosen by you',
  asIn: (product: string) => `as in ${product}`,
  width: {
    tray: 'on trays',
    maybeTray: 'on trays?',
    said: (mm: number) => `${mm} mm`,
    setup: (mm: number) => `${mm} mm`,
    usual: (mm: number) => `${mm} mm?`,
    none: 'width not known',
  },
  faults: {
    'on-trays': 'Trays stand here, no feeders.',
    'no-tray': 'It comes on trays; feeders stand here.',
    'look-alike': (part: string, slot: string) => `Easily taken for ${part} beside it on ${slot}.`,
    overlap: (part: string, slot: string) => `In the way of ${part} on ${slot}.`,
    'over-end': (positions: number) =>
      `Its feeder takes ${plural(positions, '1 position', `${positions} positions`)} and reaches past the end of the bank.`,
    'off-line': 'The line has no such slot.',
    'lane-wide': (positions: number) =>
      `Its feeder takes ${plural(positions, '1 position', `${positions} positions`)}; a lane has room for one.`,
    'lane-width': (part: string) =>
      `The lane beside it feeds ${part} on another tape width. Check the feeder.`,
  },
  addBoard: 'Propose with another board',
  together: (boards: string) =>
    `Proposed together with: ${boards}. So the fewest feeders are put in over all of them.`,
  heldTitle: 'Boards that wait',
  goOnWith: (board: string) => `Go on with ${board}`,
  dragHelp: 'Drag a part by its handle to another slot, or tap it.',
  freeOne: (slot: string) => `Free: ${slot}`,
  freeRange: (first: string, last: string) => `Free: ${first} to ${last}`,
  bankOfTrays: (bank: string) => `${bank}: trays`,
  change: (part: string) => `${part}: change the slot`,
  tapeWidth: 'Tape width',
  widthUnknown: 'not known',
  widthFrom: {
    said: 'Entered by you.',
    setup: 'From the newest setup with this part.',
    list: 'From the part list.',
    usual: 'Usual for its package. It counts for room only; feeders are not checked against it.',
    none: 'Its feeder counts as one position until you enter the width.',
  },
  widthsUnknown: (count: number) =>
    `${plural(count, '1 part has', `${count} parts have`)} no known tape width. Each feeder counts as one position: tap the part and say how wide its tape is.`,
  bank: 'Machine and bank',
  legend: '■ in this setup · □ a feeder stands there now',
  free: (slot: string) => `${slot} is free.`,
  here: (slot: string) => `It is on ${slot} already.`,
  swaps: (slot: string, other: string, back: string) => `${other} stands on ${slot}. It goes to ${back}.`,
  pushes: (slot: string, other: string) => `${other} stands on ${slot}. It then has no slot.`,
  takesOut: (slot: string, part: string) =>
    `${part} stands there on the line now. It must come out of ${slot}.`,
  moveHere: (slot: string) => `Use ${slot}`,
  chooseSlot: 'Choose a slot first',
  leaveOut: 'Leave it out: not placed on this line',
  takeBack: 'Put it back: placed on this line',
  close: 'Close',
  paper: {
    title: 'Loading sheet',
    print: 'Print the loading sheet',
    perPanel: 'Per panel',
    feeder: 'Feeder',
  },
  noSlots: 'Propose slots first',
  slotsOpen: (count: number) =>
    `${plural(count, '1 part has', `${count} parts have`)} no slot: give one, or say that this line does not place it`,
  slotsFaulty: (count: number) =>
    `${plural(count, '1 slot is', `${count} slots are`)} in the way of another or too small: choose another`,
} as const;

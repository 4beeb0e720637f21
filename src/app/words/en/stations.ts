import { formatCount, plural } from '../words.ts';

export const words = {
  caution:
    'This adds to the machine’s own guards; it is not a safety function. It listens, and asks or answers only where that is set. It commands no machine.',
  who: (line: string) => `Who counts on ${line}?`,
  whoHelp: 'One counter a line. Counts by hand beside a station are kept and shown, not added.',
  hand: 'People, by hand',
  handNow: 'People count on this line now.',
  stationNow: (station: string) => `Counting on this line now: ${station}.`,
  checkInLine:
    'Check “Panels in the line” in the line rules: they are worked out from where panels are counted.',
  none: 'No station is known yet',
  noneHelp: 'Start this on a computer near the machines. The station shows here when its link has joined.',
  silent: (clock: string) => `Silent since ${clock}`,
  heard: (clock: string) => `Heard ${clock}`,
  never: 'Never heard',
  counts: 'Counts this line',
  line: 'Line',
  stands: 'Stands',
  places: { in: 'before the first machine', work: 'at a machine', out: 'behind the last machine' },
  atMachine: (machine: string) => `at ${machine}`,
  lastHeard: 'Last heard',
  total: 'Its total',
  boot: (boot: string) => `since it was switched on as ${boot}`,
  heardAs: (boot: string) => `since the link last began to hear it, as ${boot}`,
  state: 'State',
  recipe: 'Recipe',
  noState: 'It does not say',
  states: {
    1: 'Working',
    2: 'Standby',
    3: 'Engineering',
    4: 'Planned stop',
    5: 'Unplanned stop',
    6: 'Not scheduled',
  },
  otherState: 'A state of its maker’s own',
  version: 'Link',
  linkOf: (version: string, tablet: string) => `version ${version}, ${tablet}`,
  noticed: 'Not understood or not counted',
  allUnderstood: 'Everything was understood.',
  notices: {
    'not-understood': 'Messages that could not be read',
    'wrong-secret': 'Messages without the right secret',
    'clock-off': 'Its clock is off by more than five minutes. Nothing is dated by it',
    'total-fell':
      'Its total fell without a switch-off. It goes on counting from there; what was lost between is not counted',
    'two-devices':
      'Two devices send under one name. The first counts. Give the other its own name, then switch both off and on',
    'code-twice': 'A panel code came twice. It names the first panel alone',
    'not-used': 'Messages that are not used here',
    'other-handle': 'A machine sends for which no station is set. Set one, with its handle',
    'not-connected': 'Its broker was not reached. It is tried again',
    'not-answered': 'It did not say what it has loaded. It is asked again',
    'not-offered': 'It did not say which setup it wants. It is asked again',
    'loads-cut': 'It named more places than are read. Only the first are compared',
    'asked-off': 'It asked about materials and was not answered: that is not turned on',
    'asked-often': 'It asked more than 60 times in a minute. The rest was not answered',
    'not-replied': 'It asked and was gone before the answer',
    'code-again': 'A panel code came again. It counts once a run',
    'not-heard':
      'Not heard for a while: what passed then is not in its total. Compare with the line, and set “Panels = …” where it is wrong',
    'no-boards': 'It does not report boards, so it counts nothing. Switch that on at the machine',
    'other-machine':
      'Boards of another machine on the same connection. They are not counted; name the right one in the link’s file (machineId)',
    'wrong-channel':
      'That port is the channel between two machines. The link has hung up; put the machine’s supervisory port into its file',
    'by-hand':
      'Boards put in or taken out by hand. They are not counted; where one was built, set “Panels = …”',
    'failed-board':
      'Boards that the machine calls failed. They took their parts and are counted; scrap them if they are',
    'board-twice': 'Boards that were reported twice. Each is counted once',
    'machine-says': 'The machine says',
  },
  other: 'Something else',
  times: (times: number) => plural(times, 'once', `${formatCount(times)} times`),
  foundTitle: 'The machine and the log differ',
  found: {
    'tape-differs': (slot: string, clock: string, machine: string, here: string) =>
      `${slot}, ${clock}: the machine goes on with ${machine}, the scans say ${here}. Nothing was counted. Scan the reel on the slot.`,
    'told-late': (slot: string, clock: string, machine: string) =>
      `${slot}, ${clock}: the machine reported the start of ${machine} too late. Nothing was counted. Count the reel.`,
    'empty-early': (slot: string, clock: string, machine: string, _here: string, parts: string) =>
      `${slot}, ${clock}: the machine says that ${machine} is empty. Parts left by the log: ${parts}. Count the reel.`,
    'life-expired': (_slot: string, clock: string, machine: string) =>
      `${machine}, ${clock}: the machine says that its floor life is over. Look at it in Reels.`,
    'life-restored': (_slot: string, clock: string, machine: string) =>
      `${machine}, ${clock}: the machine says that it is fit again. Enter how it was baked or dried.`,
  },
  loads: {
    title: 'What the machine believes',
    said: (clock: string, same: number) =>
      `Said ${clock}. ${plural(same, '1 slot is as the scans say.', `${formatCount(same)} slots are as the scans say.`)}`,
    differs: (slot: string, machine: string, here: string) =>
      `${slot}: the machine believes ${machine}, the scans say ${here}.`,
    nothing: 'nothing',
    look: 'Open the slot and scan the reel there. If the scans are right, correct it at the machine.',
    scan: 'Scan the reel there.',
    open: (slot: string) => `Open ${slot}`,
    more: (slots: number) => plural(slots, 'and 1 more', `and ${formatCount(slots)} more`),
    never: 'It changes no slot by itself.',
    later: (slots: string) => `Scanned after the machine’s report, so it may not know yet: ${slots}.`,
    untold: (slots: string) => `The machine names no part and no known reel: ${slots}.`,
    unknown: (places: string) =>
      `Places that are no slot of this line: ${places}. Name them in the link’s file (slots).`,
  },
  answers: {
    title: 'When the machine asks: is this reel right?',
    caution: 'This adds to the machine’s own guards; it is not a safety function.',
    help: 'Answered from the last verdicts. Each answer is in the log. What the machine does with it is set at the machine.',
    off: 'Do not answer',
    on: { Warning: 'Answer; if not sure, warn', Failed: 'Answer; if not sure, say no' },
    offNow: 'The machine gets no more answers.',
    onNow: {
      Warning: 'The machine is answered now. If not sure, it is warned.',
      Failed: 'The machine is answered now. If not sure, it is told no.',
    },
    last: (clock: string, right: string, unsure: string, wrong: string) =>
      `Last answer for each place, newest ${clock}: ${right} right, ${unsure} warned, ${wrong} no.`,
    one: (slot: string, reel: string, result: string, why: string) => `${slot}, ${reel}: ${result}, ${why}.`,
    results: { Success: 'right', Warning: 'warned', Failed: 'no' },
    whys: {
      verified: 'it was verified there',
      refused: 'it was refused there',
      held: 'a verdict waits for a lead',
      'other-reel': 'another reel was verified there',
      'other-part': 'another part was verified there',
      'wrong-feeder': 'the feeder is not right there',
      blocked: 'the material is blocked',
      'no-setup': 'no setup is chosen',
      'unknown-slot': 'the line has no such slot',
      'not-in-setup': 'the setup wants nothing there',
      'not-verified': 'nothing was verified there',
      'unknown-reel': 'the reel was never scanned',
      'no-reel-told': 'the machine named no reel',
      'out-of-date': 'the log could not be read',
      'in-conflict': 'two tablets say different things of it',
      unproven: 'nothing proves the word that let it on',
    },
  },
  clear: 'Done …',
  clearTitle: 'Is this finding done?',
  clearHelp: 'It leaves this list. What both sides said stays in the log.',
  clearWhy: 'What came of it?',
  clearYes: 'It is done',
  cleared: 'Done. Both sides stay in the log.',
  ownName: 'Its own name',
  rename: 'Rename',
  renameTitle: 'What is this station called?',
  renameHelp: 'For people only. Its link goes on under its own name.',
  renameName: 'Name',
  renameYes: 'Rename it',
  renameMissing: 'Enter another name.',
  noReel: 'a reel without a code',
  noScan: 'nothing of it',
  bothTitle: 'Counted by both',
  both: {
    machine: (clock: string, hand: string, machine: string) =>
      `${clock}: back after a silence. By hand ${hand}, by the machine ${machine}. The machine’s number stands.`,
    hand: (clock: string, hand: string, machine: string) =>
      `${clock}: started again after a silence. By hand ${hand}, by the machine ${machine}. The number by hand stands.`,
  },
  bothHelp: 'Is it wrong? Set the number with “Panels = …” on the line’s screen.',
  beside: (panels: number) =>
    plural(
      panels,
      '1 panel of this run was counted by hand beside the station.',
      `${formatCount(panels)} panels of this run were counted by hand beside the station.`,
    ),
  outside: (panels: number) =>
    plural(
      panels,
      '1 panel passed while nothing was being built. It is in no run.',
      `${formatCount(panels)} panels passed while nothing was being built. They are in no run.`,
    ),
  setTitle: 'What to set at the machine',
  setHelp:
    'The link calls the machine there, on the channel for supervisory systems, and only listens. Switch board tracking on for it.',
  setAddress: 'Address',
  setNever:
    'Never give it a port of the channel between two machines (50100 and the lane): that would stop the line.',
  typeTitle: 'What to type at the device',
  typeHelp:
    'Each time a panel passes, and every ten seconds, it sends its own running total. Never “one more”: what is lost then is made up for by the next message.',
  typeAddress: 'Address',
  typeHeader: 'Header',
  typeSecret: 'SECRET',
  typeBody: 'Message',
  typeBoot:
    'boot: a new text each time it is switched on. total: panels since then. at: its clock, where it has one.',
  machineTitle: 'What to type at the machine',
  machineHelp:
    'The machine sends by IPC-2591 (AMQP 1.0), each message alone or several in one, compressed or not. Its handle must be the one in the link’s file.',
  machineAddress: 'Its broker’s address (network URI)',
  machineTarget: 'Target address',
  machineAny: 'any',
  machineAt: 'Its messages are taken from',
  machineProof: 'Name and password: as in the link’s file. Without them there: ANONYMOUS.',
  typeAnswer:
    'Answer 200 with the highest total held. 401: the secret is wrong. 400: what is wrong, and where.',
} as const;

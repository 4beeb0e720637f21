import { plural } from '../words.ts';

export const words = {
  field: 'Type or scan anything',
  help: 'Reel, part, lot, panel, slot, feeder, person or product. A scan here is searched, not loaded.',
  kinds: {
    reel: 'Reels',
    slot: 'Slots',
    part: 'Parts',
    'supplier-part': 'Supplier parts',
    lot: 'Lots',
    panel: 'Panels',
    feeder: 'Feeders',
    person: 'People',
    setup: 'Setups',
    entry: 'Log entries',
  },
  more: (count: string) => `Show ${count} more`,
  nothing: (text: string) => `Nothing here has “${text}”.`,
  alike: (codes: string) => `Not the same: ${codes}. Check every character.`,
  onLabel: 'Also on this label:',
  left: (count: string) => `${count} left`,
  slotIs: {
    right: 'right',
    empty: 'nothing loaded',
    held: 'waits for the lead',
    'other-part': 'wrong part',
    'wrong-feeder': 'wrong feeder',
    blocked: 'blocked',
  },
  notWanted: 'not in this setup',
  chosen: 'chosen',
  reading: (entries: string) =>
    `Reading the log: ${plural(entries, '1 entry', `${entries} entries`)} so far.`,
  searchedAll: (entries: string) =>
    `Searched: ${plural(entries, '1 log entry', `all ${entries} log entries`)} on this tablet.`,
  searchedSince: (day: string) => `Searched: log entries since ${day}. Older ones are in the log.`,
  askServer: 'Ask the server',
  asking: 'Asking the server…',
  noServer: 'No answer from the server: what only it knows is not searched.',
  serverNothing: (text: string) => `The server has nothing on “${text}”.`,
  serverHas: (kind: string, count: string) => `${kind}: ${count} at the server`,
} as const;

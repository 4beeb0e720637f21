import type { Cause } from '../server.ts';
import { plural } from '../words.ts';

export const words = {
  noKey: 'This page cannot sign entries',
  noKeyHelp:
    'Keys, camera and offline start need a secure page. Open the app by its https address, or on the server’s own computer. The server prints the address, with how to trust it. Until then, entries stay on this tablet.',
  alone: 'This tablet works on its own',
  aloneHelp:
    'It verifies, warns and keeps its log without a server. Join one to share the log with the other tablets, older entries too.',
  joinTitle: 'Join the plant’s server',
  joinAgain: 'Join again',
  code: 'One-time code',
  codeHelp: 'Ten letters and digits, from a lead’s tablet or from the server. Type it, or scan its code.',
  codeWrong: 'A code has ten letters and digits, e.g. ABCDE-23456.',
  name: 'What people call this tablet',
  nameMissing: 'Enter a name, so that a lead can tell the tablets apart.',
  join: 'Join',
  joining: 'Joining…',
  joined: (plant: string) => `Joined: ${plant}.`,
  standing: 'Sync',
  phases: {
    alone: 'Not joined',
    follower: 'Another window of this tablet syncs',
    syncing: 'Sending and fetching…',
    live: 'Synced: tablets see each other’s entries at once',
    waiting: 'Waiting to try again',
    refused: 'Refused by the server: somebody must act',
  },
  plant: 'Plant',
  lastAnswer: 'Last answer',
  ago: (span: string) => `${span} ago`,
  never: 'none since the app was opened',
  backlog: 'To send',
  entries: (count: number) => plural(count, '1 entry', `${count} entries`),
  nothing: 'nothing, the server has it all',
  clock: 'Clock',
  clockRight: 'same as the server’s',
  clockBehind: (span: string) => `${span} behind the server’s: correct it`,
  clockAhead: (span: string) => `${span} ahead of the server’s: correct it`,
  why: 'Why',
  quarantined: 'Set aside',
  quarantinedHelp:
    'The server set these entries aside: their seal or place in the chain does not match. Nothing is lost; they stay here too. Call the person who looks after the server.',
  rolledBack: 'The server’s log may have gone back',
  rolledBackHelp: (span: string) =>
    `Noticed ${span} ago: the server may have held less than before, as after a restored backup. Tablets send what they hold again. Check the log and the list of tablets.`,
  rolledBackSeen: 'I have checked',
  headFaults: {
    forked: 'The server shows two logs',
    'other-key': 'The server has another key',
    'no-proof': 'The server does not prove its log',
  },
  headFaultHelp: {
    forked: (span: string) =>
      `Noticed ${span} ago: its log does not continue the one it showed before. Somebody may have changed it. Go on working, and call the person who looks after the server.`,
    'other-key': (span: string) =>
      `Noticed ${span} ago: it signs with another key than when this tablet joined. That is right only after a move to another computer. Ask the person who looks after the server.`,
    'no-proof': (span: string) =>
      `Noticed ${span} ago: it proved its log before. Go on working, and ask the person who looks after the server.`,
  },
  quarantinedHere: (count: number) =>
    plural(count, '1 entry is kept out of the log here', `${count} entries are kept out of the log here`),
  quarantinedHereHelp:
    'The text, the signature or the clock is not right. All other entries are in. Call the person who looks after the server.',
  clocksOff: 'Clocks that are off',
  clockOfAhead: (name: string, span: string) => `${name}: ${span} ahead`,
  clockOfBehind: (name: string, span: string) => `${name}: ${span} behind`,
  clocksOffHelp: 'Correct them: what these tablets write may be in the wrong order.',
  stateNears: (share: string) => `What a new tablet starts from fills ${share} of its room`,
  stateNearsHelp:
    'Once that is full, a new tablet first reads the whole log, which takes minutes. Join spare tablets while it is quick, and tell whoever looks after the server.',
  stateOver: 'New tablets start slowly',
  stateOverHelp:
    'What a new tablet starts from is too large to hand over: it reads the whole log first, for minutes. Join it before you need it and leave it open, plugged in. Nothing is lost.',
  now: 'Sync now',
  causes: {
    unreachable: 'The server does not answer. Go on working; entries wait here.',
    unreadable: 'What answers is not the plant’s server. Check the network.',
    'other-plant':
      'This is the server of another plant. Nothing goes there; entries wait here. Do not join it: call the person who looks after the server.',
    'tablet-unknown': 'The server does not know this tablet. Join again with a new code.',
    'tablet-revoked': 'A lead shut this tablet out. It can join again with a new code.',
    'code-wrong': 'That code is unknown, used, or over ten minutes old. Ask for a new one.',
    'tablet-active':
      'This tablet is still let in under an older key. A lead shuts it out first; then a new code lets it in.',
    'wire-too-old': 'This app is older than the server. Reload it where the server answers.',
    'wire-too-new': 'This app is newer than the server. The server needs its update.',
    'time-off': 'This tablet’s clock is too far off. Correct it.',
    'signature-wrong': 'The server does not accept this tablet’s key. Join again with a new code.',
    'person-unproven': 'The sign-in has expired. Scan the badge and type the PIN again.',
    'role-lacking': 'Only a shift lead or an engineer can do that.',
    'too-often': 'Too many tries. Wait a minute.',
    'store-away': 'The server cannot reach its storage. It tries again.',
    'store-full': 'The server’s disk is full. Entries wait here. Call the person who looks after the server.',
    'store-read-only':
      'The server cannot write its log. Entries wait here. Call the person who looks after the server.',
    'server-fault': 'The server had a fault; see its log. The tablet tries again.',
    stopping: 'The server is stopping.',
  } as Readonly<Partial<Record<Cause, string>>>,
  otherCause: (code: string) => `The server says: ${code}.`,
  leadTitle: 'Other tablets',
  leadHelp: 'A lead or engineer lets tablets in and shuts them out: badge and PIN.',
  leadOpen: 'Let tablets in or shut them out',
  leadOffline: 'Only the server lets tablets in, and it does not answer now. Try again when it does.',
  newCode: 'Make a new code for a tablet',
  newScreenCode: 'Make a code for a wall screen',
  codeForScreen: 'On the screen, open the app and type this code. It shows all lines and can change nothing.',
  codeUntilScreen: (span: string) => `For one wall screen, good for ${span}.`,
  isScreen: 'wall screen',
  screenNotEmpty:
    'A wall screen must start empty, and this tablet has a log. Use another browser and a new code.',
  codeFor: 'On the new tablet, scan this with its camera, or open the app there and type the code.',
  codeUntil: (span: string) => `For one tablet, good for ${span}.`,
  codeOver: 'This code has expired.',
  tablets: 'Tablets',
  seen: (span: string) => `last seen ${span} ago`,
  neverSeen: 'never seen since it joined',
  clockOff: (span: string) => `clock off by ${span}`,
  thisOne: 'this tablet',
  isOut: 'shut out',
  revoke: 'Shut out',
  revokeTitle: (name: string) => `Shut out ${name}?`,
  revokeHelp:
    'For a lost or sold tablet. It can no longer send or fetch. Its entries so far stay in the log.',
  revoked: (name: string) => `${name} is shut out.`,
  list: 'Refresh',
} as const;

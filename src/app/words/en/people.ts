import { plural } from '../words.ts';

export const words = {
  whoTitle: 'Who is working?',
  yourLanguage: 'Your language, on every tablet',
  pinTitle: (name: string) => `PIN of ${name}`,
  pinHelp: 'Four to eight digits.',
  pinWrong: 'That is not the PIN.',
  pinLeft: (left: number) => `That is not the PIN. ${plural(left, '1 try left.', `${left} tries left.`)}`,
  pinLocked: (minutes: number) => `Too many tries. Locked for ${minutes} min.`,
  pinUnsafe: 'A PIN can only be checked on a secure page. Open the app by its https address.',
  notSeenHere: (name: string) =>
    `The server does not answer, and this tablet has never confirmed ${name}. Try where the server answers.`,
  pinNotHere: (name: string) =>
    `This tablet does not know the PIN of ${name} yet. Enter it once where the server answers, or at the tablet where it was set.`,
  seenTooLongAgo: (name: string) =>
    `The server does not answer, and this tablet confirmed ${name} over three days ago. Try where the server answers.`,
  asking: 'Checking…',
  enter: 'Enter',
  erase: 'Erase',
  nobody: 'No people on this tablet yet. Add an engineer first; the engineer adds the others.',
  addFirst: 'Add the first engineer',
  awayTitle: (name: string) => `${name} was signed out`,
  awayHelp: (name: string) => `Open work is kept. ${name} signs in to go on. For anybody else it closes.`,
  awayClose: 'Close open work',
  badgeNeeded: (name: string) => `${name} has no PIN: scan the badge.`,
  scanBadge: 'Scan the badge',
  badgeHelp: 'With the scanner, or type what is printed under its code.',
  badgeUnknown: 'Unknown badge. Scan another one.',
  noPin: (name: string) => `${name} has no PIN yet. An engineer sets one under Plant.`,
  clearTitle: 'A lead decides',
  clearHelp: 'Scan the lead’s badge. Then enter PIN and reason.',
  clearReason: 'Reason',
  reasons: [
    'Approved by engineering for this lot',
    'Checked and measured by hand',
    'Label damaged, part confirmed',
    'Counted by hand',
  ],
  otherReason: 'Other reason',
  accept: 'Accept the reel',
  decline: 'Decline',
  cartKept: (f: {
    readonly cart: string;
    readonly slot: string;
    readonly carries: string;
    readonly held: string;
  }) => `${f.cart} now has ${f.carries} for ${f.slot}. ${f.held} stays off the cart.`,
  cleared: (slot: string) => `Cleared for ${slot}.`,
  declined: 'Declined. The reel stays off the line.',
  withoutPasskey: 'Save without it',
  ownNotSigned: 'The passkey did not sign, so nothing was saved.',
  withPasskey: 'Use the passkey',
  passkeyAsks: 'The passkey is asked for next.',
  passkeyFailed: 'The passkey did not sign, so nothing was written. Try again, or cancel and use the PIN.',
  needsRole: (role: string) => `Needs: ${role}`,
  quantityTitle: 'How many parts are on the reel?',
  quantityHelp: 'As printed or counted. You can correct it later; the log keeps every correction.',
  quantityWrong: 'Enter a whole number above zero.',
} as const;

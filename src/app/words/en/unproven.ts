import { plural } from '../words.ts';

export const words = {
  page: 'Unproven',
  none: 'Nothing is unproven: a server ticket covers every entry that needs a lead.',
  noTickets: 'This plant gives no tickets yet. They begin when a lead enters a PIN where the server answers.',
  help: 'These entries need a lead or an engineer and were made without a server ticket. They count on the floor. A lead who knows of them confirms or rejects them.',
  stands: {
    proven: 'proven by a ticket',
    passkey: 'proven by a passkey',
    unproven: 'unproven',
    confirmed: 'confirmed by a lead',
    rejected: 'rejected by a lead',
    'before-tickets': 'made before tickets',
  },
  right: 'Permission',
  why: {
    'no-ticket': (role: string) =>
      `No server ticket: nothing proves that a person in the role “${role}” did this.`,
    'ticket-over': () => 'The ticket did not cover this time.',
    role: (role: string) => `The ticket is for a lower role. Needed: ${role}.`,
    passkey: () => 'The passkey signed something else, or is not this person’s.',
  },
  before: 'This plant gave no tickets yet when this was written.',
  by: (name: string) => `by ${name}`,
  nobody: 'nobody named',
  confirm: 'Confirm',
  reject: 'Reject',
  confirmAll: (count: number) => plural(count, 'Confirm it', `Confirm all ${count}`),
  confirmTitle: (count: number) =>
    plural(count, 'Was it done as it says?', `Were all ${count} done as they say?`),
  rejectTitle: 'It was not done by this person?',
  rejectHelp:
    'The entry stays, marked as rejected. What it changed on the floor stays too: correct that yourself.',
  rejectPerson:
    'At the server the change of this person does not count. Check the people under Plant and correct the list.',
  reason: 'How do you know?',
  needsServer: 'The server must answer for this: only then is it proven who decides.',
  notProven: 'It is saved, but without a ticket, so it settles nothing. Try again where the server answers.',
  confirmed: (count: number) => plural(count, 'The entry is confirmed.', `${count} entries are confirmed.`),
  rejected: 'The entry is rejected.',
  engineerOnly: (count: number) =>
    plural(count, 'One of them needs an engineer.', `${count} of them need an engineer.`),
  badgeAlone: (name: string) =>
    `${name} is signed in by badge alone. What needs a lead stays unproven. Sign in by name and PIN to prove it.`,
  settled: { confirmed: 'confirmed', rejected: 'rejected' },
} as const;

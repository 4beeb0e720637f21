// Did whoever an entry names have the right to do it, as far as anything proves it? What takes a lead or an engineer is proven by a ticket
// of that person in the same chain before it. Without one it counts on the floor all the same, and is marked until a lead says whether it
// was so: a floor without a network must not stand still. What any operator may do is not asked for a ticket.
// Method: part of the fold, so that every tablet marks the same entries whatever came first. Signatures of tickets are checked before an
// entry is folded, by whoever folds; the fold itself asks only what came of it, and costs a verdict nothing.
// Refused: refusing such entries; what was done on the floor was done, and a log that leaves it out would be wrong.

import { driftLimitMs } from '../log/clock.ts';
import { chainId, type Entry, entryId } from '../log/entry.ts';
import type { EntryOf, FloorEntry } from './kinds.ts';
import type { SettledAs } from './kinds-rights.ts';
import { type Act, actRoles } from './may.ts';
import { followPerson, type HeldPasskey, registeredPasskey, type SignedBy } from './passkey.ts';
import { endOnTablet, foldShutOut, type ShutOutState } from './shut-outs.ts';
import type { TicketClaims } from './ticket.ts';
import { isAtLeast, type Role } from './vocabulary.ts';

/** Whose tickets count. */
export interface Trust {
  /** Chain -> the number of its last entry when the plant gave its first ticket: up to there nothing could be proven. */
  readonly before: ReadonlyMap<string, number>;
  /** What the ticket of an entry says, where it is the plant's and of the tablet that wrote the entry; else null. */
  readonly claimsOf: (entry: EntryOf<'ticket.taken'>) => TicketClaims | null;
  /** What the signature of a passkey in an entry says, where it was made for that entry and holds by the key that it brings; else null. */
  readonly signedBy: (entry: Pick<Entry, 'hash'>) => SignedBy | null;
  /** True for an entry of the server's own chain that the plant's key signed: anybody can write one in its name. */
  readonly isOfServer: (entry: Pick<Entry, 'hash'>) => boolean;
}

/** A ticket in a chain. */
export interface HeldTicket {
  readonly entry: string;
  readonly person: string;
  readonly role: Role;
  readonly fromMs: number;
  readonly untilMs: number;
}

/**
 * `no-ticket`: none of that person in the chain, or the person was removed or got another role since; `ticket-over`: not at that time, or the tablet was shut out before;
 * `role`: of a lesser role; `passkey`: the signature of a passkey in it is not of this act, or not by a passkey of that person.
 */
export const unprovenReasons = ['no-ticket', 'ticket-over', 'role', 'passkey'] as const;
/** One of them. */
export type UnprovenReason = (typeof unprovenReasons)[number];

/** An entry that takes a right which nothing proves. */
export interface Unproven {
  readonly entry: string;
  readonly kind: FloorEntry['kind'];
  /** Who it says did it; null where it says nobody. */
  readonly by: string | null;
  readonly needs: Role;
  readonly why: UnprovenReason;
  readonly atMs: number;
  readonly line: string | null;
  /** The person whom it lets in, changes or takes out (role null). */
  readonly changes: { readonly person: string; readonly role: Role | null } | null;
  /** What a lead who proved to be one said of it; null while none has. */
  readonly settled: { readonly as: SettledAs; readonly by: string; readonly entry: string } | null;
}

/** The part of the state that rights stand in. */
export interface RightsState extends ShutOutState {
  /** `chain#person` -> the newest ticket. */
  readonly tickets: Map<string, HeldTicket>;
  /** Entry -> why nothing proves it, also once a lead has said what it was. */
  readonly unproven: Map<string, Unproven>;
  /** Credential -> the passkey, also once it was removed. */
  readonly passkeys: Map<string, HeldPasskey>;
}

/** None held, none marked. */
export function emptyRights(): RightsState {
  return { tickets: new Map(), unproven: new Map(), passkeys: new Map(), shutOuts: new Map() };
}

/** The person whose right an entry takes: who decided, else who was signed in. */
export function actorOf({ who, payload }: Pick<Entry, 'who'> & { readonly payload: object }): string | null {
  const by = 'by' in payload ? payload.by : null;
  return typeof by === 'string' && by !== '' ? by : who;
}

/** The role that an act takes to be proven; null for what anybody or any operator may do. */
export function provenRole(act: Act): Role | null {
  const needs = actRoles[act];
  return needs === 'operator' ? null : needs;
}

/** True for what was in the log before the plant gave tickets. */
export function isBeforeTickets(
  { before }: Pick<Trust, 'before'>,
  entry: Pick<Entry, 'tablet' | 'epoch' | 'seq'>,
): boolean {
  return (before.get(chainId(entry)) ?? 0) >= entry.seq;
}

/** Applies one entry. `act`: what it takes by the registry. */
export function foldRights(state: RightsState, entry: FloorEntry, act: Act, trust: Trust): void {
  if (entry.kind === 'ticket.taken') takeTicket(state, entry, trust);
  if (entry.kind === 'tablet.shut-out' && trust.isOfServer(entry)) foldShutOut(state, entry);
  const needs = provenRole(act);
  if (needs === null) return;
  const isBefore = isBeforeTickets(trust, entry);
  const why = isBefore ? null : whyUnproven(state, entry, { needs, trust });
  if (why !== null) {
    const id = entryId(entry);
    const line =
      'line' in entry.payload && typeof entry.payload.line === 'string' ? entry.payload.line : null;
    const [by, changes] = [actorOf(entry), changeIn(entry)];
    const { kind, at } = entry;
    state.unproven.set(id, {
      entry: id,
      kind,
      by,
      needs,
      why,
      atMs: Date.parse(at),
      line,
      changes,
      settled: null,
    });
    return;
  }
  endTickets(state, changeIn(entry), entry);
  if (entry.kind === 'unproven.settled' && !isBefore) settle(state, entry);
}

function takeTicket(state: RightsState, entry: EntryOf<'ticket.taken'>, trust: Trust): void {
  const claims = trust.claimsOf(entry);
  if (!claims || claims.person !== entry.payload.person) return;
  for (const [key, { untilMs }] of state.tickets)
    if (untilMs + driftLimitMs < entry.hlc.ms && key.startsWith(`${chainId(entry)}#`))
      state.tickets.delete(key);
  const { person, role, fromMs, untilMs } = claims;
  state.tickets.set(ticketKey(entry, person), { entry: entryId(entry), person, role, fromMs, untilMs });
}

function ticketKey(entry: Pick<Entry, 'tablet' | 'epoch'>, person: string): string {
  return `${chainId(entry)}#${person}`;
}

/** The newest ticket of a person in a chain, ended where its tablet was shut out since; undefined where there is none. */
export function ticketIn(
  state: Pick<RightsState, 'tickets' | 'shutOuts'>,
  chain: Pick<Entry, 'tablet' | 'epoch'>,
  person: string,
): HeldTicket | undefined {
  const ticket = state.tickets.get(ticketKey(chain, person));
  return ticket && { ...ticket, untilMs: endOnTablet(state, chain.tablet, ticket) };
}

function whyUnproven(
  state: RightsState,
  entry: FloorEntry,
  { needs, trust }: { readonly needs: Role; readonly trust: Trust },
): UnprovenReason | null {
  if ('passkey' in entry.payload) {
    const by = { person: actorOf(entry), signed: trust.signedBy(entry) };
    const held = registeredPasskey(state.passkeys, entry, by);
    if (!held) return 'passkey';
    if (held.isProven) return isAtLeast(held.role, needs) ? null : 'role';
  }
  const ticket = ticketIn(state, entry, actorOf(entry) ?? '');
  if (!ticket) return 'no-ticket';
  const { ms } = entry.hlc;
  if (ms < ticket.fromMs - driftLimitMs || ms > ticket.untilMs + driftLimitMs) return 'ticket-over';
  return isAtLeast(ticket.role, needs) ? null : 'role';
}

function changeIn({ kind, payload }: FloorEntry): Unproven['changes'] {
  if (kind === 'person.added') return { person: payload.person, role: payload.role };
  return kind === 'person.removed' ? { person: payload.person, role: null } : null;
}

/** A ticket dies with its person, and with the role that it names; a passkey follows its person's role. */
function endTickets(state: RightsState, change: Unproven['changes'], entry: FloorEntry): void {
  if (!change) return;
  for (const [key, { person, role }] of state.tickets)
    if (person === change.person && role !== change.role) state.tickets.delete(key);
  followPerson(state.passkeys, change, entry);
}

/** A registration that a lead confirmed counts from then on. */
function confirmPasskeys({ passkeys }: RightsState, id: string): void {
  for (const [credential, held] of passkeys)
    if (entryId(held.at) === id) passkeys.set(credential, { ...held, isProven: true });
}

/** What a lead said; of what takes an engineer only an engineer can say it. */
function settle(state: RightsState, entry: EntryOf<'unproven.settled'>): void {
  const { entries, settled: as, by } = entry.payload;
  const role = ticketIn(state, entry, by)?.role;
  for (const id of entries) {
    const there = state.unproven.get(id);
    if (!there || !isSettleable(there) || role === undefined || !isAtLeast(role, there.needs)) continue;
    state.unproven.set(id, { ...there, settled: { as, by, entry: entryId(entry) } });
    if (as !== 'confirmed') continue;
    endTickets(state, there.changes, entry);
    confirmPasskeys(state, id);
  }
}

/** True for what waits for a lead's word; a word without a ticket is said again instead. */
export function isSettleable({ kind, settled }: Unproven): boolean {
  return kind !== 'unproven.settled' && settled === null;
}

/** True where nothing may follow from an entry at the server: it is unproven, and no lead confirmed it. */
export function isWithoutRight(mark: Unproven | undefined): boolean {
  return mark !== undefined && mark.settled?.as !== 'confirmed';
}

/** What is known of the right that an entry took; `proven` by a ticket, `passkey` by a passkey. */
export const rightStands = [
  'proven',
  'passkey',
  'unproven',
  'confirmed',
  'rejected',
  'before-tickets',
] as const;
/** One of them. */
export type RightStand = (typeof rightStands)[number];

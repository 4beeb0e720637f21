// What the server knows of people, and how it learns it: the part that settings and tickets both speak of.

import type { KnownBadge } from '../../../shared/floor/badge.ts';
import type { Trust } from '../../../shared/floor/rights.ts';
import type { Role } from '../../../shared/kit/roles.ts';
import type { Entry } from '../../../shared/log/entry.ts';

/** Whose tickets count, and how they are checked before entries are folded. */
export interface CheckedTrust extends Trust {
  /** Checks the tickets, the signatures of passkeys and the server's own shut-outs among entries; once each. */
  readonly look: (entries: readonly Entry[]) => Promise<void>;
}

/** A person as the log says; the server knows no more of the floor. */
export interface KnownPerson extends KnownBadge {
  readonly person: string;
  readonly name: string;
  readonly role: Role;
  readonly pinSet?: { readonly pin: string; readonly tablet: string };
  readonly pin: { readonly salt: string; readonly hash: string; readonly rounds: number } | null;
}

/** The people, and the keys by which their badges are marked. */
export interface KnownPeople {
  readonly people: Map<string, KnownPerson>;
  readonly badgeKeys: Map<string, string>;
}

/** How the server learns people from the log. */
export interface PeopleFold {
  /** Kinds that it wants to see. */
  readonly kinds: readonly string[];
  /** Applies one entry. */
  readonly fold: (known: KnownPeople, entry: Entry) => void;
  /** Of entries of these kinds, in the log's order: the ids of those that nothing may follow from, as nothing proves who made them. */
  readonly withoutRight: (entries: readonly Entry[], trust: CheckedTrust) => ReadonlySet<string>;
}

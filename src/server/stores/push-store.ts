// What the store keeps of messages to leads whose app is closed: who takes them, and what was told.

import type { QuietHours } from '../../../shared/kit/quiet-hours.ts';

/** Where and with which keys a tablet's browser takes messages, who asked for them there, and when none are to come by its zone. */
export interface PushSubscriptionKept {
  readonly tablet: string;
  readonly endpoint: string;
  readonly publicKey: string;
  readonly auth: string;
  readonly person: string;
  readonly zone: string;
  readonly quiet: QuietHours | null;
}

/** The part of a store that keeps them. */
export interface PushStore {
  /** Keeps a tablet's subscription in place of the one before it. */
  readonly keepPush: (subscription: PushSubscriptionKept) => Promise<void>;
  /** Changes a tablet's quiet hours, where it has a subscription. */
  readonly quietPush: (tablet: string, zone: string, quiet: QuietHours | null) => Promise<void>;
  /** Forgets a tablet's subscription; with `endpoint`, only that one. */
  readonly forgetPush: (tablet: string, endpoint?: string) => Promise<void>;
  /** Subscriptions of tablets that are let in, in the order of their names. */
  readonly allPush: () => Promise<readonly PushSubscriptionKept[]>;
  /** Takes the telling of something in hand until `untilMs`: null. Where it is in hand, or was told, until when (ms since 1970), and nothing changes. */
  readonly claimTold: (key: string, nowMs: number, untilMs: number) => Promise<number | null>;
  /** How the telling in hand ended: it is no news until `untilMs`; null: nobody was told, and anybody may take it in hand. */
  readonly endTold: (key: string, untilMs: number | null) => Promise<void>;
}

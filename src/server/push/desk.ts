// Who is told of what waits while no app is open: tablets that see it name it, once each, and every lead who asked for messages gets one.
// The server knows no rule of the floor here either: it takes a tablet's word, says it once, keeps quiet hours and counts what did not arrive.

import type { KeyObject } from 'node:crypto';
import { isQuietAt } from '../../../shared/kit/quiet-hours.ts';
import type { PushNotice, PushSubscribe } from '../../../shared/wire/messages-push.ts';
import type { Store } from '../stores/store.ts';
import { encryptPush } from './encrypt.ts';
import { mayPush, type PushEnd, postPush } from './send.ts';
import { senderOf } from './vapid.ts';

/** How messages are sent; absent, none are. */
export interface PushSettings {
  /** Where a push service reaches who runs the server: `mailto:` or `https:`. */
  readonly contact: string;
  /** The origin of a push service of the plant's own; null: only those of browsers' makers, in public. */
  readonly service: string | null;
}

/** The same thing is not told twice within this time, ms; after it, it is news again. */
const ONCE_MS = 12 * 3_600_000;
/** Subscriptions of a plant; leads are few. */
const MOST = 200;
/** Notices taken from one tablet, and messages to one, in an hour. */
const NOTICES_AN_HOUR = 60;
const MESSAGES_AN_HOUR = 30;
const HOUR_MS = 3_600_000;
/** After a message that reached nobody, nothing is offered for this long, ms. */
const OFFER_AGAIN_MS = 10 * 60_000;

/** What was sent since the server began, and why the last one was not. */
export interface PushCounts {
  readonly sent: number;
  readonly failed: number;
  readonly last: PushEnd | null;
}

export interface PushDesk {
  /** What browsers subscribe with; null where the server is not set up to send. */
  readonly key: string | null;
  /** False shortly after the last message did not reach a push service; null before the first. */
  readonly reaches: () => boolean | null;
  /** Keeps a subscription once a first message went through; answers what became of that, or why it was not tried. */
  readonly subscribe: (
    tablet: string,
    person: string,
    wish: PushSubscribe,
  ) => Promise<PushEnd | 'not-there' | 'full'>;
  /** Sends what is new to everybody who is to be told; resolves when all of it ended. Answers how many messages went. */
  readonly tell: (tablet: string, notices: readonly PushNotice[]) => Promise<number>;
  readonly counts: () => PushCounts;
}

export interface PushParts {
  readonly settings: PushSettings | null;
  readonly store: Pick<Store, 'keepPush' | 'forgetPush' | 'allPush' | 'claimTold'>;
  readonly secret: KeyObject;
  readonly nowMs: () => number;
}

/** Counts of the running hour, by name. */
function createHourly(most: number, nowMs: () => number): (name: string) => boolean {
  let hour = 0;
  let counts = new Map<string, number>();
  return (name) => {
    const now = Math.floor(nowMs() / HOUR_MS);
    if (now !== hour) [hour, counts] = [now, new Map()];
    const count = (counts.get(name) ?? 0) + 1;
    counts.set(name, count);
    return count <= most;
  };
}

/** "HH:MM" in a zone. */
function clockIn(zone: string, ms: number): string {
  const form = new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' });
  return form.format(ms);
}

/** Opens the desk. */
export function createPushDesk({ settings, store, secret, nowMs }: PushParts): PushDesk {
  const sender = settings && senderOf(secret, settings.contact);
  const mayTell = createHourly(NOTICES_AN_HOUR, nowMs);
  const maySend = createHourly(MESSAGES_AN_HOUR, nowMs);
  let counts: PushCounts = { sent: 0, failed: 0, last: null };
  let lastMs = 0;

  const send = async (to: Pick<PushSubscribe, 'endpoint' | 'publicKey' | 'auth'>, message: object) => {
    if (!sender || !settings) return 'unreached';
    const body = encryptPush(JSON.stringify(message), {
      publicKey: Buffer.from(to.publicKey, 'base64url'),
      auth: Buffer.from(to.auth, 'base64url'),
    });
    const authorization = sender.authorization(new URL(to.endpoint).origin, nowMs());
    const end = await postPush({ endpoint: to.endpoint, authorization, body }, settings.service);
    const isSent = end === 'sent';
    counts = { sent: counts.sent + Number(isSent), failed: counts.failed + Number(!isSent), last: end };
    lastMs = nowMs();
    return end;
  };

  return {
    key: sender?.publicKey ?? null,
    reaches: () => {
      if (counts.last === null) return null;
      return counts.last !== 'unreached' || nowMs() - lastMs > OFFER_AGAIN_MS;
    },
    counts: () => counts,
    subscribe: async (tablet, person, wish) => {
      if (!settings || !mayPush(wish.endpoint, settings.service)) return 'not-there';
      const others = (await store.allPush()).filter((each) => each.tablet !== tablet);
      if (others.length >= MOST) return 'full';
      const end = await send(wish, { kind: 'first' });
      const { endpoint, publicKey, auth, zone, quiet } = wish;
      if (end === 'sent') await store.keepPush({ tablet, person, endpoint, publicKey, auth, zone, quiet });
      return end;
    },
    tell: async (tablet, notices) => {
      if (!settings) return 0;
      const all = await store.allPush();
      if (all.length === 0) return 0;
      const now = nowMs();
      const sent: Promise<PushEnd>[] = [];
      for (const notice of notices) {
        if (!mayTell(tablet)) break;
        if (!(await store.claimTold(notice.key, now, now + ONCE_MS))) continue;
        const { key: _, ...message } = notice;
        for (const to of all) {
          if (isQuietAt(to.quiet, clockIn(to.zone, now)) || !maySend(to.tablet)) continue;
          sent.push(
            send(to, message).then(async (end) => {
              if (end === 'gone') await store.forgetPush(to.tablet, to.endpoint);
              return end;
            }),
          );
        }
      }
      return (await Promise.all(sent)).filter((end) => end === 'sent').length;
    },
  };
}

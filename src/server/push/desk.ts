// Who is told of what waits while no app is open: tablets that see it name it, once each, and every lead who asked for messages gets one.
// The server knows no rule of the floor here either: it takes a tablet's word, says it once, keeps quiet hours and counts what did not arrive.

import type { KeyObject } from 'node:crypto';
import { isQuietAt } from '../../../shared/kit/quiet-hours.ts';
import type { PushNotice, PushSubscribe, PushTold } from '../../../shared/wire/messages-push.ts';
import type { PeopleBook } from '../people/book.ts';
import type { PushSubscriptionKept } from '../stores/push-store.ts';
import type { Store } from '../stores/store.ts';
import { encryptPush, isPushKey } from './encrypt.ts';
import { createHourly } from './hourly.ts';
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
/** The telling of one thing is over within this time, ms: messages go at once and end within ten seconds. A server that stops meanwhile holds it no longer. */
const TELLING_MS = 60_000;
/** A browser that a message did not reach is left alone for this long, ms. */
const REST_MS = 60_000;
/** Subscriptions of a plant; leads are few. */
const MOST = 200;
/** Notices taken from one tablet, and messages to one, in an hour. */
const NOTICES_AN_HOUR = 60;
const MESSAGES_AN_HOUR = 30;
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
  /** Keeps a subscription once a first message went through; answers what became of that, or why it was not tried. `bad-key`: no point of P-256. */
  readonly subscribe: (
    tablet: string,
    person: string,
    wish: PushSubscribe,
  ) => Promise<PushEnd | 'not-there' | 'full' | 'bad-key'>;
  /** True where messages go to this tablet: somebody asked for them there who is a lead or an engineer still. */
  readonly isOn: (tablet: string) => Promise<boolean>;
  /** Sends what is new to everybody who is to be told now; resolves when all of it ended. What reached nobody is not among the keys taken. */
  readonly tell: (
    tablet: string,
    notices: readonly PushNotice[],
  ) => Promise<PushTold & { readonly taken: string[] }>;
  readonly counts: () => PushCounts;
}

export interface PushParts {
  readonly settings: PushSettings | null;
  readonly store: Pick<Store, 'keepPush' | 'forgetPush' | 'allPush' | 'claimTold' | 'endTold'>;
  readonly people: Pick<PeopleBook, 'people'>;
  readonly secret: KeyObject;
  readonly nowMs: () => number;
}

/** "HH:MM" in a zone. */
function clockIn(zone: string, ms: number): string {
  const form = new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' });
  return form.format(ms);
}

/** Opens the desk. */
export function createPushDesk({ settings, store, people, secret, nowMs }: PushParts): PushDesk {
  const sender = settings && senderOf(secret, settings.contact);
  let counts: PushCounts = { sent: 0, failed: 0, last: null };
  let lastMs = 0;

  const send: Send = async (to, message) => {
    if (!sender || !settings) return 'unreached';
    const body = encryptPush(JSON.stringify(message), {
      publicKey: Buffer.from(to.publicKey, 'base64url'),
      auth: Buffer.from(to.auth, 'base64url'),
    });
    const authorization = await sender.authorization(new URL(to.endpoint).origin, nowMs());
    const end = await postPush({ endpoint: to.endpoint, authorization, body }, settings.service);
    const isSent = end === 'sent';
    counts = { sent: counts.sent + Number(isSent), failed: counts.failed + Number(!isSent), last: end };
    lastMs = nowMs();
    return end;
  };
  /** Subscriptions of those who may have one now: a right that was taken away ends it. */
  const rightful = async () => {
    const all = await store.allPush();
    if (all.length === 0) return all;
    const known = await people.people();
    const roles: readonly unknown[] = ['lead', 'engineer'];
    return all.filter(({ person }) => roles.includes(known.get(person)?.role));
  };
  const tell = createTeller({ store, nowMs, send, rightful });

  return {
    key: sender?.publicKey ?? null,
    reaches: () => {
      if (counts.last === null) return null;
      return counts.last !== 'unreached' || nowMs() - lastMs > OFFER_AGAIN_MS;
    },
    counts: () => counts,
    isOn: async (tablet) => (await rightful()).some((each) => each.tablet === tablet),
    subscribe: async (tablet, person, wish) => {
      if (!isPushKey(Buffer.from(wish.publicKey, 'base64url'))) return 'bad-key';
      if (!settings || !mayPush(wish.endpoint, settings.service)) return 'not-there';
      const others = (await store.allPush()).filter((each) => each.tablet !== tablet);
      if (others.length >= MOST) return 'full';
      const end = await send(wish, { kind: 'first' });
      const { endpoint, publicKey, auth, zone, quiet } = wish;
      if (end === 'sent') await store.keepPush({ tablet, person, endpoint, publicKey, auth, zone, quiet });
      return end;
    },
    tell: async (tablet, notices) => (settings ? tell(tablet, notices) : { sent: 0, taken: [] }),
  };
}

type Send = (to: Pick<PushSubscribe, 'endpoint' | 'publicKey' | 'auth'>, message: object) => Promise<PushEnd>;

interface TellerParts extends Pick<PushParts, 'store' | 'nowMs'> {
  readonly send: Send;
  readonly rightful: () => Promise<readonly PushSubscriptionKept[]>;
}

/** Says each thing once. It counts as told only where a message went: what nobody got is news still. */
function createTeller({ store, nowMs, send, rightful }: TellerParts): PushDesk['tell'] {
  const tells = createHourly(NOTICES_AN_HOUR, nowMs);
  const sends = createHourly(MESSAGES_AN_HOUR, nowMs);
  /** Endpoint -> until when it is left alone. */
  const rests = new Map<string, number>();

  const sendOne = async (to: PushSubscriptionKept, message: object) => {
    const end = await send(to, message);
    if (end === 'gone') await store.forgetPush(to.tablet, to.endpoint);
    if (end === 'sent') return true;
    sends.giveBack(to.tablet);
    if (end !== 'gone') rests.set(to.endpoint, nowMs() + REST_MS);
    return false;
  };
  /** Sends one thing that is in hand; answers how many got it. */
  const sendAll = async (key: string, to: readonly PushSubscriptionKept[], message: object) => {
    let got = 0;
    try {
      const sent = await Promise.all(to.map((each) => sendOne(each, message)));
      got = sent.filter(Boolean).length;
    } finally {
      await store.endTold(key, got > 0 ? nowMs() + ONCE_MS : null);
    }
    return got;
  };

  return async (tablet, notices) => {
    const all = await rightful();
    const now = nowMs();
    for (const [endpoint, untilMs] of rests) if (untilMs <= now) rests.delete(endpoint);
    const taken: string[] = [];
    const telling: Promise<number>[] = [];
    for (const { key, ...message } of notices) {
      const isDue = (to: PushSubscriptionKept) =>
        !isQuietAt(to.quiet, clockIn(to.zone, now)) && !rests.has(to.endpoint) && sends.has(to.tablet);
      if (!tells.has(tablet) || !all.some(isDue)) break; // with nobody to tell it to, the next one finds nobody either
      const toldUntilMs = await store.claimTold(key, now, now + TELLING_MS);
      if (toldUntilMs !== null) {
        // Another tablet's word that is on its way may reach nobody yet.
        if (toldUntilMs > now + TELLING_MS) taken.push(key);
        continue;
      }
      tells.take(tablet);
      const due = all.filter((to) => isDue(to) && sends.take(to.tablet));
      telling.push(
        sendAll(key, due, message).then((got) => {
          if (got > 0) taken.push(key);
          else tells.giveBack(tablet);
          return got;
        }),
      );
    }
    const got = await Promise.all(telling);
    return { sent: got.reduce((sum, each) => sum + each, 0), taken };
  };
}

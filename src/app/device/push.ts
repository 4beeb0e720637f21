// Messages that reach this browser while the app is closed: asking its maker's push service, and what the browser says of that.

import { toBase64Url } from '../../../shared/kit/base64.ts';
import { PUSH_SENTENCES } from '../../../shared/kit/push-sentences.ts';

/** Where a browser takes messages, and with which keys: base64url. */
export interface PushPlace {
  readonly endpoint: string;
  readonly publicKey: string;
  readonly auth: string;
}

/** True where this browser takes messages, on this page. */
export function takesPush(): boolean {
  return 'serviceWorker' in navigator && 'PushManager' in globalThis && 'Notification' in globalThis;
}

/** True where a person or the plant's rule said that this page shows none. */
export function isPushDenied(): boolean {
  return takesPush() && Notification.permission === 'denied';
}

/** Asks the person and then the service; must be called from a tap. `serverKey`: base64url. Null where either says no, or none is reached. */
export async function askForPush(serverKey: string): Promise<PushPlace | null> {
  if ((await Notification.requestPermission()) !== 'granted') return null;
  const { pushManager } = await navigator.serviceWorker.ready;
  // Another server's key, of before a move, would be refused.
  await (await pushManager.getSubscription())?.unsubscribe();
  const wanted = { userVisibleOnly: true, applicationServerKey: serverKey };
  const subscription = await pushManager.subscribe(wanted).catch(() => null); // no service in reach
  const [publicKey, auth] = [subscription?.getKey('p256dh'), subscription?.getKey('auth')];
  if (!subscription || !publicKey || !auth) return null;
  return {
    endpoint: subscription.endpoint,
    publicKey: toBase64Url(new Uint8Array(publicKey)),
    auth: toBase64Url(new Uint8Array(auth)),
  };
}

/** Takes no messages any more. */
export async function endPush(): Promise<void> {
  if (!takesPush()) return;
  const { pushManager } = await navigator.serviceWorker.ready;
  await (await pushManager.getSubscription())?.unsubscribe();
}

/** Sentences of messages: `{line}` and `{slot}` stand for what the message names. */
export type PushSentences = Readonly<Record<'first' | 'warning' | 'blocked' | 'stood', string>>;

/** Keeps the sentences for the service worker, in the language in use. */
export async function keepPushSentences(sentences: PushSentences): Promise<void> {
  const cache = await caches.open('reelward-push');
  await cache.put(PUSH_SENTENCES, new Response(JSON.stringify(sentences)));
}

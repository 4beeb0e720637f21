// A message while the app is closed: shown in the sentences that the page left here, and a tap on it opens the line.

import { PUSH_SENTENCES } from '../../shared/kit/push-sentences.ts';

declare const self: ServiceWorkerGlobalScope;

/** What the server sends; fields that are not texts are as good as missing. */
interface Message {
  readonly kind: string;
  readonly line: string;
  readonly lineName: string;
  readonly slot: string;
}

const text = (value: unknown) => (typeof value === 'string' ? value : '');

function readMessage(data: PushMessageData | null): Message {
  let said: Record<string, unknown> = {};
  try {
    said = (data?.json() ?? {}) as Record<string, unknown>; // each field is looked at below
  } catch {
    // None of ours; the browser wants something shown all the same.
  }
  return {
    kind: text(said['kind']),
    line: text(said['line']),
    lineName: text(said['lineName']),
    slot: text(said['slot']),
  };
}

async function sentenceOf({ kind, lineName, slot }: Message): Promise<string> {
  const kept = await caches.match(PUSH_SENTENCES);
  const sentences = ((await kept?.json().catch(() => null)) ?? {}) as Record<string, unknown>; // the page's own
  const sentence = text(sentences[kind]);
  // Without the page's sentences what it is about stands there, which needs no words.
  if (sentence === '') return [lineName, slot].filter((part) => part !== '').join(' · ');
  return sentence.replaceAll('{line}', lineName).replaceAll('{slot}', slot);
}

async function show(message: Message): Promise<void> {
  const body = await sentenceOf(message);
  // The same thing takes its own place again, and not one more.
  const tag = [message.kind, message.line, message.slot].join(' ');
  await self.registration.showNotification('Reelward', {
    body,
    tag,
    icon: '/icon-192.png',
    data: { line: message.line },
  });
}

/** Comes to the line in a window that is open, else in a new one. */
async function open(line: string): Promise<void> {
  const [window] = await self.clients.matchAll({ type: 'window' });
  if (!window) {
    const place = line === '' ? '/#/line' : `/#/line/${encodeURIComponent(line)}`;
    await self.clients.openWindow(place);
    return;
  }
  window.postMessage({ type: 'open-line', line });
  await window.focus().catch(() => undefined); // the browser may not let it
}

/** Takes messages, and taps on them. */
export function takePush(): void {
  self.addEventListener('push', (event) => event.waitUntil(show(readMessage(event.data))));
  self.addEventListener('notificationclick', (event) => {
    event.notification.close();
    const { line } = (event.notification.data ?? {}) as { readonly line?: unknown };
    event.waitUntil(open(text(line)));
  });
}

// What checks PINs that were set on this tablet goes to the server apart from the log, once it has the entries that set them.

import { pinsKeptSchema, pinsMost } from '../../../shared/wire/messages.ts';
import type { Caller } from './http.ts';
import type { PinPort } from './ports.ts';

/** Hands over what this life of the server does not have; no answer is no reason to do anything else later. */
export async function handPins(
  port: PinPort | undefined,
  caller: Caller,
  serverEpoch: string | null,
): Promise<void> {
  if (!port || serverEpoch === null) return;
  const waiting = await port.waiting(serverEpoch);
  for (let at = 0; at < waiting.length; at += pinsMost) {
    const pins = waiting.slice(at, at + pinsMost);
    const told = await caller.call('/api/people/pins', pinsKeptSchema, { json: { pins }, timeoutMs: 30_000 });
    if (!told.ok) return;
    await port.handed(told.value.kept, told.value.serverEpoch);
  }
}

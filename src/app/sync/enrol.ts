// How a tablet joins the plant's server: a one-time code, scanned or typed, bound to this tablet's key.

import { ok, type Result } from '../../../shared/kit/result.ts';
import { enrolledSchema } from '../../../shared/wire/messages.ts';
import { type CallFailure, createCaller } from './http.ts';
import type { SyncKey, SyncLog, SyncWorld } from './ports.ts';

/** Reads a code from a link (`…/#enrol=ABCDE-FGHIJ`) or from typing; null where there is none. */
export function readEnrolCode(text: string): string | null {
  const code = /#enrol=([0-9A-Za-z-]+)/.exec(text)?.[1] ?? text;
  const plain = code.toUpperCase().replace(/[\s-]/g, '');
  return /^[0-9A-Z]{10}$/.test(plain) ? `${plain.slice(0, 5)}-${plain.slice(5)}` : null;
}

/** Enrols this tablet; what was written before goes to the server with the first sync. */
export async function enrolTablet(
  parts: { readonly log: SyncLog; readonly key: SyncKey; readonly world: SyncWorld },
  request: { readonly code: string; readonly name: string },
): Promise<Result<{ readonly plant: string }, CallFailure>> {
  const { log, key, world } = parts;
  const memory = await log.readMemory();
  const caller = createCaller(world, key, { clockOffMs: memory.clockOffMs });
  const json = { ...request, tablet: key.tablet, publicKey: key.publicKey };
  const enrolled = await caller.call('/api/enrol', enrolledSchema, { json });
  if (!enrolled.ok) return enrolled;
  const { plant, serverKey } = enrolled.value;
  const clockOffMs = Math.round(caller.clockOffMs());
  await log.writeMemory({ ...memory, enrolled: { plant, serverKey }, clockOffMs });
  return ok({ plant });
}

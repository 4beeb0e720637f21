// How a tablet joins the plant's server: a one-time code, scanned or typed, bound to this tablet's key.

import { fail, ok, type Result } from '../../../shared/kit/result.ts';
import { enrolledSchema, infoSchema } from '../../../shared/wire/messages.ts';
import { type CallFailure, createCaller } from './http.ts';
import { isOtherPlant, otherPlant } from './other-plant.ts';
import type { SyncKey, SyncLog, SyncWorld } from './ports.ts';

/** Reads a code from a link (`…/#enrol=ABCDE-FGHIJ`) or from typing; null where there is none. */
export function readEnrolCode(text: string): string | null {
  const code = /#enrol=([0-9A-Za-z-]+)/.exec(text)?.[1] ?? text;
  const plain = code.toUpperCase().replace(/[\s-]/g, '');
  return /^[0-9A-Z]{10}$/.test(plain) ? `${plain.slice(0, 5)}-${plain.slice(5)}` : null;
}

/** Where a tablet was let in, and whether as a wall screen. */
export interface JoinedPlant {
  readonly plant: string;
  readonly screen: boolean;
}

/**
 * Enrols this tablet; what was written before goes to the server with the first sync. A wall screen sends nothing: the server lets one in
 * only where nothing was written but that the app was opened. A tablet that belongs to another plant is not let in: all that it wrote would go there.
 */
export async function enrolTablet(
  parts: { readonly log: SyncLog; readonly key: SyncKey; readonly world: SyncWorld },
  request: {
    readonly code: string;
    readonly name: string;
    /** True where what joins can show a wall screen, which a link cannot. */
    readonly canBeScreen?: boolean;
  },
): Promise<Result<JoinedPlant, CallFailure>> {
  const { log, key, world } = parts;
  const memory = await log.readMemory();
  const caller = createCaller(world, key, { clockOffMs: memory.clockOffMs });
  if (memory.enrolled) {
    const info = await caller.call('/api/info', infoSchema);
    if (!info.ok) return info;
    if (isOtherPlant(memory.enrolled, info.value)) return fail(otherPlant(info.value.plant));
  }
  const { code, name, canBeScreen = false } = request;
  const own = (await log.heads()).filter(({ tablet }) => tablet === key.tablet);
  const fresh = canBeScreen && (memory.enrolled?.screen === true || own.every(({ seq }) => seq <= 1));
  const json = { code, name, tablet: key.tablet, publicKey: key.publicKey, fresh };
  const enrolled = await caller.call('/api/enrol', enrolledSchema, { json });
  if (!enrolled.ok) return enrolled;
  const { plant, serverKey, screen = false } = enrolled.value;
  const clockOffMs = Math.round(caller.clockOffMs());
  await log.writeMemory({ ...memory, enrolled: { plant, serverKey, screen }, clockOffMs });
  return ok({ plant, screen });
}

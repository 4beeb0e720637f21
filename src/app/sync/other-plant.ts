// Is this the server of the tablet's own plant? An address may come to lead elsewhere: a name moved, a proxy that mixes up its plants. The key is
// the plant's own; a plant that lost its server has another by now and is known by its name, one that was renamed by its key.

import { infoSchema, unnamedPlant } from '../../../shared/wire/messages.ts';
import type { Caller, CallFailure } from './http.ts';
import type { SyncMemory } from './ports.ts';

type Joined = NonNullable<SyncMemory['enrolled']>;

/** True where neither the name nor the key is that of the plant that the tablet joined. One that nobody named, now or then, may be that one. */
export function isOtherPlant(
  own: Pick<Joined, 'plant' | 'serverKey'>,
  met: { readonly plant: string; readonly serverKey: string },
): boolean {
  if (own.plant === unnamedPlant || met.plant === unnamedPlant) return false;
  return own.plant !== met.plant && own.serverKey !== met.serverKey;
}

/** The refusal, with what the plant that was met is called. */
export function otherPlant(plant: string): CallFailure {
  return { code: 'other-plant', facts: { plant }, retryAfterMs: null };
}

/**
 * Of a tablet that the server does not know: whether that is so because it is another plant's, which the refusal names. Asks the server who it is;
 * `readOwn`, what the tablet joined, is asked of no other failure.
 */
export async function sayOtherPlant(
  failure: CallFailure,
  readOwn: () => Promise<Joined | null>,
  caller: Pick<Caller, 'call'>,
): Promise<CallFailure> {
  if (failure.code !== 'tablet-unknown') return failure;
  const own = await readOwn();
  if (own === null || failure.facts.plant === own.plant) return failure;
  const info = await caller.call('/api/info', infoSchema);
  return info.ok && isOtherPlant(own, info.value) ? otherPlant(info.value.plant) : failure;
}

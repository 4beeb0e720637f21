// Is this the server of the tablet's own plant? An address may come to lead elsewhere: a name moved, a proxy that mixes up its plants. The key is
// the plant's own; a plant that lost its server has another by now and is known by its name, one that was renamed by its key.

import type { CallFailure } from './http.ts';
import type { SyncMemory } from './ports.ts';

type Joined = NonNullable<SyncMemory['enrolled']>;

/** True where neither the name nor the key is that of the plant that the tablet joined. */
export function isOtherPlant(
  own: Pick<Joined, 'plant' | 'serverKey'>,
  met: { readonly plant: string; readonly serverKey: string },
): boolean {
  return own.plant !== met.plant && own.serverKey !== met.serverKey;
}

/** The refusal, with what the plant that was met is called. */
export function otherPlant(plant: string): CallFailure {
  return { code: 'other-plant', facts: { plant }, retryAfterMs: null };
}

/** Of a tablet that the server does not know: whether that is so because it is another plant's, which the refusal names. */
export function sayOtherPlant(failure: CallFailure, own: Joined | null): CallFailure {
  const { plant } = failure.facts;
  const isOther =
    failure.code === 'tablet-unknown' && own !== null && typeof plant === 'string' && plant !== own.plant;
  return isOther ? otherPlant(plant) : failure;
}

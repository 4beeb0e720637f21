// Asks the server for the picture of a label that another tablet kept.

import type { App } from './app.ts';

/** A picture with the hash under which the server has it. */
export interface FetchedPicture {
  readonly sha256: string;
  readonly bytes: ArrayBuffer;
}

/** The picture on which a verdict was made; null where the server has none or does not answer. */
export async function fetchPicture(app: Pick<App, 'connection'>, of: string): Promise<FetchedPicture | null> {
  const caller = (await app.connection.value?.caller()) ?? null;
  if (caller === null) return null;
  const answer = await caller.open(`/api/picture?of=${encodeURIComponent(of)}`);
  if (!answer.ok) return null;
  const sha256 = answer.value.headers.get('reelward-sha256');
  return sha256 === null ? null : { sha256, bytes: await answer.value.arrayBuffer() };
}

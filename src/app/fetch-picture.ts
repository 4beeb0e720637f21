// Asks the server for the picture of a label that another tablet kept.

import type { App } from './app.ts';

/** The picture on which a verdict was made; null where the server has none or does not answer. */
export async function fetchPicture(app: Pick<App, 'connection'>, of: string): Promise<ArrayBuffer | null> {
  const caller = (await app.connection.value?.caller()) ?? null;
  if (caller === null) return null;
  const answer = await caller.open(`/api/picture?of=${encodeURIComponent(of)}`);
  return answer.ok ? answer.value.arrayBuffer() : null;
}

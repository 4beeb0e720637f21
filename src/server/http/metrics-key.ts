// Who may read what the server counts: whoever holds the key that lies in the data folder, as a bearer token. Asking for the local
// computer alone was refused: behind a proxy everybody comes from there.

import { timingSafeEqual } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hashOf, randomToken } from '../keys.ts';

/** Name of the key's file in the data folder. */
export const metricsKeyFile = 'metrics.key';

/** Reads the key, or makes it, readable for the owner alone. */
export function openMetricsKey(folder: string): string {
  const file = join(folder, metricsKeyFile);
  if (!existsSync(file)) {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    writeFileSync(file, `${randomToken()}\n`, { mode: 0o600 });
  }
  chmodSync(file, 0o600);
  return readFileSync(file, 'utf8').trim();
}

/** True where the header carries the key; takes as long for a wrong one as for the right one. */
export function isKey(header: string | undefined, key: string): boolean {
  const [told, wanted] = [header ?? '', `Bearer ${key}`].map((text) => Buffer.from(hashOf(text)));
  return key !== '' && told !== undefined && wanted !== undefined && timingSafeEqual(told, wanted);
}

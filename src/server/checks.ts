// Would a server start here, and go on? Each thing is looked at as it lies, and nothing is made or changed by it.

import { existsSync, statfsSync } from 'node:fs';
import { request as plainRequest } from 'node:http';
import { request as secureRequest } from 'node:https';
import { createServer } from 'node:net';
import { dirname, resolve } from 'node:path';
import { DAY_MS, utcDate } from '../../shared/kit/moment.ts';
import { unnamedPlant } from '../../shared/wire/messages.ts';
import { CertificateRefused } from './certificates/refused.ts';
import { CannotStart, listen, listenAddress } from './listen.ts';
import type { ServerSettings } from './settings.ts';
import { lookAtStore, type StoreLook } from './stores/look.ts';
import { StoreRefused } from './stores/migrate.ts';
import { createMonthTexts } from './stores/month-texts.ts';
import { isOtherPlant, otherPlantWords } from './stores/plant-name.ts';

/** One thing that was looked at, in one line. */
export interface Finding {
  readonly what: 'store' | 'months' | 'certificate' | 'port' | 'disk' | 'clock';
  readonly is: 'good' | 'warning' | 'wrong';
  readonly words: string;
}

export interface CheckParts {
  readonly settings: ServerSettings;
  /** A fault of the store in words; null where it is none of the store's. */
  readonly storeWords: (error: unknown) => string | null;
}

const MEGABYTE = 1_000_000;
/** With less room than this the next days are not sure, or the next hour, bytes. */
const LITTLE_BYTES = 1_000 * MEGABYTE;
const NO_BYTES = 100 * MEGABYTE;
/** A clock that is behind the newest entry by more was wrong then or is wrong now, ms. */
const BEHIND_MS = 60_000;
/** No clock of today stands before this moment: a computer without a battery begins in 1970. */
const LONG_AGO_MS = Date.UTC(2025, 0, 1);
/** A server that answers does so within this time, ms. */
const ANSWER_MS = 2_000;

/** Looks at everything, in the order in which a start needs it. */
export async function checkServer(parts: CheckParts): Promise<readonly Finding[]> {
  const { settings } = parts;
  const { found, finding } = await checkStore(parts);
  const plant = settings.plant ?? found?.plant ?? unnamedPlant;
  return [
    finding,
    ...(await checkMonths(settings, found)),
    ...(await checkCertificate(settings)),
    await checkPort(settings, settings.port, plant),
    ...(settings.https?.ownFiles === null
      ? [await checkPort(settings, settings.https.trustPort, plant)]
      : []),
    checkDisk(settings, found),
    checkClock(settings.clock.nowMs(), found),
  ];
}

async function checkStore({
  settings,
  storeWords,
}: CheckParts): Promise<{ readonly found: StoreLook | null; readonly finding: Finding }> {
  const where = settings.database === null ? resolve(settings.folder) : 'the database';
  const tell = (is: Finding['is'], words: string, found: StoreLook | null = null) => ({
    found,
    finding: { what: 'store' as const, is, words },
  });
  try {
    const found = await lookAtStore(settings);
    if (!found) return tell('good', `none yet in ${where}; the first start makes it`);
    const { schema, known, isRolling, entries } = found;
    if (settings.plant !== null && found.plant !== null && isOtherPlant(found.plant, settings.plant))
      return tell('wrong', otherPlantWords(found.plant, settings.plant), found);
    if (schema > known && isRolling)
      return tell(
        'warning',
        `${where} has schema ${schema} of a newer program; this one can serve it, acts need the newer: start that here too`,
        found,
      );
    if (schema > known)
      return tell(
        'wrong',
        `${where} has schema ${schema}, this program knows up to ${known}; start the newer program, or restore a backup`,
        found,
      );
    const told = `${entries} entries in ${where}`;
    if (schema === known) return tell('good', told, found);
    return tell(
      'warning',
      `${told}; the next start brings it from schema ${schema} to ${known}, after a copy${settings.database === null ? '' : others(isRolling)}`,
      found,
    );
  } catch (error) {
    const words = error instanceof StoreRefused ? error.message : storeWords(error);
    if (words === null) throw error;
    return tell('wrong', words);
  }
}

/** The files of months whose texts left the store; nothing where none did. */
async function checkMonths(
  { months = null }: ServerSettings,
  found: StoreLook | null,
): Promise<readonly Finding[]> {
  if (!found || found.months.length === 0) return [];
  const faults = await createMonthTexts(months, async () => found.months).faults();
  // A server that knows no folder does not start; with one it serves what it has.
  const is = months === null ? 'wrong' : 'warning';
  if (faults.length > 0) return faults.map(({ message }) => ({ what: 'months', is, words: message }));
  return [
    { what: 'months', is: 'good', words: `the files of ${found.months.length} are there, in ${months}` },
  ];
}

/** What other servers on the same database have to do about it. */
function others(isRolling: boolean): string {
  return isRolling
    ? '; servers of before go on beside it: replace one after the other'
    : '; servers of before cannot live with that: stop all of them first';
}

async function checkCertificate({
  https,
  publicUrl,
  host,
  clock,
}: ServerSettings): Promise<readonly Finding[]> {
  const tell = (is: Finding['is'], words: string): Finding => ({ what: 'certificate', is, words });
  if (!https) {
    if (publicUrl?.startsWith('https:'))
      return [tell('good', `${publicUrl} has its own, before this server`)];
    if (publicUrl === undefined && host === '127.0.0.1')
      return [tell('good', 'none is needed on this computer')];
    return [
      tell('warning', 'none: cameras and offline work need HTTPS on every other computer; add --https'),
    ];
  }
  if (!https.ownFiles) return [tell('good', 'by the local authority, which is made and renewed by itself')];
  // Loaded when wanted only: what makes certificates is large.
  const { checkOwnFiles } = await import('./certificates/keep.ts');
  try {
    const warnings = checkOwnFiles({ settings: https, nowMs: clock.nowMs });
    if (warnings.length === 0) return [tell('good', `${https.ownFiles.certFile} fits`)];
    return warnings.map((line) => tell('warning', line));
  } catch (error) {
    if (!(error instanceof CertificateRefused)) throw error;
    return [tell('wrong', error.message)];
  }
}

async function checkPort(settings: ServerSettings, port: number, plant: string): Promise<Finding> {
  const tell = (is: Finding['is'], words: string): Finding => ({ what: 'port', is, words });
  const probe = createServer();
  try {
    await listen(
      (at, address) =>
        new Promise<void>((done, fail) => {
          probe.once('error', fail);
          probe.listen(at, address, done);
        }),
      port,
      settings,
    );
    probe.close();
    return tell('good', `${port} is free`);
  } catch (error) {
    if (!(error instanceof CannotStart)) throw error;
    const there = await askHealth(settings, port);
    if (there === null) return tell('wrong', error.message);
    // An older server does not say whose it is, and the page about trust neither.
    if ((there.plant ?? plant) === plant) return tell('good', `${port} is this server's, which runs`);
    return tell(
      'wrong',
      `port ${port} is that of “${there.plant}”, which runs; name another port, or start it again if that is its name of before`,
    );
  }
}

/** What a server says of itself. */
export interface HealthTold {
  /** Whose it is; absent where it does not say. */
  readonly plant?: string;
  /** False where something is wrong with its store: `degraded` says what. */
  readonly ok?: boolean;
  readonly degraded?: readonly string[];
  readonly entries?: number;
}

/** Asks whoever has this port of this computer; null where no server of this kind answers. */
export function askHealth(
  settings: Pick<ServerSettings, 'host' | 'https' | 'listen'>,
  port: number,
): Promise<HealthTold | null> {
  const { https } = settings;
  const hostname = listenAddress(settings) ?? '127.0.0.1';
  // Only asked whether it is there: whose certificate it shows does not matter.
  const options = { hostname, port, path: '/health', timeout: ANSWER_MS, rejectUnauthorized: false };
  return new Promise((resolve) => {
    const asked = (https && port !== https.trustPort ? secureRequest : plainRequest)(options, (answer) => {
      let text = '';
      answer.on('data', (chunk) => {
        text += chunk;
      });
      answer.on('end', () => resolve(isTrustPage(answer.headers) ? {} : readHealth(text)));
    });
    asked.on('timeout', () => asked.destroy());
    asked.on('error', () => resolve(null));
    asked.end();
  });
}

function readHealth(text: string): HealthTold | null {
  // As this program answers, and none other.
  return /^\{"ok":.*"store":"(sqlite|postgres)"/.test(text) ? (JSON.parse(text) as HealthTold) : null;
}

function isTrustPage({ location }: { readonly location?: string | undefined }): boolean {
  return location === '/ca';
}

function checkDisk({ folder }: ServerSettings, found: StoreLook | null): Finding {
  let place = resolve(folder);
  while (!existsSync(place)) place = dirname(place);
  const { bavail, bsize } = statfsSync(place);
  const free = bavail * bsize;
  const told = `${Math.floor(free / MEGABYTE)} MB free at ${place}`;
  if (free < NO_BYTES) return { what: 'disk', is: 'wrong', words: `${told}: make room before you start` };
  if (free < LITTLE_BYTES || free < (found?.bytes ?? 0))
    return { what: 'disk', is: 'warning', words: `${told}: too little for a copy of the store; make room` };
  return { what: 'disk', is: 'good', words: told };
}

function checkClock(nowMs: number, found: StoreLook | null): Finding {
  const told = `it is ${new Date(nowMs).toISOString()}`;
  const newestMs = found?.newestMs ?? 0;
  if (nowMs < LONG_AGO_MS)
    return { what: 'clock', is: 'wrong', words: `${told}: set it, and let it be kept right by the network` };
  if (newestMs - nowMs > BEHIND_MS) {
    const days = Math.floor((newestMs - nowMs) / DAY_MS);
    const ahead = days > 0 ? `, ${days} days later` : '';
    return {
      what: 'clock',
      is: 'wrong',
      words: `${told}, but the newest entry came in on ${utcDate(newestMs)}${ahead}: set the clock`,
    };
  }
  return { what: 'clock', is: 'good', words: told };
}

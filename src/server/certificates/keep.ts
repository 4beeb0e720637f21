// Which certificate is in use, and when it is renewed: read or made at the start, looked at every hour, renewed a month before
// it ends or when the computer's addresses have changed. An own certificate is only read again when its file changes.

import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { DAY_MS, utcDate } from '../../../shared/kit/moment.ts';
import type { HttpsSettings } from '../settings.ts';
import {
  isIssuedBy,
  keyFits,
  makeAuthority,
  makeLeaf,
  maySpeakFor,
  type PemPair,
  readCertificate,
} from './authority.ts';
import { CertificateRefused } from './refused.ts';

/** A leaf is renewed, or its owner warned, this long before it ends, ms. */
export const renewBeforeMs = 30 * DAY_MS;
/** That tablets will have to trust another authority is told this long before, ms. */
const tellBeforeMs = 60 * DAY_MS;
const LOOK_MS = 3_600_000;

/** The local authority as tablets come to know it. */
export interface AuthorityFacts {
  readonly pem: string;
  readonly der: Buffer;
  readonly fingerprint: string;
}

/** The certificate in use. */
export interface KeptCertificate {
  readonly pair: () => PemPair;
  readonly endsMs: () => number;
  /** The local authority's certificate in use at this moment; null with an own certificate. */
  readonly authority: () => AuthorityFacts | null;
  /** What whoever looks after the server should do about it, one line each; empty where nothing. */
  readonly warnings: () => readonly string[];
  /** Looks now; true where there is a new pair. */
  readonly look: () => Promise<boolean>;
  /** Calls back with each new pair, looking every hour. Returns how to stop. */
  readonly watch: (onNew: (pair: PemPair) => void, onFault: (error: Error) => void) => () => void;
}

export interface KeepOptions {
  readonly folder: string;
  readonly plant: string;
  readonly settings: HttpsSettings;
  readonly nowMs: () => number;
  /** The computer's addresses at this moment. */
  readonly addresses: () => readonly string[];
}

/** Opens or makes what HTTPS needs. */
export async function keepCertificate(options: KeepOptions): Promise<KeptCertificate> {
  const { ownFiles } = options.settings;
  return ownFiles ? keepOwn(ownFiles, options) : keepLocal(options);
}

async function keepLocal(options: KeepOptions): Promise<KeptCertificate> {
  const folder = join(options.folder, 'certificates');
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const there = readPair(folder, 'authority');
  if (there && !isWhole(there)) {
    throw new CertificateRefused(
      'certificates/authority.*: cannot be read, or key and certificate do not belong together; put them back from a backup, or remove them to make an authority anew, and trust it on each tablet',
    );
  }
  let authority = await keepAuthority(there, folder, options);
  refuseForeign(authority, options.settings.names);
  // An address that came later and is none of a private network is left out: with it, no tablet would accept the others either.
  const wantedNames = () => namesOf(options).filter((name) => maySpeakFor(authority, name));
  let leaf = readPair(folder, 'server');
  // Nobody trusts it by itself: one that is damaged is made anew.
  if (leaf && !isWhole(leaf)) leaf = null;

  const look = async (): Promise<boolean> => {
    authority = await keepAuthority(authority, folder, options);
    const names = wantedNames();
    if (leaf && isIssuedBy(leaf, authority) && isFresh(leaf, names, options.nowMs())) return false;
    leaf = writePair(folder, 'server', await makeLeaf(authority, names, options.nowMs()));
    return true;
  };
  await look();
  return withWatch({
    // `look` has set it.
    pair: () => leaf as PemPair,
    endsMs: () => readCertificate((leaf as PemPair).cert).endsMs,
    authority: () => {
      const { der, fingerprint } = readCertificate(authority.cert);
      return { pem: authority.cert, der, fingerprint };
    },
    warnings: () => {
      const renewedMs = readCertificate(authority.cert).endsMs - renewBeforeMs;
      if (renewedMs - options.nowMs() > tellBeforeMs) return [];
      return [
        `the local authority is made anew on ${utcDate(renewedMs)}; from then on each tablet has to be made to trust the next one, from the page that says how`,
      ];
    },
    look,
  });
}

/** At its end no tablet would reach the server any more: the next authority is made in its last month. */
async function keepAuthority(kept: PemPair | null, folder: string, options: KeepOptions): Promise<PemPair> {
  const nowMs = options.nowMs();
  if (kept !== null && readCertificate(kept.cert).endsMs - nowMs >= renewBeforeMs) return kept;
  return writePair(folder, 'authority', await makeAuthority(options.plant, namesOf(options), nowMs));
}

/** True where both files can be read, and the key is the certificate's. */
function isWhole(pair: PemPair): boolean {
  try {
    return readCertificate(pair.cert).endsMs > 0 && keyFits(pair);
  } catch {
    return false; // no certificate, or no key
  }
}

/** A name that somebody asked for is not left out in silence. */
function refuseForeign(authority: PemPair, names: readonly string[]): void {
  const foreign = names.find((name) => !maySpeakFor(authority, name));
  if (foreign === undefined) return;
  throw new CertificateRefused(
    `--host ${foreign}: the local authority was made for other names; remove certificates/authority.* in the data folder to make one anew, and trust it on each tablet`,
  );
}

function isFresh(leaf: PemPair, names: readonly string[], nowMs: number): boolean {
  if (!keyFits(leaf)) return false;
  const facts = readCertificate(leaf.cert);
  return facts.endsMs - nowMs > renewBeforeMs && names.every((name) => facts.fits(name));
}

async function keepOwn(
  files: { readonly certFile: string; readonly keyFile: string },
  options: KeepOptions,
): Promise<KeptCertificate> {
  const read = (): PemPair => {
    const pair = { cert: readOwn(files.certFile, '--cert'), key: readOwn(files.keyFile, '--key') };
    checkOwn(pair, files, options.nowMs());
    return pair;
  };
  let pair = read();
  return withWatch({
    pair: () => pair,
    endsMs: () => readCertificate(pair.cert).endsMs,
    authority: () => null,
    warnings: () => ownWarnings(pair, files, options),
    look: async () => {
      const next = read();
      if (next.cert === pair.cert && next.key === pair.key) return false;
      pair = next;
      return true;
    },
  });
}

function readOwn(file: string, option: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new CertificateRefused(
      `${option} ${file}: cannot be read (${(error as NodeJS.ErrnoException).code})`,
    );
  }
}

function checkOwn(pair: PemPair, files: { certFile: string; keyFile: string }, nowMs: number): void {
  let endsMs: number;
  try {
    endsMs = readCertificate(pair.cert).endsMs;
  } catch {
    throw new CertificateRefused(`--cert ${files.certFile}: expected a certificate as PEM`);
  }
  let fits: boolean;
  try {
    fits = keyFits(pair);
  } catch {
    throw new CertificateRefused(`--key ${files.keyFile}: expected an unencrypted private key as PEM`);
  }
  if (!fits)
    throw new CertificateRefused(
      `--key ${files.keyFile}: not the key of the certificate in ${files.certFile}`,
    );
  if (endsMs <= nowMs)
    throw new CertificateRefused(`--cert ${files.certFile}: ended on ${new Date(endsMs).toISOString()}`);
}

/** What is not wrong yet, or only for some: it is used all the same. */
function ownWarnings(
  pair: PemPair,
  files: { readonly certFile: string; readonly keyFile: string },
  { settings, nowMs }: Pick<KeepOptions, 'settings' | 'nowMs'>,
): readonly string[] {
  const { endsMs, fits } = readCertificate(pair.cert);
  const warnings = settings.names
    .filter((name) => !fits(name))
    .map(
      (name) =>
        `--cert ${files.certFile}: does not name ${name}, so tablets refuse it there; get one that does, or give --host the name that it has`,
    );
  if (endsMs - nowMs() < renewBeforeMs)
    warnings.push(
      `--cert ${files.certFile}: ends on ${utcDate(endsMs)}; put the next one in its place, and send the server SIGHUP or wait an hour`,
    );
  if (((statSync(files.keyFile, { throwIfNoEntry: false })?.mode ?? 0) & 0o077) !== 0)
    warnings.push(`--key ${files.keyFile}: others may read it; chmod 600 it`);
  return warnings;
}

/** Looks at own files as a start would: throws `CertificateRefused` where they cannot be used, and returns what to warn of. */
export function checkOwnFiles(options: Pick<KeepOptions, 'settings' | 'nowMs'>): readonly string[] {
  const { ownFiles: files } = options.settings;
  if (!files) return [];
  const pair = { cert: readOwn(files.certFile, '--cert'), key: readOwn(files.keyFile, '--key') };
  checkOwn(pair, files, options.nowMs());
  return ownWarnings(pair, files, options);
}

function withWatch(kept: Omit<KeptCertificate, 'watch'>): KeptCertificate {
  return {
    ...kept,
    watch: (onNew, onFault) => {
      const timer = setInterval(() => {
        kept.look().then(
          (isNew) => {
            if (isNew) onNew(kept.pair());
          },
          (error: Error) => onFault(error),
        );
      }, LOOK_MS);
      timer.unref();
      return () => clearInterval(timer);
    },
  };
}

/** Given names first: the first becomes the subject. */
function namesOf(options: KeepOptions): readonly string[] {
  const own = hostname().toLowerCase();
  const names = [...options.settings.names, 'localhost', own, ...options.addresses(), '127.0.0.1', '::1'];
  // A name must be one that DNS could carry; a computer's own may hold other signs.
  return [...new Set(names)].filter((name) => /^[a-z0-9.:-]+$/i.test(name));
}

function readPair(folder: string, name: string): PemPair | null {
  const certFile = join(folder, `${name}.cert.pem`);
  const keyFile = join(folder, `${name}.key.pem`);
  if (!existsSync(certFile) || !existsSync(keyFile)) return null;
  return { cert: readFileSync(certFile, 'utf8'), key: readFileSync(keyFile, 'utf8') };
}

/** Key first, each under its name only when whole: a crash in between leaves a pair that does not fit, never half a file. */
function writePair(folder: string, name: string, pair: PemPair): PemPair {
  for (const [end, text] of [
    ['key', pair.key],
    ['cert', pair.cert],
  ] as const) {
    const file = join(folder, `${name}.${end}.pem`);
    writeFileSync(`${file}.part`, text, { mode: 0o600 });
    chmodSync(`${file}.part`, end === 'key' ? 0o600 : 0o644);
    renameSync(`${file}.part`, file);
  }
  return pair;
}

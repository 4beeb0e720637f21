// What keeps a server or an act from its store, in words: what it is, where, and what to do. The database's address is told without its
// user and password.

import { splitAddress } from '../server/stores/postgres/address.ts';
import { troubleOf } from '../server/stores/trouble.ts';
import { NotUnderstood } from './command.ts';

/** Nobody is there, by the codes of the operating system. */
const ABSENT = new Set(['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'EHOSTUNREACH', 'ENETUNREACH']);

/** True for an address that carries a password. */
export function hasPassword(database: string | undefined): boolean {
  return database !== undefined && /:\/\/[^/@]*:[^/@]+@/.test(database);
}

/** A database as people may read it: host, port and name. */
export function shownDatabase(database: string): string {
  try {
    const { hosts, place } = splitAddress(database);
    if (hosts.length > 1) return hosts.join(',') + place;
    const { host, pathname } = new URL(database);
    return host === '' ? database.slice(0, database.indexOf(':')) : host + pathname;
  } catch {
    return 'this address';
  }
}

/** The fault in words; null where it is none of the store's. `database`: as it was given, null for the data folder. */
export function storeFault(error: unknown, database: string | null): NotUnderstood | null {
  const words =
    database === null
      ? folderWords(error)
      : databaseWords(error, shownDatabase(database), hasPassword(database));
  return words === null ? null : new NotUnderstood(words);
}

function databaseWords(error: unknown, where: string, isProved: boolean): string | null {
  const { code, message } = error as { readonly code?: string; readonly message: string }; // the driver's errors carry both
  if (code !== undefined && ABSENT.has(code))
    return `--database: nobody answers at ${where}; is PostgreSQL started, and the address right?`;
  if (code === 'ERR_INVALID_URL')
    return '--database: the address cannot be read; expected postgres://user@host:port/database, signs such as @ and / in a password written as %40 and %2F';
  const isBare =
    !isProved && (code === '28P01' || /client password must be a (non-empty )?string/.test(message));
  if (isBare)
    return `--database: ${where} wants a password and none was given; name in PGPASSFILE a file, readable for this user alone, with the line host:port:database:user:password`;
  if (code === '28P01' || code === '28000')
    return `--database: ${where} refuses the user or the password; look at the address and at the file that PGPASSFILE names`;
  if (code === '3D000')
    return `--database: no database of that name at ${where}; make it first with createdb`;
  if (code === '53300')
    return `--database: ${where} has no connection left; raise its max_connections or stop what holds them`;
  if (code === '42501')
    return `--database: this user may not make its tables at ${where}; let it own the database`;
  const trouble = troubleOf(error);
  if (trouble === 'away')
    return `--database: ${where} does not answer; does PostgreSQL run there, and does something between hold it up?`;
  if (trouble === 'disk-full')
    return `--database: the disk of ${where} is full; make room there first, nothing was changed`;
  if (trouble === 'read-only')
    return `--database: ${where} can only be read, as a copy of another; name the one that is written to`;
  if (trouble === 'damaged') return `--database: ${where} is damaged; keep a copy of it and restore a backup`;
  return folderWords(error);
}

function folderWords(error: unknown): string | null {
  const { code } = error as { readonly code?: string };
  const trouble = troubleOf(error);
  if (trouble === 'read-only' || code === 'EACCES')
    return '--data: this user may not write there; check who owns the folder and how the disk is mounted';
  if (trouble === 'disk-full') return '--data: the disk is full; make room first, nothing was changed';
  if (code === 'SQLITE_NOTADB') return '--data: log.sqlite is no database; restore a backup';
  if (trouble === 'damaged')
    return '--data: log.sqlite is damaged; keep a copy of the folder and restore a backup';
  return null;
}

// The password of a database out of the file that PostgreSQL's own programs read it from, so that it stands neither on the command line
// nor in a unit file. Format: PostgreSQL documentation, "The Password File": host:port:database:user:password, a backslash before : and \.

import { readFileSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { splitAddress } from '../server/stores/postgres/address.ts';
import { NotUnderstood } from './command.ts';

/**
 * The address with the password that the file has for it; as it is where it names one, where PGPASSWORD does, or where the file has none. Of several
 * hosts it is the password of the first that has one: they are one database.
 */
export function withPassword(database: string, env: NodeJS.ProcessEnv): string {
  const { head, hosts } = splitAddress(database);
  if (hosts.length > 1) {
    const all = hosts.join(',');
    const rest = database.slice(head.length + all.length);
    for (const host of hosts) {
      const one = withPassword(head + host + rest, env);
      if (one === head + host + rest) continue;
      const { username, password } = new URL(one);
      return `${head.split('//', 1)[0]}//${username}:${password}@${all}${rest}`;
    }
    return database;
  }
  const address = readAddress(database);
  if (address?.password !== '' || env['PGPASSWORD'] !== undefined) return database;
  const named = env['PGPASSFILE'];
  const text = readPrivate(named ?? join(homedir(), '.pgpass'), named !== undefined);
  const password = text === null ? null : findPassword(text, wantedOf(address, env));
  if (password === null) return database;
  address.password = encodeURIComponent(password);
  return address.href;
}

function readAddress(database: string): URL | null {
  try {
    return new URL(database);
  } catch {
    return null; // a mistake: the driver refuses it
  }
}

function wantedOf({ hostname, port, pathname, username }: URL, env: NodeJS.ProcessEnv): readonly string[] {
  const user = decodeURIComponent(username) || env['PGUSER'] || env['USER'] || '';
  return [hostname || 'localhost', port || '5432', decodeURIComponent(pathname.slice(1)) || user, user];
}

/** The file's text; null where there is none and nobody named it. */
function readPrivate(file: string, isNamed: boolean): string | null {
  try {
    const { mode } = statSync(file);
    if ((mode & 0o077) !== 0)
      throw new NotUnderstood(`PGPASSFILE ${file}: others may read it; chmod 600 it first`);
    return readFileSync(file, 'utf8');
  } catch (error) {
    if (error instanceof NotUnderstood) throw error;
    const { code } = error as NodeJS.ErrnoException;
    if (!isNamed) return null;
    throw new NotUnderstood(
      `PGPASSFILE ${file}: ${code === 'ENOENT' ? 'no such file' : `cannot be read (${code})`}`,
    );
  }
}

function findPassword(text: string, wanted: readonly string[]): string | null {
  for (const line of text.split(/\r?\n/)) {
    if (line.startsWith('#')) continue;
    const fields = (line.match(/(?:\\.|[^:\\])*(?::|$)/g) ?? []).map((field) =>
      field.replace(/:$/, '').replaceAll(/\\(.)/g, '$1'),
    );
    if (fields.length < 5) continue;
    if (wanted.every((each, at) => fields[at] === '*' || fields[at] === each)) return fields[4] ?? null;
  }
  return null;
}

// On which addresses does the server listen, and under which does it tell itself? One thing each: a name in certificates is none to listen on.

import { networkInterfaces } from 'node:os';
import type { ServerSettings } from './settings.ts';

/** The server cannot start, for a reason that a person can act on: one line. */
export class CannotStart extends Error {}

/** Listens where the settings say; throws `CannotStart` where that cannot be. */
export async function listen(
  start: (port: number, host: string) => Promise<unknown>,
  port: number,
  settings: Pick<ServerSettings, 'host' | 'listen'>,
): Promise<void> {
  const { host } = settings;
  const address = givenAddress(settings);
  try {
    if (address !== null) await start(port, address);
    // Every address, of both families where the computer has both.
    else
      await start(port, '::').catch((error) =>
        isFamilyFault(error) ? start(port, '0.0.0.0') : Promise.reject(error),
      );
  } catch (error) {
    throw listenFault(error, address ?? host, port);
  }
}

/** The one address on which a server with these settings listens, as it is given; null for every address. */
export function listenAddress(settings: Pick<ServerSettings, 'host' | 'listen'>): string | null {
  const address = givenAddress(settings);
  return address === '0.0.0.0' || address === '::' ? null : address;
}

function givenAddress({ host, listen: address }: Pick<ServerSettings, 'host' | 'listen'>): string | null {
  return address ?? (isLocal(host) ? host : null);
}

function isFamilyFault(error: unknown): boolean {
  const code = (error as NodeJS.ErrnoException).code;
  return code === 'EAFNOSUPPORT' || code === 'EADDRNOTAVAIL';
}

/** Words a failure to listen for the person who started the server. */
function listenFault(error: unknown, host: string, port: number): Error {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'EADDRINUSE')
    return new CannotStart(`port ${port} is taken by another process; stop it or name another port`);
  if (code === 'EACCES')
    return new CannotStart(`port ${port} may not be opened by this user; name one above 1023`);
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
    return new CannotStart(`${host} is no address of this computer; see --listen and --host`);
  return error as Error; // as thrown by listen
}

/** True for the names and addresses of this computer's own inner network: `localhost` may stand for each of the others. */
export function isLocal(host: string): boolean {
  return host === '127.0.0.1' || host === 'localhost' || host === '::1';
}

/** The host as it stands in an address. */
export function shownHost({ host }: Pick<ServerSettings, 'host'>): string {
  if (host === '0.0.0.0' || host === '::') return lanAddresses()[0] ?? 'localhost';
  return host.includes(':') ? `[${host}]` : host;
}

/** The computer's own addresses on its networks, IPv4 first. */
export function lanAddresses(): readonly string[] {
  const all = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
  const outer = all.filter((one) => !one.internal && !one.address.startsWith('fe80'));
  return outer
    .sort((a, b) => Number(a.family === 'IPv6') - Number(b.family === 'IPv6'))
    .map((one) => one.address);
}

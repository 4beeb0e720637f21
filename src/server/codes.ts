// One-time codes and tickets: short enough to type, kept only as their hash, used up by the first who brings them.

import { randomInt } from 'node:crypto';
import { userInfo } from 'node:os';
import { codeLifeMs } from '../../shared/wire/limits.ts';
import type { CodeMade, ExportMade, ExportRequest } from '../../shared/wire/messages.ts';
import { hashOf, randomToken } from './keys.ts';
import type { Store } from './stores/store.ts';

/** Letters and digits that are not mistaken for each other. */
const ALPHABET = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
const CODE_LENGTH = 10;
/** How long a link to an export may wait to be opened. */
const TICKET_MS = 60_000;

/** A code as it was typed: case, blanks and dashes do not matter. */
export function readCode(typed: string): string {
  return typed.toUpperCase().replace(/[^0-9A-Z]/g, '');
}

/** Who asked for something: a person at a tablet, or whoever sits at the server's terminal, by the account there. */
export interface AskedBy {
  readonly person: string | null;
  readonly account: string | null;
}

/** Whoever sits at this computer; by the account's number where it has no name. */
export function terminal(nameOf: () => string = () => userInfo().username): AskedBy {
  try {
    return { person: null, account: nameOf() };
  } catch {
    // A container may run under a number that no account has.
    return { person: null, account: `uid ${process.getuid?.() ?? '?'}` };
  }
}

/** What an enrolment code is good for. */
export interface CodeUse {
  /** The active tablet whose place may be taken by it. */
  readonly replaces?: string | undefined;
  /** True where it lets a wall screen in, and nothing that writes. */
  readonly screen?: boolean | undefined;
}

/** What is kept with a code: what it is good for, and who asked for it. */
export interface CodeDetail extends CodeUse {
  readonly by?: AskedBy;
}

/** Makes an enrolment code: 10 of 30 signs, 49 bits, good for ten minutes. `by`: who asked for it. */
export async function makeCode(
  store: Pick<Store, 'addOneTime'>,
  nowMs: number,
  use: CodeUse = {},
  by: AskedBy = terminal(),
): Promise<CodeMade> {
  const plain = Array.from({ length: CODE_LENGTH }, () => ALPHABET[randomInt(ALPHABET.length)]).join('');
  const untilMs = nowMs + codeLifeMs;
  await store.addOneTime({
    hash: hashOf(plain),
    purpose: use.screen === true ? 'enrol-screen' : 'enrol',
    detail: JSON.stringify({ ...use, by } satisfies CodeDetail),
    untilMs,
  });
  const code = `${plain.slice(0, 5)}-${plain.slice(5)}`;
  return { code, path: `/#enrol=${code}`, untilMs };
}

/** Makes a link that fetches one export once. The file's name is the last part, so that the browser keeps it. */
export async function makeTicket(
  store: Pick<Store, 'addOneTime'>,
  request: ExportRequest,
  nowMs: number,
): Promise<ExportMade> {
  const ticket = randomToken();
  const untilMs = nowMs + TICKET_MS;
  await store.addOneTime({
    hash: hashOf(ticket),
    purpose: 'export',
    detail: JSON.stringify(request),
    untilMs,
  });
  const ending = request.format === 'json' ? 'ndjson' : request.format;
  return { path: `/export/${ticket}/log.${ending}`, untilMs };
}

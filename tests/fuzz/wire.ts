// Messages between tablet and server, the headers around them, and what plants sign: read by the wire's own readers.

import { generateKeyPairSync } from 'node:crypto';
import { readClaims, splitToken, ticketType } from '../../shared/floor/ticket.ts';
import { isWithinLevels } from '../../shared/log/entry.ts';
import {
  ecdsaFromDer,
  formatNoteKey,
  noteKeyId,
  parseNote,
  parseNoteKey,
  signaturesBy,
} from '../../shared/log/note.ts';
import { parsePlantList, plantListText } from '../../shared/log/plant-list.ts';
import { makeProofRecord, readProofRecord } from '../../shared/log/proof-record.ts';
import { parseTicketStart, ticketStartText } from '../../shared/log/ticket-start.ts';
import { leavesOf, parseRuns } from '../../shared/log/tree-cover.ts';
import { parseTreeHead, treeHeadText } from '../../shared/log/tree-head.ts';
import { formatCursor, parseCursor } from '../../shared/wire/cursor.ts';
import { wireMessages } from '../../shared/wire/messages.ts';
import { formatProof, parseProof } from '../../shared/wire/signing.ts';
import { judgeWire } from '../../shared/wire/version.ts';
import { readAs } from '../../src/server/http/body.ts';
import { Refused } from '../../src/server/http/refuse.ts';
import { openServerKey, readPublicKey, signatureHolds } from '../../src/server/keys.ts';
import { noteHolds } from '../../src/server/plant-key.ts';
import { makeChain, newKey } from '../contract/entries.ts';
import { mutateJson } from './jsons.ts';
import { pick } from './plan.ts';
import { type FuzzTarget, textTarget } from './target.ts';
import { mutateText } from './texts.ts';

const key = newKey();
const chain = makeChain({ tablet: 't1', count: 3, key });
const hash = 'a'.repeat(64);
const sig = key.sign('x');
const ms = 1_772_431_200_000;
const answer = { serverEpoch: 'e1', serverMs: ms };
const head = { tablet: 't1', epoch: 'e1', seq: 3, hash };
const cursor = `12.${'0'.repeat(16)}`;
const proofs = [[Buffer.alloc(32, 7).toString('base64')], []];
const moment = '2026-03-02T06:00:00+01:00';

/** One valid message of each name; a message without one does not compile. */
const messages: { readonly [Name in keyof typeof wireMessages]: unknown } = {
  refusal: {
    code: 'time-off',
    message: 'sign again',
    serverMs: ms,
    facts: { offMs: 4, name: null, isOff: true },
  },
  info: {
    wire: 9,
    wireFloor: 1,
    ...answer,
    plant: 'Brae Works',
    serverKey: key.publicKey,
    certificateEndsMs: null,
  },
  enrol: { code: 'ABCD-1234', tablet: 't1', publicKey: key.publicKey, name: 'Line 2 front' },
  enrolled: { ...answer, tablet: 't1', plant: 'Brae Works', serverKey: key.publicKey },
  offer: { heads: [head, { ...head, tablet: 't2' }] },
  offered: {
    ...answer,
    acks: [{ tablet: 't1', epoch: 'e1', seq: 0 }],
    clocksOff: [{ tablet: 't2', name: 'rear', offMs: -9 }],
    stateShare: 0.62,
  },
  push: { sentMs: ms, entries: chain, brought: [{ ...head, sig }] },
  pushed: {
    ...answer,
    acks: [{ tablet: 't1', epoch: 'e1', seq: 3 }],
    faults: [{ id: 't1/e1/2', fault: 'hash-differs' }],
    ahead: [{ id: 't1/e1/3', aheadMs: 9 }],
    snapshotWanted: false,
    receipt: { head: 'x', places: [{ tablet: 't1', epoch: 'e1', seq: 1, count: 3, index: 0 }] },
  },
  pulled: { ...answer, entries: chain, cursor, more: true },
  live: { serverEpoch: 'e1', from: cursor, cursor, entries: chain },
  checkpoint: { serverEpoch: 'e1', pos: 4, root: hash, atMs: ms, heads: [head], sig },
  treeAsk: { sizes: [1, 2, 3], places: [0, 4] },
  treeTold: { ...answer, head: 'x', consistency: proofs, inclusion: proofs, witness: 'y' },
  cosign: { size: 3, seconds: 1_772_431_200, sig },
  cosigned: { kept: true },
  recordAsk: { tablet: 't1', epoch: 'e1', seq: 3 },
  recordTold: { ...answer, index: 2, proof: proofs[0], head: 'x' },
  plantKeys: { ...answer, keys: 'x', tickets: 'y' },
  snapshot: { fold: 'f1', cursor },
  check: { badge: 'B-1', person: null, pin: '1234', stays: true },
  checked: {
    person: 'ana',
    name: 'Ana',
    role: 'lead',
    pinChecked: true,
    token: 't',
    untilMs: ms,
    ticket: 'a.b.c',
  },
  pinsHanded: { pins: [{ pin: 'p1', salt: 's', hash, rounds: 600_000 }] },
  pinsKept: { serverEpoch: 'e1', kept: ['p1'] },
  codeRequest: { replaces: 't2' },
  codeMade: { code: 'ABCD', path: '/join', untilMs: ms },
  tablets: {
    tablets: [{ tablet: 't1', name: 'front', enrolledMs: ms, seenMs: null, revokedMs: null, clockOffMs: -3 }],
  },
  revoke: { tablet: 't1' },
  export: { format: 'csv', from: moment, to: null, line: 'L1' },
  exportMade: { path: '/export/x', untilMs: ms },
  trace: { lot: 'LT-1', from: moment },
  pushInfo: { key: key.publicKey, reaches: true, on: false },
  pushSubscribe: {
    endpoint: 'https://push.example/x',
    publicKey: key.publicKey,
    auth: 'a'.repeat(22),
    zone: 'Europe/London',
    quiet: { from: '22:00', to: '06:00' },
  },
  pushSubscribed: { kept: false, why: 'unreached' },
  pushQuiet: { zone: 'UTC', quiet: null },
  pushTell: { notices: [{ key: 'k', kind: 'warning', line: 'L2', lineName: 'Line 2', slot: 'M1-F-022' }] },
  pushTold: { sent: 1 },
  traced: {
    places: [
      {
        line: 'L1',
        run: 'r',
        product: 'p',
        slot: 'M1-F-001',
        feeder: null,
        reel: 'K1',
        part: 'P',
        supplierPart: null,
        lot: 'L',
        dateCode: null,
        sure: { first: 1, last: 9 },
        possible: null,
        guessed: ['label'],
        serials: ['S'],
        goesOn: false,
        entry: 't/e/1',
        who: null,
        at: moment,
      },
    ],
    panel: {
      run: 'r',
      line: 'L1',
      product: 'p',
      side: 'top',
      panel: 4,
      serial: null,
      slots: [{ slot: 's', part: 'P', lots: [{ lot: null, reel: null, supplierPart: null, sure: true }] }],
    },
    more: false,
    behind: 0,
  },
};
/** Writing JSON recurses. */
const LEVELS = 500;
const names = Object.keys(wireMessages) as (keyof typeof wireMessages)[];
const samples = names.map((name) => messages[name]);

/** What refuses JSON that is none, as the server's reader of bodies does. */
export function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const onMessages: FuzzTarget = textTarget({
  name: 'wire messages',
  share: 250_000,
  input: (plan) => mutateJson(samples, plan),
  read: (text, plan) => {
    const value = parsed(text);
    const schema = wireMessages[pick(names, plan.sample)];
    let taken: unknown;
    try {
      taken = readAs(schema, value);
    } catch (error) {
      if (error instanceof Refused && error.code === 'bad-body') return;
      throw error;
    }
    // What was taken is still taken once it travelled on, and says the same.
    // An entry is looked at by itself once it is taken, and may be nested to any depth until then.
    if (!isWithinLevels(taken, LEVELS)) return;
    const again = JSON.stringify(taken);
    if (JSON.stringify(readAs(schema, JSON.parse(again))) !== again)
      throw new Error('says something else at the second reading');
  },
});

const headers = [
  formatProof({ tablet: 't1', timeMs: ms, nonce: 'abcdefghijklmnop', sig }),
  formatProof({ tablet: 'demo0-line', timeMs: 1, nonce: 'A_-9abcdefghijklmnop', sig: 'A'.repeat(86) }),
  cursor,
  `9007199254740991.${'f'.repeat(16)}`,
  '6',
  key.publicKey,
];

const onHeaders: FuzzTarget = textTarget({
  name: 'wire headers, keys',
  share: 190_000,
  input: (plan) =>
    mutateText({ samples: headers, parts: /([ =,.])/, odd: ['Reelward', 'tablet=', 'sig=', 'time=1'] }, plan),
  read: (text) => {
    const proof = parseProof(text);
    if (proof && formatProof(proof).replace(/time=\d+/, '') !== text.replace(/time=\d+/, ''))
      throw new Error('another proof');
    const at = parseCursor(text);
    if (at && formatCursor(at) !== text) throw new Error('another cursor');
    judgeWire(text);
    if (readPublicKey(text) === null && signatureHolds(text, 'x', sig)) throw new Error('holds by no key');
    if (signatureHolds(key.publicKey, 'y', text)) throw new Error('holds for another text');
  },
});

const own = generateKeyPairSync('ec', { namedCurve: 'P-256' })
  .privateKey.export({ type: 'pkcs8', format: 'pem' })
  .toString();
const { plant } = await openServerKey({ keepMeta: async () => own });
const root = new Uint8Array(32).fill(9);
const b64 = (value: unknown) => Buffer.from(JSON.stringify(value)).toString('base64url');
const ticket = [
  b64({ alg: 'ES256', typ: ticketType }),
  b64({
    iss: plant.ed25519.name,
    sub: 'ana',
    role: 'lead',
    tablet: 't1',
    nbf: 1_772_431_200,
    exp: 1_772_434_800,
    cnf: { jwk: { kty: 'EC', crv: 'P-256', x: 'x'.repeat(43), y: 'y'.repeat(43) } },
  }),
  sig,
].join('.');
const since = '2026-01-01T00:00:00Z';
const notes = [
  plant.signNote(treeHeadText({ origin: plant.ed25519.name, size: 12, root })),
  plant.signNote(
    plantListText({
      plantKey: plant.ed25519,
      plant: 'Brae Works',
      at: since,
      keys: [{ tablet: 't1', key: key.publicKey, since, until: null }],
    }),
  ),
  plant.signNote(ticketStartText({ origin: plant.ed25519.name, at: since, before: new Map([['t1/e1', 3]]) })),
  formatNoteKey(plant.ed25519),
  ticket,
  '1@0+3 4@9+2',
];

const onNotes: FuzzTarget = textTarget({
  name: 'signed notes, tickets',
  share: 110_000,
  input: (plan) =>
    mutateText({ samples: notes, parts: /([\n +@.])/, odd: ['\u2014', '\n\n', '\u2014 x AAAAAAA='] }, plan),
  read: (text) => {
    const note = parseNote(text);
    if (note) {
      for (const bytes of signaturesBy(note, plant.ed25519)) ecdsaFromDer(bytes);
      // A note that holds has the text of one that was signed.
      if (noteHolds(note, plant.ed25519) && !notes.some((one) => one.startsWith(`${note.text}\n`)))
        throw new Error('holds for another text');
    }
    const said = note?.text ?? text;
    const size = parseTreeHead(said)?.size ?? 0;
    if (!Number.isSafeInteger(size) || size < 0) throw new Error(`a head of ${size} leaves`);
    parsePlantList(said);
    parseTicketStart(said);
    const named = parseNoteKey(text);
    if (named && formatNoteKey(named) !== text) throw new Error(`another key: ${noteKeyId(named)}`);
    leavesOf([parseRuns(text) ?? []]);
    const token = splitToken(text);
    if (token) readClaims(token);
    ecdsaFromDer(Buffer.from(text, 'latin1'));
  },
});

const records = [
  {
    keys: notes[1],
    tree: { head: notes[0], at: { 't1/e1': '1@0+3' }, cover: proofs[0]?.[0] },
    rights: { unproven: ['a'], confirmed: [], rejected: [] },
  },
  { keys: 'x', brought: [{ tablet: 't1', epoch: 'e1', seq: 1, hash, via: 't2', sig }] },
];

const onRecords: FuzzTarget = textTarget({
  name: 'proof lines',
  share: 30_000,
  input: (plan) => mutateJson(records, plan),
  read: (text) => {
    const value = parsed(text);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
    const line = makeProofRecord({ keys: 'x' }, { epoch: 'e1', atMs: ms });
    readProofRecord({ ...line, payload: value as typeof line.payload });
  },
});

/** All of it. */
export const wireTargets: readonly FuzzTarget[] = [onMessages, onHeaders, onNotes, onRecords];

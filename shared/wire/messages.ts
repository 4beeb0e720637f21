// What tablet and server say to each other: one schema a message, the types taken from it, checked at both ends.
// Fields not named here are dropped on receipt, so that a newer sender does not break an older reader; entries alone are
// strict, since their hash covers every field.

import * as z from 'zod/mini';
import { roles } from '../kit/roles.ts';
import { entrySchema } from '../log/entry-schema.ts';
import { exportFormats } from '../log/export-formats.ts';
import { entryFaults, type WireCode, wireCodes } from './codes.ts';
import { headNote, leaf, ms, name, proof, publicKey, signature } from './fields.ts';
import { pageEntries } from './limits.ts';
import { cosignedSchema, cosignSchema, recordAskSchema, recordToldSchema } from './messages-heads.ts';
import {
  pushInfoSchema,
  pushQuietSchema,
  pushSubscribedSchema,
  pushSubscribeSchema,
  pushTellSchema,
  pushToldSchema,
} from './messages-push.ts';
import { tracedSchema, traceSchema } from './messages-trace.ts';

/** Tablets travel in a header's comma list. */
const tabletName = name.check(z.regex(/^[^,]+$/, 'expected no comma'));
const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/));
const cursor = z.string().check(z.regex(/^\d{1,16}\.[0-9a-f]{16}$/));
/** A name for people: no control characters, which some databases cannot hold. */
const words = z
  .string()
  .check(
    z.minLength(1),
    z.maxLength(120),
    z.regex(/^[^\u0000-\u001f\u007f]+$/, 'expected text without control characters'),
  );

/** A chain and how far it is held. */
export const markSchema = z.object({ tablet: name, epoch: name, seq: z.int().check(z.minimum(0)) });
export type ChainMark = z.infer<typeof markSchema>;

/** The end of a chain with its hash. */
export const headSchema = z.object({ tablet: name, epoch: name, seq: z.int().check(z.minimum(1)), hash });
export type Head = z.infer<typeof headSchema>;

/** Said with every no. `facts` are for the log and for words with numbers in them. */
export const refusalSchema = z.object({
  code: z.enum(wireCodes as readonly [WireCode, ...WireCode[]]), // not empty by construction
  message: z.string(),
  /** The server's clock, so that a tablet with a wrong clock can sign again. */
  serverMs: z.optional(ms),
  facts: z.optional(z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()]))),
});
export type Refusal = z.infer<typeof refusalSchema>;

/** What a plant says it is called as long as nobody named it. */
export const unnamedPlant = 'Plant';

/** `GET /api/info`: anybody may ask. */
export const infoSchema = z.object({
  wire: z.int(),
  wireFloor: z.int(),
  serverEpoch: name,
  serverMs: ms,
  plant: words,
  /** Signs checkpoints. */
  serverKey: publicKey,
  /** When the HTTPS certificate ends; null where the server does not hold one. */
  certificateEndsMs: z.nullable(ms),
});
export type Info = z.infer<typeof infoSchema>;

/** `POST /api/enrol`, signed by the key that it brings. */
export const enrolSchema = z.object({
  code: z.string().check(z.minLength(1), z.maxLength(40)),
  tablet: tabletName,
  publicKey,
  /** What people call it, e.g. "Line 2 front". */
  name: words,
  /** True where it wrote nothing yet but that it was opened: only such a one may be a wall screen. Absent before version 9. */
  fresh: z.optional(z.boolean()),
});
export type Enrol = z.infer<typeof enrolSchema>;

/** The answer to an enrolment: the plant, and the key that the server signs with. */
export const enrolledSchema = z.object({
  tablet: tabletName,
  plant: words,
  serverEpoch: name,
  serverMs: ms,
  serverKey: publicKey,
  /** True for a wall screen: it reads, and sends nothing. Absent before version 9. */
  screen: z.optional(z.boolean()),
});
export type Enrolled = z.infer<typeof enrolledSchema>;

/** `POST /api/offer`: "this is what I hold"; answered by how far the server holds each chain. */
export const offerSchema = z.object({ heads: z.array(headSchema).check(z.maxLength(5_000)) });
export type Offer = z.infer<typeof offerSchema>;

/** The answer to an offer: how far the server holds each chain. */
export const offeredSchema = z.object({
  serverEpoch: name,
  serverMs: ms,
  acks: z.array(markSchema),
  /** Tablets heard of today whose clock is off by more than is common; absent before version 3. */
  clocksOff: z.optional(z.array(z.object({ tablet: name, name: words, offMs: z.int() }))),
  /** The share of what may be handed to a new tablet that the plant's state takes, above 1 where it is too large; absent where none was made yet, and before version 10. */
  stateShare: z.optional(z.number().check(z.minimum(0))),
});
export type Offered = z.infer<typeof offeredSchema>;

/** Chains of other tablets in one page. */
export const broughtMost = 64;
/** The end of another tablet's chain in a page, and the signature of the tablet that brings it (`broughtText`). */
export const broughtSchema = z.object({ ...headSchema.shape, sig: signature });
export type Brought = z.infer<typeof broughtSchema>;

/** `POST /api/push`: a page of entries, ascending within each chain. */
export const pushSchema = z.object({
  /** The tablet's own clock when it sent the page: shows how far that clock is off. */
  sentMs: ms,
  entries: z.array(entrySchema).check(z.minLength(1), z.maxLength(pageEntries)),
  /** For chains of other tablets: without it the server takes none of a tablet that it never let in. Absent before version 6. */
  brought: z.optional(z.array(broughtSchema).check(z.maxLength(broughtMost))),
});
export type Push = z.infer<typeof pushSchema>;

/** Where entries of one chain lie in the log: the first is leaf `index`. */
export const placeSchema = z.object({
  tablet: name,
  epoch: name,
  seq: z.int().check(z.minimum(1)),
  count: z.int().check(z.minimum(1)),
  index: leaf,
});

/** The answer to a push: what is held now and what was quarantined. */
export const pushedSchema = z.object({
  serverEpoch: name,
  serverMs: ms,
  /** For each chain of the page: the highest sequence number up to which the server holds all. */
  acks: z.array(markSchema),
  /** Entries quarantined. */
  faults: z.array(z.object({ id: z.string(), fault: z.enum(entryFaults) })),
  /** Entries dated further ahead of the server's clock than is common; those beyond the limit are among the faults. */
  ahead: z.array(z.object({ id: z.string(), aheadMs: ms })),
  snapshotWanted: z.boolean(),
  /** The plant's word for what it took: a head of its log, and where the page's entries lie in it; absent before version 4. */
  receipt: z.optional(z.object({ head: headNote, places: z.array(placeSchema) })),
});
export type Pushed = z.infer<typeof pushedSchema>;

/** Entries as they come: each is checked by itself, so that one that is none does not keep the others out. */
const entriesToCheck = z.array(z.unknown());

/** `GET /api/pull?after=CURSOR`: entries in commit order. */
export const pulledSchema = z.object({
  serverEpoch: name,
  serverMs: ms,
  entries: entriesToCheck,
  cursor,
  more: z.boolean(),
});
export type Pulled = z.infer<typeof pulledSchema>;

/** One event of `GET /api/live`: goes on from `from`; without entries it only says that there are some. */
export const liveSchema = z.object({
  serverEpoch: name,
  from: cursor,
  cursor,
  entries: z.nullable(entriesToCheck),
});
export type Live = z.infer<typeof liveSchema>;

/** `GET /api/checkpoint`: how far the server's log reached, signed; kept by tablets as evidence. */
export const checkpointSchema = z.object({
  serverEpoch: name,
  pos: z.int().check(z.minimum(0)),
  root: hash,
  atMs: ms,
  heads: z.array(headSchema),
  sig: signature,
});
export type SignedCheckpoint = z.infer<typeof checkpointSchema>;

/** Heads and leaves in one question about the tree. */
export const treeAskMost = 32;
/** `POST /api/tree`: the newest head of the log's tree, and proofs. */
export const treeAskSchema = z.object({
  /** Sizes of heads, ascending: that each begins with the one before it, and the newest with the last. */
  sizes: z.array(leaf).check(z.maxLength(treeAskMost)),
  /** Leaves that are in the newest. */
  places: z.array(leaf).check(z.maxLength(treeAskMost)),
});
export type TreeAsk = z.infer<typeof treeAskSchema>;

/** The answer: a proof for each size and each leaf that was asked; an empty one where the newest head is smaller. */
export const treeToldSchema = z.object({
  serverEpoch: name,
  serverMs: ms,
  head: headNote,
  consistency: z.array(proof),
  inclusion: z.array(proof),
  /** The head that the plant's tablets sign at present, with the signatures it has; absent before version 7. */
  witness: z.optional(headNote),
});
export type TreeTold = z.infer<typeof treeToldSchema>;

/** `GET /api/keys`: the plant's signed list of its tablets' keys, a note (`log/plant-list.ts`). */
export const plantKeysSchema = z.object({
  serverEpoch: name,
  serverMs: ms,
  keys: z.string().check(z.minLength(1), z.maxLength(4_000_000)),
  /** From where on the plant gives tickets, a note (`log/ticket-start.ts`); absent while it gave none, and before version 5. */
  tickets: z.optional(z.string().check(z.minLength(1), z.maxLength(4_000_000))),
});
export type PlantKeys = z.infer<typeof plantKeysSchema>;

/** Headers of a snapshot; the body is the app's own, gzip. */
export const snapshotSchema = z.object({ fold: name, cursor });
export type SnapshotName = z.infer<typeof snapshotSchema>;

/** `POST /api/people/check`: who stands there. By badge or by person, with a PIN where there is one. */
export const checkSchema = z.object({
  badge: z.nullable(z.string().check(z.minLength(1), z.maxLength(120))),
  person: z.nullable(z.string().check(z.minLength(1), z.maxLength(64))),
  pin: z.nullable(z.string().check(z.minLength(1), z.maxLength(32))),
  /** True for somebody who signs in, and stays; else the person only decides something. Absent before version 5. */
  stays: z.optional(z.boolean()),
});
export type PersonCheck = z.infer<typeof checkSchema>;

/** The answer to a check of a person: who it is and for how long that counts. */
export const checkedSchema = z.object({
  person: z.string(),
  name: z.string(),
  role: z.enum(roles),
  /** False: known by the badge alone; not enough for anything that needs a role. */
  pinChecked: z.boolean(),
  /** Proves the person in later requests of this tablet (header `reelward-person`). */
  token: z.string(),
  untilMs: ms,
  /** Proves to everybody what the person does on this tablet, a JSON Web Token (`floor/ticket.ts`); absent where no PIN was checked, and before version 5. */
  ticket: z.optional(z.string().check(z.minLength(1), z.maxLength(3_000))),
});
export type PersonChecked = z.infer<typeof checkedSchema>;

/** PINs in one `POST /api/people/pins`. */
export const pinsMost = 20;
/** `POST /api/people/pins`: what checks PINs that this tablet's entries set: PBKDF2 with SHA-256 over the PIN and the salt's text. */
export const pinsHandedSchema = z.object({
  pins: z
    .array(
      z.object({
        pin: z.string().check(z.minLength(1), z.maxLength(64)),
        salt: z.string().check(z.minLength(1), z.maxLength(64)),
        hash,
        rounds: z.int().check(z.minimum(1), z.maximum(5_000_000)),
      }),
    )
    .check(z.minLength(1), z.maxLength(pinsMost)),
});
export type PinsHanded = z.infer<typeof pinsHandedSchema>;
/** The answer: which are kept; the others are of entries that have not come yet, or of no entry of this tablet. */
export const pinsKeptSchema = z.object({ serverEpoch: name, kept: z.array(z.string()) });
export type PinsKept = z.infer<typeof pinsKeptSchema>;

/** Header that carries the token of a checked person. */
export const personHeader = 'reelward-person';

/**
 * `POST /api/codes`: a lead's tablet makes an enrolment code; `replaces` names the active tablet whose place the new one takes. `screen`: it
 * lets a wall screen in and nothing else, and in nobody's place.
 */
export const codeRequestSchema = z
  .object({ replaces: z.optional(name), screen: z.optional(z.boolean()) })
  .check(
    z.refine(({ replaces, screen }) => replaces === undefined || screen !== true, {
      error: 'a wall screen takes no tablet’s place',
    }),
  );
/** The answer to a request for a code. */
export const codeMadeSchema = z.object({ code: z.string(), path: z.string(), untilMs: ms });
export type CodeMade = z.infer<typeof codeMadeSchema>;

/** `GET /api/tablets`: for a lead. */
export const tabletsSchema = z.object({
  tablets: z.array(
    z.object({
      tablet: name,
      name: words,
      enrolledMs: ms,
      seenMs: z.nullable(ms),
      revokedMs: z.nullable(ms),
      /** How far its clock was off when it last pushed, in ms; positive is ahead. */
      clockOffMs: z.nullable(z.int()),
      /** True for a wall screen; absent before version 9. */
      screen: z.optional(z.boolean()),
    }),
  ),
});
export type Tablets = z.infer<typeof tabletsSchema>;

/** `POST /api/tablets/revoke`. */
export const revokeSchema = z.object({ tablet: name });

/** `POST /api/export`, for a lead or an engineer, answered by a path that may be fetched once: its format and what of the log. */
export const exportSchema = z.object({
  format: z.enum(exportFormats),
  /** ISO 8601 with offset. */
  from: z.nullable(z.iso.datetime({ offset: true })),
  to: z.nullable(z.iso.datetime({ offset: true })),
  line: z.nullable(z.string().check(z.minLength(1), z.maxLength(64))),
});
export type ExportRequest = z.infer<typeof exportSchema>;
/** The answer to an export: where it is fetched, once and until when. */
export const exportMadeSchema = z.object({ path: z.string(), untilMs: ms });
export type ExportMade = z.infer<typeof exportMadeSchema>;

/** Every message by name: what the version speaks for. */
export const wireMessages = {
  refusal: refusalSchema,
  info: infoSchema,
  enrol: enrolSchema,
  enrolled: enrolledSchema,
  offer: offerSchema,
  offered: offeredSchema,
  push: pushSchema,
  pushed: pushedSchema,
  pulled: pulledSchema,
  live: liveSchema,
  checkpoint: checkpointSchema,
  treeAsk: treeAskSchema,
  treeTold: treeToldSchema,
  cosign: cosignSchema,
  cosigned: cosignedSchema,
  recordAsk: recordAskSchema,
  recordTold: recordToldSchema,
  plantKeys: plantKeysSchema,
  snapshot: snapshotSchema,
  check: checkSchema,
  checked: checkedSchema,
  pinsHanded: pinsHandedSchema,
  pinsKept: pinsKeptSchema,
  codeRequest: codeRequestSchema,
  codeMade: codeMadeSchema,
  tablets: tabletsSchema,
  revoke: revokeSchema,
  export: exportSchema,
  exportMade: exportMadeSchema,
  trace: traceSchema,
  traced: tracedSchema,
  pushInfo: pushInfoSchema,
  pushSubscribe: pushSubscribeSchema,
  pushSubscribed: pushSubscribedSchema,
  pushQuiet: pushQuietSchema,
  pushTell: pushTellSchema,
  pushTold: pushToldSchema,
} as const;

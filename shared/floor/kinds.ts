// What can happen on the floor, entry kind by entry kind, with the checked shape of its payload.
// Common facts stand at the top level of a payload under one name each (line, slot, reel, part, lot …), so that lists,
// filters and exports need no knowledge of the kind. A field's meaning never changes: a new meaning is a new field.

import * as z from 'zod/mini';
import type { Entry, JsonObject } from '../log/entry.ts';
import { changePayloadSchemas } from './kinds-change.ts';
import { decisionPayloadSchemas } from './kinds-decisions.ts';
import { handoverPayloadSchemas } from './kinds-handover.ts';
import { labelPayloadSchemas } from './kinds-labels.ts';
import { linePayloadSchemas } from './kinds-line.ts';
import { moisturePayloadSchemas } from './kinds-moisture.ts';
import { packPayloadSchemas } from './kinds-packs.ts';
import { panelPayloadSchemas } from './kinds-panels.ts';
import { partPayloadSchemas } from './kinds-parts.ts';
import { passkeyPayloadSchemas, signedByPasskey } from './kinds-passkeys.ts';
import { pastePayloadSchemas } from './kinds-paste.ts';
import { picturePayloadSchemas } from './kinds-pictures.ts';
import { plantPayloadSchemas, weekly } from './kinds-plant.ts';
import { printPayloadSchemas } from './kinds-print.ts';
import { reelPayloadSchemas } from './kinds-reels.ts';
import { rightPayloadSchemas } from './kinds-rights.ts';
import { serverPayloadSchemas } from './kinds-server.ts';
import { skippedSchema, stationPayloadSchemas } from './kinds-stations.ts';
import { storePayloadSchemas } from './kinds-store.ts';
import { valuePayloadSchemas } from './kinds-values.ts';
import { count, id, moment, orNull, positive, short, text, whole } from './payload-fields.ts';
import {
  bankHolds,
  packageKinds,
  pickOrders,
  roles,
  sides,
  sources,
  stopReasons,
  warningLevels,
} from './vocabulary.ts';

const jsonObject = z.record(z.string(), z.json()) as unknown as z.ZodMiniType<JsonObject>; // same values, read only

/** Numbers of characters that a site's bar codes have. */
const codeLengths = z.array(z.int().check(z.minimum(1), z.maximum(80))).check(z.maxLength(20));

/** One slot of a setup: what it wants. `pitchMm`, `tapeWidthMm` in mm; `positions` in 8 mm steps. */
export const setupSlotSchema = z.strictObject({
  slot: id,
  part: id,
  perPanel: count,
  tapeWidthMm: orNull(positive),
  pitchMm: orNull(positive),
  positions: z.int().check(z.minimum(1)),
  alternates: z.array(id),
  supplierParts: z.array(id),
  note: z.optional(short),
  critical: z.optional(z.boolean()),
  polarity: z.optional(short),
  bodyMm: z.optional(positive),
  msl: z.optional(short),
  /** What the feeder must be, where the sheet says so: its type, its drive, and the depth of the tape's pockets (mm). */
  feederType: z.optional(id),
  drive: z.optional(short),
  pocketMm: z.optional(positive),
  /** What the parts come in, where the sheet says that it is no tape. */
  comesIn: z.optional(z.enum(packageKinds)),
  /** Means nothing and is written by nobody: an old log that carries it is still read. */
  shares: z.optional(z.unknown()),
  /** Where slots of the same part are used in turn: the place of this one; the first that has parts feeds, and takes `perPanel` alone. */
  turn: z.optional(z.int().check(z.minimum(1))),
});

/** 32 bytes. */
const secret = z.string().check(z.regex(/^[\w-]{43}$/));

/** The shape of every kind's payload, each made when asked for: `schemaOf` keeps it. Unknown keys are refused. */
export const payloadSchemas = {
  'tablet.opened': () =>
    z.strictObject({
      name: short,
      app: short,
      /** Public key (JWK) that signs this chain, null where the tablet has none. */
      key: orNull(jsonObject),
      /** The chain that this tablet wrote before, where its database was lost. */
      previous: orNull(z.strictObject({ epoch: id, seq: whole })),
    }),
  'tablet.named': () => z.strictObject({ name: short }),
  'person.added': () =>
    z.strictObject({
      person: id,
      name: short,
      role: z.enum(roles),
      /** What the badge says, as older versions wrote it. */
      badge: z.optional(short),
      /** What the badge says, as its hash under a key of `badges.keyed` (`badge.ts`). */
      badgeMark: z.optional(z.strictObject({ key: id, mark: secret })),
      /** As older versions wrote it: what checks the PIN. */
      pin: z.optional(orNull(z.strictObject({ salt: short, hash: short, rounds: whole }))),
      /** The name of a new PIN, null for none: what checks it lies with the server and on tablets. Without it and `pin` the PIN stays as it was. */
      pinSet: z.optional(orNull(id)),
      ...signedByPasskey,
    }),
  /** A key that marks badges: every tablet of the plant needs it, and exports leave it out. */
  'badges.keyed': () => z.strictObject({ key: id, secret }),
  'person.removed': () => z.strictObject({ person: id, ...signedByPasskey }),
  'person.signed-in': () =>
    z.strictObject({
      person: id,
      /** `name`: chosen from the list by somebody without a PIN, which proves nothing. */
      how: z.enum(['badge', 'pin', 'badge-and-pin', 'name']),
      checked: z.enum(['tablet', 'server']),
    }),
  'person.signed-out': () =>
    z.strictObject({
      person: id,
      /** The tablet did it: nobody touched it for the line's minutes, or a shift has passed. Absent where the person did. */
      why: z.optional(z.enum(['idle', 'shift'])),
    }),
  /** The language in which a person wants to be spoken to, on every tablet. */
  'person.language-chosen': () => z.strictObject({ person: id, language: short }),
  'line.defined': () =>
    z.strictObject({
      line: id,
      name: short,
      /** IANA zone of the plant, e.g. `Europe/Berlin`. */
      zone: short,
      machines: z.array(
        z.strictObject({
          machine: id,
          name: short,
          /** Banks in walking order; a position is one 8 mm step. */
          banks: z.array(
            z.strictObject({
              bank: id,
              name: short,
              positions: whole,
              /** The first slot as it is written on the machine; absent where slots were known from sheets alone. */
              first: z.optional(short),
              /** What stands there instead of feeders; absent: feeders. */
              holds: z.optional(z.enum(bankHolds)),
            }),
          ),
        }),
      ),
    }),
  'line.ruled': () =>
    z.strictObject({
      line: id,
      leadSeconds: whole,
      walkSeconds: whole,
      spliceSeconds: whole,
      /** Tape from hub to pick point and from intake to pick point; null where nobody measured it. */
      hubToPickMm: orNull(positive),
      intakeToPickMm: orNull(positive),
      /** Loss assumed until it is learnt, as a fraction. */
      loss: z.number().check(z.minimum(0), z.lt(1)),
      /** One deviation of a printed quantity as a fraction of it; absent: the usual one (`LABEL_SHARE`). */
      labelShare: z.optional(z.number().check(z.minimum(0), z.lt(1))),
      shifts: z.array(weekly),
      breaks: z.array(weekly),
      stops: z.array(z.strictObject({ from: moment, to: moment, note: short })),
      comparison: z.strictObject({
        ignoreCase: z.boolean(),
        ignoreSpaces: z.boolean(),
        ignoreDashes: z.boolean(),
        packingSuffixes: z.array(id),
      }),
      feedersKnown: z.boolean(),
      /** Which reel off the line is taken first; absent: the oldest. */
      pickOrder: z.optional(z.enum(pickOrders)),
      /** Bar codes that the camera reads besides the usual ones, by the numbers of characters that they have; absent or empty: none. */
      alsoRead: z.optional(z.strictObject({ code93: codeLengths, itf: codeLengths })),
      ...signedByPasskey,
    }),
  'feeder.known': () =>
    z.strictObject({
      feeder: id,
      tapeWidthMm: positive,
      pitchesMm: z.array(positive),
      positions: z.int().check(z.minimum(1)),
    }),
  'feeder.withdrawn': () => z.strictObject({ feeder: id, reason: short }),
  'supplier.approved': () => z.strictObject({ supplierPart: short, part: id, ...signedByPasskey }),
  'supplier.withdrawn': () => z.strictObject({ supplierPart: short, part: id }),
  'setup.taken': () =>
    z.strictObject({
      setup: id,
      product: short,
      side: z.enum(sides),
      revision: short,
      line: id,
      slots: z.array(setupSlotSchema),
      source: short,
      /** Boards on one panel; absent where nobody said. `perPanel` is of all of them. */
      boardsPerPanel: z.optional(z.int().check(z.minimum(1), z.maximum(1000))),
    }),
  'setup.chosen': () => z.strictObject({ line: id, setup: id }),
  'run.started': () =>
    z.strictObject({
      run: id,
      line: id,
      setup: id,
      product: short,
      panelsWanted: whole,
      /** Nominal seconds of working time a panel, and one panel's standard deviation. */
      panelSeconds: positive,
      panelSd: count,
      /** Text with which every panel's own code begins; null where panels carry no code. */
      panelPrefix: orNull(short),
    }),
  /** Slots whose reel must be spliced as soon as the run begins; it was begun all the same. Beside the start, which older tablets must read. */
  'run.began-short': () => z.strictObject({ run: id, line: id, short: z.array(short).check(z.minLength(1)) }),
  /**
   * `stoodFrom`: since when the line stood, where a person was asked; absent where nobody was. `code`: the state that the line's machine told
   * then, by SEMI E58; absent where none told one in which it stands.
   */
  'run.stopped': () =>
    z.strictObject({
      run: id,
      line: id,
      reason: z.enum(stopReasons),
      note: short,
      stoodFrom: z.optional(moment),
      code: z.optional(z.int()),
    }),
  'run.resumed': () => z.strictObject({ run: id, line: id }),
  /** `stoodFrom`: as of a stop, for a run that was going until then. */
  'run.ended': () =>
    z.strictObject({
      run: id,
      line: id,
      panels: whole,
      note: short,
      stoodFrom: z.optional(moment),
    }),
  'panels.counted': () =>
    z.strictObject({
      run: id,
      line: id,
      add: z.int(),
      /** Panels done after this entry, as the tablet saw it; sums rule where tablets differ. */
      panels: whole,
      serial: orNull(short),
      via: z.enum(sources),
      /** Boards skipped (marked bad, nothing placed) on the panels added: how many in all, or which of a single panel, from 1; absent: nobody said. */
      skipped: z.optional(skippedSchema),
    }),
  ...reelPayloadSchemas,
  ...decisionPayloadSchemas,
  ...handoverPayloadSchemas,
  'material.blocked': () =>
    z.strictObject({
      block: id,
      reel: orNull(id),
      lot: orNull(short),
      part: orNull(short),
      reason: short,
    }),
  'material.released': () => z.strictObject({ block: id, reason: short, by: id, ...signedByPasskey }),
  'sweep.started': () => z.strictObject({ line: id, sweep: id }),
  'sweep.ended': () => z.strictObject({ line: id, sweep: id, seen: whole, missing: z.array(short) }),
  'warning.acknowledged': () =>
    z.strictObject({
      line: id,
      slot: short,
      need: short,
      level: z.enum(warningLevels),
    }),
  'warning.raised': () =>
    z.strictObject({
      line: id,
      slot: short,
      need: short,
      level: z.enum(warningLevels),
      due: moment,
    }),
  'entry.corrected': () => z.strictObject({ of: id, line: orNull(id), slot: orNull(short), reason: short }),
  'conflict.settled': () =>
    z.strictObject({
      conflict: text,
      line: orNull(id),
      slot: orNull(short),
      keep: orNull(id),
      reason: short,
      by: id,
    }),
  ...labelPayloadSchemas,
  ...printPayloadSchemas,
  ...packPayloadSchemas,
  ...linePayloadSchemas,
  ...plantPayloadSchemas,
  ...panelPayloadSchemas,
  ...stationPayloadSchemas,
  ...serverPayloadSchemas,
  'log.exported': () => z.strictObject({ format: short, filter: text, rows: whole }),
  'state.differed': () => z.strictObject({ from: orNull(id), entries: whole, parts: z.array(short) }),
  ...changePayloadSchemas,
  ...moisturePayloadSchemas,
  ...partPayloadSchemas,
  ...storePayloadSchemas,
  ...valuePayloadSchemas,
  ...pastePayloadSchemas,
  ...rightPayloadSchemas,
  ...passkeyPayloadSchemas,
  ...picturePayloadSchemas,
} as const;

export type EntryKind = keyof typeof payloadSchemas;
/** The checked payload of a kind. */
export type PayloadOf<K extends EntryKind> = z.output<ReturnType<(typeof payloadSchemas)[K]>>;
/** One thing to write down: a kind with its payload, before the log gives it a number and a seal. */
export type DraftEntry = {
  [K in EntryKind]: { readonly kind: K; readonly payload: PayloadOf<K> };
}[EntryKind];

/** One slot of a setup, without keys that mean nothing any more. */
export type SetupSlot = Readonly<Omit<z.output<typeof setupSlotSchema>, 'shares'>>;

/** All kinds, in the order of the table above. */
export const entryKinds = Object.keys(payloadSchemas) as readonly EntryKind[]; // Object.keys forgets the key type

/** An entry of a known kind whose payload has been checked. */
export type FloorEntry = {
  [K in EntryKind]: Omit<Entry, 'kind' | 'payload'> & { readonly kind: K; readonly payload: PayloadOf<K> };
}[EntryKind];
/** A checked entry of one kind, or of one of several. */
export type EntryOf<K extends EntryKind> = Extract<FloorEntry, { readonly kind: K }>;

/** True for a kind that this version knows. */
export function isEntryKind(kind: string): kind is EntryKind {
  return Object.hasOwn(payloadSchemas, kind);
}

const made = new Map<EntryKind, z.core.$ZodType>();

/** The shape of a kind's payload, made at the first question: most starts ask for a few of them, and making all takes longer than that. */
export function schemaOf(kind: EntryKind): z.core.$ZodType {
  const known = made.get(kind);
  if (known !== undefined) return known;
  const schema = payloadSchemas[kind]();
  made.set(kind, schema);
  return schema;
}

/**
 * The entry with its payload checked, or null where the kind is not known here or the payload is not as its kind wants:
 * such an entry stays in the log and in the chain, but changes no state.
 */
export function readFloorEntry(entry: Entry): FloorEntry | null {
  if (!isEntryKind(entry.kind)) return null;
  return z.safeParse(schemaOf(entry.kind), entry.payload).success ? (entry as unknown as FloorEntry) : null; // just checked
}

/** A payload as the envelope wants it; throws with the path where it does not fit its kind (a fault of the caller). */
export function checkPayload<K extends EntryKind>(kind: K, payload: PayloadOf<K>): JsonObject {
  const checked = z.safeParse(schemaOf(kind), payload);
  if (!checked.success) {
    const issue = checked.error.issues[0];
    throw new TypeError(
      `Cannot write ${kind} as ${issue?.path.join('.')} must fit: current value is refused: ${issue?.message}`,
    );
  }
  return payload as unknown as JsonObject; // JSON by construction of the schemas
}

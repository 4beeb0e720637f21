// `reelward log witness`: signs a head of a plant's log that grew from the one seen before, and says no to one that did not. What it saw last
// lies in a file of its own: a computer of another plant, or a stick that is carried there once a week.

import {
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from 'node:crypto';
import { chmodSync, renameSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { fromBase64, toBase64 } from '../../shared/kit/base64.ts';
import {
  addCosignature,
  COSIGNATURE,
  cosignaturesBy,
  cosignedText,
  formatWitnessKey,
  parseWitnessKey,
  type WitnessKey,
  witnessKeyId,
} from '../../shared/log/cosignature.ts';
import { type HeadGrowth, parseGrowth } from '../../shared/log/head-growth.ts';
import { formatNoteKey, type Note, type NoteKey, parseNote, parseNoteKey } from '../../shared/log/note.ts';
import { consistencyHolds } from '../../shared/log/tree.ts';
import { parseTreeHead, type SignedHead } from '../../shared/log/tree-head.ts';
import { noteHolds } from '../server/plant-key.ts';
import { type CommandIo, NotUnderstood, parseCall, parseJson, readText } from './command.ts';
import { keysInFile, readFingerprint, sayPlant } from './plant-keys.ts';

/** For the command's help. */
export const witnessHelp = `log witness --make NAME --key FILE        makes a key for a witness of that name, and prints its public key
log witness --note FILE --key FILE [--keys FILE] [--plant FINGERPRINT] [--memory FILE]
signs the head that "reelward serve head SIZE" prints, and prints it with the signature; SIZE: of the head that it signed last, which
it keeps in --memory (the key's name and .seen). The first time --keys says which plant: a list as "reelward serve keys" prints it. A head
that went back, or does not begin with the one before, is not signed, and the answer is no: keep both, they are the evidence.`;

const SEED = Buffer.from('302e020100300506032b657004220420', 'hex');
const PUBLIC = Buffer.from('302a300506032b6570032100', 'hex');

interface Signer {
  readonly own: WitnessKey;
  readonly secret: KeyObject;
}

const memorySchema = z.record(z.string(), z.strictObject({ key: z.string(), head: z.string() }));
type Memory = z.infer<typeof memorySchema>;

/** The command's act. */
export async function witness(args: readonly string[], io: CommandIo): Promise<number> {
  const text = { type: 'string' } as const;
  const options = { note: text, key: text, keys: text, plant: text, memory: text, make: text };
  const { values } = parseCall(args, options, { min: 0, max: 0, names: 'options only' });
  const { key: keyFile } = values;
  if (keyFile === undefined) throw new NotUnderstood('--key: expected a file, found nothing');
  if (values.make !== undefined) return makeKey(values.make, keyFile, io);
  if (values.note === undefined) throw new NotUnderstood('--note: expected a file, found nothing');
  const signer = readSigner(await readText(keyFile, io), keyFile);
  const memoryFile = values.memory ?? `${keyFile}.seen`;
  const memory = await readMemory(memoryFile);
  const { growth, note, head } = readGrowth(await readText(values.note, io), values.note);
  const plant = await plantOf(head.origin, { memory, keys: values.keys, fingerprint: values.plant, io });
  if (!noteHolds(note, plant)) return refuse("it is not signed by the plant's key", io);
  const fault = faultOf(head, growth, memory[head.origin]?.head);
  if (fault !== null) return refuse(fault, io);
  const seconds = Math.floor(Date.now() / 1000);
  const bytes = sign(null, Buffer.from(cosignedText(note.text, seconds)), signer.secret);
  // Kept before it is given away: what was signed once is never gone back behind.
  writeMemory(memoryFile, { ...memory, [head.origin]: { key: formatNoteKey(plant), head: growth.note } });
  io.stdout(addCosignature(growth.note, signer.own, { seconds, bytes }));
  const seen = memory[head.origin] ? '' : ' (the first that it saw)';
  io.stderr(`${signer.own.name} signed the head of ${head.size} entries${seen}\n`);
  return 0;
}

function refuse(why: string, io: CommandIo): number {
  io.stderr(`reelward log: this head is not signed: ${why}\n`);
  return 1;
}

function makeKey(name: string, file: string, io: CommandIo): number {
  if (!/^[^\s+]+$/u.test(name))
    throw new NotUnderstood(`--make: expected a name without blanks and plus signs, found ${name}`);
  const { privateKey } = generateKeyPairSync('ed25519');
  const seed = new Uint8Array(privateKey.export({ type: 'pkcs8', format: 'der' }).subarray(SEED.length));
  const own = witnessKeyOf(name, privateKey);
  const text = `PRIVATE+KEY+${name}+${witnessKeyId(own)}+${toBase64(Uint8Array.of(COSIGNATURE, ...seed))}\n`;
  try {
    writeFileSync(file, text, { flag: 'wx', mode: 0o600 });
  } catch (error) {
    throw new NotUnderstood(`--key ${file}: cannot be made (${(error as NodeJS.ErrnoException).code})`);
  }
  io.stdout(`${formatWitnessKey(own)}\n`);
  return 0;
}

function witnessKeyOf(name: string, secret: KeyObject): WitnessKey {
  const der = createPublicKey(secret).export({ type: 'spki', format: 'der' });
  return { name, key: new Uint8Array(der.subarray(PUBLIC.length)) };
}

function readSigner(text: string, file: string): Signer {
  const [, name = '', id, base64 = ''] =
    /^PRIVATE\+KEY\+([^\s+]+)\+([0-9a-f]{8})\+(\S+)\s*$/u.exec(text) ?? [];
  const bytes = fromBase64(base64);
  if (bytes?.length === 33 && bytes[0] === COSIGNATURE) {
    const der = Buffer.concat([SEED, bytes.subarray(1)]);
    const secret = createPrivateKey({ key: der, format: 'der', type: 'pkcs8' });
    const own = witnessKeyOf(name, secret);
    if (witnessKeyId(own) === id) return { own, secret };
  }
  throw new NotUnderstood(`--key ${file}: expected a key as log witness --make writes it`);
}

function readGrowth(
  text: string,
  file: string,
): { readonly growth: HeadGrowth; readonly note: Note; readonly head: SignedHead } {
  const growth = parseGrowth(text);
  const note = growth && parseNote(growth.note);
  const head = note && parseTreeHead(note.text);
  if (growth && note && head) return { growth, note, head };
  throw new NotUnderstood(`--note ${file}: expected a signed head as "reelward serve head" prints it`);
}

/** The plant's key: the one known since the first head, else the one that the given list names itself by. */
async function plantOf(
  origin: string,
  wish: {
    readonly memory: Memory;
    readonly keys: string | undefined;
    readonly fingerprint: string | undefined;
    readonly io: CommandIo;
  },
): Promise<NoteKey> {
  const known = parseNoteKey(wish.memory[origin]?.key ?? '');
  if (known) return known;
  if (wish.keys === undefined)
    throw new NotUnderstood(
      `--keys: this witness saw no head of ${origin} yet: expected the plant's list of keys`,
    );
  const { plant } = await keysInFile(wish.keys, wish.io);
  if (!plant || plant.key.name !== origin)
    throw new NotUnderstood(`--keys ${wish.keys}: is not the list of ${origin}`);
  const { fingerprint } = sayPlant(plant);
  if (wish.fingerprint !== undefined && readFingerprint(wish.fingerprint) !== fingerprint)
    throw new NotUnderstood(
      `--keys ${wish.keys}: expected the plant ${wish.fingerprint}, found ${fingerprint}`,
    );
  return plant.key;
}

/** Why the head does not go on from the one before; null where it does. */
function faultOf(head: SignedHead, { old, proof }: HeadGrowth, before: string | undefined): string | null {
  if (before === undefined) return null;
  const last = parseTreeHead(parseNote(before)?.text ?? '');
  if (!last) throw new NotUnderstood('--memory: the head that was seen last cannot be read');
  if (head.size < last.size)
    return `the log had ${last.size} entries when this witness last saw it, and has ${head.size} here: it was taken back`;
  // Of one size, or from nothing, there is nothing to prove but the root.
  const isProof = old === last.size || head.size === last.size || last.size === 0;
  if (!isProof)
    throw new NotUnderstood(
      `--note: has the proof from ${old} entries: expected it from ${last.size}, as "reelward serve head ${last.size}" prints it`,
    );
  const steps = old === last.size ? proof : [];
  return consistencyHolds(last, head, steps)
    ? null
    : `it does not begin with the log of ${last.size} entries that this witness signed: there are two logs, or the log was changed`;
}

async function readMemory(file: string): Promise<Memory> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return {};
    throw new NotUnderstood(`--memory ${file}: cannot be read (${code})`);
  }
  return parseJson(text, memorySchema, file);
}

/** Whole or not at all: a stick may be pulled out. */
function writeMemory(file: string, memory: Memory): void {
  try {
    writeFileSync(`${file}.part`, `${JSON.stringify(memory, null, 1)}\n`, { mode: 0o600, flush: true });
    chmodSync(`${file}.part`, 0o600);
    renameSync(`${file}.part`, file);
  } catch (error) {
    throw new NotUnderstood(`--memory ${file}: cannot be written (${(error as NodeJS.ErrnoException).code})`);
  }
}

/** A witness that signed a head, and when. */
export interface Witnessed {
  readonly name: string;
  readonly key: string;
  readonly at: string;
}

/** The keys of witnesses in a file, one a line. */
export async function readWitnesses(file: string, io: CommandIo): Promise<readonly WitnessKey[]> {
  const lines = (await readText(file, io)).split('\n').filter((line) => line.trim() !== '');
  return lines.map((line, at) => {
    const key = parseWitnessKey(line.trim());
    if (!key)
      throw new NotUnderstood(
        `${file}: line ${at + 1}: expected a witness's key as log witness --make prints it`,
      );
    return key;
  });
}

/** Which of the witnesses signed the head, and a fault where a signature in a witness's name does not hold. */
export function witnessesOf(
  text: string,
  keys: readonly WitnessKey[],
): { readonly by: readonly Witnessed[]; readonly fault: string | null } {
  const note = parseNote(text);
  const by: Witnessed[] = [];
  let fault: string | null = null;
  for (const key of note ? keys : []) {
    const der = Buffer.concat([PUBLIC, key.key]);
    const own = createPublicKey({ key: der, format: 'der', type: 'spki' });
    for (const { seconds, bytes } of note ? cosignaturesBy(note, key) : []) {
      const holds = note !== null && verify(null, Buffer.from(cosignedText(note.text, seconds)), own, bytes);
      if (holds)
        by.push({ name: key.name, key: formatWitnessKey(key), at: new Date(seconds * 1000).toISOString() });
      else
        fault ??= `the signature of the witness ${key.name} does not hold: the head is not the one that it signed`;
    }
  }
  return { by, fault };
}

// What is scanned off paper and what witnesses write: records of one entry, witnesses' keys and their words under a head.

import { utf8ToBytes } from '@noble/hashes/utils.js';
import {
  addCosignature,
  cosignatureBytes,
  formatWitnessKey,
  parseWitnessKey,
  readCosignature,
  type WitnessKey,
} from '../../shared/log/cosignature.ts';
import { formatEntryProof, noteForPaper, parseEntryProof } from '../../shared/log/entry-proof.ts';
import { parseNote, signatureLine } from '../../shared/log/note.ts';
import { addTabletCosignature, tabletsSaid } from '../../shared/log/tablet-cosignature.ts';
import { treeHeadText } from '../../shared/log/tree-head.ts';
import { openServerKey } from '../../src/server/keys.ts';
import { newKey } from '../contract/entries.ts';
import { type FuzzTarget, textTarget } from './target.ts';
import { mutateText } from './texts.ts';

const { plant } = await openServerKey({ keepMeta: async (_, value) => value });
const tablet = { tablet: 't1', key: newKey().publicKey };
const witness: WitnessKey = { name: 'witness.example/one', key: Uint8Array.from(Buffer.alloc(32, 9)) };
const head = plant.signNote(
  treeHeadText({ origin: plant.ed25519.name, size: 12, root: Uint8Array.from(Buffer.alloc(32, 3)) }),
);
const said = { seconds: 1_772_431_200, bytes: Uint8Array.from(Buffer.alloc(64, 7)) };
const seen = addTabletCosignature(addCosignature(head, witness, said), tablet, {
  seconds: said.seconds,
  sig: Buffer.from(said.bytes).toString('base64url'),
});
const place = { index: 11, proof: [1, 2, 3].map((at) => Uint8Array.from(Buffer.alloc(32, at))), note: seen };
const entry = {
  v: 1,
  tablet: 't1',
  epoch: 'e1',
  seq: 3,
  kind: 'person.added',
  payload: { name: 'Ana é 😀' },
};
const records = [
  formatEntryProof({ ...place, extra: utf8ToBytes(JSON.stringify(entry)) }),
  formatEntryProof({ ...place, extra: Uint8Array.from(Buffer.alloc(32, 5)), proof: [] }),
];
for (const record of records) if (!parseEntryProof(record)) throw new Error('the record is not read');

const onRecords: FuzzTarget = textTarget({
  name: 'records on paper',
  share: 40_000,
  input: (plan) =>
    mutateText(
      {
        samples: [...records, records[0]?.replaceAll('\n', '\r\n') ?? ''],
        parts: /([\n +@.])/,
        odd: ['c2sp.org/tlog-proof@v1', 'extra ', 'index 9007199254740992', 'index 01', '\n\n', '====', '\r'],
      },
      plan,
    ),
  read: (text) => {
    const read = parseEntryProof(text);
    if (!read) return;
    if (!Number.isSafeInteger(read.index) || read.index < 0) throw new Error(`the place ${read.index}`);
    // What was read is written the same, and so is the head that it stands under.
    const again = parseEntryProof(formatEntryProof(read));
    if (JSON.stringify(again) !== JSON.stringify(read)) throw new Error('read otherwise when written again');
    const note = parseNote(read.note);
    const paper = note && noteForPaper(note, plant.ed25519);
    if (paper && parseNote(paper)?.text !== note.text) throw new Error('a head of another text');
  },
});

const witnessKey = formatWitnessKey(witness);
if (!parseWitnessKey(witnessKey)) throw new Error("the witness's key is not read");
const listed = { ...tablet, since: '2026-01-01T00:00:00Z', until: null };
const listedKeys = [listed, { ...listed, until: '2026-02-01T00:00:00Z' }];
/** Words of witnesses that are longer, shorter, or of no time that a number holds. */
const words = [said.bytes, new Uint8Array(72).fill(255), cosignatureBytes(said)].map((bytes) =>
  signatureLine(witness.name, '00000000', bytes),
);

const onWitnesses: FuzzTarget = textTarget({
  name: 'witnesses',
  share: 40_000,
  input: (plan) =>
    mutateText(
      {
        samples: [witnessKey, seen, ...words.map((line) => head + line)],
        parts: /([\n +])/,
        odd: ['\u2014 ', '+', 'BA', '=', ...words],
      },
      plan,
    ),
  read: (text) => {
    const key = parseWitnessKey(text);
    if (key && (key.key.length !== 32 || formatWitnessKey(key) !== text)) throw new Error('another key');
    const note = parseNote(text);
    for (const { bytes } of note?.signatures ?? [])
      for (const one of readCosignature(bytes)) {
        if (!Number.isSafeInteger(one.seconds) || one.seconds < 0) throw new Error(`at ${one.seconds} s`);
        if (Buffer.compare(cosignatureBytes(one), bytes) !== 0) throw new Error('another word');
      }
    if (note) tabletsSaid(note, listedKeys);
    readCosignature(Buffer.from(text, 'latin1').subarray(0, 72));
  },
});

/** All of it. */
export const paperTargets: readonly FuzzTarget[] = [onRecords, onWitnesses];

// A plant without its people, its reels and its history, as a file from which a second plant begins: lines and their rules, parts, checklists, labels.
// Method: the entries that would tell it, in the order of telling; each is held against the shape of its kind before it is taken in. Refused: a
// form of its own beside the entries, which every new rule would have to be told twice.

import * as z from 'zod/mini';
import { fail, ok, type Result } from '../kit/result.ts';
import { type DraftEntry, type EntryKind, schemaOf } from './kinds.ts';
import { careRules, listedParts, placeAirs, pricedParts, rulesOf, type ToldEntry } from './practice-copy.ts';
import type { FloorState } from './state.ts';

/** Kinds that a plant's file may hold: none tells of a person, a reel, a tablet or a run. */
export const plantFileKinds = [
  'plant.named',
  'line.defined',
  'line.ruled',
  'line.climate-ruled',
  'line.splices-ruled',
  'line.calendar-ruled',
  'line.tape-ruled',
  'line.age-ruled',
  'line.values-ruled',
  'line.idle-ruled',
  'line.pictures-ruled',
  'line.panels-ruled',
  'line.crewed',
  'feeder-type.known',
  'feeder.care-ruled',
  'supplier.approved',
  'part.described',
  'parts.listed',
  'parts.priced',
  'place.described',
  'paste.ruled',
  'moisture.ruled',
  'label.taught',
  'labels.sized',
  'checklist.template',
] as const satisfies readonly EntryKind[];

type PlantFileKind = (typeof plantFileKinds)[number];

/** What tells a plant's file from any other. */
const MARK = 'reelward-plant';
/** The first took fewer kinds: a file that holds any of the others must tell a program of then that it is too old. */
const VERSION = 2;

/** A plant's file as it was read. */
export interface PlantFile {
  /** What the plant was called that it was made from; null where nobody had named it. */
  readonly name: string | null;
  /** What is to be written down, in this order. The name is not among it: a second plant has its own. */
  readonly drafts: readonly DraftEntry[];
}

/** Why a file is none, or what of it cannot be used. `at`: its entry, from 1. */
export type PlantFileFault =
  | { readonly code: 'not-json' | 'not-a-plant' | 'newer' | 'no-lines' }
  | { readonly code: 'kind' | 'payload'; readonly at: number; readonly kind: string; readonly where: string };

/** The plant as the entries that tell it. People are named nowhere: a label rule loses who approved it. */
export function plantDrafts(state: FloorState): readonly ToldEntry[] {
  const told: ToldEntry[] = [...state.plant.values()].map((payload) => ({ kind: 'plant.named', payload }));
  for (const payload of state.lines.values()) {
    told.push({ kind: 'line.defined', payload }, ...rulesOf(state, payload.line));
    const minutes = state.idles.get(payload.line);
    if (minutes !== undefined)
      told.push({ kind: 'line.idle-ruled', payload: { line: payload.line, minutes } });
  }
  for (const payload of state.feederTypes.values()) told.push({ kind: 'feeder-type.known', payload });
  told.push(...careRules(state));
  for (const [supplierPart, parts] of state.approvedByHand)
    for (const part of parts) told.push({ kind: 'supplier.approved', payload: { supplierPart, part } });
  for (const payload of state.parts.values()) told.push({ kind: 'part.described', payload });
  told.push(...listedParts(state), ...pricedParts(state), ...placeAirs(state));
  for (const payload of state.pasteRules.values()) told.push({ kind: 'paste.ruled', payload });
  for (const { ruled } of state.moisture.values()) told.push({ kind: 'moisture.ruled', payload: ruled });
  for (const [rule, { rule: definition }] of state.labelRules)
    told.push({
      kind: 'label.taught',
      payload: { rule, version: definition.version, definition, by: null },
    });
  for (const payload of state.labelSizes.values()) told.push({ kind: 'labels.sized', payload });
  for (const versions of state.templates.values())
    for (const payload of versions.slice(-1))
      told.push({
        kind: 'checklist.template',
        payload: payload as unknown as Extract<ToldEntry, { kind: 'checklist.template' }>['payload'], // as the fold read it
      });
  return told;
}

/** The text of a plant's file. */
export function plantFileText(state: FloorState): string {
  const name = [...state.plant.values()][0]?.name ?? null;
  return `${JSON.stringify({ file: MARK, version: VERSION, name, told: plantDrafts(state) }, null, 1)}\n`;
}

const envelope = z.object({
  file: z.literal(MARK),
  version: z.int(),
  name: z.nullable(z.string()),
  told: z.array(z.unknown()),
});
const toldSchema = z.strictObject({ kind: z.string(), payload: z.unknown() });

const isPlantFileKind = (kind: string): kind is PlantFileKind =>
  plantFileKinds.some((known) => known === kind);

/** One entry of a file, or what is wrong with it. */
function readTold(told: unknown, at: number): Result<DraftEntry, PlantFileFault> {
  const shape = z.safeParse(toldSchema, told);
  if (!shape.success) return fail({ code: 'payload', at, kind: '', where: 'kind, payload' });
  const { kind, payload } = shape.data;
  if (!isPlantFileKind(kind)) return fail({ code: 'kind', at, kind, where: '' });
  const checked = z.safeParse(schemaOf(kind), payload);
  if (checked.success) return ok({ kind, payload } as DraftEntry); // just checked against its kind
  const where = (checked.error.issues[0]?.path ?? []).map(String).join('.');
  return fail({ code: 'payload', at, kind, where });
}

/** Reads the text of a plant's file whole, or says the first thing that is wrong with it. A byte order mark is passed over. */
export function readPlantFile(text: string): Result<PlantFile, PlantFileFault> {
  let document: unknown;
  try {
    document = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    return fail({ code: 'not-json' });
  }
  const read = z.safeParse(envelope, document);
  if (!read.success) return fail({ code: 'not-a-plant' });
  const { version, name, told } = read.data;
  if (version > VERSION) return fail({ code: 'newer' });
  const drafts: DraftEntry[] = [];
  for (const [index, each] of told.entries()) {
    const draft = readTold(each, index + 1);
    if (!draft.ok) return draft;
    if (draft.value.kind !== 'plant.named') drafts.push(draft.value);
  }
  if (!drafts.some(({ kind }) => kind === 'line.defined')) return fail({ code: 'no-lines' });
  return ok({ name, drafts });
}

/** What a file brings, in numbers. */
export interface PlantFileCount {
  readonly lines: number;
  readonly slots: number;
  readonly parts: number;
  readonly checklists: number;
  readonly labelRules: number;
}

/** Counts what a file brings. `parts`: approvals, packages and rows of the plant's list. */
export function countPlantFile({ drafts }: PlantFile): PlantFileCount {
  const of = (...kinds: readonly EntryKind[]) => drafts.filter(({ kind }) => kinds.includes(kind)).length;
  const slots = drafts.flatMap((each) =>
    each.kind === 'line.defined' ? each.payload.machines.flatMap(({ banks }) => banks) : [],
  );
  const listed = drafts.flatMap((each) => (each.kind === 'parts.listed' ? each.payload.parts : []));
  return {
    lines: of('line.defined'),
    slots: slots.reduce((sum, { positions }) => sum + positions, 0),
    parts: of('supplier.approved', 'part.described') + listed.length,
    checklists: of('checklist.template'),
    labelRules: of('label.taught'),
  };
}

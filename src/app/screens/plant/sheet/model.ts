// From a sheet as it was read to what is written down: product, side, revision, line, and the setup's slots.
// Pure: the form and the floor in, the entries or what is still missing out.

import { parseSlot } from '../../../../../shared/floor/address.ts';
import type { DraftEntry, PayloadOf, SetupSlot } from '../../../../../shared/floor/kinds.ts';
import { type GrownBank, growLine, type PlaceNames } from '../../../../../shared/floor/line-grow.ts';
import type { PartFacts } from '../../../../../shared/floor/moisture-rules.ts';
import type { FloorState, Line, Setup } from '../../../../../shared/floor/state.ts';
import type { Side } from '../../../../../shared/floor/vocabulary.ts';
import { diffSheets, type SheetDiff } from '../../../../../shared/sheet/diff.ts';
import { withListed } from '../../../../../shared/sheet/listed-slots.ts';
import type { SheetSeverity } from '../../../../../shared/sheet/problem-kind.ts';
import type { SheetSlot } from '../../../../../shared/sheet/slot.ts';
import { fromSetupSlots, toSetupSlots } from '../../../../../shared/sheet/taken.ts';
import { describedParts } from '../../../../../shared/sheet/taken-parts.ts';
import { entryBytes } from '../../../../../shared/wire/limits.ts';
import type { BoardSummary, SheetSummary } from '../../../../worker/sheet-protocol.ts';
import { firstRulesDraft } from '../rules-form.ts';

/** What the person says about the sheet. */
export interface TakeForm {
  readonly product: string;
  readonly side: Side | null;
  readonly revision: string;
  /** An existing line's id; null = a line that this sheet defines. */
  readonly line: string | null;
  readonly newLine: string;
  readonly newLineName: string;
  /** Boards in one panel, as typed; absent: one. */
  readonly boards?: string;
}

/** What keeps a sheet from being taken in. */
export type TakeObstacle =
  | { readonly code: 'sheet-errors'; readonly count: number }
  | { readonly code: 'no-slots' }
  | { readonly code: 'product-missing' }
  | { readonly code: 'side-missing' }
  | { readonly code: 'revision-missing' }
  | { readonly code: 'revision-there'; readonly revision: string }
  | { readonly code: 'boards-wrong' }
  | { readonly code: 'line-missing' }
  | { readonly code: 'line-there'; readonly line: string }
  | { readonly code: 'too-large'; readonly slots: number };

/** The newest revision of a product side on a line; capitals and outer blanks of the product do not count. */
export function newestRevision(
  floor: FloorState,
  of: { readonly line: string; readonly product: string; readonly side: Side },
): Setup | null {
  return revisionsOf(floor, of)[0] ?? null;
}

function revisionsOf(
  floor: FloorState,
  of: { readonly line: string; readonly product: string; readonly side: Side },
): readonly Setup[] {
  const plain = (text: string) => text.trim().toLowerCase();
  return [...floor.setups.values()]
    .filter(
      ({ line, side, product }) =>
        line === of.line && side === of.side && plain(product) === plain(of.product),
    )
    .sort((a, b) => b.takenMs - a.takenMs);
}

/** A name out of a file's name: without folder, ending, and marks that stand for blanks. */
export function nameFromFile(file: string): string {
  const stem = file.replace(/^.*[\\/]/, '').replace(/\.[A-Za-z0-9]{1,5}$/, '');
  return stem
    .replace(/[_\s]+/g, ' ')
    .trim()
    .slice(0, 200);
}

/** An id for a new line that the floor does not have: L1, L2, ... */
export function freeLineId(floor: FloorState): string {
  for (let number = 1; ; number++) if (!floor.lines.has(`L${number}`)) return `L${number}`;
}

/** The form as it is first shown: what the sheet states itself, then what an earlier revision of the same file said. */
export function firstForm(
  summary: SheetSummary,
  source: string,
  context: { readonly floor: FloorState; readonly line: string | null },
): TakeForm {
  const { floor, line } = context;
  const { title, slots, scope, board } = summary;
  const earlier = [...floor.setups.values()]
    .filter((setup) => setup.source === source)
    .sort((a, b) => b.takenMs - a.takenMs)[0];
  const sides = new Set(slots.map(({ side }) => side));
  const only = board !== null ? onlySide(board) : sides.size === 1 ? [...sides][0] : null;
  const byScope = scope === 'both' ? null : scope;
  const id = freeLineId(floor);
  return {
    product: title.product ?? earlier?.product ?? nameFromFile(source),
    side: title.side ?? only ?? byScope ?? earlier?.side ?? null,
    revision: title.revision ?? '',
    line: lineOfSlots(floor, slots) ?? earlier?.line ?? line ?? onlyLine(floor, board),
    newLine: id,
    newLineName: id.replace(/^L/, 'Line '),
    boards: String(earlier?.boardsPerPanel ?? 1),
  };
}

/** The only side on which a board's files place something; null where both do, or none. */
export function onlySide({ parts }: BoardSummary): Side | null {
  const [first, ...others] = (['top', 'bottom'] as const).filter((side) =>
    parts.some((part) => part[side] > 0),
  );
  return others.length === 0 ? (first ?? null) : null;
}

/** A board needs a line that is there: the plant's only one. */
function onlyLine(floor: FloorState, board: BoardSummary | null): string | null {
  const [first, ...others] = floor.lines.keys();
  return board !== null && others.length === 0 ? (first ?? null) : null;
}

/** The line that has every machine of the sheet; null where none or several do. */
function lineOfSlots(floor: FloorState, slots: readonly SheetSlot[]): string | null {
  const wanted = new Set(slots.flatMap((slot) => parseSlot(slot.slot)?.machine ?? []));
  if (wanted.size === 0) return null;
  const fitting = [...floor.lines.values()].filter((line) =>
    [...wanted].every((machine) => line.machines.some((each) => each.machine === machine)),
  );
  return fitting.length === 1 ? (fitting[0]?.line ?? null) : null;
}

/** What would be written: the line where it is new or grows, and the setup's slots. */
export interface TakePlan {
  readonly line: Line;
  readonly isNewLine: boolean;
  readonly grown: readonly GrownBank[];
  readonly slots: readonly SetupSlot[];
  /** Packages of moisture-sensitive parts that the sheet states otherwise than the parts list, or first. */
  readonly parts: readonly PartFacts[];
  readonly before: Setup | null;
  /** Against `before`; null where there is none. */
  readonly diff: SheetDiff | null;
}

/** Works out what the form and the sheet come to. */
export function planTake(
  form: TakeForm,
  slots: readonly SheetSlot[],
  context: { readonly floor: FloorState; readonly zone: string; readonly names: PlaceNames },
): TakePlan {
  const { floor, zone, names } = context;
  const there = form.line === null ? undefined : floor.lines.get(form.line);
  const bare: Line = there ?? {
    line: form.newLine.trim(),
    name: form.newLineName.trim() || form.newLine.trim(),
    zone,
    machines: [],
  };
  const setupSlots = toSetupSlots(withListed(slots, floor.listed));
  const { line, grown } = growLine(bare, setupSlots, names);
  const { product, side } = form;
  const before =
    there === undefined || side === null ? null : newestRevision(floor, { line: there.line, product, side });
  return {
    line,
    grown,
    slots: setupSlots,
    before,
    isNewLine: there === undefined,
    parts: describedParts(slots, floor.parts),
    diff: before === null ? null : diffSheets(fromSetupSlots(before.slots), fromSetupSlots(setupSlots)),
  };
}

/** The first thing that keeps the sheet out; null = it can be taken in. */
export function obstacle(
  form: TakeForm,
  plan: TakePlan,
  context: { readonly floor: FloorState; readonly errors: number },
): TakeObstacle | null {
  const { floor, errors } = context;
  if (errors > 0) return { code: 'sheet-errors', count: errors };
  if (plan.slots.length === 0) return { code: 'no-slots' };
  if (form.product.trim() === '') return { code: 'product-missing' };
  if (form.side === null) return { code: 'side-missing' };
  const revision = form.revision.trim();
  if (revision === '') return { code: 'revision-missing' };
  if (boardsOfForm(form) === null) return { code: 'boards-wrong' };
  if (plan.isNewLine) {
    const line = form.newLine.trim();
    if (line === '') return { code: 'line-missing' };
    if (floor.lines.has(line)) return { code: 'line-there', line };
  } else {
    const of = { line: plan.line.line, side: form.side, product: form.product };
    const revisions = revisionsOf(floor, of);
    if (revisions.some((setup) => setup.revision.toLowerCase() === revision.toLowerCase()))
      return { code: 'revision-there', revision };
  }
  const payload = setupPayload(form, plan, { setup: '', source: '' });
  // Room for the envelope around the payload; an entry that the server must refuse would stop all that come after it.
  const bytes = new TextEncoder().encode(JSON.stringify(payload)).length + 4096;
  return bytes > entryBytes ? { code: 'too-large', slots: plan.slots.length } : null;
}

/** What the setup is called, where it came from, and how many boards one of its panels has. */
export interface TakeFacts {
  readonly setup: string;
  readonly source: string;
  /** Absent: one. */
  readonly boardsPerPanel?: number;
}

/** The boards that a form says; null where it is no whole number from 1 to 1000. */
export function boardsOfForm({ boards }: Pick<TakeForm, 'boards'>): number | null {
  if (boards === undefined) return 1;
  const count = Number(boards);
  return /^[1-9]\d{0,3}$/.test(boards.trim()) && count <= 1000 ? count : null;
}

function setupPayload(form: TakeForm, plan: TakePlan, facts: TakeFacts): PayloadOf<'setup.taken'> {
  const boards = facts.boardsPerPanel ?? 1;
  return {
    setup: facts.setup,
    product: form.product.trim(),
    side: form.side ?? 'top',
    revision: form.revision.trim(),
    line: plan.line.line,
    slots: [...plan.slots],
    source: facts.source.slice(0, 200),
    ...(boards > 1 ? { boardsPerPanel: boards } : {}),
  };
}

/** Everything that taking the sheet in writes, in one go: the line where it is new or grows, its first rules, the setup. */
export function takeDrafts(form: TakeForm, plan: TakePlan, facts: TakeFacts): readonly DraftEntry[] {
  const drafts: DraftEntry[] = [];
  if (plan.isNewLine || plan.grown.length > 0) {
    const { line, name, zone, machines } = plan.line;
    drafts.push({
      kind: 'line.defined',
      payload: {
        line,
        name,
        zone,
        machines: machines.map((machine) => ({ ...machine, banks: [...machine.banks] })),
      },
    });
  }
  if (plan.isNewLine) drafts.push(firstRulesDraft(plan.line.line));
  for (const part of plan.parts)
    drafts.push({ kind: 'part.described', payload: { ...part, source: facts.source.slice(0, 200) } });
  drafts.push({ kind: 'setup.taken', payload: setupPayload(form, plan, facts) });
  return drafts;
}

type ShownProblem = SheetSummary['problems'][number];

/** Problems that are worth a line: errors first, each by row; an unused column is told by the table of columns. */
export function listProblems(problems: readonly ShownProblem[]): readonly ShownProblem[] {
  const rank: Readonly<Record<SheetSeverity, number>> = { error: 0, warning: 1 };
  return problems
    .map((problem, index) => ({ problem, index }))
    .filter(({ problem }) => problem.code !== 'columnUnknown')
    .sort((a, b) => rank[a.problem.severity] - rank[b.problem.severity] || a.index - b.index)
    .map(({ problem }) => problem);
}

/** Problems of one kind together: the first ones are shown, the others on request. */
export interface ProblemGroup {
  readonly code: ShownProblem['code'];
  readonly role: ShownProblem['role'];
  readonly severity: SheetSeverity;
  readonly problems: readonly ShownProblem[];
}

/** Puts problems of one kind together, in the order of each kind's first. */
export function groupProblems(problems: readonly ShownProblem[]): readonly ProblemGroup[] {
  const groups = new Map<string, { first: ShownProblem; problems: ShownProblem[] }>();
  for (const problem of problems) {
    const key = `${problem.role}/${problem.code}`;
    const group = groups.get(key);
    if (group) group.problems.push(problem);
    else groups.set(key, { first: problem, problems: [problem] });
  }
  return [...groups.values()].map(({ first, problems: all }) => ({
    code: first.code,
    role: first.role,
    severity: first.severity,
    problems: all,
  }));
}

/** Supplier parts by the part that they were approved for by hand, as the checks of a sheet want them. */
export function approvedByPart(floor: FloorState): readonly (readonly [string, readonly string[]])[] {
  const byPart = new Map<string, string[]>();
  for (const [supplierPart, parts] of floor.approvedByHand) {
    for (const part of parts) byPart.set(part, [...(byPart.get(part) ?? []), supplierPart]);
  }
  return [...byPart];
}

/** Slots that name no machine or no bank, so that a person may say which is meant for all of them. */
export function lacking(slots: readonly SheetSlot[]): {
  readonly machine: boolean;
  readonly bank: boolean;
} {
  return {
    machine: slots.some(({ address }) => address.position !== null && address.machine === null),
    bank: slots.some(({ address }) => address.position !== null && address.bank === null),
  };
}

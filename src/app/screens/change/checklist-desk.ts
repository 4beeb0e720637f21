// Finds a checklist's template and how it stands; shared by the changeover, the splice and the start of a shift.

import { knownOpen, type OpenItem, openWork } from '../../../../shared/changeover/open-work.ts';
import { type ChecklistView, viewChecklist } from '../../../../shared/checklist/answers.ts';
import { shippedChecklists } from '../../../../shared/checklist/shipped.ts';
import { shippedBefore } from '../../../../shared/checklist/shipped-before.ts';
import type { ChecklistPurpose, ChecklistTemplate } from '../../../../shared/floor/checklist.ts';
import { overSince } from '../../../../shared/floor/over-change.ts';
import type { Changeover, Checklist, FloorState } from '../../../../shared/floor/state.ts';
import { planChange } from './model.ts';

/** The newest version of the template for a purpose: the site's own, else the shipped one; null where neither is. */
export function templateFor(floor: FloorState, purpose: ChecklistPurpose): ChecklistTemplate | null {
  const own = [...floor.templates.values()]
    .map((versions) => versions.at(-1))
    .find((newest) => newest?.purpose === purpose);
  return own ?? shippedChecklists.find((shipped) => shipped.purpose === purpose) ?? null;
}

/** The template of an opened checklist in the version in which it was opened; a later edit does not change it. */
export function templateOf(floor: FloorState, list: Checklist): ChecklistTemplate | null {
  const fits = (template: ChecklistTemplate) =>
    template.template === list.template && template.version === list.version;
  const shipped = [...shippedChecklists, ...shippedBefore];
  return floor.templates.get(list.template)?.find(fits) ?? shipped.find(fits) ?? null;
}

/** True for a list of a changeover that is over: what its steps waited for has passed, and the floor of now says nothing of it. */
export function isPast(floor: FloorState, list: Checklist): boolean {
  const changeover = floor.changeovers.get(list.changeover ?? '');
  return changeover !== undefined && overSince(floor, changeover) !== null;
}

/** How an opened checklist stands. The line stands while no run of it is running. */
export function standingOf(floor: FloorState, list: Checklist, template: ChecklistTemplate): ChecklistView {
  const run = floor.runs.get(floor.current.get(list.line) ?? '');
  const changeover = floor.changeovers.get(list.changeover ?? '');
  const asksKnown = template.steps.some(({ kind }) => kind === 'known');
  return viewChecklist(template, list.answers, {
    facts: list.facts,
    isStopped: run?.phase !== 'running' || isPast(floor, list),
    isClosed: list.closedMs !== null,
    known: changeover && asksKnown && !isPast(floor, list) ? knownOpen(floorWork(floor, changeover)) : {},
  });
}

/** What is open or wrong on the line and the first panel, whatever a checklist says. */
export function floorWork(floor: FloorState, changeover: Changeover): readonly OpenItem[] {
  return openWork(floor, changeover, { moves: movesLeft(floor, changeover), steps: [] });
}

/** All that is open or wrong in a changeover. A step that is known stands there by what is open of it. */
export function changeWork(floor: FloorState, changeover: Changeover): readonly OpenItem[] {
  const list = checklistOf(floor, changeover);
  const template = list ? templateOf(floor, list) : null;
  const view = list && template ? standingOf(floor, list, template) : null;
  const known = new Set(template?.steps.filter(({ kind }) => kind === 'known').map(({ step }) => step));
  const steps = view ? view.missing.filter((step) => !known.has(step)) : null;
  return openWork(floor, changeover, { moves: movesLeft(floor, changeover), steps });
}

function movesLeft(floor: FloorState, { line, setup }: Changeover) {
  const wanted = floor.setups.get(setup);
  const plan = wanted ? planChange(floor, line, wanted) : null;
  return plan?.fits ? plan.steps.steps : null;
}

/** The open (or last) checklist of a changeover. */
export function checklistOf(floor: FloorState, changeover: Changeover): Checklist | null {
  const lists = [...floor.checklists.values()].filter((list) => list.changeover === changeover.changeover);
  return lists.find((list) => list.closedMs === null) ?? lists.at(-1) ?? null;
}

/** What differs between two setups, for the steps' conditions; everything differs where nothing was built before. */
export function changeFacts(floor: FloorState, from: string | null, to: string) {
  const before = floor.setups.get(from ?? '');
  const after = floor.setups.get(to);
  const sideChanges = !before || before.side !== after?.side;
  const productChanges = !before || before.product !== after?.product;
  return {
    sideChanges,
    productChanges,
    // A stencil is made for one side of one product; a program for one revision of it.
    stencilChanges: sideChanges || productChanges,
    programChanges: sideChanges || productChanges || before?.revision !== after?.revision,
  };
}

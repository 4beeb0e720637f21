// What people call the things that entries know by an id: a run by its product, side, line and start, a setup by its product, a person, a
// tablet and an entry by name. An id that this tablet's floor does not know is said to be unknown, never shown.

import { lineEver } from '../../../../shared/floor/lanes.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { visible } from '../../ui/visible.ts';
import { factWords } from '../../words/log-facts.ts';
import { shellWords } from '../../words/shell.ts';
import { sayText } from '../../words/shipped-steps.ts';
import { formatDay, say } from '../../words/words.ts';

/** The zone of a line; the tablet's own where the line is not known. */
export function zoneOf(floor: FloorState, line: string | null): string {
  return lineEver(floor, line ?? '')?.zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
}

/** Line, by its name. */
export function lineName(floor: FloorState, line: string): string {
  return lineEver(floor, line)?.name ?? say(factWords).unknown;
}

/** The name that a passkey was given. */
export function passkeyName(floor: FloorState, credential: unknown): string {
  const held = typeof credential === 'string' ? floor.passkeys.get(credential) : undefined;
  return held ? visible(held.name) : say(factWords).unknown;
}

/** Product, side and revision. */
export function setupName(floor: FloorState, setup: string): string {
  const taken = floor.setups.get(setup);
  if (!taken) return say(factWords).unknown;
  const words = say(shellWords);
  return `${taken.product} · ${words.side[taken.side]} · ${words.revision(taken.revision)}`;
}

/** Product, side, line and start. */
export function runName(floor: FloorState, run: string): string {
  const built = floor.runs.get(run);
  if (!built) return say(factWords).unknownRun;
  const side = floor.setups.get(built.setup)?.side;
  return [
    built.product,
    side === undefined ? null : say(shellWords).side[side],
    lineName(floor, built.line),
    formatDay(built.startedMs, zoneOf(floor, built.line)),
  ]
    .filter((part) => part !== null)
    .join(' · ');
}

/** A person, by name. */
export function personName(floor: FloorState, person: string): string {
  return floor.people.get(person)?.name ?? say(factWords).someone;
}

/** A tablet, by name. */
export function tabletName(floor: FloorState, tablet: string): string {
  return floor.tablets.get(tablet)?.name ?? say(factWords).otherTablet;
}

/** An entry, by its number on its tablet. `id`: `tablet/epoch/seq`. */
export function entryName(floor: FloorState, id: string): string {
  const parts = id.split('/');
  return say(factWords).entryOf(parts.at(-1) ?? '', tabletName(floor, parts[0] ?? ''));
}

/** A checklist, by the title of its template. */
export function templateName(floor: FloorState, template: string): string {
  const newest = floor.templates.get(template)?.at(-1);
  return newest ? sayText(newest.title) : say(factWords).unknown;
}

/** A step of an opened checklist, by its text. */
export function stepName(floor: FloorState, checklist: string, step: string): string {
  const opened = floor.checklists.get(checklist);
  const template = floor.templates
    .get(opened?.template ?? '')
    ?.find(({ version }) => version === opened?.version);
  const found = template?.steps.find((each) => each.step === step);
  return found ? sayText(found.text) : say(factWords).unknown;
}

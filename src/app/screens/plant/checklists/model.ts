// A template while it is edited: the newest versions to start from, and steps added, moved and removed.

import { shippedChecklists } from '../../../../../shared/checklist/shipped.ts';
import {
  type ChecklistStep,
  type ChecklistTemplate,
  type StepKind,
  signingRoles,
} from '../../../../../shared/floor/checklist.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import { type Role, roles } from '../../../../../shared/floor/vocabulary.ts';
import { type Language, languages } from '../../../words/words.ts';

/** The newest version of every template: the site's own, and the shipped ones that nobody edited. */
export function newestTemplates(floor: FloorState): readonly ChecklistTemplate[] {
  const own = [...floor.templates.values()].flatMap((versions) => versions.at(-1) ?? []);
  const names = new Set(own.map((template) => template.template));
  return [...shippedChecklists.filter((shipped) => !names.has(shipped.template)), ...own];
}

/** The next version, with this title and these steps; what is already used never changes. */
export function nextVersion(
  template: ChecklistTemplate,
  {
    title = template.title,
    steps,
  }: Partial<Pick<ChecklistTemplate, 'title'>> & Pick<ChecklistTemplate, 'steps'>,
): ChecklistTemplate {
  return { ...template, version: template.version + 1, title, steps };
}

/** Languages in which a checklist's texts are asked: the one in use first, then those that a text of it has and those that were added. */
export function askedLanguages(
  { title, steps }: Pick<ChecklistTemplate, 'title' | 'steps'>,
  inUse: Language,
  added: readonly Language[] = [],
): readonly Language[] {
  const texts = [title, ...steps.flatMap((step) => [step.group, step.text, step.caution ?? {}])];
  const isTold = (code: Language) => texts.some((text) => (text[code] ?? '').trim() !== '');
  return [inUse, ...languages.filter((code) => code !== inUse && (isTold(code) || added.includes(code)))];
}

/** A plain step to fill in, under the heading of the last one. */
export function blankStep(
  id: string,
  steps: readonly ChecklistStep[],
  heading: Record<string, string>,
): ChecklistStep {
  return {
    step: id,
    group: steps.at(-1)?.group ?? heading,
    text: {},
    caution: null,
    kind: 'tick',
    time: 'stopped',
    condition: 'always',
    mandatory: true,
    least: null,
    most: null,
    unit: null,
    expects: null,
    options: [],
    right: [],
    signatures: 1,
  };
}

/** Swaps a step with its neighbour; nothing changes at the ends. */
export function moveStep(steps: readonly ChecklistStep[], at: number, by: -1 | 1): readonly ChecklistStep[] {
  const one = steps[at];
  const other = steps[at + by];
  if (!one || !other) return steps;
  return steps.map((step, index) => (index === at ? other : index === at + by ? one : step));
}

/** A text in one language set; an empty one is left out, so that another language stands in. */
export function setText(
  texts: Readonly<Record<string, string>> | null,
  language: string,
  text: string,
): Record<string, string> {
  const { [language]: _, ...rest } = texts ?? {};
  return text.trim() === '' ? rest : { ...rest, [language]: text };
}

/** Options typed with commas between. */
export function splitOptions(text: string): string[] {
  return text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

/** The step answered in another way, with what that way needs. */
export function ofKind(step: ChecklistStep, kind: StepKind): ChecklistStep {
  if (kind === 'sign') return { ...step, kind, ...withRoles(signingRoles(step)) };
  if (kind === 'known') return { ...step, kind, knows: step.knows ?? 'moves' };
  return kind === 'scan' ? { ...step, kind, wants: step.wants ?? 'other' } : { ...step, kind };
}

/** The fields of a step that these roles sign. */
export function withRoles(signers: readonly Role[]): Pick<ChecklistStep, 'roles' | 'signatures'> {
  return { roles: [...signers], signatures: signers.length };
}

/** Sets who signs in a place; nobody there takes those behind away too, since places have no gaps. */
export function setSigner(signers: readonly Role[], at: number, name: string): readonly Role[] {
  const role = roles.find((each) => each === name);
  if (role === undefined) return signers.slice(0, Math.max(1, at));
  return [...signers.slice(0, at), role, ...signers.slice(at + 1)];
}

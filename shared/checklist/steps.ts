// Which steps of a template are asked, in which words, and whether a template can be used.

import type { ChecklistStep, ChecklistTemplate } from '../floor/checklist.ts';

/** What differs between the old and the new product, as conditions ask. */
export interface ChangeFacts {
  readonly sideChanges: boolean;
  readonly stencilChanges: boolean;
  readonly productChanges: boolean;
  readonly programChanges: boolean;
}

/** True where the step is asked for this change. */
export function isAsked(step: ChecklistStep, facts: ChangeFacts): boolean {
  switch (step.condition) {
    case 'always':
      return true;
    case 'side-changes':
      return facts.sideChanges;
    case 'stencil-changes':
      return facts.stencilChanges;
    case 'product-changes':
      return facts.productChanges;
    case 'program-changes':
      return facts.programChanges;
  }
}

/**
 * The text in a language, else in English, else in the first language by code, so that every tablet shows the same; one that is blank
 * counts as missing. Empty where there is none.
 */
export function inLanguage(texts: Readonly<Record<string, string>>, language: string): string {
  const codes = [language, 'en', ...Object.keys(texts).sort()];
  return codes.map((code) => texts[code] ?? '').find((text) => text.trim() !== '') ?? '';
}

/** What is wrong with a template as an editor left it. */
export const templateFaults = [
  'no-title',
  'no-steps',
  'step-twice',
  'no-text',
  'limits-crossed',
  'no-options',
  'right-not-listed',
  'no-unit',
  'nothing-known',
  'signatures-differ',
] as const;
export type TemplateFault = { readonly code: (typeof templateFaults)[number]; readonly step: string | null };

/** Everything that keeps a template from being used; empty where there is nothing. */
export function checkTemplate(template: ChecklistTemplate): readonly TemplateFault[] {
  const faults: TemplateFault[] = [];
  if (inLanguage(template.title, 'en') === '') faults.push({ code: 'no-title', step: null });
  if (template.steps.length === 0) faults.push({ code: 'no-steps', step: null });
  const seen = new Set<string>();
  for (const step of template.steps) {
    const add = (code: TemplateFault['code']) => faults.push({ code, step: step.step });
    if (seen.has(step.step)) add('step-twice');
    seen.add(step.step);
    if (inLanguage(step.text, 'en') === '') add('no-text');
    if (step.kind === 'measure' && step.least !== null && step.most !== null && step.least > step.most)
      add('limits-crossed');
    if (step.kind === 'measure' && (step.unit ?? '').trim() === '') add('no-unit');
    if (step.kind === 'choice' && step.options.length < 2) add('no-options');
    if (step.kind === 'known' && (step.knows === undefined || template.purpose !== 'changeover'))
      add('nothing-known');
    if (step.kind === 'sign' && step.roles !== undefined && step.roles.length !== step.signatures)
      add('signatures-differ');
    if (step.right.some((option) => !step.options.includes(option))) add('right-not-listed');
  }
  return faults;
}

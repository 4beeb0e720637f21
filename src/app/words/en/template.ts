import type { TemplateFault } from '../../../../shared/checklist/steps.ts';
import type { StepCondition, StepKind } from '../../../../shared/floor/checklist.ts';
import { plural } from '../words.ts';

const kindsEn: Readonly<Record<StepKind, string>> = {
  tick: 'tick',
  measure: 'measured value',
  scan: 'scan',
  choice: 'choice',
  photo: 'picture',
  note: 'note',
  sign: 'signature',
  known: 'checked by the app',
};

const conditionsEn: Readonly<Record<StepCondition, string>> = {
  always: 'always',
  'side-changes': 'if the side changes',
  'stencil-changes': 'if the stencil changes',
  'product-changes': 'if the product changes',
  'program-changes': 'if the program changes',
};

const faultsEn: Readonly<Record<TemplateFault['code'], string>> = {
  'no-title': 'Give the checklist a name.',
  'no-steps': 'The checklist has no step.',
  'step-twice': 'The same step is there twice.',
  'no-text': 'A text is missing.',
  'limits-crossed': 'The lower limit is above the upper one.',
  'no-options': 'A choice needs two options or more.',
  'right-not-listed': 'A right answer is not among the options.',
  'no-unit': 'A measured value needs a unit.',
  'nothing-known': 'Choose what must be true. Only a changeover checklist can ask for it.',
  'signatures-differ': 'Every signature needs a role.',
};

export const words = {
  kinds: kindsEn,
  conditions: conditionsEn,
  faults: faultsEn,
  times: { running: 'while the line runs', stopped: 'while it is stopped' },
  version: (version: string, steps: string) =>
    `version ${version} · ${plural(steps, '1 step', `${steps} steps`)}`,
  edit: 'Edit',
  title: 'Name',
  language: 'Add a language',
  noLanguage: 'none',
  text: 'Text',
  group: 'Heading',
  caution: 'Caution',
  kind: 'Answered by',
  time: 'When',
  condition: 'Asked',
  mandatory: 'Must be done',
  least: 'At least',
  most: 'At most',
  unit: 'Unit',
  expects: 'Text that the scan must give',
  options: 'Options, separated by commas',
  right: 'Right answers, separated by commas',
  signature: (number: number) => `Signature ${number}`,
  noSignature: 'none',
  wants: 'What is scanned',
  wantNames: {
    stencil: 'a stencil',
    paste: 'a paste jar',
    program: 'a program',
    feeder: 'a feeder of this plant',
    slot: 'a slot of this line',
    reel: 'a reel of this plant',
    other: 'another code of the site',
  },
  knows: 'What must be true',
  factNames: {
    moves: 'no feeder moves are left',
    slots: 'every slot has its verified reel',
    'first-panel': 'the first panel is checked and right',
  },
  up: 'Earlier',
  down: 'Later',
  remove: 'Remove',
  add: 'Add a step',
  done: 'Done',
  save: (version: string) => `Save as version ${version}`,
  saved: (version: string) => `Version ${version} is saved. Open checklists stay as they are.`,
  help: 'A version never changes. Open and closed checklists keep the version they were opened with.',
  newGroup: 'More',
} as const;

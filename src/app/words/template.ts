import type { TemplateFault } from '../../../shared/changeover/checklist-steps.ts';
import type { StepCondition, StepKind } from '../../../shared/setup/checklist.ts';
import { area, plural } from './words.ts';

const kindsEn: Readonly<Record<StepKind, string>> = {
  ...{ tick: 'tick', measure: 'measured value', scan: 'scan', choice: 'choice', photo: 'picture' },
  ...{ note: 'note', sign: 'signature' },
};
const kindsEs: Readonly<Record<StepKind, string>> = {
  ...{ tick: 'marca', measure: 'valor medido', scan: 'escaneo', choice: 'opción', photo: 'foto' },
  ...{ note: 'nota', sign: 'firma' },
};
const conditionsEn: Readonly<Record<StepCondition, string>> = {
  always: 'always',
  'side-changes': 'where the side changes',
  'stencil-changes': 'where the stencil changes',
  'product-changes': 'where the product changes',
  'program-changes': 'where the program changes',
};
const conditionsEs: Readonly<Record<StepCondition, string>> = {
  always: 'siempre',
  'side-changes': 'si cambia la cara',
  'stencil-changes': 'si cambia la plantilla',
  'product-changes': 'si cambia el producto',
  'program-changes': 'si cambia el programa',
};
const faultsEn: Readonly<Record<TemplateFault['code'], string>> = {
  'no-steps': 'The checklist has no step.',
  'step-twice': 'The same step stands twice.',
  'no-text': 'A text is missing.',
  'limits-crossed': 'The lower limit lies above the upper one.',
  'no-options': 'A choice needs two options or more.',
  'right-not-listed': 'A right answer is not among the options.',
  'no-unit': 'A measured value needs a unit.',
};
const faultsEs: Readonly<Record<TemplateFault['code'], string>> = {
  'no-steps': 'La lista no tiene pasos.',
  'step-twice': 'El mismo paso está dos veces.',
  'no-text': 'Falta un texto.',
  'limits-crossed': 'El límite inferior está por encima del superior.',
  'no-options': 'Una opción necesita dos o más posibilidades.',
  'right-not-listed': 'Una respuesta correcta no está entre las posibilidades.',
  'no-unit': 'Un valor medido necesita unidad.',
};

/** Editing checklists. */
export const templateWords = area({
  en: {
    kinds: kindsEn,
    conditions: conditionsEn,
    faults: faultsEn,
    times: { running: 'while the line runs', stopped: 'while it stands' },
    version: (version: string, steps: string) =>
      `version ${version} · ${plural(steps, '1 step', `${steps} steps`)}`,
    edit: 'Edit',
    text: 'Text, English',
    textEs: 'Text, Spanish',
    group: 'Heading, English',
    groupEs: 'Heading, Spanish',
    caution: 'Caution, English',
    cautionEs: 'Caution, Spanish',
    kind: 'Answered by',
    time: 'When',
    condition: 'Asked',
    mandatory: 'Must be done',
    least: 'At least',
    most: 'At most',
    unit: 'Unit',
    expects: 'Text that the scan must give',
    options: 'Options, parted by commas',
    right: 'Right answers, parted by commas',
    signatures: 'Different people who sign',
    up: 'Earlier',
    down: 'Later',
    remove: 'Remove',
    add: 'Add a step',
    done: 'Done',
    save: (version: string) => `Keep as version ${version}`,
    saved: (version: string) => `Version ${version} is kept. Open checklists stay as they are.`,
    help: 'A version never changes: what is open or closed already keeps the one it was opened with.',
    newGroup: 'More',
  },
  es: {
    kinds: kindsEs,
    conditions: conditionsEs,
    faults: faultsEs,
    times: { running: 'con la línea en marcha', stopped: 'con la línea parada' },
    version: (version, steps) => `versión ${version} · ${plural(steps, '1 paso', `${steps} pasos`)}`,
    edit: 'Editar',
    text: 'Texto, inglés',
    textEs: 'Texto, español',
    group: 'Encabezado, inglés',
    groupEs: 'Encabezado, español',
    caution: 'Precaución, inglés',
    cautionEs: 'Precaución, español',
    kind: 'Se contesta con',
    time: 'Cuándo',
    condition: 'Se pide',
    mandatory: 'Obligatorio',
    least: 'Al menos',
    most: 'Como mucho',
    unit: 'Unidad',
    expects: 'Texto que debe dar el escaneo',
    options: 'Opciones, separadas por comas',
    right: 'Respuestas correctas, separadas por comas',
    signatures: 'Personas distintas que firman',
    up: 'Antes',
    down: 'Después',
    remove: 'Quitar',
    add: 'Añadir un paso',
    done: 'Hecho',
    save: (version) => `Guardar como versión ${version}`,
    saved: (version) => `Guardada la versión ${version}. Las listas abiertas quedan como están.`,
    help: 'Una versión no cambia nunca: lo abierto o cerrado conserva aquella con la que se abrió.',
    newGroup: 'Más',
  },
});

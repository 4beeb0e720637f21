import type { TemplateFault } from '../../../../shared/checklist/steps.ts';
import type { StepCondition, StepKind } from '../../../../shared/floor/checklist.ts';
import type { words as english } from '../en/template.ts';
import { plural, type Sentences } from '../words.ts';

const kindsEs: Readonly<Record<StepKind, string>> = {
  tick: 'marca',
  measure: 'valor medido',
  scan: 'escaneo',
  choice: 'opción',
  photo: 'foto',
  note: 'nota',
  sign: 'firma',
  known: 'lo comprueba la aplicación',
};

const conditionsEs: Readonly<Record<StepCondition, string>> = {
  always: 'siempre',
  'side-changes': 'si cambia la cara',
  'stencil-changes': 'si cambia la plantilla',
  'product-changes': 'si cambia el producto',
  'program-changes': 'si cambia el programa',
};

const faultsEs: Readonly<Record<TemplateFault['code'], string>> = {
  'no-title': 'Dé un nombre a la lista.',
  'no-steps': 'La lista no tiene pasos.',
  'step-twice': 'El mismo paso está dos veces.',
  'no-text': 'Falta un texto.',
  'limits-crossed': 'El límite inferior está por encima del superior.',
  'no-options': 'Una opción necesita dos o más posibilidades.',
  'right-not-listed': 'Una respuesta correcta no está entre las posibilidades.',
  'no-unit': 'Un valor medido necesita unidad.',
  'nothing-known': 'Elija qué debe cumplirse. Solo la lista de un cambio puede pedirlo.',
  'signatures-differ': 'Cada firma necesita una función.',
};

export const words: Sentences<typeof english> = {
  kinds: kindsEs,
  conditions: conditionsEs,
  faults: faultsEs,
  times: { running: 'con la línea en marcha', stopped: 'con la línea parada' },
  version: (version, steps) => `versión ${version} · ${plural(steps, '1 paso', `${steps} pasos`)}`,
  edit: 'Editar',
  title: 'Nombre',
  language: 'Añadir un idioma',
  noLanguage: 'ninguno',
  text: 'Texto',
  group: 'Encabezado',
  caution: 'Precaución',
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
  signature: (number) => `Firma ${number}`,
  noSignature: 'ninguna',
  wants: 'Qué se escanea',
  wantNames: {
    stencil: 'una plantilla',
    paste: 'un bote de pasta',
    program: 'un programa',
    feeder: 'un alimentador de esta planta',
    slot: 'una posición de esta línea',
    reel: 'una bobina de esta planta',
    other: 'otro código propio',
  },
  knows: 'Qué debe cumplirse',
  factNames: {
    moves: 'no queda ningún movimiento',
    slots: 'cada posición tiene su bobina verificada',
    'first-panel': 'el primer panel está comprobado y bien',
  },
  up: 'Antes',
  down: 'Después',
  remove: 'Quitar',
  add: 'Añadir un paso',
  done: 'Hecho',
  save: (version) => `Guardar como versión ${version}`,
  saved: (version) => `Guardada la versión ${version}. Las listas abiertas quedan como están.`,
  help: 'Una versión no cambia nunca. Las listas abiertas y cerradas conservan la versión con la que se abrieron.',
  newGroup: 'Más',
};

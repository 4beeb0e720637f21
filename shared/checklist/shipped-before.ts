// Shipped checklists as they were in versions before: what was opened with one is read as it was asked then. A version is what changed
// in it against the one that ships now.

import type { ChecklistStep, ChecklistTemplate } from '../floor/checklist.ts';
import { shiftChecklist } from './shipped.ts';
import { changeoverChecklist } from './shipped-changeover.ts';

/** Step -> how it was asked in version 1: in other words, by a tick what is known today, by any two what wants two roles now. */
const changeover1: Readonly<Record<string, Partial<ChecklistStep>>> = {
  'reels-pulled': {
    text: {
      en: 'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.',
      es: 'Todas las bobinas de la lista están listas en orden de recorrido; lo que falta está dicho al jefe.',
    },
  },
  'count-closed': {
    text: {
      en: 'Panels good and scrapped of the old job, as counted.',
      es: 'Paneles buenos y rechazados del trabajo anterior, contados.',
    },
  },
  'floor-life': {
    text: {
      en: 'Moisture-sensitive reels are within their floor life for this run.',
      es: 'Las bobinas sensibles a la humedad están dentro de su vida de suelo para esta tirada.',
    },
  },
  pins: {
    text: {
      en: 'Support pins stand as the drawing shows; none under a part of the other side.',
      es: 'Apoyos según el plano; ninguno bajo un componente de la otra cara.',
    },
  },
  'feeders-done': {
    kind: 'tick',
    text: {
      en: 'The change list is empty: every slot carries its verified reel.',
      es: 'La lista de cambios está vacía: cada posición lleva su bobina verificada.',
    },
  },
  'first-placed': {
    text: {
      en: 'First panel: every part there, polarity and pin 1 as in the drawing.',
      es: 'Primer panel: todo colocado, polaridad y patilla 1 según el plano.',
    },
  },
  'first-measured': {
    kind: 'tick',
    text: {
      en: 'Critical parts measured and within tolerance.',
      es: 'Componentes críticos medidos y dentro de tolerancia.',
    },
  },
};

function withoutNew({ roles: _, wants: _wants, knows: _knows, ...step }: ChecklistStep): ChecklistStep {
  return step;
}

/** Step -> how it was asked in version 1: one limit for strap and shoes, which is right for a strap alone. */
const shift1: Readonly<Record<string, Partial<ChecklistStep>>> = {
  static: {
    kind: 'measure',
    most: 35,
    unit: 'MΩ',
    text: {
      en: 'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).',
      es: 'Muñequera o calzado en el comprobador. Límite: sistema de muñequera por debajo de 35 MΩ (ANSI/ESD S20.20).',
    },
  },
};

/** Every older version that shipped. */
export const shippedBefore: readonly ChecklistTemplate[] = [
  {
    ...changeoverChecklist,
    version: 1,
    steps: changeoverChecklist.steps
      .filter(({ step }) => step !== 'slots-verified')
      .map((step) => ({ ...withoutNew(step), ...changeover1[step.step] })),
  },
  {
    ...shiftChecklist,
    version: 1,
    steps: shiftChecklist.steps
      .filter(({ step }) => !step.startsWith('static-'))
      .map((step) => ({ ...step, ...shift1[step.step] })),
  },
];

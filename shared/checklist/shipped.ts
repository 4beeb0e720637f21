// The shorter checklists that come with the tool, and the list of all; content is common practice, to be edited to the site's rules.

import type { ChecklistTemplate } from '../floor/checklist.ts';
import { changeoverChecklist } from './shipped-changeover.ts';
import { blades, hands, paste, step, type Words } from './shipped-words.ts';

const joint: Words = ['Splice', 'Empalme'];

/** Joining a new reel's tape to the running one. */
export const spliceChecklist: ChecklistTemplate = {
  template: 'splice',
  version: 1,
  purpose: 'splice',
  title: { en: 'Splice', es: 'Empalme' },
  steps: [
    step(joint, 'verified', [
      'tick',
      'running',
      ['The new reel was accepted for this slot.', 'La bobina nueva fue aceptada para esta posición.'],
    ]),
    step(
      joint,
      'leader-off',
      [
        'tick',
        'running',
        [
          'The new tape’s empty leader is cut off, up to its first part.',
          'Cortada la guía vacía de la cinta nueva, hasta su primer componente.',
        ],
      ],
      { caution: blades },
    ),
    step(
      joint,
      'cut-square',
      [
        'tick',
        'running',
        [
          'Both tapes are cut square, between pockets, so that the hole pitch runs on.',
          'Ambas cintas cortadas a escuadra, entre alvéolos, para que siga el paso de agujeros.',
        ],
      ],
      { caution: blades },
    ),
    step(
      joint,
      'joined',
      [
        'tick',
        'running',
        [
          'Joined flat, holes in line, same side up, cover tape joined too.',
          'Unidas planas, agujeros alineados, misma cara arriba, tapa unida también.',
        ],
      ],
      { caution: hands },
    ),
    step(joint, 'same-way', [
      'tick',
      'running',
      ['Parts lie the same way in both tapes.', 'Los componentes miran igual en ambas cintas.'],
    ]),
    step(
      joint,
      'watched',
      [
        'tick',
        'running',
        ['The first picks after the joint were watched.', 'Se vigilaron las primeras tomas tras la unión.'],
      ],
      { optional: true },
    ),
  ],
};

const other: Words = ['Exchange', 'Cambio'];

/** Taking off a tray, a tube or a whole feeder and putting on the next: no tape is joined, and the machine stands for it. */
export const exchangeChecklist: ChecklistTemplate = {
  template: 'exchange',
  version: 1,
  purpose: 'exchange',
  title: { en: 'Exchange', es: 'Cambio' },
  steps: [
    step(
      other,
      'stands',
      [
        'tick',
        'running',
        ['The machine stands and nothing in it moves.', 'La máquina está parada y nada se mueve en ella.'],
      ],
      { caution: hands },
    ),
    step(other, 'verified', [
      'tick',
      'running',
      ['What goes on was accepted for this slot.', 'Lo que se pone fue aceptado para esta posición.'],
    ]),
    step(other, 'same-way', [
      'tick',
      'running',
      [
        'First pocket and pin 1 lie as on the one before.',
        'El primer alvéolo y el pin 1 están como en el anterior.',
      ],
    ]),
    step(other, 'locked', [
      'tick',
      'running',
      ['It is in up to the stop and locked.', 'Está puesto hasta el tope y bloqueado.'],
    ]),
    step(
      other,
      'watched',
      [
        'tick',
        'running',
        ['The first picks after it were watched.', 'Se vigilaron las primeras tomas tras el cambio.'],
      ],
      { optional: true },
    ),
  ],
};

const shift: Words = ['Start of shift', 'Inicio de turno'];

/** What a shift looks at before it builds. */
export const shiftChecklist: ChecklistTemplate = {
  template: 'shift-start',
  version: 2,
  purpose: 'shift-start',
  title: { en: 'Start of shift', es: 'Inicio de turno' },
  steps: [
    step(shift, 'handover', [
      'note',
      'running',
      ['What the shift before handed over.', 'Lo que entregó el turno anterior.'],
    ]),
    step(shift, 'static', [
      'tick',
      'running',
      [
        'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).',
        'Muñequera, o calzado sobre este suelo, correctos en el comprobador. Cada uno tiene su límite (ANSI/ESD S20.20).',
      ],
    ]),
    step(
      shift,
      'static-strap',
      [
        'measure',
        'running',
        [
          'Worn with a wrist strap: strap system, below 35 MΩ.',
          'Con muñequera: sistema de muñequera, por debajo de 35 MΩ.',
        ],
      ],
      { most: 35, unit: 'MΩ', optional: true },
    ),
    step(
      shift,
      'static-shoes',
      [
        'measure',
        'running',
        [
          'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.',
          'Con calzado: persona, calzado y suelo, por debajo de 1000 MΩ; el cuerpo queda por debajo de 100 V.',
        ],
      ],
      { most: 1000, unit: 'MΩ', optional: true },
    ),
    step(
      shift,
      'guards',
      [
        'tick',
        'running',
        [
          'Covers, guards and emergency stops are whole and free.',
          'Cubiertas, protecciones y paros de emergencia enteros y libres.',
        ],
      ],
      { caution: hands },
    ),
    step(shift, 'sweep', [
      'tick',
      'running',
      [
        'The loaded line was swept: every reel scanned once.',
        'Línea repasada: cada bobina escaneada una vez.',
      ],
    ]),
    step(
      shift,
      'paste-age',
      [
        'tick',
        'running',
        [
          'Paste on the stencil is within its open time.',
          'La pasta sobre la plantilla está dentro de su tiempo abierto.',
        ],
      ],
      { caution: paste },
    ),
    step(shift, 'climate', ['measure', 'running', ['Humidity at the line.', 'Humedad en la línea.']], {
      least: 30,
      most: 60,
      unit: '% RH',
      optional: true,
    }),
    step(shift, 'sound', [
      'tick',
      'running',
      ['Sound on this tablet is on and was heard.', 'El sonido de esta tableta está activo y se oyó.'],
    ]),
  ],
};

/** All that ship, in the order in which they are listed. */
export const shippedChecklists: readonly ChecklistTemplate[] = [
  changeoverChecklist,
  spliceChecklist,
  exchangeChecklist,
  shiftChecklist,
];

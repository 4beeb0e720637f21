// The checklists that come with the tool: a start that an engineer edits to the site's own rules. Content is common
// practice for placement lines (line clearance, stencil and paste, feeders, rails, program, first panel, release); the split into
// what runs beside the old job and what needs the line to stand follows SMED's external and internal setup (Shingo 1985, from
// memory). Cautions name the usual danger; local rules and trained staff come first.

import type { ChecklistTemplate } from '../floor/checklist.ts';
import { blades, hands, paste, step, still, type Words } from './shipped-words.ts';

const prepare: Words = ['Make ready while the line runs', 'Preparar con la línea en marcha'];
const clearance: Words = ['Line clearance', 'Despeje de línea'];
const stencil: Words = ['Stencil and paste', 'Plantilla y pasta'];
const feeders: Words = ['Feeders', 'Alimentadores'];
const rails: Words = ['Rails and support pins', 'Carriles y apoyos'];
const program: Words = ['Program and revision', 'Programa y revisión'];
const first: Words = ['First panel', 'Primer panel'];
const release: Words = ['Release', 'Liberación'];

/** From the last panel of one product to the release of the next. */
export const changeoverChecklist: ChecklistTemplate = {
  template: 'changeover',
  version: 2,
  purpose: 'changeover',
  title: { en: 'Changeover', es: 'Cambio de producto' },
  steps: [
    step(prepare, 'documents', [
      'tick',
      'running',
      [
        'Job papers, panel drawing and setup are at the line, in the right revision.',
        'Papeles, plano del panel y montaje en la línea, en la revisión correcta.',
      ],
    ]),
    step(
      prepare,
      'reels-pulled',
      [
        'tick',
        'running',
        [
          'All reels of the pick list are ready in walking order. The lead knows what is short.',
          'Todas las bobinas de la lista están listas en orden de recorrido. El jefe sabe qué falta.',
        ],
      ],
      { caution: still },
    ),
    step(
      prepare,
      'carts-verified',
      [
        'tick',
        'running',
        [
          'Feeders for the next product are loaded and verified off the line.',
          'Alimentadores del siguiente producto cargados y verificados fuera de la línea.',
        ],
      ],
      { caution: blades },
    ),
    step(
      prepare,
      'paste-warm',
      [
        'tick',
        'running',
        [
          'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.',
          'La pasta del siguiente producto ha llegado a temperatura ambiente, cerrada, el tiempo de su ficha.',
        ],
      ],
      { condition: 'product-changes' },
    ),
    step(
      prepare,
      'stencil-fetched',
      [
        'scan',
        'running',
        [
          'Scan the next stencil: fetched, right revision, clean, no dent.',
          'Escanee la plantilla siguiente: traída, revisión correcta, limpia, sin golpes.',
        ],
      ],
      { condition: 'stencil-changes', wants: 'stencil' },
    ),
    step(clearance, 'count-closed', [
      'note',
      'stopped',
      [
        'Count of good and scrapped panels of the old job.',
        'Cuenta de paneles buenos y rechazados del trabajo anterior.',
      ],
    ]),
    step(
      clearance,
      'panels-out',
      [
        'tick',
        'stopped',
        [
          'No panel of the old job is left in printer, machines, buffers or oven.',
          'No queda ningún panel anterior en impresora, máquinas, almacenes ni horno.',
        ],
      ],
      { caution: hands },
    ),
    step(
      clearance,
      'bins-empty',
      [
        'tick',
        'stopped',
        [
          'Reject bins and tape waste are emptied; loose parts are off the machine.',
          'Cubos de rechazo y restos de cinta vaciados; sin componentes sueltos.',
        ],
      ],
      { caution: hands },
    ),
    step(
      clearance,
      'labels-out',
      [
        'tick',
        'stopped',
        [
          'Old labels, papers and reels are off the line.',
          'Etiquetas, papeles y bobinas anteriores fuera de la línea.',
        ],
      ],
      { condition: 'product-changes' },
    ),
    step(
      stencil,
      'stencil-in',
      ['scan', 'stopped', ['Scan the stencil in the printer.', 'Escanee la plantilla en la impresora.']],
      { condition: 'stencil-changes', wants: 'stencil', caution: hands },
    ),
    step(
      stencil,
      'squeegee',
      [
        'tick',
        'stopped',
        [
          'Squeegee blades are straight, clean and of the right length.',
          'Rasquetas rectas, limpias y del largo correcto.',
        ],
      ],
      { caution: blades },
    ),
    step(
      stencil,
      'paste-lot',
      [
        'scan',
        'stopped',
        [
          'Scan the paste jar: alloy, lot and date fit.',
          'Escanee el bote de pasta: aleación, lote y fecha correctos.',
        ],
      ],
      { wants: 'paste', caution: paste },
    ),
    step(
      stencil,
      'print-height',
      [
        'measure',
        'stopped',
        [
          'Paste height on the first print, middle of five places. Set the limits for your stencil.',
          'Altura de pasta en la primera impresión, mediana de cinco puntos. Ajuste los límites a su plantilla.',
        ],
      ],
      { least: 80, most: 180, unit: 'µm' },
    ),
    step(
      feeders,
      'feeders-done',
      [
        'known',
        'stopped',
        [
          'No moves left: no feeder to take out, move or put in.',
          'No quedan movimientos: ningún alimentador por sacar, mover ni meter.',
        ],
      ],
      { knows: 'moves', caution: hands },
    ),
    step(
      feeders,
      'slots-verified',
      [
        'known',
        'stopped',
        [
          'Every slot has its verified reel. No reel waits for a lead.',
          'Cada posición tiene su bobina verificada. Ninguna espera a un jefe.',
        ],
      ],
      { knows: 'slots' },
    ),
    step(
      feeders,
      'feeders-seated',
      [
        'tick',
        'stopped',
        [
          'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.',
          'Cada alimentador asienta y está trabado; cintas enhebradas, tapas retiradas.',
        ],
      ],
      { caution: hands },
    ),
    step(
      feeders,
      'look-alikes',
      [
        'sign',
        'stopped',
        [
          'Two people have compared look-alike parts and polarity marks with the setup.',
          'Dos personas han comparado componentes parecidos y polaridades con el montaje.',
        ],
      ],
      { roles: ['operator', 'operator'] },
    ),
    step(feeders, 'floor-life', [
      'tick',
      'stopped',
      [
        'Moisture-sensitive reels are within their floor life for this run.',
        'Las bobinas sensibles a la humedad están dentro de su vida en planta para esta tirada.',
      ],
    ]),
    step(
      rails,
      'rail-width',
      [
        'measure',
        'stopped',
        [
          'Rail width: panel width plus play, at both ends. Set the limits for your panel.',
          'Ancho de carril: panel más holgura, en ambos extremos. Ajuste los límites a su panel.',
        ],
      ],
      { condition: 'product-changes', least: 0.3, most: 1, unit: 'mm', caution: hands },
    ),
    step(
      rails,
      'pins',
      [
        'tick',
        'stopped',
        [
          'Support pins are set as the drawing shows, none under a part of the other side.',
          'Apoyos según el plano; ninguno bajo un componente de la otra cara.',
        ],
      ],
      { condition: 'side-changes', caution: hands },
    ),
    step(
      program,
      'program',
      [
        'note',
        'stopped',
        [
          'Program name and revision on every machine, as shown there.',
          'Nombre y revisión del programa en cada máquina, tal como se ve.',
        ],
      ],
      { condition: 'program-changes' },
    ),
    step(
      program,
      'oven',
      [
        'choice',
        'stopped',
        [
          'Oven profile: loaded, reached, and verified with this product?',
          'Perfil de horno: ¿cargado, alcanzado y verificado con este producto?',
        ],
      ],
      { options: ['yes', 'no'], right: ['yes'] },
    ),
    step(
      program,
      'inspection',
      [
        'tick',
        'stopped',
        [
          'Inspection programs are of this product, side and revision.',
          'Programas de inspección de este producto, cara y revisión.',
        ],
      ],
      { condition: 'program-changes' },
    ),
    step(first, 'first-placed', [
      'tick',
      'stopped',
      [
        'First panel: every part is there and none is shifted.',
        'Primer panel: están todos los componentes y ninguno desplazado.',
      ],
    ]),
    step(
      first,
      'first-measured',
      [
        'known',
        'stopped',
        [
          'First panel: critical parts measured within tolerance, polarities looked at and right.',
          'Primer panel: componentes críticos medidos dentro de tolerancia, polaridades miradas y correctas.',
        ],
      ],
      { knows: 'first-panel' },
    ),
    step(
      first,
      'first-picture',
      ['photo', 'stopped', ['Picture of the first panel.', 'Foto del primer panel.']],
      { optional: true },
    ),
    step(
      release,
      'released',
      ['sign', 'stopped', ['Operator and lead release the run.', 'Operario y jefe liberan la tirada.']],
      { roles: ['operator', 'lead'] },
    ),
  ],
};

import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Práctica guiada',
  about: 'Un paso cada vez. Déjela cuando haga falta: sigue en el mismo paso.',
  guides: {
    operator: 'Tres bobinas, una mala. Un empalme. Un aviso.',
    lead: 'Una bobina retenida que decidir. Una exportación.',
    engineer: 'Un montaje que importar.',
  },
  start: 'Empezar la guía',
  goOn: (at, of) => `Seguir en el paso ${at} de ${of}`,
  again: 'Empezar otra vez en el paso 1',
  step: (at, of) => `Paso ${at} de ${of}`,
  leave: 'Dejar la guía',
  go: 'Mostrar dónde',
  skip: 'Saltar este paso',
  still: 'Eso era otra cosa. El paso sigue abierto.',
  over: 'Todos los pasos están hechos. Siga como quiera o termine la práctica.',
  noLead: 'Esta planta aún no tiene jefe de turno. Añada uno primero.',
  example: 'Usar la hoja de ejemplo',
  steps: {
    first: {
      ask: 'Toque una etiqueta de posición y luego su bobina correcta.',
      seen: (slot) => `${slot}: aceptada.`,
    },
    wrong: {
      ask: (group) => `Toque una etiqueta de posición y luego una bobina mala. Vea «${group}».`,
      seen: (slot) => `${slot}: rechazada. Esa bobina no debe montarse.`,
    },
    second: {
      ask: 'Toque otra posición y luego su bobina correcta.',
      seen: (slot) => `${slot}: aceptada.`,
    },
    splice: {
      ask: (group) => `Empalme: en «${group}», toque una posición y luego su bobina.`,
      seen: (slot) => `${slot}: empalmada.`,
    },
    run: {
      ask: 'Inicie la tirada en la línea.',
      seen: 'La tirada ha empezado.',
    },
    warning: {
      ask: 'Cuente paneles en la línea hasta que avise una posición.',
      seen: (slot) => `${slot}: avisa.`,
    },
    answer: {
      ask: (act) => `Toque «${act}» junto al aviso, o empalme esa posición.`,
      seen: 'El aviso tiene respuesta.',
    },
    hold: {
      ask: 'Toque una etiqueta de posición y luego la bobina sin cantidad.',
      seen: (slot) => `${slot}: retenida. Debe decidir un jefe de turno.`,
    },
    clear: {
      ask: 'Decida como jefe de turno: tarjeta, PIN, motivo.',
      seen: 'Decidido, con su nombre en el registro.',
    },
    export: {
      ask: (act) => `En el registro, toque «${act}» y luego CSV. En la práctica no se guarda archivo.`,
      seen: 'Exportación pedida. No se guardó ningún archivo.',
    },
    open: {
      ask: (page) => `Abra «${page}».`,
      seen: (page) => `«${page}» está abierta.`,
    },
    take: {
      ask: (example, act) => `Toque «${example}». Mire qué cambia y luego toque «${act}».`,
      seen: (product) => `${product}: importado.`,
    },
    look: {
      ask: (page) => `Búsquelo en «${page}».`,
      seen: 'Está en la lista.',
    },
  },
};

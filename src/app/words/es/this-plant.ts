import type { words as english } from '../en/this-plant.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  name: 'Nombre de la planta',
  nameHelp: 'Aparece en hojas de carga, tarjetas y exportaciones.',
  zoneHelp: 'Las líneas nuevas empiezan con ella.',
  nameMissing: 'Ponga el nombre de la planta.',
  zoneUnknown: 'Elija una zona horaria de la lista.',
  same: 'Nada ha cambiado.',
  save: 'Guardar el nombre',
  saved: (name) => `${name}: guardado.`,
  fileTitle: 'Un archivo para una segunda planta',
  fileHelp:
    'Contiene líneas, máquinas, bancos, reglas, reglas de componentes, listas y reglas de etiquetas. No contiene personas, bobinas, montajes ni historial.',
  noLine: 'Todavía no hay ninguna línea.',
  fileSave: 'Guardar el archivo',
  fileSaved: (name) => `${name}: guardado.`,
  beginTitle: 'Empezar con el archivo de otra planta',
  beginHelp: 'Se guardó en la otra planta, en esta página o con «reelward plant».',
  notEmpty: 'Esta planta ya tiene líneas. El archivo es solo para una planta que no tiene ninguna.',
  begun: 'Las líneas y las reglas ya están aquí. Siga con el paso siguiente.',
  choose: 'Elegir el archivo',
  brings: 'Trae:',
  bringsOf: (name) => `De ${name} trae:`,
  counts: {
    lines: 'Líneas',
    slots: 'Posiciones',
    parts: 'Reglas de componentes',
    checklists: 'Listas',
    labelRules: 'Reglas de etiquetas',
  },
  begin: 'Usar este archivo',
  toSteps: 'Primeros pasos',
  faults: {
    'not-json': 'Este no es el archivo de una planta. Elija el que guardó la otra planta.',
    'not-a-plant': 'Es un archivo de otro tipo. Elija el que guardó la otra planta.',
    newer: 'Lo escribió una versión más nueva. Actualice primero esta tableta.',
    'no-lines': 'En este archivo no hay ninguna línea. Guárdelo de nuevo en la otra planta.',
    kind: (at, what) =>
      `El apunte ${at} (${what}) no pertenece a un archivo así. Guárdelo de nuevo en la otra planta.`,
    payload: (at, what) =>
      `El apunte ${at} (${what}) está dañado. Guarde el archivo de nuevo en la otra planta.`,
  },
};

import type { words as english } from '../en/in-line.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Paneles en la línea',
  help: 'Donde cambia una bobina, estos paneles quedan en duda. Indique el máximo posible, contando los que esperan ante una máquina. Lo que nadie ha indicado se supone.',
  behind: (machine) => `${machine}: paneles hechos aquí y aún sin contar, como mucho`,
  before: (machine) => `${machine}: paneles contados antes de llegar, como mucho`,
  missed: 'Paneles que pasan sin contar, como mucho',
  guess: (most) => `Sin indicar: se suponen hasta ${most} (práctica habitual).`,
  seen: (panels, most) =>
    plural(
      panels,
      `1 panel se escaneó en ambos sitios: entre ellos había hasta ${most}.`,
      `${panels} paneles se escanearon en ambos sitios: entre ellos había hasta ${most}.`,
    ),
  takeSeen: 'Tomar lo que mostraron los escaneos',
  takeHelp:
    'Lo visto no es un límite: indique más si puede haber más. Lo que los escaneos muestren de más lo amplía solo.',
  scansHere: 'Los paneles escaneados en esta tableta',
  count: 'Se cuentan',
  goInto: (machine) => `Entran en ${machine}`,
  scansHelp:
    'Escanee algunos paneles antes de una máquina y otra vez donde se cuentan: así la línea aprende cuántos hay entre ambos.',
  save: 'Guardar paneles en la línea',
  saved: 'Guardado. Los rastreos lo usan desde ahora.',
  wrong: 'Indique números enteros de 0 a 500 y un porcentaje menor que 50 %.',
  exitOpen: 'Abrir la pantalla de salida',
  exitTitle: 'Paneles hechos',
  exitHelp: 'Escanee cada panel al salir de la línea.',
  exitCounted: 'Contado:',
  exitBefore: 'Ya escaneado, no se suma:',
  exitOther: 'No es un panel, no se suma:',
  exitNoRun: 'No hay tirada en esta línea. Iníciela primero.',
  exitLost: 'Esta página ha perdido el teclado. Toque aquí antes de escanear.',
  exitLeave: 'Salir de esta pantalla',
};

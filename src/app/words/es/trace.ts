import type { words as english } from '../en/trace.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  entries: 'Apuntes',
  trace: 'Rastreo',
  held: 'Paneles retenidos',
  conflicts: 'Desacuerdos',
  title: '¿Qué paneles lo llevan?',
  help: 'Teclee o escanee lote, bobina, referencia, alimentador, posición o código de panel, en mayúsculas o minúsculas. O elija una persona.',
  ask: 'Rastrear',
  kinds: {
    lot: 'Lote',
    reel: 'Bobina',
    part: 'Referencia',
    feeder: 'Alimentador',
    slot: 'Posición',
    person: 'Persona',
    panel: 'Panel',
  },
  choosePerson: 'Elija quién lo puso',
  putOn: (when, who) => (who === null ? `puesto el ${when}` : `puesto el ${when} por ${who}`),
  text: 'Qué rastrear',
  reading: (done) => `Leyendo el registro… ${plural(done, '1 apunte', `${done} apuntes`)}`,
  nothing: (text) => `El registro no conoce ningún panel de «${text}».`,
  sure: (first, last) => `seguro paneles ${first} a ${last}`,
  possible: (first, last) => `quizá paneles ${first} a ${last}`,
  none: 'no se hizo ningún panel mientras estuvo',
  goesOn: 'sigue en la línea',
  serials: (count) => plural(count, '1 código de panel', `${count} códigos de panel`),
  onSlot: (slot, feeder) => (feeder === '' ? slot : `${slot}, alimentador ${feeder}`),
  panelTitle: (panel, product) => `Panel ${panel} de ${product}`,
  either: 'uno o ambos de',
  notSure: '(quizá)',
  builtTimes: (count) =>
    plural(count, 'Contado en 1 tirada:', `Contado en ${count} tiradas, de la más antigua:`),
  noLot: 'sin lote en la etiqueta',
  partsFrom: (reels) => `Tiene componentes de ${reels}`,
  partsTo: (reels) => `Componentes suyos pasaron a ${reels}`,
  save: 'Guardar como CSV',
  why: 'Junto a un empalme o un cambio de bobina no se sabe el panel exacto: se muestran los dos lotes. «Seguro» falla menos de una vez en un millón con los márgenes indicados para la línea.',
  guessed: {
    'in-line':
      'Nadie ha indicado cuántos paneles hay entre la máquina y el lugar de recuento. Se supone el margen más ancho. Indíquelo en las reglas de la línea y quedarán menos paneles en duda.',
    boards:
      'Ningún montaje dice a qué placas de un panel sirve una posición. Se supone que a todas por igual: si sirve solo a algunas, un panel con placas omitidas quizá no lleve nada de ella.',
    label:
      'Nadie ha indicado la exactitud de las cantidades impresas. Se supone un cuarto por ciento (práctica habitual).',
  },
  by: { server: 'Respuesta del servidor.', tablet: 'Respuesta del registro de esta tableta.' },
  more: (count) =>
    `${plural(count, 'Solo se muestra el más antiguo', `Solo se muestran los ${count} más antiguos`)}. Busque más concreto, p. ej. por lote o bobina.`,
  conflictKinds: {
    'slot-loaded-twice': (slots) => `${slots} la cargaron dos tabletas`,
    'reel-on-two-slots': (slots) => `Una bobina está en ${slots}`,
    'cleared-though-blocked': (slots) => `Se liberó una bobina bloqueada para ${slots}`,
    'spliced-though-unloaded': (slots) => `${slots} se empalmó en una tableta y se descargó en otra`,
    'released-though-dropped': (product) =>
      `El cambio a ${product} se liberó en una tableta y se anuló en otra`,
  },
  noConflicts: 'Las tabletas coinciden.',
  settle: 'Resolver',
  settleTitle: '¿Qué hay en la máquina?',
  settleHelp: 'Vaya a mirar. Después elija qué hay. El otro apunte queda en el registro como descartado.',
  settleChangeTitle: '¿Cuál de los dos vale?',
  settleChangeHelp:
    'Pregunte a quien lo liberó y a quien lo anuló. Después elija qué es cierto. El otro apunte queda en el registro como descartado.',
  keep: (slot, what, when) => `${slot}: ${what}, ${when}`,
  keepParts: (count) => plural(count, '1 pieza', `${count} piezas`),
  keepBy: (who, tablet) => (who === '' ? `en ${tablet}` : `por ${who} en ${tablet}`),
  keepEmpty: 'la posición está vacía',
  neither: 'Lo resolví de otro modo',
  reason: '¿Cómo lo sabe?',
  settled: 'Resuelto.',
};

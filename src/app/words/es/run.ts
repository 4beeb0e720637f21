import type { words as english } from '../en/run.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  notRight: (count) =>
    plural(
      count,
      '1 posición aún no está bien: vea Carga.',
      `${count} posiciones aún no están bien: vea Carga.`,
    ),
  startTitle: 'Empezar una tirada',
  panelSecondsHelp: 'Se usa hasta medir el ritmo de la línea.',
  panelPrefix: 'Los códigos de panel empiezan por',
  panelPrefixHelp: 'Vacío si los paneles no llevan código. Entonces toque para contar.',
  wrongNumber: 'Ponga un número mayor que cero.',
  startAnyway: 'Empezar con posiciones vacías',
  stopTitle: '¿Por qué está parada la línea?',
  endTitle: '¿Terminar esta tirada?',
  endText: (done, wanted) =>
    `${plural(wanted, `Hay ${done} de 1 panel contado.`, `Hay ${done} de ${formatCount(wanted)} paneles contados.`)} Las bobinas quedan en sus posiciones.`,
  plusManyTitle: '¿Cuántos paneles más?',
  skippedTitle: '¿Qué placas del panel siguiente se saltan?',
  skippedHelp: 'Toque cada placa marcada como mala. El recuento siguiente se lo lleva.',
  skippedUse: (count) =>
    count === 0 ? 'Ninguna placa saltada' : plural(count, 'Saltar 1 placa', `Saltar ${count} placas`),
  skippedManyTitle: (panels) =>
    plural(
      panels,
      '¿Placas saltadas en este panel?',
      `¿Placas saltadas en estos ${formatCount(panels)} paneles?`,
    ),
  skippedMost: (boards) => plural(boards, 'Solo hay 1 placa.', `Solo hay ${boards} placas. Ponga menos.`),
  skippedNotKnown: 'No se sabe',
  scrapTitle: '¿Cuántos paneles se desechan?',
  scrapHelp: 'Siguen contados: sus piezas están gastadas. Hay que hacer otros tantos.',
  scrapMost: (panels) =>
    plural(
      panels,
      'Solo hay 1 panel bueno contado.',
      `Solo hay ${panels} paneles buenos contados. Ponga menos.`,
    ),
  setRightTitle: '¿Cuántos paneles están hechos?',
  setRightHelp: 'La tirada tendrá ese número. Quien cuenta sigue desde ahí.',
  setRightWhy: '¿Por qué es otro número?',
  setRightYes: (panels) => `Poner ${panels}`,
  setRightMissing: 'Escriba otro número y por qué.',
  stoodSince: 'Parada desde',
  stoodLast: (clock, span) => `las ${clock}, el último panel, hace ${span}`,
  stoodNow: (clock) => `ahora, ${clock}`,
};

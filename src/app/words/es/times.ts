import type { words as english } from '../en/times.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  loading: 'Leyendo el registro…',
  running: 'La línea está en marcha. El tiempo cuenta desde el último panel bueno.',
  stopped: 'La línea está parada. Cuenta como parada cuando se confirme el último panel bueno.',
  madeReady: (span) => `${span} de preparación antes`,
  standing: 'Línea parada',
  external: 'Preparado con la línea en marcha',
  paused: (span) => `No cuentan ${span} de pausas y paradas previstas.`,
  before: 'Comparado con cambios anteriores iguales',
  noneBefore: 'No hay en el registro otro cambio entre estos dos productos.',
  thisOne: 'este',
  people: 'Por persona',
  nobody: 'sin identificar',
  marks: (count) => plural(count, '1 acción', `${count} acciones`),
  steps: 'Acciones más largas',
  kinds: {
    step: 'lista',
    skip: 'omitido',
    load: 'metido',
    unload: 'sacado',
    measure: 'medido',
    look: 'mirado',
  },
  none: 'Aún no hay nada marcado ni escaneado en este cambio.',
  where: 'En qué se fueron los minutos',
  axis: 'min',
  legend: { act: 'acción', outside: 'podría hacerse antes', stop: 'pausa o parada prevista' },
  median: (count, span) =>
    plural(count, `El anterior duró ${span}.`, `La mediana de ${count} anteriores es ${span}.`),
  longer: (span) => `Este paró ${span} más.`,
  shorter: (span) => `Este paró ${span} menos.`,
  asMedian: 'Este paró más o menos lo mismo.',
  medianMark: (span) => `mediana de los anteriores, ${span}`,
  saved: (steps, span) =>
    plural(
      steps,
      `1 paso podría hacerse antes del último panel. La línea habría parado hasta ${span} menos.`,
      `${steps} pasos podrían hacerse antes del último panel. La línea habría parado hasta ${span} menos.`,
    ),
  outside: 'Se podría hacer con la línea en marcha',
  late: 'era para la línea en marcha, se hizo parada',
  candidate: 'sin meter la mano: decida si se puede hacer antes',
  noneOutside: 'Todo lo hecho con la línea parada la necesita parada.',
  how: 'Cada tiempo cuenta desde la acción anterior de la misma persona.',
};

import type { words as english } from '../en/count.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (what) => `Cuántas piezas: ${what}`,
  ways: { typed: 'Tecleado', machine: 'Contador o máquina', weighed: 'Pesado', measured: 'Medido' },
  wayHelp: {
    typed: 'Lo que dice la etiqueta o su propia cuenta.',
    machine: 'Lo que muestra un contador de bobinas o la máquina.',
    weighed: 'Pese esta bobina. Se guarda el peso llena y vacía de la referencia.',
    measured: 'Mida sobre la cinta enrollada, no sobre el disco.',
  },
  fields: {
    parts: 'Piezas',
    massG: 'Esta bobina, g',
    emptyG: 'Bobina vacía, g',
    fullMassG: 'Bobina llena, g',
    outerMm: 'Cinta enrollada D, mm',
    hubMm: 'Núcleo d, mm',
    fullOuterMm: 'D de una bobina llena, mm',
    thicknessMm: 'o grosor de la cinta, mm',
    pitchMm: 'Paso, mm',
    fullParts: 'Piezas en una llena',
  },
  wrong: {
    missing: 'falta',
    notNumber: 'no es un número',
    tooSmall: 'demasiado pequeño para los demás datos',
    tooLarge: 'mayor que una bobina llena',
  },
  picture: 'Una bobina de lado: D cruza la cinta enrollada, d el núcleo. El disco es más ancho que la cinta.',
  flange: 'disco',
  wound: 'cinta enrollada',
  hub: 'núcleo',
  remembered: (parts) => `De una bobina llena de ${parts}, medida antes.`,
  result: (parts, sd) => plural(parts, `${parts} ± ${sd} pieza`, `${parts} ± ${sd} piezas`),
  before: (parts, sd, basis) => `El registro dice ${parts} ± ${sd} (${basis}).`,
  beforeUnknown: 'Aún no hay cuenta en el registro.',
  printed: (share, least, isEntered) =>
    `Una cifra impresa o tecleada vale ± ${share}${isEntered ? ' (de las reglas de línea)' : ' (práctica común)'}, nunca menos de ± ${least} (práctica común).`,
  agree: 'Las dos cuentas coinciden. Juntas:',
  contradicts: 'Las dos cuentas no coinciden. Compruebe la bobina y elija.',
  takeNew: 'Usar la cuenta nueva',
  takeBoth: 'Usar las dos juntas',
  take: 'Usar esta cuenta',
  bases: {
    'one-by-one': 'contadas una a una',
    label: 'etiqueta',
    typed: 'tecleado',
    machine: 'contador',
    weighed: 'pesado',
    measured: 'medido',
    'counted-down': 'descontado',
    combined: 'varias cuentas',
  },
  saved: (slot, parts, sd) =>
    `${slot}: ahora ${plural(parts, `${parts} ± ${sd} pieza`, `${parts} ± ${sd} piezas`)}.`,
  leftTitle: (slot) => `Descargar ${slot}: ¿qué queda?`,
  leftHelp: 'Lo que queda muestra cuánto perdió el alimentador. Cuéntelo ahora, o que lo cuente el almacén.',
  offLanes: {
    ask: '¿Qué se quita?',
    one: (slot) => `Solo la bobina de ${slot}`,
    all: (slots) => `Todo el alimentador, con ${slots}`,
  },
  leftEmpty: 'Nada: está vacía',
  leftCount: 'Contarla',
  leftUnknown: (parts) => `Sin contar: unos ${parts}`,
  leftUnknownPlain: 'Sin contar',
  lost: (feeder, lost, picks, share) =>
    `${feeder} perdió ${plural(picks, `${lost} de 1 toma`, `${lost} de ${picks} tomas`)} (${share}).`,
  moreThanGone: 'Se colocó más de lo que falta: alguna cuenta está mal. La pérdida no cambia.',
  unlikely: (feeder, share, bound) =>
    `${feeder} habría perdido ${share}. Es improbable (más de ${bound}): compruebe las cuentas. La pérdida no cambia.`,
  leftOut: (count, bound) =>
    `Sin usar: ${count}. Perder más de ${bound} es improbable (0,1–3 % es lo usual; el límite es nuestro).`,
  lossTitle: 'Tomas perdidas',
  lossNone:
    'Aún no se ha terminado ninguna bobina con cuenta conocida. Hasta entonces vale la pérdida supuesta de la línea.',
  lossRow: (share, low, high) => `${share} (${low} a ${high})`,
  skipsUnknown: (reels) =>
    plural(
      reels,
      'Sin anotar placas saltadas en 1 bobina: pudo perder más.',
      `Sin anotar placas saltadas en ${reels} bobinas: pudieron perder más.`,
    ),
  skipsUnknownReel: 'placas saltadas sin anotar',
  lossEvidence: (reels, lost, picks) =>
    `${plural(reels, '1 terminada', `${reels} terminadas`)}, ${plural(picks, `${lost} de 1 toma perdida`, `${lost} de ${picks} tomas perdidas`)}`,
  rising: (feeder, share, others) => `El alimentador ${feeder} tira ${share}, los demás ${others}.`,
  risingAlone: (feeder, share) => `El alimentador ${feeder} tira ${share}, más que antes.`,
  pickFaults: (times, since) =>
    plural(
      times,
      `La máquina avisó de 1 fallo de toma desde ${since}.`,
      `La máquina avisó de ${times} fallos de toma desde ${since}.`,
    ),
  pickFaultsTitle: 'Fallos de toma sin pérdida conocida aún',
  risingAct: 'En la próxima parada, revise boquilla, camino de la cinta y altura de toma.',
  feeder: 'Alimentador',
  slot: 'Posición',
  loss: 'Pérdida',
  evidence: 'Se basa en',
  told: { count: 'contada', splice: 'empalmada', machine: 'dicho por la máquina' },
  evidenceLine: (from, to, placed) => `al empezar ${from}, quedan ${to}, colocados ${placed}`,
  showEvidence: 'Ver las bobinas',
  hideEvidence: 'Ocultar las bobinas',
  spliceDiffers: 'El empalme y la cuenta no coinciden: la cuenta de la bobina anterior era errónea.',
};

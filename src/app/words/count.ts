import { area, plural } from './words.ts';

/** Counting a reel, what is left at unload, and what feeders lose. */
export const countWords = area({
  en: {
    title: (what: string) => `How many parts: ${what}`,
    ways: { typed: 'Typed', machine: 'Counter or machine', weighed: 'Weighed', measured: 'Measured' },
    wayHelp: {
      typed: 'The number on the label, or your own count.',
      machine: 'What a reel counter or the machine shows.',
      weighed: 'Weigh this reel. Full and empty weights of the part are saved.',
      measured: 'Measure across the wound tape, not across the flange.',
    },
    fields: {
      parts: 'Parts',
      massG: 'This reel, g',
      emptyG: 'Empty reel, g',
      fullMassG: 'Full reel, g',
      outerMm: 'Wound tape D, mm',
      hubMm: 'Hub d, mm',
      fullOuterMm: 'D of a full reel, mm',
      thicknessMm: 'or tape thickness, mm',
      pitchMm: 'Pitch, mm',
      fullParts: 'Parts on a full reel',
    },
    wrong: {
      missing: 'still missing',
      notNumber: 'not a number',
      tooSmall: 'too small for the other figures',
      tooLarge: 'larger than a full reel',
    },
    picture:
      'A reel from the side: D is across the wound tape, d across the hub. The flange is wider than the tape.',
    flange: 'flange',
    wound: 'wound tape',
    hub: 'hub',
    remembered: (parts: string) => `From a full reel of ${parts}, measured before.`,
    result: (parts: string, sd: string) => plural(parts, `${parts} ± ${sd} part`, `${parts} ± ${sd} parts`),
    before: (parts: string, sd: string, basis: string) => `The log says ${parts} ± ${sd} (${basis}).`,
    beforeUnknown: 'The log has no count yet.',
    printed: (share: string, least: string, isEntered: boolean) =>
      `Printed or typed numbers count as ± ${share}${isEntered ? ' (from the line rules)' : ' (common practice)'}, at least ± ${least} (common practice).`,
    agree: 'Both counts agree. Together:',
    contradicts: 'The two counts do not match. Check the reel, then choose.',
    takeNew: 'Use the new count',
    takeBoth: 'Use both together',
    take: 'Use this count',
    bases: {
      label: 'label',
      typed: 'typed',
      machine: 'counter',
      weighed: 'weighed',
      measured: 'measured',
      'counted-down': 'counted down',
      combined: 'several counts',
    },
    saved: (slot: string, parts: string, sd: string) =>
      `${slot}: now ${plural(parts, `${parts} ± ${sd} part`, `${parts} ± ${sd} parts`)}.`,
    leftTitle: (slot: string) => `Unload ${slot}: what is left?`,
    leftHelp: 'What is left shows what the feeder lost. Count it now, or let the store count it later.',
    leftEmpty: 'Nothing: it is empty',
    leftCount: 'Count it',
    leftUnknown: (parts: string) => `Not counted: about ${parts}`,
    leftUnknownPlain: 'Not counted',
    lost: (feeder: string, lost: string, picks: string, share: string) =>
      `${feeder} lost ${plural(picks, `${lost} of 1 pick`, `${lost} of ${picks} picks`)} (${share}).`,
    moreThanGone: 'More was placed than is gone: a count is wrong. The loss stays as it was.',
    unlikely: (feeder: string, share: string, bound: string) =>
      `${feeder} would have lost ${share}. That is unlikely (over ${bound}): check the counts. The loss stays as it was.`,
    setAside: (count: string, bound: string) =>
      `Not used: ${count}. Over ${bound} lost is unlikely (0.1–3 % is common practice; the limit is our own).`,
    lossTitle: 'Lost picks',
    lossNone: 'No reel with a known count is finished yet. Until then, the line’s assumed loss is used.',
    lossRow: (share: string, low: string, high: string) => `${share} (${low} to ${high})`,
    skipsUnknown: (reels: number) =>
      plural(
        reels,
        'Skips unknown for 1 reel: it may have lost more.',
        `Skips unknown for ${reels} reels: they may have lost more.`,
      ),
    skipsUnknownReel: 'skips unknown',
    lossEvidence: (reels: string, lost: string, picks: string) =>
      `${reels} finished, ${plural(picks, `${lost} of 1 pick lost`, `${lost} of ${picks} picks lost`)}`,
    rising: (feeder: string, share: string, others: string) =>
      `Feeder ${feeder} throws away ${share}, the others ${others}.`,
    risingAlone: (feeder: string, share: string) =>
      `Feeder ${feeder} throws away ${share}, more than before.`,
    risingAct: 'At the next stop, check nozzle, tape path and pick height.',
    feeder: 'Feeder',
    slot: 'Slot',
    loss: 'Loss',
    evidence: 'Based on',
    told: { count: 'counted', splice: 'spliced' },
    evidenceLine: (from: string, to: string, placed: string) =>
      `${from} at the start, ${to} left, ${placed} placed`,
    showEvidence: 'Show the reels',
    hideEvidence: 'Hide the reels',
    spliceDiffers: 'The splice and the count disagree: the old reel’s count was wrong.',
  },
  es: {
    title: (what) => `Cuántos componentes: ${what}`,
    ways: { typed: 'Tecleado', machine: 'Contador o máquina', weighed: 'Pesado', measured: 'Medido' },
    wayHelp: {
      typed: 'Lo que dice la etiqueta o su propia cuenta.',
      machine: 'Lo que muestra un contador de bobinas o la máquina.',
      weighed: 'Pese esta bobina. Se guarda el peso llena y vacía de la referencia.',
      measured: 'Mida sobre la cinta enrollada, no sobre el disco.',
    },
    fields: {
      parts: 'Componentes',
      massG: 'Esta bobina, g',
      emptyG: 'Bobina vacía, g',
      fullMassG: 'Bobina llena, g',
      outerMm: 'Cinta enrollada D, mm',
      hubMm: 'Núcleo d, mm',
      fullOuterMm: 'D de una bobina llena, mm',
      thicknessMm: 'o grosor de la cinta, mm',
      pitchMm: 'Paso, mm',
      fullParts: 'Componentes en una llena',
    },
    wrong: {
      missing: 'falta',
      notNumber: 'no es un número',
      tooSmall: 'demasiado pequeño para los demás datos',
      tooLarge: 'mayor que una bobina llena',
    },
    picture:
      'Una bobina de lado: D cruza la cinta enrollada, d el núcleo. El disco es más ancho que la cinta.',
    flange: 'disco',
    wound: 'cinta enrollada',
    hub: 'núcleo',
    remembered: (parts) => `De una bobina llena de ${parts}, medida antes.`,
    result: (parts, sd) => plural(parts, `${parts} ± ${sd} componente`, `${parts} ± ${sd} componentes`),
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
      label: 'etiqueta',
      typed: 'tecleado',
      machine: 'contador',
      weighed: 'pesado',
      measured: 'medido',
      'counted-down': 'descontado',
      combined: 'varias cuentas',
    },
    saved: (slot, parts, sd) =>
      `${slot}: ahora ${plural(parts, `${parts} ± ${sd} componente`, `${parts} ± ${sd} componentes`)}.`,
    leftTitle: (slot) => `Descargar ${slot}: ¿qué queda?`,
    leftHelp:
      'Lo que queda muestra cuánto perdió el alimentador. Cuéntelo ahora, o que lo cuente el almacén.',
    leftEmpty: 'Nada: está vacía',
    leftCount: 'Contarla',
    leftUnknown: (parts) => `Sin contar: unos ${parts}`,
    leftUnknownPlain: 'Sin contar',
    lost: (feeder, lost, picks, share) =>
      `${feeder} perdió ${plural(picks, `${lost} de 1 toma`, `${lost} de ${picks} tomas`)} (${share}).`,
    moreThanGone: 'Se colocó más de lo que falta: alguna cuenta está mal. La pérdida no cambia.',
    unlikely: (feeder, share, bound) =>
      `${feeder} habría perdido ${share}. Es improbable (más de ${bound}): compruebe las cuentas. La pérdida no cambia.`,
    setAside: (count, bound) =>
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
    risingAct: 'En la próxima parada, revise boquilla, camino de la cinta y altura de toma.',
    feeder: 'Alimentador',
    slot: 'Posición',
    loss: 'Pérdida',
    evidence: 'Se basa en',
    told: { count: 'contada', splice: 'empalmada' },
    evidenceLine: (from, to, placed) => `al empezar ${from}, quedan ${to}, colocados ${placed}`,
    showEvidence: 'Ver las bobinas',
    hideEvidence: 'Ocultar las bobinas',
    spliceDiffers: 'El empalme y la cuenta no coinciden: la cuenta de la bobina anterior era errónea.',
  },
});

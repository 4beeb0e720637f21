import { area, formatCount, plural } from './words.ts';

/** What stands on a refusal besides its reason, and the question about a label that reads like the running reel's. */
export const refusalWords = area({
  en: {
    inLog: (clock: string) => `${clock}, in the log`,
    nothingLoaded: 'Nothing is loaded.',
    closest: 'closest wanted',
    characters: (count: number) =>
      plural(count, '1 character differs.', `${formatCount(count)} characters differ.`),
    belongsAt: 'This reel belongs on',
    belongsNowhere: 'No slot here wants it.',
    lacksReel: 'No reel there now.',
    hasReel: 'A reel is there now.',
    onLine: (slot: string, line: string) => `${slot} on ${line}`,
    rightReel: (slot: string) => `${slot} needs`,
    rightReelNone: 'The log has no reel of it in the store.',
    rightReelAt: (reel: string, more: number) =>
      more === 0 ? reel : `${reel} and ${plural(more, '1 more', `${formatCount(more)} more`)}`,
    feederToFetch: 'Feeder to fetch',
    feederNone: 'No free feeder of that size is on the list.',
    anotherFeeder: 'Scan another feeder',
    carryOn: (slot: string) => `Take it to ${slot}`,
    unload: (slot: string) => `Unload ${slot}`,
    reachIn: 'Stop the machine before you reach in.',
    notNow: 'not needed yet',
    cameBack: (clock: string) => `This scan was open at ${clock}. Go on, or clear it.`,
    goOnWith: 'Go on',
    leadWanted: 'A lead must decide about this reel.',
    runsHere: {
      title: 'That reel is already running here',
      text: (slot: string) =>
        `This label matches the reel on ${slot}. Is it a second reel with the same label?`,
      same: 'No, it is that reel',
      second: 'Yes, a second reel',
    },
    cameBefore: {
      title: 'Was this reel on the line before?',
      text: (lot: string | null, left: string | null) =>
        `Its label has no id of its own. A reel like it${lot === null ? '' : `, lot ${lot},`} came off the line with ${left === null ? 'an unknown count' : `${left} parts`} left.`,
      same: 'Yes, it is that reel',
      fresh: 'No, a new one',
    },
  },
  es: {
    inLog: (clock) => `${clock}, en el registro`,
    nothingLoaded: 'No se cargó nada.',
    closest: 'la más parecida',
    characters: (count) => plural(count, 'Difiere 1 carácter.', `Difieren ${formatCount(count)} caracteres.`),
    belongsAt: 'Esta bobina va en',
    belongsNowhere: 'Aquí no la pide ninguna posición.',
    lacksReel: 'Ahora no hay bobina.',
    hasReel: 'Ahora hay una bobina.',
    onLine: (slot, line) => `${slot} en ${line}`,
    rightReel: (slot) => `${slot} necesita`,
    rightReelNone: 'El registro no tiene ninguna en el almacén.',
    rightReelAt: (reel, more) =>
      more === 0 ? reel : `${reel} y ${plural(more, '1 más', `${formatCount(more)} más`)}`,
    feederToFetch: 'Alimentador que traer',
    feederNone: 'No hay en la lista ninguno libre de ese tamaño.',
    anotherFeeder: 'Escanear otro alimentador',
    carryOn: (slot) => `Llevarla a ${slot}`,
    unload: (slot) => `Descargar ${slot}`,
    reachIn: 'Pare la máquina antes de meter la mano.',
    notNow: 'aún no hace falta',
    cameBack: (clock) => `Este escaneo estaba abierto a las ${clock}. Siga o vacíelo.`,
    goOnWith: 'Seguir',
    leadWanted: 'Sobre esta bobina debe decidir un jefe.',
    runsHere: {
      title: 'Esa bobina ya trabaja aquí',
      text: (slot) =>
        `La etiqueta coincide con la de la bobina de ${slot}. ¿Es otra bobina con la misma etiqueta?`,
      same: 'No, es esa bobina',
      second: 'Sí, otra bobina',
    },
    cameBefore: {
      title: '¿Estuvo ya esta bobina en la línea?',
      text: (lot, left) =>
        `Su etiqueta no tiene identificador propio. Una bobina igual${lot === null ? '' : `, lote ${lot},`} salió de la línea ${left === null ? 'sin contar' : `con ${left} piezas`}.`,
      same: 'Sí, es esa bobina',
      fresh: 'No, es nueva',
    },
  },
});

import { area, plural } from './words.ts';

/** How sync stands, in a few words for the top bar, and why it does not go on. */
export const syncWords = area({
  en: {
    live: 'In step with the server',
    syncing: 'Syncing…',
    toSend: (count: string) => `${count} to send`,
    unreached: (span: string | null) =>
      span === null ? 'Server not reached' : `Server not reached for ${span}`,
    waits: 'The server asks to wait',
    refused: 'The server says no',
    aside: (count: number) => plural(count, '1 entry kept aside', `${count} entries kept aside`),
    history: (share: string) => `History coming in: ${share}`,
    historyChecked: 'Checking the history',
    historyTitle: 'History',
    stillMissing: (missing: string, of: string) =>
      plural(
        of,
        `${missing} of 1 older entry is not here yet.`,
        `${missing} of ${of} older entries are not here yet.`,
      ),
    checkedHelp: 'All entries are here. This tablet now works the state out itself and compares.',
    historyHelp:
      'This tablet began with the state that another tablet worked out. Loading and checking go on as ever; the log, its exports and traces are not whole here until the rest is in.',
    notWhole: (missing: string) =>
      `${plural(missing, '1 older entry is', `${missing} older entries are`)} still coming in: the answer would not be whole. The server has them all.`,
  },
  es: {
    live: 'Al día con el servidor',
    syncing: 'Sincronizando…',
    toSend: (count) => `${count} por enviar`,
    unreached: (span) =>
      span === null ? 'Servidor sin respuesta' : `Servidor sin respuesta desde hace ${span}`,
    waits: 'El servidor pide esperar',
    refused: 'El servidor dice que no',
    aside: (count) => plural(count, '1 apunte apartado', `${count} apuntes apartados`),
    history: (share) => `Llega el historial: ${share}`,
    historyChecked: 'Comprobando el historial',
    historyTitle: 'Historial',
    stillMissing: (missing, of) =>
      plural(
        of,
        `${missing} de 1 apunte anterior aún no está aquí.`,
        `${missing} de ${of} apuntes anteriores aún no están aquí.`,
      ),
    checkedHelp: 'Todos los apuntes están aquí. Esta tableta calcula ahora el estado por sí misma y compara.',
    historyHelp:
      'Esta tableta empezó con el estado que calculó otra. Cargar y verificar siguen como siempre; el registro, sus exportaciones y rastreos no están completos aquí hasta que llegue el resto.',
    notWhole: (missing) =>
      `${plural(missing, 'Aún llega 1 apunte anterior', `Aún llegan ${missing} apuntes anteriores`)}: la respuesta no sería completa. El servidor los tiene todos.`,
  },
});

import { area, plural } from './words.ts';

/** How sync stands, in a few words for the top bar, and why it does not go on. */
export const syncWords = area({
  en: {
    live: 'Synced',
    syncing: 'Syncing…',
    toSend: (count: string) => `${count} to send`,
    unreached: (span: string | null) =>
      span === null ? 'Server not reached' : `Server not reached for ${span}`,
    waits: 'The server asks to wait',
    refused: 'Refused by the server',
    aside: (count: number) => plural(count, '1 entry set aside', `${count} entries set aside`),
    rolledBack: 'The server’s log went back',
    clocksOff: (count: number) =>
      plural(count, '1 tablet’s clock is off', `${count} tablets’ clocks are off`),
    history: (share: string) => `Loading history: ${share}`,
    historyChecked: 'Checking the history',
    historyTitle: 'History',
    stillMissing: (missing: string, of: string) =>
      plural(
        of,
        `${missing} of 1 older entry is not here yet.`,
        `${missing} of ${of} older entries are not here yet.`,
      ),
    checkedHelp: 'All entries are here. This tablet now works everything out itself and compares.',
    historyHelp:
      'This tablet started from what another tablet worked out. Loading and checking work as usual. The log, its exports and traces are incomplete here until the rest is in.',
    notWhole: (missing: string) =>
      `${plural(missing, '1 older entry is', `${missing} older entries are`)} still coming in: the answer would be incomplete. The server has them all.`,
  },
  es: {
    live: 'Sincronizada',
    syncing: 'Sincronizando…',
    toSend: (count) => `${count} por enviar`,
    unreached: (span) =>
      span === null ? 'Servidor sin respuesta' : `Servidor sin respuesta desde hace ${span}`,
    waits: 'El servidor pide esperar',
    refused: 'Rechazado por el servidor',
    aside: (count) => plural(count, '1 apunte apartado', `${count} apuntes apartados`),
    rolledBack: 'El registro del servidor retrocedió',
    clocksOff: (count) =>
      plural(count, '1 tableta con el reloj desviado', `${count} tabletas con el reloj desviado`),
    history: (share) => `Cargando el historial: ${share}`,
    historyChecked: 'Comprobando el historial',
    historyTitle: 'Historial',
    stillMissing: (missing, of) =>
      plural(
        of,
        `${missing} de 1 apunte anterior aún no está aquí.`,
        `${missing} de ${of} apuntes anteriores aún no están aquí.`,
      ),
    checkedHelp: 'Todos los apuntes están aquí. Esta tableta lo calcula ahora todo por sí misma y compara.',
    historyHelp:
      'Esta tableta empezó con lo que calculó otra. Cargar y verificar funcionan como siempre. El registro, sus exportaciones y rastreos no están completos aquí hasta que llegue el resto.',
    notWhole: (missing) =>
      `${plural(missing, 'Aún llega 1 apunte anterior', `Aún llegan ${missing} apuntes anteriores`)}: la respuesta no sería completa. El servidor los tiene todos.`,
  },
});

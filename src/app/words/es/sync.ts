import type { words as english } from '../en/sync.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  live: 'Sincronizada',
  syncing: 'Sincronizando…',
  toSend: (count) => `${count} por enviar`,
  unreached: (span) =>
    span === null ? 'Servidor sin respuesta' : `Servidor sin respuesta desde hace ${span}`,
  waits: 'El servidor pide esperar',
  refused: 'Rechazado por el servidor',
  quarantined: (count) => plural(count, '1 apunte apartado', `${count} apuntes apartados`),
  rolledBack: 'El registro del servidor puede haber retrocedido',
  headFault: 'El registro del servidor está en duda',
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
};

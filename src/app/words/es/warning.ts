import type { words as english } from '../en/warning.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  soon: (span, clock) => `se acaba en ${span}, hacia las ${clock}. Traiga la bobina siguiente.`,
  due: (span, clock) => `se puede empalmar ya; se acaba en ${span}, hacia las ${clock}.`,
  late: (_span, clock) => `pasó su ventana de empalme; la cinta acaba hacia las ${clock}.`,
  over: (clock, span) => `debía acabarse a las ${clock}, hace ${span}. Vaya a ver.`,
  ifPace: 'Sin paneles contados: si mantuvo su ritmo.',
  ifStarts: 'Si arranca ahora.',
  backup: (slot) => `Después alimenta ${slot}: la línea aún no para.`,
  short: {
    soon: (span) => `en ${span}`,
    due: () => 'empalme ya',
    late: () => 'tarde para empalmar',
    over: () => 'debía acabarse ya',
    blocked: () => 'bobina bloqueada',
  },
  shortPace: 'sin paneles contados',
  shortStarts: 'línea parada',
  shortMore: (count) => `+${count}`,
  more: (count) => plural(count, 'Espera 1 más.', `Esperan ${count} más.`),
  show: 'Ver',
  nobody: (line) => `${line}: nadie ha respondido`,
  unanswered: {
    due: (line, span) => `en ${line} necesita un empalme. Nadie ha respondido en ${span}.`,
    late: (line, span) => `en ${line} está a punto de vaciarse. Nadie ha respondido en ${span}.`,
  },
  showLine: (line) => `Mostrar ${line}`,
  noSound: 'Aún sin sonido: toque para oír el tono de prueba',
  acknowledge: 'Voy',
  blocked: (what, reason) => `lleva componentes bloqueados: ${what} (${reason}).`,
  blockedAct: 'Pare la línea y quite esa bobina.',
  blockedPanels: (since, sinceBlock) =>
    `${plural(since, '1 panel', `${formatCount(since)} paneles`)} de esta tirada con ella puesta, ${formatCount(sinceBlock)} desde el bloqueo.`,
  blockedBefore: 'También estuvo ahí en una tirada anterior.',
  blockedNone: 'Ahí no hay ninguna tirada abierta.',
  blockedMore: (slots) => `También bloqueadas: ${slots}.`,
  blockedTrace: 'Ver los paneles',
  blockedOff: 'Quitarla',
  letRun: 'Dejarla seguir',
  letRunTitle: (slot) => `¿Dejar que siga la bobina bloqueada de ${slot}?`,
  letRunHelp:
    'Solo esta bobina y solo en esta posición. El bloqueo sigue, y su nombre y motivo quedan en el registro.',
  letRunWhy: '¿Por qué puede seguir?',
  letRunDone: (slot) => `${slot}: sigue por decisión de un jefe de turno. El bloqueo se mantiene.`,
  blockedTape: (reason) => `Bloqueada: ${reason}`,
};

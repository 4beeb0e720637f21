import { area, formatCount, plural } from './words.ts';

/** The warning above every screen. */
export const warningWords = area({
  en: {
    soon: (span: string, clock: string) => `runs out in ${span}, about ${clock}. Bring the next reel.`,
    due: (span: string, clock: string) => `can be spliced now; runs out in ${span}, about ${clock}.`,
    late: (_span: string, clock: string) => `is past its splice window; the tape ends about ${clock}.`,
    backup: (slot: string) => `Then ${slot} feeds, so the line does not stop yet.`,
    more: (count: number) => plural(count, '1 more waits.', `${count} more wait.`),
    show: 'Show',
    acknowledge: 'I go',
    blocked: (what: string, reason: string) => `runs blocked parts: ${what} (${reason}).`,
    blockedAct: 'Stop the line and take that reel off.',
    blockedPanels: (since: number, sinceBlock: number) =>
      `${plural(since, '1 panel was built', `${formatCount(since)} panels were built`)} since it was put there, ${formatCount(sinceBlock)} of them since the block.`,
    blockedBefore: 'It stood there in an earlier run too.',
    blockedNone: 'No run is being built there.',
    blockedMore: (slots: string) => `Blocked too: ${slots}.`,
    blockedTrace: 'Show the panels',
    blockedOff: 'Take it off',
    letRun: 'Let it run on',
    letRunTitle: (slot: string) => `Let the blocked reel on ${slot} run on?`,
    letRunHelp:
      'Only this reel, only on this slot. The block itself stays, and your name and reason are in the log.',
    letRunWhy: 'Why may it run on?',
    letRunDone: (slot: string) => `${slot}: runs on by a lead’s word. The block itself stays.`,
    blockedTape: (reason: string) => `Blocked: ${reason}`,
  },
  es: {
    soon: (span, clock) => `se acaba en ${span}, sobre las ${clock}. Traiga la bobina siguiente.`,
    due: (span, clock) => `se puede empalmar ya; se acaba en ${span}, sobre las ${clock}.`,
    late: (_span, clock) => `pasó su ventana de empalme; la cinta acaba sobre las ${clock}.`,
    backup: (slot) => `Después alimenta ${slot}: la línea aún no para.`,
    more: (count) => plural(count, 'Espera 1 más.', `Esperan ${count} más.`),
    show: 'Ver',
    acknowledge: 'Voy',
    blocked: (what, reason) => `lleva componentes bloqueados: ${what} (${reason}).`,
    blockedAct: 'Pare la línea y quite esa bobina.',
    blockedPanels: (since, sinceBlock) =>
      `${plural(since, 'Se hizo 1 panel', `Se hicieron ${formatCount(since)} paneles`)} desde que se puso, ${formatCount(sinceBlock)} desde el bloqueo.`,
    blockedBefore: 'También estuvo ahí en una tirada anterior.',
    blockedNone: 'Ahí no se fabrica nada ahora.',
    blockedMore: (slots) => `También bloqueadas: ${slots}.`,
    blockedTrace: 'Ver los paneles',
    blockedOff: 'Quitarla',
    letRun: 'Dejarla seguir',
    letRunTitle: (slot) => `¿Dejar que siga la bobina bloqueada de ${slot}?`,
    letRunHelp:
      'Solo esta bobina y solo en esta posición. El bloqueo sigue, y su nombre y motivo quedan en el registro.',
    letRunWhy: '¿Por qué puede seguir?',
    letRunDone: (slot) => `${slot}: sigue por decisión de un jefe. El bloqueo se mantiene.`,
    blockedTape: (reason) => `Bloqueada: ${reason}`,
  },
});

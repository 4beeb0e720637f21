import type { words as english } from '../en/sync.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  live: 'Sincronizado',
  syncing: 'Sincronizando…',
  toSend: (count) => `${count} a enviar`,
  unreached: (span) => (span === null ? 'Servidor não alcançado' : `Servidor não alcançado há ${span}`),
  waits: 'O servidor pede para esperar',
  refused: 'Recusado pelo servidor',
  quarantined: (count) => plural(count, `${count} registro separado`, `${count} registros separados`),
  rolledBack: 'O log do servidor pode ter voltado atrás',
  headFault: 'O log do servidor está em dúvida',
  clocksOff: (count) =>
    plural(count, `${count} tablet com o relógio errado`, `${count} tablets com o relógio errado`),
  history: (share) => `Carregando histórico: ${share}`,
  historyChecked: 'Conferindo o histórico',
  historyTitle: 'Histórico',
  stillMissing: (missing, of) =>
    plural(
      of,
      `${missing} de ${of} registro antigo ainda não está aqui.`,
      `${missing} de ${of} registros antigos ainda não estão aqui.`,
    ),
  checkedHelp: 'Todos os registros estão aqui. Este tablet agora calcula tudo por si e compara.',
  historyHelp:
    'Este tablet partiu do que outro tablet calculou. Carregar e verificar funcionam como sempre. O log, as exportações e os rastreios ficam incompletos aqui até o resto chegar.',
  notWhole: (missing) =>
    `${plural(missing, `${missing} registro antigo ainda está chegando`, `${missing} registros antigos ainda estão chegando`)}: a resposta seria incompleta. O servidor tem todos.`,
};

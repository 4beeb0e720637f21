import type { words as english } from '../en/server.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  noKey: 'Esta página no puede firmar apuntes',
  noKeyHelp:
    'Claves, cámara e inicio sin red piden una página segura. Abra la aplicación por su dirección https (el servidor la dice, y cómo confiar en ella), o en el propio servidor. Hasta entonces, los apuntes quedan en esta tableta.',
  alone: 'Esta tableta trabaja por su cuenta',
  aloneHelp:
    'Verifica, avisa y lleva su registro sin servidor. Únala a uno para compartir el registro con las demás, también lo anterior.',
  joinTitle: 'Unirse al servidor de la planta',
  joinAgain: 'Unirse de nuevo',
  code: 'Código de un solo uso',
  codeHelp:
    'Diez letras y cifras, de la tableta de un jefe de turno o del servidor. Tecléelo o escanee su código.',
  codeWrong: 'Un código tiene diez letras y cifras, p. ej. ABCDE-23456.',
  name: 'Cómo se llama a esta tableta',
  nameMissing: 'Ponga un nombre, para que un jefe de turno distinga las tabletas.',
  join: 'Unirse',
  joining: 'Uniéndose…',
  joined: (plant) => `Unida: ${plant}.`,
  standing: 'Sincronización',
  phases: {
    alone: 'Sin unir',
    follower: 'Sincroniza otra ventana de esta tableta',
    syncing: 'Enviando y trayendo…',
    live: 'Sincronizada: las tabletas ven los apuntes de las demás al instante',
    waiting: 'A la espera de reintentar',
    refused: 'Rechazado por el servidor: alguien tiene que actuar',
  },
  plant: 'Planta',
  lastAnswer: 'Última respuesta',
  ago: (span) => `hace ${span}`,
  never: 'ninguna desde que se abrió la aplicación',
  backlog: 'Por enviar',
  entries: (count) => plural(count, '1 apunte', `${count} apuntes`),
  nothing: 'nada, el servidor lo tiene todo',
  clock: 'Reloj',
  clockRight: 'igual que el del servidor',
  clockBehind: (span) => `${span} por detrás del servidor: póngalo en hora`,
  clockAhead: (span) => `${span} por delante del servidor: póngalo en hora`,
  why: 'Por qué',
  quarantined: 'Apartados',
  quarantinedHelp:
    'El servidor apartó estos apuntes: su sello o su lugar en la cadena no coincide. Nada se pierde; también están aquí. Avise a quien cuida del servidor.',
  rolledBack: 'El registro del servidor puede haber retrocedido',
  rolledBackHelp: (span) =>
    `Notado hace ${span}: el servidor quizá tenía menos que antes, como tras restaurar una copia. Las tabletas envían de nuevo lo que tienen. Revise el registro y la lista de tabletas.`,
  rolledBackSeen: 'Lo he revisado',
  headFaults: {
    forked: 'El servidor muestra dos registros',
    'other-key': 'El servidor tiene otra clave',
    'no-proof': 'El servidor no prueba su registro',
  },
  headFaultHelp: {
    forked: (span) =>
      `Notado hace ${span}: su registro no continúa el que mostró antes. Alguien puede haberlo cambiado. Siga trabajando y avise a quien cuida del servidor.`,
    'other-key': (span) =>
      `Notado hace ${span}: firma con otra clave que cuando esta tableta se unió. Eso solo es correcto tras un traslado a otro equipo. Pregunte a quien cuida del servidor.`,
    'no-proof': (span) =>
      `Notado hace ${span}: antes probaba su registro. Siga trabajando y pregunte a quien cuida del servidor.`,
  },
  quarantinedHere: (count) =>
    plural(
      count,
      '1 apunte queda aquí fuera del registro',
      `${count} apuntes quedan aquí fuera del registro`,
    ),
  quarantinedHereHelp:
    'El texto, la firma o el reloj no está bien. Todos los demás apuntes están. Avise a quien cuida del servidor.',
  clocksOff: 'Relojes desviados',
  clockOfAhead: (name, span) => `${name}: ${span} por delante`,
  clockOfBehind: (name, span) => `${name}: ${span} por detrás`,
  clocksOffHelp: 'Póngalos en hora: lo que escriben estas tabletas puede quedar en mal orden.',
  stateNears: (share) => `Aquello de lo que parte una tableta nueva ocupa el ${share} de su espacio`,
  stateNearsHelp:
    'Cuando se llene, una tableta nueva leerá primero todo el registro, durante minutos. Dé de alta tabletas de reserva mientras es rápido y avise a quien cuida del servidor.',
  stateOver: 'Las tabletas nuevas empiezan despacio',
  stateOverHelp:
    'Aquello de lo que parte una tableta nueva es demasiado grande para entregarlo: lee primero todo el registro, durante minutos. Dela de alta antes de necesitarla y déjela abierta y enchufada. No se pierde nada.',
  now: 'Sincronizar ahora',
  causes: {
    unreachable: 'El servidor no responde. Siga trabajando; los apuntes esperan aquí.',
    unreadable: 'Lo que responde no es el servidor de la planta. Compruebe la red.',
    'other-plant':
      'Este es el servidor de otra planta. Nada va allí; los apuntes esperan aquí. No la una: avise a quien cuida del servidor.',
    'tablet-unknown': 'El servidor no conoce esta tableta. Únala de nuevo con un código nuevo.',
    'tablet-revoked': 'Un jefe de turno excluyó esta tableta. Puede unirse de nuevo con un código nuevo.',
    'code-wrong': 'Ese código es desconocido, usado, o de hace más de diez minutos. Pida otro.',
    'tablet-active':
      'Esta tableta sigue admitida con una clave anterior. Un jefe de turno la excluye primero; luego entra con un código nuevo.',
    'wire-too-old': 'Esta aplicación es más vieja que el servidor. Recárguela donde el servidor responda.',
    'wire-too-new': 'Esta aplicación es más nueva que el servidor. El servidor necesita actualizarse.',
    'time-off': 'El reloj de esta tableta va demasiado mal. Póngalo en hora.',
    'signature-wrong': 'El servidor no acepta la clave de esta tableta. Únala de nuevo con un código.',
    'person-unproven': 'La identificación ha caducado. Escanee la tarjeta y teclee el PIN otra vez.',
    'role-lacking': 'Eso solo puede hacerlo un jefe de turno o un ingeniero.',
    'too-often': 'Demasiados intentos. Espere un minuto.',
    'store-away': 'El servidor no llega a su almacén. Lo reintenta.',
    'store-full':
      'El disco del servidor está lleno. Los apuntes esperan aquí. Avise a quien cuida del servidor.',
    'store-read-only':
      'El servidor no puede escribir su registro. Los apuntes esperan aquí. Avise a quien cuida del servidor.',
    'server-fault': 'El servidor tuvo un fallo; vea su registro. La tableta lo reintenta.',
    stopping: 'El servidor se está parando.',
  },
  otherCause: (code) => `El servidor dice: ${code}.`,
  leadTitle: 'Otras tabletas',
  leadHelp: 'Un jefe de turno o un ingeniero admite y excluye tabletas: tarjeta y PIN.',
  leadOpen: 'Admitir o excluir tabletas',
  leadOffline: 'Solo el servidor admite tabletas, y ahora no responde. Inténtelo cuando responda.',
  newCode: 'Código nuevo para una tableta',
  newScreenCode: 'Código para una pantalla de pared',
  codeForScreen:
    'En la pantalla, abra la aplicación y teclee este código. Muestra todas las líneas y no puede cambiar nada.',
  codeUntilScreen: (span) => `Para una pantalla de pared, vale ${span}.`,
  isScreen: 'pantalla de pared',
  screenNotEmpty:
    'Una pantalla de pared debe empezar vacía, y esta tableta tiene un registro. Use otro navegador y un código nuevo.',
  codeFor: 'En la tableta nueva, escanéelo con su cámara, o abra allí la aplicación y teclee el código.',
  codeUntil: (span) => `Para una tableta, vale ${span}.`,
  codeOver: 'Este código ha caducado.',
  tablets: 'Tabletas',
  seen: (span) => `vista hace ${span}`,
  neverSeen: 'nunca vista desde que se unió',
  clockOff: (span) => `reloj desviado ${span}`,
  thisOne: 'esta tableta',
  isOut: 'excluida',
  revoke: 'Excluir',
  revokeTitle: (name) => `¿Excluir ${name}?`,
  revokeHelp:
    'Para una tableta perdida o vendida. Ya no puede enviar ni traer. Sus apuntes hasta ahora quedan en el registro.',
  revoked: (name) => `${name} queda excluida.`,
  list: 'Actualizar',
};

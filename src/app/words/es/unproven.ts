import type { words as english } from '../en/unproven.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: 'Sin prueba',
  none: 'Nada está sin prueba: tras cada apunte que necesita un jefe de turno hay un tique del servidor.',
  noTickets:
    'Esta planta aún no da tiques. Empiezan cuando un jefe de turno teclea su PIN donde el servidor responde.',
  help: 'Estos apuntes necesitan un jefe de turno o un ingeniero y se hicieron sin tique del servidor. En la línea cuentan. Un jefe de turno que sepa de ellos los confirma o los rechaza.',
  stands: {
    proven: 'probado con un tique',
    passkey: 'probado con una llave de acceso',
    unproven: 'sin prueba',
    confirmed: 'confirmado por un jefe de turno',
    rejected: 'rechazado por un jefe de turno',
    'before-tickets': 'anterior a los tiques',
  },
  right: 'Permiso',
  why: {
    'no-ticket': (role) =>
      `Sin tique del servidor: nada prueba que lo hizo alguien con la función «${role}».`,
    'ticket-over': () => 'El tique no cubría esa hora.',
    role: (role) => `El tique es de una función menor. Hace falta: ${role}.`,
    passkey: () => 'La llave de acceso firmó otra cosa, o no es de esta persona.',
  },
  before: 'Cuando se escribió, esta planta aún no daba tiques.',
  by: (name) => `por ${name}`,
  nobody: 'sin nombre',
  confirm: 'Confirmar',
  reject: 'Rechazar',
  confirmAll: (count) => plural(count, 'Confirmarlo', `Confirmar los ${count}`),
  confirmTitle: (count) => plural(count, '¿Se hizo como dice?', `¿Se hicieron los ${count} como dicen?`),
  rejectTitle: '¿No lo hizo esta persona?',
  rejectHelp:
    'El apunte se queda, marcado como rechazado. Lo que cambió en la línea también se queda: corríjalo usted.',
  rejectPerson:
    'En el servidor no cuenta el cambio de esta persona. Mire las personas en Planta y corrija la lista.',
  reason: '¿Cómo lo sabe?',
  needsServer: 'Aquí tiene que responder el servidor: solo así queda probado quién decide.',
  notProven:
    'Quedó apuntado, pero sin tique, y así no resuelve nada. Pruebe otra vez donde el servidor responda.',
  confirmed: (count) => plural(count, 'El apunte está confirmado.', `${count} apuntes están confirmados.`),
  rejected: 'El apunte está rechazado.',
  engineerOnly: (count) =>
    plural(
      count,
      'Uno necesita la palabra de un ingeniero.',
      `${count} necesitan la palabra de un ingeniero.`,
    ),
  badgeAlone: (name) =>
    `${name} ha entrado solo con la tarjeta. Lo que necesita un jefe de turno queda sin prueba. Entre con nombre y PIN para probarlo.`,
  settled: { confirmed: 'confirmado', rejected: 'rechazado' },
};

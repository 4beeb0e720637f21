import type { words as english } from '../en/people.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  whoTitle: '¿Quién trabaja?',
  pinTitle: (name) => `PIN de ${name}`,
  pinHelp: 'De cuatro a ocho cifras.',
  pinWrong: 'Ese no es el PIN.',
  pinLeft: (left) => `Ese no es el PIN. ${plural(left, 'Queda 1 intento.', `Quedan ${left} intentos.`)}`,
  pinLocked: (minutes) => `Demasiados intentos. Bloqueado ${minutes} min.`,
  pinUnsafe: 'Un PIN solo se comprueba en una página segura. Abra la aplicación por su dirección https.',
  notSeenHere: (name) =>
    `El servidor no responde y esta tableta nunca confirmó a ${name}. Inténtelo donde responda.`,
  pinNotHere: (name) =>
    `Esta tableta aún no conoce el PIN de ${name}. Póngalo una vez donde el servidor responda, o en la tableta donde se fijó.`,
  seenTooLongAgo: (name) =>
    `El servidor no responde y esta tableta confirmó a ${name} hace más de tres días. Inténtelo donde responda.`,
  asking: 'Comprobando…',
  enter: 'Entrar',
  erase: 'Borrar',
  nobody: 'Aún no hay personas en esta tableta. Añada primero a un ingeniero, que añadirá a los demás.',
  addFirst: 'Añadir al primer ingeniero',
  awayTitle: (name) => `Se cerró la sesión de ${name}`,
  awayHelp: (name) => `Lo abierto se conserva. ${name} se identifica para seguir. Para los demás se cierra.`,
  awayClose: 'Cerrar lo abierto',
  badgeNeeded: (name) => `${name} no tiene PIN: escanee la tarjeta.`,
  scanBadge: 'Escanee la tarjeta',
  badgeHelp: 'Con el lector, o teclee lo impreso bajo el código.',
  badgeUnknown: 'Tarjeta desconocida. Escanee otra.',
  noPin: (name) => `${name} aún no tiene PIN. Un ingeniero lo pone en Planta.`,
  clearTitle: 'Decide un jefe',
  clearHelp: 'Escanee la tarjeta del jefe. Luego ponga PIN y motivo.',
  clearReason: 'Motivo',
  reasons: [
    'Aprobada por ingeniería para este lote',
    'Comprobada y medida a mano',
    'Etiqueta dañada, componente confirmado',
    'Contada a mano',
  ],
  otherReason: 'Otro motivo',
  accept: 'Aceptar la bobina',
  decline: 'Rechazar',
  cartKept: (f) => `${f.cart} tiene ahora ${f.carries} para ${f.slot}. ${f.held} queda fuera del carro.`,
  cleared: (slot) => `Liberada para ${slot}.`,
  declined: 'Rechazada. La bobina queda fuera de la línea.',
  withPasskey: 'Usar la llave de acceso',
  passkeyAsks: 'Ahora se pide la llave de acceso.',
  passkeyFailed:
    'La llave de acceso no firmó y no se escribió nada. Inténtelo otra vez, o cancele y use el PIN.',
  needsRole: (role) => `Necesita: ${role}`,
  quantityTitle: '¿Cuántos componentes hay en la bobina?',
  quantityHelp: 'Lo impreso o contado. Puede corregirlo después; el registro guarda cada corrección.',
  quantityWrong: 'Ponga un número entero mayor que cero.',
};

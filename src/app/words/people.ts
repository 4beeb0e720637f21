import { area, plural } from './words.ts';

/** Signing in, PINs, clearing a held reel. */
export const peopleWords = area({
  en: {
    whoTitle: 'Who is working?',
    pinTitle: (name: string) => `PIN of ${name}`,
    pinHelp: 'Four to eight digits.',
    pinWrong: 'That is not the PIN.',
    pinLeft: (left: number) => `That is not the PIN. ${plural(left, '1 try left.', `${left} tries left.`)}`,
    pinLocked: (minutes: number) => `Too many tries. Locked for ${minutes} min.`,
    pinUnsafe: 'A PIN can only be checked on a secure page. Open the app by its https address.',
    notSeenHere: (name: string) =>
      `The server does not answer, and this tablet has never confirmed ${name}. Try where the server answers.`,
    seenTooLongAgo: (name: string) =>
      `The server does not answer, and this tablet confirmed ${name} over three days ago. Try where the server answers.`,
    asking: 'Checking…',
    enter: 'Enter',
    erase: 'Erase',
    nobody: 'No people on this tablet yet. Add an engineer first; the engineer adds the others.',
    addFirst: 'Add the first engineer',
    leftAlone: (name: string, minutes: number) =>
      plural(
        minutes,
        `${name} was signed out: 1 minute without a touch. Open work is kept.`,
        `${name} was signed out: ${minutes} minutes without a touch. Open work is kept.`,
      ),
    shiftOver: (name: string) => `${name} was signed out: a shift has passed. Open work is kept.`,
    awayTitle: (name: string) => `${name} was signed out`,
    awayHelp: (name: string) =>
      `Open work is kept. ${name} signs in to go on. For anybody else it is closed.`,
    awayClose: 'Close open work',
    badgeNeeded: (name: string) => `${name} has no PIN: scan the badge.`,
    scanBadge: 'Scan the badge',
    badgeHelp: 'With the scanner, or type what is printed under its code.',
    badgeUnknown: 'Unknown badge. Scan another one.',
    noPin: (name: string) => `${name} has no PIN yet. An engineer sets one under Plant.`,
    clearTitle: 'A lead decides',
    clearHelp: 'Scan the lead’s badge. Then enter PIN and reason.',
    clearReason: 'Reason',
    reasons: [
      'Approved by engineering for this lot',
      'Checked and measured by hand',
      'Label damaged, part confirmed',
      'Counted by hand',
    ],
    otherReason: 'Other reason',
    accept: 'Accept the reel',
    decline: 'Decline',
    cartKept: (f: {
      readonly cart: string;
      readonly slot: string;
      readonly carries: string;
      readonly held: string;
    }) => `${f.cart} now has ${f.carries} for ${f.slot}. ${f.held} stays off the cart.`,
    cleared: (slot: string) => `Cleared for ${slot}.`,
    declined: 'Declined. The reel stays off the line.',
    needsRole: (role: string) => `Needs: ${role}`,
    quantityTitle: 'How many parts are on the reel?',
    quantityHelp: 'As printed or counted. You can correct it later; the log keeps every correction.',
    quantityWrong: 'Enter a whole number above zero.',
  },
  es: {
    whoTitle: '¿Quién trabaja?',
    pinTitle: (name) => `PIN de ${name}`,
    pinHelp: 'De cuatro a ocho cifras.',
    pinWrong: 'Ese no es el PIN.',
    pinLeft: (left) => `Ese no es el PIN. ${plural(left, 'Queda 1 intento.', `Quedan ${left} intentos.`)}`,
    pinLocked: (minutes) => `Demasiados intentos. Bloqueado ${minutes} min.`,
    pinUnsafe: 'Un PIN solo se comprueba en una página segura. Abra la aplicación por su dirección https.',
    notSeenHere: (name) =>
      `El servidor no responde y esta tableta nunca confirmó a ${name}. Inténtelo donde responda.`,
    seenTooLongAgo: (name) =>
      `El servidor no responde y esta tableta confirmó a ${name} hace más de tres días. Inténtelo donde responda.`,
    asking: 'Comprobando…',
    enter: 'Entrar',
    erase: 'Borrar',
    nobody: 'Aún no hay personas en esta tableta. Añada primero a un ingeniero, que añadirá a los demás.',
    addFirst: 'Añadir al primer ingeniero',
    leftAlone: (name, minutes) =>
      plural(
        minutes,
        `Se cerró la sesión de ${name}: 1 minuto sin tocar. Lo abierto se conserva.`,
        `Se cerró la sesión de ${name}: ${minutes} minutos sin tocar. Lo abierto se conserva.`,
      ),
    shiftOver: (name) => `Se cerró la sesión de ${name}: ha pasado un turno. Lo abierto se conserva.`,
    awayTitle: (name) => `Se cerró la sesión de ${name}`,
    awayHelp: (name) =>
      `Lo abierto se conserva. ${name} se identifica para seguir. Para los demás se cierra.`,
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
    needsRole: (role) => `Necesita: ${role}`,
    quantityTitle: '¿Cuántos componentes hay en la bobina?',
    quantityHelp: 'Lo impreso o contado. Puede corregirlo después; el registro guarda cada corrección.',
    quantityWrong: 'Ponga un número entero mayor que cero.',
  },
});

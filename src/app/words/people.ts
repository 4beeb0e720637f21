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
      `${name} was not confirmed on this tablet yet, and the server does not answer. Try where it does.`,
    seenTooLongAgo: (name: string) =>
      `${name} was last confirmed here over three days ago, and the server does not answer. Try where it does.`,
    asking: 'Checking…',
    enter: 'Enter',
    erase: 'Erase',
    nobody: 'Nobody is known on this tablet yet. The first person is an engineer, who adds everybody else.',
    addFirst: 'Add the first engineer',
    leftAlone: (name: string, minutes: number) =>
      plural(
        minutes,
        `${name} was signed out: 1 minute without a touch. What is in hand stays.`,
        `${name} was signed out: ${minutes} minutes without a touch. What is in hand stays.`,
      ),
    shiftOver: (name: string) => `${name} was signed out: a shift has passed. What is in hand stays.`,
    awayTitle: (name: string) => `${name} was signed out`,
    awayHelp: (name: string) =>
      `What is open here is kept. ${name} signs in to go on with it; for anybody else it is closed.`,
    awayClose: 'Close what is open',
    badgeNeeded: (name: string) => `${name} has no PIN: scan the badge.`,
    scanBadge: 'Scan the badge',
    badgeHelp: 'With the scanner, or type what is printed under its code.',
    badgeUnknown: 'That badge is not known here.',
    noPin: (name: string) => `${name} has no PIN yet. An engineer sets one under Plant.`,
    clearTitle: 'A lead decides',
    clearHelp: 'Scan the lead’s badge; then the PIN and the reason.',
    clearReason: 'Why is it right?',
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
    }) => `${f.cart} got ${f.carries} for ${f.slot} in between and keeps it; ${f.held} stays off the cart.`,
    cleared: (slot: string) => `Cleared for ${slot}.`,
    declined: 'Declined. The reel stays off the line.',
    needsRole: (role: string) => `Needs: ${role}`,
    quantityTitle: 'How many parts are on the reel?',
    quantityHelp: 'As printed or counted. It can be corrected later; every correction is kept.',
    quantityWrong: 'A whole number above zero.',
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
      `A ${name} aún no se le confirmó en esta tableta y el servidor no responde. Inténtelo donde responda.`,
    seenTooLongAgo: (name) =>
      `A ${name} se le confirmó aquí hace más de tres días y el servidor no responde. Inténtelo donde responda.`,
    asking: 'Comprobando…',
    enter: 'Entrar',
    erase: 'Borrar',
    nobody:
      'Aún no se conoce a nadie en esta tableta. La primera persona es un ingeniero, que añade a los demás.',
    addFirst: 'Añadir al primer ingeniero',
    leftAlone: (name, minutes) =>
      plural(
        minutes,
        `Se cerró la sesión de ${name}: 1 minuto sin tocar. Lo que está en curso sigue.`,
        `Se cerró la sesión de ${name}: ${minutes} minutos sin tocar. Lo que está en curso sigue.`,
      ),
    shiftOver: (name) => `Se cerró la sesión de ${name}: ha pasado un turno. Lo que está en curso sigue.`,
    awayTitle: (name) => `Se cerró la sesión de ${name}`,
    awayHelp: (name) =>
      `Lo abierto aquí se conserva. ${name} se identifica para seguir; para los demás se cierra.`,
    awayClose: 'Cerrar lo abierto',
    badgeNeeded: (name) => `${name} no tiene PIN: escanee la tarjeta.`,
    scanBadge: 'Escanee la tarjeta',
    badgeHelp: 'Con el lector, o teclee lo impreso bajo el código.',
    badgeUnknown: 'Aquí no se conoce esa tarjeta.',
    noPin: (name) => `${name} aún no tiene PIN. Un ingeniero lo pone en Planta.`,
    clearTitle: 'Decide un jefe',
    clearHelp: 'Escanee la tarjeta del jefe; luego el PIN y el motivo.',
    clearReason: '¿Por qué es correcta?',
    reasons: [
      'Aprobada por ingeniería para este lote',
      'Comprobada y medida a mano',
      'Etiqueta dañada, componente confirmado',
      'Contada a mano',
    ],
    otherReason: 'Otro motivo',
    accept: 'Aceptar la bobina',
    decline: 'Rechazar',
    cartKept: (f) =>
      `${f.cart} recibió entretanto ${f.carries} para ${f.slot} y lo conserva; ${f.held} queda fuera del carro.`,
    cleared: (slot) => `Liberada para ${slot}.`,
    declined: 'Rechazada. La bobina queda fuera de la línea.',
    needsRole: (role) => `Necesita: ${role}`,
    quantityTitle: '¿Cuántos componentes hay en la bobina?',
    quantityHelp: 'Como esté impreso o contado. Se puede corregir después; cada corrección queda.',
    quantityWrong: 'Un número entero mayor que cero.',
  },
});

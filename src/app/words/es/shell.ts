import type { words as english } from '../en/shell.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  nav: {
    line: 'Línea',
    load: 'Carga',
    change: 'Cambio',
    stock: 'Bobinas',
    log: 'Registro',
    plant: 'Planta',
    search: 'Buscar',
  },
  noLine: 'Aún no hay línea',
  noSetup: 'sin montaje elegido',
  side: { top: 'cara superior', bottom: 'cara inferior' },
  revision: (revision) => `rev. ${revision}`,
  run: (done, wanted) => plural(wanted, `${done} de 1 panel`, `${done} de ${wanted} paneles`),
  signIn: 'Identificarse',
  signInFirst: 'Escanee antes su tarjeta',
  needsRole: (role) => `Necesita: ${role}`,
  signInHelp: 'Escanee su tarjeta o elija su nombre.',
  signedInAs: (name) => `Identificado: ${name}`,
  signOut: 'Salir',
  roles: { operator: 'Operario', lead: 'Jefe de turno', engineer: 'Ingeniero' },
  offlineReady: 'Listo para trabajar sin red',
  gettingReady: 'Preparando el trabajo sin red…',
  toSend: (count) => `${count} por enviar`,
  skipToDock: 'Saltar a Teclear y Cámara',
  done: 'Hecho',
  cancel: 'Cancelar',
  detailsOf: (what) => `Más: ${what}`,
  lessOf: (what) => `Menos: ${what}`,
  close: 'Cerrar',
  newVersion: 'Hay una versión nueva.',
  update: 'Actualizar ahora',
  updateLater: 'Espera a que no haya ninguna tarea abierta.',
  languageLater: 'Ese idioma aún no está en esta tableta. Conéctela a la red y elíjalo otra vez.',
  leftAlone: (name, minutes) =>
    plural(
      minutes,
      `Se cerró la sesión de ${name}: 1 minuto sin tocar. Lo abierto se conserva.`,
      `Se cerró la sesión de ${name}: ${minutes} minutos sin tocar. Lo abierto se conserva.`,
    ),
  shiftOver: (name) => `Se cerró la sesión de ${name}: ha pasado un turno. Lo abierto se conserva.`,
  notInPractice: 'No en la práctica',
  fault: {
    'disk-full': {
      title: 'Esta tableta está llena',
      text: 'Aquí no se puede escribir ni verificar nada más. Todo lo aceptado está a salvo. Trabaje en otra tableta. Libere espacio en esta y vuelva a intentarlo.',
    },
    'closed-by-newer': {
      title: 'Hay una versión más nueva en otra ventana',
      text: 'Esta ventana es una versión anterior y se ha detenido. Todo lo aceptado está a salvo. Recargue para seguir.',
    },
    lost: {
      title: 'No se puede abrir el registro de esta tableta',
      text: 'Trabaje en otra tableta y avise a quien cuida de ellas. No borre los datos del navegador: quizá aún se puedan salvar los apuntes sin enviar.',
    },
    unknown: {
      title: 'No se pudo escribir el registro',
      text: 'Lo que se mostró como hecho está a salvo. La última acción no se escribió. Recargue y mire el registro antes de seguir.',
    },
  },
  reload: 'Recargar',
  tryAgain: 'Reintentar',
  muted: 'Sin sonido hasta que toque',
  storageLow: (megabytes) => `Solo quedan ${megabytes} MB para el registro en esta tableta.`,
};

import type { words as english } from '../en/passkeys.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: (count) => plural(count, '1 llave de acceso', `${count} llaves de acceso`),
  openOf: (shown, name) => `${shown} de ${name}`,
  title: (name) => `Llaves de acceso de ${name}`,
  help: 'Una llave de acceso prueba quién decidió: el bloqueo de esta tableta o una llave que se le acerca. Sin ella decide el PIN.',
  none: 'Aún no hay ninguna.',
  where: {
    unsafe:
      'Las llaves de acceso necesitan una página segura. Abra la aplicación por su dirección https. Aquí decide el PIN.',
    'by-number':
      'Las llaves de acceso necesitan la dirección con nombre, no con números. Aquí decide el PIN.',
    none: 'Este navegador no tiene llaves de acceso. Aquí decide el PIN.',
  },
  who: (name) => `Solo ${name} o un ingeniero. Escanee la tarjeta y ponga el PIN.`,
  notThem: (name) => `Solo ${name} o un ingeniero.`,
  add: 'Añadir llave de acceso',
  name: '¿Cómo se llama?',
  nameHelp: 'Por ejemplo «llave azul» o «tableta de delante».',
  nameMissing: 'Ponga un nombre.',
  make: 'Crearla ahora',
  made: (name) => `Llave de acceso «${name}» añadida.`,
  notMade: 'No se creó ninguna. Acerque la llave o desbloquee la tableta e inténtelo otra vez.',
  remove: 'Quitar',
  removeOf: (name) => `Quitar la llave de acceso ${name}`,
  removed: (name) => `Llave de acceso «${name}» quitada.`,
  addedBy: (name, host) => `añadida por ${name}, para la página de ${host}`,
  fell: 'Su cuenta bajó: puede que la hayan copiado. Quítela y cree otra.',
  unproven: 'Nada prueba quién la añadió. No prueba nada hasta que un jefe de turno lo confirme en Registro.',
  signed: 'Firmado',
  byPasskey: (name) => `probado con la llave de acceso de ${name}`,
  pinOnly: 'solo PIN, lo dice la tableta',
  refused: 'La llave de acceso no lo prueba: firmó otra cosa, o no es de esta persona.',
  checking: 'Comprobando…',
};

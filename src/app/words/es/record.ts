import type { words as english } from '../en/record.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Registro en papel',
  asking: 'Pidiendo la prueba al servidor…',
  proven: (place, size) =>
    `Probado: apunte ${place} de ${size} en el registro de la planta, firmado con la clave de la planta.`,
  holds: 'El código lleva la prueba. La comprueba «reelward log verify --record», sin el registro.',
  seen: (count, names) =>
    plural(
      count,
      `Comprobado y firmado por 1 tableta: ${names}.`,
      `Comprobado y firmado por ${count} tabletas: ${names}.`,
    ),
  since: (when) => `Sin prueba todavía: no hay servidor desde ${when}.`,
  never: 'Sin prueba todavía: no se alcanzó ningún servidor.',
  waiting: 'Sin prueba todavía: el servidor no tiene este apunte.',
  noProof: 'Sin prueba: el servidor no dio ninguna.',
  later: 'Imprímalo otra vez cuando el servidor tenga el apunte. Entonces el papel lleva la prueba.',
  key: (fingerprint) => `Clave de la planta: ${fingerprint}`,
  brought: {
    'one-log': 'Este papel es del mismo registro que esta tableta.',
    'not-one-log': 'Este papel y el servidor muestran dos registros distintos. Avise al jefe de calidad.',
    'not-the-plants': 'Este papel no está firmado con la clave de esta planta.',
    'no-server': 'Sin servidor. El papel se comprueba cuando el servidor responda.',
    'not-checked': 'El papel no se comprobó. Escanéelo en una tableta sincronizada.',
  },
};

import type { words as english } from '../en/search.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  field: 'Escriba o escanee lo que sea',
  help: 'Bobina, referencia, lote, panel, posición, alimentador, persona o producto. Lo escaneado aquí se busca, no se carga.',
  kinds: {
    reel: 'Bobinas',
    slot: 'Posiciones',
    part: 'Referencias',
    'supplier-part': 'Referencias de proveedor',
    lot: 'Lotes',
    panel: 'Paneles',
    feeder: 'Alimentadores',
    person: 'Personas',
    setup: 'Montajes',
    entry: 'Registro',
  },
  more: (count) => `Mostrar ${count} más`,
  nothing: (text) => `Aquí nada contiene «${text}».`,
  alike: (codes) => `No son iguales: ${codes}. Compruebe cada carácter.`,
  onLabel: 'También en esta etiqueta:',
  left: (count) => `quedan ${count}`,
  slotIs: {
    right: 'correcta',
    empty: 'nada cargado',
    held: 'espera al jefe de turno',
    'other-part': 'referencia equivocada',
    'wrong-feeder': 'alimentador equivocado',
    blocked: 'bloqueada',
  },
  notWanted: 'no está en este montaje',
  chosen: 'elegido',
  reading: (entries) =>
    `Leyendo el registro: ${plural(entries, '1 apunte', `${entries} apuntes`)} hasta ahora.`,
  searchedAll: (entries) =>
    `Buscado: ${plural(entries, '1 apunte', `los ${entries} apuntes`)} de esta tableta.`,
  searchedSince: (day) => `Buscado: apuntes desde el ${day}. Los anteriores están en el registro.`,
  askServer: 'Preguntar al servidor',
  asking: 'Preguntando al servidor…',
  noServer: 'El servidor no responde: lo que solo él sabe no se ha buscado.',
  serverNothing: (text) => `El servidor no tiene nada de «${text}».`,
  serverHas: (kind, count) => `${kind}: ${count} en el servidor`,
};

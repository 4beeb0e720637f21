import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';

const fieldsEs: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: 'referencia propia',
  supplierPart: 'referencia del proveedor',
  quantity: 'cantidad',
  lot: 'lote',
  dateCode: 'código de fecha',
  made: 'semana de fabricación',
  expires: 'caducidad',
  reel: 'bobina',
  supplier: 'proveedor',
  country: 'país',
  msl: 'nivel de humedad',
  order: 'pedido',
};

/** A text in quotes, cut to what a line holds; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return `«${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain}»`;
}

function sayEs(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return 'no se leyó ningún código de esta etiqueta';
    case 'no-part-number':
      return 'ningún código da una referencia: debe venir de otro sitio';
    case 'header-damaged':
      return `la cabecera del sobre está dañada: ${quote(warning.found)}`;
    case 'separators-replaced':
      return `los separadores llegaron como ${quote(warning.found)}: ajuste el lector para enviar caracteres de control`;
    case 'separators-mixed':
      return `los separadores cambian de un sitio a otro (${warning.found.map(quote).join(', ')}): los altera el lector o su teclado`;
    case 'separators-lost':
      return `faltan separadores en ${quote(warning.text)}: el lector los pierde; solo se leyó lo seguro`;
    case 'trailer-uncertain':
      return `el último carácter de ${quote(warning.text)} puede ser la marca final del sobre`;
    case 'keyboard-layout':
      return `el lector escribe para otro teclado (${warning.layout}): ${quote(warning.text)} no se aceptó; ajústelo y escanee otra vez`;
    case 'identifier-lower-case':
      return `el identificador ${quote(warning.id)} llegó en minúsculas y se leyó como ${warning.id.toUpperCase()}`;
    case 'identifier-unlisted':
      return `el identificador ${warning.id} no está en la tabla: su valor se guarda sin usarse`;
    case 'no-identifier':
      return `${quote(warning.text)} no lleva identificador: se guarda como texto`;
    case 'format-unread':
      return `el formato ${warning.format} del sobre no se lee aquí: se guarda como texto`;
    case 'tags-not-mh10':
      return `marcas de dos letras (${warning.tags.join(', ')}) en vez de identificadores de datos`;
    case 'one-letter-tags':
      return 'marcas de una letra con sentido propio: R bobina, P referencia propia, D fecha, L lote, V proveedor, Q cantidad, S referencia del proveedor';
    case 'blank-separated':
      return `leído como piezas separadas por espacios: una referencia con espacios en ${quote(warning.text)} quedaría cortada`;
    case 'value-may-go-on':
      return `${quote(warning.text)} tras ${warning.id} puede ser parte de su valor: no se leyó`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)} puede empezar por un identificador o ser un número solo: no se lee sin más`;
    case 'confirmed-by-setup':
      return `${fieldsEs[warning.field]} ${quote(warning.value)} se distinguió por lo que espera el montaje`;
    case 'conflict':
      return `la etiqueta da valores distintos de ${fieldsEs[warning.field]}: ${warning.values.map(quote).join(', ')}`;
    case 'second-lot':
      return `la etiqueta da un segundo lote, ${quote(warning.text)}: la bobina lleva ambos`;
    case 'quantity-unreadable':
      return `la cantidad ${quote(warning.text)} no es un número que se lea sin adivinar`;
    case 'quantity-marks':
      return `la cantidad ${quote(warning.text)} lleva marcas de miles y se leyó como ${warning.quantity}`;
    case 'date-code-unclear':
      return `el código de fecha ${quote(warning.text)} (${warning.id}) tiene más de una lectura o ninguna: queda como está impreso`;
    case 'no-such-week':
      return `el código de fecha ${quote(warning.text)} (${warning.id}) no nombra ninguna semana de ISO 8601: queda como está impreso`;
    case 'no-such-date':
      return `${quote(warning.text)} (${warning.id}) no es una fecha del calendario`;
    case 'day-not-printed':
      return `${quote(warning.text)} (${warning.id}) no nombra día: cuenta el último de su mes`;
    case 'country-unlisted':
      return `${quote(warning.text)} no es un código de país de ISO 3166`;
    case 'msl-unlisted':
      return `${quote(warning.text)} no es un nivel de sensibilidad a la humedad`;
    case 'rule-unclear':
      return `la regla ${quote(warning.rule)} encaja de más de una manera en estos códigos: no se aplica`;
    case 'gs1-unread':
      return `${quote(warning.text)} no sigue los identificadores GS1 conocidos aquí: se guarda como texto`;
    case 'gs1-check-digit':
      return `la cifra de control de ${quote(warning.text)} no cuadra`;
  }
}

export const words: Sentences<typeof english> = { say: sayEs };

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
      return 'la etiqueta no da ninguna referencia: debe venir de otro sitio';
    case 'header-damaged':
      return `el principio del código está dañado: ${quote(warning.found)}`;
    case 'separators-replaced':
      return `el lector envió ${quote(warning.found)} en vez de los separadores (GS): ajústelo para enviar caracteres de control`;
    case 'separators-mixed':
      return `los separadores no son iguales (${warning.found.map(quote).join(', ')}): revise el lector y su teclado`;
    case 'separators-lost':
      return `faltan separadores en ${quote(warning.text)}: solo se leyó lo seguro; ajuste el lector para enviar caracteres de control`;
    case 'trailer-uncertain':
      return `el último carácter de ${quote(warning.text)} puede ser la marca final del código`;
    case 'keyboard-layout':
      return `el lector escribe para otro teclado (${warning.layout}): ${quote(warning.text)} no se aceptó; ajústelo y escanee otra vez`;
    case 'identifier-lower-case':
      return `el identificador ${quote(warning.id)} llegó en minúsculas y se leyó como ${warning.id.toUpperCase()}`;
    case 'identifier-unlisted':
      return `el identificador ${warning.id} no se conoce: su valor se guarda sin usarse`;
    case 'no-identifier':
      return `${quote(warning.text)} no lleva identificador: se guarda como texto`;
    case 'format-unread':
      return `el formato ${warning.format} no se lee aquí: se guarda como texto`;
    case 'tags-not-mh10':
      return `marcas de dos letras (${warning.tags.join(', ')}) en vez de identificadores de datos`;
    case 'one-letter-tags':
      return 'marcas de una letra, leídas así: R bobina, P referencia propia, D fecha, L lote, V proveedor, Q cantidad, S referencia del proveedor';
    case 'blank-separated':
      return `leído por piezas, cortadas en los espacios: si una referencia de ${quote(warning.text)} lleva espacios, también se corta`;
    case 'value-may-go-on':
      return `${quote(warning.text)} puede ser parte del valor tras ${warning.id}: no se leyó`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)} puede empezar por un identificador o ser un número solo: debe decirlo una persona`;
    case 'confirmed-by-setup':
      return `${fieldsEs[warning.field]} ${quote(warning.value)} es lo que espera el montaje`;
    case 'conflict':
      return `la etiqueta da valores distintos de ${fieldsEs[warning.field]}: ${warning.values.map(quote).join(', ')}`;
    case 'second-lot':
      return `la etiqueta da un segundo lote, ${quote(warning.text)}: la bobina lleva ambos`;
    case 'quantity-unreadable':
      return `la cantidad ${quote(warning.text)} no se lee sin adivinar: cuéntela o escríbala`;
    case 'quantity-marks':
      return `la cantidad ${quote(warning.text)} se leyó como ${warning.quantity}`;
    case 'date-code-unclear':
      return `el código de fecha ${quote(warning.text)} (${warning.id}) no está claro: queda como está impreso`;
    case 'no-such-week':
      return `el código de fecha ${quote(warning.text)} (${warning.id}) no es semana de ningún año: queda como está impreso`;
    case 'no-such-date':
      return `${quote(warning.text)} (${warning.id}) no es una fecha`;
    case 'day-not-printed':
      return `${quote(warning.text)} (${warning.id}) no tiene día: cuenta el último del mes`;
    case 'country-unlisted':
      return `${quote(warning.text)} no es un código de país`;
    case 'msl-unlisted':
      return `${quote(warning.text)} no es un nivel de humedad`;
    case 'rule-unclear':
      return `la regla ${quote(warning.rule)} encaja de más de una manera: no se usa`;
    case 'full-ascii':
      return `${quote(warning.text)} parece Code 39 en ASCII completo: sería ${quote(warning.meant)}; ajuste así el lector`;
    case 'gs1-unread':
      return `${quote(warning.text)} lleva un identificador GS1 que aquí no se conoce: se guarda como texto`;
    case 'gs1-check-digit':
      return `la cifra de control de ${quote(warning.text)} no cuadra`;
  }
}

export const words: Sentences<typeof english> = { say: sayEs };

import { type SheetField, sheetFieldNames } from '../../../../shared/sheet/fields.ts';
import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';

type Facts = SheetProblem['facts'];

const fieldsEs: Readonly<Record<SheetField, string>> = {
  slot: 'posición',
  machine: 'máquina',
  bank: 'banco',
  number: 'número de posición',
  part: 'componente',
  perPanel: 'colocaciones por panel',
  tapeWidth: 'ancho de cinta',
  pitch: 'paso',
  sharing: 'reparto entre posiciones',
  alternates: 'alternativas',
  supplierParts: 'referencias de proveedor',
  description: 'descripción',
  package: 'encapsulado',
  bodyThickness: 'espesor del cuerpo',
  msl: 'nivel de sensibilidad a la humedad',
  polarity: 'polaridad',
  critical: 'crítico',
  positions: 'posiciones ocupadas',
  side: 'cara',
  designators: 'designadores',
  fitted: 'montado',
  notFitted: 'no montado',
  note: 'nota',
};

const spanishByEnglish = new Map(
  // The keys of a table by field are its fields.
  (Object.keys(sheetFieldNames) as SheetField[]).map((field) => [sheetFieldNames[field], fieldsEs[field]]),
);

/** Facts that name a field carry its English name. */
function field(name: string | number | undefined): string {
  return spanishByEnglish.get(String(name)) ?? String(name);
}

const es: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    'El archivo no es UTF-8; se leyó como Windows-1252. Compruebe las letras con acento o guárdelo como UTF-8.',
  quoteBroken: (f) =>
    `Unas comillas que se abren en la fila ${f['row']} no se cierran como deben; lo que sigue puede estar en otra celda. Corrija las comillas de esa fila.`,
  rowTooLong: (f) =>
    `La fila tiene ${f['found']} celdas y la cabecera ${f['wanted']}; seguramente una celda lleva el separador sin comillas. Póngale comillas.`,
  rowUnreadable: (f) =>
    `La fila tiene ${f['found']} celdas donde la cabecera tiene ${f['wanted']}, y sus columnas no cuadran con la cabecera. Corrija la fila.`,
  noRows: () => 'No hay ninguna fila bajo la cabecera. Exporte la hoja otra vez con sus filas.',
  moreProblems: (f) =>
    `Hay ${f['count']} problemas más sin listar. Corrija los listados y lea la hoja otra vez.`,
  moreErrors: (f) =>
    `Hay ${f['count']} problemas más sin listar, con errores entre ellos. Corrija los listados y lea la hoja otra vez.`,
  columnMissing: (f) =>
    `No se encontró columna de ${field(f['wanted'])} entre: ${f['headers']}. Diga a mano qué columna es.`,
  columnAbsent: (f) =>
    `No se encontró columna de ${field(f['wanted'])} entre: ${f['headers']}. Diga a mano qué columna es o siga sin ella.`,
  columnNotFound: (f) =>
    `Se pide la columna «${f['wanted']}» para ${field(f['field'])}, que no está en esta hoja. Sus cabeceras: ${f['headers']}. Corrija las columnas.`,
  columnUnknown: (f) => `La columna «${f['found']}» no se usa. Diga a mano qué contiene si hace falta.`,
  columnTwice: (f) =>
    `La columna «${f['found']}» también parece ${field(f['field'])}; se usa «${f['used']}». Dígalo a mano si es la otra.`,
  usagePerBoard: (f) =>
    `La columna «${f['found']}» parece contar por placa; se toma por panel. Si un panel lleva varias placas, multiplíquela.`,
  slotMissing: (f) => `La posición está vacía aunque la fila nombra ${f['part']}. Rellénela.`,
  textTooLong: (f) => `${field(f['field'])} «${f['found']}…» pasa de ${f['most']} caracteres. Acórtelo.`,
  textCut: (f) => `El texto pasa de ${f['most']} caracteres; el resto se omite. Acórtelo.`,
  slotUnclear: (f) =>
    `La posición «${f['found']}» no tiene la forma máquina-banco-número, como M1-F-014; no se pueden comprobar sus vecinas. Se toma tal cual.`,
  slotNumberUnreadable: (f) => `El número de posición «${f['found']}» no es un entero desde 1. Corríjalo.`,
  partMissing: (f) =>
    `El componente está vacío aunque la posición ${f['slot']} lleva otros datos. Ponga la referencia.`,
  usageUnreadable: (f) => `Las colocaciones por panel «${f['found']}» no son un entero desde 0. Corríjalas.`,
  usageMissing: () =>
    'Faltan las colocaciones por panel, así que no se puede prever cuándo se agota. Rellénelas o añada el archivo de colocación.',
  usageZero: () =>
    'Hay 0 colocaciones por panel: se carga pero no se usa. Marque la fila como no montada si es eso.',
  usageFromDesignators: (f) =>
    `Faltan las colocaciones por panel; los ${f['count']} designadores se toman como ${f['count']} colocaciones. Compruebe que son de todo el panel.`,
  designatorsDisagree: (f) =>
    `La fila lista ${f['found']} designadores pero ${f['wanted']} colocaciones por panel. Compruebe cuál vale.`,
  widthUnreadable: (f) => `El ancho de cinta «${f['found']}» no es un número de mm. Escríbalo como 8 u 8 mm.`,
  widthUnknown: (f) => `${f['found']} mm no es un ancho de cinta de EIA-481 (${f['wanted']} mm). Corríjalo.`,
  widthMissing: () =>
    'Falta el ancho de cinta, así que no se puede comprobar el sitio en el banco. Rellénelo.',
  notTape: (f) => `«${f['found']}» no es cinta; en esta posición no se prevén cinta ni empalmes.`,
  pitchUnreadable: (f) =>
    `El paso «${f['found']}» no es un número de mm mayor que 0. Escríbalo como 4 o 4 mm.`,
  pitchUnusual: (f) =>
    `EIA-481 no lista un paso de ${f['found']} mm para cinta de ${f['width']} mm (${f['wanted']} mm). Compruébelo; hay pares poco usuales.`,
  pitchMissing: () => 'Falta el paso, así que no se puede pasar de cinta a componentes. Rellénelo.',
  positionsUnreadable: (f) =>
    `Las posiciones ocupadas «${f['found']}» no son un entero de 1 a 60. Corríjalas.`,
  thicknessUnreadable: (f) =>
    `El espesor «${f['found']}» no es un número de mm mayor que 0; se omite. Corríjalo.`,
  mslUnknown: (f) =>
    `«${f['found']}» no es un nivel de sensibilidad a la humedad (1, 2, 2a, 3, 4, 5, 5a, 6); se omite. Corríjalo.`,
  sharingUnknown: (f) =>
    `«${f['found']}» no dice cómo comparten el componente sus posiciones. Escriba «repartido» si cada una toma lo suyo, «por turno» si una alimenta hasta agotarse.`,
  turnUsageDiffers: (f) =>
    `${f['part']} se usa por turno: cada posición toma las ${f['wanted']} colocaciones mientras alimenta; esta fila dice ${f['found']}. Escriba la misma cifra en cada fila.`,
  sideUnknown: (f) => `«${f['found']}» no es cara superior ni inferior; se omite. Corríjala.`,
  flagUnreadable: (f) => `«${f['found']}» no es sí ni no; se toma como ${f['taken']}. Corríjalo.`,
  alternateIsPart: (f) => `${f['part']} figura como alternativa de sí mismo. Se omite.`,
  slotTwice: (f) =>
    `La posición ${f['slot']} ya se dio en la fila ${f['first']} (${f['part']}). Una posición lleva un componente: corrija una de las filas.`,
  noRoom: (f) =>
    `El alimentador de ${f['slot']} ocupa ${f['wanted']} posiciones, pero ${f['next']} (fila ${f['nextRow']}) está a ${f['found']}. Mueva uno de los dos.`,
  littleRoom: (f) =>
    `Un alimentador de cinta de ${f['width']} mm en ${f['slot']} suele ocupar ${f['wanted']} posiciones, pero ${f['next']} (fila ${f['nextRow']}) está a ${f['found']}. Compruebe que cabe o dé las posiciones ocupadas.`,
  noApprovedReels: (f) =>
    `${f['part']} no tiene referencia de proveedor aprobada; solo se podrán verificar etiquetas con la referencia propia. Rellénela.`,
  partDiffers: (f) =>
    `${f['part']} tiene aquí ${field(f['field'])} ${f['found']} y en la fila ${f['first']} ${f['wanted']}. Compruebe cuál vale.`,
  usageDisagrees: (f) =>
    `La hoja da ${f['found']} colocaciones por panel de ${f['part']}; el archivo de colocación, ${f['wanted']}. Compruebe cuál vale.`,
  usageRatio: (f) =>
    `Todos los componentes tienen en la hoja ${f['ratio']} veces las colocaciones del archivo, como si este fuera de una placa de un panel de ${f['ratio']}. Diga cuántas placas lleva un panel.`,
  usageSplitUnknown: (f) =>
    `${f['part']} tiene ${f['wanted']} colocaciones a repartir entre ${f['found']} posiciones sin dato; el archivo no dice cómo. Rellene las colocaciones por panel.`,
  partNotPlaced: (f) =>
    `${f['part']} está en una posición pero no en el archivo de colocación. Compruebe la referencia en ambos.`,
  partWithoutSlot: (f) =>
    `${f['part']} tiene ${f['found']} colocaciones en el archivo (la primera en su fila ${f['first']}) pero ninguna posición en la hoja. Dele una o márquelo como no montado.`,
  placementPartMissing: (f) =>
    `El designador ${f['designator']} no nombra componente; se omite. Ponga la referencia.`,
  placementTwice: (f) =>
    `El designador ${f['designator']} está en el mismo sitio que en la fila ${f['first']}; se cuenta una vez.`,
  placementSideMissing: () =>
    'El archivo de colocación no tiene columna de cara; todo se cuenta como cara superior.',
  placementSideUnknown: (f) =>
    `«${f['found']}» no es cara superior ni inferior; se cuenta como superior. Corríjalo.`,
};

export const words: Sentences<typeof english> = { say: (problem) => es[problem.code](problem.facts) };

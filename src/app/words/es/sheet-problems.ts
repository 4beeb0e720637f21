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
  pins: 'patillas',
  bodySize: 'tamaño del cuerpo',
  bodyThickness: 'espesor del cuerpo',
  msl: 'nivel de humedad',
  polarity: 'polaridad',
  feederType: 'tipo de alimentador',
  drive: 'accionamiento del alimentador',
  pocket: 'fondo de alvéolo',
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

/** A side as the file's reader names it. */
function sideEs(side: string | number | undefined): string {
  return side === 'bottom' ? 'inferior' : 'superior';
}

const es: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    'El archivo no es UTF-8; se leyó como Windows-1252. Compruebe las letras con acento o guárdelo como UTF-8.',
  quoteBroken: (f) =>
    `Unas comillas abiertas en la fila ${f['row']} no se cierran. Lo que sigue puede estar en otra celda. Corrija esa fila.`,
  rowTooLong: (f) =>
    `La fila tiene ${f['found']} celdas y la cabecera ${f['wanted']}. Parece que una celda lleva el separador: póngala entre comillas.`,
  rowUnreadable: (f) =>
    `La fila tiene ${f['found']} celdas y la cabecera ${f['wanted']}, y no cuadran. Corrija la fila.`,
  noRows: () => 'No hay ninguna fila bajo la cabecera. Exporte la hoja otra vez con sus filas.',
  moreProblems: (f) => `Hay ${f['count']} problemas más sin listar. Corrija estos y lea la hoja otra vez.`,
  moreErrors: (f) =>
    `Hay ${f['count']} problemas más sin listar, algunos son errores. Corrija estos y lea la hoja otra vez.`,
  columnMissing: (f) =>
    `No hay columna de ${field(f['wanted'])} entre: ${f['headers']}. Elija la columna a mano.`,
  columnAbsent: (f) =>
    `No hay columna de ${field(f['wanted'])} entre: ${f['headers']}. Elija la columna a mano o siga sin ella.`,
  columnNotFound: (f) =>
    `Esta hoja no tiene la columna «${f['wanted']}» para ${field(f['field'])}. Tiene: ${f['headers']}. Elija otra vez la columna.`,
  columnUnknown: (f) => `La columna «${f['found']}» no se usa. Si hace falta, elija a mano qué contiene.`,
  columnTwice: (f) =>
    `La columna «${f['found']}» también parece ${field(f['field'])}; se usa «${f['used']}». Si es la otra, elíjala a mano.`,
  usagePerBoard: (f) =>
    `La columna «${f['found']}» parece contar por placa y se toma por panel. Si un panel lleva varias placas, multiplíquela.`,
  slotMissing: (f) => `Falta la posición, pero la fila nombra ${f['part']}. Póngala.`,
  textTooLong: (f) => `${field(f['field'])} «${f['found']}…» pasa de ${f['most']} caracteres. Acórtelo.`,
  textCut: (f) => `El texto pasa de ${f['most']} caracteres. El resto se omite: acórtelo.`,
  slotUnclear: (f) =>
    `La posición «${f['found']}» no está escrita como M1-F-014: no se pueden comprobar sus vecinas. Se toma tal cual.`,
  slotNumberUnreadable: (f) => `El número de posición «${f['found']}» no es un entero desde 1. Corríjalo.`,
  partMissing: (f) => `La posición ${f['slot']} no tiene referencia, pero sí otros datos. Póngala.`,
  usageUnreadable: (f) => `Las colocaciones por panel «${f['found']}» no son un entero desde 0. Corríjalas.`,
  usageMissing: () =>
    'Faltan las colocaciones por panel: no se sabe cuándo se acaba. Póngalas o añada el archivo de colocación.',
  usageZero: () =>
    'Hay 0 colocaciones por panel: se carga pero no se usa. Si es así, marque la fila como no montada.',
  usageFromDesignators: (f) =>
    `Faltan las colocaciones por panel: los ${f['count']} designadores cuentan como ${f['count']}. Compruebe que son de todo el panel.`,
  designatorsDisagree: (f) =>
    `Hay ${f['found']} designadores, pero ${f['wanted']} colocaciones por panel. Compruebe cuál vale.`,
  widthUnreadable: (f) => `El ancho de cinta «${f['found']}» no es un número de mm. Escríbalo como 8 u 8 mm.`,
  widthUnknown: (f) => `${f['found']} mm no es un ancho de cinta de EIA-481 (${f['wanted']} mm). Corríjalo.`,
  widthMissing: () => 'Falta el ancho de cinta: no se puede comprobar que el alimentador quepa. Póngalo.',
  notTape: (f) => `«${f['found']}» no es cinta: esta posición no tiene largo de cinta ni horas de empalme.`,
  pitchUnreadable: (f) =>
    `El paso «${f['found']}» no es un número de mm mayor que 0. Escríbalo como 4 o 4 mm.`,
  pitchUnusual: (f) =>
    `EIA-481 no lista un paso de ${f['found']} mm para cinta de ${f['width']} mm, solo ${f['wanted']} mm. Compruébelo; algunas cintas son distintas.`,
  pitchMissing: () => 'Falta el paso: no se puede pasar de cinta a componentes. Póngalo.',
  positionsUnreadable: (f) =>
    `Las posiciones ocupadas «${f['found']}» no son un entero de 1 a 60. Corríjalas.`,
  pinsUnreadable: (f) =>
    `El número de patillas «${f['found']}» no es un entero de 1 o más; se omite. Corríjalo.`,
  bodySizeUnreadable: (f) =>
    `El tamaño del cuerpo «${f['found']}» no es un largo y un ancho en mm; se omite. Escríbalo como 17 x 17.`,
  thicknessUnreadable: (f) =>
    `El espesor «${f['found']}» no es un número de mm mayor que 0 y se omite. Corríjalo.`,
  pocketUnreadable: (f) =>
    `El fondo de alvéolo «${f['found']}» no es un número de mm mayor que 0 y se omite. Corríjalo.`,
  mslUnknown: (f) =>
    `«${f['found']}» no es un nivel de humedad (1, 2, 2a, 3, 4, 5, 5a, 6) y se omite. Corríjalo.`,
  sharingUnknown: (f) =>
    `«${f['found']}» no dice cómo se reparten las posiciones. Escriba «repartido» si cada una pone lo suyo, «por turno» si una alimenta hasta acabarse.`,
  turnUsageDiffers: (f) =>
    `${f['part']} se usa por turno: la que alimenta pone las ${f['wanted']}. Esta fila dice ${f['found']}. Escriba la misma cifra en cada fila.`,
  sideUnknown: (f) => `«${f['found']}» no es cara superior ni inferior y se omite. Corríjala.`,
  flagUnreadable: (f) => `«${f['found']}» no es sí ni no y cuenta como ${f['taken']}. Corríjalo.`,
  alternateIsPart: (f) => `${f['part']} figura como alternativa de sí mismo. Se omite.`,
  slotTwice: (f) =>
    `La posición ${f['slot']} ya está en la fila ${f['first']} con ${f['part']}. Una posición lleva un componente: corrija una de las filas.`,
  noRoom: (f) =>
    `El alimentador de ${f['slot']} ocupa ${f['wanted']} posiciones. ${f['next']} (fila ${f['nextRow']}) está a solo ${f['found']}. Mueva uno de los dos.`,
  littleRoom: (f) =>
    `Un alimentador de ${f['width']} mm en ${f['slot']} suele ocupar ${f['wanted']} posiciones. ${f['next']} (fila ${f['nextRow']}) está a solo ${f['found']}. Compruebe que cabe o ponga las posiciones ocupadas.`,
  noApprovedReels: (f) =>
    `${f['part']} no tiene referencia de proveedor aprobada: solo pasan etiquetas con su referencia propia. Póngala.`,
  partDiffers: (f) =>
    `${f['part']}: ${field(f['field'])} es ${f['found']} aquí y ${f['wanted']} en la fila ${f['first']}. Compruebe cuál vale.`,
  usageDisagrees: (f) =>
    `${f['part']}: ${f['found']} colocaciones por panel en la hoja y ${f['wanted']} en el archivo de colocación. Compruebe cuál vale.`,
  usageRatio: (f) =>
    `La hoja tiene ${f['ratio']} veces las colocaciones del archivo en cada componente. El archivo parece de una placa de ${f['ratio']}: ponga cuántas placas lleva un panel.`,
  usageSplitUnknown: (f) =>
    `${f['part']}: ${f['wanted']} colocaciones para ${f['found']} posiciones, y el archivo no dice cuántas cada una. Ponga las colocaciones por panel.`,
  partNotPlaced: (f) =>
    `${f['part']} tiene posición pero no está en el archivo de colocación. Compruebe la referencia en ambos.`,
  partWithoutSlot: (f) =>
    `${f['part']} se coloca ${f['found']} veces (archivo de colocación, desde la fila ${f['first']}) pero no tiene posición. Dele una o márquelo como no montado.`,
  placementPartMissing: (f) => `El designador ${f['designator']} no tiene referencia y se omite. Póngala.`,
  placementTwice: (f) =>
    `El designador ${f['designator']} está en el mismo sitio que en la fila ${f['first']}. Cuenta una vez.`,
  placementSideMissing: () =>
    'El archivo de colocación no tiene columna de cara. Todo cuenta como cara superior.',
  placementSideUnknown: (f) =>
    `«${f['found']}» no es cara superior ni inferior y cuenta como superior. Corríjalo.`,
  headerGuessed: (f) =>
    `El archivo no tiene una cabecera conocida. Por lo que hay en ellas, las columnas son: ${f['wanted']}. Compruébelas.`,
  columnByLook: (f) =>
    `La columna «${f['found']}» se toma como ${field(f['field'])} por lo que hay en ella. Compruébela.`,
  genericParts: (f) =>
    `La columna «${f['found']}» tiene un nombre para varios valores: son clases y no referencias. Cuentan los valores. Elija a mano la columna de las referencias, si la hay.`,
  partsAreDesignators: (f) =>
    `La columna «${f['found']}» contiene designadores, no referencias. Elija a mano la columna de las referencias.`,
  sheetAdded: (f) =>
    `Las filas de la hoja «${f['found']}» tienen la misma cabecera y también se leen; siguen desde la fila ${f['first']}.`,
  designatorTwice: (f) =>
    `El designador ${f['designator']} ya está en la fila ${f['first']}, en otro sitio. Cuenta una vez. Dé un nombre propio a cada componente de la placa.`,
  designatorSeldom: (f) =>
    `El designador ${f['designator']} está ${f['found']} veces en el archivo; los demás, ${f['wanted']}. Compruebe que cada placa del panel lo lleva.`,
  placementSideFromName: (f) =>
    `Nada en el archivo dice la cara. Por su nombre «${f['found']}» todo cuenta como cara ${sideEs(f['side'])}.`,
  throughHole: (f) =>
    `El designador ${f['designator']} (${f['part']}) va en taladros y no cuenta como colocado.`,
  oddPlaced: (f) =>
    `El designador ${f['designator']} parece un punto de prueba o un taladro, pero lleva ${f['part']}. Cuenta como colocado. Si no lo es, márquelo como no montado.`,
  valueInPackages: (f) =>
    `El valor ${f['part']} va aquí en ${f['found']} y en la fila ${f['first']} en ${f['wanted']}. Cuentan como dos componentes. Póngales referencia.`,
  partInPackages: (f) =>
    `${f['part']} va aquí en ${f['found']} y en la fila ${f['first']} en ${f['wanted']}. Compruebe la referencia.`,
  valueWithoutPackage: (f) =>
    `El designador ${f['designator']} tiene el valor ${f['part']}, sin encapsulado ni referencia. Nadie puede saber qué componente es: póngalos.`,
  xmlBroken: (f) =>
    `El XML está roto aquí: ${f['found']}. Lo que sigue no se lee. Exporte el archivo otra vez.`,
  noComponents: () => 'El archivo no contiene componentes. Expórtelo con los componentes y sus sitios.',
  panelOfFile: (f) =>
    `El panel del archivo lleva ${f['found']} placas; se cuenta una. Diga cuántas placas lleva un panel.`,
  billRowWithoutDesignators: (f) =>
    `${f['part']} no nombra designadores: de esta fila no se coloca nada. Póngalos si se coloca.`,
  billPartMissing: (f) =>
    `La fila con ${f['designator']} no tiene referencia ni valor. Ponga uno de los dos.`,
  billPartByOther: (f) => `La fila no tiene referencia: el componente se llama ${f['part']}. Póngala.`,
  secondTable: (f) => `Aquí empieza otra tabla (${f['headers']}). No se lee.`,
  boardsInFile: (f) =>
    `El archivo de colocación ya lleva ${f['found']} placas: las ${f['wanted']} placas no se multiplican otra vez. Compruebe cuántas placas lleva un panel.`,
  quantityDiffers: (f) =>
    `La cantidad es ${f['wanted']}, pero la fila nombra ${f['found']} designadores. Compruebe cuál vale.`,
  quantityUnreadable: (f) =>
    `La cantidad «${f['found']}» no es un número. Cuentan los designadores. Corríjala.`,
  quantityRatio: (f) =>
    `En cada fila la cantidad es ${f['ratio']} veces los designadores. La lista parece contar ${f['ratio']} placas.`,
  billDesignatorTwice: (f) =>
    `El designador ${f['designator']} ya está en la fila ${f['first']}, con el mismo componente. Cuenta una vez.`,
  billDesignatorDiffers: (f) =>
    `El designador ${f['designator']} ya está en la fila ${f['first']}, con ${f['wanted']}; aquí es ${f['found']}. En un sitio va un solo componente: corrija una de las filas.`,
  variantOpen: (f) =>
    `Las variantes de la lista difieren aquí: ${f['wanted']}. Cuenta como montado. Diga qué variante se fabrica o traiga la lista de esa variante.`,
  variantNotFound: (f) => `La lista no tiene la variante «${f['found']}». Tiene: ${f['wanted']}.`,
  partDescribedTwice: (f) =>
    `${f['part']} tiene aquí el valor ${f['found']} y en la fila ${f['first']} ${f['wanted']}. Compruebe la referencia.`,
  markInRemark: (f) =>
    `Por su nota «${f['found']}» no se monta nada de esta fila. Si es solo para algunos designadores, nómbrelos ahí.`,
  blankNotFitted: (f) =>
    `La columna «${f['found']}» lleva una marca en algunas filas y está vacía en ${f['count']}. Vacía cuenta como no montado.`,
  designatorNotInBill: (f) =>
    `El designador ${f['designator']} está en el archivo de colocación pero no en la lista de materiales, y no cuenta. Añádalo a la lista o márquelo como no montado.`,
  designatorNotPlaced: (f) =>
    `El designador ${f['designator']} (${f['part']}) está en la lista de materiales pero no en el archivo de colocación, y no cuenta.`,
  partOfFileDiffers: (f) =>
    `Designador ${f['designator']}: ${f['found']} en el archivo de colocación, ${f['wanted']} en la lista de materiales (fila ${f['first']}). Vale la lista. Compruebe cuál es.`,
  valueOfFileDiffers: (f) =>
    `Designador ${f['designator']}: valor ${f['found']} en el archivo de colocación, ${f['wanted']} en la lista de materiales (fila ${f['first']}). Vale la lista. Compruebe cuál es.`,
  sideOfFileDiffers: (f) =>
    `El designador ${f['designator']} está en la cara ${sideEs(f['found'])} en el archivo de colocación; la lista de materiales dice ${sideEs(f['wanted'])}. Vale el archivo de colocación.`,
  sheetDesignatorNotPlaced: (f) =>
    `El designador ${f['designator']} está en esta fila pero no en el archivo de colocación. Compruébelo en ambos.`,
  designatorWithoutSlot: (f) =>
    `El designador ${f['designator']} (archivo de colocación, fila ${f['first']}, ${f['part']}) no está en ninguna fila de la hoja. Añádalo a la fila de su posición o márquelo como no montado.`,
  sheetPartDiffers: (f) =>
    `Designador ${f['designator']}: ${f['found']} en esta fila, ${f['wanted']} en el archivo de colocación o en la lista de materiales. Compruebe cuál vale.`,
  sheetDesignatorTwice: (f) =>
    `El designador ${f['designator']} ya está en la fila ${f['first']}. Cuenta allí.`,
  listPartEmpty: () => 'La fila no tiene referencia, pero otras celdas están llenas. Complétela.',
  listPackingUnknown: (f) =>
    `«${f['found']}» no es cinta, trozo de cinta, bandeja, tubo ni a granel; se omite. Corríjalo.`,
  listAgeUnreadable: (f) =>
    `El límite de edad «${f['found']}» no es un número de meses; se omite. Escriba 24 o 2 años.`,
  listPriceUnreadable: (f) =>
    `El precio "${f['found']}" no es un número mayor que 0 y se omite. Escriba 0.012 o 0.012 EUR.`,
  listPriceUnclear: (f) =>
    `"${f['found']}" no dice para cuántas piezas es el precio. Escriba Price each o Price per 1000.`,
  listToleranceUnclear: (f) =>
    `"${f['found']}" tiene cifras sueltas menores que 1: ¿fracciones o por ciento? Se omiten. Llame a la columna Tolerance % o escriba 1 % en las celdas.`,
  listReelEmpty: () => 'La fila no tiene id de bobina y se omite. Complétela.',
  listReelTwice: (f) => `La bobina ${f['found']} ya está en la fila ${f['first']}. Vale su último recuento.`,
  listCountUnreadable: (f) =>
    `La cantidad «${f['found']}» no es un entero de piezas; la fila se omite. Corríjala.`,
};

export const words: Sentences<typeof english> = { say: (problem) => es[problem.code](problem.facts) };

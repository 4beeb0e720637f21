// Which columns can the plant's list of parts have, and what are they called?
// Method: as in fields.ts; what a setup sheet says of a part too is called as there. Header words of age, orientation and kind of packing are
// common practice.

import { type HeaderWords, sheetHeaderWords } from './fields.ts';

/** The fields of a list of parts, in the order in which they are shown. */
export const partFields = [
  'part',
  'description',
  'value',
  'tolerance',
  'package',
  'pins',
  'bodySize',
  'bodyThickness',
  'msl',
  'comesIn',
  'tapeWidth',
  'pitch',
  'supplierParts',
  'product',
  'ageMonths',
  'orientation',
  'price',
  'partsPerPrice',
  'currency',
  'note',
] as const;

/** One field of a list of parts. */
export type PartField = (typeof partFields)[number];

/** Header words of lists of parts: English, Spanish, German, French. */
export const partHeaderWords: HeaderWords<PartField> = {
  part: `${sheetHeaderWords.part}, our part, our part number, your part number, site part, stock number`,
  description:
    'description, part description, text, short text, descripcion, texto, beschreibung, bezeichnung, benennung, kurztext, designation, libelle',
  value:
    'value, nominal, nominal value, component value, rating, valor, valor nominal, wert, nennwert, bauteilwert, valeur, valeur nominale',
  tolerance: 'tolerance, tol, tol percent, tolerance percent, tolerancia, toleranz, tolerance en pour cent',
  package:
    'package, case, case size, case code, footprint, package type, encapsulado, caja, huella, gehause, gehaeuse, bauform, boitier, empreinte',
  pins: sheetHeaderWords.pins,
  bodySize: sheetHeaderWords.bodySize,
  bodyThickness: sheetHeaderWords.bodyThickness,
  msl: sheetHeaderWords.msl,
  comesIn:
    'comes in, packing, packaging, kind of package, supplied in, supply form, delivered in, packing type, packaging type, embalaje, presentacion, ' +
    'suministro, verpackung, lieferform, verpackungsart, conditionnement, type de conditionnement',
  tapeWidth: sheetHeaderWords.tapeWidth,
  pitch: sheetHeaderWords.pitch,
  supplierParts: sheetHeaderWords.supplierParts,
  product:
    'product, products, for product, approved for, assembly, used in, producto, para el producto, conjunto, produkt, baugruppe, freigegeben fur, freigegeben fuer, produit, pour le produit, ensemble',
  ageMonths:
    'age limit, age, max age, maximum age, age months, months, age limit months, shelf life, shelf life months, limite de edad, edad maxima, meses, ' +
    'caducidad meses, hochstalter, hoechstalter, alter, monate, lagerfrist, lagerzeit, age maximal, age maxi, mois, duree de stockage',
  orientation: sheetHeaderWords.polarity,
  price:
    'price, unit price, price each, price per part, cost, unit cost, cost each, standard cost, precio, precio unitario, coste, coste unitario, preis, ' +
    'einzelpreis, stuckpreis, stueckpreis, kosten, prix, prix unitaire, cout, cout unitaire',
  partsPerPrice:
    'price unit, price quantity, price is for, parts per price, cantidad del precio, unidad de precio, preiseinheit, preismenge, unite de prix, quantite du prix',
  currency: 'currency, currency code, moneda, divisa, wahrung, waehrung, devise, monnaie',
  note: 'note, notes, remark, remarks, comment, comments, nota, notas, observaciones, bemerkung, bemerkungen, hinweis, remarque, remarques',
};

/** What a field is called in a message of the core. */
export const partFieldNames: Readonly<Record<PartField, string>> = {
  part: 'part number',
  description: 'description',
  value: 'value',
  tolerance: 'tolerance',
  package: 'package',
  pins: 'pins',
  bodySize: 'body size',
  bodyThickness: 'body thickness',
  msl: 'moisture level',
  comesIn: 'packing',
  tapeWidth: 'tape width',
  pitch: 'pitch',
  supplierParts: 'approved supplier parts',
  product: 'product',
  ageMonths: 'age limit',
  orientation: 'orientation',
  price: 'price',
  partsPerPrice: 'parts per price',
  currency: 'currency',
  note: 'note',
};

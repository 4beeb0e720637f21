// Which columns can a bill of materials have, and what are they called?
// Method: as in fields.ts. A word that stands for two things in two bills ("Reference", "Comment", "Item") stands under both: a header that fits
// one thing only is taken first, and what stands in the column settles the rest (bill-columns.ts).

import { type HeaderWords, sheetHeaderWords } from './fields.ts';

/** The fields of a bill of materials. */
export const billFields = [
  'designators',
  'quantity',
  'part',
  'supplierParts',
  'orderNumbers',
  'value',
  'package',
  'description',
  'device',
  'fitted',
  'notFitted',
  'variants',
  'side',
  'mount',
  'level',
  'item',
  'maker',
  'note',
] as const;

/** One field of a bill. */
export type BillField = (typeof billFields)[number];

/** Fields of a bill that may be spread over several columns. */
export const manyBillFields: readonly BillField[] = [
  'designators',
  'supplierParts',
  'orderNumbers',
  'variants',
  'maker',
];

/** Header words of bills of materials: English, Spanish, German, French. */
export const billHeaderWords: HeaderWords<BillField> = {
  designators:
    'designators, designator, reference designators, reference designator, refdes, ref des, refdesignator, ref designator, ref designators, refs, ref, reference, references, ' +
    'part reference, part references, component reference, component references, circuit reference, circuit references, schematic reference, parts, locations, location, designation list, ' +
    'board references, instances, placement, placements, ' +
    'designadores, designador, referencia, referencias, posiciones en placa, bezeichner, bauteilbezeichner, referenz, referenzen, referenzbezeichner, bauteilreferenz, bauteilreferenzen, referenzbezeichnung, einbauplatze, einbauplaetze, einbauplatz, bestuckplatz, positionen, ' +
    'bauteilname, bauteilnamen, betriebsmittelkennzeichen, reperes, repere, repere topologique, reperes topologiques, references topologiques, ref topo, name, component, component name, part',
  quantity:
    'quantity, qty, qnty, qte, quant, quan, count, amount, pieces, pcs, number of parts, no of parts, total qty, total quantity, qty per, qty per board, quantity per board, qty board, per board, usage, bom qty, part count, component count, ' +
    'cantidad, cant, cantidad por placa, uds, unidades, menge, anzahl, stuckzahl, stueckzahl, stuck, stueck, stk, menge je platine, anzahl je platine, quantite, nombre, nb, nbre, quantite par carte, qte par carte',
  part:
    'part number, part no, pn, part id, part code, partnumber, part num, internal part number, internal pn, internal part no, house part, house part number, house pn, company part number, company pn, our part number, cpn, ipn, epn, erp number, erp no, stock code, stock number, stock no, sku, inventory number, ' +
    'material number, material no, material, article, article number, article no, item number, item no, item code, item, component id, component number, component code, part, component, component part number, part name, ' +
    'numero de pieza, numero de parte, no de parte, codigo, codigo de pieza, codigo de articulo, articulo, pieza, teilenummer, teile nr, teil, artikelnummer, artikel nr, artikel, sachnummer, sach nr, materialnummer, material nr, identnummer, ident nr, bauteilnummer, bauteil nr, bauteil, lagernummer, ' +
    'numero de piece, code article, numero d article, reference article, ref article, reference interne, ref interne, composant, piece, reference, code composant',
  supplierParts:
    'mpn, mpns, manufacturer part number, manufacturer part no, manufacturer part, manufacturer parts, manufacturer pn, manufacturer number, manufacturer no, manufacturer code, manufacturers part number, manufacturers part no, manufacturer reference, manufacturer p n, ' +
    'mfr part number, mfr part no, mfr part, mfr pn, mfr no, mfr number, mfr p n, mfg part number, mfg part no, mfg part, mfg pn, mfg no, mfg number, mfg p n, mfgr part number, mfgr pn, manf part number, manf pn, manf no, manuf part number, manuf pn, maker part number, maker part, maker parts, maker pn, part number mfr, mf pn, mp, mfn, mfpn, manpartno, ' +
    'approved, approved part, approved parts, approved maker part, approved reels, approved mpn, approved manufacturer part, approved supplier parts, alternate mpn, alternative mpn, second source, second source mpn, aml, ' +
    'pieza del fabricante, numero de pieza del fabricante, numero de parte del fabricante, referencia del fabricante, referencia fabricante, codigo fabricante, herstellerteil, herstellerteilenummer, hersteller teilenummer, hersteller nr, herstellernummer, herstellerbezeichnung, hersteller artikelnummer, hersteller bestellnummer, hersteller typ, freigegebene teile, freigaben, ' +
    'reference fabricant, ref fabricant, reference constructeur, numero fabricant, code fabricant, references homologuees, references approuvees',
  orderNumbers:
    'supplier part number, supplier part no, supplier part, supplier parts, supplier pn, supplier no, supplier number, supplier code, supplier reference, supplier ref, supplier and ref, vendor part number, vendor part no, vendor part, vendor pn, vendor no, vendor number, vendor p n, distributor part number, distributor part, distributor pn, dist part number, dist pn, order code, order number, order no, ordering code, catalog number, catalogue number, catalog no, avl, ' +
    'pieza del proveedor, numero de pieza del proveedor, referencia proveedor, codigo de pedido, lieferantenteil, lieferantenteilenummer, lieferanten nr, lieferantennummer, bestellnummer, bestell nr, bestellnr, reference fournisseur, ref fournisseur, code fournisseur, code commande',
  value:
    'value, val, component value, part value, nominal value, valor, wert, bauteilwert, valeur, comment, designation, type, typ, part type, name, tipo, bezeichnung, kommentar, comentario, commentaire',
  package:
    'package, footprint, pcb footprint, case, case size, case style, case code, case package, package case, pattern, decal, part decal, pcb decal, land pattern, geometry, shape, cell, package type, package name, package size, package footprint, jedec type, symbol footprint, footprint name, pcb package, encapsulado, huella, gehause, gehaeuse, gehausetyp, bauform, boitier, empreinte',
  description:
    'description, part description, desc, component description, item description, details, designation, specification, spec, descripcion, beschreibung, benennung, artikelbenennung, kurztext, bezeichnung, artikelbezeichnung, bauteilbenennung, libelle, descriptif, name',
  device:
    'device, device type, device name, lib ref, libref, library ref, library reference, library part, lib part, libpart, cmp name, symbol, symbol name, schematic part, schematic symbol, graphic, component type, comp type, source package',
  fitted: `${sheetHeaderWords.fitted}, fit, fitting, installed, install, assembled, assemble, stuffed, stuff, stuffing, load, loaded, include, included, placement status, fitted status, fit status, mount status, assembly status, populate status, population, stuffing option, bestuckung, bestueckung, montaje, montage`,
  notFitted: `${sheetHeaderWords.notFitted}, dnm, nf, n f, no stuff, nostuff, no load, noload, no fit, not populated, not installed, not loaded, do not mount, do not install, do not stuff, do not assemble, exclude, exclude from bom, exclude from assembly, exclude from board, unpopulated, unfitted, omit, nicht montiert, nicht montieren`,
  variants:
    'variant, variants, assembly variant, build variant, variante, bestuckvariante, bestueckvariante, bestuckungsvariante, configuration, config',
  side: 'side, board side, layer, pcb side, mount side, mounting side, placement side, top bottom, lado, cara, capa, seite, bestuckseite, bestueckseite, lage, cote, face, couche',
  mount:
    'mount, mount type, mounting, mounting type, mounting technology, mounting style, technology, smd, smt, smd tht, smt tht, mount method, montageart, montagetyp, tipo de montaje, type de montage, technologie',
  level: 'level, bom level, lvl, structure level, indent, ebene, stufe, nivel, niveau',
  item: 'item, item no, item number, line, line no, line number, no, nr, row, id, index, pos, position, pos nr, positionsnummer, posnr, seq, sequence, sequence number, find number, find no, find, linea, ligne, zeile, fila, repere item, sl no, s no, sno, sr no, number',
  maker:
    'manufacturer, manufacturer name, maker, mfr, mfg, mf, mfr name, mfg name, manf, manuf, supplier, supplier name, vendor, vendor name, distributor, hersteller, lieferant, fabricante, proveedor, fabricant, fournisseur, brand, marca, marque',
  note: 'note, notes, comment, comments, remark, remarks, nota, notas, comentario, comentarios, observaciones, bemerkung, bemerkungen, kommentar, hinweis, anmerkung, remarque, remarques, commentaire, commentaires, observation, observations, status, state, estado, etat',
};

/** What each field is called in a message to a person. */
export const billFieldNames: Readonly<Record<BillField, string>> = {
  designators: 'reference designators',
  quantity: 'quantity',
  part: 'part',
  supplierParts: 'supplier parts',
  orderNumbers: 'order numbers',
  value: 'value',
  package: 'package',
  description: 'description',
  device: 'device',
  fitted: 'fitted',
  notFitted: 'not fitted',
  variants: 'variants',
  side: 'side',
  mount: 'mounting',
  level: 'level',
  item: 'item',
  maker: 'maker',
  note: 'note',
};

// Which columns can a setup sheet or a placement file have, and what are they called on the floor?
// Method: a closed vocabulary of fields, each with header words in English, Spanish, German and French; matching is in
// sheet-headers.ts. German words of parts lists (Sachnummer, Benennung, Menge, Bemerkung) are those of DIN 6771-2, which parts lists still
// follow; words of placement lines (Automat, Rüstplatz, Gurt) are common practice. Sheets of older systems write ae, oe, ue, ss: the usual
// words stand in that spelling too. Method refused: guessing a column from its values alone, which takes a quantity for a slot number.

/** The fields of a setup sheet, in the order in which they are shown. */
export const sheetFields = [
  'slot',
  'machine',
  'bank',
  'number',
  'part',
  'perPanel',
  'tapeWidth',
  'pitch',
  'sharing',
  'alternates',
  'supplierParts',
  'description',
  'package',
  'pins',
  'bodySize',
  'bodyThickness',
  'msl',
  'polarity',
  'feederType',
  'drive',
  'pocket',
  'critical',
  'positions',
  'side',
  'designators',
  'fitted',
  'notFitted',
  'note',
] as const;

/** One field of a setup sheet. */
export type SheetField = (typeof sheetFields)[number];

/**
 * The fields of a placement (centroid) file. `mirrored` states the side as a yes or no, `place` both coordinates in one cell, `mount` whether
 * the part is placed on pads or put through holes; `device` is a name out of a library, which says less than a value.
 */
export const placementFields = [
  'designator',
  'part',
  'value',
  'device',
  'package',
  'side',
  'mirrored',
  'x',
  'y',
  'place',
  'rotation',
  'mount',
  'note',
  'fitted',
  'notFitted',
] as const;

/** One field of a placement file. */
export type PlacementField = (typeof placementFields)[number];

/** Sheet fields that may be spread over several columns ("Alternate 1", "Alternate 2"). */
export const manyColumnFields: readonly string[] = ['alternates', 'supplierParts'];

/** Header words by field, lower case, without accents; one phrase per comma. */
export type HeaderWords<F extends string> = Readonly<Record<F, string>>;

/** Header words of setup sheets: English, Spanish, German, French. */
export const sheetHeaderWords: HeaderWords<SheetField> = {
  slot:
    'slot, ort, slot address, slot id, slot name, address, feeder slot, feeder address, feeder location, feeder position, location, ' +
    'station, setup position, track address, feeder, ranura, direccion, direccion de ranura, ubicacion, posicion del alimentador, ' +
    'alimentador, steckplatz, stellplatz, rustplatz, platz, spur, adresse, feederplatz, feederposition, zufuhrung, zufuehrung, zufuhrer, zufuehrer, zufuhrplatz, zufuehrplatz, ruestplatz, rustposition, ruestposition, magazinplatz, emplacement, ' +
    'logement, position du chargeur, chargeur, adresse du chargeur, position feeder',
  machine:
    'machine, machine id, machine name, module, placer, maquina, modulo, maschine, anlage, bestucker, automat, automaten, automat nr, bestuckautomat, bestuckungsautomat, bestueckautomat, bestueckungsautomat, maschinennummer, maschinen nr, modul, poseuse',
  bank: 'bank, table, feeder bank, feeder table, banco, mesa, lado del banco, tisch, rusttisch, ruesttisch, wechseltisch, feedertisch, feederwagen, seite der maschine, rustseite, banc, front rear, table side',
  number:
    'slot number, position number, feeder number, track, track number, slot no, number, position, pos, numero de ranura, numero, ' +
    'posicion, platznummer, steckplatznummer, spurnummer, nummer, spur nr, platz nr, nr, no, numero d emplacement, numero du chargeur',
  part:
    'part, part number, part no, pn, part id, part code, part name, component, component id, component number, component part number, ' +
    'component name, item, item number, item code, item no, material, material number, material no, internal part number, house part, ' +
    'house part number, ipn, article, article number, stock code, sku, pieza, numero de pieza, numero de parte, no de parte, codigo, ' +
    'codigo de pieza, componente, material nummer, articulo, referencia, bauteil, bauteilnummer, bauteil nr, teil, teilenummer, teile nr, ' +
    'artikel, artikelnummer, artikel nr, sachnummer, sach nr, materialnummer, material nr, identnummer, ident nr, teilekennzeichen, piece, numero de piece, composant, ' +
    'reference, reference composant, code article, code composant, numero d article, reference article, ref article',
  perPanel:
    'per panel, per board, qty per board, quantity per board, usage per board, placements per board, je platine, menge je platine, anzahl je platine, por placa, ' +
    'cantidad por placa, par carte, quantite par carte, qte par carte, units per panel, unidades por panel, unites par panneau, placements per panel, placements, placement count, usage, usage per panel, qty, quantity, qty per panel, ' +
    'quantity per panel, qty panel, parts per panel, count, count per panel, pieces per panel, pcs per panel, pcs, number of placements, picks, picks per panel, ' +
    'placed per panel, amount, uses, por panel, cantidad, cantidad por panel, cant, cant por panel, colocaciones, colocaciones por panel, uso, uso por panel, ' +
    'piezas por panel, montajes por panel, stk, menge, menge je nutzen, menge pro nutzen, anzahl, anzahl je nutzen, anzahl pro nutzen, stuck, stuck je nutzen, ' +
    'stuck pro nutzen, stuckzahl, bestuckungen, bestuckungen je nutzen, bestuckungen pro nutzen, verbrauch, verbrauch je nutzen, ' +
    'bedarf je nutzen, stueck, stueck je nutzen, stueck pro nutzen, stueckzahl, bestueckungen, bestueckungen je nutzen, bestuckmenge, bestueckmenge, je nutzen, pro nutzen, anzahl je panel, menge je panel, par panneau, quantite, quantite par panneau, qte, qte par panneau, poses, ' +
    'poses par panneau, nombre, nombre par panneau, nombre de poses, usage par panneau, utilisation par panneau, quantite par flan, poses par flan',
  tapeWidth:
    'tape width, width, tape, tape size, tape w, carrier width, carrier tape width, reel width, feeder width, feeder size, ancho, ancho de cinta, ' +
    'ancho cinta, anchura, anchura de cinta, cinta, gurtbreite, gurt breite, breite, gurt, bandbreite, tapebreite, largeur, ' +
    'largeur de bande, largeur bande, largeur du ruban, bande, ruban, largeur ruban',
  pitch:
    'pitch, tape pitch, pocket pitch, feed pitch, feeder pitch, part pitch, advance, feed, paso, paso de cinta, paso cinta, avance, teilung, ' +
    'gurtteilung, gurt teilung, taschenabstand, gurtvorschub, vorschubweite, vorschub, schrittweite, abstand, raster, pas, pas de bande, pas bande, pas du ruban, avance bande, pas d avance',
  sharing:
    'sharing, share, load sharing, slot sharing, use of slots, slot use, feed order, turn, reparto, reparto de carga, uso de posiciones, ' +
    'turno, aufteilung, verteilung, lastverteilung, reihenfolge der platze, partage, repartition, partage des emplacements',
  alternates:
    'alternates, alternate, alternative, alternatives, alternate part, alternate parts, alternate part number, alternate part numbers, alternative part, ' +
    'alternative parts, alternative part number, alt, alt part, alt parts, alts, alt pn, ' +
    'substitute, substitutes, substitute part, replacement, replacements, second source part, alternativa, alternativas, alternativo, alternativos, ' +
    'sustituto, sustitutos, pieza alternativa, piezas alternativas, alternativteil, alternativteile, ' +
    'alternativen, alternativ, ausweichteil, ausweichteile, ausweichtyp, ersatz, ersatzteil, ersatzteile, ersatztyp, remplacement, remplacements, substitut, substituts, equivalent, equivalents, ' +
    'composant alternatif, composants alternatifs, references alternatives, pieces alternatives',
  supplierParts:
    'supplier part, supplier parts, supplier part number, supplier part numbers, supplier pn, approved, approved part, approved parts, approved reels, approved supplier parts, ' +
    'manufacturer part, manufacturer parts, manufacturer part number, manufacturer pn, maker part, maker parts, maker part number, mpn, mpns, mfr part, mfr part number, mfr pn, mfg part number, ' +
    'vendor part, vendor part number, aml, avl, approved list, approved manufacturer part, pieza del proveedor, numero de pieza del proveedor, ' +
    'pieza del fabricante, numero de parte del fabricante, piezas aprobadas, referencia del fabricante, aprobados, ' +
    'lieferantenteil, lieferantenteilenummer, lieferanten teilenummer, herstellerteil, herstellerteilenummer, hersteller teilenummer, herstellernummer, ' +
    'hersteller nr, herstellerbezeichnung, freigegebene teile, freigaben, reference fournisseur, reference fabricant, ref fournisseur, ref fabricant, ' +
    'references approuvees, references homologuees, homologues',
  description:
    'description, part description, value, component value, designation, descripcion, valor, beschreibung, bezeichnung, benennung, artikelbenennung, teilebenennung, bauteilbenennung, kurztext, wert, libelle, valeur, desc',
  package:
    'package, footprint, case, case size, shape, body, package type, encapsulado, huella, caja, gehause, gehaeuse, bauform, bauart, footprint name, gehausetyp, boitier, empreinte',
  pins:
    'pins, pin count, number of pins, no of pins, pin no, pins qty, leads, lead count, number of leads, balls, ball count, terminals, terminal count, ' +
    'numero de pines, pines, numero de patillas, patillas, cantidad de pines, bolas, anschlusse, anschluesse, anzahl anschlusse, anzahl anschluesse, ' +
    'anzahl pins, pinzahl, polzahl, beinchen, broches, nombre de broches, nombre de pins, nombre de billes, billes',
  bodySize:
    'body size, package size, body dimensions, package dimensions, body x y, body xy, body lxw, body l x w, length x width, component size, ' +
    'tamano del cuerpo, dimensiones del cuerpo, tamano del encapsulado, largo x ancho, gehausegrosse, gehaeusegroesse, korpergrosse, ' +
    'gehauseabmessungen, gehaeuseabmessungen, lange x breite, dimensions du corps, dimensions du boitier, taille du boitier, longueur x largeur',
  bodyThickness:
    'body thickness, thickness, body height, height, part height, component height, package thickness, espesor, grosor, espesor del cuerpo, altura, ' +
    'dicke, bauteildicke, gehausedicke, bauteilhohe, bauteilhoehe, hohe, hoehe, korperdicke, epaisseur, epaisseur du boitier, epaisseur du corps, hauteur',
  msl: 'msl, moisture level, moisture sensitivity, moisture sensitivity level, ms level, nivel msl, nivel de humedad, sensibilidad a la humedad, feuchteklasse, feuchtigkeitsklasse, feuchteempfindlichkeit, msl stufe, msl klasse, niveau msl, sensibilite humidite, sensibilite a l humidite',
  feederType:
    'feeder type, feeder kind, tipo de alimentador, feedertyp, feeder typ, zufuhrungstyp, type de chargeur',
  drive: 'feeder drive, drive, accionamiento, antrieb, feederantrieb, entrainement',
  pocket:
    'pocket depth, pocket height, tape depth, profundidad del alveolo, fondo del alveolo, taschentiefe, profondeur d alveole, profondeur alveole',
  polarity:
    'polarity, polarity note, orientation, pin 1, pin 1 position, pin one, polaridad, orientacion, polaritat, polaritaet, polung, ausrichtung, polarite',
  critical:
    'critical, critical part, key part, safety part, safety relevant, safety critical, critico, pieza critica, kritisch, sicherheitsrelevant, ' +
    'kritisches teil, critique, composant critique, piece critique, securite',
  positions:
    'positions, positions taken, feeder positions, slots taken, slots used, slot width, feeder slots, pitches taken, positions used, posiciones, ' +
    'posiciones ocupadas, ranuras ocupadas, platze, plaetze, belegte platze, platzbedarf, spuren, belegte spuren, positions occupees, emplacements occupes, places',
  side: 'side, board side, panel side, layer, pcb side, lado, cara, cara de la placa, seite, leiterplattenseite, lp seite, bestuckseite, bestueckseite, cote, face, face de la carte',
  designators:
    'designators, designator, reference designators, reference designator, ref des, refdes, references list, refs, ref, locations, circuit reference, circuit references, component references, ' +
    'board references, designadores, designador, referencias, posiciones en placa, referenzen, referenzbezeichner, einbauplatze, einbauplaetze, einbauplatz, positionen, bauteilpositionen, ' +
    'reperes, repere, repere topologique, reperes topologiques, references topologiques, references, positions carte',
  fitted:
    'fitted, populated, mounted, placed, place, fit, mount, populate, montado, colocado, montar, bestuckt, bestueckt, bestucken, monte, pose, poser',
  notFitted:
    'not fitted, dnp, dnf, dni, dns, do not place, do not fit, do not populate, not placed, not mounted, no pop, nopop, skip, excluded, no montar, ' +
    'no montado, no colocar, nicht bestuckt, nicht bestueckt, nicht bestucken, unbestuckt, nb, non monte, ne pas monter, non pose, ne pas poser',
  note: 'note, notes, comment, comments, remark, remarks, nota, notas, comentario, comentarios, observaciones, bemerkung, bemerkungen, kommentar, hinweis, anmerkung, remarque, remarques, commentaire, commentaires, observation, observations',
};

/** Header words of placement files: English, Spanish, German, French. */
export const placementHeaderWords: HeaderWords<PlacementField> = {
  designator:
    'designator, ref, refdes, ref des, reference designator, reference designators, ref designator, designators, reference, references, component, component reference, circuit reference, part reference, comp ref, name, comp, designador, referencia, ' +
    'bauteilname, bezeichner, referenz, referenzbezeichner, bauteilbezeichner, einbauplatz, position, repere, repere topologique, refdesignator, component name, part id, part name, part, item, location, betriebsmittelkennzeichen',
  part: 'part number, part no, pn, part id, part code, partnumber, part num, item number, item code, material number, component id, component number, house part, house part number, internal part number, internal pn, ipn, stock code, sku, article, article number, part name, part, item, numero de pieza, numero de parte, codigo, articulo, pieza, componente, teilenummer, teile nr, artikelnummer, artikel nr, artikel, sachnummer, materialnummer, identnummer, bauteilnummer, bauteil nr, bauteil, teil, numero de piece, code article, composant, piece, numero d article, reference article, reference composant, reference',
  value:
    'value, val, comment, description, component value, part value, valor, descripcion, wert, bezeichnung, beschreibung, valeur, libelle, designation, type, typ, part type, part description, name, comp value, remark, kommentar, comentario, commentaire',
  device:
    'device, device type, device name, component type, comp type, comp device type, lib ref, libref, library ref, library reference, library part, lib part, libpart, symbol, symbol name, cmp name, schematic symbol, source package',
  package:
    'package, footprint, foot print, case, case size, pattern, shape, decal, part decal, geometry, cell, cell name, land pattern, pcb footprint, package name, package type, footprint name, sym name, comp package, jedec type, encapsulado, huella, gehause, gehaeuse, bauform, boitier, empreinte, footprint description',
  side: 'side, layer, tb, top bottom, top bot, board side, mount side, mounting side, placement side, component side, component layer, pcb side, surface, lado, cara, capa, seite, lage, bestuckseite, bestueckseite, cote, face, couche',
  mirrored: 'mirror, mirrored, mirroring, sym mirror, espejo, gespiegelt, spiegelung, miroir',
  x: 'x, pos x, mid x, center x, centre x, centroid x, ref x, x pos, x position, x coord, x coordinate, x coordinates, x center, x centre, x centroid, x mid, x location, location x, loc x, x loc, sym x, coord x, coordinate x, placement centre x, placement center x, body center x, coordenada x, coord x, posicion x, centro x, x koordinate, position x, mitte x, coordonnee x, x axis, xpos, abscisse',
  y: 'y, pos y, mid y, center y, centre y, centroid y, ref y, y pos, y position, y coord, y coordinate, y coordinates, y center, y centre, y centroid, y mid, y location, location y, loc y, y loc, sym y, coord y, coordinate y, placement centre y, placement center y, body center y, coordenada y, coord y, posicion y, centro y, y koordinate, position y, mitte y, coordonnee y, y axis, ypos, ordonnee',
  place:
    'position, location, coordinates, coordinate, centroid, center, centre, xy, x y, posicion, coordenadas, koordinaten, coordonnees',
  rotation:
    'rotation, rot, rotate, rotated, angle, theta, orientation, orient, rotation deg, rotation degrees, rotation angle, sym rotate, r, a, phi, rotacion, angulo, giro, orientacion, drehung, winkel, drehwinkel, ausrichtung, angle de rotation',
  mount:
    'mount, mount type, mounting type, mounting technology, technology, smd, smt, smd tht, mount method, type, montageart, tipo de montaje, type de montage',
  note: 'note, notes, remarks, comments, remark, comment, status, description, part description, footprint description, desc, nota, notas, comentario, comentarios, observaciones, descripcion, bemerkung, bemerkungen, kommentar, anmerkung, hinweis, beschreibung, bezeichnung, remarque, remarques, commentaire, libelle, designation',
  fitted: `${sheetHeaderWords.fitted}, populated, installed, install, assemble, assembled, stuffed, stuff, load, loaded, include, included, bestuckung, bestueckung, montaje, montage`,
  notFitted: `${sheetHeaderWords.notFitted}, no stuff, no load, no fit, not populated, not installed, do not mount, do not install, do not assemble, exclude, exclude from bom, exclude from position files, nicht montiert`,
};

/** What each field is called in a message to a person. */
export const sheetFieldNames: Readonly<Record<SheetField, string>> = {
  slot: 'slot',
  machine: 'machine',
  bank: 'bank',
  number: 'slot number',
  part: 'part',
  perPanel: 'placements per panel',
  tapeWidth: 'tape width',
  pitch: 'pitch',
  sharing: 'sharing among slots',
  alternates: 'alternates',
  supplierParts: 'supplier parts',
  description: 'description',
  package: 'package',
  pins: 'pins',
  bodySize: 'body size',
  bodyThickness: 'body thickness',
  msl: 'moisture sensitivity level',
  polarity: 'polarity',
  feederType: 'feeder type',
  drive: 'feeder drive',
  pocket: 'pocket depth',
  critical: 'critical',
  positions: 'positions taken',
  side: 'side',
  designators: 'reference designators',
  fitted: 'fitted',
  notFitted: 'not fitted',
  note: 'note',
};

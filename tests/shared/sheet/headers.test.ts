import { describe, expect, it } from 'vitest';
import {
  type PlacementField,
  placementHeaderWords,
  type SheetField,
  sheetFieldNames,
  sheetFields,
  sheetHeaderWords,
} from '../../../shared/sheet/fields.ts';
import { guessColumns, reduceHeader, scoreHeaderRow } from '../../../shared/sheet/headers.ts';

function fieldsOf(headers: readonly string[]) {
  return guessColumns([headers], sheetHeaderWords).columns.map((column) => column.field);
}

describe('reduceHeader()', () => {
  it.each([
    ['Pitch (mm)', 'pitch'],
    ['Gurtbreite [mm]', 'gurtbreite'],
    ['TapeWidth_mm', 'tape width'],
    ['PART_NO.', 'part no'],
    ['Part #', 'part no'],
    ['Qty/Panel', 'qty panel'],
    ['Número de pieza', 'numero de pieza'],
    ['Größe', 'grosse'],
    ['  ', ''],
  ])('reduces %j to %j', (header, wanted) => {
    expect(reduceHeader(header)).toBe(wanted);
  });
});

describe('guessColumns()', () => {
  it.each<{ headers: string[]; wanted: (SheetField | null)[]; reason: string }>([
    {
      headers: [
        'Slot',
        'Part Number',
        'Supplier Part Number',
        'Alternate Part Number',
        'Qty',
        'Tape Width',
        'Pitch',
      ],
      wanted: ['slot', 'part', 'supplierParts', 'alternates', 'perPanel', 'tapeWidth', 'pitch'],
      reason: 'longer phrases before shorter ones',
    },
    {
      headers: ['Machine', 'Bank', 'Slot No.', 'Component', 'Placements per panel', 'Width', 'Feed pitch'],
      wanted: ['machine', 'bank', 'number', 'part', 'perPanel', 'tapeWidth', 'pitch'],
      reason: 'address in three columns',
    },
    {
      headers: [
        'SLOT_ID',
        'PART_NO',
        'QTY_PER_PANEL',
        'TAPE_WIDTH',
        'TAPE_PITCH',
        'ALT_1',
        'ALT_2',
        'MPN 1',
        'MPN 2',
      ],
      wanted: [
        'slot',
        'part',
        'perPanel',
        'tapeWidth',
        'pitch',
        'alternates',
        'alternates',
        'supplierParts',
        'supplierParts',
      ],
      reason: 'underscores, and several columns of one field',
    },
    {
      headers: ['slotAddress', 'partNumber', 'perPanel', 'tapeWidth', 'pitch', 'bodyThickness', 'refDes'],
      wanted: ['slot', 'part', 'perPanel', 'tapeWidth', 'pitch', 'bodyThickness', 'designators'],
      reason: 'words run together with capitals',
    },
    {
      headers: [
        'Platz',
        'Artikelnummer',
        'Bezeichnung',
        'Anzahl je Nutzen',
        'Gurtbreite',
        'Vorschub',
        'Alternativen',
        'Bemerkung',
      ],
      wanted: ['slot', 'part', 'description', 'perPanel', 'tapeWidth', 'pitch', 'alternates', 'note'],
      reason: 'German',
    },
    {
      headers: [
        'Máquina',
        'Ubicación',
        'Código',
        'Descripción',
        'Cantidad',
        'Ancho (mm)',
        'Avance (mm)',
        'Sustitutos',
        'Observaciones',
      ],
      wanted: [
        'machine',
        'slot',
        'part',
        'description',
        'perPanel',
        'tapeWidth',
        'pitch',
        'alternates',
        'note',
      ],
      reason: 'Spanish',
    },
    {
      headers: [
        'Emplacement',
        'Code article',
        'Libellé',
        'Qté',
        'Largeur (mm)',
        "Pas d'avance",
        'Remplacements',
        'Repères',
        'Remarques',
      ],
      wanted: [
        'slot',
        'part',
        'description',
        'perPanel',
        'tapeWidth',
        'pitch',
        'alternates',
        'designators',
        'note',
      ],
      reason: 'French',
    },
    {
      headers: ['Slot', 'Part', 'Reference', 'Qty'],
      wanted: ['slot', 'part', null, 'perPanel'],
      reason: '"Reference" is the part only where no better column is',
    },
    {
      headers: ['Slot', 'Reference', 'Qty'],
      wanted: ['slot', 'part', 'perPanel'],
      reason: '"Reference" alone',
    },
    {
      headers: ['No.', 'Slot', 'Part', 'Manufacturer', 'Tape type', 'Reel quantity', 'Qty'],
      wanted: ['number', 'slot', 'part', null, null, null, 'perPanel'],
      reason: 'words that hold a field word and name none',
    },
  ])('takes each column for what it is: $reason', ({ headers, wanted }) => {
    expect(fieldsOf(headers)).toEqual(wanted);
  });

  it('finds the header below title lines and above rows', () => {
    const rows = [['Brae Works'], ['Side', 'Top'], [], ['Slot', 'Part', 'Qty'], ['M1-F-001', 'A', 1]];
    expect(guessColumns(rows, sheetHeaderWords).headerRow).toBe(4);
  });

  it('takes the row of most cells where no word is known', () => {
    expect(guessColumns([['title'], ['u', 'v', 'w'], [1, 2, 3]], sheetHeaderWords)).toMatchObject({
      headerRow: 2,
      columns: [{ field: null }, { field: null }, { field: null }],
    });
  });

  it('gives no column for no rows', () => {
    expect(guessColumns([], sheetHeaderWords)).toMatchObject({ headerRow: 1, columns: [] });
  });

  it.each<[string[], (PlacementField | null)[]]>([
    [
      ['Designator', 'Comment', 'Layer', 'Footprint', 'Center-X(mm)', 'Center-Y(mm)', 'Rotation'],
      ['designator', 'value', 'side', 'package', 'x', 'y', 'rotation'],
    ],
    [
      ['Ref', 'Val', 'Package', 'PosX', 'PosY', 'Rot', 'Side'],
      ['designator', 'value', 'package', 'x', 'y', 'rotation', 'side'],
    ],
    [
      ['RefDes', 'Part Number', 'Value', 'X (mm)', 'Y (mm)', 'Angle', 'TB'],
      ['designator', 'part', 'value', 'x', 'y', 'rotation', 'side'],
    ],
    [
      ['Bauteilname', 'Artikelnummer', 'X-Koordinate', 'Y-Koordinate', 'Winkel', 'Seite'],
      ['designator', 'part', 'x', 'y', 'rotation', 'side'],
    ],
  ])('takes the columns of a placement file %j', (headers, wanted) => {
    expect(guessColumns([headers], placementHeaderWords).columns.map((column) => column.field)).toEqual(
      wanted,
    );
  });
});

describe('sheetHeaderWords', () => {
  it.each(sheetFields)('knows the field %s by its own name', (field) => {
    expect(sheetFieldNames[field]).not.toBe('');
    expect(fieldsOf([field])).toEqual([field]);
  });

  it('holds only phrases that a header can be reduced to', () => {
    for (const words of [sheetHeaderWords, placementHeaderWords]) {
      for (const phrase of Object.values(words).flatMap((list) => list.split(','))) {
        expect(reduceHeader(phrase)).toBe(phrase.trim());
      }
    }
  });
});

describe('scoreHeaderRow()', () => {
  it('counts a field once and a row of values not at all', () => {
    expect(scoreHeaderRow(['Slot', 'Slot', 'Part'], sheetHeaderWords)).toBe(2);
    expect(scoreHeaderRow(['M1-F-001', 'BW-10023', '24', 8], sheetHeaderWords)).toBe(0);
  });
});

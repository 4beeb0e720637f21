// A sheet's packages as the parts list takes them in: of moisture-sensitive parts alone, over what was known.

import { expect, test } from 'vitest';
import type { PartFacts } from '../../../shared/floor/moisture-rules.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { describedParts } from '../../../shared/sheet/taken-parts.ts';
import { textToRows } from '../../../shared/sheet/text.ts';

const headers = [
  'Slot,Part,Qty,Tape width,Pitch,Package,Pin count,Body size (mm),MSL',
  'Ranura,Pieza,Cantidad,Ancho de cinta,Paso,Encapsulado,Numero de pines,Tamaño del cuerpo,Nivel MSL',
  'Steckplatz,Teilenummer,Menge,Gurtbreite,Teilung,Gehäuse,Pinzahl,Gehäusegröße,MSL-Stufe',
  'Emplacement,Référence composant,Quantité,Largeur de bande,Pas,Boîtier,Nombre de broches,Dimensions du corps,Niveau MSL',
];
const rows = [
  'M1-F-001,U-1,1,24,16,LFBGA,256,17 x 17,3',
  'M1-F-004,R-1,4,8,4,0603,,,',
  'M1-F-005,U-2,1,12,8,house 7,,,2a',
];
const read = (header: string, body: readonly string[] = rows) =>
  readSheet(textToRows([header, ...body].join('\n').replaceAll(', ', ' ')).rows);

const known: PartFacts = {
  part: 'U-1',
  family: 'qfn',
  pins: 48,
  bodyMm: 0.9,
  bodyXMm: 7,
  bodyYMm: 7,
  isStacked: false,
  msl: null,
  source: 'by hand',
};

test.each(headers)('reads package, pins and body under %s', (header) => {
  const { slots, problems } = read(header);
  expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(slots[0]).toMatchObject({ package: 'LFBGA', pins: 256, bodySizeMm: [17, 17], msl: '3' });
});

test('describes moisture-sensitive parts whose package it states', () => {
  const { slots } = read(headers[0] ?? '');
  expect(describedParts(slots, new Map(), 'x.csv')).toEqual([
    {
      part: 'U-1',
      family: 'bga',
      pins: 256,
      bodyXMm: 17,
      bodyYMm: 17,
      bodyMm: null,
      isStacked: null,
      msl: null,
      source: 'x.csv',
    },
  ]);
});

test('what it leaves out stays as it was, and what it does not change is not told again', () => {
  const [first = ''] = headers;
  const bare = read(first, ['M1-F-001,U-1,1,24,16,BGA,,,3']).slots;
  expect(describedParts(bare, new Map([['U-1', known]]))).toMatchObject([
    { family: 'bga', pins: 48, bodyMm: 0.9, bodyXMm: 7, isStacked: false },
  ]);
  const same = read(first, ['M1-F-001,U-1,1,24,16,QFN-48 7x7,,,3']).slots;
  expect(describedParts(same, new Map([['U-1', known]]))).toEqual([]);
});

test('what cannot be read is said and left out', () => {
  const { slots, problems } = read(headers[0] ?? '', ['M1-F-001,U-1,1,24,16,BGA,many,17,3']);
  expect(problems.map(({ code }) => code)).toEqual(
    expect.arrayContaining(['pinsUnreadable', 'bodySizeUnreadable']),
  );
  expect(slots[0]).toMatchObject({ pins: null, bodySizeMm: null });
});

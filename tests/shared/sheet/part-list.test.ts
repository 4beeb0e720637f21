// The plant's list of parts out of tables as plants write them: header words of four languages (part-fields.ts), DIN 6771-2 words among them.

import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { listedPartSchema } from '../../../shared/floor/kinds-parts.ts';
import { parseComesIn } from '../../../shared/sheet/cells.ts';
import { parseMonths, readPartList } from '../../../shared/sheet/part-list.ts';
import { textToRows } from '../../../shared/sheet/text.ts';

const read = (text: string) => readPartList(textToRows(text).rows);
const codes = (text: string) => read(text).problems.map(({ code, row }) => `${row} ${code}`);

describe('tolerances without their per cent', () => {
  const tolerances = (header: string, cells: readonly (number | string)[]) =>
    readPartList([['Part', header], ...cells.map((cell, at) => [`R-${at}`, cell])]).parts.map(
      ({ part }) => part.tolerance,
    );

  const told = (header: string, ...cells: readonly (number | string)[]) =>
    readPartList([['Part', header], ...cells.map((cell, at) => [`R-${at}`, cell])]).problems.map(
      ({ code, row, column }) => `${row} ${column} ${code}`,
    );

  test('are per cents where one is 1 or more or the header says so; else nobody can tell, and they are left out and told once', () => {
    for (const cells of [
      [0.01, 0.05, 0.001],
      [0.1, 0.25],
      [0.01, 0.05, 0.8],
      ['0.1', '0,25'],
    ]) {
      expect(tolerances('Tol', cells)).toEqual(cells.map(() => null));
      expect(told('Tol', ...cells)).toEqual(['1 Tol listToleranceUnclear']);
    }
    expect(tolerances('Tol', [0.1, 1, 5])).toEqual(['0.1 %', '1 %', '5 %']);
    expect(told('Tol', 0.1, 1, 5)).toEqual([]);
    expect(tolerances('Tol %', [0.1, 0.25])).toEqual(['0.1 %', '0.25 %']);
    expect(tolerances('Tolerance percent', [0.1])).toEqual(['0.1 %']);
    expect(tolerances('Tol', ['±1 %', 0.05])).toEqual(['±1 %', null]);
    expect(tolerances('Tol', ['±1 %', 0])).toEqual(['±1 %', '0 %']);
  });
});

describe('makers', () => {
  test('for many products fit the shape of an entry, and a product that is too long is cut and told', () => {
    const numbers = Array.from({ length: 30 }, (_, at) => `NUMBER-${at}`).join('; ');
    const products = ['x'.repeat(250), ...Array.from({ length: 20 }, (_, at) => `Lamp ${at}`)].join('; ');
    const { parts, problems } = readPartList([
      ['Part', 'MPN', 'For product'],
      ['R-1', numbers, products],
    ]);
    expect(z.safeParse(listedPartSchema, parts[0]?.part).success).toBe(true);
    expect(problems.map(({ code, column }) => [code, column])).toEqual([['textCut', 'For product']]);
  });
});

describe('a list of parts', () => {
  test('says of each part what its columns say, in English', () => {
    const [first, second] = read(
      [
        'Part number,Description,Value,Tol,Package,Thickness,MSL,Packing,Tape width,Pitch,MPN,Age limit,Orientation',
        'U-1,Controller,,,LQFP-64 10x10,1.4,3,Tray,,,ABC-64T,24,Pin 1 top left',
        'R-1,Resistor,4k7,1 %,0402,,1,T&R,8,2,ZR-4701; OKR-4701,2 years,',
      ].join('\n'),
    ).parts.map(({ part }) => part);
    expect(first).toMatchObject({
      part: 'U-1',
      description: 'Controller',
      package: 'LQFP-64 10x10',
      family: 'lqfp',
      pins: 64,
      bodyMm: 1.4,
      bodyXMm: 10,
      bodyYMm: 10,
      msl: '3',
      comesIn: 'tray',
      tapeWidthMm: null,
      ageMonths: 24,
      orientation: 'Pin 1 top left',
      makers: [{ supplierPart: 'ABC-64T', product: null }],
    });
    expect(second).toMatchObject({
      value: '4k7',
      tolerance: '1 %',
      family: 'chip',
      comesIn: 'tape',
      tapeWidthMm: 8,
      pitchMm: 2,
      ageMonths: 24,
      makers: [
        { supplierPart: 'ZR-4701', product: null },
        { supplierPart: 'OKR-4701', product: null },
      ],
    });
  });

  test.each([
    ['de', 'Sachnummer;Benennung;Wert;Toleranz;Bauform;Feuchteklasse;Verpackung;Gurtbreite;Höchstalter'],
    [
      'es',
      'Numero de pieza;Descripción;Valor;Tolerancia;Encapsulado;Nivel MSL;Embalaje;Ancho de cinta;Edad máxima',
    ],
    [
      'fr',
      'Référence;Libellé;Valeur;Tolérance;Boîtier;Niveau MSL;Conditionnement;Largeur de bande;Âge maximal',
    ],
  ])('is read under the headers of %s', (_, header) => {
    const { parts, problems } = read(`${header}\nR-1;Widerstand;4,7 kΩ;1;0402;2a;Gurt;8;18`);
    expect(problems).toEqual([]);
    expect(parts[0]?.part).toMatchObject({
      part: 'R-1',
      description: 'Widerstand',
      value: '4,7 kΩ',
      tolerance: '1 %',
      package: '0402',
      msl: '2a',
      comesIn: 'tape',
      tapeWidthMm: 8,
      ageMonths: 18,
    });
  });

  test('adds the makers of several rows of one part, each for its product', () => {
    const { parts, problems } = read(
      ['Part;MPN;For product;Package', 'C-1;AA-1;Lamp, Clock;0603', 'C-1;BB-1;;', 'C-1;AA-1;Lamp;0603'].join(
        '\n',
      ),
    );
    expect(parts).toHaveLength(1);
    expect(parts[0]?.part.makers).toEqual([
      { supplierPart: 'AA-1', product: 'Lamp' },
      { supplierPart: 'AA-1', product: 'Clock' },
      { supplierPart: 'BB-1', product: null },
    ]);
    expect(problems).toEqual([]);
  });

  test('tells two rows of one part that differ; the first counts', () => {
    const text = 'Part;Package;MSL\nU-1;LQFP-64;3\nU-1;LQFP-64;4';
    expect(codes(text)).toEqual(['3 partDiffers']);
    expect(read(text).parts[0]?.part.msl).toBe('3');
  });

  test('tells what it cannot read, by row and column, and leaves that out alone', () => {
    const text = 'Part;MSL;Tape width;Pitch;Packing;Age limit;Pins\nU-1;9;7;x;barrel;soon;many';
    expect(codes(text).sort()).toEqual(
      [
        '2 listAgeUnreadable',
        '2 listPackingUnknown',
        '2 mslUnknown',
        '2 pinsUnreadable',
        '2 pitchUnreadable',
        '2 widthUnknown',
      ].sort(),
    );
    expect(read(text).parts[0]?.part).toMatchObject({
      part: 'U-1',
      msl: null,
      tapeWidthMm: null,
      pins: null,
    });
    expect(read(text).problems.find(({ code }) => code === 'mslUnknown')?.column).toBe('MSL');
  });

  test('a row without a part number is an error; a list without such a column asks for it', () => {
    expect(codes('Part;Package\n;0402\nR-1;0402')).toEqual(['2 listPartEmpty']);
    expect(codes('Package;Value\n0402;10k')).toContain('1 columnMissing');
    expect(
      readPartList(
        [
          ['Zahl', 'Package'],
          ['R-1', '0402'],
        ],
        { columns: { part: 'Zahl' } },
      ).parts,
    ).toHaveLength(1);
  });

  test('tray or tube where a tape width is asked is how the part comes', () => {
    expect(
      read('Part;Tape width\nU-1;Tray\nR-1;8x4').parts.map(({ part }) => [
        part.comesIn,
        part.tapeWidthMm,
        part.pitchMm,
      ]),
    ).toEqual([
      ['tray', null, null],
      ['tape', 8, 4],
    ]);
  });
});

test.each([
  ['Cut tape', 'cut-tape'],
  ['T&R', 'tape'],
  ['Stange', 'tube'],
  ['a granel', 'bulk'],
  ['en vrac', 'bulk'],
  ['Tape and reel', 'tape'],
  ['tape, cut', 'tape'],
  ['granel', 'bulk'],
  ['Plateau', 'tray'],
  ['Bandeja', 'tray'],
  ['bande', 'tape'],
  ['box', null],
])('packing %s is %s', (text, kind) => expect(parseComesIn(text)).toBe(kind));

test.each([
  ['24', 24],
  ['18 months', 18],
  ['2 Jahre', 24],
  ['1,5 ans', 18],
  ['0', null],
  ['2 weeks', null],
])('age %s is %s months', (text, months) => expect(parseMonths(text)).toBe(months));

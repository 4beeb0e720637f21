// Placement files as programs write them. The layouts are those of published descriptions and of lists as they are handed to assembly houses; all
// data is invented. Where a layout follows a published description, its source stands beside it.

import { describe, expect, it } from 'vitest';
import { type PlacementReading, readPlacements } from '../../../shared/sheet/placements.ts';

const shown = (reading: PlacementReading) => ({
  parts: reading.parts.map(({ part, top, bottom }) => `${part} ${top}/${bottom}`),
  left: reading.leftOut.map(({ placement, reason }) => `${placement.designator} ${reason}`),
  problems: reading.problems.map(({ code, row }) => `${code} ${row}`),
});

describe('readPlacements() of layouts that programs write', () => {
  it('reads fixed columns of blanks whose rows reach over them, units and sides in comment lines', () => {
    // "Ref Val Package PosX PosY Rot Side" between lines of # : https://docs.kicad.org (position files, ASCII).
    const text = [
      '### Footprint positions ###',
      '## Unit = mm, Angle = deg.',
      '## Side : All',
      '# Ref     Val                       Package                 PosX       PosY       Rot  Side',
      'C1        100nF                     C_0603_1608Metric   100.3000   -50.8000   90.0000  top',
      'C2        100nF                     C_0603_1608Metric   110.3000   -50.8000   90.0000  bottom',
      'FID1      Fiducial                  Fiducial_1mm          1.3000    -1.8000    0.0000  top',
      'H1        MountingHole              MountingHole_3.2mm    5.3000    -5.8000    0.0000  top',
      'J1        a_very_long_name_of_a_connector_that_reaches_over Header_1x04  120.0000   -70.0000  180.0000  bottom',
      'TP1       TestPoint                 TestPoint_Pad_D1.0mm  140.0000   -50.0000    0.0000  top',
      '## End',
    ].join('\n');
    expect(shown(readPlacements(text))).toEqual({
      parts: ['100nF 1/1', 'a_very_long_name_of_a_connector_that_reaches_over 0/1'],
      left: ['FID1 fiducial', 'H1 hole', 'TP1 testPoint'],
      problems: [],
    });
  });

  it('reads a separated list below a title, in mils, and turns coordinates into mm', () => {
    // "Designator, Comment, Layer, Footprint, Center-X(mil), …" with "Units used: mil" above: common practice.
    const text = [
      'Pick and Place Locations',
      'C:\\boards\\heather.csv',
      '',
      '=====================================',
      'Date:       05/12/25',
      'Units used: mil',
      '',
      '"Designator","Comment","Layer","Footprint","Center-X(mil)","Center-Y(mil)","Rotation","Description"',
      '"C1","100nF","TopLayer","CAPC1608","1000.000","2000.000","90","Capacitor, 16V"',
      '"R1","10k","BottomLayer","RESC1608","1200.000","2000.000","0","Resistor, 1%"',
    ].join('\n');
    const reading = readPlacements(text);
    expect(shown(reading)).toEqual({ parts: ['100nF 1/0', '10k 0/1'], left: [], problems: [] });
    expect(reading.placements[0]).toMatchObject({ x: 25.4, y: 50.8, rotation: 90 });
  });

  it('reads columns aligned to the right, an empty cell and a value of two words among them', () => {
    const text = [
      'Designator Footprint       Mid X       Mid Y       Ref X       Ref Y TB  Rotation Comment',
      'C1         0603          45.72mm      32.1mm     45.72mm      32.1mm  T     90.00 100nF 16V',
      'C2         0603         145.72mm      32.1mm    145.72mm      32.1mm  B    270.00 100nF 16V',
      'U1         QFN-32        15.72mm      12.1mm     15.72mm      12.1mm  T      0.00 ',
    ].join('\n');
    expect(shown(readPlacements(text))).toEqual({
      parts: ['100nF 16V 1/1'],
      left: ['U1 noPart'],
      problems: ['placementPartMissing 4'],
    });
  });

  it('reads lines without a header whose value may be missing', () => {
    // Name, x, y, angle, value, package, one blank between: common practice.
    const text = [
      'C1 10.16 20.32  90 100n C0603',
      'C12 11.16 20.32   0 100n C0603',
      'FID1  1.00  1.00   0  FIDUCIAL',
      'IC1 15.24 25.40 180 MCU-X100 TQFP32',
      'R1 12.70 25.40 270 10 k R0603',
    ].join('\n');
    expect(shown(readPlacements(text, { fileName: 'heather-bottom.txt' }))).toEqual({
      parts: ['100n 0/2', 'MCU-X100 0/1', '10 k 0/1'],
      left: ['FID1 fiducial'],
      problems: ['headerGuessed null', 'placementSideFromName null'],
    });
  });

  it('reads separated lines without a header: designators, numbers, sides, packages by their look', () => {
    const text =
      'top;R0603;10k;R1;12,7;25,4;270\ntop;R0603;10k;R2;13,7;25,4;270\nbottom;C0603;100n;C1;10,1;20,3;90\n';
    expect(shown(readPlacements(text))).toEqual({
      parts: ['10k 2/0', '100n 0/1'],
      left: [],
      problems: ['headerGuessed null'],
    });
  });

  it('reads a mirror mark in a column that is empty for the top side', () => {
    const text = [
      'C101       1234.50    567.80    90.0   m   cap0603    0.1uF',
      'R101       2234.50    567.80     0.0       res0603    10k',
      'U101       3234.50   1567.80   270.0       qfp48      mcu x100',
    ].join('\n');
    expect(shown(readPlacements(text)).parts).toEqual(['0.1uF 0/1', '10k 1/0', 'mcu x100 1/0']);
  });

  it('reads a header behind "Fields:", numbers with a plus sign and a part id that is a designator', () => {
    const text = [
      'PICK AND PLACE FILE',
      '===================',
      'Fields: Part ID, Value, Package, Layer, Rotation, X, Y',
      'Units: Rotation - degrees, X, Y - thou',
      '',
      '"C1","100n","CAP10",TOP,0,+1250,+300',
      '"R1","10k","RES40",BOTTOM,90,+1450,+300',
    ].join('\n');
    expect(shown(readPlacements(text))).toEqual({ parts: ['100n 1/0', '10k 0/1'], left: [], problems: [] });
  });

  it('reads a header written as a comment, other comments staying comments', () => {
    // "# RefDes, Description, Value, X, Y, rotation, top/bottom": http://pcb.geda-project.org (xy files).
    const text = [
      '# Version 1.0',
      '# RefDes, Description, Value, X, Y, rotation, top/bottom',
      '# X,Y in mils.  rotation in degrees.',
      '# C9, SMD_0603, not a row, 1, 1, 0, top',
      'C1,"SMD_0603","100nF",1000.00,4500.00,90,top',
      'R1,"SMD_0603","10k",1430.00,4500.00,0,bottom',
    ].join('\n');
    const reading = readPlacements(text);
    expect(shown(reading)).toEqual({ parts: ['100nF 1/0', '10k 0/1'], left: [], problems: [] });
    expect(reading.placements[0]?.x).toBe(25.4);
  });

  it('takes a mirrored angle for the bottom, both coordinates out of one cell, and no library for a part', () => {
    const text = [
      'Part     Value          Package      Library      Position (mil)        Orientation',
      '',
      'C1       100n           C0603        rcl          (1250 300)            R90',
      'C2       100n           C0603        rcl          (1350 300)            MR90',
      'X1                      CON4         con          (2450 300)            MR180',
    ].join('\n');
    const reading = readPlacements(text);
    expect(shown(reading)).toEqual({
      parts: ['100n 1/1'],
      left: ['X1 noPart'],
      problems: ['placementPartMissing 5'],
    });
    expect(reading.placements[1]).toMatchObject({ x: 34.29, y: 7.62, rotation: 90 });
  });

  it('reads cells between exclamation marks with a line of units above', () => {
    const text = [
      'UUNITS = MILS',
      '! REFDES ! SYM_X ! SYM_Y ! SYM_ROTATE ! SYM_MIRROR ! SYM_NAME ! COMP_DEVICE_TYPE ! COMP_VALUE !',
      '! C1 ! 1200.00 ! 3400.00 ! 90.000 ! NO ! CAP_0603 ! CAP_NP ! 0.1UF !',
      '! C2 ! 1300.00 ! 3400.00 ! 90.000 ! YES ! CAP_0603 ! CAP_NP ! 0.1UF !',
    ].join('\n');
    expect(shown(readPlacements(text))).toEqual({ parts: ['0.1UF 1/1'], left: [], problems: [] });
  });

  it('never prefers a device name out of a library to the value', () => {
    const text =
      'Name,Device,Value,Package,X,Y,Side\nR1,R-EU_R0603,10k,R0603,1,1,top\nR2,R-EU_R0603,4k7,R0603,2,1,top\n';
    expect(shown(readPlacements(text)).parts).toEqual(['10k 1/0', '4k7 1/0']);
  });

  it('takes the values where a column headed as part has one name for several of them', () => {
    const text =
      'RefDes,Part,Value,X,Y,Side\nR1,RESISTOR,10k,1,1,T\nR2,RESISTOR,4k7,2,1,T\nC1,CAP,100n,3,1,T\nC2,CAP,1u,4,1,T\n';
    const reading = readPlacements(text);
    expect(shown(reading).parts).toEqual(['10k 1/0', '4k7 1/0', '100n 1/0', '1u 1/0']);
    expect(reading.problems).toMatchObject([{ code: 'genericParts', column: 'Part' }]);
  });

  it('leaves out what is put through holes, and says so', () => {
    const text =
      'Designator,Value,Package,X,Y,Side,Type\nR1,10k,R0603,1,1,Top,SMT\nJ1,CONN,HDR4,2,1,Top,THT\nF1,x,f,3,1,Top,SMT\n';
    expect(shown(readPlacements(text))).toMatchObject({
      left: ['J1 throughHole'],
      problems: ['throughHole 3'],
    });
  });

  it('takes the side from headings between the rows', () => {
    const text = 'Ref,Part,X,Y\nTop side,,,\nR1,A,1,1\nBOTTOM SIDE,,,\nR2,A,2,1\n';
    expect(shown(readPlacements(text))).toEqual({ parts: ['A 1/1'], left: [], problems: [] });
  });

  it('reads a header of two rows', () => {
    const text = ',,Location,,Mounting\nRef,Value,X,Y,Side\nC1,100nF,1,2,Top\nC2,100nF,2,2,Bottom\n';
    expect(shown(readPlacements(text))).toEqual({ parts: ['100nF 1/1'], left: [], problems: [] });
  });

  it('counts no totals, ends of lists, repeated headers and units below the header', () => {
    const text = [
      'Ref;Part;X;Y;Side',
      ';;mm;mm;',
      'R1;A;1;1;T',
      'Ref;Part;X;Y;Side',
      'R2;A;2;1;T',
      'Total;2;;;',
      '2 components;;;;',
    ].join('\n');
    expect(shown(readPlacements(text))).toEqual({ parts: ['A 2/0'], left: [], problems: [] });
  });

  it('takes a column headed as part for designators where it holds them, and refuses it where nothing else names a part', () => {
    const rows = [1, 2, 3, 4, 5].map((at) => `R${at},10k,${at},1,T`).join('\n');
    expect(shown(readPlacements(`Part,Value,X,Y,Side\n${rows}\n`)).parts).toEqual(['10k 5/0']);
    const bare = [1, 2, 3, 4, 5].map((at) => `R${at},${at},1,T`).join('\n');
    const refused = readPlacements(`Part Number,X,Y,Side\n${bare}\n`);
    expect(refused.placements).toEqual([]);
    expect(refused.problems).toMatchObject([
      { code: 'columnByLook' },
      { code: 'partsAreDesignators', severity: 'error', column: 'Part Number' },
    ]);
  });

  it('finds columns whose headers are in no language that it knows', () => {
    const text =
      '位号,数值,封装,X坐标,Y坐标,角度,层\nC1,100nF,C0603,10.5,20.5,90,T\nC2,10uF,C0805,11.5,20.5,90,B\nR1,10k,R0603,12.5,20.5,0,T\n';
    const reading = readPlacements(text);
    expect(shown(reading).parts).toEqual(['100nF 1/0', '10uF 0/1', '10k 1/0']);
    expect(new Set(reading.problems.map(({ code }) => code))).toEqual(new Set(['columnByLook']));
  });
});

describe('readPlacements(): what does not add up', () => {
  it('tells a value in two packages apart, and a value without one', () => {
    const text =
      'Ref,Value,Package,Side\nR1,10k,R0603,top\nR2,10k,R0805,top\nR3,10k,R0603,top\nR4,10k,,top\n';
    const reading = readPlacements(text);
    expect(shown(reading).parts).toEqual(['10k R0603 2/0', '10k R0805 1/0', '10k 1/0']);
    expect(reading.problems).toMatchObject([
      { row: 3, column: 'Package', code: 'valueInPackages' },
      { row: 5, column: 'Package', code: 'valueWithoutPackage' },
    ]);
  });

  it('keeps one part number in two packages together, and says so', () => {
    const text = 'Ref,Part,Package,Side\nR1,BW-1,R0603,top\nR2,BW-1,R0805,top\n';
    const reading = readPlacements(text);
    expect(shown(reading).parts).toEqual(['BW-1 2/0']);
    expect(reading.problems).toMatchObject([
      { row: 3, column: 'Package', code: 'partInPackages', facts: { first: 2 } },
    ]);
  });

  it('counts a designator once that stands at two places, where the others stand once', () => {
    const text = 'Ref,Part,X,Y,Side\nR1,A,1,1,T\nR2,A,2,1,T\nR3,A,3,1,T\nR1,A,9,9,T\n';
    const reading = readPlacements(text);
    expect(shown(reading).parts).toEqual(['A 3/0']);
    expect(reading.problems).toMatchObject([
      { row: 5, column: 'Ref', code: 'designatorTwice', severity: 'error' },
    ]);
  });

  it('counts every board of a file that holds a panel, and tells what one of them lacks', () => {
    const boards = [0, 50, 100].flatMap((x) => [`R1,A,${x},1,T`, `R2,A,${x},2,T`, `C1,B,${x},3,T`]);
    const reading = readPlacements(`Ref,Part,X,Y,Side\n${boards.slice(0, -1).join('\n')}\n`);
    expect(reading.boards).toBe(3);
    expect(shown(reading)).toMatchObject({ parts: ['A 6/0', 'B 2/0'], problems: ['designatorSeldom 4'] });
  });

  it('tells a row that has more cells than the header, as a comma in a number makes it', () => {
    const reading = readPlacements('Ref,Part,X,Y,Side\nR1,A,12,5,8,T\nR2,A,1,1,T\n');
    expect(reading.problems).toMatchObject([{ row: 2, code: 'rowTooLong', severity: 'error' }, {}]);
  });

  it.each([
    ['Ref,Part,Side,Fitted\nR1,A,T,x\nR2,A,T,\n', ['R2 notFitted']],
    ['Ref,Part,Side,Populate\nR1,A,T,1\nR2,A,T,0\n', ['R2 notFitted']],
    ['Ref,Part,Side,DNP\nR1,A,T,\nR2,A,T,X\n', ['R2 notFitted']],
    ['Ref,Value,Side\nR1,10k,T\nR2,10k DNP,T\nR3,10k (not fitted),T\n', ['R2 notFitted', 'R3 notFitted']],
    ['Ref,Part,Side,Remarks\nR1,A,T,\nR2,A,T,Do not populate\n', ['R2 notFitted']],
    ['Ref,Part,Side,Montado\nR1,A,T,sí\nR2,A,T,no\n', ['R2 notFitted']],
  ])('reads the marks of what is not fitted in %j', (text, left) => {
    expect(shown(readPlacements(text))).toMatchObject({ parts: [expect.stringMatching(/ 1\/0$/)], left });
  });
});

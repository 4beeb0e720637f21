import { type SheetField, sheetFieldNames } from '../../../../shared/sheet/fields.ts';
import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';

type Facts = SheetProblem['facts'];

const fieldsHu: Readonly<Record<SheetField, string>> = {
  slot: 'hely',
  machine: 'gép',
  bank: 'bank',
  number: 'hely száma',
  part: 'alkatrész',
  perPanel: 'beültetés panelenként',
  tapeWidth: 'szalagszélesség',
  pitch: 'osztás',
  sharing: 'megosztás a helyek közt',
  alternates: 'helyettesítők',
  supplierParts: 'szállítói cikkszámok',
  description: 'leírás',
  package: 'tok',
  pins: 'lábak',
  bodySize: 'testméret',
  bodyThickness: 'testvastagság',
  msl: 'MSL-szint',
  polarity: 'polaritás',
  feederType: 'feedertípus',
  drive: 'feederhajtás',
  pocket: 'zsebmélység',
  critical: 'kritikus',
  positions: 'foglalt férőhely',
  side: 'oldal',
  designators: 'pozíciójelek',
  fitted: 'beültetett',
  notFitted: 'nem beültetett',
  note: 'megjegyzés',
};

const hungarianByEnglish = new Map(
  // The keys of a table by field are its fields.
  (Object.keys(sheetFieldNames) as SheetField[]).map((field) => [sheetFieldNames[field], fieldsHu[field]]),
);

/** Facts that name a field carry its English name. */
function field(name: string | number | undefined): string {
  return hungarianByEnglish.get(String(name)) ?? String(name);
}

/** A side as the file's reader names it. */
function sideHu(side: string | number | undefined): string {
  return side === 'bottom' ? 'alsó oldal' : 'felső oldal';
}

const hu: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    'A fájl nem UTF-8, ezért Windows-1252-ként lett beolvasva. Ellenőrizze az ékezetes betűket, vagy mentse UTF-8-ként.',
  quoteBroken: (f) =>
    `Egy idézőjel nincs lezárva (kezdete: ${f['row']}. sor). Ami utána jön, rossz cellában lehet. Javítsa azt a sort.`,
  rowTooLong: (f) =>
    `A sorban ${f['found']} cella van, a fejlécben ${f['wanted']}. Egy cellában elválasztó lehet: tegye idézőjelbe.`,
  rowUnreadable: (f) =>
    `A sorban ${f['found']} cella van, a fejlécben ${f['wanted']}, és nem illenek össze. Javítsa a sort.`,
  noRows: () => 'A fejléc alatt nincs sor. Exportálja újra a listát a soraival.',
  moreProblems: (f) =>
    `További ${f['count']} probléma nincs felsorolva. Javítsa ezeket, majd olvassa be újra a listát.`,
  moreErrors: (f) =>
    `További ${f['count']} probléma nincs felsorolva, köztük hibák is. Javítsa ezeket, majd olvassa be újra a listát.`,
  columnMissing: (f) =>
    `Nincs oszlop ehhez: ${field(f['wanted'])}. Oszlopok: ${f['headers']}. Válassza ki az oszlopot kézzel.`,
  columnAbsent: (f) =>
    `Nincs oszlop ehhez: ${field(f['wanted'])}. Oszlopok: ${f['headers']}. Válassza ki az oszlopot kézzel, vagy folytassa nélküle.`,
  columnNotFound: (f) =>
    `Ebben a listában nincs „${f['wanted']}” oszlop ehhez: ${field(f['field'])}. Oszlopok: ${f['headers']}. Válassza ki újra az oszlopot.`,
  columnUnknown: (f) =>
    `Nem használt oszlop: „${f['found']}”. Ha a setuphoz kell, válassza ki kézzel, mit tartalmaz.`,
  columnTwice: (f) =>
    `Ez az oszlop is ennek látszik: „${f['found']}”, ${field(f['field'])}. A használt oszlop: „${f['used']}”. Ha a másik kell, válassza ki kézzel.`,
  usagePerBoard: (f) =>
    `Ez az oszlop laponként látszik számolni: „${f['found']}”. Panelenkéntinek számít. Ha egy panelen több lap van, szorozza meg.`,
  slotMissing: (f) => `A hely üres, de a sor alkatrészt nevez meg: ${f['part']}. Töltse ki a helyet.`,
  textTooLong: (f) =>
    `Túl hosszú (${field(f['field'])}): „${f['found']}…”. Legfeljebb ${f['most']} karakter lehet. Rövidítse.`,
  textCut: (f) => `A szöveg hosszabb, mint ${f['most']} karakter. A többi kimarad: rövidítse.`,
  slotUnclear: (f) =>
    `A hely nem M1-F-014 alakú: „${f['found']}”. A szomszédai nem ellenőrizhetők. Úgy marad, ahogy írva van.`,
  slotNumberUnreadable: (f) => `A hely száma nem egész szám 1-től: „${f['found']}”. Javítsa.`,
  partMissing: (f) =>
    `Ezen a helyen nincs cikkszám: ${f['slot']}, de más cellák ki vannak töltve. Töltse ki.`,
  usageUnreadable: (f) => `A panelenkénti beültetés nem egész szám 0-tól: „${f['found']}”. Javítsa.`,
  usageMissing: () =>
    'A panelenkénti beültetés üres: nem tudni, mikor fogy ki ez a hely. Töltse ki, vagy adja hozzá a beültetési fájlt.',
  usageZero: () =>
    'A panelenkénti beültetés 0: a hely fel van rakva, de nem használt. Ha így van, jelölje a sort nem beültetettnek.',
  usageFromDesignators: (f) =>
    `A panelenkénti beültetés üres: a pozíciójelek számítanak, ${f['count']} db. Ellenőrizze, hogy az egész panelre vonatkoznak-e.`,
  designatorsDisagree: (f) =>
    `${f['found']} pozíciójel, de ${f['wanted']} beültetés panelenként. Ellenőrizze, melyik a jó.`,
  widthUnreadable: (f) =>
    `A szalagszélesség nem mm-ben megadott szám: „${f['found']}”. Írjon 8-at vagy 8 mm-t.`,
  widthUnknown: (f) => `${f['found']} mm nem EIA-481 szerinti szalagszélesség (${f['wanted']} mm). Javítsa.`,
  widthMissing: () => 'Nincs szalagszélesség: nem ellenőrizhető, hogy a feeder illik-e. Töltse ki.',
  notTape: (f) => `„${f['found']}” nem szalag: ehhez a helyhez nem lesz szalaghossz és toldási idő.`,
  pitchUnreadable: (f) =>
    `Az osztás nem 0-nál nagyobb, mm-ben megadott szám: „${f['found']}”. Írjon 4-et vagy 4 mm-t.`,
  pitchUnusual: (f) =>
    `Az EIA-481 nem ismer ${f['found']} mm osztást ${f['width']} mm-es szalaghoz, csak ezt: ${f['wanted']} mm. Ellenőrizze; néhány szalag eltér.`,
  pitchMissing: () => 'Nincs osztás: a szalaghosszból nem számítható alkatrész. Töltse ki.',
  positionsUnreadable: (f) => `A foglalt férőhely nem egész szám 1 és 60 között: „${f['found']}”. Javítsa.`,
  pinsUnreadable: (f) => `A lábak száma nem egész szám 1-től: „${f['found']}”; kimarad. Javítsa.`,
  bodySizeUnreadable: (f) =>
    `A testméret nem hossz és szélesség mm-ben: „${f['found']}”; kimarad. Írja így: 17 x 17.`,
  thicknessUnreadable: (f) =>
    `A testvastagság nem 0-nál nagyobb, mm-ben megadott szám: „${f['found']}”; kimarad. Javítsa.`,
  pocketUnreadable: (f) =>
    `A zsebmélység nem 0-nál nagyobb, mm-ben megadott szám: „${f['found']}”; kimarad. Javítsa.`,
  mslUnknown: (f) => `„${f['found']}” nem MSL-szint (1, 2, 2a, 3, 4, 5, 5a, 6), kimarad. Javítsa.`,
  sharingUnknown: (f) =>
    `„${f['found']}” nem mondja meg, hogyan osztoznak a helyek ezen az alkatrészen. Írja be: „split”, ha mindegyik a maga részét ülteti be. Írja be: „in turn”, ha egy adagol, amíg ki nem fogy.`,
  turnUsageDiffers: (f) =>
    `${f['part']} egymás után használt: az adagoló hely mindet beülteti, ${f['wanted']} db. Ebben a sorban ${f['found']} áll. Minden sorba ugyanazt a számot írja.`,
  sideUnknown: (f) => `„${f['found']}” se nem felső, se nem alsó, ezért az oldal kimarad. Javítsa.`,
  flagUnreadable: (f) =>
    `„${f['found']}” se nem igen, se nem nem; így számít: ${f['taken'] === 'yes' ? 'igen' : f['taken'] === 'no' ? 'nem' : f['taken']}. Javítsa.`,
  alternateIsPart: (f) => `${f['part']} itt a saját helyettesítője. Ez kimarad.`,
  slotTwice: (f) =>
    `Ez a hely már szerepel: ${f['slot']}, ${f['first']}. sor, ${f['part']}. Egy helyre egy alkatrész kerül: javítsa az egyik sort.`,
  noRoom: (f) =>
    `${f['slot']}: a feeder ${f['wanted']} férőhelyet foglal. ${f['next']} (${f['nextRow']}. sor) csak ennyivel van odébb: ${f['found']}. Helyezze át az egyiket.`,
  littleRoom: (f) =>
    `${f['slot']}: egy ${f['width']} mm-es feeder általában ${f['wanted']} férőhelyet foglal. ${f['next']} (${f['nextRow']}. sor) csak ennyivel van odébb: ${f['found']}. Ellenőrizze, hogy elfér-e, vagy töltse ki a foglalt férőhelyet.`,
  noApprovedReels: (f) =>
    `${f['part']}: nincs jóváhagyott szállítói cikkszáma, ezért csak a saját cikkszámos címkék mennek át. Töltse ki.`,
  partDiffers: (f) =>
    `${f['part']}: ${field(f['field'])} itt ${f['found']}, másutt ${f['wanted']} (${f['first']}. sor). Ellenőrizze, melyik a jó.`,
  usageDisagrees: (f) =>
    `${f['part']}: panelenként ${f['found']} beültetés a listában, ${f['wanted']} a beültetési fájlban. Ellenőrizze, melyik a jó.`,
  usageRatio: (f) =>
    `A listában minden alkatrésznél ${f['ratio']}× annyi beültetés áll, mint a beültetési fájlban. A fájlban ${f['ratio']} lapból egy lehet: adja meg, hány lap van egy panelben.`,
  usageSplitUnknown: (f) =>
    `${f['part']}: ${f['wanted']} beültetés ${f['found']} helyre, és a beültetési fájl nem mondja meg, melyikre mennyi. Töltse ki a panelenkénti beültetést.`,
  partNotPlaced: (f) =>
    `${f['part']}: van helye, de nincs a beültetési fájlban. Ellenőrizze a cikkszámot mindkettőben.`,
  partWithoutSlot: (f) =>
    `${f['part']}: ${f['found']} beültetés (beültetési fájl, ${f['first']}. sortól), de nincs helye. Adjon neki helyet, vagy jelölje nem beültetettnek.`,
  placementPartMissing: (f) => `Pozíciójel ${f['designator']}: nincs cikkszáma, kimarad. Töltse ki.`,
  placementTwice: (f) =>
    `Pozíciójel ${f['designator']}: ugyanaz a pont már szerepel (${f['first']}. sor). Egyszer számít.`,
  placementSideMissing: () =>
    'A beültetési fájlban nincs oszlop az oldalhoz. Minden beültetés felső oldalnak számít.',
  placementSideUnknown: (f) =>
    `„${f['found']}” se nem felső, se nem alsó, ezért a beültetés felső oldalnak számít. Javítsa.`,
  headerGuessed: (f) =>
    `A fájlnak nincs ismert fejléce. A tartalmuk alapján az oszlopok: ${f['wanted']}. Ellenőrizze őket.`,
  columnByLook: (f) =>
    `A tartalma alapján ez az oszlop: „${f['found']}”, ennek számít: ${field(f['field'])}. Ellenőrizze.`,
  genericParts: (f) =>
    `Ebben az oszlopban egy név több értékhez áll: „${f['found']}”. Fajtákat tartalmaz, nem cikkszámokat. Az értékek számítanak. Ha van cikkszámoszlop, válassza ki kézzel.`,
  partsAreDesignators: (f) =>
    `Ebben az oszlopban pozíciójelek vannak, nem cikkszámok: „${f['found']}”. Válassza ki kézzel a cikkszámok oszlopát.`,
  sheetAdded: (f) =>
    `Ennek a lapnak a sorai is be vannak olvasva, mert ugyanaz a fejlécük: „${f['found']}”. A számozás innen megy tovább: ${f['first']}. sor.`,
  designatorTwice: (f) =>
    `Pozíciójel ${f['designator']}: már szerepel más ponton (${f['first']}. sor). Egyszer számít. Adjon a lap minden alkatrészének külön nevet.`,
  designatorSeldom: (f) =>
    `Pozíciójel ${f['designator']}: ${f['found']} alkalommal van a fájlban, a legtöbb másik ${f['wanted']} alkalommal. Ellenőrizze, hogy a panel minden lapján megvan-e.`,
  placementSideFromName: (f) =>
    `A fájlban semmi nem mondja meg az oldalt. A neve („${f['found']}”) alapján minden beültetés ennek számít: ${sideHu(f['side'])}.`,
  throughHole: (f) =>
    `Pozíciójel ${f['designator']} (${f['part']}): furatszerelt, ezért nem számít beültetettnek.`,
  oddPlaced: (f) =>
    `Pozíciójel ${f['designator']}: tesztpontnak vagy furatnak látszik, de alkatrésze van: ${f['part']}. Beültetettnek számít. Ha nem az, jelölje nem beültetettnek.`,
  valueInPackages: (f) =>
    `Érték ${f['part']}: itt ${f['found']} tokban van, másutt ebben: ${f['wanted']} (${f['first']}. sor). Két alkatrésznek számítanak. Adjon nekik cikkszámot.`,
  partInPackages: (f) =>
    `${f['part']}: itt ${f['found']} tokban van, másutt ebben: ${f['wanted']} (${f['first']}. sor). Ellenőrizze a cikkszámot.`,
  valueWithoutPackage: (f) =>
    `Pozíciójel ${f['designator']}: értéke ${f['part']}, de nincs se tokja, se cikkszáma. Nem tudni, melyik alkatrész: töltse ki.`,
  xmlBroken: (f) =>
    `Az XML itt hibás: ${f['found']}. Ami utána jön, nincs beolvasva. Exportálja újra a fájlt.`,
  noComponents: () => 'A fájlban nincs alkatrész. Exportálja az alkatrészekkel és a helyükkel együtt.',
  panelOfFile: (f) =>
    `A fájl paneljén ${f['found']} lap van; egy számít. Adja meg, hány lap van egy panelben.`,
  billRowWithoutDesignators: (f) =>
    `${f['part']}: nincs pozíciójele, ezért ebből a sorból semmi nem lesz beültetve. Töltse ki, ha beültetendő.`,
  billPartMissing: (f) => `A sorban (${f['designator']}) nincs se cikkszám, se érték. Töltse ki az egyiket.`,
  billPartByOther: (f) =>
    `A sorban nincs cikkszám, ezért az alkatrész neve: ${f['part']}. Töltse ki a cikkszámot.`,
  secondTable: (f) => `Itt egy másik táblázat kezdődik (${f['headers']}). Nincs beolvasva.`,
  boardsInFile: (f) =>
    `A beültetési fájlban már ${f['found']} lap van, ezért a szorzás (${f['wanted']} lap) elmarad. Ellenőrizze, hány lap van egy panelben.`,
  quantityDiffers: (f) =>
    `A mennyiség ${f['wanted']}, de a sorban ${f['found']} pozíciójel van. Ellenőrizze, melyik a jó.`,
  quantityUnreadable: (f) => `A mennyiség nem szám: „${f['found']}”. A pozíciójelek számítanak. Javítsa.`,
  quantityRatio: (f) =>
    `A mennyiség minden sorban ${f['ratio']}× annyi, mint a pozíciójelek száma. Az anyagjegyzék ${f['ratio']} lapra szólhat.`,
  billDesignatorTwice: (f) =>
    `Pozíciójel ${f['designator']}: már szerepel ugyanazzal az alkatrésszel (${f['first']}. sor). Egyszer számít.`,
  billDesignatorDiffers: (f) =>
    `Pozíciójel ${f['designator']}: már szerepel (${f['first']}. sor): ${f['wanted']}; itt ${f['found']}. Egy pontra egy alkatrész kerül: javítsa az egyik sort.`,
  variantOpen: (f) =>
    `Az anyagjegyzék változatai itt eltérnek: ${f['wanted']}. Beültetettnek számít. Adja meg, melyik változat készül, vagy hozza annak az anyagjegyzékét.`,
  variantNotFound: (f) => `Az anyagjegyzékben nincs ilyen változat: „${f['found']}”. Van: ${f['wanted']}.`,
  partDescribedTwice: (f) =>
    `${f['part']}: értéke itt ${f['found']}, másutt ${f['wanted']} (${f['first']}. sor). Ellenőrizze a cikkszámot.`,
  markInRemark: (f) =>
    `A megjegyzés („${f['found']}”) szerint ebből a sorból semmi nincs beültetve. Ha csak néhány pozíciójelre szól, ott nevezze meg őket.`,
  blankNotFitted: (f) =>
    `Ebben az oszlopban néhány sorban jel áll, ${f['count']} sorban üres: „${f['found']}”. Az üres nem beültetettnek számít.`,
  designatorNotInBill: (f) =>
    `Pozíciójel ${f['designator']}: a beültetési fájlban van, de az anyagjegyzékben nincs, ezért nem számít. Adja hozzá az anyagjegyzékhez, vagy jelölje nem beültetettnek.`,
  designatorNotPlaced: (f) =>
    `Pozíciójel ${f['designator']} (${f['part']}): az anyagjegyzékben van, de a beültetési fájlban nincs, ezért nem számít.`,
  partOfFileDiffers: (f) =>
    `Pozíciójel ${f['designator']}: ${f['found']} a beültetési fájlban, ${f['wanted']} az anyagjegyzékben (${f['first']}. sor). Az anyagjegyzék számít. Ellenőrizze, melyik a jó.`,
  valueOfFileDiffers: (f) =>
    `Pozíciójel ${f['designator']}: érték ${f['found']} a beültetési fájlban, ${f['wanted']} az anyagjegyzékben (${f['first']}. sor). Az anyagjegyzék számít. Ellenőrizze, melyik a jó.`,
  sideOfFileDiffers: (f) =>
    `Pozíciójel ${f['designator']}: ${sideHu(f['found'])} a beültetési fájlban, ${sideHu(f['wanted'])} az anyagjegyzékben. A beültetési fájl számít.`,
  sheetDesignatorNotPlaced: (f) =>
    `Pozíciójel ${f['designator']}: ebben a sorban van, de a beültetési fájlban nincs. Ellenőrizze mindkettőben.`,
  designatorWithoutSlot: (f) =>
    `Pozíciójel ${f['designator']} (beültetési fájl, ${f['first']}. sor, ${f['part']}): nincs a lista egyik sorában sem. Adja hozzá a helyének sorához, vagy jelölje nem beültetettnek.`,
  sheetPartDiffers: (f) =>
    `Pozíciójel ${f['designator']}: ${f['found']} ebben a sorban, ${f['wanted']} a beültetési fájlban vagy az anyagjegyzékben. Ellenőrizze, melyik a jó.`,
  sheetDesignatorTwice: (f) =>
    `Pozíciójel ${f['designator']}: már szerepel (${f['first']}. sor). Ott számít.`,
  listPartEmpty: () => 'A sorban nincs cikkszám, de más cellák ki vannak töltve. Töltse ki.',
  listPackingUnknown: (f) =>
    `„${f['found']}” nem szalag, szalagdarab, tálca, rúd vagy ömlesztett, ezért kimarad. Javítsa.`,
  listAgeUnreadable: (f) =>
    `A korhatár nem hónapok száma, ezért kimarad: „${f['found']}”. Írjon 24-et vagy 2 évet.`,
  listPriceUnreadable: (f) =>
    `A(z) „${f['found']}” ár nem 0-nál nagyobb szám, ezért kimarad. Írja így: 0.012 vagy 0.012 EUR.`,
  listPriceUnclear: (f) =>
    `A(z) „${f['found']}” nem mondja meg, hány darabra szól az ár. Írja így: Price each vagy Price per 1000.`,
  listToleranceUnclear: (f) =>
    `A(z) „${f['found']}” oszlopban 1-nél kisebb puszta számok állnak: hányad vagy százalék? Kimaradnak. Nevezze az oszlopot így: Tolerance %, vagy írjon 1 %-ot a cellákba.`,
  listReelEmpty: () => 'A sorban nincs tekercsazonosító, ezért kimarad. Töltse ki.',
  listReelTwice: (f) =>
    `Tekercs ${f['found']}: már szerepel (${f['first']}. sor). Az utolsó darabszáma számít.`,
  listCountUnreadable: (f) => `A darabszám nem egész szám, ezért a sor kimarad: „${f['found']}”. Javítsa.`,
};

export const words: Sentences<typeof english> = { say: (problem) => hu[problem.code](problem.facts) };

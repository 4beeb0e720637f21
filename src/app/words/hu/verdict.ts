import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, type Sentences } from '../words.ts';
import { moistureReasonsHu, tableHu } from './verdict-moisture.ts';
import { plantReasonsHu } from './verdict-plant.ts';

const reasonsHu: ReasonWords = {
  ...moistureReasonsHu,
  ...plantReasonsHu,
  'unknown-slot': {
    title: 'Nincs ilyen hely',
    say: (f) => `Ezen a soron nincs ilyen hely: ${f['slot']}.`,
    act: 'Olvassa be a hely kódját a gépnél.',
  },
  'slot-not-in-setup': {
    title: 'Nem használt hely',
    say: (f) => `Ez a setup semmit nem kér ide: ${f['slot']}.`,
    act: 'Hagyja üresen. Olvassa be a jó helyet.',
  },
  'slot-loaded': {
    title: 'A hely már fel van rakva',
    say: (f) => `${f['slot']}: már fent van ${f['part']}${f['reel'] ? ` (tekercs ${f['reel']})` : ''}.`,
    act: 'Előbb vegye le azt a tekercset.',
  },
  'slot-empty': {
    title: 'A hely üres',
    say: (f) => `Nincs felrakva semmi: ${f['slot']}.`,
    act: 'Toldani nem lehet: rakjon fel egy tekercset.',
  },
  'no-part': {
    title: 'Nincs cikkszám',
    say: (f) => `A címke egyik kódja sem mondja meg, melyik alkatrész. Várt: ${f['wanted']}.`,
    act: 'Olvassa be az egész címkét, vagy írja be a nyomtatott cikkszámot.',
  },
  'wrong-part': {
    title: 'Rossz alkatrész',
    say: (f) =>
      f['goesTo']
        ? `Ennek a tekercsnek a helye: ${f['goesTo']}.`
        : 'A setup egyik helye sem kéri ezt az alkatrészt.',
    act: 'Tegye vissza. Olvasson be másik tekercset.',
  },
  'wrong-for-lane': {
    title: 'A másik sávhoz nem jó',
    say: (f) => `${f['lane']} erről a helyről ezt veszi: ${f['wanted']}.`,
    act: 'Tegye vissza. Olvasson be mindkét sávhoz jó tekercset.',
  },
  'kept-for-lane': {
    title: 'A másik sávnak marad',
    say: (f) => `${f['slot']}: ${f['part']}, ennek a sávnak: ${f['lane']}.`,
    act: 'Hagyja ott azt a tekercset. Ha hozzátoldana, előbb válassza a másik sávot.',
  },
  'not-in-setup': {
    title: 'Nincs ebben a setupban',
    say: (f) =>
      f['slot']
        ? `Egy hely sem kéri ezt a tekercset. A legközelebbi: ${f['slot']}.`
        : 'Egy hely sem kéri ezt a tekercset.',
    act: 'Hagyja a kocsin, vagy vigye vissza a raktárba.',
  },
  'bake-short': {
    title: 'Túl rövid sütés',
    say: (f) =>
      `${f['hours']} h sütés${f['celsius'] ? `, ${f['celsius']} °C` : ''}. ${f['wanted'] ? `A táblázat ott ${f['wanted']} h-t kér` : 'A táblázatban erre nincs sor'}, ezért a nyitott idő nem állt vissza: ${f['leftSeconds']} maradt. (${restsOn(f, tableHu)}Az ismeretlen tok a legrosszabbnak számít.)`,
    act: 'Műszakvezetőnek kell döntenie.',
  },
  'same-label': {
    title: 'Második tekercs ugyanazzal a címkével',
    say: () => 'Egy személy igazolta: a címke egyezik az itt futó tekercsével.',
    act: '',
  },
  'reel-elsewhere': {
    title: 'A tekercs más helyen van',
    say: (f) => `A napló szerint tekercs ${f['reel']} itt van: ${f['slot']}.`,
    act: 'Ha már nincs ott, előbb vegye le onnan.',
  },
  'reel-on-cart': {
    title: 'A tekercs kocsin van',
    say: (f) =>
      `A napló szerint tekercs ${f['reel']} kocsin van: ${f['cart']}, készen áll ide: ${f['slot']}.`,
    act: 'Hozzon másik tekercset, vagy előbb vegye le a kocsiról az Előkészítés alatt.',
  },
  'slot-on-cart': {
    title: 'A hely készen áll egy kocsin',
    say: (f) => `Kocsi ${f['cart']}: már van rajta kész tekercs ide: ${f['slot']}.`,
    act: 'Olvasson be másik helyet, vagy előbb vegye le ezt a kocsiról.',
  },
  'reel-here': {
    title: 'A tekercs már itt van',
    say: (f) => `Tekercs ${f['reel']} már itt van: ${f['slot']}.`,
    act: 'Olvassa be a következő tekercset.',
  },
  'reel-blocked': {
    title: 'A tekercs zárolt',
    say: (f) => `Zárolva: ${f['reason']}.`,
    act: 'Tegye félre. Hívja a műszakvezetőt.',
  },
  'feeder-elsewhere': {
    title: 'A feeder más helyen van',
    say: (f) => `A napló szerint feeder ${f['feeder']} itt van: ${f['slot']}.`,
    act: 'Ellenőrizze a feeder kódját, vagy előbb vegye le onnan.',
  },
  'feeder-aside': {
    title: 'A feeder félre van téve',
    say: (f) => `Feeder ${f['feeder']} nem használható: ${f['why']}.`,
    act: 'Vegyen másik feedert. A karbantartást a feedernél jelezze.',
  },
  'feeder-lanes': {
    title: 'A feederen nincs szabad sáv',
    say: (f) => `Feeder ${f['feeder']} sávjai: ${f['lanes']}. A napló szerint már itt van: ${f['slots']}.`,
    act: 'Ellenőrizze a feeder kódját, vagy javítsa a típusa sávjainak számát.',
  },
  'feeder-on-cart': {
    title: 'A feeder kocsin van',
    say: (f) =>
      `A napló szerint feeder ${f['feeder']} kocsin van: ${f['cart']}, készen áll ide: ${f['slot']}.`,
    act: 'Ellenőrizze a feeder kódját, vagy előbb vegye le a kocsiról az Előkészítés alatt.',
  },
  'feeder-width': {
    title: 'A feeder nem illik a szalaghoz',
    say: (f) =>
      `Feeder ${f['feeder']} ${f['found']} mm-es szalaghoz való; ez a hely ${f['wanted']} mm-t kér.`,
    act: 'Hozzon megfelelő szélességű feedert.',
  },
  'feeder-pitch': {
    title: 'A feeder osztása nem illik',
    say: (f) => `Feeder ${f['feeder']} ${f['found']} mm-t léptet; ez a szalag ${f['wanted']} mm-t kér.`,
    act: 'Állítsa be az osztást, vagy hozzon másik feedert. A rossz osztás észrevétlenül dob el alkatrészt.',
  },
  'floor-life-over': {
    title: 'A nyitott idő lejárt',
    say: () => 'Ez a tekercs túl sokáig volt a száraz tasakján kívül.',
    act: 'Ne használja. Küldje sütni a szabályai szerint.',
  },
  'not-the-loaded-reel': {
    title: 'Nem a naplóban lévő tekercs',
    say: (f) => `A napló szerint itt ${f['loaded'] || 'másik tekercs'} van: ${f['slot']}.`,
    act: 'Derítse ki, ki cserélte. Utána vegye le, és rakja fel újra.',
  },
  'part-contradicts': {
    title: 'A címke ellentmond magának',
    say: (f) =>
      `Ez áll rajta: ${f['part']}, de ${f['supplierPart']} ehhez van jóváhagyva: ${f['approvedFor']}.`,
    act: 'Műszakvezetőnek kell döntenie.',
  },
  'alternate-not-approved': {
    title: 'A helyettesítő itt nincs jóváhagyva',
    say: (f) =>
      `${f['found']} helyettesítheti ezt: ${f['wanted']}, itt: ${f['approvedFor']}, de ezen a terméken nem.`,
    act: 'Műszakvezetőnek kell döntenie.',
  },
  'supplier-part-not-approved': {
    title: 'Ismeretlen szállítói cikkszám',
    say: (f) => `${f['supplierPart']} nincs a jóváhagyottak listáján. Várt: ${f['wanted']}.`,
    act: 'Műszakvezetőnek kell döntenie.',
  },
  'no-quantity': {
    title: 'Nincs mennyiség',
    say: () => 'A címkén nincs mennyiség, ezért a kifogyás nem ismert.',
    act: 'Írja be a mennyiséget, vagy döntsön műszakvezető.',
  },
  expired: {
    title: 'Lejárt a dátuma',
    say: (f) => `Felhasználható eddig: ${f['expires']}.`,
    act: 'Műszakvezetőnek kell döntenie.',
  },
  'by-alternate': {
    title: 'Jóváhagyott helyettesítő',
    say: (f) => `${f['found']} jóváhagyott helyettesítője ennek: ${f['wanted']}.`,
    act: '',
  },
  'by-supplier-part': {
    title: 'A szállító száma alapján',
    say: (f) => `${f['supplierPart']} jóváhagyva ehhez: ${f['part']}.`,
    act: '',
  },
  'by-comparison': {
    title: 'Azonos számnak véve',
    say: (f) => `${f['found']} ennek számít: ${f['wanted']}, a telephely szabálya szerint (${f['rule']}).`,
    act: '',
  },
  'mixed-lots': {
    title: 'Másik tétel',
    say: (f) => `A tétel változik: ${f['from']} → ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: 'Nem a címke mennyisége',
    say: (f) =>
      f['label'] === ''
        ? `A címkén nincs; a napló ezt veszi: ${f['quantity']}.`
        : `A címkén ${f['label']} áll; a napló ezt veszi: ${f['quantity']}.`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: 'Jó a cseréhez',
    refill: 'Jó az utántöltéshez',
    load: 'Jó tekercs',
    splice: 'Jó tekercs a toldáshoz',
    sweep: 'Látva',
  },
  refused: 'Elutasítva',
  held: 'Műszakvezetőre vár',
  wants: (slot) => `${slot} ezt kéri`,
  says: 'a tekercsen ez áll',
  also: 'Továbbá',
  goOn: 'Folytatás',
  nextIs: (slot) => `Következő: ${slot}`,
  another: 'Másik tekercs beolvasása',
  callLead: 'Döntsön műszakvezető',
  typeQuantity: 'Mennyiség beírása',
  takeBack: 'Visszavonás',
  parts: (count) => `${formatCount(count)} alkatrész`,
  lot: (lot) => `tétel ${lot}`,
  reel: (reel) => `tekercs ${reel}`,
  practice: 'gyakorló beolvasás',
  allLoaded: 'Minden hely fel van rakva.',
  spliceCaution:
    'Csak álló gépnél illessze össze a szalagokat, vagy ha a feeder a védett zónán kívül van, ahogy a kézikönyve írja. Ujjaitól elfelé vágjon. A helyi szabályok az elsők.',
  loadCaution: 'Állítsa le a gépet, és várja meg a fejet, mielőtt benyúl. A helyi szabályok az elsők.',
  reasons: reasonsHu,
};

import type { words as english } from '../en/help.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (screen) => `Súgó: ${screen}`,
  practise: 'Gyakorlás vezetővel',
  lines: {
    line: [
      'A szalag ott ér véget, ahol a tekercs kifogy. A kapcson belül kell toldani.',
      'A felső sáv a következő utat mutatja. Induláskor koppintson rá.',
      'A fölötte lévő csík indítja, leállítja és számolja a gyártást.',
    ],
    load: [
      'Egy bankra koppintva látszanak a helyei. A sor mutatja, mit kell még felrakni.',
      'Először a helyet kell beolvasni, aztán a tekercset.',
      'Kör: elfogadva. Nyolcszög: elutasítva. Rombusz: a műszakvezetőre vár.',
    ],
    change: [
      'Válassza ki a következő terméket. Utána minden mozgatás listában áll.',
      'Egyszerre egy mozgatás; be kell olvasni, ami bekerül.',
      'Ellenőrzőlista befejezése, első panel ellenőrzése. Utána a gyártás engedélyezése.',
    ],
    stock: [
      'Mely tekercseket kell hozni, és mikorra.',
      'Egy tekercset megnyitva: számolás, elrakás vagy zárolás.',
      'Amelyik tekercsnek száraznak kell maradnia, mutatja a nyitott idejét.',
    ],
    log: [
      'Minden művelet itt áll, idővel és személlyel. Semmi sem tűnik el.',
      'Tételtől a panelekig, vagy paneltől a tekercsekig.',
      'A műszak áttekintése, átadása és a napló exportálása.',
    ],
    plant: [
      'Setup importálása, és annak választása, mi készüljön.',
      'Személyek, címkék és a sor szabályainak felvétele.',
      'Gyakorlás a sor másolatán. Ott semmi sem számít.',
    ],
    search: [
      'Bármely kód, név vagy szám beolvasható vagy beírható.',
      'A találatok fajtánként állnak.',
      'Egy találatra koppintva megnyílik.',
    ],
    lines: [
      'Minden táblázatsor egy sor, gyártással és a következő úttal.',
      'Harang: figyelmeztetés vár. Rombusz: egy tekercs visszatartva.',
      'Koppintson egyre, hogy azon a soron dolgozzon.',
    ],
  },
};

import type { words as english } from '../en/first-panel.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  intro: 'Mérje meg a kritikus alkatrészeket. Nézzen meg minden alkatrészt, amely fordítva is állhat.',
  none: 'Ebben a setupban nincs kritikus alkatrész, érték vagy polaritás.',
  other: 'Másik alkatrész mérése',
  critical: 'Kritikus alkatrészek és értékek',
  orientation: 'Tájolás',
  left: (open) => `${open} még nyitott`,
  all: 'minden jó',
  states: { open: 'elvégzendő', accepted: 'jó', held: 'nem egyértelmű', refused: 'rossz' },
  marks: { critical: 'kritikus', perPanel: (count) => `${count} / panel` },
  measure: 'Mérés',
  again: 'Újramérés',
  right: 'Jó',
  wrong: 'Rossz',
  takeBack: 'Újranézés',
  title: (part) => `Mérés: ${part}`,
  wanted: 'Mennyit kell mérnie?',
  code: 'Érték vagy a kódja',
  codeHelp: 'Például 4k7, 104K, 10 kΩ (IEC 60062). Utána válassza ki a helyes olvasatot.',
  nominal: 'Névleges érték',
  unit: 'Mértékegység',
  tolerance: 'Tűrés ± %',
  reading: (unit) => `A műszer kijelzése, ${unit}`,
  meter: 'A műszer pontossága',
  percent: '± % a mért értékből',
  fixed: (unit) => `± állandó, ${unit}`,
  meterHelp: 'Lásd a műszer adatlapját. Ez a tablet megjegyzi.',
  limits: (least, most, unit) => `Elvárt: ${least} – ${most} ${unit}`,
  result: (value, uncertainty, unit) => `Mért: ${value} ± ${uncertainty} ${unit}`,
  why: {
    accepted: 'A határokon belül, a műszer hibájával együtt is.',
    held: 'Túl közel van a határhoz ehhez a műszerhez. Használjon jobbat, vagy döntsön a minőségügy.',
    refused:
      'A határokon kívül, a műszer hibájával együtt is. Tartsa vissza a panelt; ellenőrizze a tekercset és a helyet.',
  },
  numbers: 'Írjon be számot az értékhez, a tűréshez és a mért értékhez.',
  keep: 'Mérés mentése',
  caution:
    'A panel legyen a soron kívül és feszültségmentes, a kondenzátorok kisütve. A szomszédos alkatrészek megváltoztatják, amit a műszer az áramkörben mutat.',
  known: 'korábbi mérés szerint',
};

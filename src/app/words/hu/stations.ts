import type { words as english } from '../en/stations.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  caution:
    'Segítség a gép saját védelme mellett, nem biztonsági funkció. Figyel, és csak ott kérdez vagy válaszol, ahol be van állítva. Egyik gépnek sem parancsol.',
  who: (line) => `Ki számol ezen a soron: ${line}?`,
  whoHelp:
    'Soronként egy számláló. Az állomás melletti kézi számolás megmarad és látszik, de nem adódik hozzá.',
  hand: 'Emberek, kézzel',
  handNow: 'Ezen a soron most emberek számolnak.',
  stationNow: (station) => `Ezt a sort most ez számolja: ${station}.`,
  checkInLine:
    'Ellenőrizze a „Panelek a sorban” részt a sorszabályokban: attól függ, hol számolják a paneleket.',
  none: 'Még nincs ismert állomás',
  noneHelp:
    'Indítsa el ezt a gépek közelében lévő számítógépen. Az állomás itt látszik, ha a kapcsolata csatlakozott.',
  silent: (clock) => `Hallgat ${clock} óta`,
  heard: (clock) => `Hallva ${clock}`,
  never: 'Még sosem hallva',
  counts: 'Ezt a sort számolja',
  line: 'Sor',
  stands: 'Helye',
  places: { in: 'az első gép előtt', work: 'egy gépnél', out: 'az utolsó gép után' },
  atMachine: (machine) => `ennél: ${machine}`,
  lastHeard: 'Utoljára hallva',
  total: 'Saját összege',
  boot: (boot) => `amióta bekapcsolták, mint ${boot}`,
  heardAs: (boot) => `amióta a kapcsolat legutóbb hallani kezdte, mint ${boot}`,
  state: 'Állapot',
  recipe: 'Program',
  noState: 'Nem mondja',
  states: {
    1: 'Dolgozik',
    2: 'Készenlét',
    3: 'Beállítás',
    4: 'Tervezett leállás',
    5: 'Nem tervezett leállás',
    6: 'Nincs beütemezve',
  },
  otherState: 'A gyártó saját állapota',
  version: 'Kapcsolat',
  linkOf: (version, tablet) => `verzió ${version}, ${tablet}`,
  noticed: 'Nem érthető vagy nem számolt',
  allUnderstood: 'Minden érthető volt.',
  notices: {
    'not-understood': 'Olvashatatlan üzenetek',
    'wrong-secret': 'Üzenetek a helyes titok nélkül',
    'clock-off': 'Az órája több mint öt perccel rosszul jár. Semmi nem kap tőle időpontot',
    'total-fell':
      'Az összege lecsökkent, pedig nem kapcsolták ki. Onnan számol tovább; ami közben elveszett, nincs számolva',
    'two-devices':
      'Két eszköz küld egy név alatt. Az első számít. Adjon a másiknak saját nevet, majd kapcsolja ki és be mindkettőt',
    'code-twice': 'Egy panelkód kétszer jött. Csak az első panelt jelöli',
    'not-used': 'Itt nem használt üzenetek',
    'other-handle':
      'Olyan gép küld, amelyhez nincs állomás beállítva. Állítson be egyet a handle azonosítójával',
    'not-connected': 'A brókere nem volt elérhető. Újra próbálja',
    'not-answered': 'Nem mondta meg, mi van felrakva rajta. Újra meg lesz kérdezve',
    'not-offered': 'Nem mondta meg, melyik setupot kéri. Újra meg lesz kérdezve',
    'loads-cut': 'Több helyet nevezett meg, mint amennyi beolvasható. Csak az elsők vannak összevetve',
    'asked-off': 'Anyagról kérdezett, és nem kapott választ: ez nincs bekapcsolva',
    'asked-often': 'Egy perc alatt több mint 60-szor kérdezett. A többi válasz nélkül maradt',
    'not-replied': 'Kérdezett, és a válasz előtt eltűnt',
    'code-again': 'Egy panelkód újra jött. Gyártásonként egyszer számít',
    'not-heard':
      'Egy ideig nem volt hallható: ami akkor áthaladt, nincs az összegében. Vesse össze a sorral, és állítsa be: „Panel = …”, ahol hibás',
    'no-boards': 'Nem jelzi a paneleket, ezért semmit nem számol. Kapcsolja be ezt a gépen',
    'other-machine':
      'Egy másik gép paneljei ugyanazon a kapcsolaton. Nincsenek számolva; nevezze meg a jót a kapcsolat fájljában (machineId)',
    'wrong-channel':
      'Ez a port a két gép közötti csatorna. A kapcsolat letette; írja a fájljába a gép felügyeleti portját',
    'by-hand':
      'Kézzel betett vagy kivett panelek. Nincsenek számolva; ahol egy elkészült, állítsa be: „Panel = …”',
    'failed-board':
      'A gép szerint hibás panelek. Elvették az alkatrészeiket, és számolva vannak; selejtezze őket, ha selejtek',
    'board-twice': 'Kétszer jelzett panelek. Mindegyik egyszer számít',
    'machine-says': 'A gép ezt mondja',
  },
  other: 'Valami más',
  times: (times) => `${formatCount(times)} alkalommal`,
  foundTitle: 'A gép és a napló eltér',
  found: {
    'tape-differs': (slot, clock, machine, here) =>
      `${slot}, ${clock}: a gép ezzel megy tovább: ${machine}, a beolvasások szerint: ${here}. Semmi nem lett számolva. Olvassa be a helyen lévő tekercset.`,
    'told-late': (slot, clock, machine) =>
      `${slot}, ${clock}: a gép túl későn jelezte, hogy elkezdődött: ${machine}. Semmi nem lett számolva. Számolja meg a tekercset.`,
    'empty-early': (slot, clock, machine, _here, parts) =>
      `${slot}, ${clock}: a gép szerint üres: ${machine}. A napló szerint maradt alkatrész: ${parts}. Számolja meg a tekercset.`,
    'life-expired': (_slot, clock, machine) =>
      `${machine}, ${clock}: a gép szerint lejárt a nyitott ideje. Nézze meg a Tekercsek alatt.`,
    'life-restored': (_slot, clock, machine) =>
      `${machine}, ${clock}: a gép szerint újra használható. Adja meg, hogyan sütötték vagy tárolták szárazon.`,
  },
  loads: {
    title: 'Mi van a helyeken a gép szerint',
    said: (clock, same) =>
      `A gép jelezte: ${clock}. ${formatCount(same)} hely olyan, ahogy a beolvasások mutatják.`,
    differs: (slot, machine, here) => `${slot}: a gép szerint ${machine}, a beolvasások szerint ${here}.`,
    nothing: 'semmi',
    look: 'Nyissa meg a helyet, és olvassa be az ott lévő tekercset. Ha a beolvasások jók, a gépen igazítsa ki.',
    scan: 'Olvassa be az ott lévő tekercset.',
    open: (slot) => `Megnyitás: ${slot}`,
    more: (slots) => `és még ${formatCount(slots)}`,
    never: 'Magától egy helyet sem változtat.',
    later: (slots) => `A gép üzenete után beolvasva, talán még nem tud róla: ${slots}.`,
    untold: (slots) => `A gép nem nevez meg alkatrészt és ismert tekercset: ${slots}.`,
    unknown: (places) =>
      `Olyan pontok, amelyek nem helyek ezen a soron: ${places}. Nevezze meg őket a kapcsolat fájljában (slots).`,
  },
  answers: {
    title: 'Ha a gép kérdezi: jó ez a tekercs?',
    caution: 'Segítség a gép saját védelme mellett, nem biztonsági funkció.',
    help: 'A válasz az utolsó ellenőrzések eredményéből jön. Minden válasz a naplóban van. Hogy a gép mit tesz vele, a gépen kell beállítani.',
    off: 'Ne válaszoljon',
    on: {
      Warning: 'Válasz; ha nem biztos, figyelmeztetés',
      Failed: 'Válasz; ha nem biztos, nem',
    },
    offNow: 'A gép már nem kap választ.',
    onNow: {
      Warning: 'A gép mostantól választ kap. Ha nem biztos, figyelmeztetést.',
      Failed: 'A gép mostantól választ kap. Ha nem biztos, nemet.',
    },
    last: (clock, right, unsure, wrong) =>
      `Utolsó válasz helyenként, a legújabb ${clock}: ${right} jó, ${unsure} figyelmeztetés, ${wrong} nem.`,
    one: (slot, reel, result, why) => `${slot}, ${reel}: ${result}, ${why}.`,
    results: { Success: 'jó', Warning: 'figyelmeztetés', Failed: 'nem' },
    whys: {
      verified: 'ott ellenőrizve lett',
      refused: 'ott el lett utasítva',
      held: 'egy ellenőrzés eredménye műszakvezetőre vár',
      'other-reel': 'ott másik tekercs lett ellenőrizve',
      'other-part': 'ott másik alkatrész lett ellenőrizve',
      'wrong-feeder': 'ott nem jó a feeder',
      blocked: 'az anyag zárolt',
      'no-setup': 'nincs setup kiválasztva',
      'unknown-slot': 'a soron nincs ilyen hely',
      'not-in-setup': 'a setup oda semmit nem kér',
      'not-verified': 'ott semmi nem lett ellenőrizve',
      'unknown-reel': 'a tekercs sosem lett beolvasva',
      'no-reel-told': 'a gép nem nevezett meg tekercset',
      'out-of-date': 'a naplót nem sikerült olvasni',
      'in-conflict': 'két tablet mást mond róla',
      unproven: 'semmi nem igazolja az engedélyt, amellyel felkerült',
    },
  },
  clear: 'Elintézve …',
  clearTitle: 'El van intézve ez az eltérés?',
  clearHelp: 'Lekerül erről a listáról. Amit a két oldal mondott, a naplóban marad.',
  clearWhy: 'Mi derült ki?',
  clearYes: 'El van intézve',
  cleared: 'Elintézve. Mindkét oldal a naplóban marad.',
  ownName: 'Saját neve',
  rename: 'Átnevezés',
  renameTitle: 'Hogy hívják ezt az állomást?',
  renameHelp: 'Csak az embereknek. A kapcsolata a saját nevén megy tovább.',
  renameName: 'Név',
  renameYes: 'Átnevezés',
  renameMissing: 'Írjon be másik nevet.',
  noReel: 'egy tekercs kód nélkül',
  noScan: 'semmi ilyen',
  bothTitle: 'Mindkettő számolta',
  both: {
    machine: (clock, hand, machine) =>
      `${clock}: hallgatás után visszatért. Kézzel ${hand}, géppel ${machine}. A gép száma érvényes.`,
    hand: (clock, hand, machine) =>
      `${clock}: hallgatás után újrakezdte. Kézzel ${hand}, géppel ${machine}. A kézi szám érvényes.`,
  },
  bothHelp: 'Hibás? Állítsa be a számot a Sor képernyőn: „Panel = …”.',
  beside: (panels) => `E gyártás ${formatCount(panels)} panelje kézzel lett számolva az állomás mellett.`,
  outside: (panels) =>
    `${formatCount(panels)} panel akkor haladt át, amikor semmi nem készült. Egyik gyártásban sincs benne.`,
  setTitle: 'Mit kell beállítani a gépen',
  setHelp:
    'A kapcsolat ott hívja a gépet, a felügyeleti rendszerek csatornáján, és csak figyel. Kapcsolja be hozzá a panelkövetést.',
  setAddress: 'Cím',
  setNever:
    'Soha ne adja meg neki a két gép közötti csatorna portját (50100 és a sáv): az leállítaná a sort.',
  typeTitle: 'Mit kell beírni az eszközön',
  typeHelp:
    'Minden áthaladó panelnél és tíz másodpercenként a saját futó összegét küldi. Sosem azt, hogy „eggyel több”: ami akkor elveszik, a következő üzenet pótolja.',
  typeAddress: 'Cím',
  typeHeader: 'Fejléc',
  typeSecret: 'TITOK',
  typeBody: 'Üzenet',
  typeBoot: 'boot: minden bekapcsoláskor új szöveg. total: panelek azóta. at: az órája, ha van neki.',
  machineTitle: 'Mit kell beírni a gépen',
  machineHelp:
    'A gép IPC-2591 (AMQP 1.0) szerint küld, minden üzenetet külön vagy többet egyben, tömörítve vagy anélkül. A handle azonosítója egyezzen a kapcsolat fájljában lévővel.',
  machineAddress: 'A brókere címe (network URI)',
  machineTarget: 'Célcím',
  machineAny: 'bármilyen',
  machineAt: 'Az üzeneteit innen veszi',
  machineProof: 'Név és jelszó: a kapcsolat fájlja szerint. Ha ott nincs: ANONYMOUS.',
  typeAnswer: 'Válasz 200 a legnagyobb megtartott összeggel. 401: rossz a titok. 400: mi a hiba, és hol.',
};

import type { words as english } from '../en/trace.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  entries: 'Bejegyzések',
  trace: 'Nyomkövetés',
  held: 'Visszatartott panelek',
  conflicts: 'Ellentmondások',
  title: 'Melyik paneleken van rajta?',
  help: 'Írjon vagy olvasson be tételt, tekercset, alkatrészt, feedert, helyet vagy panelkódot, kis- vagy nagybetűvel. Vagy válasszon személyt.',
  ask: 'Követés',
  kinds: {
    lot: 'Tétel',
    reel: 'Tekercs',
    part: 'Alkatrész',
    feeder: 'Feeder',
    slot: 'Hely',
    person: 'Személy',
    panel: 'Panel',
  },
  choosePerson: 'Válassza ki, ki tette fel',
  putOn: (when, who) => (who === null ? `fent van ${when} óta` : `fent van ${when} óta, feltette: ${who}`),
  text: 'Mit kell követni',
  reading: (done) => `Napló olvasása… ${done} bejegyzés`,
  nothing: (text) => `A napló nem ismer panelt ehhez: „${text}”.`,
  sure: (first, last) => `biztosan: ${first}–${last}. panel`,
  possible: (first, last) => `talán: ${first}–${last}. panel`,
  none: 'nem készült panel, amíg ott volt',
  goesOn: 'még a soron van',
  serials: (count) => `${count} panelkód`,
  onSlot: (slot, feeder) => (feeder === '' ? slot : `${slot}, feeder ${feeder}`),
  panelTitle: (panel, product) => `Panel ${panel}, ${product}`,
  either: 'egyike vagy mindkettő',
  notSure: '(talán)',
  builtTimes: (count) =>
    count === 1 ? '1 gyártásban számolva:' : `${count} gyártásban számolva, a legrégebbi elöl:`,
  noLot: 'nincs tétel a címkén',
  partsFrom: (reels) => `Alkatrészek vannak benne innen: ${reels}`,
  partsTo: (reels) => `Alkatrészei ide kerültek: ${reels}`,
  save: 'Mentés CSV-ként',
  why: 'Toldás vagy tekercscsere közelében a pontos panel nem ismert, ezért mindkét tétel látszik. A „biztosan” a sorhoz megadott szórások szerint egymillióból egynél ritkábban téves.',
  guessed: {
    'in-line':
      'Senki nem adta meg, hány panel van a gép és a számolás helye között. A legtágabb tartomány a feltételezés. Adja meg a sorszabályokban, és kevesebb panel lesz kétes.',
    boards:
      'Egy setup sem mondja meg, a panel melyik lapjait látja el egy hely. Úgy számít, hogy mindet egyformán: ha csak néhányat lát el, a kihagyott lapokat tartalmazó panelen talán semmi nincs belőle.',
    label:
      'Senki nem adta meg, mennyire pontosak a nyomtatott mennyiségek. Negyed százalék a feltételezés (általános gyakorlat).',
  },
  by: { server: 'A szerver válaszolt.', tablet: 'A válasz e tablet naplójából való.' },
  more: (count) => `Csak a legrégebbi ${count} látszik. Szűkítse, pl. tétel vagy tekercs szerint.`,
  conflictKinds: {
    'slot-loaded-twice': (slots) => `${slots}: két tablet is felrakta`,
    'reel-on-two-slots': (slots) => `Egy tekercs itt van: ${slots}`,
    'cleared-though-blocked': (slots) => `Zárolt tekercs lett elfogadva ide: ${slots}`,
    'spliced-though-unloaded': (slots) => `${slots}: egy tableten toldva, egy másikon levéve`,
    'released-though-dropped': (product) =>
      `Átállás erre: ${product}: egy tableten engedélyezve, egy másikon elvetve`,
  },
  noConflicts: 'A tabletek egyeznek.',
  settle: 'Rendezés',
  settleTitle: 'Mi van a gépen?',
  settleHelp:
    'Menjen oda, és nézze meg. Utána válassza ki, mi van ott. A másik bejegyzés felülbíráltként a naplóban marad.',
  settleChangeTitle: 'A kettő közül melyik érvényes?',
  settleChangeHelp:
    'Kérdezze meg, ki engedélyezte és ki vetette el. Utána válassza ki, mi igaz. A másik bejegyzés felülbíráltként a naplóban marad.',
  keep: (slot, what, when) => `${slot}: ${what}, ${when}`,
  keepParts: (count) => `${count} alkatrész`,
  keepBy: (who, tablet) => (who === '' ? `itt: ${tablet}` : `${who}, itt: ${tablet}`),
  keepEmpty: 'a hely üres',
  neither: 'Másképp oldottam meg',
  reason: 'Honnan tudja?',
  settled: 'Rendezve.',
};

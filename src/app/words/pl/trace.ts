import type { words as english } from '../en/trace.ts';
import { byNumber, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  entries: 'Wpisy',
  trace: 'Śledzenie',
  held: 'Wstrzymane panele',
  conflicts: 'Niezgodności',
  title: 'Które panele to zawierają?',
  help: 'Wpisz lub zeskanuj partię, rolkę, komponent, podajnik, slot lub kod panelu, małymi lub wielkimi literami. Albo wybierz osobę.',
  ask: 'Prześledź',
  kinds: {
    lot: 'Partia',
    reel: 'Rolka',
    part: 'Komponent',
    feeder: 'Podajnik',
    slot: 'Slot',
    person: 'Osoba',
    panel: 'Panel',
  },
  choosePerson: 'Wybierz, kto to założył',
  putOn: (when, who) => (who === null ? `od ${when}` : `od ${when}, ${who}`),
  text: 'Co prześledzić',
  reading: (done) =>
    `Czytanie dziennika… ${byNumber(done, { one: `${done} wpis`, few: `${done} wpisy`, other: `${done} wpisów` })}`,
  nothing: (text) => `Dziennik nie zna żadnego panelu dla „${text}”.`,
  sure: (first, last) => `na pewno panele ${first} do ${last}`,
  possible: (first, last) => `być może panele ${first} do ${last}`,
  none: 'nie zbudowano panelu, gdy tam to było',
  goesOn: 'nadal na linii',
  serials: (count) =>
    byNumber(count, {
      one: `${count} kod panelu`,
      few: `${count} kody paneli`,
      other: `${count} kodów paneli`,
    }),
  onSlot: (slot, feeder) => (feeder === '' ? slot : `${slot}, podajnik ${feeder}`),
  panelTitle: (panel, product) => `Panel ${panel} z ${product}`,
  either: 'jedno lub oba z',
  notSure: '(być może)',
  builtTimes: (count) =>
    plural(count, `Policzony w ${count} serii:`, `Policzony w ${count} seriach, najstarsza najpierw:`),
  noLot: 'brak partii na etykiecie',
  partsFrom: (reels) => `Zawiera komponenty z: ${reels}`,
  partsTo: (reels) => `Komponenty z niej trafiły do: ${reels}`,
  save: 'Zapisz jako CSV',
  why: 'Blisko łączenia lub wymiany rolki dokładny panel jest nieznany, więc pokazane są obie partie. „Na pewno” myli się rzadziej niż raz na milion według rozrzutów podanych dla linii.',
  guessed: {
    'in-line':
      'Nikt nie podał, ile paneli leży między maszyną a miejscem liczenia. Przyjmuje się najszerszy zakres. Podaj to w regułach linii, a mniej paneli będzie niepewnych.',
    boards:
      'Żaden setup nie mówi, które płytki panelu obsługuje slot. Przyjmuje się, że wszystkie jednakowo: jeśli tylko niektóre, panel z pominiętymi płytkami może nic z niego nie zawierać.',
    label:
      'Nikt nie podał, jak dokładne są drukowane liczby. Przyjmuje się ćwierć procenta (powszechna praktyka).',
  },
  by: { server: 'Odpowiedź z serwera.', tablet: 'Odpowiedź z dziennika na tym tablecie.' },
  more: (count) =>
    `${byNumber(count, { one: 'Pokazano tylko najstarszy.', few: `Pokazano tylko ${count} najstarsze.`, other: `Pokazano tylko ${count} najstarszych.` })} Zawęź, np. do partii lub rolki.`,
  conflictKinds: {
    'slot-loaded-twice': (slots) => `${slots}: załadowano z dwóch tabletów`,
    'reel-on-two-slots': (slots) => `Jedna rolka jest na ${slots}`,
    'cleared-though-blocked': (slots) => `Zablokowaną rolkę zwolniono dla ${slots}`,
    'spliced-though-unloaded': (slots) => `${slots}: połączono na jednym tablecie, a zdjęto na innym`,
    'released-though-dropped': (product) =>
      `Przezbrojenie na ${product}: zwolniono na jednym tablecie, a anulowano na innym`,
  },
  noConflicts: 'Tablety się zgadzają.',
  settle: 'Rozstrzygnij',
  settleTitle: 'Co jest na maszynie?',
  settleHelp: 'Idź i zobacz. Potem wybierz, co tam jest. Drugi wpis zostaje w dzienniku jako uchylony.',
  settleChangeTitle: 'Co z tych dwóch obowiązuje?',
  settleChangeHelp:
    'Zapytaj, kto zwolnił i kto anulował. Potem wybierz, co jest prawdą. Drugi wpis zostaje w dzienniku jako uchylony.',
  keep: (slot, what, when) => `${slot}: ${what}, ${when}`,
  keepParts: (count) => `${count} szt.`,
  keepBy: (who, tablet) => (who === '' ? `na ${tablet}` : `${who} na ${tablet}`),
  keepEmpty: 'slot jest pusty',
  neither: 'Rozwiązano inaczej',
  reason: 'Skąd to wiadomo?',
  settled: 'Rozstrzygnięto.',
};

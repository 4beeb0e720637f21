import type { words as english } from '../en/line.ts';
import { byNumber, formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  noSetup: {
    title: 'Nie wybrano setupu dla tej linii',
    help: 'Lider wybiera, co będzie budowane. Inżynier importuje setupy.',
    choose: 'Wybierz setup',
    bring: 'Zaimportuj setup',
  },
  noRun: 'Nic nie jest budowane',
  noRunHelp: 'Załaduj linię, potem zacznij serię. Tu pokażą się końce rolek.',
  notLoaded: (missing) =>
    byNumber(missing, {
      one: `${missing} slot nie ma jeszcze rolki.`,
      few: `${missing} sloty nie mają jeszcze rolek.`,
      other: `${missing} slotów nie ma jeszcze rolek.`,
    }),
  notRight: (count) =>
    byNumber(count, {
      one: `${count} slot nie jest jeszcze w porządku: zobacz Załaduj.`,
      few: `${count} sloty nie są jeszcze w porządku: zobacz Załaduj.`,
      other: `${count} slotów nie jest jeszcze w porządku: zobacz Załaduj.`,
    }),
  beginsShort: (count) =>
    byNumber(count, {
      one: `${count} rolka ma mało na początku`,
      few: `${count} rolki mają mało na początku`,
      other: `${count} rolek ma mało na początku`,
    }),
  beginsShortAct: 'Połącz je lub zmień przed serią.',
  shortAfter: (span) => `wystarczy na ${span}`,
  start: 'Zacznij serię',
  startTitle: 'Zacznij serię',
  product: 'Setup',
  panelsWanted: 'Panele do zbudowania',
  panelSeconds: 'Sekundy na panel (nominalnie)',
  panelSecondsHelp: 'Używane, dopóki nie zmierzymy tempa linii.',
  panelPrefix: 'Kody paneli zaczynają się od',
  panelPrefixHelp: 'Zostaw puste, jeśli panele nie mają kodu. Wtedy licz dotknięciem.',
  wrongNumber: 'Podaj liczbę większą od zera.',
  startAnyway: 'Zacznij z pustymi slotami',
  stop: 'Zatrzymaj',
  stopTitle: 'Dlaczego linia stoi?',
  stopReasons: {
    'run-out': 'Koniec rolki',
    splice: 'Łączenie',
    jam: 'Zacięcie',
    'pick-errors': 'Błędy pobrania',
    'paste-or-print': 'Pasta lub druk',
    quality: 'Jakość',
    'no-boards': 'Brak płytek',
    break: 'Przerwa',
    maintenance: 'Konserwacja',
    other: 'Inne',
  },
  resume: 'Wznów',
  end: 'Zakończ serię',
  endTitle: 'Zakończyć tę serię?',
  endText: (done, wanted) =>
    `Policzono ${done} z ${plural(wanted, `${formatCount(wanted)} panelu`, `${formatCount(wanted)} paneli`)}. Rolki zostają na slotach.`,
  plusOne: '+1\u00a0panel',
  plusMany: '+\u00a0n',
  plusManyTitle: 'Ile paneli więcej?',
  counted: (panels) => `Panel ${panels}.`,
  skippedUnknown: 'Pominięte płytki: nie podano',
  skipped: (count) => (count === 0 ? 'Pominięte płytki: brak' : `Pominięte płytki: ${count}`),
  skippedTitle: 'Które płytki następnego panelu pominąć?',
  skippedHelp: 'Dotknij każdej płytki oznaczonej jako zła. Następne liczenie to uwzględni.',
  skippedUse: (count) =>
    count === 0
      ? 'Nie pomijaj płytek'
      : byNumber(count, {
          one: `Pomiń ${count} płytkę`,
          few: `Pomiń ${count} płytki`,
          other: `Pomiń ${count} płytek`,
        }),
  skippedManyTitle: (panels) =>
    byNumber(panels, {
      one: 'Płytki pominięte na tym panelu?',
      few: `Płytki pominięte na tych ${formatCount(panels)} panelach?`,
      other: `Płytki pominięte na tych ${formatCount(panels)} panelach?`,
    }),
  skippedMost: (boards) =>
    byNumber(boards, {
      one: `Jest tylko ${boards} płytka.`,
      few: `Są tylko ${boards} płytki. Podaj mniej.`,
      other: `Jest tylko ${boards} płytek. Podaj mniej.`,
    }),
  skippedNotKnown: 'Nie wiadomo',
  scrap: 'Panele złomowane',
  scrapTitle: 'Ile paneli złomować?',
  scrapHelp: 'Pozostają policzone: ich komponenty są zużyte. Tyle samo trzeba zbudować dodatkowo.',
  scrapMost: (panels) =>
    byNumber(panels, {
      one: `Policzono tylko ${panels} dobry panel.`,
      few: `Policzono tylko ${panels} dobre panele. Podaj mniej.`,
      other: `Policzono tylko ${panels} dobrych paneli. Podaj mniej.`,
    }),
  scrapped: (panels) =>
    byNumber(panels, {
      one: `${formatCount(panels)} panel złomowany`,
      few: `${formatCount(panels)} panele złomowane`,
      other: `${formatCount(panels)} paneli złomowanych`,
    }),
  skipsUnknown: 'Pominiętych płytek nigdy nie podano: każda płytka liczy się jako zbudowana.',
  seenBefore: (code, machine) => `Panel ${code} wchodzi do ${machine}. Nic nie policzono.`,
  scansBefore: (machine) => `Panele skanowane tutaj wchodzą do ${machine}: nie są liczone`,
  countedBefore: (code) => `Panel ${code} jest już policzony w tej serii. Nic nie dodano.`,
  countedByStation: (station) => `Liczy maszyna: ${station}`,
  countedByHand: 'Liczone ręcznie, gdy maszyna milczy',
  machineUntil: (clock) => `licznik maszyny do ${clock}`,
  besideHand: (panels) =>
    byNumber(panels, {
      one: `${formatCount(panels)} panel policzony ręcznie, niedodany`,
      few: `${formatCount(panels)} panele policzone ręcznie, niedodane`,
      other: `${formatCount(panels)} paneli policzonych ręcznie, niedodanych`,
    }),
  setRight: 'Panele = …',
  setRightTitle: 'Ile paneli jest gotowych?',
  setRightHelp: 'Seria ma wtedy tę liczbę. Kto liczy, liczy dalej od niej.',
  setRightWhy: 'Dlaczego to inna liczba?',
  setRightYes: (panels) => `Ustaw ${panels}`,
  setRightMissing: 'Podaj inną liczbę i powód.',
  keptBeside: (code) => `Panel ${code} zapisany. Tę linię liczy maszyna, więc go nie dodano.`,
  silent: (station, clock) => `${station} milczy od ${clock}. Licz panele ręcznie, aż wróci.`,
  silentShort: 'Licznik maszyny milczy',
  believes: (slots) =>
    `Według maszyny jest inaczej na ${plural(slots, `${formatCount(slots)} slocie`, `${formatCount(slots)} slotach`)}.`,
  believesAct: 'Zobacz Stacje',
  takeBack: 'Cofnij',
  stoppedSince: (reason, clock, span) => `Postój: ${reason}, od ${clock}, już ${span}`,
  stoodSince: 'Stoi od',
  stoodLast: (clock, span) => `${clock}, ostatni panel, ${span} temu`,
  stoodNow: (clock) => `teraz, ${clock}`,
  quietSince: (clock, span) => `Nie policzono panelu od ${clock}, już ${span}`,
  quietAct: 'Wszystkie godziny zakładają, że linia utrzymała tempo. Policz panele albo wpisz postój.',
  ifPace: 'jeśli utrzymała tempo',
  blocked: 'Zablokowana rolka',
  ifStarts: 'jeśli ruszy teraz',
  soon: (clock, span) => `${clock}, za ${span}`,
  gone: (clock, span) => `${clock}, ${span} temu`,
  ago: (span) => `${span} temu`,
  panels: (done, wanted) =>
    `${done} z ${plural(wanted, `${formatCount(wanted)} panelu`, `${formatCount(wanted)} paneli`)}`,
  pace: {
    seen: (seconds) => `${seconds} s na panel, zmierzone`,
    nominal: (seconds) => `${seconds} s na panel, nominalnie`,
  },
  runEnds: (moment) => `seria kończy się około ${moment}`,
  runDone: 'Wszystkie panele są policzone.',
  inTime: (span) => `za ${span}`,
  overdue: 'teraz',
  parts: (count) => `${formatCount(count)} szt.`,
  dueTitle: 'Nadchodzące łączenia',
  firstOf: (shown, all) => `pierwsze ${shown} z ${all}`,
  outlast: (count) =>
    byNumber(count, {
      one: `${count} slot wystarczy na serię`,
      few: `${count} sloty wystarczą na serię`,
      other: `${count} slotów wystarczy na serię`,
    }),
  unknown: (count) =>
    byNumber(count, {
      one: `${count} slot nie ma liczby, więc koniec rolki jest nieznany:`,
      few: `${count} sloty nie mają liczby, więc koniec rolek jest nieznany:`,
      other: `${count} slotów nie ma liczby, więc koniec rolek jest nieznany:`,
    }),
  noRules: 'Ta linia nie ma jeszcze reguł, więc końce rolek są nieznane.',
  toRules: 'Podaj reguły linii',
  nothingDue: 'Żadna rolka nie skończy się przed końcem serii.',
  between: (early, late) => `między ${early} a ${late}`,
  inRange: (early, late) => `za ${early} do ${late}`,
  window: (opens, closes) => `łącz od ${opens} do ${closes}`,
  windowNow: (closes) => `łącz teraz, do ${closes}`,
  windowGone: (closes) => `okno łączenia minęło o ${closes}`,
  levels: { quiet: '', soon: 'wkrótce', due: 'łącz teraz', late: 'spóźnione' },
  acknowledge: 'Idę',
  splice: 'Połącz',
  more: 'Wszystkie sloty',
  less: 'Tylko pilne',
  caution:
    'Łącz i sięgaj do środka tylko, gdy maszyna stoi albo podajnik jest poza strefą chronioną, jak mówi jego instrukcja. Tnij z dala od palców. Lokalne zasady mają pierwszeństwo.',
  nowTitle: 'Co zrobić teraz',
  walkBy: (clock) => `do ${clock}`,
  goes: (name) => `Idzie ${name}`,
  allWalks: (count) =>
    count === 0
      ? 'Obchody'
      : byNumber(count, { one: `${count} obchód`, few: `${count} obchody`, other: `${count} obchodów` }),
  misses: (count) => `na ${count} brak czasu`,
  horizonOf: 'Pokazane godziny',
  sheet: { window: 'Kiedy', runsOut: 'Koniec', left: 'Zostało', reel: 'Rolka' },
  walksTitle: 'Obchody',
  walkNow: 'Idź teraz',
  walkAt: (clock, span) => `${clock}, za ${span}`,
  walkSplices: (count) =>
    byNumber(count, {
      one: `${count} łączenie`,
      few: `${count} łączenia, jeden obchód`,
      other: `${count} łączeń, jeden obchód`,
    }),
  walkNone: 'W najbliższych godzinach nie ma obchodu.',
  walkMore: (count) =>
    byNumber(count, {
      one: `później jeszcze ${count} obchód`,
      few: `później jeszcze ${count} obchody`,
      other: `później jeszcze ${count} obchodów`,
    }),
  walkOf: (person) => `Osoba ${person}`,
  walk: (number) => `obchód ${number}`,
  crew: 'Osoby na tej linii',
  missTitle: 'Nie da się zdążyć',
  miss: {
    windowTooShort: (moment) => `łącz do ${moment}: czas jest na to za krótki`,
    closesTooSoon: (moment) => `łącz do ${moment}: nikt nie zdąży dojść`,
    crowdedOut: (moment) => `łącz do ${moment}: wszyscy są zajęci innymi łączeniami`,
  },
  remedies: {
    cutEarly: (parts, moment) =>
      `Utnij starą taśmę wcześniej, o ${moment}: strata około ${formatCount(parts)} szt.`,
    secondPerson: (moment) => `Druga osoba idzie do ${moment}`,
    secondSlot: (moment) => `Załaduj komponent na drugi slot do ${moment}`,
  },
  orRemedy: (remedy) => `albo: ${remedy}`,
  missMore: (count) => `później jeszcze ${count}`,
  noRemedy: 'Linia stanie. Miej gotową następną rolkę.',
  feedsAfter: (slot) => `czeka, aż ${slot} będzie pusty`,
  backup: (slot) => `potem podaje ${slot}, bez postoju`,
  lossIs: (share) => `straty ${share}`,
  horizon: (hours) => `${hours} h`,
  shiftBreak: 'bez pracy',
  now: 'teraz',
};

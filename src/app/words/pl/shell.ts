import type { words as english } from '../en/shell.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  nav: {
    line: 'Linia',
    load: 'Załaduj',
    change: 'Przezbrój',
    stock: 'Rolki',
    log: 'Dziennik',
    plant: 'Zakład',
    search: 'Szukaj',
    lines: 'Wszystkie linie',
    wall: 'Ekran ścienny',
  },
  noLine: 'Nie ma jeszcze linii',
  nowOn: (line: string) => `Teraz: ${line}`,
  noSetup: 'nie wybrano setupu',
  side: { top: 'góra', bottom: 'dół' },
  revision: (revision) => `rew. ${revision}`,
  run: (done, wanted) =>
    `${done} z ${byNumber(wanted, { one: `${wanted} panelu`, few: `${wanted} paneli`, other: `${wanted} paneli` })}`,
  signIn: 'Zaloguj się',
  signInFirst: 'Najpierw zeskanuj kartę',
  needsRole: (role) => `Wymaga: ${role}`,
  signInHelp: 'Zeskanuj swoją kartę albo wybierz nazwisko.',
  signedInAs: (name) => `Zalogowano: ${name}`,
  signOut: 'Wyloguj się',
  roles: { operator: 'Operator', lead: 'Lider zmiany', engineer: 'Inżynier' },
  offlineReady: 'Gotowe do pracy bez sieci',
  gettingReady: 'Przygotowanie do pracy bez sieci…',
  toSend: (count) => `${count} do wysłania`,
  help: 'Pomoc',
  skipToDock: 'Przejdź do Wpisz i Kamera',
  done: 'Gotowe',
  cancel: 'Anuluj',
  detailsOf: (what) => `Więcej: ${what}`,
  lessOf: (what) => `Mniej: ${what}`,
  close: 'Zamknij',
  newVersion: 'Nowa wersja jest gotowa.',
  update: 'Zaktualizuj teraz',
  updateLater: 'Poczeka, aż żadne zadanie nie będzie otwarte.',
  languageLater: 'Tego języka jeszcze nie ma na tym tablecie. Połącz go z siecią i wybierz ponownie.',
  leftAlone: (name, minutes) =>
    `Wylogowano: ${name}. ${byNumber(minutes, { one: `${minutes} minuta`, few: `${minutes} minuty`, other: `${minutes} minut` })} bez dotknięcia. Otwarta praca zostaje.`,
  shiftOver: (name) => `Wylogowano: ${name}. Minęła zmiana. Otwarta praca zostaje.`,
  notInPractice: 'Niedostępne w ćwiczeniu',
  fault: {
    'disk-full': {
      title: 'Ten tablet jest pełny',
      text: 'Nie można tu już nic zapisać ani zweryfikować. Wszystko, co przyjęto, jest bezpieczne. Pracuj na innym tablecie. Zwolnij miejsce na tym i spróbuj ponownie.',
    },
    'closed-by-newer': {
      title: 'Nowsza wersja jest otwarta w innym oknie',
      text: 'To okno to starsza wersja i zostało zatrzymane. Wszystko, co przyjęto, jest bezpieczne. Odśwież, aby pracować dalej.',
    },
    lost: {
      title: 'Nie można otworzyć dziennika na tym tablecie',
      text: 'Pracuj na innym tablecie i wezwij opiekuna tabletów. Nie czyść danych przeglądarki: niewysłane wpisy być może da się jeszcze uratować.',
    },
    unknown: {
      title: 'Nie można zapisać dziennika',
      text: 'To, co pokazano jako zrobione, jest bezpieczne. Ostatnie działanie nie zostało zapisane. Odśwież i sprawdź dziennik, zanim pójdziesz dalej.',
    },
  },
  reload: 'Odśwież',
  tryAgain: 'Spróbuj znów',
  muted: 'Bez dźwięku, dopóki nie dotkniesz ekranu',
  storageLow: (megabytes) => `Zostało tylko ${megabytes} MB na dziennik na tym tablecie.`,
  storageEnds:
    'W tym tempie miejsce na dziennik na tym tablecie skończy się w ciągu tygodnia. Zwolnij miejsce.',
};

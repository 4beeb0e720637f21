import type { words as english } from '../en/server.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  noKey: 'Ta strona nie może podpisywać wpisów',
  noKeyHelp:
    'Klucze, kamera i start bez sieci wymagają bezpiecznej strony. Otwórz aplikację przez adres https (serwer go wypisuje, razem z tym, jak mu zaufać) albo na samym komputerze serwera. Do tego czasu wpisy zostają na tym tablecie.',
  alone: 'Ten tablet pracuje samodzielnie',
  aloneHelp:
    'Weryfikuje, ostrzega i prowadzi dziennik bez serwera. Dołącz do serwera, aby dzielić dziennik z innymi tabletami, także starsze wpisy.',
  joinTitle: 'Dołącz do serwera zakładu',
  joinAgain: 'Dołącz znów',
  code: 'Kod jednorazowy',
  codeHelp: 'Dziesięć liter i cyfr, z tabletu lidera albo z serwera. Wpisz go albo zeskanuj jego kod.',
  codeWrong: 'Kod ma dziesięć liter i cyfr, np. ABCDE-23456.',
  name: 'Jak ludzie nazywają ten tablet',
  nameMissing: 'Podaj nazwę, aby lider odróżniał tablety.',
  join: 'Dołącz',
  joining: 'Dołączanie…',
  joined: (plant) => `Dołączono: ${plant}.`,
  standing: 'Synchronizacja',
  phases: {
    alone: 'Niedołączony',
    follower: 'Synchronizuje inne okno tego tabletu',
    syncing: 'Wysyłanie i pobieranie…',
    live: 'Zsynchronizowany: tablety widzą swoje wpisy od razu',
    waiting: 'Czeka na ponowną próbę',
    refused: 'Odrzucony przez serwer: ktoś musi zadziałać',
  },
  plant: 'Zakład',
  lastAnswer: 'Ostatnia odpowiedź',
  ago: (span) => `${span} temu`,
  never: 'brak, odkąd aplikacja jest otwarta',
  backlog: 'Do wysłania',
  entries: (count) =>
    byNumber(count, { one: `${count} wpis`, few: `${count} wpisy`, other: `${count} wpisów` }),
  nothing: 'nic, serwer ma wszystko',
  clock: 'Zegar',
  clockRight: 'jak na serwerze',
  clockBehind: (span) => `${span} za zegarem serwera: ustaw go`,
  clockAhead: (span) => `${span} przed zegarem serwera: ustaw go`,
  why: 'Dlaczego',
  quarantined: 'Odłożone',
  quarantinedHelp:
    'Serwer odłożył te wpisy: ich pieczęć lub miejsce w łańcuchu się nie zgadza. Nic nie ginie; zostają też tutaj. Wezwij opiekuna serwera.',
  rolledBack: 'Dziennik serwera mógł się cofnąć',
  rolledBackHelp: (span) =>
    `Zauważono ${span} temu: serwer mógł mieć mniej niż wcześniej, jak po przywróceniu kopii zapasowej. Tablety wysyłają ponownie to, co mają. Sprawdź dziennik i listę tabletów.`,
  rolledBackSeen: 'Sprawdzono',
  headFaults: {
    forked: 'Serwer pokazuje dwa dzienniki',
    'other-key': 'Serwer ma inny klucz',
    'no-proof': 'Serwer nie dowodzi swojego dziennika',
  },
  headFaultHelp: {
    forked: (span) =>
      `Zauważono ${span} temu: jego dziennik nie jest dalszym ciągiem tego, który pokazał wcześniej. Ktoś mógł go zmienić. Pracuj dalej i wezwij opiekuna serwera.`,
    'other-key': (span) =>
      `Zauważono ${span} temu: podpisuje innym kluczem niż wtedy, gdy ten tablet dołączał. To prawidłowe tylko po przeniesieniu na inny komputer. Zapytaj opiekuna serwera.`,
    'no-proof': (span) =>
      `Zauważono ${span} temu: wcześniej dowodził swojego dziennika. Pracuj dalej i zapytaj opiekuna serwera.`,
  },
  quarantinedHere: (count) =>
    byNumber(count, {
      one: `${count} wpis jest tu poza dziennikiem`,
      few: `${count} wpisy są tu poza dziennikiem`,
      other: `${count} wpisów jest tu poza dziennikiem`,
    }),
  quarantinedHereHelp:
    'Tekst, podpis lub zegar się nie zgadza. Wszystkie inne wpisy przyjęto. Wezwij opiekuna serwera.',
  clocksOff: 'Zegary, które źle chodzą',
  clockOfAhead: (name, span) => `${name}: spieszy się o ${span}`,
  clockOfBehind: (name, span) => `${name}: spóźnia się o ${span}`,
  clocksOffHelp: 'Ustaw je: to, co zapisują te tablety, może stać w złej kolejności.',
  stateNears: (share) => `To, od czego zaczyna nowy tablet, zajmuje ${share} miejsca`,
  stateNearsHelp:
    'Gdy miejsce się skończy, nowy tablet najpierw przeczyta cały dziennik, co trwa minuty. Dołącz zapasowe tablety, póki jest szybko, i powiedz opiekunowi serwera.',
  stateOver: 'Nowe tablety zaczynają powoli',
  stateOverHelp:
    'To, od czego zaczyna nowy tablet, jest za duże do przekazania: najpierw czyta cały dziennik, co trwa minuty. Dołącz go, zanim będzie potrzebny, i zostaw otwarty pod ładowarką. Nic nie ginie.',
  now: 'Synchronizuj teraz',
  causes: {
    unreachable: 'Serwer nie odpowiada. Pracuj dalej; wpisy czekają tutaj.',
    unreadable: 'To, co odpowiada, nie jest serwerem zakładu. Sprawdź sieć.',
    'other-plant':
      'To serwer innego zakładu. Nic tam nie trafia; wpisy czekają tutaj. Nie dołączaj: wezwij opiekuna serwera.',
    'tablet-unknown': 'Serwer nie zna tego tabletu. Dołącz ponownie z nowym kodem.',
    'tablet-revoked': 'Lider wykluczył ten tablet. Może dołączyć ponownie z nowym kodem.',
    'code-wrong': 'Ten kod jest nieznany, użyty albo starszy niż dziesięć minut. Poproś o nowy.',
    'tablet-active':
      'Ten tablet jest nadal wpuszczony pod starszym kluczem. Najpierw lider go wyklucza; potem wpuszcza go nowy kod.',
    'wire-too-old': 'Ta aplikacja jest starsza niż serwer. Odśwież ją tam, gdzie serwer odpowiada.',
    'wire-too-new': 'Ta aplikacja jest nowsza niż serwer. Serwer wymaga aktualizacji.',
    'time-off': 'Zegar tego tabletu za bardzo się myli. Ustaw go.',
    'signature-wrong': 'Serwer nie przyjmuje klucza tego tabletu. Dołącz ponownie z nowym kodem.',
    'person-unproven': 'Logowanie wygasło. Zeskanuj kartę i wpisz PIN ponownie.',
    'role-lacking': 'Może to zrobić tylko lider zmiany lub inżynier.',
    'too-often': 'Za dużo prób. Poczekaj minutę.',
    'store-away': 'Serwer nie ma dostępu do swojej pamięci. Próbuje ponownie.',
    'store-full': 'Dysk serwera jest pełny. Wpisy czekają tutaj. Wezwij opiekuna serwera.',
    'store-read-only': 'Serwer nie może zapisać dziennika. Wpisy czekają tutaj. Wezwij opiekuna serwera.',
    'server-fault': 'Serwer miał usterkę; zobacz jego log. Tablet próbuje ponownie.',
    stopping: 'Serwer się zatrzymuje.',
  },
  otherCause: (code) => `Serwer mówi: ${code}.`,
  leadTitle: 'Inne tablety',
  leadHelp: 'Lider lub inżynier wpuszcza i wyklucza tablety: karta i PIN.',
  leadOpen: 'Wpuść lub wyklucz tablety',
  leadOffline: 'Tylko serwer wpuszcza tablety, a teraz nie odpowiada. Spróbuj, gdy odpowie.',
  newCode: 'Nowy kod dla tabletu',
  newScreenCode: 'Kod dla ekranu ściennego',
  codeForScreen:
    'Na ekranie otwórz aplikację i wpisz ten kod. Pokazuje wszystkie linie i nic nie może zmienić.',
  codeUntilScreen: (span) => `Dla jednego ekranu ściennego, ważny ${span}.`,
  isScreen: 'ekran ścienny',
  screenNotEmpty:
    'Ekran ścienny musi zacząć pusty, a ten tablet ma dziennik. Użyj innej przeglądarki i nowego kodu.',
  codeFor: 'Na nowym tablecie zeskanuj to kamerą albo otwórz tam aplikację i wpisz kod.',
  codeUntil: (span) => `Dla jednego tabletu, ważny ${span}.`,
  codeOver: 'Ten kod wygasł.',
  tablets: 'Tablety',
  seen: (span) => `ostatnio widziany ${span} temu`,
  neverSeen: 'niewidziany, odkąd dołączył',
  clockOff: (span) => `zegar myli się o ${span}`,
  thisOne: 'ten tablet',
  isOut: 'wykluczony',
  revoke: 'Wyklucz',
  revokeTitle: (name) => `Wykluczyć ${name}?`,
  revokeHelp:
    'Dla zgubionego lub sprzedanego tabletu. Nie może już wysyłać ani pobierać. Jego dotychczasowe wpisy zostają w dzienniku.',
  revoked: (name) => `${name}: wykluczony.`,
  list: 'Odśwież',
};

import type { words as english } from '../en/stations.ts';
import { byNumber, formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  caution:
    'Pomoc obok własnych zabezpieczeń maszyny, nie funkcja bezpieczeństwa. Słucha, a pyta lub odpowiada tylko tam, gdzie to ustawiono. Żadna maszyna nie jest sterowana.',
  who: (line) => `Kto liczy na ${line}?`,
  whoHelp:
    'Jeden licznik na linię. Liczenie ręczne obok stacji jest zapisywane i pokazywane, ale nie dodawane.',
  hand: 'Ludzie, ręcznie',
  handNow: 'Na tej linii liczą teraz ludzie.',
  stationNow: (station) => `Tę linię liczy teraz ${station}.`,
  checkInLine: 'Sprawdź „Panele na linii” w regułach linii: wynikają z miejsca, w którym liczy się panele.',
  none: 'Nie ma jeszcze znanej stacji',
  noneHelp: 'Uruchom to na komputerze blisko maszyn. Stacja pokaże się tutaj, gdy jej łącze dołączy.',
  silent: (clock) => `Milczy od ${clock}`,
  heard: (clock) => `Słyszana o ${clock}`,
  never: 'Nigdy niesłyszana',
  counts: 'Liczy tę linię',
  line: 'Linia',
  stands: 'Stoi',
  places: { in: 'przed pierwszą maszyną', work: 'przy maszynie', out: 'za ostatnią maszyną' },
  atMachine: (machine) => `przy ${machine}`,
  lastHeard: 'Ostatnio słyszana',
  total: 'Jej suma',
  boot: (boot) => `odkąd włączono ją jako ${boot}`,
  heardAs: (boot) => `odkąd łącze ostatnio zaczęło jej słuchać, jako ${boot}`,
  state: 'Stan',
  recipe: 'Program',
  noState: 'Nie podaje',
  states: {
    1: 'Pracuje',
    2: 'W gotowości',
    3: 'Prace inżynierskie',
    4: 'Planowany postój',
    5: 'Nieplanowany postój',
    6: 'Poza planem',
  },
  otherState: 'Własny stan producenta',
  version: 'Łącze',
  linkOf: (version, tablet) => `wersja ${version}, ${tablet}`,
  noticed: 'Niezrozumiane lub niepoliczone',
  allUnderstood: 'Wszystko zrozumiano.',
  notices: {
    'not-understood': 'Wiadomości, których nie dało się odczytać',
    'wrong-secret': 'Wiadomości bez właściwego sekretu',
    'clock-off': 'Jej zegar myli się o ponad pięć minut. Nic nie jest nim datowane',
    'total-fell':
      'Jej suma spadła bez wyłączenia. Liczenie idzie dalej od niej; co przepadło pomiędzy, nie jest policzone',
    'two-devices':
      'Dwa urządzenia wysyłają pod jedną nazwą. Liczy pierwsze. Nadaj drugiemu własną nazwę, potem wyłącz i włącz oba',
    'code-twice': 'Kod panelu przyszedł dwa razy. Oznacza tylko pierwszy panel',
    'not-used': 'Wiadomości, których tu się nie używa',
    'other-handle': 'Wysyła maszyna, dla której nie ustawiono stacji. Ustaw ją, z jej handle',
    'not-connected': 'Nie połączono z jej brokerem. Próba jest ponawiana',
    'not-answered': 'Nie podała, co ma załadowane. Jest pytana ponownie',
    'not-offered': 'Nie podała, jakiego setupu potrzebuje. Jest pytana ponownie',
    'loads-cut': 'Podała więcej miejsc, niż się czyta. Porównywane są tylko pierwsze',
    'asked-off': 'Pytała o materiały i nie dostała odpowiedzi: to nie jest włączone',
    'asked-often': 'Pytała ponad 60 razy na minutę. Na resztę nie odpowiedziano',
    'not-replied': 'Zapytała i zniknęła przed odpowiedzią',
    'code-again': 'Kod panelu przyszedł ponownie. Liczy się raz na serię',
    'not-heard':
      'Nie słyszano jej przez chwilę: tego, co wtedy przeszło, nie ma w sumie. Porównaj z linią i ustaw „Panele = …”, gdzie jest źle',
    'no-boards': 'Nie podaje płytek, więc niczego nie liczy. Włącz to na maszynie',
    'other-machine':
      'Płytki innej maszyny na tym samym połączeniu. Nie są liczone; podaj właściwą w pliku łącza (machineId)',
    'wrong-channel':
      'Ten port to kanał między dwiema maszynami. Łącze się rozłączyło; wpisz do jego pliku port nadzorczy maszyny',
    'by-hand':
      'Płytki włożone lub wyjęte ręcznie. Nie są liczone; jeśli którąś zbudowano, ustaw „Panele = …”',
    'failed-board':
      'Płytki, które maszyna nazywa wadliwymi. Zużyły komponenty i są policzone; złomuj je, jeśli takie są',
    'board-twice': 'Płytki podane dwa razy. Każda jest policzona raz',
    'machine-says': 'Maszyna mówi',
  },
  other: 'Coś innego',
  times: (times) =>
    byNumber(times, { one: 'raz', few: `${formatCount(times)} razy`, other: `${formatCount(times)} razy` }),
  foundTitle: 'Maszyna i dziennik się różnią',
  found: {
    'tape-differs': (slot, clock, machine, here) =>
      `${slot}, ${clock}: maszyna idzie dalej z ${machine}, skany mówią ${here}. Nic nie policzono. Zeskanuj rolkę na slocie.`,
    'told-late': (slot, clock, machine) =>
      `${slot}, ${clock}: maszyna za późno podała, że zaczęła się ${machine}. Nic nie policzono. Policz rolkę.`,
    'empty-early': (slot, clock, machine, _here, parts) =>
      `${slot}, ${clock}: maszyna mówi, że ${machine} jest pusta. Według dziennika zostało: ${parts}. Policz rolkę.`,
    'life-expired': (_slot, clock, machine) =>
      `${machine}, ${clock}: maszyna mówi, że czas na hali minął. Zobacz w Rolki.`,
    'life-restored': (_slot, clock, machine) =>
      `${machine}, ${clock}: maszyna mówi, że rolka jest znów zdatna. Wpisz, jak ją wygrzano lub osuszono.`,
  },
  loads: {
    title: 'Stan według maszyny',
    said: (clock, same) =>
      `Podano o ${clock}. ${byNumber(same, { one: `${formatCount(same)} slot jest zgodny ze skanami.`, few: `${formatCount(same)} sloty są zgodne ze skanami.`, other: `${formatCount(same)} slotów jest zgodnych ze skanami.` })}`,
    differs: (slot, machine, here) => `${slot}: według maszyny ${machine}, według skanów ${here}.`,
    nothing: 'nic',
    look: 'Otwórz slot i zeskanuj tam rolkę. Jeśli skany są dobre, popraw to na maszynie.',
    scan: 'Zeskanuj tam rolkę.',
    open: (slot) => `Otwórz ${slot}`,
    more: (slots) => `i jeszcze ${formatCount(slots)}`,
    never: 'Samo to nie zmienia żadnego slotu.',
    later: (slots) => `Zeskanowane po tym, jak maszyna to podała; może jeszcze nie wiedzieć: ${slots}.`,
    untold: (slots) => `Maszyna nie podaje komponentu ani znanej rolki: ${slots}.`,
    unknown: (places) =>
      `Miejsca, które nie są slotami tej linii: ${places}. Nazwij je w pliku łącza (slots).`,
  },
  answers: {
    title: 'Gdy maszyna pyta: czy ta rolka jest właściwa?',
    caution: 'Pomoc obok własnych zabezpieczeń maszyny, nie funkcja bezpieczeństwa.',
    help: 'Odpowiada się według ostatnich werdyktów. Każda odpowiedź jest w dzienniku. Co maszyna z nią zrobi, ustawia się na maszynie.',
    off: 'Nie odpowiadaj',
    on: { Warning: 'Odpowiadaj; bez pewności ostrzegaj', Failed: 'Odpowiadaj; bez pewności mów nie' },
    offNow: 'Maszyna nie dostaje już odpowiedzi.',
    onNow: {
      Warning: 'Maszyna dostaje teraz odpowiedzi. Bez pewności jest ostrzegana.',
      Failed: 'Maszyna dostaje teraz odpowiedzi. Bez pewności słyszy nie.',
    },
    last: (clock, right, unsure, wrong) =>
      `Ostatnia odpowiedź dla każdego miejsca, najnowsza ${clock}: ${right} dobrze, ${unsure} z ostrzeżeniem, ${wrong} nie.`,
    one: (slot, reel, result, why) => `${slot}, ${reel}: ${result}, ${why}.`,
    results: { Success: 'dobrze', Warning: 'ostrzeżenie', Failed: 'nie' },
    whys: {
      verified: 'zweryfikowano ją tam',
      refused: 'odrzucono ją tam',
      held: 'werdykt czeka na lidera',
      'other-reel': 'zweryfikowano tam inną rolkę',
      'other-part': 'zweryfikowano tam inny komponent',
      'wrong-feeder': 'podajnik nie jest tam właściwy',
      blocked: 'materiał jest zablokowany',
      'no-setup': 'nie wybrano setupu',
      'unknown-slot': 'linia nie ma takiego slotu',
      'not-in-setup': 'setup niczego tam nie wymaga',
      'not-verified': 'niczego tam nie zweryfikowano',
      'unknown-reel': 'rolki nigdy nie zeskanowano',
      'no-reel-told': 'maszyna nie podała rolki',
      'out-of-date': 'nie dało się odczytać dziennika',
      'in-conflict': 'dwa tablety mówią o tym co innego',
      unproven: 'nic nie dowodzi decyzji, która ją dopuściła',
    },
  },
  clear: 'Załatwione …',
  clearTitle: 'Czy to spostrzeżenie jest załatwione?',
  clearHelp: 'Znika z tej listy. To, co powiedziały obie strony, zostaje w dzienniku.',
  clearWhy: 'Co z tego wyszło?',
  clearYes: 'Jest załatwione',
  cleared: 'Załatwione. Obie strony zostają w dzienniku.',
  ownName: 'Jej własna nazwa',
  rename: 'Zmień nazwę',
  renameTitle: 'Jak nazywa się ta stacja?',
  renameHelp: 'Tylko dla ludzi. Jej łącze działa dalej pod własną nazwą.',
  renameName: 'Nazwa',
  renameYes: 'Zmień nazwę',
  renameMissing: 'Podaj inną nazwę.',
  noReel: 'rolka bez kodu',
  noScan: 'nic o tym',
  bothTitle: 'Policzyły obie strony',
  both: {
    machine: (clock, hand, machine) =>
      `${clock}: wróciła po milczeniu. Ręcznie ${hand}, przez maszynę ${machine}. Obowiązuje liczba maszyny.`,
    hand: (clock, hand, machine) =>
      `${clock}: zaczęła od nowa po milczeniu. Ręcznie ${hand}, przez maszynę ${machine}. Obowiązuje liczba ręczna.`,
  },
  bothHelp: 'Czy to źle? Ustaw liczbę przez „Panele = …” na ekranie linii.',
  beside: (panels) =>
    byNumber(panels, {
      one: `${formatCount(panels)} panel tej serii policzono ręcznie obok stacji.`,
      few: `${formatCount(panels)} panele tej serii policzono ręcznie obok stacji.`,
      other: `${formatCount(panels)} paneli tej serii policzono ręcznie obok stacji.`,
    }),
  outside: (panels) =>
    byNumber(panels, {
      one: `${formatCount(panels)} panel przeszedł, gdy nic nie budowano. Nie ma go w żadnej serii.`,
      few: `${formatCount(panels)} panele przeszły, gdy nic nie budowano. Nie ma ich w żadnej serii.`,
      other: `${formatCount(panels)} paneli przeszło, gdy nic nie budowano. Nie ma ich w żadnej serii.`,
    }),
  setTitle: 'Co ustawić na maszynie',
  setHelp:
    'Łącze nawiązuje tam połączenie z maszyną, na kanale dla systemów nadzorczych, i tylko słucha. Włącz na niej śledzenie płytek.',
  setAddress: 'Adres',
  setNever: 'Nigdy nie podawaj portu kanału między dwiema maszynami (50100 i tor): to zatrzymałoby linię.',
  typeTitle: 'Co wpisać w urządzeniu',
  typeHelp:
    'Przy każdym panelu i co dziesięć sekund wysyła własną bieżącą sumę. Nigdy „jeszcze jeden”: co przepadnie, nadrobi następna wiadomość.',
  typeAddress: 'Adres',
  typeHeader: 'Nagłówek',
  typeSecret: 'SEKRET',
  typeBody: 'Wiadomość',
  typeBoot:
    'boot: nowy tekst przy każdym włączeniu. total: panele od tamtej pory. at: jego zegar, jeśli go ma.',
  machineTitle: 'Co wpisać na maszynie',
  machineHelp:
    'Maszyna wysyła przez IPC-2591 (AMQP 1.0), każdą wiadomość osobno lub kilka w jednej, spakowane lub nie. Jej handle musi być taki jak w pliku łącza.',
  machineAddress: 'Adres brokera (network URI)',
  machineTarget: 'Adres docelowy',
  machineAny: 'dowolny',
  machineAt: 'Jej wiadomości pobiera się z',
  machineProof: 'Nazwa i hasło: jak w pliku łącza. Bez nich tam: ANONYMOUS.',
  typeAnswer: 'Odpowiedź 200 z najwyższą zapisaną sumą. 401: sekret jest zły. 400: co jest źle i gdzie.',
};

import type { words as english } from '../en/in-line.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Panele na linii',
  help: 'Gdzie zmienia się rolka, te panele są niepewne. Podaj najwięcej, ile może ich kiedykolwiek być, także panel stojący przed maszyną. Gdzie nikt nic nie podał, przyjmuje się założenie.',
  behind: (machine) => `${machine}: panele tu gotowe, a jeszcze niepoliczone, najwyżej`,
  before: (machine) => `${machine}: panele policzone, zanim do niej dotrą, najwyżej`,
  missed: 'Panele, które przechodzą niepoliczone, najwyżej',
  guess: (most) => `Nie podano: przyjmuje się do ${most} (powszechna praktyka).`,
  seen: (panels, most) =>
    `W obu miejscach zeskanowano ${byNumber(panels, { one: `${panels} panel`, few: `${panels} panele`, other: `${panels} paneli` })}: między nimi było do ${most}.`,
  takeSeen: 'Przyjmij to, co pokazały skany',
  takeHelp:
    'To, co widziano, nie jest granicą: podaj więcej, gdzie może być więcej. Co skany pokażą ponad to, poszerza granicę samo.',
  scansHere: 'Panele skanowane na tym tablecie',
  count: 'Są liczone',
  goInto: (machine) => `Wchodzą do ${machine}`,
  scansHelp:
    'Zeskanuj kilka paneli przed maszyną i ponownie tam, gdzie są liczone: tak linia uczy się, ile jest pomiędzy.',
  save: 'Zapisz panele na linii',
  saved: 'Zapisano. Śledzenie od teraz z tego korzysta.',
  wrong: 'Podaj liczby całkowite od 0 do 500 i udział poniżej 50 %.',
  exitOpen: 'Otwórz ekran wyjścia',
  exitTitle: 'Zbudowane panele',
  exitHelp: 'Zeskanuj każdy panel, gdy opuszcza linię.',
  exitCounted: 'Policzono:',
  exitBefore: 'Już zeskanowany, nic nie dodano:',
  exitOther: 'To nie panel, nic nie dodano:',
  exitNoRun: 'Na tej linii nic nie jedzie. Najpierw uruchom.',
  exitLost: 'Ta strona straciła klawiaturę. Dotknij tu przed skanowaniem.',
  exitLeave: 'Opuść ten ekran',
};

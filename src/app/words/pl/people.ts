import type { words as english } from '../en/people.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  whoTitle: 'Kto pracuje?',
  yourLanguage: 'Twój język, na każdym tablecie',
  pinTitle: (name) => `PIN: ${name}`,
  pinHelp: 'Cztery do ośmiu cyfr.',
  pinWrong: 'To nie jest ten PIN.',
  pinLeft: (left) =>
    `To nie jest ten PIN. ${byNumber(left, { one: `Została ${left} próba.`, few: `Zostały ${left} próby.`, other: `Zostało ${left} prób.` })}`,
  pinLocked: (minutes) => `Za dużo prób. Zablokowane na ${minutes} min.`,
  pinUnsafe: 'PIN można sprawdzić tylko na bezpiecznej stronie. Otwórz aplikację przez adres https.',
  notSeenHere: (name) =>
    `Serwer nie odpowiada, a ten tablet nigdy nie potwierdził osoby ${name}. Spróbuj tam, gdzie serwer odpowiada.`,
  pinNotHere: (name) =>
    `Ten tablet nie zna jeszcze PIN-u osoby ${name}. Wpisz go raz tam, gdzie serwer odpowiada, albo na tablecie, na którym go ustawiono.`,
  seenTooLongAgo: (name) =>
    `Serwer nie odpowiada, a ten tablet potwierdził osobę ${name} ponad trzy dni temu. Spróbuj tam, gdzie serwer odpowiada.`,
  asking: 'Sprawdzanie…',
  enter: 'Gotowe',
  erase: 'Skasuj',
  nobody: 'Na tym tablecie nie ma jeszcze osób. Najpierw dodaj inżyniera; on doda pozostałych.',
  addFirst: 'Dodaj pierwszego inżyniera',
  awayTitle: (name) => `Wylogowano: ${name}`,
  awayHelp: (name) =>
    `Otwarta praca zostaje. ${name} loguje się, aby kontynuować. Dla każdej innej osoby zostaje zamknięta.`,
  awayClose: 'Zamknij otwartą pracę',
  badgeNeeded: (name) => `${name} nie ma PIN-u: zeskanuj kartę.`,
  scanBadge: 'Zeskanuj kartę',
  badgeHelp: 'Skanerem albo wpisz to, co wydrukowano pod kodem.',
  badgeUnknown: 'Nieznana karta. Zeskanuj inną.',
  noPin: (name) => `${name} nie ma jeszcze PIN-u. Inżynier ustawia go w Zakład.`,
  clearTitle: 'Decyduje lider',
  clearHelp: 'Zeskanuj kartę lidera. Potem wpisz PIN i powód.',
  clearReason: 'Powód',
  reasons: [
    'Zatwierdzone przez inżynierię dla tej partii',
    'Sprawdzone i zmierzone ręcznie',
    'Etykieta uszkodzona, komponent potwierdzony',
    'Policzone ręcznie',
  ],
  otherReason: 'Inny powód',
  accept: 'Przyjmij rolkę',
  decline: 'Odmów',
  cartKept: (f) => `${f.cart} ma teraz ${f.carries} dla ${f.slot}. ${f.held} zostaje poza wózkiem.`,
  cleared: (slot) => `Zwolniono dla ${slot}.`,
  declined: 'Odmówiono. Rolka zostaje poza linią.',
  withoutPasskey: 'Zapisz bez niego',
  ownNotSigned: 'Klucz dostępu nie podpisał. Nic nie zapisano.',
  withPasskey: 'Użyj klucza dostępu',
  passkeyAsks: 'Teraz trzeba użyć klucza dostępu.',
  passkeyFailed:
    'Klucz dostępu nie podpisał, więc nic nie zapisano. Spróbuj ponownie albo anuluj i użyj PIN-u.',
  needsRole: (role) => `Wymaga: ${role}`,
  quantityTitle: 'Ile sztuk jest na rolce?',
  quantityHelp:
    'Jak wydrukowano lub policzono. Możesz to później poprawić; dziennik zachowuje każdą poprawkę.',
  quantityWrong: 'Podaj liczbę całkowitą większą od zera.',
};

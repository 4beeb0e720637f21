import type { words as english } from '../en/passkeys.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: (count) =>
    byNumber(count, {
      one: `${count} klucz dostępu`,
      few: `${count} klucze dostępu`,
      other: `${count} kluczy dostępu`,
    }),
  openOf: (shown, name) => `${shown}: ${name}`,
  title: (name) => `Klucze dostępu: ${name}`,
  help: 'Klucz dostępu dowodzi, kto zdecydował: własna blokada tego tabletu albo klucz przyłożony do niego. Bez niego decyduje PIN.',
  none: 'Nie ma jeszcze klucza dostępu.',
  where: {
    unsafe:
      'Klucze dostępu wymagają bezpiecznej strony. Otwórz aplikację przez adres https. Tutaj decyduje PIN.',
    'by-number': 'Klucze dostępu wymagają adresu aplikacji z nazwą, nie z numerem. Tutaj decyduje PIN.',
    none: 'Ta przeglądarka nie ma kluczy dostępu. Tutaj decyduje PIN.',
  },
  who: (name) => `Może to zrobić tylko ${name} lub inżynier. Zeskanuj kartę, potem wpisz PIN.`,
  notThem: (name) => `Tylko ${name} lub inżynier.`,
  add: 'Dodaj klucz dostępu',
  name: 'Jak się nazywa?',
  nameHelp: 'Na przykład „niebieski klucz” albo „tablet z przodu linii”.',
  nameMissing: 'Wpisz nazwę.',
  make: 'Utwórz teraz',
  made: (name) => `Dodano klucz dostępu „${name}”.`,
  notMade: 'Nie utworzono klucza dostępu. Przyłóż klucz do tabletu albo odblokuj tablet i spróbuj ponownie.',
  remove: 'Usuń',
  removeOf: (name) => `Usuń klucz dostępu ${name}`,
  removed: (name) => `Usunięto klucz dostępu „${name}”.`,
  addedBy: (name, host) => `kto dodał: ${name}, dla strony pod ${host}`,
  fell: 'Jego licznik spadł: mógł zostać skopiowany. Usuń go i utwórz inny.',
  unproven:
    'Nic nie dowodzi, kto go dodał. Niczego nie dowodzi, dopóki lider nie potwierdzi tego w Dziennik.',
  signed: 'Podpis',
  byPasskey: (name) => `udowodnione kluczem dostępu: ${name}`,
  pinOnly: 'sam PIN, podał tablet',
  refused: 'Klucz dostępu tego nie dowodzi: podpisał coś innego albo nie należy do tej osoby.',
  checking: 'Sprawdzanie…',
};

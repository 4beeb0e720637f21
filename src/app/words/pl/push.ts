import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Wiadomości przy zamkniętej aplikacji',
  promise:
    'Dla liderów: ostrzeżenia bez odpowiedzi, zablokowane rolki w użyciu, stojące linie. Któraś może przyjść późno lub wcale: zostaw jeden tablet otwarty.',
  way: 'Idą zaszyfrowane przez usługę producenta tej przeglądarki. Serwer zakładu musi ją osiągać.',
  noBrowser: 'Ta przeglądarka nie przyjmuje wiadomości.',
  noServer: 'Żaden serwer nie odpowiada. Najpierw dołącz albo spróbuj później.',
  off: 'Serwer zakładu nie jest do tego przygotowany.',
  unreached: 'Serwer zakładu nie osiąga usługi. Tu nie ma wiadomości.',
  denied: 'Przeglądarka blokuje wiadomości. Zezwól na nie w jej ustawieniach dla tej strony.',
  turnOn: 'Włącz wiadomości',
  turnOff: 'Wyłącz wiadomości',
  isOn: 'Wiadomości tu przychodzą.',
  isOff: 'Wiadomości są tu wyłączone.',
  wrong: 'Nie udało się. Spróbuj ponownie.',
  first: 'Wiadomości tu docierają.',
  warning: (line, slot) => `${line}: nikt nie odpowiada na ostrzeżenie dla ${slot}.`,
  blocked: (line, slot) => `${line}: zablokowana rolka jest w użyciu na ${slot}.`,
  stood: (line) => `${line} stoi.`,
};

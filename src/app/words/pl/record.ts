import type { words as english } from '../en/record.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Zapis na papierze',
  asking: 'Serwer jest pytany o dowód…',
  proven: (place, size) =>
    `Dowiedzione: wpis ${place} z ${size} w dzienniku zakładu, podpisany kluczem zakładu.`,
  holds: 'Kod zawiera dowód. „reelward log verify --record” sprawdza go bez dziennika.',
  seen: (count, names) => `Sprawdziły i podpisały tablety (${count}): ${names}.`,
  since: (when) => `Jeszcze bez dowodu: brak serwera od ${when}.`,
  never: 'Jeszcze bez dowodu: brak połączenia z serwerem.',
  waiting: 'Jeszcze bez dowodu: serwer nie ma tego wpisu.',
  noProof: 'Bez dowodu: serwer nie dał dowodu.',
  later: 'Wydrukuj ponownie, gdy serwer będzie miał wpis. Wtedy na papierze będzie dowód.',
  key: (fingerprint) => `Klucz zakładu: ${fingerprint}`,
  brought: {
    'one-log': 'Ten papier jest z tego samego dziennika co ten tablet.',
    'not-one-log': 'Ten papier i serwer pokazują dwa różne dzienniki. Wezwij kierownika jakości.',
    'not-the-plants': 'Ten papier nie jest podpisany kluczem tego zakładu.',
    'no-server': 'Brak serwera. Papier zostanie sprawdzony, gdy serwer odpowie.',
    'not-checked': 'Papieru nie sprawdzono. Zeskanuj go na zsynchronizowanym tablecie.',
  },
};

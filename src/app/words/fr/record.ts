import type { words as english } from '../en/record.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Trace papier',
  asking: 'Demande de la preuve au serveur…',
  proven: (place, size) =>
    `Prouvé : entrée ${place} sur ${size} du journal de l’usine, signée par la clé de l’usine.`,
  holds: 'Le code porte la preuve. « reelward log verify --record » la vérifie, sans le journal.',
  seen: (count, names) =>
    plural(
      count,
      `Vérifié et signé par ${count} tablette : ${names}.`,
      `Vérifié et signé par ${count} tablettes : ${names}.`,
    ),
  since: (when) => `Pas encore prouvé : pas de serveur depuis ${when}.`,
  never: 'Pas encore prouvé : aucun serveur joint.',
  waiting: 'Pas encore prouvé : le serveur n’a pas cette entrée.',
  noProof: 'Pas prouvé : le serveur n’a donné aucune preuve.',
  later: 'Imprimez de nouveau quand le serveur a l’entrée. Le papier porte alors la preuve.',
  key: (fingerprint) => `Clé de l’usine : ${fingerprint}`,
  brought: {
    'one-log': 'Ce papier est du même journal que cette tablette.',
    'not-one-log':
      'Ce papier et le serveur montrent deux journaux différents. Appelez le responsable qualité.',
    'not-the-plants': 'Ce papier n’est pas signé par la clé de cette usine.',
    'no-server': 'Pas de serveur. Le papier est vérifié dès que le serveur répond.',
    'not-checked': 'Le papier n’a pas été vérifié. Scannez-le sur une tablette synchronisée.',
  },
};

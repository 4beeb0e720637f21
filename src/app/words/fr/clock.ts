import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `L’horloge de cette tablette a reculé de ${span} à ${clock} : mettez-la à l’heure.`,
  ahead: (span, clock) =>
    `Cette tablette a dormi ${span} à ${clock}, ou son horloge a avancé. Si elle est fausse, mettez-la à l’heure.`,
  'behind-log': (span) =>
    `L’horloge de cette tablette retarde de ${span} sur la dernière entrée : mettez-la à l’heure.`,
  'behind-server': (span) =>
    `L’horloge de cette tablette retarde de ${span} sur le serveur : mettez-la à l’heure.`,
  'ahead-of-server': (span) =>
    `L’horloge de cette tablette avance de ${span} sur le serveur : mettez-la à l’heure.`,
  goesOn: 'Alertes et heures continuent depuis la dernière heure juste.',
  short: 'Vérifier l’horloge',
  isRight: 'L’horloge est juste',
};

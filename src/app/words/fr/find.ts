import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Chercher avec la caméra',
  sweep: 'Ronde avec la caméra',
  title: 'Chercher des bobines',
  help: 'Passez la tablette lentement devant les étiquettes.',
  sweepHelp: 'Gardez dans l’image l’étiquette de l’emplacement et celle de sa bobine.',
  on: (slot) => `sur ${slot}`,
  to: (slots) => `vers ${slots}`,
  told: (wanted, barred, read) => `À prendre : ${wanted} · interdites : ${barred} · lues : ${read}`,
  swept: (seen, all) => `Vus : ${seen} sur ${all}`,
  other: 'Pas demandée',
  unknown: 'Inconnue',
  reading: 'Lecture…',
  none: 'Rien de lu pour l’instant.',
  missing: 'Pas encore vus',
  several: (slot) => `${slot} : plus d’une bobine est proche. Approchez, ou scannez emplacement et bobine.`,
  unsure: (slot) => `${slot} : l’étiquette ne montre pas quelle bobine c’est.`,
  check: 'Vérifier cet emplacement',
  times: (count) => `${count} × dans l’image`,
  kept: (count) => `Bobines vues : ${count}. Elles sont dans le journal.`,
  notKept: 'Ce qui a été vu n’est pas dans le journal. Identifiez-vous d’abord.',
  barred: 'Ne pas utiliser',
};

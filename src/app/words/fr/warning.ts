import type { words as english } from '../en/warning.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  soon: (span, clock) => `se vide dans ${span}, vers ${clock}. Apportez la bobine suivante.`,
  due: (span, clock) => `peut être raccordé maintenant ; se vide dans ${span}, vers ${clock}.`,
  late: (_span, clock) => `a passé sa fenêtre de raccord ; la bande finit vers ${clock}.`,
  over: (clock, span) => `aurait dû se vider à ${clock}, il y a ${span}. Allez voir.`,
  ifPace: 'Aucun flan compté : si elle a gardé sa cadence.',
  ifStarts: 'Si elle repart maintenant.',
  backup: (slot) => `Puis ${slot} alimente : la ligne ne s’arrête pas encore.`,
  short: {
    soon: (span) => `dans ${span}`,
    due: () => 'à raccorder',
    late: () => 'trop tard pour raccorder',
    over: () => 'devrait être vide',
    blocked: () => 'bobine bloquée',
  },
  shortPace: 'aucun flan compté',
  shortStarts: 'ligne arrêtée',
  shortMore: (count) => `+${count}`,
  more: (count) => plural(count, `${count} de plus attend.`, `${count} de plus attendent.`),
  show: 'Voir',
  nobody: (line) => `${line} : personne n’a répondu`,
  unanswered: {
    due: (line, span) => `sur ${line} est à raccorder. Personne n’a répondu depuis ${span}.`,
    late: (line, span) => `sur ${line} va se vider. Personne n’a répondu depuis ${span}.`,
  },
  showLine: (line) => `Voir ${line}`,
  noSound: 'Pas encore de son : touchez pour entendre le son d’essai',
  acknowledge: 'J’y vais',
  blocked: (what, reason) => `tourne avec des composants bloqués : ${what} (${reason}).`,
  blockedAct: 'Arrêtez la ligne et enlevez cette bobine.',
  blockedPanels: (since, sinceBlock) =>
    `${plural(since, `${formatCount(since)} flan fabriqué`, `${formatCount(since)} flans fabriqués`)} avec dans cette série, dont ${formatCount(sinceBlock)} depuis le blocage.`,
  blockedBefore: 'Elle y était aussi dans une série précédente.',
  blockedNone: 'Aucune série n’y est ouverte.',
  blockedMore: (slots) => `Bloqués aussi : ${slots}.`,
  blockedTrace: 'Voir les flans',
  blockedOff: 'L’enlever',
  letRun: 'Laisser continuer',
  letRunTitle: (slot) => `Bobine bloquée en ${slot} : la laisser continuer ?`,
  letRunHelp:
    'Cette bobine seulement, sur cet emplacement seulement. Le blocage lui-même reste, et votre nom et la raison sont au journal.',
  letRunWhy: 'Pourquoi peut-elle continuer ?',
  letRunDone: (slot) => `${slot} : un chef d’équipe l’a laissée continuer. Le blocage lui-même reste.`,
  blockedTape: (reason) => `Bloqué : ${reason}`,
};

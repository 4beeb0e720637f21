import type { words as english } from '../en/people.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  whoTitle: 'Qui travaille ?',
  yourLanguage: 'Votre langue, sur toutes les tablettes',
  pinTitle: (name) => `PIN de ${name}`,
  pinHelp: 'Quatre à huit chiffres.',
  pinWrong: 'Ce n’est pas le PIN.',
  pinLeft: (left) =>
    `Ce n’est pas le PIN. ${plural(left, `${left} essai restant.`, `${left} essais restants.`)}`,
  pinLocked: (minutes) => `Trop d’essais. Bloqué pour ${minutes} min.`,
  pinUnsafe: 'Un PIN ne peut être vérifié que sur une page sûre. Ouvrez l’application par son adresse https.',
  notSeenHere: (name) =>
    `Le serveur ne répond pas, et cette tablette n’a jamais confirmé ${name}. Essayez là où le serveur répond.`,
  pinNotHere: (name) =>
    `Cette tablette ne connaît pas encore le PIN de ${name}. Saisissez-le une fois là où le serveur répond, ou à la tablette où il a été défini.`,
  seenTooLongAgo: (name) =>
    `Le serveur ne répond pas, et cette tablette a confirmé ${name} il y a plus de trois jours. Essayez là où le serveur répond.`,
  asking: 'Vérification…',
  enter: 'Valider',
  erase: 'Effacer',
  nobody: 'Personne encore sur cette tablette. Ajoutez d’abord un ingénieur ; il ajoute les autres.',
  addFirst: 'Ajouter le premier ingénieur',
  awayTitle: (name) => `Session de ${name} fermée`,
  awayHelp: (name) =>
    `Le travail ouvert est gardé. ${name} s’identifie pour continuer. Pour tout autre, il est fermé.`,
  awayClose: 'Fermer le travail ouvert',
  badgeNeeded: (name) => `${name} n’a pas de PIN : scannez le badge.`,
  scanBadge: 'Scannez le badge',
  badgeHelp: 'Avec le lecteur, ou saisissez ce qui est imprimé sous son code.',
  badgeUnknown: 'Badge inconnu. Scannez-en un autre.',
  noPin: (name) => `${name} n’a pas encore de PIN. Un ingénieur en définit un dans Usine.`,
  clearTitle: 'Un chef d’équipe décide',
  clearHelp: 'Scannez le badge du chef d’équipe. Puis saisissez PIN et raison.',
  clearReason: 'Raison',
  reasons: [
    'Approuvé par les méthodes pour ce lot',
    'Vérifié et mesuré à la main',
    'Étiquette abîmée, composant confirmé',
    'Compté à la main',
  ],
  otherReason: 'Autre raison',
  accept: 'Accepter la bobine',
  decline: 'Refuser',
  cartKept: (f) => `${f.cart} a maintenant ${f.carries} pour ${f.slot}. ${f.held} reste hors du chariot.`,
  cleared: (slot) => `Admise pour ${slot}.`,
  declined: 'Refusée. La bobine reste hors de la ligne.',
  withoutPasskey: 'Enregistrer sans',
  ownNotSigned: 'La clé d’accès n’a pas signé : rien n’est enregistré.',
  withPasskey: 'Utiliser la clé d’accès',
  passkeyAsks: 'La clé d’accès est demandée ensuite.',
  passkeyFailed:
    'La clé d’accès n’a pas signé, donc rien n’a été écrit. Réessayez, ou annulez et utilisez le PIN.',
  needsRole: (role) => `Requis : ${role}`,
  quantityTitle: 'Combien de composants sur la bobine ?',
  quantityHelp:
    'Comme imprimé ou compté. Vous pourrez corriger plus tard ; le journal garde chaque correction.',
  quantityWrong: 'Saisissez un nombre entier supérieur à zéro.',
};

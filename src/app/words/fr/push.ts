import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Messages, application fermée',
  promise:
    'Pour les chefs d’équipe : alertes sans réponse, bobines bloquées en service, lignes à l’arrêt. Un message peut tarder ou manquer : gardez une tablette ouverte.',
  way: 'Ils passent, chiffrés, par le service de l’éditeur de ce navigateur. Le serveur de l’usine doit l’atteindre.',
  noBrowser: 'Ce navigateur n’accepte pas de messages.',
  noServer: 'Aucun serveur ne répond. Rejoignez-le d’abord, ou réessayez plus tard.',
  off: 'Le serveur de l’usine n’est pas configuré pour cela.',
  unreached: 'Le serveur de l’usine n’atteint pas le service. Pas de messages ici.',
  denied: 'Le navigateur bloque les messages. Autorisez-les dans ses réglages pour cette page.',
  turnOn: 'Activer les messages',
  turnOff: 'Désactiver les messages',
  isOn: 'Les messages arrivent ici.',
  isOff: 'Les messages sont désactivés ici.',
  wrong: 'Cela n’a pas marché. Réessayez.',
  first: 'Les messages arrivent ici.',
  warning: (line, slot) => `${line} : personne ne répond à l’alerte pour ${slot}.`,
  blocked: (line, slot) => `${line} : une bobine bloquée est en service sur ${slot}.`,
  stood: (line) => `${line} est à l’arrêt.`,
};

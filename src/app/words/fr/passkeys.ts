import type { words as english } from '../en/passkeys.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: (count) => plural(count, `${count} clé d’accès`, `${count} clés d’accès`),
  openOf: (shown, name) => `${shown} de ${name}`,
  title: (name) => `Clés d’accès de ${name}`,
  help: 'Une clé d’accès prouve qui a décidé : le verrou de cette tablette, ou une clé qu’on en approche. Sans elle, le PIN décide.',
  none: 'Pas encore de clé d’accès.',
  where: {
    unsafe:
      'Les clés d’accès demandent une page sûre. Ouvrez l’application par son adresse https. Ici, le PIN décide.',
    'by-number':
      'Les clés d’accès demandent l’adresse de l’application par son nom, pas en chiffres. Ici, le PIN décide.',
    none: 'Ce navigateur n’a pas de clés d’accès. Ici, le PIN décide.',
  },
  who: (name) => `Seul ${name} ou un ingénieur peut le faire. Scannez le badge, puis saisissez le PIN.`,
  notThem: (name) => `Seulement ${name} ou un ingénieur.`,
  add: 'Ajouter une clé d’accès',
  name: 'Comment s’appelle-t-elle ?',
  nameHelp: 'Par exemple « clé bleue » ou « tablette à l’avant de la ligne ».',
  nameMissing: 'Saisissez un nom.',
  make: 'La créer maintenant',
  made: (name) => `Clé d’accès « ${name} » ajoutée.`,
  notMade: 'Aucune clé d’accès créée. Approchez la clé de la tablette ou déverrouillez-la, et réessayez.',
  remove: 'Retirer',
  removeOf: (name) => `Retirer la clé d’accès ${name}`,
  removed: (name) => `Clé d’accès « ${name} » retirée.`,
  addedBy: (name, host) => `ajoutée par ${name}, pour la page sur ${host}`,
  fell: 'Son compteur a baissé : elle a peut-être été copiée. Retirez-la et créez-en une autre.',
  unproven:
    'Rien ne prouve qui l’a ajoutée. Elle ne prouve rien tant qu’un chef d’équipe ne le confirme pas dans Journal.',
  signed: 'Signé',
  byPasskey: (name) => `prouvé par la clé d’accès de ${name}`,
  pinOnly: 'PIN seul, dit la tablette',
  refused:
    'La clé d’accès ne le prouve pas : elle a signé autre chose, ou n’est pas celle de cette personne.',
  checking: 'Vérification…',
};

import type { words as english } from '../en/server.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  noKey: 'Cette page ne peut pas signer d’entrées',
  noKeyHelp:
    'Clés, caméra et démarrage hors ligne demandent une page sûre. Ouvrez l’application par son adresse https (le serveur l’affiche, avec la façon de s’y fier), ou sur l’ordinateur même du serveur. D’ici là, les entrées restent sur cette tablette.',
  alone: 'Cette tablette travaille seule',
  aloneHelp:
    'Elle vérifie, alerte et tient son journal sans serveur. Rejoignez-en un pour partager le journal avec les autres tablettes, entrées anciennes comprises.',
  joinTitle: 'Rejoindre le serveur de l’usine',
  joinAgain: 'Rejoindre à nouveau',
  code: 'Code à usage unique',
  codeHelp:
    'Dix lettres et chiffres, de la tablette d’un chef d’équipe ou du serveur. Saisissez-le, ou scannez son code.',
  codeWrong: 'Un code a dix lettres et chiffres, p. ex. ABCDE-23456.',
  name: 'Comment on appelle cette tablette',
  nameMissing: 'Saisissez un nom, pour qu’un chef d’équipe distingue les tablettes.',
  join: 'Rejoindre',
  joining: 'Connexion…',
  joined: (plant) => `Rejoint : ${plant}.`,
  standing: 'Synchronisation',
  phases: {
    alone: 'Pas rejoint',
    follower: 'Une autre fenêtre de cette tablette synchronise',
    syncing: 'Envoi et réception…',
    live: 'Synchronisé : chaque tablette voit aussitôt les entrées des autres',
    waiting: 'En attente d’un nouvel essai',
    refused: 'Refusé par le serveur : quelqu’un doit agir',
  },
  plant: 'Usine',
  lastAnswer: 'Dernière réponse',
  ago: (span) => `il y a ${span}`,
  never: 'aucune depuis l’ouverture de l’application',
  backlog: 'À envoyer',
  entries: (count) => plural(count, `${count} entrée`, `${count} entrées`),
  nothing: 'rien, le serveur a tout',
  clock: 'Horloge',
  clockRight: 'comme celle du serveur',
  clockBehind: (span) => `retarde de ${span} sur le serveur : mettez-la à l’heure`,
  clockAhead: (span) => `avance de ${span} sur le serveur : mettez-la à l’heure`,
  why: 'Pourquoi',
  quarantined: 'Mis à l’écart',
  quarantinedHelp:
    'Le serveur a mis ces entrées à l’écart : leur sceau ou leur place dans la chaîne ne va pas. Rien n’est perdu ; elles restent ici aussi. Appelez la personne qui s’occupe du serveur.',
  rolledBack: 'Le journal du serveur a peut-être reculé',
  rolledBackHelp: (span) =>
    `Remarqué il y a ${span} : le serveur avait peut-être moins qu’avant, comme après une sauvegarde restaurée. Les tablettes renvoient ce qu’elles ont. Vérifiez le journal et la liste des tablettes.`,
  rolledBackSeen: 'J’ai vérifié',
  headFaults: {
    forked: 'Le serveur montre deux journaux',
    'other-key': 'Le serveur a une autre clé',
    'no-proof': 'Le serveur ne prouve pas son journal',
  },
  headFaultHelp: {
    forked: (span) =>
      `Remarqué il y a ${span} : son journal ne continue pas celui qu’il montrait avant. Quelqu’un l’a peut-être changé. Continuez à travailler, et appelez la personne qui s’occupe du serveur.`,
    'other-key': (span) =>
      `Remarqué il y a ${span} : il signe avec une autre clé que quand cette tablette l’a rejoint. C’est normal seulement après un passage sur un autre ordinateur. Demandez à la personne qui s’occupe du serveur.`,
    'no-proof': (span) =>
      `Remarqué il y a ${span} : il prouvait son journal avant. Continuez à travailler, et demandez à la personne qui s’occupe du serveur.`,
  },
  quarantinedHere: (count) =>
    plural(
      count,
      `${count} entrée est tenue hors du journal ici`,
      `${count} entrées sont tenues hors du journal ici`,
    ),
  quarantinedHereHelp:
    'Le texte, la signature ou l’horloge n’est pas bon. Toutes les autres entrées y sont. Appelez la personne qui s’occupe du serveur.',
  clocksOff: 'Horloges fausses',
  clockOfAhead: (name, span) => `${name} : avance de ${span}`,
  clockOfBehind: (name, span) => `${name} : retarde de ${span}`,
  clocksOffHelp: 'Mettez-les à l’heure : ce qu’écrivent ces tablettes peut être dans le mauvais ordre.',
  stateNears: (share) => `Ce dont part une nouvelle tablette prend ${share} de la place`,
  stateNearsHelp:
    'Une fois pleine, une nouvelle tablette lira d’abord tout le journal, pendant des minutes. Ajoutez des tablettes de réserve tant que c’est rapide, et prévenez la personne qui s’occupe du serveur.',
  stateOver: 'Les nouvelles tablettes démarrent lentement',
  stateOverHelp:
    'Ce dont part une nouvelle tablette est trop grand pour être transmis : elle lit d’abord tout le journal, pendant des minutes. Ajoutez-la avant d’en avoir besoin et laissez-la ouverte, branchée. Rien n’est perdu.',
  now: 'Synchroniser',
  causes: {
    unreachable: 'Le serveur ne répond pas. Continuez à travailler ; les entrées attendent ici.',
    unreadable: 'Ce qui répond n’est pas le serveur de l’usine. Vérifiez le réseau.',
    'other-plant':
      'C’est le serveur d’une autre usine. Rien n’y part ; les entrées attendent ici. Ne le rejoignez pas : appelez la personne qui s’occupe du serveur.',
    'tablet-unknown': 'Le serveur ne connaît pas cette tablette. Rejoignez à nouveau avec un nouveau code.',
    'tablet-revoked':
      'Un chef d’équipe a exclu cette tablette. Elle peut rejoindre à nouveau avec un nouveau code.',
    'code-wrong': 'Ce code est inconnu, utilisé, ou vieux de plus de dix minutes. Demandez-en un nouveau.',
    'tablet-active':
      'Cette tablette est encore admise sous une clé plus ancienne. Un chef d’équipe l’exclut d’abord ; puis un nouveau code l’admet.',
    'wire-too-old':
      'Cette application est plus ancienne que le serveur. Rechargez-la là où le serveur répond.',
    'wire-too-new': 'Cette application est plus récente que le serveur. Le serveur doit être mis à jour.',
    'time-off': 'L’horloge de cette tablette est trop fausse. Mettez-la à l’heure.',
    'signature-wrong':
      'Le serveur n’accepte pas la clé de cette tablette. Rejoignez à nouveau avec un nouveau code.',
    'person-unproven': 'L’identification a expiré. Scannez le badge et saisissez le PIN à nouveau.',
    'role-lacking': 'Seul un chef d’équipe ou un ingénieur peut le faire.',
    'too-often': 'Trop d’essais. Attendez une minute.',
    'store-away': 'Le serveur n’atteint pas son stockage. Il réessaie.',
    'store-full':
      'Le disque du serveur est plein. Les entrées attendent ici. Appelez la personne qui s’occupe du serveur.',
    'store-read-only':
      'Le serveur ne peut pas écrire son journal. Les entrées attendent ici. Appelez la personne qui s’occupe du serveur.',
    'server-fault': 'Le serveur a eu une panne ; voir son journal. La tablette réessaie.',
    stopping: 'Le serveur s’arrête.',
  },
  otherCause: (code) => `Le serveur dit : ${code}.`,
  leadTitle: 'Autres tablettes',
  leadHelp: 'Un chef d’équipe ou un ingénieur admet les tablettes et les exclut : badge et PIN.',
  leadOpen: 'Admettre ou exclure des tablettes',
  leadOffline:
    'Seul le serveur admet des tablettes, et il ne répond pas maintenant. Réessayez quand il répondra.',
  newCode: 'Nouveau code pour une tablette',
  newScreenCode: 'Code pour un écran mural',
  codeForScreen:
    'Sur l’écran, ouvrez l’application et saisissez ce code. Il affiche toutes les lignes et ne peut rien changer.',
  codeUntilScreen: (span) => `Pour un écran mural, valable ${span}.`,
  isScreen: 'écran mural',
  screenNotEmpty:
    'Un écran mural doit démarrer vide, et cette tablette a un journal. Prenez un autre navigateur et un nouveau code.',
  codeFor:
    'Sur la nouvelle tablette, scannez ceci avec sa caméra, ou ouvrez-y l’application et saisissez le code.',
  codeUntil: (span) => `Pour une tablette, valable ${span}.`,
  codeOver: 'Ce code a expiré.',
  tablets: 'Tablettes',
  seen: (span) => `vue il y a ${span}`,
  neverSeen: 'jamais vue depuis qu’elle a rejoint',
  clockOff: (span) => `horloge fausse de ${span}`,
  thisOne: 'cette tablette',
  isOut: 'exclue',
  revoke: 'Exclure',
  revokeTitle: (name) => `Exclure ${name} ?`,
  revokeHelp:
    'Pour une tablette perdue ou vendue. Elle ne peut plus ni envoyer ni recevoir. Ses entrées restent au journal.',
  revoked: (name) => `${name} est exclue.`,
  list: 'Actualiser',
};

import type { words as english } from '../en/unproven.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: 'Non prouvé',
  none: 'Tout est prouvé : un ticket du serveur est derrière chaque entrée qui demande un chef d’équipe.',
  noTickets:
    'Cette usine ne donne pas encore de tickets. Ils commencent quand un chef d’équipe saisit un PIN là où le serveur répond.',
  help: 'Ces entrées demandent un chef d’équipe ou un ingénieur et ont été faites sans ticket du serveur. Dans l’atelier elles comptent. Un chef d’équipe qui en sait quelque chose les confirme ou les rejette.',
  stands: {
    proven: 'prouvée par un ticket',
    passkey: 'prouvée par une clé d’accès',
    unproven: 'non prouvée',
    confirmed: 'confirmée par un chef d’équipe',
    rejected: 'rejetée par un chef d’équipe',
    'before-tickets': 'faite avant les tickets',
  },
  right: 'Droit',
  why: {
    'no-ticket': (role) =>
      `Pas de ticket du serveur : rien ne prouve qu’une personne au rôle « ${role} » l’a fait.`,
    'ticket-over': () => 'Le ticket ne couvrait pas cette heure.',
    role: (role) => `Le ticket est d’un rôle moindre. Requis : ${role}.`,
    passkey: () => 'La clé d’accès a signé autre chose, ou n’est pas celle de cette personne.',
  },
  before: 'Cette usine ne donnait pas encore de tickets quand ceci a été écrit.',
  by: (name) => `par ${name}`,
  nobody: 'personne de nommé',
  confirm: 'Confirmer',
  reject: 'Rejeter',
  confirmAll: (count) => plural(count, 'Confirmer', `Confirmer les ${count}`),
  confirmTitle: (count) =>
    plural(count, 'Cela a-t-il été fait comme écrit ?', `Les ${count} ont-elles été faites comme écrit ?`),
  rejectTitle: 'Cette personne ne l’a pas fait ?',
  rejectHelp:
    'L’entrée reste, marquée comme rejetée. Ce qu’elle a changé dans l’atelier reste aussi : rectifiez-le vous-même.',
  rejectPerson:
    'Au serveur, le changement de cette personne ne compte pas. Regardez les personnes dans Usine et rectifiez la liste.',
  reason: 'Comment le savez-vous ?',
  needsServer: 'Le serveur doit répondre pour cela : alors seulement est prouvé qui décide.',
  notProven:
    'Cela a été noté, mais sans ticket, donc cela ne tranche rien. Réessayez là où le serveur répond.',
  confirmed: (count) => plural(count, 'L’entrée est confirmée.', `${count} entrées sont confirmées.`),
  rejected: 'L’entrée est rejetée.',
  engineerOnly: (count) =>
    plural(
      count,
      `${count} d’entre elles demande l’accord d’un ingénieur.`,
      `${count} d’entre elles demandent l’accord d’un ingénieur.`,
    ),
  badgeAlone: (name) =>
    `${name} : identification par badge seul. Ce qui demande un chef d’équipe reste non prouvé. Identifiez-vous par nom et PIN pour le prouver.`,
  settled: { confirmed: 'confirmé', rejected: 'rejeté' },
};

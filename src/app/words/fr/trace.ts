import type { words as english } from '../en/trace.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  entries: 'Entrées',
  trace: 'Traçage',
  held: 'Flans retenus',
  conflicts: 'Désaccords',
  title: 'Quels flans le portent ?',
  help: 'Saisissez ou scannez un lot, une bobine, un composant, un feeder, un emplacement ou un code de flan, en minuscules ou majuscules. Ou choisissez une personne.',
  ask: 'Tracer',
  kinds: {
    lot: 'Lot',
    reel: 'Bobine',
    part: 'Composant',
    feeder: 'Feeder',
    slot: 'Emplacement',
    person: 'Personne',
    panel: 'Flan',
  },
  choosePerson: 'Choisissez qui l’a mis',
  putOn: (when, who) =>
    who === null ? `en place depuis le ${when}` : `en place depuis le ${when}, par ${who}`,
  text: 'Quoi tracer',
  reading: (done) => `Lecture du journal… ${plural(done, `${done} entrée`, `${done} entrées`)}`,
  nothing: (text) => `Le journal ne connaît aucun flan pour « ${text} ».`,
  sure: (first, last) => `à coup sûr flans ${first} à ${last}`,
  possible: (first, last) => `peut-être flans ${first} à ${last}`,
  none: 'aucun flan n’a été fabriqué pendant qu’il y était',
  goesOn: 'encore sur la ligne',
  serials: (count) => plural(count, `${count} code de flan`, `${count} codes de flan`),
  onSlot: (slot, feeder) => (feeder === '' ? slot : `${slot}, feeder ${feeder}`),
  panelTitle: (panel, product) => `Flan ${panel} de ${product}`,
  either: 'l’un ou les deux de',
  notSure: '(peut-être)',
  builtTimes: (count) =>
    plural(count, `Compté dans ${count} série :`, `Compté dans ${count} séries, la plus ancienne d’abord :`),
  noLot: 'pas de lot sur l’étiquette',
  partsFrom: (reels) => `Contient des composants de ${reels}`,
  partsTo: (reels) => `Des composants en sont passés dans ${reels}`,
  save: 'Enregistrer en CSV',
  why: 'Près d’un raccord ou d’un changement de bobine, le flan exact n’est pas connu : les deux lots sont montrés. « À coup sûr » est faux moins d’une fois sur un million selon les dispersions saisies pour la ligne.',
  guessed: {
    'in-line':
      'Personne n’a saisi combien de flans se trouvent entre la machine et le lieu de comptage. La plage la plus large est supposée. Saisissez-le dans les règles de la ligne et moins de flans seront incertains.',
    boards:
      'Aucun plan ne dit quelles cartes d’un flan sert un emplacement. On suppose qu’il les sert toutes de même : s’il n’en sert que certaines, un flan avec des cartes sautées n’en porte peut-être rien.',
    label:
      'Personne n’a saisi l’exactitude des quantités imprimées. Un quart de pour cent est supposé (pratique courante).',
  },
  by: {
    server: 'Répondu par le serveur.',
    tablet: 'Répondu d’après le journal de cette tablette.',
  },
  more: (count) =>
    `${plural(count, 'Seul le plus ancien est montré', `Seuls les ${count} plus anciens sont montrés`)}. Précisez, p. ex. par lot ou bobine.`,
  conflictKinds: {
    'slot-loaded-twice': (slots) => `${slots} a été chargé par deux tablettes`,
    'reel-on-two-slots': (slots) => `Une même bobine est en ${slots}`,
    'cleared-though-blocked': (slots) => `Une bobine bloquée a été admise pour ${slots}`,
    'spliced-though-unloaded': (slots) =>
      `${slots} a été raccordé sur une tablette et déchargé sur une autre`,
    'released-though-dropped': (product) =>
      `Le changement vers ${product} a été libéré sur une tablette et annulé sur une autre`,
  },
  noConflicts: 'Les tablettes concordent.',
  settle: 'Trancher',
  settleTitle: 'Qu’y a-t-il sur la machine ?',
  settleHelp:
    'Allez voir. Puis choisissez ce qui s’y trouve. L’autre entrée reste au journal, comme écartée.',
  settleChangeTitle: 'Lequel des deux compte ?',
  settleChangeHelp:
    'Demandez à qui l’a libéré et à qui l’a annulé. Puis choisissez ce qui est vrai. L’autre entrée reste au journal, comme écartée.',
  keep: (slot, what, when) => `${slot} : ${what}, ${when}`,
  keepParts: (count) => plural(count, `${count} composant`, `${count} composants`),
  keepBy: (who, tablet) => (who === '' ? `sur ${tablet}` : `par ${who} sur ${tablet}`),
  keepEmpty: 'l’emplacement est vide',
  neither: 'J’ai réglé cela autrement',
  reason: 'Comment le savez-vous ?',
  settled: 'Tranché.',
};

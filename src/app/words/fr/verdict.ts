import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, plural, type Sentences } from '../words.ts';
import { moistureReasonsFr, tableFr } from './verdict-moisture.ts';
import { plantReasonsFr } from './verdict-plant.ts';

const reasonsFr: ReasonWords = {
  ...moistureReasonsFr,
  ...plantReasonsFr,
  'unknown-slot': {
    title: 'Emplacement inexistant',
    say: (f) => `Cette ligne n’a pas d’emplacement ${f['slot']}.`,
    act: 'Scannez le code de l’emplacement sur la machine.',
  },
  'slot-not-in-setup': {
    title: 'Emplacement non utilisé',
    say: (f) => `Ce plan ne demande rien en ${f['slot']}.`,
    act: 'Laissez-le vide. Scannez le bon emplacement.',
  },
  'slot-loaded': {
    title: 'Emplacement déjà chargé',
    say: (f) => `${f['slot']} a déjà ${f['part']}${f['reel'] ? ` (bobine ${f['reel']})` : ''}.`,
    act: 'Déchargez d’abord cette bobine.',
  },
  'slot-empty': {
    title: 'Emplacement vide',
    say: (f) => `Rien n’est chargé en ${f['slot']}.`,
    act: 'Raccord impossible : chargez une bobine.',
  },
  'no-part': {
    title: 'Pas de référence',
    say: (f) => `Aucun code de cette étiquette ne dit quel composant c’est. Attendu : ${f['wanted']}.`,
    act: 'Scannez toute l’étiquette, ou saisissez la référence imprimée.',
  },
  'wrong-part': {
    title: 'Mauvais composant',
    say: (f) =>
      f['goesTo']
        ? `Cette bobine va en ${f['goesTo']}.`
        : 'Aucun emplacement de ce plan ne demande ce composant.',
    act: 'Remettez-la. Scannez une autre bobine.',
  },
  'wrong-for-lane': {
    title: 'Mauvaise pour l’autre voie',
    say: (f) => `${f['lane']} prend ${f['wanted']} à cet emplacement.`,
    act: 'Remettez-la. Scannez une bobine qui convient aux deux voies.',
  },
  'kept-for-lane': {
    title: 'Gardé pour l’autre voie',
    say: (f) => `${f['slot']} a ${f['part']} pour ${f['lane']}.`,
    act: 'Laissez cette bobine en place. Pour y raccorder une autre, choisissez d’abord l’autre voie.',
  },
  'not-in-setup': {
    title: 'Pas dans ce plan',
    say: (f) =>
      f['slot']
        ? `Aucun emplacement ne demande cette bobine. Le plus proche est ${f['slot']}.`
        : 'Aucun emplacement ne demande cette bobine.',
    act: 'Laissez-la sur le chariot, ou remettez-la au magasin.',
  },
  'bake-short': {
    title: 'Étuvage trop court',
    say: (f) =>
      `Étuvée ${f['hours']} h${f['celsius'] ? ` à ${f['celsius']} °C` : ''}. ${f['wanted'] ? `La table y demande ${f['wanted']} h` : 'La table n’a pas de rangée pour cela'}, donc la durée hors sachet n’est pas rétablie : reste ${f['leftSeconds']}. (${restsOn(f, tableFr)}Un boîtier inconnu compte comme le pire.)`,
    act: 'Un chef d’équipe doit décider.',
  },
  'same-label': {
    title: 'Une deuxième bobine avec la même étiquette',
    say: () => 'Une personne l’a confirmé : l’étiquette correspond à la bobine qui tourne ici.',
    act: '',
  },
  'reel-elsewhere': {
    title: 'Bobine sur un autre emplacement',
    say: (f) => `D’après le journal, la bobine ${f['reel']} est en ${f['slot']}.`,
    act: 'Si elle n’y est plus, déchargez-la d’abord là-bas.',
  },
  'reel-on-cart': {
    title: 'Bobine sur un chariot',
    say: (f) =>
      `D’après le journal, la bobine ${f['reel']} est sur le chariot ${f['cart']}, prête pour ${f['slot']}.`,
    act: 'Prenez une autre bobine, ou enlevez-la d’abord du chariot dans Préparer.',
  },
  'slot-on-cart': {
    title: 'Emplacement prêt sur un chariot',
    say: (f) => `Le chariot ${f['cart']} a déjà une bobine prête pour ${f['slot']}.`,
    act: 'Scannez un autre emplacement, ou enlevez d’abord celui-ci du chariot.',
  },
  'reel-here': {
    title: 'Bobine déjà ici',
    say: (f) => `La bobine ${f['reel']} est déjà en ${f['slot']}.`,
    act: 'Scannez la bobine suivante.',
  },
  'reel-blocked': {
    title: 'Bobine bloquée',
    say: (f) => `Bloqué : ${f['reason']}.`,
    act: 'Mettez-la de côté. Allez chercher le chef d’équipe.',
  },
  'feeder-elsewhere': {
    title: 'Feeder sur un autre emplacement',
    say: (f) => `D’après le journal, le feeder ${f['feeder']} est en ${f['slot']}.`,
    act: 'Vérifiez le code du feeder, ou déchargez-le d’abord là-bas.',
  },
  'feeder-aside': {
    title: 'Feeder mis de côté',
    say: (f) => `Le feeder ${f['feeder']} ne doit pas servir : ${f['why']}.`,
    act: 'Prenez un autre feeder. Après l’entretien, notez-le au feeder.',
  },
  'feeder-lanes': {
    title: 'Plus de voie libre sur le feeder',
    say: (f) =>
      `Voies du feeder ${f['feeder']} : ${f['lanes']}. D’après le journal, il est déjà en ${f['slots']}.`,
    act: 'Vérifiez le code du feeder, ou corrigez le nombre de voies de son type.',
  },
  'feeder-on-cart': {
    title: 'Feeder sur un chariot',
    say: (f) =>
      `D’après le journal, le feeder ${f['feeder']} est sur le chariot ${f['cart']}, prêt pour ${f['slot']}.`,
    act: 'Vérifiez le code du feeder, ou enlevez-le d’abord du chariot dans Préparer.',
  },
  'feeder-width': {
    title: 'Le feeder ne convient pas à la bande',
    say: (f) =>
      `Le feeder ${f['feeder']} est pour bande de ${f['found']} mm ; cet emplacement demande ${f['wanted']} mm.`,
    act: 'Prenez un feeder de la bonne largeur.',
  },
  'feeder-pitch': {
    title: 'Le pas du feeder ne convient pas',
    say: (f) =>
      `Le feeder ${f['feeder']} avance de ${f['found']} mm ; cette bande demande ${f['wanted']} mm.`,
    act: 'Réglez le pas ou prenez un autre feeder. Un mauvais pas jette des composants sans qu’on le voie.',
  },
  'floor-life-over': {
    title: 'Durée hors sachet dépassée',
    say: () => 'Cette bobine est restée trop longtemps hors de son sachet sec.',
    act: 'Ne l’utilisez pas. Envoyez-la à l’étuvage selon vos règles.',
  },
  'not-the-loaded-reel': {
    title: 'Pas la bobine du journal',
    say: (f) => `D’après le journal, ${f['loaded'] || 'une autre bobine'} est en ${f['slot']}.`,
    act: 'Cherchez qui l’a changée. Puis déchargez-la et chargez-la à nouveau.',
  },
  'part-contradicts': {
    title: 'L’étiquette se contredit',
    say: (f) => `Elle dit ${f['part']}, mais ${f['supplierPart']} est approuvé pour ${f['approvedFor']}.`,
    act: 'Un chef d’équipe doit décider.',
  },
  'alternate-not-approved': {
    title: 'Équivalent non approuvé ici',
    say: (f) =>
      `${f['found']} peut remplacer ${f['wanted']} sur ${f['approvedFor']}, mais pas sur ce produit.`,
    act: 'Un chef d’équipe doit décider.',
  },
  'supplier-part-not-approved': {
    title: 'Référence fournisseur inconnue',
    say: (f) => `${f['supplierPart']} n’est pas sur la liste approuvée. Attendu : ${f['wanted']}.`,
    act: 'Un chef d’équipe doit décider.',
  },
  'no-quantity': {
    title: 'Pas de quantité',
    say: () => 'L’étiquette ne donne pas de quantité : la fin de bobine est inconnue.',
    act: 'Saisissez la quantité, ou laissez décider un chef d’équipe.',
  },
  expired: {
    title: 'Date dépassée',
    say: (f) => `À utiliser avant ${f['expires']}.`,
    act: 'Un chef d’équipe doit décider.',
  },
  'by-alternate': {
    title: 'Équivalent approuvé',
    say: (f) => `${f['found']} est un équivalent approuvé de ${f['wanted']}.`,
    act: '',
  },
  'by-supplier-part': {
    title: 'Par la référence fournisseur',
    say: (f) => `${f['supplierPart']} est approuvé pour ${f['part']}.`,
    act: '',
  },
  'by-comparison': {
    title: 'Prise comme même référence',
    say: (f) => `${f['found']} compte comme ${f['wanted']} selon la règle du site sur ${f['rule']}.`,
    act: '',
  },
  'mixed-lots': {
    title: 'Un autre lot',
    say: (f) => `Le lot passe de ${f['from']} à ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: 'Pas la quantité de l’étiquette',
    say: (f) =>
      f['label'] === ''
        ? `L’étiquette n’en donne pas ; le journal prend ${f['quantity']}.`
        : `L’étiquette dit ${f['label']} ; le journal prend ${f['quantity']}.`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: 'Bon pour l’échange',
    refill: 'Bon pour remplir',
    load: 'Bonne bobine',
    splice: 'Bonne bobine à raccorder',
    sweep: 'Vue',
  },
  refused: 'Refusé',
  held: 'Retenu pour le chef d’équipe',
  wants: (slot) => `${slot} demande`,
  says: 'la bobine dit',
  also: 'Aussi',
  goOn: 'Continuer',
  nextIs: (slot) => `Suivant : ${slot}`,
  another: 'Scanner une autre bobine',
  callLead: 'Laisser décider un chef',
  typeQuantity: 'Saisir la quantité',
  takeBack: 'Défaire',
  parts: (count) => plural(count, `${formatCount(count)} composant`, `${formatCount(count)} composants`),
  lot: (lot) => `lot ${lot}`,
  reel: (reel) => `bobine ${reel}`,
  practice: 'scan d’exercice',
  allLoaded: 'Chaque emplacement est chargé.',
  spliceCaution:
    'Joignez les bandes machine arrêtée, ou feeder hors de la zone protégée comme le dit son manuel. Coupez à l’opposé des doigts. Les règles locales passent d’abord.',
  loadCaution:
    'Arrêtez la machine et attendez la tête avant d’y mettre les mains. Les règles locales passent d’abord.',
  reasons: reasonsFr,
};

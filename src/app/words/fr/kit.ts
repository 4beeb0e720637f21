import type { words as english } from '../en/kit.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Prélèvement et chariots',
  list: 'Liste de prélèvement',
  panels: 'Flans du prochain travail',
  needed: (count) => plural(count, `${count} composant`, `${count} composants`),
  short: (count) => `il en faut ${count} de plus`,
  enough: 'assez',
  probably: (chance, missing) => `probablement assez (${chance}) : ${missing} de plus pour être sûr`,
  readyNow: 'À faire pendant que la ligne tourne',
  readyFetch: (count) =>
    count === 0
      ? 'Aucune bobine à aller chercher.'
      : plural(
          count,
          `Aller chercher les bobines de ${count} composant : liste ci-dessous.`,
          `Aller chercher les bobines de ${count} composants : liste ci-dessous.`,
        ),
  readyCarts: (count) =>
    count === 0
      ? 'Mettre les prochains feeders sur un chariot.'
      : plural(
          count,
          `Mettre des feeders sur un chariot : ${count} emplacement est prêt.`,
          `Mettre des feeders sur un chariot : ${count} emplacements sont prêts.`,
        ),
  readyOpenList: 'Ouvrir la liste : certaines étapes ne demandent pas d’arrêt.',
  readyList: (count) =>
    plural(
      count,
      `Liste de contrôle : ${count} étape est déjà possible.`,
      `Liste de contrôle : ${count} étapes sont déjà possibles.`,
    ),
  toChecklist: 'Contrôles',
  fetch: (reels) => `Aller chercher ${reels}`,
  stays: (slot, count) => `reste en ${slot}, ${count}`,
  goesTo: (from, to, count) => `passe de ${from} à ${to}, ${count}`,
  comesOff: (slot, count) => `en trop en ${slot}, ${count}`,
  leftThen: (count) => `reste environ ${count} à la fin de ce travail`,
  leftNow: (count) => `reste environ ${count}`,
  onLine: (count) =>
    plural(
      count,
      `${count} composant est sur la ligne : rien à aller chercher`,
      `${count} composants sont sur la ligne : rien à aller chercher`,
    ),
  cartFirst: 'Scannez ou saisissez d’abord son code.',
  leftUnknown: 'non compté',
  maybeShort: 'à compter d’abord',
  unsure: (count) =>
    plural(
      count,
      `${count} composant peut en demander plus : comptez ses bobines.`,
      `${count} composants peuvent en demander plus : comptez leurs bobines.`,
    ),
  uncounted: (count) => plural(count, `${count} bobine non comptée`, `${count} bobines non comptées`),
  none: 'aucune bobine trouvée',
  msl: (level) => `MSL ${level} : surveillez la durée hors sachet`,
  shortfalls: (count) =>
    plural(
      count,
      `${count} composant demande plus que n’ont les bobines connues. Allez en chercher, ou prévenez un chef d’équipe.`,
      `${count} composants demandent plus que n’ont les bobines connues. Allez en chercher, ou prévenez un chef d’équipe.`,
    ),
  carts: 'Chariots',
  cart: 'Chariot',
  cartHelp: 'Scannez ou saisissez le code du chariot. Puis scannez emplacement, feeder et bobine.',
  use: 'Prendre ce chariot',
  filling: (cart) => `Remplissage de ${cart}`,
  leave: 'Quitter le chariot',
  wanted: {
    slot: 'Scannez l’emplacement prévu',
    feeder: 'Scannez le feeder',
    'old-reel': '',
    reel: 'Scannez la bobine',
  },
  accepted: (slot) => `Bon : prêt pour ${slot}.`,
  refused: (why) => `Ne la mettez pas : ${why}`,
  held: (why) => `Retenue : ${why}. Mettez-la de côté. Un chef d’équipe décide sur l’écran Charger.`,
  places: (count) => plural(count, `${count} emplacement prêt`, `${count} emplacements prêts`),
  empty: 'Enlever',
  dock: 'Arrimer',
  dockTitle: (cart) => `Arrimer ${cart} ?`,
  dockCaution:
    'Arrêtez d’abord la machine et attendez que plus rien ne bouge. Gardez les mains loin du serrage, de la tête et du coupe-bande.',
  willLoad: (count, product) =>
    plural(
      count,
      `${count} emplacement est chargé pour ${product} :`,
      `${count} emplacements sont chargés pour ${product} :`,
    ),
  goesOff: (count) => plural(count, `${count} feeder sort :`, `${count} feeders sortent :`),
  doesNotFit: (count) =>
    plural(
      count,
      `${count} emplacement ne convient pas et est laissé :`,
      `${count} emplacements ne conviennent pas et sont laissés :`,
    ),
  unfit: {
    'feeder-loaded': (f) => `Le feeder ${f.thing} est maintenant en ${f.at}.`,
    'reel-loaded': (f) => `La bobine ${f.thing} est maintenant en ${f.at}.`,
    'lane-beside': (f) =>
      `Son feeder reste sur le chariot : la bobine pour ${f.at} ne peut pas être montée maintenant.`,
    neighbour: (f) => `Le feeder ${f.thing} chevauche ${f.at}. Enlevez d’abord l’un des deux.`,
    'other-lane': (f) => `${f.line} a besoin de ${f.slot}. Laissez ceci sur le chariot.`,
    blocked: (f) => `${f.thing} est maintenant bloqué. Enlevez-le du chariot.`,
  },
  others: (count) =>
    plural(
      count,
      `${count} emplacement est pour un autre plan et reste.`,
      `${count} emplacements sont pour un autre plan et restent.`,
    ),
  nothingFits: 'Rien sur ce chariot ne peut être chargé pour ce changement de série.',
  noChangeover: 'Aucun changement de série n’est ouvert sur cette ligne. Planifiez-en un d’abord.',
  knownCart: (cart) => `${cart} est choisi.`,
  dockable: (count) => plural(count, `charge ${count} emplacement`, `charge ${count} emplacements`),
  notStanding: 'Arrimez une fois le dernier flan fait.',
  docked: (cart, count) =>
    plural(
      count,
      `${cart} arrimé : ${count} emplacement chargé.`,
      `${cart} arrimé : ${count} emplacements chargés.`,
    ),
  signIn: 'Scannez d’abord votre badge.',
  unknown: (text) =>
    `${text.slice(0, 40)} est inconnu. Pour remplir un nouveau chariot, quittez d’abord celui-ci.`,
};

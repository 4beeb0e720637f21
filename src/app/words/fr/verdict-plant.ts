// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `Mesuré : ${f['quantity']} ± ${f['uncertainty']} ${f['unit']}. Attendu : ${f['nominal']} ${f['unit']}, de ${f['least']} à ${f['most']}. Avec la bande de garde de ${f['guard']} : de ${f['from']} à ${f['to']}.`;

export const plantReasonsFr: PlantReasons = {
  'feeder-unknown': {
    title: 'Feeder inconnu',
    say: (f) =>
      `Le feeder ${f['feeder']} n’est pas sur la liste de l’usine : sa largeur ne peut pas être vérifiée.`,
    act: 'Un chef d’équipe doit décider.',
  },
  'feeder-type': {
    title: 'Mauvais type de feeder',
    say: (f) =>
      `Le feeder ${f['feeder']} est de type ${f['found']} ; cet emplacement demande ${f['wanted']}.`,
    act: 'Prenez un feeder de ce type.',
  },
  'feeder-drive': {
    title: 'Mauvais entraînement',
    say: (f) =>
      `Le feeder ${f['feeder']} a l’entraînement ${f['found']} ; cet emplacement demande ${f['wanted']}.`,
    act: 'Prenez un feeder avec le bon entraînement.',
  },
  'feeder-height': {
    title: 'Alvéoles trop profondes pour le feeder',
    say: (f) =>
      `Les alvéoles de la bande ont ${f['wanted']} mm de profondeur ; le feeder ${f['feeder']} laisse passer ${f['found']} mm.`,
    act: 'Prenez un feeder pour alvéoles plus profondes.',
  },
  'maker-not-listed': {
    title: 'Fabricant absent de la liste de ce produit',
    say: (f) =>
      `${f['supplierPart']} n’est pas approuvé pour ${f['part']} sur ce produit.${f['listed'] ? ` Approuvé : ${f['listed']}.` : ''}${f['approvedFor'] ? ` Il est approuvé sur ${f['approvedFor']}.` : ''}`,
    act: 'Prenez une bobine d’un fabricant listé, ou laissez décider un chef d’équipe.',
  },
  'date-code-old': {
    title: 'Trop vieux selon son code date',
    say: (f) =>
      `Fabriqué ${f['made']}. La limite d’âge de la ligne pour ce composant a pris fin le ${f['last']}.`,
    act: 'Un chef d’équipe doit décider.',
  },
  'date-code-unknown': {
    title: 'Âge inconnu',
    say: (f) =>
      f['dateCode']
        ? `Le code date ${f['dateCode']} ne se lit pas avec certitude. La ligne limite l’âge de ce composant.`
        : 'L’étiquette ne donne pas de code date. La ligne limite l’âge de ce composant.',
    act: 'Un chef d’équipe doit décider.',
  },
  'value-outside': {
    title: 'Mauvaise valeur',
    say: measured,
    act: 'Ne la chargez pas. Mettez la bobine de côté, puis scannez-en une autre.',
  },
  'value-unsure': {
    title: 'Valeur pas claire',
    say: (f) => `${measured(f)} Trop près d’une limite pour cet appareil.`,
    act: 'Scannez à nouveau la bobine pour remesurer, ou laissez décider un chef d’équipe.',
  },
  'value-unmeasured': {
    title: 'Valeur non mesurée',
    say: (f) => `La ligne demande de mesurer un composant de ${f['part']} avant que la bobine n’alimente.`,
    act: 'Scannez à nouveau la bobine pour le mesurer, ou laissez décider un chef d’équipe.',
  },
  'value-unknown': {
    title: 'Aucune valeur à contrôler',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `La liste des composants donne à ${f['part']} une valeur sans tolérance.`
        : `La liste des composants ne donne pas de valeur pour ${f['part']}.`,
    act: 'Un chef d’équipe doit décider. Saisissez la valeur sous Composants.',
  },
  'value-within': { title: 'Valeur contrôlée', say: measured, act: '' },
  'feeder-care': {
    title: 'Entretien du feeder dû',
    say: (f) =>
      `Le feeder ${f['feeder']} a posé environ ${f['placed']} composants ; l’usine demande un entretien après ${f['after']}. Faites-le entretenir à sa sortie.`,
    act: '',
  },
  'older-in-store': {
    title: 'Une bobine plus ancienne est au magasin',
    say: (f) =>
      f['by'] === 'expires'
        ? `La bobine ${f['reel']} en ${f['place']} est à utiliser avant ${f['expires']}, avant celle-ci.`
        : `La bobine ${f['reel']} en ${f['place']} a le code date ${f['dateCode']}, plus ancien que celle-ci.`,
    act: '',
  },
};

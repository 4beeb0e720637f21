import type { words as english } from '../en/run.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  notRight: (count) =>
    plural(
      count,
      `${count} emplacement n’est pas encore bon : voir Charger.`,
      `${count} emplacements ne sont pas encore bons : voir Charger.`,
    ),
  startTitle: 'Démarrer une série',
  panelSecondsHelp: 'Utilisé jusqu’à ce que la cadence de la ligne soit mesurée.',
  panelPrefix: 'Les codes de flan commencent par',
  panelPrefixHelp: 'Laissez vide si les flans n’ont pas de code. Touchez alors pour compter.',
  wrongNumber: 'Saisissez un nombre supérieur à zéro.',
  startAnyway: 'Démarrer incomplet',
  stopTitle: 'Pourquoi la ligne est-elle arrêtée ?',
  endTitle: 'Finir cette série ?',
  endText: (done, wanted) =>
    `${plural(wanted, `${done} flan compté sur ${formatCount(wanted)}.`, `${done} flans comptés sur ${formatCount(wanted)}.`)} Les bobines restent en place.`,
  plusManyTitle: 'Combien de flans de plus ?',
  skippedTitle: 'Quelles cartes du prochain flan sont sautées ?',
  skippedHelp: 'Touchez chaque carte marquée mauvaise. Le prochain comptage l’emporte.',
  skippedUse: (count) =>
    count === 0 ? 'Aucune carte sautée' : plural(count, `Sauter ${count} carte`, `Sauter ${count} cartes`),
  skippedManyTitle: (panels) =>
    plural(panels, 'Cartes sautées sur ce flan ?', `Cartes sautées sur ces ${formatCount(panels)} flans ?`),
  skippedMost: (boards) =>
    plural(boards, `Il n’y a que ${boards} carte.`, `Il n’y a que ${boards} cartes. Saisissez moins.`),
  skippedNotKnown: 'Inconnu',
  scrapTitle: 'Combien de flans sont rebutés ?',
  scrapHelp: 'Ils restent comptés : leurs composants sont consommés. Autant de plus sont à fabriquer.',
  scrapMost: (panels) =>
    plural(
      panels,
      `Seulement ${panels} bon flan est compté.`,
      `Seulement ${panels} bons flans sont comptés. Saisissez moins.`,
    ),
  setRightTitle: 'Combien de flans sont faits ?',
  setRightHelp: 'La série a alors ce nombre. Le comptage continue à partir de là.',
  setRightWhy: 'Pourquoi un autre nombre ?',
  setRightYes: (panels) => `Mettre à ${panels}`,
  setRightMissing: 'Saisissez un autre nombre, et pourquoi.',
  stoodSince: 'Arrêtée depuis',
  stoodLast: (clock, span) => `${clock}, le dernier flan, il y a ${span}`,
  stoodNow: (clock) => `maintenant, ${clock}`,
};

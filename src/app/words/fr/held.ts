import type { words as english } from '../en/held.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  causes: {
    'wrong-reel': 'Mauvaise bobine trouvée tard',
    cleared: 'Retenue levée par erreur',
    blocked: 'Matière bloquée',
    'floor-life': 'Durée hors sachet dépassée',
  },
  hold: 'Retenir ces flans',
  holdTitle: (panels) => `Retenir ${plural(panels, `${panels} flan`, `${panels} flans`)} ?`,
  holdHelp:
    'Tous les flans qui peuvent le porter sont retenus, ceux encore dans la ligne aussi. Ils le restent jusqu’à ce qu’un chef d’équipe les signe.',
  goesOn:
    'Il est encore sur un emplacement. Retirez-le d’abord, sinon les flans à venir ne sont pas retenus.',
  cause: 'Pourquoi sont-ils retenus ?',
  lifeHelp: 'Sont retenus les flans à partir du moment où sa durée hors sachet a pris fin.',
  noLifeOver:
    'D’après le journal, sa durée hors sachet n’a jamais été dépassée pendant qu’on fabriquait des flans.',
  reason: 'Qu’a-t-on trouvé ?',
  codes: (codes) => plural(codes, `${codes} code de flan est connu.`, `${codes} codes de flan sont connus.`),
  sure: (panels) =>
    panels === 0
      ? 'Aucun ne le porte à coup sûr.'
      : plural(panels, `${panels} le porte à coup sûr.`, `${panels} le portent à coup sûr.`),
  done: (panels) => plural(panels, `${panels} flan est retenu.`, `${panels} flans sont retenus.`),
  none: 'Aucun flan n’est retenu.',
  span: (first, last) => `Flans ${first} à ${last}`,
  still: (held, all) => `Pas encore signés : ${held} sur ${all}`,
  noCodes: 'Pas de codes de flan. Cherchez ces flans par leurs numéros.',
  signed: (who, when) => `Signé par ${who}, ${when}`,
  sign: 'Signer',
  signAll: 'Tout signer',
  signTitle: 'Qu’a-t-on fait de ces flans ?',
  signHelp: 'Choisissez des flans, ou signez-les tous.',
  signWhy: 'Qu’a-t-on fait ? P. ex. retouchés, rebutés, reconnus bons.',
  signDone: 'Signé.',
  save: 'Enregistrer les codes en CSV',
  which: 'Quels flans ?',
};

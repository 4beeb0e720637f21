import type { words as english } from '../en/moisture.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  level: (msl) => `MSL ${msl}`,
  left: (span) => `reste ${span} hors sachet`,
  leftUntil: (span, clock) => `reste ${span} hors sachet, jusqu’à ${clock}`,
  unopened: (span) => `pas encore ouverte : ${span} hors sachet`,
  noLimit: 'sans limite dans cet air',
  over: 'durée hors sachet dépassée',
  overSince: (clock) => `durée hors sachet dépassée depuis ${clock}`,
  baking: 'à l’étuve',
  bakeShort: 'étuvée moins que ne dit la table',
  bakeLet: (name) => `étuvage court admis : ${name}`,
  letBake: 'Admettre l’étuvage',
  letBakeTitle: (reel) => `Admettre l’étuvage de ${reel} ?`,
  letBakeWhat: (f) =>
    `Étuvée ${f.hours} h${f.celsius === null ? '' : ` à ${f.celsius} °C`}. ${f.wanted === null ? 'La table n’a pas de rangée pour cela.' : `La table demande ${f.wanted} h.`}`,
  letBakeHelp:
    'S’il est admis, la durée hors sachet repart à sa fin, et cet étuvage ne retient plus la bobine. Il vaut une fois : un autre étuvage court est retenu à nouveau.',
  letBakeWhy: 'Pourquoi est-il admis ?',
  letBakeDone: (reel) => `${reel} : l’étuvage est admis.`,
  letBakeFor: 'L’étuvage',
  letBakeOnce: 'Cette fois seulement',
  letBakeAlways: 'Admis désormais',
  hotOver: (hours) => `${hours} h au-dessus de 90 °C en tout`,
  labelTime: 'niveau 6 : étuvez, puis saisissez la durée de son étiquette',
  families: {
    bga: 'BGA',
    lga: 'LGA',
    pqfp: 'PQFP',
    mqfp: 'MQFP',
    qfp: 'QFP',
    tqfp: 'TQFP',
    lqfp: 'LQFP',
    plcc: 'PLCC',
    qfn: 'QFN',
    sop: 'SOP',
    tsop: 'TSOP',
    soic: 'SOIC',
    sot: 'SOT',
    chip: 'Puce',
    other: 'Aucun de ceux-ci',
  },
  sources: {
    own: 'l’exemplaire de l’usine',
    copy: 'comparé à un exemplaire publié',
    memory: 'de mémoire, non comparé',
  },
  restsOn: (f) =>
    `${f.classes.length === 1 ? `Classe ${f.classes[0]}` : `Classe ${[...f.classes].sort().join(' ou ')} (la plus courte compte)`} · ${f.celsius} °C, ${f.humidity} % · ${f.edition}`,
  classOpen:
    'Le boîtier n’est pas entièrement connu : la pire classe compte. Un ingénieur peut le saisir dans Usine, Composants.',
  labelHours: 'Durée sur son étiquette, heures',
  labelHoursHelp: 'Niveau 6 : la durée hors sachet imprimée sur le sachet, depuis la fin de l’étuvage.',
  badLabelHours: 'Saisissez les heures de l’étiquette : 1 à 9999.',
  hotSoFar: (hours, most) =>
    `Étuvée ${hours} h au-dessus de 90 °C jusqu’ici. La limite est de ${most} h en tout.`,
  hotLimit: 'cette limite est de mémoire',
  bakeAdvice: (f) => `La table demande ${f.options} (${f.source}).`,
  bakeOption: (hours, celsius) => `${hours} h à ${celsius} °C`,
  or: 'ou',
  bakeLarge:
    'La rangée de 96 h à 125 °C est pour les grands BGA et les puces empilées ; elle compte tant que le boîtier n’est pas connu.',
  dry: 'au sec',
  open: 'Sachet / étuve',
  title: (reel) => `Durée hors sachet de ${reel}`,
  where: 'Où est-elle ?',
  airs: { floor: 'Ouverte dans l’atelier', dry: 'Armoire ou sachet scellé', bake: 'À l’étuve' },
  hours: 'Il y a combien d’heures ?',
  hoursHelp: '0 = maintenant. Si c’était avant : les heures depuis.',
  humidity: 'Humidité relative là-bas',
  humidities: { 5: '5 % ou moins', 10: '10 % ou moins' },
  ovenAir: 'Humidité relative dans l’étuve',
  ovenAirs: { dry: '5 % ou moins', moist: 'Plus, ou personne ne sait' },
  ovenAirHelp:
    'Au-dessous de 125 °C la table ne vaut que pour l’air sec. Dans un autre air, un chef d’équipe doit admettre l’étuvage.',
  ovenAirMissing: 'Choisissez à quel point l’étuve est sèche',
  celsius: 'Étuve, degrés Celsius',
  celsiusHelp: 'Beaucoup de bandes et de bobines supportent 40 °C au plus : voyez l’étiquette du sachet.',
  bakeCaution:
    'Chaud : portez des gants à l’étuve. L’étiquette du sachet et vos règles locales passent d’abord.',
  resetHelp:
    'Saisissez-le ici quand la bobine est ressortie. Un étuvage plus court que ne demande la table pour son corps et son niveau ne rend pas la durée hors sachet : un chef d’équipe doit alors décider.',
  badHours: 'Saisissez de 0 à 9999 heures.',
  badCelsius: 'Saisissez de 30 à 150 °C.',
  climate: (f) =>
    f.computed !== f.entered
      ? `Les ${f.entered.celsius} °C et ${f.entered.humidity} % de l’atelier sont hors de la table. Sa pire rangée compte : ${f.computed.celsius} °C et ${f.computed.humidity} %. Demandez à l’ingénieur procédé.`
      : f.isEntered
        ? `Pour un atelier jusqu’à ${f.entered.celsius} °C et ${f.entered.humidity} % d’humidité, d’après les règles de la ligne.`
        : `Pour un atelier jusqu’à ${f.entered.celsius} °C et ${f.entered.humidity} % d’humidité : personne n’a saisi ceux de la ligne.`,
  yes: 'Enregistrer',
  written: (reel) => `${reel} : enregistré.`,
  ends: (slot, life, out) =>
    `${slot} : la durée hors sachet finit ${life}, la bobine durerait jusqu’à ${out}.`,
  isOver: (slot, life) => `${slot} : durée hors sachet dépassée depuis ${life}.`,
  endsAct: 'Mettez une autre bobine d’ici là. Séchez ou étuvez celle-ci selon vos règles.',
  overAct: 'Ne l’utilisez plus. Un chef d’équipe décide des composants posés depuis.',
  toBake: (reels) => `durée hors sachet dépassée, étuver d’abord : ${reels}`,
};

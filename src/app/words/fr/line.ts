import type { words as english } from '../en/line.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  noSetup: {
    title: 'Aucun plan n’est choisi pour cette ligne',
    help: 'Un chef d’équipe choisit la prochaine fabrication. Un ingénieur importe les plans.',
    choose: 'Choisir un plan',
    bring: 'Importer un plan',
  },
  noRun: 'Rien n’est en fabrication',
  noRunHelp: 'Chargez la ligne, puis démarrez une série. Les fins de bobine s’affichent alors ici.',
  notLoaded: (missing) =>
    plural(
      missing,
      `${missing} emplacement n’a pas encore de bobine.`,
      `${missing} emplacements n’ont pas encore de bobine.`,
    ),
  notRight: (count) =>
    plural(
      count,
      `${count} emplacement n’est pas encore bon : voir Charger.`,
      `${count} emplacements ne sont pas encore bons : voir Charger.`,
    ),
  beginsShort: (count) =>
    plural(count, `${count} bobine est juste au départ`, `${count} bobines sont justes au départ`),
  beginsShortAct: 'Raccordez-les ou changez-les avant la série.',
  shortAfter: (span) => `dure ${span}`,
  start: 'Démarrer une série',
  startTitle: 'Démarrer une série',
  product: 'Plan',
  panelsWanted: 'Flans à fabriquer',
  panelSeconds: 'Secondes par flan (nominal)',
  panelSecondsHelp: 'Utilisé jusqu’à ce que la cadence de la ligne soit mesurée.',
  panelPrefix: 'Les codes de flan commencent par',
  panelPrefixHelp: 'Laissez vide si les flans n’ont pas de code. Touchez alors pour compter.',
  wrongNumber: 'Saisissez un nombre supérieur à zéro.',
  startAnyway: 'Démarrer incomplet',
  stop: 'Arrêter',
  stopTitle: 'Pourquoi la ligne est-elle arrêtée ?',
  stopReasons: {
    'run-out': 'Bobine finie',
    splice: 'Raccord',
    jam: 'Bourrage',
    'pick-errors': 'Erreurs de prise',
    'paste-or-print': 'Pâte ou sérigraphie',
    quality: 'Qualité',
    'no-boards': 'Plus de cartes',
    break: 'Pause',
    maintenance: 'Maintenance',
    other: 'Autre',
  },
  resume: 'Reprendre',
  end: 'Finir la série',
  endTitle: 'Finir cette série ?',
  endText: (done, wanted) =>
    `${plural(wanted, `${done} flan compté sur ${formatCount(wanted)}.`, `${done} flans comptés sur ${formatCount(wanted)}.`)} Les bobines restent en place.`,
  plusOne: '+1\u00a0flan',
  plusMany: '+\u00a0n',
  plusManyTitle: 'Combien de flans de plus ?',
  counted: (panels) => `Flan ${panels}.`,
  skippedUnknown: 'Cartes sautées : non saisi',
  skipped: (count) => (count === 0 ? 'Cartes sautées : aucune' : `Cartes sautées : ${count}`),
  skippedTitle: 'Quelles cartes du prochain flan sont sautées ?',
  skippedHelp: 'Touchez chaque carte marquée mauvaise. Le prochain comptage l’emporte.',
  skippedUse: (count) =>
    count === 0
      ? 'Aucune carte sautée'
      : plural(count, `Sauter ${count} carte`, `Sauter ${count} cartes`),
  skippedManyTitle: (panels) =>
    plural(
      panels,
      'Cartes sautées sur ce flan ?',
      `Cartes sautées sur ces ${formatCount(panels)} flans ?`,
    ),
  skippedMost: (boards) =>
    plural(
      boards,
      `Il n’y a que ${boards} carte.`,
      `Il n’y a que ${boards} cartes. Saisissez moins.`,
    ),
  skippedNotKnown: 'Inconnu',
  scrap: 'Flans rebutés',
  scrapTitle: 'Combien de flans sont rebutés ?',
  scrapHelp: 'Ils restent comptés : leurs composants sont consommés. Autant de plus sont à fabriquer.',
  scrapMost: (panels) =>
    plural(
      panels,
      `Seulement ${panels} bon flan est compté.`,
      `Seulement ${panels} bons flans sont comptés. Saisissez moins.`,
    ),
  scrapped: (panels) =>
    plural(panels, `${formatCount(panels)} flan rebuté`, `${formatCount(panels)} flans rebutés`),
  skipsUnknown: 'Les cartes sautées n’ont jamais été saisies : chaque carte compte comme fabriquée.',
  seenBefore: (code, machine) => `Le flan ${code} entre dans ${machine}. Rien n’a été compté.`,
  scansBefore: (machine) => `Les flans scannés ici entrent dans ${machine} : non comptés`,
  countedBefore: (code) => `Le flan ${code} est déjà compté dans cette série. Rien n’a été ajouté.`,
  countedByStation: (station) => `Compté par la machine : ${station}`,
  countedByHand: 'Compté à la main tant que la machine est muette',
  machineUntil: (clock) => `compte machine jusqu’à ${clock}`,
  besideHand: (panels) =>
    plural(
      panels,
      `${formatCount(panels)} flan compté à la main, non ajouté`,
      `${formatCount(panels)} flans comptés à la main, non ajoutés`,
    ),
  setRight: 'Flans = …',
  setRightTitle: 'Combien de flans sont faits ?',
  setRightHelp: 'La série a alors ce nombre. Le comptage continue à partir de là.',
  setRightWhy: 'Pourquoi un autre nombre ?',
  setRightYes: (panels) => `Mettre à ${panels}`,
  setRightMissing: 'Saisissez un autre nombre, et pourquoi.',
  keptBeside: (code) =>
    `Flan ${code} gardé. La machine compte cette ligne : il n’a pas été ajouté.`,
  silent: (station, clock) =>
    `${station} est muette depuis ${clock}. Comptez les flans à la main jusqu’à son retour.`,
  silentShort: 'Compte machine muet',
  believes: (slots) =>
    plural(
      slots,
      `La machine croit autre chose sur ${formatCount(slots)} emplacement.`,
      `La machine croit autre chose sur ${formatCount(slots)} emplacements.`,
    ),
  believesAct: 'Voir Stations',
  takeBack: 'Défaire',
  stoppedSince: (reason, clock, span) => `Arrêt : ${reason}, depuis ${clock}, ${span}`,
  stoodSince: 'Arrêtée depuis',
  stoodLast: (clock, span) => `${clock}, le dernier flan, il y a ${span}`,
  stoodNow: (clock) => `maintenant, ${clock}`,
  quietSince: (clock, span) => `Aucun flan compté depuis ${clock}, ${span}`,
  quietAct:
    'Toutes les heures supposent que la ligne a gardé sa cadence. Comptez les flans, ou saisissez l’arrêt.',
  ifPace: 'si elle a gardé sa cadence',
  blocked: 'Bobine bloquée',
  ifStarts: 'si elle repart maintenant',
  soon: (clock, span) => `${clock}, dans ${span}`,
  gone: (clock, span) => `${clock}, il y a ${span}`,
  ago: (span) => `il y a ${span}`,
  panels: (done, wanted) =>
    plural(wanted, `${done} flan sur ${formatCount(wanted)}`, `${done} flans sur ${formatCount(wanted)}`),
  pace: {
    seen: (seconds) => `${seconds} s par flan, mesuré`,
    nominal: (seconds) => `${seconds} s par flan, nominal`,
  },
  runEnds: (moment) => `fin de série vers ${moment}`,
  runDone: 'Tous les flans sont comptés.',
  inTime: (span) => `dans ${span}`,
  overdue: 'maintenant',
  parts: (count) =>
    plural(count, `${formatCount(count)} composant`, `${formatCount(count)} composants`),
  dueTitle: 'Raccords à venir',
  firstOf: (shown, all) => `les ${shown} premiers sur ${all}`,
  outlast: (count) =>
    plural(count, `${count} emplacement tient la série`, `${count} emplacements tiennent la série`),
  unknown: (count) =>
    plural(
      count,
      `${count} emplacement n’a pas de compte, sa fin de bobine est inconnue :`,
      `${count} emplacements n’ont pas de compte, leur fin de bobine est inconnue :`,
    ),
  noRules: 'Cette ligne n’a pas encore de règles : les fins de bobine sont inconnues.',
  toRules: 'Saisir les règles de la ligne',
  nothingDue: 'Aucune bobine ne se vide avant la fin de la série.',
  between: (early, late) => `entre ${early} et ${late}`,
  inRange: (early, late) => `dans ${early} à ${late}`,
  window: (opens, closes) => `raccorder de ${opens} à ${closes}`,
  windowNow: (closes) => `raccorder maintenant, jusqu’à ${closes}`,
  windowGone: (closes) => `fenêtre de raccord fermée à ${closes}`,
  levels: { quiet: '', soon: 'bientôt', due: 'à raccorder', late: 'en retard' },
  acknowledge: 'J’y vais',
  splice: 'Raccorder',
  more: 'Tous les emplacements',
  less: 'Urgents seulement',
  caution:
    'Ne raccordez et n’y mettez les mains que machine arrêtée ou feeder hors de la zone protégée, comme le dit son manuel. Coupez à l’opposé des doigts. Les règles locales passent d’abord.',
  nowTitle: 'À faire maintenant',
  walkBy: (clock) => `avant ${clock}`,
  goes: (name) => `${name} y va`,
  allWalks: (count) =>
    count === 0 ? 'Tournées' : plural(count, `${count} tournée`, `${count} tournées`),
  misses: (count) =>
    plural(count, `${count} impossible à temps`, `${count} impossibles à temps`),
  horizonOf: 'Heures affichées',
  sheet: { window: 'Quand', runsOut: 'Se vide', left: 'Reste', reel: 'Bobine' },
  walksTitle: 'Tournées',
  walkNow: 'Partir maintenant',
  walkAt: (clock, span) => `${clock}, dans ${span}`,
  walkSplices: (count) =>
    plural(count, `${count} raccord`, `${count} raccords, une tournée`),
  walkNone: 'Aucune tournée dans les prochaines heures.',
  walkMore: (count) =>
    plural(count, `${count} tournée de plus ensuite`, `${count} tournées de plus ensuite`),
  walkOf: (person) => `Personne ${person}`,
  walk: (number) => `tournée ${number}`,
  crew: 'Personnes sur cette ligne',
  missTitle: 'Impossible à temps',
  miss: {
    windowTooShort: (moment) => `raccorder avant ${moment} : le temps est trop court pour cela`,
    closesTooSoon: (moment) => `raccorder avant ${moment} : personne ne peut y être à temps`,
    crowdedOut: (moment) =>
      `raccorder avant ${moment} : tout le monde est pris par d’autres raccords`,
  },
  remedies: {
    cutEarly: (parts, moment) =>
      `Couper plus tôt l’ancienne bande, à ${moment} : ${plural(parts, `environ ${formatCount(parts)} composant est perdu`, `environ ${formatCount(parts)} composants sont perdus`)}`,
    secondPerson: (moment) => `Une deuxième personne y va avant ${moment}`,
    secondSlot: (moment) => `Charger le composant sur un second emplacement avant ${moment}`,
  },
  orRemedy: (remedy) => `ou : ${remedy}`,
  missMore: (count) => plural(count, `${count} de plus ensuite`, `${count} de plus ensuite`),
  noRemedy: 'La ligne va s’arrêter. Tenez prête la bobine suivante.',
  lossIs: (share) => `perte ${share}`,
  feedsAfter: (slot) => `attend que ${slot} soit vide`,
  backup: (slot) => `puis ${slot} alimente, pas d’arrêt`,
  horizon: (hours) => `${hours} h`,
  shiftBreak: 'pas de travail',
  now: 'maintenant',
};

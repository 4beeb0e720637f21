import type { words as english } from '../en/stations.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  caution:
    'Une aide à côté des protections propres à la machine, pas une fonction de sécurité. Elle écoute, et ne demande ou ne répond que là où c’est réglé. Aucune machine n’est commandée.',
  who: (line) => `Qui compte sur ${line} ?`,
  whoHelp:
    'Un seul compteur par ligne. Les comptes à la main à côté d’une station sont gardés et montrés, non ajoutés.',
  hand: 'Personnes, à la main',
  handNow: 'Des personnes comptent maintenant sur cette ligne.',
  stationNow: (station) => `Cette ligne est maintenant comptée par ${station}.`,
  checkInLine:
    'Vérifiez « Flans dans la ligne » dans les règles de la ligne : ils dépendent de l’endroit où les flans sont comptés.',
  none: 'Aucune station n’est encore connue',
  noneHelp:
    'Démarrez ceci sur un ordinateur près des machines. La station s’affiche ici quand sa liaison a rejoint.',
  silent: (clock) => `Muette depuis ${clock}`,
  heard: (clock) => `Entendue ${clock}`,
  never: 'Jamais entendue',
  counts: 'Compte cette ligne',
  line: 'Ligne',
  stands: 'Se trouve',
  places: {
    in: 'avant la première machine',
    work: 'à une machine',
    out: 'après la dernière machine',
  },
  atMachine: (machine) => `à ${machine}`,
  lastHeard: 'Entendue la dernière fois',
  total: 'Son total',
  boot: (boot) => `depuis sa mise en marche comme ${boot}`,
  heardAs: (boot) => `depuis que la liaison a recommencé à l’entendre, comme ${boot}`,
  state: 'État',
  recipe: 'Programme',
  noState: 'Elle ne le dit pas',
  states: {
    1: 'En travail',
    2: 'En attente',
    3: 'Mise au point',
    4: 'Arrêt prévu',
    5: 'Arrêt imprévu',
    6: 'Non planifiée',
  },
  otherState: 'Un état propre à son fabricant',
  version: 'Liaison',
  linkOf: (version, tablet) => `version ${version}, ${tablet}`,
  noticed: 'Non compris ou non compté',
  allUnderstood: 'Tout a été compris.',
  notices: {
    'not-understood': 'Messages illisibles',
    'wrong-secret': 'Messages sans le bon secret',
    'clock-off': 'Son horloge est fausse de plus de cinq minutes. Rien n’est daté d’après elle',
    'total-fell':
      'Son total a baissé sans qu’elle ait été éteinte. Elle continue à compter de là ; ce qui s’est perdu entre-temps n’est pas compté',
    'two-devices':
      'Deux appareils envoient sous un même nom. Le premier compte. Donnez à l’autre son propre nom, puis éteignez et rallumez les deux',
    'code-twice': 'Un code de flan est venu deux fois. Il ne désigne que le premier flan',
    'not-used': 'Messages qui ne sont pas utilisés ici',
    'other-handle':
      'Une machine envoie sans qu’une station soit réglée pour elle. Réglez-en une, avec son handle',
    'not-connected': 'Son broker n’a pas été atteint. Nouvel essai en cours',
    'not-answered': 'Elle n’a pas dit ce qu’elle a de chargé. On lui redemande',
    'not-offered': 'Elle n’a pas dit quel plan elle veut. On lui redemande',
    'loads-cut': 'Elle a nommé plus d’emplacements qu’on n’en lit. Seuls les premiers sont comparés',
    'asked-off': 'Elle a demandé des matières sans réponse : ce n’est pas activé',
    'asked-often': 'Elle a demandé plus de 60 fois en une minute. Le reste est resté sans réponse',
    'not-replied': 'Elle a demandé et était partie avant la réponse',
    'code-again': 'Un code de flan est revenu. Il compte une fois par série',
    'not-heard':
      'Pas entendue un moment : ce qui est passé alors n’est pas dans son total. Comparez avec la ligne, et réglez « Flans = … » là où c’est faux',
    'no-boards': 'Elle n’annonce pas les flans, donc elle ne compte rien. Activez cela à la machine',
    'other-machine':
      'Flans d’une autre machine sur la même connexion. Ils ne sont pas comptés ; nommez la bonne dans le fichier de la liaison (machineId)',
    'wrong-channel':
      'Ce port est le canal entre deux machines. La liaison a raccroché ; mettez le port de supervision de la machine dans son fichier',
    'by-hand':
      'Flans mis ou sortis à la main. Ils ne sont pas comptés ; si l’un a été fabriqué, réglez « Flans = … »',
    'failed-board':
      'Flans que la machine dit en échec. Ils ont pris leurs composants et sont comptés ; rebutez-les s’ils le sont',
    'board-twice': 'Flans annoncés deux fois. Chacun est compté une fois',
    'machine-says': 'La machine dit',
  },
  other: 'Autre chose',
  times: (times) => (times === 1 ? 'une fois' : `${formatCount(times)} fois`),
  foundTitle: 'La machine et le journal diffèrent',
  found: {
    'tape-differs': (slot, clock, machine, here) =>
      `${slot}, ${clock} : la machine continue avec ${machine}, les scans disent ${here}. Rien n’a été compté. Scannez la bobine en place.`,
    'told-late': (slot, clock, machine) =>
      `${slot}, ${clock} : la machine a dit trop tard que ${machine} avait commencé. Rien n’a été compté. Comptez la bobine.`,
    'empty-early': (slot, clock, machine, _here, parts) =>
      `${slot}, ${clock} : la machine dit que ${machine} est vide. Composants restants d’après le journal : ${parts}. Comptez la bobine.`,
    'life-expired': (_slot, clock, machine) =>
      `${machine}, ${clock} : la machine dit que sa durée hors sachet est dépassée. Voyez dans Bobines.`,
    'life-restored': (_slot, clock, machine) =>
      `${machine}, ${clock} : la machine dit que cette bobine est de nouveau utilisable. Saisissez comment elle a été étuvée ou gardée au sec.`,
  },
  loads: {
    title: 'Ce que croit la machine',
    said: (clock, same) =>
      `Dit le ${clock}. ${plural(same, `${formatCount(same)} emplacement est comme le disent les scans.`, `${formatCount(same)} emplacements sont comme le disent les scans.`)}`,
    differs: (slot, machine, here) => `${slot} : d’après la machine ${machine}, d’après les scans ${here}.`,
    nothing: 'rien',
    look: 'Ouvrez l’emplacement et scannez-y la bobine. Si les scans sont justes, rectifiez à la machine.',
    scan: 'Scannez-y la bobine.',
    open: (slot) => `Ouvrir ${slot}`,
    more: (slots) => plural(slots, `et ${formatCount(slots)} autre`, `et ${formatCount(slots)} autres`),
    never: 'Cela ne change aucun emplacement tout seul.',
    later: (slots) => `Scanné après que la machine a parlé, elle ne le sait peut-être pas encore : ${slots}.`,
    untold: (slots) => `La machine ne nomme ni composant ni bobine connue : ${slots}.`,
    unknown: (places) =>
      `Places qui ne sont pas un emplacement de cette ligne : ${places}. Nommez-les dans le fichier de la liaison (slots).`,
  },
  answers: {
    title: 'Quand la machine demande : cette bobine est-elle bonne ?',
    caution: 'Une aide à côté des protections propres à la machine, pas une fonction de sécurité.',
    help: 'Répondu d’après les derniers verdicts. Chaque réponse est au journal. Ce que la machine en fait se règle à la machine.',
    off: 'Ne pas répondre',
    on: {
      Warning: 'Répondre ; en cas de doute, alerter',
      Failed: 'Répondre ; en cas de doute, dire non',
    },
    offNow: 'On ne répond plus à la machine.',
    onNow: {
      Warning: 'On répond maintenant à la machine. En cas de doute, elle est alertée.',
      Failed: 'On répond maintenant à la machine. En cas de doute, elle entend non.',
    },
    last: (clock, right, unsure, wrong) =>
      `Dernière réponse par place, la plus récente ${clock} : ${right} bon, ${unsure} alerte, ${wrong} non.`,
    one: (slot, reel, result, why) => `${slot}, ${reel} : ${result}, ${why}.`,
    results: { Success: 'bon', Warning: 'alerte', Failed: 'non' },
    whys: {
      verified: 'elle y a été vérifiée',
      refused: 'elle y a été refusée',
      held: 'un verdict attend un chef d’équipe',
      'other-reel': 'une autre bobine y a été vérifiée',
      'other-part': 'un autre composant y a été vérifié',
      'wrong-feeder': 'le feeder n’y est pas le bon',
      blocked: 'la matière est bloquée',
      'no-setup': 'aucun plan n’est choisi',
      'unknown-slot': 'la ligne n’a pas cet emplacement',
      'not-in-setup': 'le plan n’y demande rien',
      'not-verified': 'rien n’y a été vérifié',
      'unknown-reel': 'la bobine n’a jamais été scannée',
      'no-reel-told': 'la machine n’a nommé aucune bobine',
      'out-of-date': 'le journal n’a pas pu être lu',
      'in-conflict': 'deux tablettes en disent des choses différentes',
      unproven: 'rien ne prouve l’accord qui l’a admise',
    },
  },
  clear: 'Traité …',
  clearTitle: 'Ce constat est-il traité ?',
  clearHelp: 'Il quitte cette liste. Ce qu’ont dit les deux côtés reste au journal.',
  clearWhy: 'Qu’en est-il sorti ?',
  clearYes: 'C’est traité',
  cleared: 'Traité. Les deux côtés restent au journal.',
  ownName: 'Son propre nom',
  rename: 'Renommer',
  renameTitle: 'Comment s’appelle cette station ?',
  renameHelp: 'Pour les personnes seulement. Sa liaison continue sous son propre nom.',
  renameName: 'Nom',
  renameYes: 'Renommer',
  renameMissing: 'Saisissez un autre nom.',
  noReel: 'une bobine sans code',
  noScan: 'rien là-dessus',
  bothTitle: 'Compté par les deux',
  both: {
    machine: (clock, hand, machine) =>
      `${clock} : revenue après un silence. À la main ${hand}, par la machine ${machine}. Le nombre de la machine fait foi.`,
    hand: (clock, hand, machine) =>
      `${clock} : a recommencé après un silence. À la main ${hand}, par la machine ${machine}. Le nombre à la main fait foi.`,
  },
  bothHelp: 'C’est faux ? Réglez le nombre avec « Flans = … » sur l’écran Ligne.',
  beside: (panels) =>
    plural(
      panels,
      `${formatCount(panels)} flan de cette série a été compté à la main à côté de la station.`,
      `${formatCount(panels)} flans de cette série ont été comptés à la main à côté de la station.`,
    ),
  outside: (panels) =>
    plural(
      panels,
      `${formatCount(panels)} flan est passé alors que rien n’était en fabrication. Il n’est dans aucune série.`,
      `${formatCount(panels)} flans sont passés alors que rien n’était en fabrication. Ils ne sont dans aucune série.`,
    ),
  setTitle: 'Quoi régler à la machine',
  setHelp:
    'La liaison y appelle la machine, sur le canal des systèmes de supervision, et ne fait qu’écouter. Activez pour cela le suivi des flans.',
  setAddress: 'Adresse',
  setNever:
    'Ne lui donnez jamais un port du canal entre deux machines (50100 et la voie) : cela arrêterait la ligne.',
  typeTitle: 'Quoi saisir sur l’appareil',
  typeHelp:
    'À chaque flan qui passe, et toutes les dix secondes, il envoie son propre total courant. Jamais « un de plus » : ce qui se perd alors est rattrapé par le message suivant.',
  typeAddress: 'Adresse',
  typeHeader: 'En-tête',
  typeSecret: 'SECRET',
  typeBody: 'Message',
  typeBoot:
    'boot : un nouveau texte à chaque mise en marche. total : flans depuis. at : son horloge, s’il en a une.',
  machineTitle: 'Quoi saisir à la machine',
  machineHelp:
    'La machine envoie en IPC-2591 (AMQP 1.0), chaque message seul ou plusieurs en un, compressé ou non. Son handle doit être celui du fichier de la liaison.',
  machineAddress: 'Adresse de son broker (network URI)',
  machineTarget: 'Adresse cible',
  machineAny: 'au choix',
  machineAt: 'Ses messages sont pris de',
  machineProof: 'Nom et mot de passe : comme dans le fichier de la liaison. Sans eux : ANONYMOUS.',
  typeAnswer:
    'Réponse 200 avec le plus haut total tenu. 401 : le secret est faux. 400 : ce qui ne va pas, et où.',
};

import { type SheetField, sheetFieldNames } from '../../../../shared/sheet/fields.ts';
import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';

type Facts = SheetProblem['facts'];

const fieldsFr: Readonly<Record<SheetField, string>> = {
  slot: 'emplacement',
  machine: 'machine',
  bank: 'banc',
  number: 'numéro d’emplacement',
  part: 'composant',
  perPanel: 'placements par flan',
  tapeWidth: 'largeur de bande',
  pitch: 'pas',
  sharing: 'partage entre emplacements',
  alternates: 'équivalents',
  supplierParts: 'références fournisseur',
  description: 'désignation',
  package: 'boîtier',
  pins: 'broches',
  bodySize: 'taille du corps',
  bodyThickness: 'épaisseur du corps',
  msl: 'niveau MSL',
  polarity: 'polarité',
  feederType: 'type de feeder',
  drive: 'entraînement du feeder',
  pocket: 'profondeur d’alvéole',
  critical: 'critique',
  positions: 'positions prises',
  side: 'face',
  designators: 'repères',
  fitted: 'monté',
  notFitted: 'non monté',
  note: 'note',
};

const frenchByEnglish = new Map(
  // The keys of a table by field are its fields.
  (Object.keys(sheetFieldNames) as SheetField[]).map((field) => [sheetFieldNames[field], fieldsFr[field]]),
);

/** Facts that name a field carry its English name. */
function field(name: string | number | undefined): string {
  return frenchByEnglish.get(String(name)) ?? String(name);
}

/** A side as the file's reader names it. */
function sideFr(side: string | number | undefined): string {
  return side === 'bottom' ? 'dessous' : 'dessus';
}

const fr: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    'Le fichier n’est pas en UTF-8 ; il a été lu en Windows-1252. Vérifiez les lettres accentuées, ou enregistrez-le en UTF-8.',
  quoteBroken: (f) =>
    `Un guillemet ouvert à la rangée ${f['row']} n’est pas fermé. La suite est peut-être dans la mauvaise cellule. Corrigez cette rangée.`,
  rowTooLong: (f) =>
    `La rangée a ${f['found']} cellules, l’en-tête ${f['wanted']}. Une cellule semble contenir le séparateur : mettez-la entre guillemets.`,
  rowUnreadable: (f) =>
    `La rangée a ${f['found']} cellules, l’en-tête ${f['wanted']}, et elles ne s’alignent pas. Corrigez la rangée.`,
  noRows: () => 'Aucune rangée sous l’en-tête. Exportez la feuille à nouveau avec ses rangées.',
  moreProblems: (f) =>
    `${f['count']} autres problèmes ne sont pas listés. Corrigez ceux-ci, puis lisez la feuille à nouveau.`,
  moreErrors: (f) =>
    `${f['count']} autres problèmes ne sont pas listés, dont des erreurs. Corrigez ceux-ci, puis lisez la feuille à nouveau.`,
  columnMissing: (f) =>
    `Aucune colonne pour « ${field(f['wanted'])} » parmi : ${f['headers']}. Choisissez la colonne à la main.`,
  columnAbsent: (f) =>
    `Aucune colonne pour « ${field(f['wanted'])} » parmi : ${f['headers']}. Choisissez la colonne à la main, ou continuez sans elle.`,
  columnNotFound: (f) =>
    `Cette feuille n’a pas de colonne « ${f['wanted']} » pour « ${field(f['field'])} ». Elle a : ${f['headers']}. Choisissez la colonne à nouveau.`,
  columnUnknown: (f) =>
    `La colonne « ${f['found']} » n’est pas utilisée. Si le plan en a besoin, choisissez à la main ce qu’elle contient.`,
  columnTwice: (f) =>
    `La colonne « ${f['found']} » ressemble aussi à « ${field(f['field'])} » ; « ${f['used']} » est utilisée. Si ce doit être l’autre, choisissez-la à la main.`,
  usagePerBoard: (f) =>
    `La colonne « ${f['found']} » semble compter par carte et est prise par flan. Si un flan porte plusieurs cartes, multipliez-la.`,
  slotMissing: (f) => `L’emplacement est vide, mais la rangée nomme ${f['part']}. Remplissez l’emplacement.`,
  textTooLong: (f) =>
    `« ${field(f['field'])} » : « ${f['found']}… » dépasse ${f['most']} caractères. Raccourcissez.`,
  textCut: (f) => `Le texte dépasse ${f['most']} caractères. Le reste est laissé de côté : raccourcissez-le.`,
  slotUnclear: (f) =>
    `L’emplacement « ${f['found']} » n’est pas écrit comme M1-F-014 : ses voisins ne peuvent pas être vérifiés. Il est pris tel qu’écrit.`,
  slotNumberUnreadable: (f) =>
    `Le numéro d’emplacement « ${f['found']} » n’est pas un entier à partir de 1. Corrigez-le.`,
  partMissing: (f) =>
    `L’emplacement ${f['slot']} n’a pas de référence, mais d’autres cellules sont remplies. Remplissez-la.`,
  usageUnreadable: (f) =>
    `Placements par flan « ${f['found']} » : ce n’est pas un entier à partir de 0. Corrigez.`,
  usageMissing: () =>
    'Placements par flan vides : personne ne sait quand cet emplacement se vide. Remplissez, ou ajoutez le fichier de placement.',
  usageZero: () =>
    'Placements par flan à 0 : l’emplacement est chargé mais pas utilisé. Si c’est voulu, marquez la rangée non montée.',
  usageFromDesignators: (f) =>
    `Placements par flan vides : les ${f['count']} repères comptent pour ${f['count']}. Vérifiez qu’ils couvrent tout le flan.`,
  designatorsDisagree: (f) =>
    `${f['found']} repères, mais ${f['wanted']} placements par flan. Vérifiez ce qui est juste.`,
  widthUnreadable: (f) =>
    `La largeur de bande « ${f['found']} » n’est pas un nombre de mm. Écrivez 8 ou 8 mm.`,
  widthUnknown: (f) =>
    `${f['found']} mm n’est pas une largeur de bande EIA-481 (${f['wanted']} mm). Corrigez-la.`,
  widthMissing: () =>
    'Pas de largeur de bande : personne ne peut vérifier que le feeder convient. Remplissez-la.',
  notTape: (f) =>
    `« ${f['found']} » n’est pas une bande : cet emplacement n’a ni longueurs de bande ni heures de raccord.`,
  pitchUnreadable: (f) =>
    `Le pas « ${f['found']} » n’est pas un nombre de mm supérieur à 0. Écrivez 4 ou 4 mm.`,
  pitchUnusual: (f) =>
    `EIA-481 ne liste pas de pas de ${f['found']} mm pour une bande de ${f['width']} mm, seulement ${f['wanted']} mm. Vérifiez ; quelques bandes diffèrent.`,
  pitchMissing: () =>
    'Le pas manque : une longueur de bande ne peut pas être convertie en composants. Remplissez-le.',
  positionsUnreadable: (f) =>
    `Positions prises « ${f['found']} » : ce n’est pas un entier de 1 à 60. Corrigez.`,
  pinsUnreadable: (f) =>
    `Le nombre de broches « ${f['found']} » n’est pas un entier de 1 ou plus ; il est laissé de côté. Corrigez-le.`,
  bodySizeUnreadable: (f) =>
    `La taille du corps « ${f['found']} » n’est pas une longueur et une largeur en mm ; elle est laissée de côté. Écrivez-la comme 17 x 17.`,
  thicknessUnreadable: (f) =>
    `L’épaisseur du corps « ${f['found']} » n’est pas un nombre de mm supérieur à 0 et est laissée de côté. Corrigez-la.`,
  pocketUnreadable: (f) =>
    `La profondeur d’alvéole « ${f['found']} » n’est pas un nombre de mm supérieur à 0 ; elle est laissée de côté. Corrigez-la.`,
  mslUnknown: (f) =>
    `« ${f['found']} » n’est pas un niveau MSL (1, 2, 2a, 3, 4, 5, 5a, 6) et est laissé de côté. Corrigez-le.`,
  sharingUnknown: (f) =>
    `« ${f['found']} » ne dit pas comment les emplacements se partagent ce composant. Écrivez « réparti » si chacun pose sa part. Écrivez « tour à tour » si l’un alimente jusqu’à se vider.`,
  turnUsageDiffers: (f) =>
    `${f['part']} est utilisé tour à tour : l’emplacement qui alimente pose les ${f['wanted']}. Cette rangée dit ${f['found']}. Écrivez le même nombre dans chaque rangée.`,
  sideUnknown: (f) =>
    `« ${f['found']} » n’est ni dessus ni dessous ; la face est laissée de côté. Corrigez-la.`,
  flagUnreadable: (f) =>
    `« ${f['found']} » n’est ni oui ni non et compte comme ${f['taken'] === 'yes' ? 'oui' : f['taken'] === 'no' ? 'non' : f['taken']}. Corrigez.`,
  alternateIsPart: (f) => `${f['part']} est ici son propre équivalent. C’est laissé de côté.`,
  slotTwice: (f) =>
    `L’emplacement ${f['slot']} est déjà à la rangée ${f['first']}, avec ${f['part']}. Un emplacement prend un composant : corrigez l’une des rangées.`,
  noRoom: (f) =>
    `Le feeder en ${f['slot']} prend ${f['wanted']} positions. ${f['next']} (rangée ${f['nextRow']}) n’est que ${f['found']} plus loin. Déplacez l’un des deux.`,
  littleRoom: (f) =>
    `Un feeder de ${f['width']} mm en ${f['slot']} prend d’habitude ${f['wanted']} positions. ${f['next']} (rangée ${f['nextRow']}) n’est que ${f['found']} plus loin. Vérifiez qu’il tient, ou remplissez les positions prises.`,
  noApprovedReels: (f) =>
    `${f['part']} n’a pas de référence fournisseur approuvée : seules passent les étiquettes à votre référence interne. Remplissez-la.`,
  partDiffers: (f) =>
    `${f['part']} : « ${field(f['field'])} » vaut ${f['found']} ici, ${f['wanted']} à la rangée ${f['first']}. Vérifiez ce qui est juste.`,
  usageDisagrees: (f) =>
    `${f['part']} : ${f['found']} placements par flan dans la feuille, ${f['wanted']} dans le fichier de placement. Vérifiez ce qui est juste.`,
  usageRatio: (f) =>
    `La feuille a, pour chaque composant, ${f['ratio']} fois les placements du fichier de placement. Le fichier semble contenir une carte sur ${f['ratio']} : saisissez combien de cartes porte un flan.`,
  usageSplitUnknown: (f) =>
    `${f['part']} : ${f['wanted']} placements pour ${f['found']} emplacements, et le fichier de placement ne dit pas combien chacun. Remplissez les placements par flan.`,
  partNotPlaced: (f) =>
    `${f['part']} a un emplacement mais n’est pas dans le fichier de placement. Vérifiez la référence dans les deux.`,
  partWithoutSlot: (f) =>
    `${f['part']} est posé ${f['found']} fois (fichier de placement, dès la rangée ${f['first']}) mais n’a pas d’emplacement. Donnez-lui-en un, ou marquez-le non monté.`,
  placementPartMissing: (f) =>
    `Le repère ${f['designator']} n’a pas de référence et est laissé de côté. Remplissez-la.`,
  placementTwice: (f) =>
    `Le repère ${f['designator']} est à la même place qu’à la rangée ${f['first']}. Il compte une fois.`,
  placementSideMissing: () =>
    'Le fichier de placement n’a pas de colonne pour la face. Tous les placements comptent comme dessus.',
  placementSideUnknown: (f) =>
    `« ${f['found']} » n’est ni dessus ni dessous ; le placement compte comme dessus. Corrigez.`,
  headerGuessed: (f) =>
    `Le fichier n’a pas d’en-tête connu. D’après leur contenu, les colonnes sont : ${f['wanted']}. Vérifiez-les.`,
  columnByLook: (f) =>
    `La colonne « ${f['found']} » est prise pour « ${field(f['field'])} » d’après son contenu. Vérifiez-la.`,
  genericParts: (f) =>
    `La colonne « ${f['found']} » a un même nom pour plusieurs valeurs : elle contient des sortes, pas des références. Les valeurs comptent. S’il y a une colonne de références, choisissez-la à la main.`,
  partsAreDesignators: (f) =>
    `La colonne « ${f['found']} » contient des repères, pas des références. Choisissez à la main la colonne des références.`,
  sheetAdded: (f) =>
    `Les rangées de la feuille « ${f['found']} » ont le même en-tête et sont lues aussi ; elles suivent depuis la rangée ${f['first']}.`,
  designatorTwice: (f) =>
    `Le repère ${f['designator']} est déjà à la rangée ${f['first']}, à une autre place. Il compte une fois. Donnez à chaque composant de la carte son propre nom.`,
  designatorSeldom: (f) =>
    `Le repère ${f['designator']} est ${f['found']} fois dans le fichier, la plupart des autres ${f['wanted']} fois. Vérifiez que chaque carte du flan l’a.`,
  placementSideFromName: (f) =>
    `Rien dans le fichier ne dit la face. D’après son nom « ${f['found']} », tous les placements comptent comme ${sideFr(f['side'])}.`,
  throughHole: (f) =>
    `Le repère ${f['designator']} (${f['part']}) est traversant et n’est pas compté comme posé.`,
  oddPlaced: (f) =>
    `Le repère ${f['designator']} ressemble à un point de test ou à un trou, mais a ${f['part']}. Il compte comme posé. S’il ne l’est pas, marquez-le non monté.`,
  valueInPackages: (f) =>
    `La valeur ${f['part']} est ici en boîtier ${f['found']}, à la rangée ${f['first']} en ${f['wanted']}. Elles comptent pour deux composants. Donnez-leur des références.`,
  partInPackages: (f) =>
    `${f['part']} est ici en boîtier ${f['found']}, à la rangée ${f['first']} en ${f['wanted']}. Vérifiez la référence.`,
  valueWithoutPackage: (f) =>
    `Le repère ${f['designator']} a la valeur ${f['part']}, mais ni boîtier ni référence. Personne ne peut dire quel composant c’est : remplissez-les.`,
  xmlBroken: (f) =>
    `Le XML est abîmé ici : ${f['found']}. La suite n’est pas lue. Exportez le fichier à nouveau.`,
  noComponents: () =>
    'Le fichier ne contient aucun composant. Exportez-le avec les composants et leurs places.',
  panelOfFile: (f) =>
    `Le flan du fichier porte ${f['found']} cartes ; une seule est comptée. Dites combien de cartes porte un flan.`,
  billRowWithoutDesignators: (f) =>
    `${f['part']} ne nomme aucun repère : rien n’est posé de cette rangée. Remplissez-les s’il est posé.`,
  billPartMissing: (f) =>
    `La rangée avec ${f['designator']} n’a ni référence ni valeur. Remplissez l’une des deux.`,
  billPartByOther: (f) =>
    `La rangée n’a pas de référence : son composant est appelé ${f['part']}. Remplissez la référence.`,
  secondTable: (f) => `Un autre tableau commence ici (${f['headers']}). Il n’est pas lu.`,
  boardsInFile: (f) =>
    `Le fichier de placement porte déjà ${f['found']} cartes : ${f['wanted']} cartes ne sont pas multipliées à nouveau. Vérifiez combien de cartes porte un flan.`,
  quantityDiffers: (f) =>
    `La quantité est ${f['wanted']}, mais la rangée nomme ${f['found']} repères. Vérifiez ce qui est juste.`,
  quantityUnreadable: (f) =>
    `La quantité « ${f['found']} » n’est pas un nombre. Les repères comptent. Corrigez-la.`,
  quantityRatio: (f) =>
    `À chaque rangée, la quantité est ${f['ratio']} fois le nombre de repères. La nomenclature semble compter ${f['ratio']} cartes.`,
  billDesignatorTwice: (f) =>
    `Le repère ${f['designator']} est déjà à la rangée ${f['first']}, avec le même composant. Il compte une fois.`,
  billDesignatorDiffers: (f) =>
    `Le repère ${f['designator']} est déjà à la rangée ${f['first']}, avec ${f['wanted']} ; ici c’est ${f['found']}. Une place prend un composant : corrigez l’une des rangées.`,
  variantOpen: (f) =>
    `Les variantes de la nomenclature diffèrent ici : ${f['wanted']}. Il compte comme monté. Dites quelle variante est fabriquée, ou apportez la nomenclature de cette variante.`,
  variantNotFound: (f) => `La nomenclature n’a pas de variante « ${f['found']} ». Elle a : ${f['wanted']}.`,
  partDescribedTwice: (f) =>
    `${f['part']} a ici la valeur ${f['found']}, à la rangée ${f['first']} ${f['wanted']}. Vérifiez la référence.`,
  markInRemark: (f) =>
    `D’après la remarque « ${f['found']} », rien de cette rangée n’est monté. Si cela ne vaut que pour certains repères, nommez-les là.`,
  blankNotFitted: (f) =>
    `La colonne « ${f['found']} » a une marque dans certaines rangées et est vide dans ${f['count']}. Vide compte comme non monté.`,
  designatorNotInBill: (f) =>
    `Le repère ${f['designator']} est dans le fichier de placement mais pas dans la nomenclature, et n’est pas compté. Ajoutez-le à la nomenclature, ou marquez-le non monté.`,
  designatorNotPlaced: (f) =>
    `Le repère ${f['designator']} (${f['part']}) est dans la nomenclature mais pas dans le fichier de placement, et n’est pas compté.`,
  partOfFileDiffers: (f) =>
    `Repère ${f['designator']} : ${f['found']} dans le fichier de placement, ${f['wanted']} dans la nomenclature (rangée ${f['first']}). La nomenclature compte. Vérifiez ce qui est juste.`,
  valueOfFileDiffers: (f) =>
    `Repère ${f['designator']} : valeur ${f['found']} dans le fichier de placement, ${f['wanted']} dans la nomenclature (rangée ${f['first']}). La nomenclature compte. Vérifiez ce qui est juste.`,
  sideOfFileDiffers: (f) =>
    `Le repère ${f['designator']} est ${sideFr(f['found'])} dans le fichier de placement ; la nomenclature dit ${sideFr(f['wanted'])}. Le fichier de placement compte.`,
  sheetDesignatorNotPlaced: (f) =>
    `Le repère ${f['designator']} est dans cette rangée mais pas dans le fichier de placement. Vérifiez-le dans les deux.`,
  designatorWithoutSlot: (f) =>
    `Le repère ${f['designator']} (fichier de placement, rangée ${f['first']}, ${f['part']}) n’est dans aucune rangée de la feuille. Ajoutez-le à la rangée de son emplacement, ou marquez-le non monté.`,
  sheetPartDiffers: (f) =>
    `Repère ${f['designator']} : ${f['found']} dans cette rangée, ${f['wanted']} dans le fichier de placement ou la nomenclature. Vérifiez ce qui est juste.`,
  sheetDesignatorTwice: (f) =>
    `Le repère ${f['designator']} est déjà à la rangée ${f['first']}. Il compte là.`,
  listPartEmpty: () =>
    'La rangée n’a pas de référence interne, mais d’autres cellules sont remplies. Complétez-la.',
  listPackingUnknown: (f) =>
    `« ${f['found']} » n’est ni bande, ni bande coupée, ni plateau, ni tube, ni vrac ; c’est omis. Corrigez-le.`,
  listAgeUnreadable: (f) =>
    `La limite d’âge « ${f['found']} » n’est pas un nombre de mois ; elle est omise. Écrivez 24 ou 2 ans.`,
  listPriceUnreadable: (f) =>
    `Le prix « ${f['found']} » n’est pas un nombre supérieur à 0 ; il est omis. Écrivez 0.012 ou 0.012 EUR.`,
  listPriceUnclear: (f) =>
    `« ${f['found']} » ne dit pas pour combien de composants vaut le prix. Écrivez Price each ou Price per 1000.`,
  listToleranceUnclear: (f) =>
    `« ${f['found']} » a des chiffres seuls inférieurs à 1 : parts ou pour cent ? Ils sont omis. Nommez la colonne Tolerance % ou écrivez 1 % dans les cellules.`,
  listReelEmpty: () => 'La rangée n’a pas d’identifiant de bobine ; elle est omise. Complétez-la.',
  listReelTwice: (f) =>
    `La bobine ${f['found']} est déjà à la rangée ${f['first']}. Son dernier compte vaut.`,
  listCountUnreadable: (f) =>
    `Le compte « ${f['found']} » n’est pas un nombre entier de composants ; la rangée est omise. Corrigez-le.`,
};

export const words: Sentences<typeof english> = { say: (problem) => fr[problem.code](problem.facts) };

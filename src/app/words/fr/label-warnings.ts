import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';

const fieldsFr: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: 'référence interne',
  supplierPart: 'référence fournisseur',
  quantity: 'quantité',
  lot: 'lot',
  dateCode: 'code date',
  made: 'semaine de fabrication',
  expires: 'péremption',
  reel: 'bobine',
  supplier: 'fournisseur',
  country: 'pays',
  msl: 'niveau MSL',
  order: 'commande',
};

/** A text in quotes, cut to what a line holds; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return `« ${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain} »`;
}

function sayFr(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return 'aucun code n’a été lu sur cette étiquette';
    case 'no-part-number':
      return 'aucune référence sur cette étiquette : elle doit venir d’ailleurs';
    case 'header-damaged':
      return `le début du code est abîmé : ${quote(warning.found)}`;
    case 'separators-replaced':
      return `le lecteur a envoyé ${quote(warning.found)} à la place des séparateurs (GS) : réglez-le pour envoyer les caractères de contrôle`;
    case 'separators-mixed':
      return `les séparateurs diffèrent (${warning.found.map(quote).join(', ')}) : vérifiez le lecteur et sa disposition de clavier`;
    case 'separators-lost':
      return `il manque des séparateurs dans ${quote(warning.text)} : seul le certain a été lu ; réglez le lecteur pour envoyer les caractères de contrôle`;
    case 'trailer-uncertain':
      return `le dernier caractère de ${quote(warning.text)} peut être la marque de fin du code`;
    case 'keyboard-layout':
      return `le lecteur tape pour un autre clavier (${warning.layout}) : ${quote(warning.text)} n’a pas été pris ; réglez la disposition et scannez à nouveau`;
    case 'identifier-lower-case':
      return `l’identifiant ${quote(warning.id)} est arrivé en minuscules et a été lu ${warning.id.toUpperCase()}`;
    case 'identifier-unlisted':
      return `l’identifiant ${warning.id} n’est pas connu : sa valeur est gardée, non utilisée`;
    case 'no-identifier':
      return `${quote(warning.text)} n’a pas d’identifiant : gardé comme texte`;
    case 'format-unread':
      return `le format ${warning.format} n’est pas lu ici : gardé comme texte`;
    case 'tags-not-mh10':
      return `marques de deux lettres (${warning.tags.join(', ')}) au lieu d’identifiants de données`;
    case 'one-letter-tags':
      return 'marques d’une lettre, lues ainsi : R bobine, P référence interne, D date, L lot, V fournisseur, Q quantité, S référence fournisseur';
    case 'blank-separated':
      return `lu par morceaux, coupés aux espaces : si une référence dans ${quote(warning.text)} a des espaces, elle est coupée aussi`;
    case 'value-may-go-on':
      return `${quote(warning.text)} appartient peut-être à la valeur après ${warning.id} : non lu`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)} commence peut-être par un identifiant, ou est un simple numéro : une personne doit le dire`;
    case 'confirmed-by-setup':
      return `${fieldsFr[warning.field]} ${quote(warning.value)} est ce que le plan attend`;
    case 'conflict':
      return `l’étiquette donne des valeurs différentes pour ${fieldsFr[warning.field]} : ${warning.values.map(quote).join(', ')}`;
    case 'second-lot':
      return `l’étiquette a un second lot, ${quote(warning.text)} : la bobine porte les deux`;
    case 'quantity-unreadable':
      return `la quantité ${quote(warning.text)} ne se lit pas sans deviner : comptez-la ou saisissez-la`;
    case 'quantity-marks':
      return `la quantité ${quote(warning.text)} a été lue ${warning.quantity}`;
    case 'date-code-unclear':
      return `le code date ${quote(warning.text)} (${warning.id}) n’est pas clair : gardé comme imprimé`;
    case 'no-such-week':
      return `le code date ${quote(warning.text)} (${warning.id}) n’est une semaine d’aucune année : gardé comme imprimé`;
    case 'no-such-date':
      return `${quote(warning.text)} (${warning.id}) n’est pas une date`;
    case 'day-not-printed':
      return `${quote(warning.text)} (${warning.id}) n’a pas de jour : le dernier du mois compte`;
    case 'country-unlisted':
      return `${quote(warning.text)} n’est pas un code de pays`;
    case 'msl-unlisted':
      return `${quote(warning.text)} n’est pas un niveau MSL`;
    case 'rule-unclear':
      return `la règle d’étiquette ${quote(warning.rule)} convient de plusieurs façons : non utilisée`;
    case 'full-ascii':
      return `${quote(warning.text)} ressemble à du Code 39 en ASCII complet : ce serait ${quote(warning.meant)} ; réglez le lecteur ainsi`;
    case 'gs1-unread':
      return `${quote(warning.text)} a un identifiant GS1 qui n’est pas connu ici : gardé comme texte`;
    case 'gs1-check-digit':
      return `le chiffre de contrôle de ${quote(warning.text)} est faux`;
  }
}

export const words: Sentences<typeof english> = { say: sayFr };

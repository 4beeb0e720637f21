// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons } from '../reason-words.ts';

export const plantReasonsEn: PlantReasons = {
  'feeder-unknown': {
    title: 'Feeder not known',
    say: (f) => `Feeder ${f['feeder']} is not on the plant’s list, so its width cannot be checked.`,
    act: 'A lead must decide.',
  },
  'feeder-type': {
    title: 'Wrong type of feeder',
    say: (f) => `Feeder ${f['feeder']} is a ${f['found']}; this slot wants a ${f['wanted']}.`,
    act: 'Take a feeder of that type.',
  },
  'feeder-drive': {
    title: 'Wrong drive',
    say: (f) => `Feeder ${f['feeder']} has ${f['found']} drive; this slot wants ${f['wanted']}.`,
    act: 'Take a feeder with the right drive.',
  },
  'feeder-height': {
    title: 'Pockets too deep for the feeder',
    say: (f) =>
      `The tape’s pockets are ${f['wanted']} mm deep; feeder ${f['feeder']} passes ${f['found']} mm.`,
    act: 'Take a feeder for deeper pockets.',
  },
  'maker-not-listed': {
    title: 'Maker not on this product’s list',
    say: (f) =>
      `${f['supplierPart']} is not approved for ${f['part']} on this product.${f['listed'] ? ` Approved: ${f['listed']}.` : ''}${f['approvedFor'] ? ` It is approved on ${f['approvedFor']}.` : ''}`,
    act: 'Take a reel of a listed maker, or let a lead decide.',
  },
  'date-code-old': {
    title: 'Too old by its date code',
    say: (f) => `Made ${f['made']}. The line’s age limit for this part ended on ${f['last']}.`,
    act: 'A lead must decide.',
  },
  'date-code-unknown': {
    title: 'Age not known',
    say: (f) =>
      f['dateCode']
        ? `Date code ${f['dateCode']} cannot be read for certain. The line limits the age of this part.`
        : `The label gives no date code. The line limits the age of this part.`,
    act: 'A lead must decide.',
  },
  'older-in-store': {
    title: 'An older reel is in the store',
    say: (f) =>
      f['by'] === 'expires'
        ? `Reel ${f['reel']} at ${f['place']} is to be used by ${f['expires']}, before this one.`
        : `Reel ${f['reel']} at ${f['place']} has date code ${f['dateCode']}, older than this one.`,
    act: '',
  },
};

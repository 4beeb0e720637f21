// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `Measured: ${f['quantity']} ± ${f['uncertainty']} ${f['unit']}. Wanted: ${f['nominal']} ${f['unit']}, from ${f['least']} to ${f['most']}. With the guard band of ${f['guard']}: from ${f['from']} to ${f['to']}.`;

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
  'value-outside': {
    title: 'Wrong value',
    say: measured,
    act: 'Do not load it. Set the reel aside, then scan another.',
  },
  'value-unsure': {
    title: 'Value not clear',
    say: (f) => `${measured(f)} Too close to a limit for this meter.`,
    act: 'Scan the reel again to measure it again, or let a lead decide.',
  },
  'value-unmeasured': {
    title: 'Value not measured',
    say: (f) => `The line wants one part of ${f['part']} measured before the reel feeds.`,
    act: 'Scan the reel again to measure it, or let a lead decide.',
  },
  'value-unknown': {
    title: 'No value to check',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `The parts list gives ${f['part']} a value without a tolerance.`
        : `The parts list gives no value for ${f['part']}.`,
    act: 'A lead must decide. Enter the value under Parts.',
  },
  'value-within': { title: 'Value checked', say: measured, act: '' },
  'feeder-care': {
    title: 'Feeder is due for care',
    say: (f) =>
      `Feeder ${f['feeder']} has placed about ${f['placed']} parts; the plant says care after ${f['after']}. Have it seen to when it comes off.`,
    act: '',
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

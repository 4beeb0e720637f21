import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, plural } from '../words.ts';
import { moistureReasonsEn, tableEn } from './verdict-moisture.ts';
import { plantReasonsEn } from './verdict-plant.ts';

const reasonsEn: ReasonWords = {
  ...moistureReasonsEn,
  ...plantReasonsEn,
  'unknown-slot': {
    title: 'No such slot',
    say: (f) => `This line has no slot ${f['slot']}.`,
    act: 'Scan the slot’s code at the machine.',
  },
  'slot-not-in-setup': {
    title: 'Slot not used',
    say: (f) => `This setup wants nothing on ${f['slot']}.`,
    act: 'Leave it empty. Scan the right slot.',
  },
  'slot-loaded': {
    title: 'Slot already loaded',
    say: (f) => `${f['slot']} already has ${f['part']}${f['reel'] ? ` (reel ${f['reel']})` : ''}.`,
    act: 'Unload that reel first.',
  },
  'slot-empty': {
    title: 'Slot is empty',
    say: (f) => `Nothing is loaded on ${f['slot']}.`,
    act: 'It cannot be spliced: load a reel.',
  },
  'no-part': {
    title: 'No part number',
    say: (f) => `No code on this label says which part it is. Wanted: ${f['wanted']}.`,
    act: 'Scan the whole label, or type the printed part number.',
  },
  'wrong-part': {
    title: 'Wrong part',
    say: (f) =>
      f['goesTo'] ? `This reel goes to ${f['goesTo']}.` : 'No slot of this setup wants this part.',
    act: 'Put it back. Scan another reel.',
  },
  'wrong-for-lane': {
    title: 'Wrong for the other lane',
    say: (f) => `${f['lane']} takes ${f['wanted']} from this slot.`,
    act: 'Put it back. Scan a reel that both lanes take.',
  },
  'kept-for-lane': {
    title: 'Kept for the other lane',
    say: (f) => `${f['slot']} has ${f['part']} for ${f['lane']}.`,
    act: 'Leave that reel there. To splice onto it, choose the other lane first.',
  },
  'not-in-setup': {
    title: 'Not in this setup',
    say: (f) =>
      f['slot'] ? `No slot wants this reel. The closest is ${f['slot']}.` : 'No slot wants this reel.',
    act: 'Leave it on the cart, or put it back in the store.',
  },
  'bake-short': {
    title: 'Bake too short',
    say: (f) =>
      `Baked ${f['hours']} h${f['celsius'] ? ` at ${f['celsius']} °C` : ''}. ${f['wanted'] ? `The table asks for ${f['wanted']} h there` : 'The table has no row for that'}, so floor life is not restored: ${f['leftSeconds']} left. (${restsOn(f, tableEn)}An unknown package counts as the worst.)`,
    act: 'A lead must decide.',
  },
  'same-label': {
    title: 'A second reel with the same label',
    say: () => 'A person confirmed it: the label matches the reel running here.',
    act: '',
  },
  'reel-elsewhere': {
    title: 'Reel is on another slot',
    say: (f) => `The log has reel ${f['reel']} on ${f['slot']}.`,
    act: 'If it is off that slot, unload it there first.',
  },
  'reel-on-cart': {
    title: 'Reel is on a cart',
    say: (f) => `The log has reel ${f['reel']} on cart ${f['cart']}, ready for ${f['slot']}.`,
    act: 'Take another reel, or first take it off the cart in Make ready.',
  },
  'slot-on-cart': {
    title: 'Slot is ready on a cart',
    say: (f) => `Cart ${f['cart']} already has a reel ready for ${f['slot']}.`,
    act: 'Scan another slot, or take that place off the cart first.',
  },
  'reel-here': {
    title: 'Reel is already here',
    say: (f) => `Reel ${f['reel']} is already on ${f['slot']}.`,
    act: 'Scan the next reel.',
  },
  'reel-blocked': {
    title: 'Reel is blocked',
    say: (f) => `Blocked: ${f['reason']}.`,
    act: 'Set it aside. Get the lead.',
  },
  'feeder-elsewhere': {
    title: 'Feeder is on another slot',
    say: (f) => `The log has feeder ${f['feeder']} on ${f['slot']}.`,
    act: 'Check the feeder’s code, or unload it there first.',
  },
  'feeder-aside': {
    title: 'Feeder is set aside',
    say: (f) => `Feeder ${f['feeder']} must not be used: ${f['why']}.`,
    act: 'Take another feeder. Once it was seen to, say so at the feeder.',
  },
  'feeder-lanes': {
    title: 'Feeder has no lane left',
    say: (f) => `Feeder ${f['feeder']} has lanes: ${f['lanes']}. The log has it on ${f['slots']} already.`,
    act: 'Check the feeder’s code, or correct the number of lanes of its type.',
  },
  'feeder-on-cart': {
    title: 'Feeder is on a cart',
    say: (f) => `The log has feeder ${f['feeder']} on cart ${f['cart']}, ready for ${f['slot']}.`,
    act: 'Check the feeder’s code, or first take it off the cart in Make ready.',
  },
  'feeder-width': {
    title: 'Feeder does not fit the tape',
    say: (f) => `Feeder ${f['feeder']} is for ${f['found']} mm tape; this slot wants ${f['wanted']} mm.`,
    act: 'Take a feeder of the right width.',
  },
  'feeder-pitch': {
    title: 'Feeder pitch does not fit',
    say: (f) => `Feeder ${f['feeder']} advances ${f['found']} mm; this tape wants ${f['wanted']} mm.`,
    act: 'Set the pitch or take another feeder. A wrong pitch throws parts away unnoticed.',
  },
  'floor-life-over': {
    title: 'Floor life is over',
    say: () => 'This reel has been out of its dry bag for too long.',
    act: 'Do not use it. Send it for baking by your rules.',
  },
  'not-the-loaded-reel': {
    title: 'Not the reel in the log',
    say: (f) => `The log has ${f['loaded'] || 'another reel'} on ${f['slot']}.`,
    act: 'Find out who changed it. Then unload and load it again.',
  },
  'part-contradicts': {
    title: 'Label contradicts itself',
    say: (f) => `It says ${f['part']}, but ${f['supplierPart']} is approved for ${f['approvedFor']}.`,
    act: 'A lead must decide.',
  },
  'alternate-not-approved': {
    title: 'Alternate not approved here',
    say: (f) => `${f['found']} may replace ${f['wanted']} on ${f['approvedFor']}, but not on this product.`,
    act: 'A lead must decide.',
  },
  'supplier-part-not-approved': {
    title: 'Supplier part not known',
    say: (f) => `${f['supplierPart']} is not on the approved list. Wanted: ${f['wanted']}.`,
    act: 'A lead must decide.',
  },
  'no-quantity': {
    title: 'No quantity',
    say: () => 'The label gives no quantity, so the run-out is unknown.',
    act: 'Type the quantity, or let a lead decide.',
  },
  expired: {
    title: 'Past its date',
    say: (f) => `Use by ${f['expires']}.`,
    act: 'A lead must decide.',
  },
  'by-alternate': {
    title: 'Approved alternate',
    say: (f) => `${f['found']} is an approved alternate of ${f['wanted']}.`,
    act: '',
  },
  'by-supplier-part': {
    title: 'By the supplier’s number',
    say: (f) => `${f['supplierPart']} is approved for ${f['part']}.`,
    act: '',
  },
  'by-comparison': {
    title: 'Taken as the same number',
    say: (f) => `${f['found']} counts as ${f['wanted']} by the site’s rule on ${f['rule']}.`,
    act: '',
  },
  'mixed-lots': {
    title: 'Another lot',
    say: (f) => `Lot changes from ${f['from']} to ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: 'Not the label’s quantity',
    say: (f) =>
      f['label'] === ''
        ? `The label gives none; the log uses ${f['quantity']}.`
        : `The label says ${f['label']}; the log uses ${f['quantity']}.`,
    act: '',
  },
};

export const words = {
  accepted: {
    exchange: 'Right one to exchange',
    refill: 'Right one to pour in',
    load: 'Right reel',
    splice: 'Right reel to splice',
    sweep: 'Seen',
  },
  refused: 'Refused',
  held: 'Held for the lead',
  wants: (slot: string) => `${slot} wants`,
  says: 'the reel says',
  also: 'Also',
  goOn: 'Go on',
  nextIs: (slot: string) => `Next: ${slot}`,
  another: 'Scan another reel',
  callLead: 'Let a lead decide',
  typeQuantity: 'Type the quantity',
  takeBack: 'Take back',
  parts: (count: number) => plural(count, '1 part', `${formatCount(count)} parts`),
  lot: (lot: string) => `lot ${lot}`,
  reel: (reel: string) => `reel ${reel}`,
  practice: 'practice scan',
  allLoaded: 'Every slot is loaded.',
  spliceCaution:
    'Join the tapes with the machine stopped, or with the feeder outside the guarded zone as the feeder’s manual says. Cut away from your fingers. Local rules come first.',
  loadCaution: 'Stop the machine and wait for the head before reaching in. Local rules come first.',
  reasons: reasonsEn,
} as const;

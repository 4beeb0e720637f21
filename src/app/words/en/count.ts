import { plural } from '../words.ts';

export const words = {
  title: (what: string) => `How many parts: ${what}`,
  ways: { typed: 'Typed', machine: 'Counter or machine', weighed: 'Weighed', measured: 'Measured' },
  wayHelp: {
    typed: 'The number on the label, or your own count.',
    machine: 'What a reel counter or the machine shows.',
    weighed: 'Weigh this reel. Full and empty weights of the part are saved.',
    measured: 'Measure across the wound tape, not across the flange.',
  },
  fields: {
    parts: 'Parts',
    massG: 'This reel, g',
    emptyG: 'Empty reel, g',
    fullMassG: 'Full reel, g',
    outerMm: 'Wound tape D, mm',
    hubMm: 'Hub d, mm',
    fullOuterMm: 'D of a full reel, mm',
    thicknessMm: 'or tape thickness, mm',
    pitchMm: 'Pitch, mm',
    fullParts: 'Parts on a full reel',
  },
  wrong: {
    missing: 'still missing',
    notNumber: 'not a number',
    tooSmall: 'too small for the other figures',
    tooLarge: 'larger than a full reel',
  },
  picture:
    'A reel from the side: D is across the wound tape, d across the hub. The flange is wider than the tape.',
  flange: 'flange',
  wound: 'wound tape',
  hub: 'hub',
  remembered: (parts: string) => `From a full reel of ${parts}, measured before.`,
  result: (parts: string, sd: string) => plural(parts, `${parts} ± ${sd} part`, `${parts} ± ${sd} parts`),
  before: (parts: string, sd: string, basis: string) => `The log says ${parts} ± ${sd} (${basis}).`,
  beforeUnknown: 'The log has no count yet.',
  printed: (share: string, least: string, isEntered: boolean) =>
    `Printed or typed numbers count as ± ${share}${isEntered ? ' (from the line rules)' : ' (common practice)'}, at least ± ${least} (common practice).`,
  agree: 'Both counts agree. Together:',
  contradicts: 'The two counts do not match. Check the reel, then choose.',
  takeNew: 'Use the new count',
  takeBoth: 'Use both together',
  take: 'Use this count',
  bases: {
    'one-by-one': 'counted one by one',
    label: 'label',
    typed: 'typed',
    machine: 'counter',
    weighed: 'weighed',
    measured: 'measured',
    'counted-down': 'counted down',
    combined: 'several counts',
  },
  saved: (slot: string, parts: string, sd: string) =>
    `${slot}: now ${plural(parts, `${parts} ± ${sd} part`, `${parts} ± ${sd} parts`)}.`,
  leftTitle: (slot: string) => `Unload ${slot}: what is left?`,
  leftHelp: 'What is left shows what the feeder lost. Count it now, or let the store count it later.',
  offLanes: {
    ask: 'What comes off?',
    one: (slot: string) => `Only the reel on ${slot}`,
    all: (slots: string) => `The whole feeder, with ${slots}`,
  },
  leftEmpty: 'Nothing: it is empty',
  leftCount: 'Count it',
  leftUnknown: (parts: string) => `Not counted: about ${parts}`,
  leftUnknownPlain: 'Not counted',
  lost: (feeder: string, lost: string, picks: string, share: string) =>
    `${feeder} lost ${plural(picks, `${lost} of 1 pick`, `${lost} of ${picks} picks`)} (${share}).`,
  moreThanGone: 'More was placed than is gone: a count is wrong. The loss stays as it was.',
  unlikely: (feeder: string, share: string, bound: string) =>
    `${feeder} would have lost ${share}. That is unlikely (over ${bound}): check the counts. The loss stays as it was.`,
  leftOut: (count: string, bound: string) =>
    `Not used: ${count}. Over ${bound} lost is unlikely (0.1–3 % is common practice; the limit is our own).`,
  lossTitle: 'Lost picks',
  lossNone: 'No reel with a known count is finished yet. Until then, the line’s assumed loss is used.',
  lossRow: (share: string, low: string, high: string) => `${share} (${low} to ${high})`,
  skipsUnknown: (reels: number) =>
    plural(
      reels,
      'Skips unknown for 1 reel: it may have lost more.',
      `Skips unknown for ${reels} reels: they may have lost more.`,
    ),
  skipsUnknownReel: 'skips unknown',
  lossEvidence: (reels: string, lost: string, picks: string) =>
    `${reels} finished, ${plural(picks, `${lost} of 1 pick lost`, `${lost} of ${picks} picks lost`)}`,
  rising: (feeder: string, share: string, others: string) =>
    `Feeder ${feeder} throws away ${share}, the others ${others}.`,
  risingAlone: (feeder: string, share: string) => `Feeder ${feeder} throws away ${share}, more than before.`,
  pickFaults: (times: string, since: string) =>
    plural(
      times,
      `The machine told 1 pick fault since ${since}.`,
      `The machine told ${times} pick faults since ${since}.`,
    ),
  pickFaultsTitle: 'Pick faults where no loss is known yet',
  risingAct: 'At the next stop, check nozzle, tape path and pick height.',
  feeder: 'Feeder',
  slot: 'Slot',
  loss: 'Loss',
  evidence: 'Based on',
  told: { count: 'counted', splice: 'spliced', machine: 'told by the machine' },
  evidenceLine: (from: string, to: string, placed: string) =>
    `${from} at the start, ${to} left, ${placed} placed`,
  showEvidence: 'Show the reels',
  hideEvidence: 'Hide the reels',
  spliceDiffers: 'The splice and the count disagree: the old reel’s count was wrong.',
} as const;

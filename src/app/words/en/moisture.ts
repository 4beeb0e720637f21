import type { PackageFamily } from '../../../../shared/floor/vocabulary.ts';
import type { LineClimate } from '../../../../shared/moisture/line-climate.ts';
import type { ValueSource } from '../../../../shared/moisture/values.ts';

/** One bake as its sentence takes it; null: nobody told, or the table gives none. */
interface BakeFacts {
  readonly hours: string;
  readonly celsius: string | null;
  readonly wanted: string | null;
}

export const words = {
  level: (msl: string) => `MSL ${msl}`,
  left: (span: string) => `${span} of floor life left`,
  leftUntil: (span: string, clock: string) => `${span} of floor life left, until ${clock}`,
  unopened: (span: string) => `not opened yet: ${span} of floor life`,
  noLimit: 'no limit in this air',
  over: 'floor life over',
  overSince: (clock: string) => `floor life ended ${clock}`,
  baking: 'in the oven',
  bakeShort: 'baked shorter than the table says',
  bakeLet: (name: string) => `short bake counts: ${name}`,
  letBake: 'Let the bake count',
  letBakeTitle: (reel: string) => `Let the bake of ${reel} count?`,
  letBakeWhat: (f: BakeFacts) =>
    `Baked ${f.hours} h${f.celsius === null ? '' : ` at ${f.celsius} °C`}. ${f.wanted === null ? 'The table has no row for that.' : `The table asks for ${f.wanted} h.`}`,
  letBakeHelp:
    'Floor life then starts again at the end of this bake, and the bake no longer holds the reel. It counts once: another short bake is held again.',
  letBakeWhy: 'Why does it count?',
  letBakeDone: (reel: string) => `${reel}: the bake counts.`,
  letBakeFor: 'The bake',
  letBakeOnce: 'Only this time',
  letBakeAlways: 'It counts from now on',
  hotOver: (hours: string) => `${hours} h above 90 °C in all`,
  labelTime: 'level 6: bake it, then enter the time on its label',
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
    chip: 'Chip',
    other: 'None of these',
  } as Readonly<Record<PackageFamily, string>>,
  sources: {
    own: 'the plant’s own copy',
    copy: 'compared with a published copy',
    memory: 'from memory, not compared',
  } as Readonly<Record<ValueSource, string>>,
  restsOn: (f: { classes: readonly string[]; celsius: number; humidity: number; edition: string }) =>
    `${f.classes.length === 1 ? `Class ${f.classes[0]}` : `Class ${[...f.classes].sort().join(' or ')} (the shorter counts)`} · ${f.celsius} °C, ${f.humidity} % · ${f.edition}`,
  classOpen:
    'The package is not fully known, so the worst class counts. An engineer can enter it under Plant, Parts.',
  labelHours: 'Time on its label, hours',
  labelHoursHelp: 'Level 6: the floor life printed on the bag, counted from the end of the bake.',
  badLabelHours: 'Enter the label’s hours: 1 to 9999.',
  hotSoFar: (hours: string, most: string) =>
    `Baked ${hours} h above 90 °C so far. The limit is ${most} h in all.`,
  hotLimit: 'this limit is from memory',
  bakeAdvice: (f: { options: string; source: string }) => `The table asks for ${f.options} (${f.source}).`,
  bakeOption: (hours: string, celsius: number) => `${hours} h at ${celsius} °C`,
  or: 'or',
  bakeLarge:
    'The 96 h row at 125 °C is for large BGA and stacked dies. It counts while the package is not known.',
  dry: 'in dry storage',
  open: 'Bag / oven',
  title: (reel: string) => `Floor life of ${reel}`,
  where: 'Where is it?',
  airs: { floor: 'Open on the floor', dry: 'Cabinet or sealed bag', bake: 'In the oven' },
  hours: 'How many hours ago?',
  hoursHelp: '0 = now. If it was earlier: the hours since then.',
  humidity: 'Relative humidity there',
  humidities: { 5: '5 % or less', 10: '10 % or less' } as Readonly<Record<number, string>>,
  ovenAir: 'Relative humidity in the oven',
  ovenAirs: { dry: '5 % or less', moist: 'More, or nobody knows' },
  ovenAirHelp: 'Below 125 °C the table is for dry air only. In other air a lead must let the bake count.',
  ovenAirMissing: 'Choose how dry the oven is',
  celsius: 'Oven, degrees Celsius',
  celsiusHelp: 'Many tapes and reels take 40 °C at most: check the bag’s label.',
  bakeCaution: 'Hot: wear gloves at the oven. The bag’s label and your local rules come first.',
  resetHelp:
    'Enter it here when the reel is out again. The table gives hours by body and level. A shorter bake does not restore floor life: a lead must then decide.',
  badHours: 'Enter 0 to 9999 hours.',
  badCelsius: 'Enter 30 to 150 °C.',
  climate: (f: LineClimate) =>
    f.computed !== f.entered
      ? `The floor’s ${f.entered.celsius} °C and ${f.entered.humidity} % are outside the table. Its worst row counts: ${f.computed.celsius} °C and ${f.computed.humidity} %. Ask the process engineer.`
      : f.isEntered
        ? `For a floor up to ${f.entered.celsius} °C and ${f.entered.humidity} % humidity, from the line rules.`
        : `For a floor up to ${f.entered.celsius} °C and ${f.entered.humidity} % humidity: nobody entered the line’s own.`,
  yes: 'Save',
  written: (reel: string) => `${reel}: saved.`,
  ends: (slot: string, life: string, out: string) =>
    `${slot}: floor life ends ${life}, the reel would last until ${out}.`,
  isOver: (slot: string, life: string) => `${slot}: floor life ended ${life}.`,
  endsAct: 'Put on another reel by then. Dry or bake this one by your rules.',
  overAct: 'Stop using it. A lead decides about the parts placed since.',
  toBake: (reels: string) => `floor life over, bake first: ${reels}`,
} as const;

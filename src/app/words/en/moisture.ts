import type { LineClimate } from '../../../../shared/moisture/line-climate.ts';

export const words = {
  level: (msl: string) => `MSL ${msl}`,
  left: (span: string) => `${span} of floor life left`,
  leftUntil: (span: string, clock: string) => `${span} of floor life left, until ${clock}`,
  unopened: (span: string) => `not opened yet: ${span} of floor life`,
  noLimit: 'no limit in this air',
  over: 'floor life over',
  overSince: (clock: string) => `floor life over since ${clock}`,
  baking: 'in the oven',
  bakeShort: 'baked shorter than the table says',
  dry: 'in dry storage',
  open: 'Bag / oven',
  title: (reel: string) => `Floor life of ${reel}`,
  where: 'Where is it?',
  airs: { floor: 'Open on the floor', dry: 'Cabinet or sealed bag', bake: 'In the oven' },
  hours: 'How many hours ago?',
  hoursHelp: '0 = now. If it was earlier: the hours since then.',
  humidity: 'Relative humidity there',
  humidities: { 5: '5 % or less', 10: '10 % or less' } as Readonly<Record<number, string>>,
  celsius: 'Oven, degrees Celsius',
  celsiusHelp: 'Many tapes and reels take 40 °C at most: check the bag’s label.',
  bakeCaution: 'Hot: wear gloves at the oven. The bag’s label and your local rules come first.',
  resetHelp:
    'Enter it here when the reel is out again. A bake shorter than the table asks for its body and level does not restore floor life: a lead must then decide.',
  badHours: 'Enter 0 to 9999 hours.',
  badCelsius: 'Enter 30 to 150 °C.',
  climate: (f: LineClimate) =>
    f.reckoned !== f.entered
      ? `The floor’s ${f.entered.celsius} °C and ${f.entered.humidity} % are outside the table. Its worst row counts: ${f.reckoned.celsius} °C and ${f.reckoned.humidity} %. Ask the process engineer.`
      : f.isEntered
        ? `For a floor up to ${f.entered.celsius} °C and ${f.entered.humidity} % humidity, from the line rules.`
        : `For a floor up to ${f.entered.celsius} °C and ${f.entered.humidity} % humidity: nobody entered the line’s own.`,
  yes: 'Save',
  written: (reel: string) => `${reel}: saved.`,
  ends: (slot: string, life: string, out: string) =>
    `${slot}: floor life ends ${life}, the reel would last until ${out}.`,
  isOver: (slot: string, life: string) => `${slot}: floor life is over since ${life}.`,
  endsAct: 'Put on another reel by then. Dry or bake this one by your rules.',
  overAct: 'Stop using it. A lead decides about the parts placed since.',
  toBake: (reels: string) => `floor life over, bake first: ${reels}`,
} as const;

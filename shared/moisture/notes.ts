// What has to be said beside a floor life: assumptions made, rules of this tool's own, and what to do.
// Method: a closed table of codes, each with one sentence made from facts, so that the page can word it in another language.

type Facts = Readonly<Record<string, string | number>>;

const sentences = {
  levelWithoutLimit: () => 'Level 1 has no floor life limit up to 30 °C and 85 % relative humidity.',
  aboveLevelOne: () =>
    'The reel was above 30 °C or 85 % relative humidity, for which level 1 promises nothing. Ask the process engineer.',
  labelTime: () =>
    'Level 6: bake before use, then reflow within the time on the label; without that time no floor life is given.',
  classUnknown: () =>
    'The body thickness is not known: the shortest floor life of the three package classes is used.',
  classOpen: (f: Facts) =>
    `What is known of the part fits classes ${f['class']}: the shortest floor life of them is used. State package, pins, body and thickness.`,
  classByThickness: (f: Facts) =>
    `Package class ${f['class']} follows from the body thickness. Some packages belong to another class whatever their thickness (every ball grid array of 1 mm or more to A, for one): state the class if so.`,
  classFromMemory: (f: Facts) =>
    `A value used here (class ${f['class']}) has not been compared with a copy of the standard. Check it against your own.`,
  ownValues: () => 'The value used here is the plant’s own, from its copy of the standard.',
  levelSixBake: () =>
    'The bake table has no row for level 6: the row of 5a is asked for, by a rule of this tool.',
  bakeDamp: (f: Facts) =>
    `The oven was at ${f['humidity']} % relative humidity: below 125 °C the table asks for 5 % or less.`,
  bakeAirAssumed: () =>
    'Nobody stated how dry the oven was: 5 % relative humidity or less is taken, as the table asks for below 125 °C.',
  bakeRowByBody: () =>
    'The package is not stated: a ball grid array above 17 × 17 mm, or stacked dies, would need 96 h at 125 °C.',
  hotBakes: (f: Facts) =>
    `Baked ${f['hours']} h above 90 °C so far; ${f['most']} h in all is the limit (from memory).`,
  hotBakesOver: (f: Facts) =>
    `Baked ${f['hours']} h above 90 °C in all: more than ${f['most']} h, after which leads may not solder well (from memory). A lead decides.`,
  roundedUp: (f: Facts) =>
    `${f['celsius']} °C and ${f['humidity']} % are no values of the table and count as ${f['rowCelsius']} °C and ${f['columnHumidity']} %, the next worse.`,
  mixedClimates: () =>
    'The standard has no rule for adding stretches in different climates. By a rule of this tool, each stretch uses up its share of the floor life of its own climate.',
  levelTwoDerated: () =>
    'The table has no row for level 2: above 30 °C or 60 % the row of level 2a is used, which is shorter. This is a rule of this tool.',
  outsideTable: (f: Facts) =>
    `${f['celsius']} °C and ${f['humidity']} % lie outside the table (up to 35 °C and 90 %). No floor life is known there; it counts as used up. Bake, or ask the process engineer.`,
  noLimitHere: () => 'In this climate the table sets no limit.',
  standardClimate: () => 'No climate is recorded: 30 °C and 60 % relative humidity are taken.',
  gapAsFloor: (f: Facts) =>
    `The history has no entry from ${f['from']} to ${f['to']}: the reel counts as on the floor, in the climate before.`,
  overlap: (f: Facts) =>
    `Stretches of the history overlap from ${f['from']} to ${f['to']}: the floor counts before dry storage and bake, and the worse climate before the better.`,
  beforeOpening: () => 'What the history says about the time before the bag was opened does not count.',
  afterNow: () => 'What the history says about the time after now does not count.',
  notDry: (f: Facts) =>
    `Storage at ${f['humidity']} % relative humidity is not dry (10 % or below): it counts as floor.`,
  paused: () => 'In dry storage the clock stands still.',
  noPause: () =>
    'Levels 4, 5, 5a and 6 know no pause here: time in dry storage counts as floor until it has undone the exposure.',
  resetByDryStorage: (f: Facts) =>
    `The exposure was short and dry storage long enough: the floor life started again at ${f['at']}.`,
  resetByBake: (f: Facts) => `The floor life started again after the bake that ended at ${f['at']}.`,
  bakeShort: (f: Facts) =>
    `The bake of ${f['hours']} h at ${f['celsius']} °C is shorter than the ${f['wanted']} h of the standard's table. It resets nothing by itself: a lead decides.`,
  bakeUnknown: () =>
    'The bake states no temperature, so it cannot be compared with the table. It resets nothing by itself: a lead decides.',
  bakeRunning: () => 'The bake has not ended: the floor life starts again only when it has.',
  exceeded: (f: Facts) =>
    `The floor life ended ${f['hours']} h of exposure ago. Do not reflow: bake first. Dry storage does not undo it.`,
  bake: (f: Facts) =>
    `Bake by the standard's table: ${f['options']}. Tape and reel usually stand no 125 °C; the supplier's and the site's rules come first.`,
} as const satisfies Readonly<Record<string, (facts: Facts) => string>>;

/** The code of a note. */
export type FloorLifeNoteCode = keyof typeof sentences;

/** Every code, for tables of words and for tests. */
export const floorLifeNoteCodes = Object.keys(sentences) as readonly FloorLifeNoteCode[]; // keys of a literal table

/** One note beside a floor life. */
export interface FloorLifeNote {
  readonly code: FloorLifeNoteCode;
  readonly message: string;
  /** The values that the message was made from; moments in ms since 1970. */
  readonly facts: Facts;
}

/** Makes a note. Facts named from, to and at are moments in ms and read as ISO 8601 (UTC) in the message. */
export function floorLifeNote(code: FloorLifeNoteCode, facts: Facts = {}): FloorLifeNote {
  const shown = Object.fromEntries(
    Object.entries(facts).map(([name, value]) => [
      name,
      ['from', 'to', 'at'].includes(name) ? new Date(value).toISOString().replace('.000Z', 'Z') : value,
    ]),
  );
  const say: (facts: Facts) => string = sentences[code];
  return { code, message: say(shown), facts };
}

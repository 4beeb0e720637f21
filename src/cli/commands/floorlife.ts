// `reelward floorlife`: how much of its floor life a reel has used, how much is left and when it ends.
// The arithmetic is in shared/moisture/; here the moments are read and written.

import { z } from 'zod';
import { packageFamilies } from '../../../shared/floor/vocabulary.ts';
import { type FloorLifeError, floorLife } from '../../../shared/moisture/floor-life.ts';
import { moistureLevels, packageClasses } from '../../../shared/moisture/levels.ts';
import type { PackageFacts } from '../../../shared/moisture/package.ts';
import type { AirSpan } from '../../../shared/moisture/timeline.ts';
import { valueSources } from '../../../shared/moisture/values.ts';
import { type Command, type CommandIo, NotUnderstood, parseCall, printJson, readJson } from '../command.ts';
import { formatMoment, momentSchema, offsetOf } from '../moment.ts';

const help = `reelward floorlife FILE

Reads one JSON document (FILE, or - for standard input):
{"msl": "3", "thickness": 1.4, "openedAt": "2026-03-02T06:00:00+01:00", "now": "2026-03-03T06:00:00+01:00",
 "history": [{"from": "...", "to": "...", "where": "floor", "celsius": 25, "humidity": 50},
             {"from": "...", "to": "...", "where": "dry", "humidity": 5},
             {"from": "...", "to": "...", "where": "bake", "celsius": 40}]}
msl: ${moistureLevels.join(', ')}; thickness: body in mm, or null where not known. Optional: "package" (family:
${packageFamilies.slice(0, 8).join(', ')},
${packageFamilies.slice(8).join(', ')}), "pins", "bodyMm" ([length, width] in mm), "stacked" (true where dies are stacked in it),
"class" (${packageClasses.join(', ')}: known better), "timeOnLabel" (seconds, level 6), "cabinets" (true where your edition of the standard lets
a cabinet at 5 % or below stop the clock of levels 4, 5 and 5a). The last stretch may leave out "to". Gaps count as floor; of overlaps the
worse counts. The class follows from all that is given; of what is not given the worse counts. A bake gives back what its row of the table
grants for body, level, temperature and hours, else nothing; below 125 °C the oven must be at 5 % or less: where a bake states no
"humidity" that is taken, and a note says so; where no package is given, a note tells of the longer row of large ones.

Prints {"usedSeconds", "leftSeconds", "expiresAt", "class", "classes", "restsOn", "hotBakeHours", "notes", ...}. "class" is the one that counts in this
climate, "classes" all that may hold; restsOn: ${valueSources.join(', ')}. leftSeconds is null where there is no limit, expiresAt
where the clock stands still. Exit 0 answered, 2 not understood.
`;

const celsiusSchema = z.number().min(-60).max(200);
const humiditySchema = z.number().min(0).max(100);
const fromTo = { from: momentSchema, to: momentSchema.nullish() };

const stretchSchema = z.discriminatedUnion(
  'where',
  [
    z.strictObject({
      ...fromTo,
      where: z.literal('floor'),
      celsius: celsiusSchema,
      humidity: humiditySchema,
    }),
    z.strictObject({
      ...fromTo,
      where: z.literal('dry'),
      celsius: celsiusSchema.nullish(),
      humidity: humiditySchema,
    }),
    z.strictObject({
      ...fromTo,
      where: z.literal('bake'),
      celsius: celsiusSchema.nullish(),
      humidity: humiditySchema.nullish(),
    }),
  ],
  { error: 'expected an object with "where" floor, dry or bake' },
);

const inputSchema = z.strictObject({
  msl: z.union([z.enum(moistureLevels), z.int().min(1).max(6)], {
    error: `expected one of ${moistureLevels.join(', ')}`,
  }),
  thickness: z.number().positive().nullish(),
  openedAt: momentSchema,
  now: momentSchema,
  history: z.array(stretchSchema),
  class: z.enum(packageClasses).optional(),
  package: z.enum(packageFamilies, { error: `expected one of ${packageFamilies.join(', ')}` }).nullish(),
  pins: z.int().positive().nullish(),
  bodyMm: z.tuple([z.number().positive(), z.number().positive()]).nullish(),
  stacked: z.boolean().nullish(),
  cabinets: z.boolean().optional(),
  timeOnLabel: z.number().positive().optional(),
});

type Input = z.output<typeof inputSchema>;

function toStretch(entry: Input['history'][number]): AirSpan {
  return {
    fromMs: Date.parse(entry.from),
    toMs: entry.to === null || entry.to === undefined ? null : Date.parse(entry.to),
    where: entry.where,
    celsius: entry.celsius ?? null,
    humidity: entry.humidity ?? null,
  };
}

function sayError(error: FloorLifeError, input: Input): string {
  switch (error.code) {
    case 'openedAfterNow':
      return `openedAt: expected a moment not after now (${input.now}), found ${input.openedAt}`;
    case 'stretchEndsBeforeItStarts':
      return `history[${error.index}].to: expected a moment not before from, found ${input.history[error.index]?.to}`;
    case 'thicknessNotPositive':
      return `thickness: expected mm above 0, found ${error.thicknessMm}`;
    case 'humidityOutOfRange':
      return `history[${error.index}].humidity: expected 0 to 100, found ${error.humidity}`;
  }
}

/** What the call says of the package; what it leaves out is not known. */
function packageOf({ package: family, pins, bodyMm, stacked }: Input): PackageFacts {
  return {
    family: family ?? null,
    pins: pins ?? null,
    bodyMm: bodyMm ?? null,
    isStacked: stacked ?? null,
  };
}

/** Seconds to the millisecond: the sum of shares of floor lives carries more digits than any clock. */
function seconds(value: number): number {
  return Math.round(value * 1000) / 1000;
}

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { positionals } = parseCall(args, {}, { min: 1, max: 1, names: 'one FILE' });
  const [file = '-'] = positionals;
  const input = await readJson(file, inputSchema, io);
  const level = moistureLevels.find((known) => known === String(input.msl));
  if (level === undefined) throw new NotUnderstood(`msl: expected one of ${moistureLevels.join(', ')}`);
  const answer = floorLife({
    level,
    thicknessMm: input.thickness ?? null,
    openedMs: Date.parse(input.openedAt),
    nowMs: Date.parse(input.now),
    history: input.history.map(toStretch),
    package: packageOf(input),
    unknownBakesAs: 'body',
    cabinetPauses: input.cabinets ?? false,
    ...(input.class ? { packageClass: input.class } : {}),
    ...(input.timeOnLabel === undefined ? {} : { timeOnLabelSeconds: input.timeOnLabel }),
  });
  if (!answer.ok) {
    throw new NotUnderstood(`${file === '-' ? 'standard input' : file}: ${sayError(answer.error, input)}`);
  }
  const life = answer.value;
  const offset = offsetOf(input.now);
  printJson(
    {
      usedSeconds: seconds(life.usedSeconds),
      leftSeconds: life.leftSeconds === null ? null : seconds(life.leftSeconds),
      expiresAt:
        life.expiresMs === null ? null : formatMoment(Math.floor(life.expiresMs / 1000) * 1000, offset),
      class: life.packageClass,
      classes: [...life.packageClasses].sort(),
      restsOn: life.source,
      hotBakeHours: Math.round(life.hotBakeHours * 1000) / 1000,
      exceededSeconds: seconds(life.exceededSeconds),
      running: life.running,
      climate: life.climate,
      notes: life.notes,
    },
    io,
  );
  return 0;
}

/** The command. */
export const command: Command = {
  name: 'floorlife',
  summary: 'floor life used and left of a moisture-sensitive reel',
  help,
  run,
};

// `reelward count`: parts on a reel, by wound tape or by weight, with their spread.
// The formulas are in shared/forecast/counts.ts; the keys given say which one is meant.

import { z } from 'zod';
import { countFromCalibratedTape, countFromTape, countFromWeight } from '../../../shared/forecast/counts.ts';
import { twelveFigures } from '../../../shared/kit/figures.ts';
import {
  type Command,
  type CommandIo,
  formatIssue,
  NotUnderstood,
  parseCall,
  printJson,
  readJson,
} from '../command.ts';

const help = `reelward count FILE

Reads one JSON document (FILE, or - for standard input), one of:
{"outer": 120, "hub": 60, "thickness": 0.95, "pitch": 4}                          wound tape, mm
{"outer": 120, "hub": 60, "pitch": 4, "full": {"outer": 178, "parts": 5000}}      the same, thickness learnt from a full reel
{"mass": 410, "empty": 60, "full": {"mass": 760, "parts": 5000}}                  weighed, g
Each figure may have its standard deviation beside it: sdOuter, sdHub, sdThickness, sdPitch, sdMass, sdEmpty, and in full sdOuter, sdMass,
sdParts. outer is the diameter of the wound tape, not of the flange.

Prints {"parts", "sd", "thickness", "basis"}; sd is 0 where no deviation was given, thickness null for weight. Exit 0 answered, 2 not understood.
`;

const positive = z.number().positive();
const deviation = z.number().min(0).default(0);
const atLeastHub = { path: ['outer'], error: 'expected at least hub: outer is measured over the wound tape' };

const tapeSchema = z
  .strictObject({
    outer: positive,
    hub: positive,
    thickness: positive,
    pitch: positive,
    sdOuter: deviation,
    sdHub: deviation,
    sdThickness: deviation,
    sdPitch: deviation,
  })
  .refine((input) => input.outer >= input.hub, atLeastHub);

const calibratedSchema = z
  .strictObject({
    outer: positive,
    hub: positive,
    pitch: positive,
    full: z.strictObject({ outer: positive, parts: positive, sdOuter: deviation, sdParts: deviation }),
    sdOuter: deviation,
    sdHub: deviation,
  })
  .refine((input) => input.outer >= input.hub, atLeastHub)
  .refine((input) => input.full.outer > input.hub, {
    path: ['full', 'outer'],
    error: 'expected more than hub: a full reel has tape on it',
  });

const weightSchema = z
  .strictObject({
    mass: positive,
    empty: z.number().min(0),
    full: z.strictObject({ mass: positive, parts: positive, sdMass: deviation, sdParts: deviation }),
    sdMass: deviation,
    sdEmpty: deviation,
  })
  .refine((input) => input.mass >= input.empty, {
    path: ['mass'],
    error: 'expected at least empty: a reel cannot weigh less than without parts',
  })
  .refine((input) => input.full.mass > input.empty, {
    path: ['full', 'mass'],
    error: 'expected more than empty: parts have mass',
  });

function check<S extends z.ZodType>(schema: S, input: unknown, source: string): z.output<S> {
  const checked = schema.safeParse(input);
  if (!checked.success) throw new NotUnderstood(`${source}: ${formatIssue(checked.error)}`);
  return checked.data;
}

function byTape(input: unknown, source: string) {
  const tape = check(tapeSchema, input, source);
  const count = countFromTape({
    outerMm: tape.outer,
    hubMm: tape.hub,
    thicknessMm: tape.thickness,
    pitchMm: tape.pitch,
    sdOuterMm: tape.sdOuter,
    sdHubMm: tape.sdHub,
    sdThicknessMm: tape.sdThickness,
    sdPitchMm: tape.sdPitch,
  });
  return { ...count, thickness: count.thicknessMm };
}

function byFullReel(input: unknown, source: string) {
  const tape = check(calibratedSchema, input, source);
  const { full } = tape;
  const count = countFromCalibratedTape({
    outerMm: tape.outer,
    hubMm: tape.hub,
    pitchMm: tape.pitch,
    sdOuterMm: tape.sdOuter,
    sdHubMm: tape.sdHub,
    full: { outerMm: full.outer, parts: full.parts, sdOuterMm: full.sdOuter, sdParts: full.sdParts },
  });
  return { ...count, thickness: count.thicknessMm };
}

function byWeight(input: unknown, source: string) {
  const reel = check(weightSchema, input, source);
  const { full } = reel;
  const count = countFromWeight({
    massG: reel.mass,
    emptyG: reel.empty,
    sdMassG: reel.sdMass,
    sdEmptyG: reel.sdEmpty,
    full: { massG: full.mass, parts: full.parts, sdMassG: full.sdMass, sdParts: full.sdParts },
  });
  return { ...count, thickness: null };
}

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { positionals } = parseCall(args, {}, { min: 1, max: 1, names: 'one FILE, or -' });
  const file = positionals[0] ?? '-';
  const input = await readJson(file, z.looseObject({}), io);
  const source = file === '-' ? 'standard input' : file;
  const isWeight = ['mass', 'empty', 'sdMass', 'sdEmpty'].some((key) => Object.hasOwn(input, key));
  const compute = isWeight ? byWeight : Object.hasOwn(input, 'full') ? byFullReel : byTape;
  const { parts, sd, thickness, basis } = compute(input, source);
  printJson(
    {
      parts: twelveFigures(parts),
      sd: twelveFigures(sd),
      thickness: thickness === null ? null : twelveFigures(thickness),
      basis,
    },
    io,
  );
  return 0;
}

export const command: Command = {
  name: 'count',
  summary: 'parts on a reel, by wound tape or by weight',
  help,
  run,
};

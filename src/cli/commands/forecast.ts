// `reelward forecast`: when each slot runs out, when it may be spliced, and whether it outlasts the run.
// The arithmetic is in shared/forecast/; here moments are read and written and figures are checked.

import { z } from 'zod';
import {
  forecastLine,
  type LinePace,
  panelSecondsFromRate,
  type SlotForecast,
  type SlotLoad,
} from '../../../shared/forecast/run-out.ts';
import { workingTime } from '../../../shared/forecast/working-time.ts';
import { type Command, type CommandIo, NotUnderstood, parseCall, printJson, readJson } from '../command.ts';
import { formatMoment, momentSchema, offsetOf } from '../moment.ts';

const help = `reelward forecast FILE

Reads one JSON document (FILE, or - for standard input):
{"now": "2026-03-02T06:00:00+01:00",
 "panel": {"seconds": 30, "sd": 0},
 "panelsLeft": 2000,
 "breaks": [{"from": "2026-03-02T09:00:00+01:00", "to": "2026-03-02T09:15:00+01:00"}],
 "slots": [{"slot": "M1-F-014", "perPanel": 12, "left": 4000, "sd": 0, "loss": 0, "pitch": 4, "hubToPick": 700, "intakeToPick": 250}]}
panel may instead be {"placements": 1234, "cph": 60000, "share": 0.8}; "sd" (one panel's deviation, s) may stand in both.
sd, loss and breaks may be left out (0, 0, none); without pitch, hubToPick and intakeToPick (mm) no splice window is given.

Prints {"slots": [{"slot", "fullPanels", "runOut": {"early", "expected", "late"}, "window": {"opens", "closes"}, "risk", "outlasts"}]},
by expected run-out. early and late are the 5 % and 95 % points. Exit 0 answered, 2 not understood.
`;

const positive = z.number().positive();
const atLeastZero = z.number().min(0);
const share = z.number().min(0).max(1);

const panelSchema = z
  .strictObject({
    seconds: positive.optional(),
    placements: positive.optional(),
    cph: positive.optional(),
    share: positive.max(1).optional(),
    sd: atLeastZero.optional(),
  })
  .superRefine((panel, context) => {
    const refuse = (key: string, message: string) =>
      context.addIssue({ code: 'custom', path: [key], message });
    if (panel.seconds === undefined) {
      if (panel.placements === undefined && panel.cph === undefined) {
        refuse('seconds', 'expected seconds, or placements and cph');
      } else if (panel.placements === undefined) refuse('placements', 'expected a number beside cph');
      else if (panel.cph === undefined) refuse('cph', 'expected a number beside placements');
      return;
    }
    for (const key of ['placements', 'cph', 'share'] as const) {
      if (panel[key] !== undefined) refuse(key, 'expected either seconds or a rate, not both');
    }
  });

const breakSchema = z
  .strictObject({ from: momentSchema, to: momentSchema })
  .refine((pause) => Date.parse(pause.from) <= Date.parse(pause.to), {
    path: ['to'],
    error: 'expected a moment not before "from"',
  });

const slotSchema = z
  .strictObject({
    slot: z.string().min(1),
    perPanel: positive,
    left: atLeastZero,
    sd: atLeastZero.default(0),
    loss: share.default(0),
    pitch: positive.nullish(),
    hubToPick: atLeastZero.nullish(),
    intakeToPick: atLeastZero.nullish(),
  })
  .refine((slot) => (slot.intakeToPick ?? 0) <= (slot.hubToPick ?? Infinity), {
    path: ['intakeToPick'],
    error: 'expected at most hubToPick: the intake lies between the hub and the pick point',
  });

const inputSchema = z
  .strictObject({
    now: momentSchema,
    panel: panelSchema,
    panelsLeft: z.int().min(0),
    breaks: z.array(breakSchema).default([]),
    slots: z.array(slotSchema),
  })
  .superRefine((input, context) => {
    const firstBySlot = new Map<string, number>();
    input.slots.forEach(({ slot }, i) => {
      const first = firstBySlot.get(slot);
      if (first === undefined) firstBySlot.set(slot, i);
      else {
        const message = `${slot} already stands at slots[${first}]: expected each slot once`;
        context.addIssue({ code: 'custom', path: ['slots', i, 'slot'], message });
      }
    });
  });

type Input = z.output<typeof inputSchema>;

function toPace(input: Input): LinePace {
  const { seconds, placements = 0, cph = 1, share: reached = 1, sd = 0 } = input.panel;
  return {
    nowMs: Date.parse(input.now),
    panelSeconds: seconds ?? panelSecondsFromRate({ placements, cph, share: reached }),
    panelSd: sd,
    panelsLeft: input.panelsLeft,
    calendar: workingTime(
      input.breaks.map((pause) => ({ fromMs: Date.parse(pause.from), toMs: Date.parse(pause.to) })),
    ),
  };
}

function toLoad(slot: Input['slots'][number]): SlotLoad {
  const { pitch, hubToPick, intakeToPick } = slot;
  return {
    slot: slot.slot,
    perPanel: slot.perPanel,
    left: slot.left,
    sd: slot.sd,
    loss: slot.loss,
    ...(pitch == null ? {} : { pitchMm: pitch }),
    ...(hubToPick == null ? {} : { hubToPickMm: hubToPick }),
    ...(intakeToPick == null ? {} : { intakeToPickMm: intakeToPick }),
  };
}

function toOutput(forecast: SlotForecast, offset: string) {
  const { runOutMs, windowMs } = forecast;
  const at = (ms: number) => {
    try {
      return formatMoment(ms, offset);
    } catch (error) {
      throw new NotUnderstood(`slot ${forecast.slot}: ${(error as Error).message}`);
    }
  };
  return {
    slot: forecast.slot,
    fullPanels: forecast.fullPanels,
    runOut: { early: at(runOutMs.early), expected: at(runOutMs.expected), late: at(runOutMs.late) },
    window: {
      opens: windowMs === null ? null : at(windowMs.opens),
      closes: windowMs === null ? null : at(windowMs.closes),
    },
    risk: forecast.risk,
    outlasts: forecast.outlasts,
  };
}

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { positionals } = parseCall(args, {}, { min: 1, max: 1, names: 'one FILE, or -' });
  const input = await readJson(positionals[0] ?? '-', inputSchema, io);
  const offset = offsetOf(input.now);
  const forecasts = forecastLine(toPace(input), input.slots.map(toLoad));
  printJson({ slots: forecasts.map((forecast) => toOutput(forecast, offset)) }, io);
  return 0;
}

export const command: Command = {
  name: 'forecast',
  summary: 'when each slot runs out, and when it may be spliced',
  help,
  run,
};

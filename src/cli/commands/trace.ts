// `reelward trace`: which panels carry a lot, and what is on a panel, from an exported log.

import { isoMoment } from '../../../shared/log/entry-schema.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { tracePanel, tracePlaces } from '../../../shared/trace/ask.ts';
import { partsAsked } from '../../../shared/trace/material.ts';
import type { TraceQuestion } from '../../../shared/trace/question.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { type Command, type CommandIo, NotUnderstood, parseCall, printJson } from '../command.ts';
import { gapsIn, readLogFiles } from '../log-files.ts';

const help = `reelward trace FILE ... --lot LOT | --reel REEL | --part PART | --feeder FEEDER | --slot SLOT | --person PERSON [--run RUN]
                    [--from MOMENT] [--to MOMENT]
reelward trace FILE ... --panel CODE|NUMBER [--run RUN]

FILE is an exported log (JSON lines, CSV or XLSX, packed by gzip or not); - for standard input. Several files are read as one log, as those of
"reelward serve month" with a newer export. What one of them says it leaves out and none has is told on standard error, also of one file
alone; what came in after the newest was written none can tell. The options of the first form can be joined.

First form: {"question", "places": [{"line", "run", "product", "slot", "feeder", "reel", "part", "supplierPart", "lot", "dateCode",
"sure": {"first", "last"} | null, "possible": {"first", "last"} | null, "guessed": [...], "serials": [...], "goesOn", "entry", "who", "at"}]}.
Panels are numbers within the run. Around a splice or a change of reel both lots are possible: "sure" are the panels that surely
carry it, wrong less than once in a million by the line's entered spreads. "guessed" names what nobody has entered: "in-line" (panels
between machine and counting), "label" (how exact printed counts are), "boards" (which boards of a panel a slot serves: all alike).
A reel is followed through cuts and joins: panels of its pieces carry it too, and panels of what it was joined with may. Such a place
has "madeOf", the other reels whose parts are in its own. Asked for a reel that was ever cut or joined, the answer also has "madeOf" (what
it was cut off from or joined with) and "wentInto" (reels that have parts of it).

Second form: {"panel": {...}, "runs": [{"run", "line", "product", "side", "panel", "serial", "guessed", "slots": [{"slot", "part",
"lots": [{"lot", "reel", "supplierPart", "sure"}]}]}]}. "runs" has each time that the panel was built (both sides, repeats), oldest
first; "panel" is the newest of them, with the same keys. A number needs --run where the log holds more than one run.

Exit 0 found, 1 nothing found, 2 not understood.
`;

const text = { type: 'string' } as const;

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = parseCall(
    args,
    {
      lot: text,
      reel: text,
      part: text,
      feeder: text,
      slot: text,
      person: text,
      run: text,
      panel: text,
      from: text,
      to: text,
    },
    { min: 1, max: 10_000, names: 'one FILE or more' },
  );
  for (const name of ['from', 'to'] as const) {
    const moment = values[name];
    if (moment !== undefined && !isoMoment.safeParse(moment).success) {
      throw new NotUnderstood(
        `--${name}: expected a moment such as 2026-03-02T06:00:00+01:00, found ${moment}`,
      );
    }
  }
  const { lot, reel, part, feeder, slot, person, panel, from, to } = values;
  const asked = { lot, reel, part, feeder, slot, who: person, run: values.run, from, to };
  const question: TraceQuestion = Object.fromEntries(
    Object.entries(asked).filter(([, value]) => value !== undefined),
  );
  const others = Object.keys(question).filter((name) => name !== 'run');
  if (panel === undefined && Object.keys(question).length === 0) {
    throw new NotUnderstood('expected --lot, --panel or another question, found none');
  }
  if (panel !== undefined && others.length > 0) {
    throw new NotUnderstood(
      `--panel: goes with --run only, found --${others[0] === 'who' ? 'person' : others[0]}`,
    );
  }
  const files = await readLogFiles(positionals, io);
  for (const line of gapsIn(files)) io.stderr(`reelward trace: ${line}\n`);
  const index = traceLog([...files.entries].sort(compareEntries));
  if (panel !== undefined) {
    const found = tracePanel(index, panel, values.run);
    if (!found) {
      printJson({ panel: null, runs: [] }, io);
      return 1;
    }
    const { runs, ...newest } = found;
    printJson({ panel: newest, runs }, io);
    return 0;
  }
  const places = tracePlaces(index, question);
  printJson({ question, ...partsAsked(index.state, question), places }, io);
  return places.length > 0 ? 0 : 1;
}

/** The command. */
export const command: Command = { name: 'trace', summary: 'lot to panels, panel to lots', help, run };

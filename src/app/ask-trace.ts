// Asks the server's trace, which keeps an index of the plant's whole log.

import type { PanelRun, TracedPlace } from '../../shared/trace/ask.ts';
import type { Parts } from '../../shared/trace/material.ts';
import { tracedSchema } from '../../shared/wire/messages-trace.ts';
import type { App } from './app.ts';

/** What can be traced. */
export const traceKinds = ['lot', 'reel', 'part', 'feeder', 'slot', 'person', 'panel'] as const;
export type TraceKind = (typeof traceKinds)[number];

/** Who answered which text. */
interface Answered {
  readonly text: string;
  readonly by: 'server' | 'tablet';
}

export interface FoundPlaces extends Answered {
  readonly kind: 'places';
  readonly of: TraceKind;
  readonly places: readonly TracedPlace[];
  /** What the reel asked for is made of and went into; null where it was never cut nor joined, or an older server answers. */
  readonly parts: Parts | null;
  readonly more: boolean;
}

export interface FoundPanel extends Answered {
  readonly kind: 'panel';
  readonly runs: readonly PanelRun[];
}

/** What was found, with the question it answers. */
export type Traced = FoundPlaces | FoundPanel;

/** The question as the trace takes it: a person is asked for by id. */
export const questionOf = (kind: TraceKind, text: string) => ({ [kind === 'person' ? 'who' : kind]: text });

/** The server's answer: it keeps an index of the whole log. Null where it does not answer, or has not all of the log in it yet. */
export async function askServer(
  app: Pick<App, 'connection' | 'sync'>,
  kind: TraceKind,
  text: string,
): Promise<Traced | null> {
  const caller = (await app.connection.value?.caller()) ?? null;
  // What is written here and not sent yet would be missing in the answer.
  if (!caller || (app.sync.value?.backlog ?? 1) > 0) return null;
  const answer = await caller.call('/api/trace', tracedSchema, { json: questionOf(kind, text) });
  if (!answer.ok || answer.value.behind > 0) return null;
  const { places, parts = null, panel, more } = answer.value;
  const common = { text, by: 'server' } as const;
  if (kind !== 'panel')
    return {
      ...common,
      kind: 'places',
      of: kind,
      places: places.map((each) => ({ ...each, guessed: each.guessed ?? [] })),
      parts,
      more,
    };
  // An older server knows the newest run of a panel only.
  const runs = panel === null ? [] : (panel.runs ?? [panel]);
  return {
    ...common,
    kind,
    runs: runs.map((each) => ({ ...each, side: each.side ?? null, guessed: each.guessed ?? [] })),
  };
}

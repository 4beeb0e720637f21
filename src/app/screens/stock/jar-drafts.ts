// What the log is told when a person takes a step with a jar of paste: what came off the stencil before it, and the step itself or what keeps
// the jar from it.

import type { Jar } from '../../../../shared/floor/fold-paste.ts';
import type { DraftEntry } from '../../../../shared/floor/kinds.ts';
import type { JarSays } from '../../../../shared/floor/kinds-paste.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { stencilJars } from '../../../../shared/floor/stencil.ts';

/** A step that a person chose for a jar. */
export interface JarStep {
  readonly says: JarSays;
  /** What becomes of the paste that is on the stencil before this jar goes on; absent where there is none, or it is another step. */
  readonly there?: 'came-off' | 'stays';
}

/** A jar in a person's hand. */
export interface JarAt {
  readonly jar: Jar;
  /** Whose stencil it is on or would go onto; null where no line is chosen. */
  readonly line: string | null;
  /** Other jars whose paste is on that stencil. */
  readonly others: readonly Jar[];
  /** True where its own paste is there too, so that all of it comes off together. False also where another jar took its place and nobody told of it since. */
  readonly isThere: boolean;
}

/** A jar, with what is on a line's stencil. */
export function jarAt(floor: FloorState, jar: Jar, line: string | null): JarAt {
  const onStencil = line === null ? [] : stencilJars(floor, line);
  const others = onStencil.filter((each) => each.jar !== jar.jar);
  return { jar, line, others, isThere: others.length < onStencil.length };
}

/**
 * What is told once a person chose a step. `held`: what says that the jar is kept from it until a lead decides; null where nothing keeps it. What came off the
 * stencil did so whether or not this jar goes on. `from`: a moment, ISO 8601.
 */
export function chosenDrafts(
  at: JarAt,
  step: JarStep,
  { held, from }: { readonly held: DraftEntry | null; readonly from: string },
): readonly DraftEntry[] {
  const { others, isThere, line } = at;
  const isOff = step.there === 'came-off' || (step.says === 'off' && isThere);
  const off = isOff ? others.map((each) => told(each, { says: 'off' }, { line, from })) : [];
  return [...off, held ?? stepDraft(at, step, from)];
}

/** The step itself. `from`: a moment, ISO 8601. */
export function stepDraft({ jar, line }: JarAt, step: JarStep, from: string): DraftEntry {
  return told(jar, step, { line, from });
}

function told(
  { jar, lot }: Jar,
  { says, there }: JarStep,
  at: { readonly line: string | null; readonly from: string },
): DraftEntry {
  const line = says === 'on' || says === 'off' ? at.line : null;
  const facts = { jar, says, from: at.from, line, lot, via: 'typed' as const };
  return { kind: 'jar.told', payload: there === 'stays' ? { ...facts, onTop: true } : facts };
}

// What a rule would have read of the labels in the log: a rule that takes other labels is seen before it is approved.

import { useEffect, useState } from 'preact/hooks';
import type { LabelRule } from '../../../../../shared/labels/rules.ts';
import { useApp } from '../../../app.ts';
import { visible } from '../../../ui/visible.ts';
import { teachWords } from '../../../words/teach.ts';
import { formatCount, say } from '../../../words/words.ts';
import { beginTrial, createGatherer, type LogLabel, type LogTrial } from './model.ts';

/** Labels tried at one go: some milliseconds, after which the page has its turn. */
const SLICE = 500;

/** The labels of the log; null while it is read. */
export function useLogLabels(): readonly LogLabel[] | null {
  const app = useApp();
  const [labels, setLabels] = useState<readonly LogLabel[] | null>(null);
  useEffect(() => {
    let isOver = false;
    const gatherer = createGatherer();
    app.store.readAll(gatherer.take).then(
      () => {
        if (!isOver) setLabels(gatherer.labels());
      },
      () => undefined, // a closed database is told by the fault screen
    );
    return () => {
      isOver = true;
    };
  }, []);
  return labels;
}

/**
 * Rules tried beside `all` on the labels of the log, slice by slice; null while that goes on. `rules` may be made anew at each drawing: what
 * they read depends on their names and patterns alone.
 */
export function useTrials(
  rules: readonly LabelRule[],
  all: readonly LabelRule[],
  labels: readonly LogLabel[] | null,
): ReadonlyMap<string, LogTrial> | null {
  const patterns = (some: readonly LabelRule[]) => some.map(({ rule, codes }) => [rule, codes]);
  const key = JSON.stringify([patterns(rules), patterns(all)]);
  const [done, setDone] = useState<{ key: string; trials: ReadonlyMap<string, LogTrial> } | null>(null);
  useEffect(() => {
    if (labels === null || rules.length === 0) return;
    const running = rules.map((rule) => ({ name: rule.rule, trial: beginTrial(rule, all) }));
    let timer = 0;
    const step = (at: number) => {
      for (const { trial } of running) trial.take(labels.slice(at, at + SLICE));
      if (at + SLICE < labels.length) timer = window.setTimeout(() => step(at + SLICE));
      else setDone({ key, trials: new Map(running.map(({ name, trial }) => [name, trial.outcome()])) });
    };
    step(0);
    return () => clearTimeout(timer);
  }, [key, labels]);
  return done?.key === key ? done.trials : null;
}

/** What came out, in a line each: labels it fits, labels read otherwise before, rules that fit the same labels. */
export function TrialOutcome({ trial }: { readonly trial: LogTrial }) {
  const words = say(teachWords);
  const { fits, anew, otherwise, collisions } = trial;
  return (
    <>
      <p>{fits === 0 ? `✓ ${words.fitsNone}` : words.fits(fits)}</p>
      {anew > 0 && <p>{words.readsAnew(anew)}</p>}
      {otherwise > 0 && (
        <p>
          <span class="chip stop">✕ {words.contradicts(otherwise)}</span>
        </p>
      )}
      {collisions.map(({ rule, labels, disagreeing }) => (
        <p key={rule} data-testid={`collides-${rule}`}>
          <span class={`chip ${disagreeing > 0 ? 'stop' : 'care'}`}>
            {disagreeing > 0
              ? `✕ ${words.disagrees(rule, disagreeing)}`
              : `△ ${words.fitsAlso(rule, labels)}`}
          </span>
        </p>
      ))}
    </>
  );
}

/** `trial` is null while the log is read. */
export function Trial({ trial, testId }: { readonly trial: LogTrial | null; readonly testId: string }) {
  const words = say(teachWords);
  if (trial === null) {
    return (
      <section class="card">
        <p role="status">{words.trying}</p>
      </section>
    );
  }
  return (
    <section class="card stack" data-testid={testId}>
      <h2>{words.tried(formatCount(trial.labels))}</h2>
      <TrialOutcome trial={trial} />
      {trial.shown.map(({ label, reading, isOtherwise }) => (
        <div key={label.codes.join(' ')} class={`fitted${isOtherwise ? ' otherwise' : ''}`}>
          <p class="code" translate={false}>
            {visible(label.codes.join('  '))}
          </p>
          <p>
            <span class="soft">{words.before}</span>{' '}
            <b translate={false}>
              {[label.part ?? label.supplierPart, label.lot].filter(Boolean).join(' · ') || '–'}
            </b>{' '}
            <span class="soft">{words.now}</span>{' '}
            <b translate={false}>
              {[reading.part ?? reading.supplierPart, reading.lot].filter(Boolean).join(' · ') || '–'}
            </b>
          </p>
        </div>
      ))}
    </section>
  );
}

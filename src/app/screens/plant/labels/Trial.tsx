// What a rule would have read of the labels in the log: a rule that takes other labels is seen before it is approved.

import { useEffect, useState } from 'preact/hooks';
import { useApp } from '../../../app.ts';
import { visible } from '../../../ui/visible.ts';
import { teachWords } from '../../../words/teach.ts';
import { formatCount, say } from '../../../words/words.ts';
import { createGatherer, type LogLabel, type LogTrial } from './model.ts';

/** Labels looked at: some weeks of a busy line. */
const MOST_LABELS = 5000;
const MOST_SHOWN = 8;

/** The labels of the log; null while it is read. */
export function useLogLabels(): readonly LogLabel[] | null {
  const app = useApp();
  const [labels, setLabels] = useState<readonly LogLabel[] | null>(null);
  useEffect(() => {
    let isOver = false;
    const gatherer = createGatherer(MOST_LABELS);
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

/** What came out, in a line each: labels it fits, labels read otherwise before, rules that fit the same labels. */
export function TrialOutcome({ trial }: { readonly trial: LogTrial }) {
  const words = say(teachWords);
  const { fitted, otherwise, collisions } = trial;
  return (
    <>
      <p>{fitted.length === 0 ? `✓ ${words.fitsNone}` : words.fits(fitted.length)}</p>
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
      {trial.fitted.slice(0, MOST_SHOWN).map(({ label, reading, isOtherwise }) => (
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

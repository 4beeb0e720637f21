// What a rule would have read of the labels in the log: a rule that takes other labels is seen before it is approved.

import { useEffect, useMemo, useState } from 'preact/hooks';
import type { LabelRule } from '../../../../../shared/labels/rules.ts';
import { useApp } from '../../../app.ts';
import { visible } from '../../../ui/visible.ts';
import { teachWords } from '../../../words/teach.ts';
import { formatCount, say } from '../../../words/words.ts';
import { createGatherer, type LogLabel, tryOnLog } from './model.ts';

/** Labels looked at: some weeks of a busy line. */
const MOST_LABELS = 5000;
const MOST_SHOWN = 8;

export function Trial({ rule }: { readonly rule: LabelRule }) {
  const app = useApp();
  const words = say(teachWords);
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
  // The rule is made anew at each drawing; what it fits depends on its patterns alone.
  const patterns = JSON.stringify(rule.codes);
  const fitted = useMemo(() => (labels === null ? null : tryOnLog(rule, labels)), [patterns, labels]);
  if (labels === null || fitted === null) {
    return (
      <section class="card">
        <p role="status">{words.trying}</p>
      </section>
    );
  }
  const otherwise = fitted.filter(({ isOtherwise }) => isOtherwise).length;
  return (
    <section class="card stack" data-testid="trial">
      <h2>{words.tried(formatCount(labels.length))}</h2>
      <p>{fitted.length === 0 ? `✓ ${words.fitsNone}` : words.fits(fitted.length)}</p>
      {otherwise > 0 && (
        <p>
          <span class="chip stop">✕ {words.contradicts(otherwise)}</span>
        </p>
      )}
      {fitted.slice(0, MOST_SHOWN).map(({ label, reading, isOtherwise }) => (
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

// Labels on the screen instead of reels in the hand: a tap is a scan, marked as practice in the log.

import { useEffect, useState } from 'preact/hooks';
import { useApp } from '../../app.ts';
import { type PracticeLabel, practiceLabels } from '../../demo/demo.ts';

export function Practice() {
  const app = useApp();
  const [labels, setLabels] = useState<readonly PracticeLabel[]>([]);
  useEffect(() => {
    practiceLabels(app).then(setLabels, () => undefined); // an unreadable cache shows no labels
  }, []);
  const groups = [...new Set(labels.map((label) => label.group))];
  return (
    <div class="stack">
      {groups.map((group) => (
        <section key={group} class="stack">
          <h2>{group}</h2>
          <div class="label-grid">
            {labels
              .filter((label) => label.group === group)
              .map((label) => (
                <button
                  type="button"
                  key={label.id}
                  class="label-card"
                  data-testid={`label-${label.id}`}
                  onClick={() => {
                    app.scans.push({
                      codes: label.codes.map((code) => ({ ...code, symbologyId: null })),
                      via: 'practice',
                      atMs: app.clock.nowMs(),
                    });
                  }}
                >
                  <b>{label.title}</b>
                  <span>{label.hint}</span>
                  <code>{label.codes[0]?.text.replace(/[^\x20-\x7e]/g, '·').slice(0, 60)}</code>
                </button>
              ))}
          </div>
        </section>
      ))}
    </div>
  );
}

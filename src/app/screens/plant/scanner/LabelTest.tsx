// Does this tablet read a label that the plant printed? The newest scan that is not the calibration code, and what it is known as.

import { useEffect } from 'preact/hooks';
import { siteRules } from '../../../../../shared/floor/fold-labels.ts';
import { recognise } from '../../../../../shared/floor/recognise.ts';
import { useApp, useFloor } from '../../../app.ts';
import type { WedgeScan } from '../../../scan/wedge.ts';
import { VerdictShape } from '../../../ui/Shape.tsx';
import { dockWords } from '../../../words/dock.ts';
import { scannerWords } from '../../../words/scanner.ts';
import { say } from '../../../words/words.ts';
import { readAs } from './model.ts';

/** `scan`: null where nothing was scanned yet. */
export function LabelTest({ scan }: { readonly scan: WedgeScan | null }) {
  const app = useApp();
  const floor = useFloor();
  const { label, waiting } = say(scannerWords);
  const things = say(dockWords).is;
  const known = scan === null ? [] : recognise(floor, app.line.value, scan.text).map(({ is }) => things[is]);
  const isRead = scan !== null && (known.length > 0 || readAs(scan, siteRules(floor)).length > 0);
  useEffect(() => {
    const { preferences } = app;
    if (isRead) preferences.value = { ...preferences.peek(), labelTested: true };
  }, [isRead]);
  return (
    <section class="card stack" data-testid="label-test">
      <h2>{label.title}</h2>
      <p class="soft">{label.help}</p>
      {scan === null ? (
        <p class="soft" role="status">
          {waiting}
        </p>
      ) : (
        <div
          class={`scan-outcome ${isRead ? 'go' : 'stop'}`}
          role="status"
          data-testid="label-outcome"
          data-read={isRead}
        >
          <VerdictShape verdict={isRead ? 'accepted' : 'refused'} size={72} />
          <div>
            <b>{isRead ? label.read : label.unknown}</b>
            <br />
            {isRead ? [...known, scan.text].slice(0, 2).join(': ') : label.unknownHelp}
          </div>
        </div>
      )}
    </section>
  );
}

// A package is cut in two, such as a strip of tape for another line, or two of one lot are joined.

import { useLayoutEffect, useState } from 'preact/hooks';
import { blockOn } from '../../../../shared/floor/blocks.ts';
import { whyNotMerged } from '../../../../shared/floor/fold-store.ts';
import { reelOf } from '../../../../shared/floor/gone-reels.ts';
import type { PayloadOf } from '../../../../shared/floor/kinds.ts';
import { packageIdOf } from '../../../../shared/floor/package-name.ts';
import { kindOfReel } from '../../../../shared/floor/packs.ts';
import { holdsBadge } from '../../../../shared/floor/recognise.ts';
import type { Reel } from '../../../../shared/floor/state.ts';
import { entryId } from '../../../../shared/log/entry.ts';
import { parseCount } from '../../../../shared/sheet/cells.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { printWords } from '../../words/print.ts';
import { stockWords } from '../../words/stock.ts';
import { formatCount, say } from '../../words/words.ts';
import { readLabel } from './read-label.ts';

interface ReelProps {
  readonly reel: Reel;
  readonly onClose: () => void;
}

export function SplitDialog({ reel, onClose }: ReelProps) {
  const app = useApp();
  const floor = useFloor();
  const { split: words, merge } = say(stockWords);
  const mayNot = useRefusal('verify-reel');
  const refusal = blockOn(floor, reel) === null ? mayNot : merge.why.blocked;
  const [typed, setTyped] = useState('');
  const quantity = parseCount(typed.trim());
  const most = reel.count === null ? null : Math.round(reel.count);
  const isRight = quantity !== null && quantity > 0 && (most === null || quantity <= most);
  const wrong = most === null ? words.wrongAny : words.wrong(formatCount(most));

  async function split(): Promise<void> {
    if (quantity === null) return;
    const left = most === null ? null : most - quantity;
    const { part, lot } = reel;
    const facts = { reel: reel.reel, part, lot, quantity, left, via: 'typed' as const };
    const comesIn = kindOfReel(floor, reel);
    const [written] = await app.write([
      (_, own) => ({ kind: 'reel.split', payload: { ...facts, into: packageIdOf(own) } }),
      // A piece of tape has no reel to stand on: it is known for what it is.
      ([piece = '']) => ({
        kind: 'reel.packed',
        payload: {
          reel: packageIdOf(piece),
          part,
          comesIn: comesIn === 'tape' ? 'cut-tape' : comesIn,
          via: 'typed',
        },
      }),
    ]);
    onClose();
    if (written) app.labelWanted.value = { reel: packageIdOf(entryId(written)) };
  }

  return (
    <Dialog title={words.title(reel.reel)} onClose={onClose}>
      <div class="stack">
        <Field
          label={words.parts}
          testId="split-parts"
          inputMode="numeric"
          autocomplete="off"
          value={typed}
          onInput={setTyped}
          help={words.help}
          wrong={typed !== '' && !isRight ? wrong : null}
        />
      </div>
      <AskFeet
        testId="split-yes"
        disabledReason={refusal ?? (isRight ? null : wrong)}
        onYes={() => {
          split().catch(() => undefined); // shown by the fault screen
        }}
        onNo={onClose}
      >
        {words.yes}
      </AskFeet>
    </Dialog>
  );
}

/** What two packages come to: both counts, their spreads together. */
function joined(kept: Reel, gone: Reel): PayloadOf<'reel.merged'> {
  const isCounted = kept.count !== null && gone.count !== null;
  const isPrinted = kept.basis === 'label' && gone.basis === 'label';
  return {
    reel: kept.reel,
    from: gone.reel,
    part: kept.part,
    lot: kept.lot,
    quantity: isCounted ? (kept.count ?? 0) + (gone.count ?? 0) : null,
    sd: Math.hypot(kept.sd, gone.sd),
    basis: isPrinted ? 'label' : 'combined',
    via: 'typed',
  };
}

export function MergeDialog({ reel, onClose }: ReelProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(stockWords).merge;
  const refusal = useRefusal('verify-reel');
  const [typed, setTyped] = useState('');
  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const now = app.store.floor();
        const texts = scan.codes.map(({ text }) => text);
        if (holdsBadge(now, app.line.peek(), texts)) return false;
        setTyped(readLabel(now, scan).reel ?? texts[0]?.trim() ?? '');
        return true;
      }),
    [],
  );
  const other = reelOf(floor, typed.trim());
  const why = other === undefined ? null : whyNotMerged(floor, reel, other);
  const wrong = other === undefined ? words.unknown : why === null ? null : words.why[why];
  return (
    <Dialog title={words.title(reel.reel)} onClose={onClose}>
      <div class="stack">
        <Field
          label={words.other}
          testId="merge-other"
          isCode
          autocomplete="off"
          value={typed}
          onInput={setTyped}
          help={words.help}
          wrong={typed.trim() === '' ? null : wrong}
        />
      </div>
      <AskFeet
        testId="merge-yes"
        disabledReason={refusal ?? wrong}
        onYes={() => {
          if (other === undefined) return;
          // Neither label says any more how many there are.
          const label = () => {
            app.labelWanted.value = { reel: reel.reel };
          };
          app.record([{ kind: 'reel.merged', payload: joined(reel, other) }], {
            notice: {
              tone: 'go',
              text: words.done(other.reel, reel.reel),
              act: { label: say(printWords).label, run: label },
            },
            next: onClose,
          });
        }}
        onNo={onClose}
      >
        {words.yes}
      </AskFeet>
    </Dialog>
  );
}

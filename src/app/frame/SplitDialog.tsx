// A piece is cut off a reel off the line: the piece gets an id and a label of its own, the rest keeps its own with what is left on it.

import { useState } from 'preact/hooks';
import type { Draft } from '../../../shared/floor/draft.ts';
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import type { Reel } from '../../../shared/floor/state.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { type App, useApp, useFloor } from '../app.ts';
import { leftOn } from '../left-on.ts';
import { reelName } from '../reel-name.ts';
import { AskFeet } from '../ui/Ask.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { packWords } from '../words/packs.ts';
import { formatCount, say } from '../words/words.ts';

export function SplitDialog({ reel, onClose }: { readonly reel: Reel; readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(packWords);
  const [typed, setTyped] = useState('');
  const { parts: left } = leftOn(floor, reel);
  const parts = /^\d{1,7}$/.test(typed.trim()) ? Number(typed.trim()) : 0;
  const isRight = parts > 0 && (left === null || parts < Math.round(left));
  return (
    <Dialog title={words.splitTitle(reelName(reel.reel))} onClose={onClose}>
      <div class="stack" data-testid="split-dialog">
        <p>{words.splitHelp}</p>
        <Field
          label={words.splitParts}
          testId="split-parts"
          inputMode="numeric"
          autocomplete="off"
          value={typed}
          onInput={setTyped}
        />
        <AskFeet
          testId="split-save"
          disabledReason={isRight ? null : words.splitWrong}
          onYes={() => {
            split(app, reel, parts).catch(() => undefined); // shown by the fault screen
            onClose();
          }}
          onNo={onClose}
        >
          {words.split}
        </AskFeet>
      </div>
    </Dialog>
  );
}

/** Names the piece, says what it is and what the rest has, and asks for the piece's label. */
async function split(app: App, reel: Reel, parts: number): Promise<void> {
  const { part, supplierPart, lot, dateCode } = reel;
  const { parts: left, sd } = leftOn(app.store.floor(), reel);
  const facts = { part, supplierPart, lot, dateCode, quantity: parts, sd: 0, basis: 'one-by-one' as const };
  const drafts: Draft[] = [
    (_, own) => ({
      kind: 'reel.named',
      payload: { reel: packageIdOf(own), was: null, ...facts, via: 'typed' },
    }),
    ([piece = '']) => ({
      kind: 'reel.packed',
      payload: { reel: packageIdOf(piece), part, comesIn: 'cut-tape', via: 'typed' },
    }),
  ];
  if (left !== null)
    drafts.push({
      kind: 'reel.counted',
      payload: {
        line: null,
        slot: null,
        reel: reel.reel,
        part,
        lot,
        quantity: Math.max(0, Math.round(left) - parts),
        sd,
        basis: 'counted-down',
        panels: 0,
      },
    });
  const [named] = await app.write(drafts);
  app.notice.value = { tone: 'plain', text: say(packWords).splitDone(formatCount(parts)) };
  if (named) app.labelWanted.value = { reel: packageIdOf(entryId(named)) };
}

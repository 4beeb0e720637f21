// One reel from near: what is known of it, and all that can be done with it.

import { hasOwnId } from '../../../../shared/floor/reel-id.ts';
import type { Reel } from '../../../../shared/floor/state.ts';
import { useApp } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { reelName } from '../../reel-name.ts';
import { ActGroup } from '../../ui/ActGroup.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { moistureWords } from '../../words/moisture.ts';
import { packWords } from '../../words/packs.ts';
import { printWords } from '../../words/print.ts';
import { shellWords } from '../../words/shell.ts';
import { stockWords } from '../../words/stock.ts';
import { say } from '../../words/words.ts';
import { isUsedUp, LeftOfReel, type Listed, whereText } from './listed.tsx';

/** What can be done with a reel in a dialog of its own. */
export type ReelAct = 'count' | 'put' | 'air' | 'split' | 'merge' | 'block' | 'pack';

interface ReelDialogProps {
  readonly listed: Listed;
  readonly onAct: (act: ReelAct) => void;
  readonly onClose: () => void;
}

export function ReelDialog({ listed, onAct, onClose }: ReelDialogProps) {
  const { reel } = listed;
  return (
    <Dialog title={reelName(reel.reel)} onClose={onClose}>
      <div class="stack">
        <Facts listed={listed} />
        <Acts listed={listed} onAct={onAct} onClose={onClose} />
      </div>
    </Dialog>
  );
}

function Facts({ listed }: { readonly listed: Listed }) {
  const words = say(stockWords);
  const { reel, isBlocked, life } = listed;
  const isEmpty = isUsedUp(listed);
  const where = whereText(reel, isEmpty);
  return (
    <div class="reel-facts">
      <p>
        <b class="code">{reel.part ?? reel.supplierPart}</b>
        {reel.lot !== null && (
          <span class="soft">
            {' '}
            · {words.lot} <span class="code">{reel.lot}</span>
            {reel.dateCode !== null && ` · ${reel.dateCode}`}
          </span>
        )}
      </p>
      <p>
        <LeftOfReel listed={listed} /> {where !== '' && <span class="soft">· {where}</span>}
      </p>
      {isBlocked && <p class="chip stop">✕ {words.blocked}</p>}
      {life !== null && !isEmpty && (
        <p class={life.tone === null ? 'soft' : `chip ${life.tone}`}>{life.text}</p>
      )}
    </div>
  );
}

function Acts({ listed, onAct, onClose }: ReelDialogProps) {
  const app = useApp();
  const words = say(stockWords);
  const verify = useRefusal('verify-reel');
  const block = useRefusal('block-material');
  const { reel, isBlocked, life } = listed;
  const isEmpty = isUsedUp(listed);
  const isNamed = hasOwnId(reel.reel);
  const canCut = reel.at === null && !isEmpty && isNamed;
  const act = (which: ReelAct, label: string, reason: string | null) => (
    <Button
      large
      tone={which === 'block' ? 'stop' : 'plain'}
      onPress={() => onAct(which)}
      disabledReason={reason}
      testId={`${which}-${reel.reel}`}
    >
      {label}
    </Button>
  );
  return (
    <ActGroup reason={verify}>
      <div class="row">
        {act('count', words.recount, verify)}
        {!isEmpty && (
          <Button
            large
            onPress={() => {
              onClose();
              app.labelWanted.value = { reel: reel.reel };
            }}
            disabledReason={verify}
            testId={`mark-${reel.reel}`}
          >
            {say(printWords).label}
          </Button>
        )}
        {!isEmpty && act('pack', say(packWords).open, verify)}
        {reel.at === null && !isEmpty && isNamed && act('put', words.put, verify)}
        {life !== null && !isEmpty && isNamed && act('air', say(moistureWords).open, verify)}
        {canCut && act('split', words.split.act, verify)}
        {canCut && act('merge', words.merge.act, verify)}
        {!isBlocked && act('block', words.block, block)}
        <Button large tone="quiet" onPress={onClose}>
          {say(shellWords).close}
        </Button>
      </div>
    </ActGroup>
  );
}

/** What a reel's label says, for putting it away. */
export function putOf({ part, supplierPart, lot, dateCode, count, reel }: Reel) {
  return { reel, part, supplierPart, lot, dateCode, quantity: count };
}

// An entry on paper: the server is asked for its proof, or the kept one is taken; the dialog says what the paper will prove before it is printed.

import { useEffect, useState } from 'preact/hooks';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { useApp } from '../../app.ts';
import { Record, type RecordPaper, toldOf } from '../../print/Record.tsx';
import { type NoProof, type PaperProof, proofFor } from '../../print/record-proof.ts';
import { printAlone } from '../../print/sheet.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { visible } from '../../ui/visible.ts';
import { logWords } from '../../words/log.ts';
import { printWords } from '../../words/print.ts';
import { recordWords } from '../../words/record.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, formatDay, say } from '../../words/words.ts';
import { actorName, entryZone, kindName } from './EntryRow.tsx';
import { allFacts } from './facts.ts';
import { tabletName } from './names.ts';

interface RecordDialogProps {
  readonly entry: Entry;
  readonly floor: FloorState;
  readonly onClose: () => void;
}

export function RecordDialog({ entry, floor, onClose }: RecordDialogProps) {
  const app = useApp();
  const words = say(recordWords);
  const [proof, setProof] = useState<PaperProof | NoProof | 'asked'>('asked');
  useEffect(() => {
    let isHere = true;
    const took = (found: PaperProof | NoProof) => isHere && setProof(found);
    proofFor(app, entry, entryId(entry)).then(took, () => took('none'));
    return () => {
      isHere = false;
    };
  }, [entry.hash]);
  const zone = entryZone(entry, floor);
  const proven = typeof proof === 'object' ? proof : null;
  const status = app.sync.value;
  const answered = status?.lastAnswerMs ?? null;
  const told =
    proof === 'asked'
      ? []
      : toldOf(
          proof,
          {
            names: (proven?.seenBy ?? []).map((tablet) => tabletName(floor, tablet)),
            since: answered === null ? null : formatDay(answered, zone),
            isThere: status?.phase === 'live',
          },
          formatCount,
        );
  const print = () => {
    if (proof === 'asked') return;
    const paper: RecordPaper = {
      title: kindName(entry),
      facts: factsOf(entry, floor),
      hash: entry.hash,
      told,
      proof: proven,
    };
    printAlone(<Record {...paper} />);
  };
  return (
    <Dialog title={words.title} onClose={onClose}>
      <div class="stack" data-testid="record-dialog" data-proof={proof === 'asked' ? proof : proven !== null}>
        <p>
          <strong>{kindName(entry)}</strong>
          <br />
          {formatDay(Date.parse(entry.at), zone)}
        </p>
        {proof === 'asked' ? (
          <p role="status">{words.asking}</p>
        ) : (
          told.map((line) => <p key={line}>{line}</p>)
        )}
        <Button
          tone="act"
          large
          testId="record-print"
          disabledReason={proof === 'asked' ? words.asking : null}
          onPress={print}
        >
          {say(printWords).print}
        </Button>
        <Button large onPress={onClose}>
          {say(shellWords).close}
        </Button>
      </div>
    </Dialog>
  );
}

/** What the paper says of the entry: when, who and where it was written, and all its facts. */
function factsOf(entry: Entry, floor: FloorState): RecordPaper['facts'] {
  const words = say(logWords);
  return [
    [words.at, formatDay(Date.parse(entry.at), entryZone(entry, floor))],
    [words.exactly, entry.at],
    [words.who, actorName(entry, floor)],
    [words.tablet, tabletName(floor, entry.tablet)],
    [words.number, entryId(entry)],
    ...allFacts(entry, floor).map(({ label, text }) => [label, visible(text)] as const),
  ];
}

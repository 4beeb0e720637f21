// Panels counted many at once, boards skipped on them, panels scrapped: what is asked by number pad beside the plain tap.

import { useState } from 'preact/hooks';
import { boardsOf } from '../../../../shared/floor/remaining.ts';
import type { Run } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { PinPad } from '../../frame/PinPad.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { lineWords } from '../../words/line.ts';
import { runWords } from '../../words/run.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, say } from '../../words/words.ts';

/** More boards than these are entered as a number. */
const SHOWN_BOARDS = 40;

/** Which boards of the next panel are skipped. `said`: what was entered before, null where nothing. */
export function SkippedDialog(props: {
  readonly boards: number;
  readonly said: number | readonly number[] | null;
  readonly onSkipped: (boards: number | readonly number[]) => void;
  readonly onClose: () => void;
}) {
  const { boards, said, onSkipped, onClose } = props;
  const words = say(runWords);
  return (
    <Dialog title={words.skippedTitle} onClose={onClose}>
      {boards > SHOWN_BOARDS ? (
        <NumberPad
          label={words.skippedTitle}
          most={boards}
          onNumber={onSkipped}
          tooMany={words.skippedMost(formatCount(boards))}
        />
      ) : (
        <WhichBoards boards={boards} said={said} onWhich={onSkipped} />
      )}
      <div class="acts">
        <Button onPress={onClose}>{say(shellWords).cancel}</Button>
      </div>
    </Dialog>
  );
}

function WhichBoards(props: {
  readonly boards: number;
  readonly said: number | readonly number[] | null;
  readonly onWhich: (which: readonly number[]) => void;
}) {
  const { boards, said } = props;
  const words = say(runWords);
  const [which, setWhich] = useState<readonly number[]>(
    typeof said === 'number' || said === null ? [] : said,
  );
  const all = Array.from({ length: boards }, (_, at) => at + 1);
  return (
    <div class="stack">
      <p>{words.skippedHelp}</p>
      <div class="choice">
        {all.map((board) => {
          const isOn = which.includes(board);
          return (
            <button
              type="button"
              key={board}
              aria-pressed={isOn}
              data-testid={`board-${board}`}
              onClick={() =>
                setWhich(
                  isOn ? which.filter((each) => each !== board) : [...which, board].sort((a, b) => a - b),
                )
              }
            >
              {isOn ? '✗ ' : ''}
              {board}
            </button>
          );
        })}
      </div>
      <Button tone="act" large testId="skipped-use" onPress={() => props.onWhich(which)}>
        {words.skippedUse(which.length)}
      </Button>
    </div>
  );
}

function NumberPad(props: {
  readonly label: string;
  readonly most: number;
  readonly onNumber: (value: number) => void;
  readonly tooMany: string;
}) {
  const [wrong, setWrong] = useState<string | null>(null);
  return (
    <PinPad
      label={props.label}
      secret={false}
      wrong={wrong}
      onEnter={(digits) => {
        if (digits === '') return;
        if (Number(digits) > props.most) setWrong(props.tooMany);
        else props.onNumber(Number(digits));
      }}
    />
  );
}

interface ManyProps {
  readonly run: Run;
  /** `skipped`: boards skipped on all of them; null: nobody said. */
  readonly onCount: (panels: number, skipped: number | null) => void;
  /** The number itself is wrong. */
  readonly onSetRight: () => void;
  /** Panels were scrapped. */
  readonly onScrap: () => void;
  readonly onClose: () => void;
}

/** How many panels more, and where a panel has several boards how many of those were skipped. */
export function ManyDialog({ run, onCount, onSetRight, onScrap, onClose }: ManyProps) {
  const floor = useFloor();
  const words = say(runWords);
  const [panels, setPanels] = useState<number | null>(null);
  const boards = boardsOf(floor, run.setup);
  const enter = (skipped: number | null) => {
    onClose();
    onCount(panels ?? 0, skipped);
  };
  if (panels !== null) {
    const most = panels * boards;
    return (
      <Dialog title={words.skippedManyTitle(panels)} onClose={onClose}>
        <NumberPad
          label={words.skippedManyTitle(panels)}
          most={most}
          onNumber={enter}
          tooMany={words.skippedMost(formatCount(most))}
        />
        <div class="acts">
          <Button testId="skipped-unknown" onPress={() => enter(null)}>
            {words.skippedNotKnown}
          </Button>
        </div>
      </Dialog>
    );
  }
  return (
    <Dialog title={words.plusManyTitle} onClose={onClose}>
      <PinPad
        label={words.plusManyTitle}
        secret={false}
        onEnter={(digits) => {
          const typed = Number(digits);
          if (typed > 0 && boards > 1) return setPanels(typed);
          onClose();
          if (typed > 0) onCount(typed, null);
        }}
      />
      <div class="acts">
        <Button testId="panels-scrapped" onPress={onScrap}>
          {say(lineWords).scrap}
        </Button>
        <Button testId="set-right" onPress={onSetRight}>
          {say(lineWords).setRight}
        </Button>
        <Button onPress={onClose}>{say(shellWords).cancel}</Button>
      </div>
    </Dialog>
  );
}

/** How many panels of the run are scrapped. */
export function ScrapDialog({ run, onClose }: { readonly run: Run; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(runWords);
  const most = run.done - run.scrapped;
  return (
    <Dialog title={words.scrapTitle} onClose={onClose}>
      <p>{words.scrapHelp}</p>
      <NumberPad
        label={words.scrapTitle}
        most={most}
        tooMany={words.scrapMost(formatCount(most))}
        onNumber={(panels) => {
          onClose();
          if (panels === 0) return;
          const { run: id, line } = run;
          const payload = { run: id, line, panels, serial: null, note: '', via: 'typed' as const };
          app.record([{ kind: 'panels.scrapped', payload }]);
        }}
      />
      <div class="acts">
        <Button onPress={onClose}>{say(shellWords).cancel}</Button>
      </div>
    </Dialog>
  );
}

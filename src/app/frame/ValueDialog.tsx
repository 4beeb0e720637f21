// One part off the reel in hand under the meter, before the reel feeds: typed, or by a meter that types as a scanner does. The verdict says what came of it.

import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { DeskQuestion, ReelInHand } from '../../../shared/desk/model.ts';
import { judgePart, readMeter } from '../../../shared/floor/meter.ts';
import type { Source } from '../../../shared/floor/vocabulary.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { useApp, useFloor } from '../app.ts';
import type { Answers } from '../desk/away.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { dockWords } from '../words/dock.ts';
import { shellWords } from '../words/shell.ts';
import { valueWords } from '../words/values.ts';
import { formatFigure, say } from '../words/words.ts';
import { type MeterText, meterText } from './meter-scan.ts';

interface ValueDialogProps {
  readonly desk: Pick<Answers, 'chooseValue' | 'leaveQuestion'>;
  readonly question: Extract<DeskQuestion, { readonly ask: 'value' }>;
}

/** One question and no other: what is typed for one reel is never another's. */
export function valueKey({ check, reel }: ValueDialogProps['question']): string {
  const { part, wanted, rule } = check;
  return JSON.stringify([reel.codes, reel.reel, reel.lot, part, wanted, rule]);
}

export function ValueDialog({ desk, question }: ValueDialogProps) {
  const words = say(valueWords);
  const { check, reel } = question;
  const { wanted, rule, part } = check;
  const [chosen, setChosen] = useState(wanted.length === 1 ? 0 : -1);
  const [typed, setTyped] = useState('');
  const [via, setVia] = useState<Source>('typed');
  const [wrong, setWrong] = useState<string | null>(null);
  const value = wanted[chosen];
  const fill = (text: string, from: Source) => {
    setTyped(text);
    setVia(from);
    setWrong(null);
  };
  const take = (text: string, from: Source) => {
    if (value === undefined) return;
    const shown = readMeter(text, value.unit);
    const measured = shown === null ? null : judgePart(check, value, shown, from);
    if (measured === null) setWrong(shown === null ? words.wrong : words.otherUnit(value.unit));
    else desk.chooseValue(measured);
  };
  useMeter(reel.codes, ({ text, isSure }) => {
    fill(text, 'wedge');
    // What a label holds besides may look like a bare figure: a person says that it is the meter's.
    if (isSure || readMeter(text, value?.unit ?? 'Ω') === null) take(text, 'wedge');
  });
  const limits = (at: number) => {
    const { nominal, unit, least, most } = wanted[at] ?? { nominal: 0, unit: '', least: 0, most: 0 };
    return words.wanted(formatFigure(nominal), formatFigure(least), formatFigure(most), unit);
  };
  return (
    <Dialog title={words.title(part)} onClose={desk.leaveQuestion}>
      <div class="stack" data-testid="value-dialog">
        <p>{words.ask}</p>
        <ReelMeasured reel={reel} />
        {wanted.length > 1 && (
          <>
            <p>{words.which}</p>
            <div class="choice">
              {wanted.map((each, at) => (
                <button
                  type="button"
                  key={`${each.nominal}${each.unit}${each.most}`}
                  data-testid={`value-is-${at}`}
                  aria-pressed={chosen === at}
                  onClick={() => setChosen(at)}
                >
                  {formatFigure(each.nominal)} {each.unit}
                </button>
              ))}
            </div>
          </>
        )}
        {value !== undefined && <b data-testid="value-wanted">{limits(chosen)}</b>}
        <p class="soft">
          {words.meter(formatFigure(rule.percent), formatFigure(rule.digits), formatFigure(rule.guard))}
        </p>
        <Field
          label={words.shows(value?.unit ?? '–')}
          testId="value-typed"
          autocomplete="off"
          maxLength={40}
          value={typed}
          onInput={(text) => fill(text, 'typed')}
          wrong={wrong}
          help={words.help}
        />
        <div class="acts">
          <Button
            tone="act"
            large
            testId="value-check"
            disabledReason={value === undefined ? words.which : typed.trim() === '' ? words.wrong : null}
            onPress={() => take(typed, via)}
          >
            {words.check}
          </Button>
          <Button large testId="value-cannot" onPress={() => desk.chooseValue(null)}>
            {words.cannot}
          </Button>
          <Button large tone="quiet" onPress={desk.leaveQuestion}>
            {say(shellWords).cancel}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}

/** Whose part is measured, by its label. */
function ReelMeasured({ reel: { reel, lot } }: { readonly reel: Pick<ReelInHand, 'reel' | 'lot'> }) {
  const { fieldNames } = say(dockWords);
  const facts = [
    [fieldNames.reel, reel],
    [fieldNames.lot, lot],
  ] as const;
  return (
    <div class="row" data-testid="value-reel">
      {facts.map(
        ([name, text]) =>
          text !== null && (
            <span key={name} class="chip plain">
              {name}{' '}
              <b class="code" translate={false}>
                {text}
              </b>
            </span>
          ),
      )}
    </div>
  );
}

/** What a keyboard meter types while the question stands; all else goes on to the desk. */
function useMeter(codes: readonly string[], onText: (typed: MeterText) => void): void {
  const app = useApp();
  const floor = useFloor();
  const take = (scan: Scan): boolean => {
    const typed = meterText(floor, { line: app.line.peek(), codes }, scan);
    if (typed !== null) onText(typed);
    return typed !== null;
  };
  const newest = useRef(take);
  newest.current = take;
  useLayoutEffect(() => app.scans.take((scan) => newest.current(scan)), []);
}

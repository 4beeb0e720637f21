// One part off the reel in hand under the meter, before the reel feeds: typed, or by a meter that types as a scanner does. The verdict says what came of it.

import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { judgePart, readMeter } from '../../../shared/floor/meter.ts';
import { recognise } from '../../../shared/floor/recognise.ts';
import type { ValueCheck } from '../../../shared/floor/value-check.ts';
import type { Source } from '../../../shared/floor/vocabulary.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { useApp, useFloor } from '../app.ts';
import type { Answers } from '../desk/away.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { shellWords } from '../words/shell.ts';
import { valueWords } from '../words/values.ts';
import { formatFigure, say } from '../words/words.ts';

/** Longer texts are labels. */
const LONGEST_READING = 16;

interface ValueDialogProps {
  readonly desk: Pick<Answers, 'chooseValue' | 'leaveQuestion'>;
  readonly check: ValueCheck;
}

export function ValueDialog({ desk, check }: ValueDialogProps) {
  const words = say(valueWords);
  const { wanted, rule, part } = check;
  const [chosen, setChosen] = useState(wanted.length === 1 ? 0 : -1);
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const value = wanted[chosen];
  const take = (text: string, via: Source): boolean => {
    setTyped(text);
    setWrong(null);
    if (value === undefined) return false;
    const shown = readMeter(text, value.unit);
    const measured = shown === null ? null : judgePart(check, value, shown, via);
    if (measured === null) setWrong(shown === null ? words.wrong : words.otherUnit(value.unit));
    else desk.chooseValue(measured);
    return true;
  };
  useMeter((text) => void take(text, 'wedge'));
  const limits = (at: number) => {
    const { nominal, unit, least, most } = wanted[at] ?? { nominal: 0, unit: '', least: 0, most: 0 };
    return words.wanted(formatFigure(nominal), formatFigure(least), formatFigure(most), unit);
  };
  return (
    <Dialog title={words.title(part)} onClose={desk.leaveQuestion}>
      <div class="stack" data-testid="value-dialog">
        <p>{words.ask}</p>
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
          onInput={(text) => {
            setTyped(text);
            setWrong(null);
          }}
          wrong={wrong}
          help={words.help}
        />
        <div class="acts">
          <Button
            tone="act"
            large
            testId="value-check"
            disabledReason={value === undefined ? words.which : typed.trim() === '' ? words.wrong : null}
            onPress={() => take(typed, 'typed')}
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

/** What a keyboard meter types while the question stands; what the plant knows, and whole labels, go on to the desk. */
function useMeter(onText: (text: string) => void): void {
  const app = useApp();
  const floor = useFloor();
  const take = (scan: Scan): boolean => {
    const [code, ...others] = scan.codes;
    const text = code?.text.trim() ?? '';
    const isShort = text !== '' && text.length <= LONGEST_READING && others.length === 0;
    if (scan.via !== 'wedge' || !isShort || recognise(floor, app.line.peek() ?? '', text).length > 0)
      return false;
    onText(text);
    return true;
  };
  const newest = useRef(take);
  newest.current = take;
  useLayoutEffect(() => app.scans.take((scan) => newest.current(scan)), []);
}

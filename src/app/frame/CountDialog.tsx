// How many parts are on a reel, and how is that known? One dialog for a count at the line, at unload and in the store: the way,
// the figures, the count with its spread, and what the log thought before.

import { useState } from 'preact/hooks';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { LABEL_SHARE } from '../../../shared/floor/remaining.ts';
import type { FullReel } from '../../../shared/floor/state.ts';
import type { CountBasis, PackageKind } from '../../../shared/floor/vocabulary.ts';
import type { Count } from '../../../shared/forecast/counts.ts';
import { useApp, useFloor } from '../app.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { countWords } from '../words/count.ts';
import { shellWords } from '../words/shell.ts';
import { formatCount, formatShare, say } from '../words/words.ts';
import {
  basisOf,
  type CountField,
  type CountForm,
  type CountWay,
  computeCount,
  PRINTED_LEAST,
  printedSd,
  startForm,
  waysFor,
  weigh,
} from './count-model.ts';
import { ReelPicture } from './ReelPicture.tsx';
import './count.css';
import { Field } from '../ui/Field.tsx';

/** A count that a person took. */
export interface TakenCount {
  readonly quantity: number;
  readonly sd: number;
  readonly basis: CountBasis;
  /** A full reel's figures to remember, null where nothing new was measured. */
  readonly calibration: PayloadOf<'reel.calibrated'> | null;
}

interface CountDialogProps {
  /** Slot or reel, for the title. */
  readonly what: string;
  readonly part: string | null;
  /** What it comes in. */
  readonly kind: PackageKind;
  readonly pitchMm: number | null;
  /** What the log thinks, null where it knows no count. */
  readonly before: { readonly parts: number; readonly sd: number; readonly basis: CountBasis } | null;
  readonly fullReel: FullReel | null;
  /** Parts on a full reel as the label says, null where nobody knows. */
  readonly fullParts: number | null;
  readonly onCount: (taken: TakenCount) => void;
  readonly onClose: () => void;
}

const fieldsOf: Readonly<Record<CountWay, readonly CountField[]>> = {
  typed: ['parts'],
  machine: ['parts'],
  weighed: ['massG', 'emptyG', 'fullMassG', 'fullParts'],
  measured: ['outerMm', 'hubMm', 'pitchMm', 'fullOuterMm', 'fullParts', 'thicknessMm'],
};

export function CountDialog(props: CountDialogProps) {
  const words = say(countWords);
  const [way, setWay] = useState<CountWay>('typed');
  const [form, setForm] = useState<CountForm>(() =>
    startForm(props.fullReel, { pitchMm: props.pitchMm, fullParts: props.fullParts }),
  );
  const rules = useFloor().rules.get(useApp().line.value ?? '');
  const labelShare = rules?.labelShare ?? LABEL_SHARE;
  const answer = computeCount(way, form, { part: props.part, labelShare });
  const before = props.before && withSpread(props.before, labelShare);
  return (
    <Dialog title={words.title(props.what)} onClose={props.onClose} wide={way === 'measured'}>
      <div class="stack">
        <div class="choice">
          {waysFor(props.kind).map((each) => (
            <button
              type="button"
              key={each}
              aria-pressed={way === each}
              data-testid={`count-${each}`}
              onClick={() => setWay(each)}
            >
              {words.ways[each]}
            </button>
          ))}
        </div>
        <p class="soft">{words.wayHelp[way]}</p>
        <div class={`count-form ${way}`}>
          {way === 'measured' && <ReelPicture outerMm={form.outerMm} hubMm={form.hubMm} />}
          <div class="figures">
            {fieldsOf[way].map((field) => {
              const isWrong =
                !answer.ok &&
                answer.wrong.field === field &&
                !(answer.wrong.code === 'missing' && form[field] === '');
              return (
                <Field
                  key={field}
                  label={words.fields[field]}
                  testId={`count-field-${field}`}
                  inputMode="decimal"
                  autocomplete="off"
                  value={form[field]}
                  isWrong={isWrong}
                  onInput={(text) => setForm({ ...form, [field]: text })}
                  wrong={isWrong && !answer.ok ? words.wrong[answer.wrong.code] : null}
                />
              );
            })}
          </div>
        </div>
        {props.fullReel && way !== 'typed' && way !== 'machine' && (
          <p class="soft">{words.remembered(form.fullParts)}</p>
        )}
        <p class="soft" data-testid="count-before">
          {props.before === null
            ? words.beforeUnknown
            : words.before(
                formatCount(props.before.parts),
                spread(before?.sd ?? 0),
                words.bases[props.before.basis],
              )}
        </p>
        {(way === 'typed' || (props.before !== null && before?.sd !== props.before.sd)) && (
          <p class="soft" data-testid="count-printed">
            {words.printed(
              formatShare(labelShare),
              formatCount(PRINTED_LEAST),
              rules?.labelShare !== undefined,
            )}
          </p>
        )}
        <Answer
          {...{ answer, before, way }}
          part={props.part}
          onCount={props.onCount}
          onClose={props.onClose}
        />
      </div>
    </Dialog>
  );
}

/** What the log thought, with the spread that a printed figure has though nobody wrote it down. */
function withSpread(before: NonNullable<CountDialogProps['before']>, labelShare: number): Count {
  const isPrinted = before.sd === 0 && (before.basis === 'label' || before.basis === 'typed');
  const sd = isPrinted ? printedSd(before.parts, labelShare) : before.sd;
  return { parts: before.parts, sd, basis: 'counted-down' };
}

/** A deviation as it is shown: never 0 where there is one. */
export function spread(sd: number): string {
  return formatCount(sd > 0 ? Math.max(1, Math.round(sd)) : 0);
}

function Answer(props: {
  readonly answer: ReturnType<typeof computeCount>;
  readonly before: Count | null;
  readonly way: CountWay;
  readonly part: string | null;
  readonly onCount: (taken: TakenCount) => void;
  readonly onClose: () => void;
}) {
  const words = say(countWords);
  const { answer, before, way } = props;
  const cancel = (
    <Button large onPress={props.onClose}>
      {say(shellWords).cancel}
    </Button>
  );
  if (!answer.ok) {
    const { field, code } = answer.wrong;
    return (
      <div class="acts">
        <Button
          tone="act"
          large
          testId="count-take"
          disabledReason={`${words.fields[field]}: ${words.wrong[code]}`}
          onPress={() => undefined}
        >
          {words.take}
        </Button>
        {cancel}
      </div>
    );
  }
  const { count, calibration } = answer.value;
  const joined = weigh(before, count);
  const contradicts = joined.contradictions.length > 0;
  const isJoined = joined.basis === 'combined';
  const take = (each: Count, basis: CountBasis) =>
    props.onCount({ quantity: Math.round(each.parts), sd: each.sd, basis, calibration });
  return (
    <>
      <p class="count-result" data-testid="count-result">
        <b>{words.result(formatCount(count.parts), spread(count.sd))}</b>
      </p>
      {contradicts && (
        <p class="caution" data-testid="count-contradicts">
          {words.contradicts}
        </p>
      )}
      {isJoined && !contradicts && (
        <p>
          {words.agree} <b>{words.result(formatCount(joined.parts), spread(joined.sd))}</b>
        </p>
      )}
      <div class="acts">
        {isJoined && !contradicts && (
          <Button tone="act" large testId="count-take-both" onPress={() => take(joined, 'combined')}>
            {words.takeBoth}
          </Button>
        )}
        <Button
          tone={isJoined && !contradicts ? 'plain' : 'act'}
          large
          testId="count-take"
          onPress={() => take(count, basisOf(way))}
        >
          {before === null ? words.take : words.takeNew}
        </Button>
        {cancel}
      </div>
    </>
  );
}

// Adding a feeder, changing one, and taking a pasted list in. Adding never writes over a feeder that is there: changing one is an act
// of its own, which says what it was and what on the line no longer fits.

import { useState } from 'preact/hooks';
import type { DraftEntry } from '../../../../../shared/floor/kinds.ts';
import type { Feeder } from '../../../../../shared/floor/state.ts';
import { isFeeder, parseFeeder, readFeederRows } from '../../../../../shared/sheet/feeder-sheet.ts';
import { tapeWidthsMm } from '../../../../../shared/sheet/tapes.ts';
import { useApp, useFloor } from '../../../app.ts';
import { Button } from '../../../ui/Button.tsx';
import { AreaField, Field, SelectField } from '../../../ui/Field.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { feederTypeWords } from '../../../words/feeder-types.ts';
import { partsWords } from '../../../words/parts.ts';
import { say } from '../../../words/words.ts';
import { FeederTyped, type TypedDraft, typedDraftOf, typedEntries } from './FeederTyped.tsx';
import { placeText, tapeText } from './feeder-text.ts';
import { compareFeeders, feederMisfit, feederPlace } from './model.ts';

/** A feeder while it is typed. */
export interface Draft {
  /** The feeder that is changed; null for a new one. */
  readonly changes: string | null;
  readonly feeder: string;
  readonly tapeWidth: string;
  readonly pitches: string;
  readonly positions: string;
  /** Its type and own lengths; null until somebody looks at them. */
  readonly typed: TypedDraft | null;
}

/** A new feeder. */
export const emptyDraft: Draft = {
  changes: null,
  feeder: '',
  tapeWidth: '8',
  pitches: '',
  positions: '',
  typed: null,
};

/** A feeder of the list, to be changed. */
export function draftOf({ feeder, tapeWidthMm, pitchesMm, positions }: Feeder): Draft {
  return {
    changes: feeder,
    feeder,
    tapeWidth: String(tapeWidthMm),
    pitches: pitchesMm.join(' '),
    positions: String(positions),
    typed: null,
  };
}

const entryFor = (feeder: Feeder): DraftEntry => ({
  kind: 'feeder.known',
  payload: { ...feeder, pitchesMm: [...feeder.pitchesMm] },
});

interface FeederFormProps {
  readonly draft: Draft;
  readonly onChange: (draft: Draft) => void;
  readonly onClose: () => void;
}

export function FeederForm({ draft, onChange, onClose }: FeederFormProps) {
  const app = useApp();
  const floor = useFloor();
  const all = say(partsWords);
  const words = all.feeders;
  const parsed = parseFeeder(draft);
  const there = draft.changes === null ? floor.feeders.get(draft.feeder.trim()) : undefined;
  const id = draft.changes ?? draft.feeder.trim();
  const typed = draft.typed ?? typedDraftOf(floor, id);
  const more = typedEntries(floor, id, typed);
  const wrong = isFeeder(parsed) ? (there ? words.isThere : null) : words.problems[parsed.code](parsed.found);
  const why = wrong ?? (typeof more === 'string' ? say(feederTypeWords)[more] : null);
  return (
    <section class="card form" data-testid="feeder-form">
      {draft.changes === null ? (
        <DraftField name="feeder" label={words.id} help={null} draft={draft} onChange={onChange} />
      ) : (
        <h2 class="whole">{words.changeTitle(draft.changes)}</h2>
      )}
      {there && <AlreadyThere feeder={there} onEdit={() => onChange(draftOf(there))} />}
      <SelectField
        label={words.width}
        testId="feeder-width"
        value={draft.tapeWidth}
        onChoose={(tapeWidth) => onChange({ ...draft, tapeWidth })}
      >
        {tapeWidthsMm.map((width) => (
          <option key={width} value={String(width)}>
            {width} mm
          </option>
        ))}
      </SelectField>
      <DraftField
        name="pitches"
        label={words.pitches}
        help={words.pitchesHelp}
        draft={draft}
        onChange={onChange}
      />
      <DraftField
        name="positions"
        label={words.positions}
        help={words.positionsHelp}
        draft={draft}
        onChange={onChange}
      />
      <FeederTyped feeder={id} draft={typed} onChange={(next) => onChange({ ...draft, typed: next })} />
      {draft.changes !== null && isFeeder(parsed) && <WhatChanges next={parsed} />}
      <div class="whole row">
        <Button
          tone="act"
          large
          testId="feeder-save"
          disabledReason={why}
          onPress={() => {
            if (!isFeeder(parsed)) return;
            app.record([entryFor(parsed), ...(typeof more === 'string' ? [] : more)], {
              notice: { tone: 'go', text: words.saved(parsed.feeder) },
              next: onClose,
            });
          }}
        >
          {draft.changes === null ? words.save : words.saveChange}
        </Button>
        <Button large onPress={onClose}>
          {all.cancel}
        </Button>
      </div>
    </section>
  );
}

function DraftField(props: {
  readonly name: 'feeder' | 'pitches' | 'positions';
  readonly label: string;
  readonly help: string | null;
  readonly draft: Draft;
  readonly onChange: (draft: Draft) => void;
}) {
  return (
    <Field
      label={props.label}
      testId={`feeder-${props.name}`}
      autocomplete="off"
      maxLength={64}
      value={props.draft[props.name]}
      onInput={(text) => props.onChange({ ...props.draft, [props.name]: text })}
      help={props.help}
    />
  );
}

/** The id typed is on the list: what it is, where it is, and the way to change it. */
function AlreadyThere({ feeder, onEdit }: { readonly feeder: Feeder; readonly onEdit: () => void }) {
  const floor = useFloor();
  const words = say(partsWords).feeders;
  const where = feederPlace(floor, feeder.feeder);
  return (
    <div class="whole stack" data-testid="feeder-there" role="status">
      <p class="chip care">
        ! {words.thereIs(feeder.feeder)} {tapeText(feeder)}
        {where && ` · ${placeText(where)}`}
      </p>
      <div>
        <Button testId="feeder-change-it" onPress={onEdit}>
          {words.changeIt}
        </Button>
      </div>
    </div>
  );
}

/** What a changed feeder was, where it is loaded, and what it would no longer fit. */
function WhatChanges({ next }: { readonly next: Feeder }) {
  const floor = useFloor();
  const words = say(partsWords).feeders;
  const before = floor.feeders.get(next.feeder);
  const where = feederPlace(floor, next.feeder);
  const misfit = feederMisfit(floor, next);
  if (!before) return null;
  return (
    <div class="whole stack" data-testid="feeder-changes">
      <p class="soft">
        {words.was(tapeText(before))}
        {where && ` · ${placeText(where)}`}
      </p>
      {misfit?.wantsMm != null && (
        <p class="chip stop">✕ {words.wantsWidth(misfit.place.slot, String(misfit.wantsMm), next.feeder)}</p>
      )}
      {misfit && misfit.neighbours.length > 0 && (
        <p class="chip stop">✕ {words.reachesInto(next.feeder, misfit.neighbours.join(', '))}</p>
      )}
    </div>
  );
}

/** Rows of a list: new feeders are taken in; those that the list would change are shown, and changed only by an act of its own. */
export function PasteForm({ onClose }: { readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const all = say(partsWords);
  const words = all.feeders;
  const [text, setText] = useState('');
  const { feeders, problems } = readFeederRows(text);
  const { fresh, changed, same } = compareFeeders(floor, feeders);
  const take = (taken: readonly Feeder[], said: string) => {
    app.record(taken.map(entryFor), {
      notice: { tone: 'go', text: said },
      next: () => {
        // Nothing of the list is lost where the other half still waits.
        if (taken.length === fresh.length + changed.length) onClose();
      },
    });
  };
  return (
    <section class="card stack">
      <AreaField
        label={words.paste}
        testId="feeder-rows"
        isCode
        rows={6}
        value={text}
        onInput={setText}
        help={words.pasteHelp}
      />
      {text.trim() !== '' && (
        <p data-testid="feeder-found">
          {words.found(feeders.length)}: {words.fresh(fresh.length)} · {words.changed(changed.length)} ·{' '}
          {words.same(same)}
        </p>
      )}
      {problems.length > 0 && (
        <div role="alert">
          <ul class="faults">
            {problems.slice(0, 20).map(({ row, code, found }) => (
              <li key={row}>
                ✕ <b>{words.row(row)}</b> {words.problems[code](found)}
              </li>
            ))}
            {problems.length > 20 && <li>{all.more(String(problems.length - 20))}</li>}
          </ul>
        </div>
      )}
      {changed.length > 0 && <ChangedList changed={changed} />}
      <div class="row">
        <Button
          tone="act"
          large
          testId="feeder-take"
          disabledReason={fresh.length === 0 ? words.nothing : null}
          onPress={() => take(fresh, words.taken(fresh.length))}
        >
          {words.take(fresh.length)}
        </Button>
        {changed.length > 0 && (
          <Button
            large
            testId="feeder-take-changed"
            onPress={() => take(changed, words.changedNow(changed.length))}
          >
            {words.takeChanged(changed.length)}
          </Button>
        )}
        <Button large onPress={onClose}>
          {all.cancel}
        </Button>
      </div>
    </section>
  );
}

/** Feeders that a list describes otherwise: as they are, as they would be, where they are loaded. */
function ChangedList({ changed }: { readonly changed: readonly Feeder[] }) {
  const floor = useFloor();
  const all = say(partsWords);
  return (
    <ul class="faults" data-testid="feeder-changed">
      {changed.slice(0, 20).map((next) => {
        const before = floor.feeders.get(next.feeder);
        const where = feederPlace(floor, next.feeder);
        return (
          <li key={next.feeder}>
            <b class="code">{next.feeder}</b> {before && tapeText(before)} → {tapeText(next)}
            {where && ` · ${placeText(where)}`}
            {feederMisfit(floor, next) !== null && (
              <>
                {' '}
                <span class="chip stop">
                  <Icon name="warn" size={18} /> {all.feeders.noLongerFits}
                </span>
              </>
            )}
          </li>
        );
      })}
      {changed.length > 20 && <li>{all.more(String(changed.length - 20))}</li>}
    </ul>
  );
}

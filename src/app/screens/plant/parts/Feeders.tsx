// The plant's feeders: which tape each takes. With a list, a load also checks that the feeder fits the tape.

import { useState } from 'preact/hooks';
import { isFeeder, parseFeeder, readFeederRows } from '../../../../../shared/setup/feeder-sheet.ts';
import { tapeWidthsMm } from '../../../../../shared/setup/sheet-tapes.ts';
import type { Feeder } from '../../../../../shared/setup/state.ts';
import { useApp, useFloor } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import type { Wish } from '../../../store/store.ts';
import { Button } from '../../../ui/Button.tsx';
import { partsWords } from '../../../words/parts.ts';
import { say } from '../../../words/words.ts';
import { compareFeeders, feederSlot, matches } from './model.ts';
import { Longlist, SearchField, useScans, WhyDialog } from './shared.tsx';

interface Draft {
  readonly feeder: string;
  readonly tapeWidth: string;
  readonly pitches: string;
  readonly positions: string;
}

const emptyDraft: Draft = { feeder: '', tapeWidth: '8', pitches: '', positions: '' };

const wishFor = (feeder: Feeder): Wish => ({
  kind: 'feeder.known',
  payload: { ...feeder, pitchesMm: [...feeder.pitchesMm] },
});

export function Feeders() {
  const app = useApp();
  const floor = useFloor();
  const words = say(partsWords).feeders;
  const refusal = useRefusal('define-line');
  const [search, setSearch] = useState('');
  const [draft, setDraft] = useState<Draft | null>(null);
  const [isPasting, setPasting] = useState(false);
  const [leaving, setLeaving] = useState<string | null>(null);
  useScans(({ raw }) => (draft ? setDraft({ ...draft, feeder: raw }) : setSearch(raw)));
  const feeders = [...floor.feeders.values()].sort((a, b) =>
    a.feeder.localeCompare(b.feeder, 'en', { numeric: true }),
  );
  const found = feeders.filter(({ feeder, tapeWidthMm }) => matches(search, [feeder, `${tapeWidthMm} mm`]));
  const edit = ({ feeder, tapeWidthMm, pitchesMm, positions }: Feeder) =>
    setDraft({
      ...{ feeder, tapeWidth: String(tapeWidthMm), pitches: pitchesMm.join(' ') },
      positions: String(positions),
    });
  return (
    <div class="stack">
      {draft && <FeederForm draft={draft} onChange={setDraft} onClose={() => setDraft(null)} />}
      {isPasting && <PasteForm onClose={() => setPasting(false)} />}
      {!draft && !isPasting && (
        <div class="row">
          <SearchField value={search} onChange={setSearch} />
          <Button
            tone="act"
            disabledReason={refusal}
            testId="feeder-add"
            onPress={() => setDraft(emptyDraft)}
          >
            {words.add}
          </Button>
          <Button disabledReason={refusal} testId="feeder-paste" onPress={() => setPasting(true)}>
            {words.paste}
          </Button>
        </div>
      )}
      {feeders.length === 0 && (
        <p class="empty">
          {words.none}
          <br />
          {words.noneHelp}
        </p>
      )}
      {feeders.length > 0 && found.length === 0 && (
        <div class="empty">
          {words.noMatch(search)}
          {!draft && (
            <Button
              disabledReason={refusal}
              onPress={() => setDraft({ ...emptyDraft, feeder: search.trim() })}
            >
              {words.addIt}
            </Button>
          )}
        </div>
      )}
      <Longlist
        key={search}
        items={found}
        draw={(feeder) => (
          <FeederRow
            key={feeder.feeder}
            feeder={feeder}
            slot={feederSlot(floor, feeder.feeder)}
            mayChange={refusal === null}
            onEdit={() => edit(feeder)}
            onLeave={() => setLeaving(feeder.feeder)}
          />
        )}
      />
      {leaving !== null && (
        <WhyDialog
          title={words.withdrawTitle(leaving)}
          label={words.why}
          choices={words.whys}
          act={words.withdraw}
          onClose={() => setLeaving(null)}
          onDone={(reason) => {
            setLeaving(null);
            app.write([{ kind: 'feeder.withdrawn', payload: { feeder: leaving, reason } }]).then(
              () => {
                app.notice.value = { tone: 'plain', text: words.withdrawn(leaving) };
              },
              () => undefined, // shown by the fault screen
            );
          }}
        />
      )}
    </div>
  );
}

function FeederRow(props: {
  readonly feeder: Feeder;
  readonly slot: string | null;
  readonly mayChange: boolean;
  readonly onEdit: () => void;
  readonly onLeave: () => void;
}) {
  const words = say(partsWords).feeders;
  const { feeder, tapeWidthMm, pitchesMm, positions } = props.feeder;
  return (
    <div class="listed" data-testid={`feeder-${feeder}`}>
      <span class="grow">
        <b class="code" translate={false}>
          {feeder}
        </b>{' '}
        {props.slot !== null && <span class="chip">{words.isOn(props.slot)}</span>}
        <br />
        <span class="soft">
          {words.tape(String(tapeWidthMm))} ·{' '}
          {pitchesMm.length === 0 ? words.any : words.pitch(pitchesMm.join(' / '))} · {words.takes(positions)}
        </span>
      </span>
      {props.mayChange && (
        <>
          <Button onPress={props.onEdit}>{words.edit}</Button>
          <Button tone="stop" onPress={props.onLeave}>
            {words.withdraw}
          </Button>
        </>
      )}
    </div>
  );
}

function FeederForm(props: {
  readonly draft: Draft;
  readonly onChange: (draft: Draft) => void;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const all = say(partsWords);
  const words = all.feeders;
  const { draft, onChange } = props;
  const parsed = parseFeeder(draft);
  const field = (key: 'feeder' | 'pitches' | 'positions', label: string, help: string | null) => (
    <label class="field">
      <span>{label}</span>
      <input
        data-typing
        data-testid={`feeder-${key}`}
        autocomplete="off"
        maxLength={64}
        value={draft[key]}
        onInput={(event) => onChange({ ...draft, [key]: event.currentTarget.value })}
      />
      {help !== null && <small>{help}</small>}
    </label>
  );
  return (
    <section class="card form">
      {field('feeder', words.id, null)}
      <label class="field">
        <span>{words.width}</span>
        <select
          data-testid="feeder-width"
          value={draft.tapeWidth}
          onChange={(event) => onChange({ ...draft, tapeWidth: event.currentTarget.value })}
        >
          {tapeWidthsMm.map((width) => (
            <option key={width} value={String(width)}>
              {width} mm
            </option>
          ))}
        </select>
      </label>
      {field('pitches', words.pitches, words.pitchesHelp)}
      {field('positions', words.positions, words.positionsHelp)}
      <div class="whole row">
        <Button
          tone="act"
          large
          testId="feeder-save"
          disabledReason={isFeeder(parsed) ? null : words.problems[parsed.code](parsed.found)}
          onPress={() => {
            if (!isFeeder(parsed)) return;
            app.write([wishFor(parsed)]).then(
              () => {
                app.notice.value = { tone: 'go', text: words.saved(parsed.feeder) };
                props.onClose();
              },
              () => undefined, // shown by the fault screen
            );
          }}
        >
          {words.save}
        </Button>
        <Button large onPress={props.onClose}>
          {all.cancel}
        </Button>
      </div>
    </section>
  );
}

function PasteForm({ onClose }: { readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const all = say(partsWords);
  const words = all.feeders;
  const [text, setText] = useState('');
  const { feeders, problems } = readFeederRows(text);
  const { fresh, changed, same } = compareFeeders(floor, feeders);
  const taken = [...fresh, ...changed];
  return (
    <section class="card stack">
      <label class="field">
        <span>{words.paste}</span>
        <textarea
          class="code"
          rows={6}
          data-typing
          data-testid="feeder-rows"
          autocomplete="off"
          spellcheck={false}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <small>{words.pasteHelp}</small>
      </label>
      {text.trim() !== '' && (
        <p data-testid="feeder-found">
          {words.found(feeders.length)}: {words.fresh(fresh.length)} · {words.changed(changed.length)} ·{' '}
          {words.same(same)}
        </p>
      )}
      {problems.length > 0 && (
        <ul class="faults" role="alert">
          {problems.slice(0, 20).map(({ row, code, found }) => (
            <li key={row}>
              ✕ <b>{words.row(row)}</b> {words.problems[code](found)}
            </li>
          ))}
          {problems.length > 20 && <li>{all.more(String(problems.length - 20))}</li>}
        </ul>
      )}
      <div class="row">
        <Button
          tone="act"
          large
          testId="feeder-take"
          disabledReason={taken.length === 0 ? words.nothing : null}
          onPress={() => {
            app.write(taken.map(wishFor)).then(
              () => {
                app.notice.value = { tone: 'go', text: words.taken(taken.length) };
                onClose();
              },
              () => undefined, // shown by the fault screen
            );
          }}
        >
          {words.take(taken.length)}
        </Button>
        <Button large onPress={onClose}>
          {all.cancel}
        </Button>
      </div>
    </section>
  );
}

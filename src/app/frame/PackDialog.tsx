// What does this package come in? The kind, what belongs to it, and for a tray the next pocket by a tap on its picture: that counts it exactly.

import { useState } from 'preact/hooks';
import type { DraftEntry } from '../../../shared/floor/kinds.ts';
import type { Reel } from '../../../shared/floor/state.ts';
import {
  pocketAt,
  pocketsOf,
  pocketsPerTray,
  type TrayForm,
  takenBefore,
} from '../../../shared/floor/tray.ts';
import { corners, type PackageKind, packageKinds } from '../../../shared/floor/vocabulary.ts';
import { type App, useApp, useFloor } from '../app.ts';
import { leftOn } from '../left-on.ts';
import { reelName } from '../reel-name.ts';
import { AskFeet } from '../ui/Ask.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field, SelectField } from '../ui/Field.tsx';
import { feedWords } from '../words/feeds.ts';
import { packWords } from '../words/packs.ts';
import { formatCount, say } from '../words/words.ts';
import { type PackForm, type PackRead, readPack, startPack, trayOf } from './pack-model.ts';
import { MOST_POCKETS, TrayPicture } from './TrayPicture.tsx';
import './pack.css';

interface PackDialogProps {
  readonly reel: Reel;
  /** What its slot is fed from by the sheet; null where that does not say, or it is on none. */
  readonly wanted: PackageKind | null;
  readonly onClose: () => void;
}

export function PackDialog({ reel, wanted, onClose }: PackDialogProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(packWords);
  const [form, setForm] = useState(() => startPack(floor.packs.get(reel.reel) ?? null, wanted));
  const read = readPack(form);
  const name = reelName(reel.reel);
  return (
    <Dialog
      title={words.title(name === '' ? (reel.part ?? '') : name)}
      onClose={onClose}
      wide={form.kind === 'tray'}
    >
      <div class="stack" data-testid="pack-dialog">
        <div class="choice">
          {packageKinds.map((kind) => (
            <button
              type="button"
              key={kind}
              aria-pressed={form.kind === kind}
              data-testid={`pack-${kind}`}
              onClick={() => setForm({ ...form, kind })}
            >
              {say(feedWords).kinds[kind]}
            </button>
          ))}
        </div>
        <p class="soft">{words.help[form.kind]}</p>
        {form.kind === 'tray' && <TrayFields form={form} reel={reel} set={setForm} />}
        {form.kind === 'tube' && <TubeFields form={form} set={setForm} />}
        <AskFeet
          testId="pack-save"
          disabledReason={'wrong' in read ? (read.wrong === 'loose' ? words.wrongLoose : words.wrong) : null}
          onYes={() => {
            if ('wrong' in read) return;
            save(app, reel, read);
            onClose();
          }}
          onNo={onClose}
        >
          {words.save}
        </AskFeet>
      </div>
    </Dialog>
  );
}

/** Writes down what the package is, and its count where that was told. */
function save(app: App, reel: Reel, { pack, left }: PackRead): void {
  const { part, lot, at } = reel;
  const run = at === null ? null : (app.store.floor().current.get(at.line) ?? null);
  const panels = run === null ? 0 : (app.store.floor().runs.get(run)?.done ?? 0);
  const drafts: DraftEntry[] = [
    { kind: 'reel.packed', payload: { reel: reel.reel, part, via: 'typed', ...pack } },
  ];
  if (left !== null) {
    const where = { line: at?.line ?? null, slot: at?.slot ?? null };
    const counted = {
      reel: reel.reel,
      part,
      lot,
      quantity: left,
      sd: 0,
      basis: 'one-by-one' as const,
      panels,
    };
    drafts.push({ kind: 'reel.counted', payload: { ...where, ...counted } });
  }
  const words = say(packWords);
  const name = reelName(reel.reel);
  const text = words.saved(name === '' ? (part ?? '') : name, say(feedWords).kinds[pack.comesIn]);
  app.record(drafts, { notice: { tone: 'plain', text } });
}

interface FieldsProps {
  readonly form: PackForm;
  readonly set: (next: PackForm) => void;
}

function TrayFields({ form, reel, set }: FieldsProps & { readonly reel: Reel }) {
  const words = say(packWords);
  const tray = trayOf(form);
  // Another layout has other pockets: what was tapped in the old one means nothing.
  const figure = (name: 'rows' | 'columns' | 'trays') => (
    <Field
      label={words[name]}
      testId={`pack-${name}`}
      inputMode="numeric"
      autocomplete="off"
      value={form[name]}
      onInput={(text) => set({ ...form, [name]: text, next: null })}
    />
  );
  return (
    <>
      <div class="pack-figures">
        {figure('rows')}
        {figure('columns')}
        {figure('trays')}
        <SelectField
          label={words.first}
          testId="pack-first"
          value={form.first}
          onChoose={(value) =>
            set({ ...form, first: corners.find((each) => each === value) ?? form.first, next: null })
          }
        >
          {corners.map((corner) => (
            <option key={corner} value={corner}>
              {words.corners[corner]}
            </option>
          ))}
        </SelectField>
        <SelectField
          label={words.along}
          testId="pack-along"
          value={form.along}
          onChoose={(value) => set({ ...form, along: value === 'columns' ? 'columns' : 'rows', next: null })}
        >
          <option value="rows">{words.ways.rows}</option>
          <option value="columns">{words.ways.columns}</option>
        </SelectField>
        <SelectField
          label={words.pin1}
          testId="pack-pin1"
          value={form.pin1}
          onChoose={(value) => set({ ...form, pin1: corners.find((each) => each === value) ?? '' })}
        >
          <option value="">{words.pin1None}</option>
          {corners.map((corner) => (
            <option key={corner} value={corner}>
              {words.corners[corner]}
            </option>
          ))}
        </SelectField>
      </div>
      {tray !== null && <Pockets form={form} tray={tray} reel={reel} set={set} />}
    </>
  );
}

/** The tray in use, and what a tap on it says. */
function Pockets({ form, tray, reel, set }: FieldsProps & { readonly tray: TrayForm; readonly reel: Reel }) {
  const floor = useFloor();
  const words = say(packWords);
  const all = pocketsOf(tray);
  const { parts } = leftOn(floor, reel);
  const reckoned = parts === null ? 0 : Math.min(all - 1, Math.max(0, all - Math.round(parts)));
  const taken = form.next === null ? reckoned : takenBefore(tray, form.next);
  const shown = pocketAt(tray, taken);
  return (
    <>
      {tray.trays > 1 && (
        <SelectField
          label={words.openTray}
          testId="pack-open"
          value={String(shown.tray)}
          onChoose={(value) =>
            set({ ...form, next: pocketAt(tray, (Number(value) - 1) * pocketsPerTray(tray)) })
          }
        >
          {Array.from({ length: tray.trays }, (_, at) => (
            <option key={at} value={String(at + 1)}>
              {formatCount(at + 1)}
            </option>
          ))}
        </SelectField>
      )}
      {pocketsPerTray(tray) > MOST_POCKETS ? (
        <p class="caution">{words.tooMany}</p>
      ) : (
        <>
          <p>{words.tapPocket}</p>
          <TrayPicture form={tray} taken={taken} onTap={(next) => set({ ...form, next })} />
        </>
      )}
      {form.next !== null && (
        <p data-testid="pack-next">
          <b>{words.left(formatCount(all - taken), formatCount(all))}</b>{' '}
          {words.nextPocket(formatCount(shown.tray), formatCount(shown.row), formatCount(shown.column))}
        </p>
      )}
    </>
  );
}

function TubeFields({ form, set }: FieldsProps) {
  const words = say(packWords);
  const read = readPack(form);
  const figure = (name: 'tubes' | 'parts' | 'loose', label: string) => (
    <Field
      label={label}
      testId={`pack-${name}`}
      inputMode="numeric"
      autocomplete="off"
      value={form[name]}
      onInput={(text) => set({ ...form, [name]: text })}
    />
  );
  return (
    <>
      <div class="pack-figures">
        {figure('tubes', words.tubes)}
        {figure('parts', words.partsEach)}
        {figure('loose', words.loose)}
      </div>
      {form.toldTubes !== null && <p class="soft">{words.tubesAsIs}</p>}
      {'pack' in read && read.left !== null && read.pack.tube && (
        <p data-testid="pack-next">
          <b>
            {words.left(formatCount(read.left), formatCount(read.pack.tube.tubes * read.pack.tube.parts))}
          </b>
        </p>
      )}
    </>
  );
}

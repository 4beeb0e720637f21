// What lies where: every place with how much is there; dry cabinets and ovens with their air, which counts for what is put there.

import { useState } from 'preact/hooks';
import type { PlaceAir } from '../../../../shared/floor/fold-store.ts';
import type { PayloadOf } from '../../../../shared/floor/kinds.ts';
import { airs } from '../../../../shared/floor/vocabulary.ts';
import { parseNumber } from '../../../../shared/sheet/cells.ts';
import { useApp, useFloor } from '../../app.ts';
import { LongRows } from '../../long-rows.tsx';
import { useRefusal } from '../../may.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { ChoiceField, Field } from '../../ui/Field.tsx';
import { useSlices } from '../../use-slices.ts';
import { stockWords } from '../../words/stock.ts';
import { formatNumber, say } from '../../words/words.ts';
import { type PlaceHeld, placeSteps } from './found-reels.ts';

/** Places drawn at once; a search narrows the rest. */
const SHOWN = 60;

export function Places({ onShow }: { readonly onShow: (place: string) => void }) {
  const floor = useFloor();
  const all = say(stockWords);
  const words = all.places;
  const refusal = useRefusal('describe-part');
  const [search, setSearch] = useState('');
  const [open, setOpen] = useState<string | null>(null);
  const held = useSlices(() => placeSteps(floor), [useApp().tick.value]);
  if (held === null) return <p class="empty">{all.looking}</p>;
  const query = search.trim().toLowerCase();
  const found = query === '' ? held : held.filter(({ place }) => place.toLowerCase().includes(query));
  return (
    <section class="stack" data-testid="places">
      <div class="row place-search">
        <Field
          more="grow"
          label={words.search}
          testId="place-search"
          type="search"
          autocomplete="off"
          value={search}
          onInput={setSearch}
        />
        <Button disabledReason={refusal} testId="place-add" onPress={() => setOpen(search.trim())}>
          {words.add}
        </Button>
      </div>
      {held.length === 0 && <p class="empty">{words.none}</p>}
      <div class="reel-list">
        <LongRows
          items={found.slice(0, SHOWN)}
          keyOf={({ place }) => place}
          draw={(each) => (
            <PlaceRow
              key={each.place}
              held={each}
              air={floor.placeAirs.get(each.place) ?? null}
              refusal={refusal}
              onShow={() => onShow(each.place)}
              onDescribe={() => setOpen(each.place)}
            />
          )}
        />
      </div>
      {found.length > SHOWN && <p class="soft">{all.more(found.length - SHOWN)}</p>}
      {open !== null && (
        <PlaceDialog place={open} air={floor.placeAirs.get(open) ?? null} onClose={() => setOpen(null)} />
      )}
    </section>
  );
}

interface PlaceRowProps {
  readonly held: PlaceHeld;
  readonly air: PlaceAir | null;
  readonly refusal: string | null;
  readonly onShow: () => void;
  readonly onDescribe: () => void;
}

function PlaceRow({ held, air, refusal, onShow, onDescribe }: PlaceRowProps) {
  const words = say(stockWords).places;
  return (
    <div class="block-row place-row" data-testid={`place-${held.place}`}>
      <span>
        <b class="code" translate={false}>
          {held.place}
        </b>{' '}
        {air !== null && <span class="chip plain">{airText(air)}</span>}
        <br />
        <span class="soft">{words.holds(held.reels, held.parts)}</span>
      </span>
      <span class="row">
        <Button disabledReason={refusal} testId={`place-describe-${held.place}`} onPress={onDescribe}>
          {words.describe}
        </Button>
        <Button testId={`place-show-${held.place}`} onPress={onShow}>
          {words.show}
        </Button>
      </span>
    </div>
  );
}

function airText({ air, celsius, humidity }: PlaceAir): string {
  const words = say(stockWords).places;
  return [
    words.airs[air],
    celsius === null ? '' : `${formatNumber(celsius)} °C`,
    humidity === null ? '' : `${formatNumber(humidity)} %`,
  ]
    .filter((text) => text !== '')
    .join(' · ');
}

interface PlaceForm {
  readonly place: string;
  readonly air: PlaceAir['air'] | 'none';
  readonly celsius: string;
  readonly humidity: string;
}

/** The place as typed; null where a figure cannot be read. */
function placeOf(form: PlaceForm): PayloadOf<'place.described'> | null {
  const read = (text: string, most: number): number | null | undefined => {
    if (text.trim() === '') return null;
    const value = parseNumber(text.trim(), 'length');
    return value !== null && value >= 0 && value <= most ? value : undefined;
  };
  const [celsius, humidity] = [read(form.celsius, 200), read(form.humidity, 100)];
  if (celsius === undefined || humidity === undefined) return null;
  const place = form.place.trim();
  return form.air === 'none'
    ? { place, air: null, celsius: null, humidity: null }
    : { place, air: form.air, celsius, humidity };
}

function PlaceDialog(props: {
  readonly place: string;
  readonly air: PlaceAir | null;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const words = say(stockWords).places;
  const { air, onClose } = props;
  const figure = (value: number | null | undefined) => (value == null ? '' : String(value));
  const [form, setForm] = useState<PlaceForm>({
    place: props.place,
    air: air?.air ?? 'none',
    celsius: figure(air?.celsius),
    humidity: figure(air?.humidity),
  });
  const payload = placeOf(form);
  const choices = (['none', ...airs] as const).map((each) => ({
    value: each,
    text: words.airs[each],
    testId: `place-air-${each}`,
  }));
  return (
    <Dialog title={words.add} onClose={onClose}>
      <div class="stack">
        <Field
          label={say(stockWords).place}
          testId="place-name"
          autocomplete="off"
          maxLength={64}
          value={form.place}
          onInput={(place) => setForm({ ...form, place })}
        />
        <ChoiceField
          label={words.air}
          value={form.air}
          choices={choices}
          onChoose={(chosen) => setForm({ ...form, air: chosen })}
          help={words.airHelp}
        />
        {form.air !== 'none' && (
          <>
            <Field
              label={words.celsius}
              testId="place-celsius"
              inputMode="decimal"
              value={form.celsius}
              onInput={(celsius) => setForm({ ...form, celsius })}
            />
            <Field
              label={words.humidity}
              testId="place-humidity"
              inputMode="decimal"
              value={form.humidity}
              onInput={(humidity) => setForm({ ...form, humidity })}
            />
          </>
        )}
      </div>
      <AskFeet
        testId="place-save"
        disabledReason={form.place.trim() === '' ? words.nameless : payload === null ? words.wrong : null}
        onYes={() => {
          if (payload === null) return;
          app.record([{ kind: 'place.described', payload }], {
            notice: { tone: 'go', text: words.saved(payload.place) },
            next: onClose,
          });
        }}
        onNo={onClose}
      >
        {words.save}
      </AskFeet>
    </Dialog>
  );
}

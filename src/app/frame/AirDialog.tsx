// Since when does a moisture-sensitive reel lie open, in dry storage or in the oven? One question, for the store and for a slot.

import { useState } from 'preact/hooks';
import type { DraftEntry, PayloadOf } from '../../../shared/floor/kinds.ts';
import type { Reel } from '../../../shared/floor/state.ts';
import { type Air, airs } from '../../../shared/floor/vocabulary.ts';
import { formatMoment } from '../../../shared/kit/moment.ts';
import { lineClimate } from '../../../shared/moisture/line-climate.ts';
import { moistureRuling, type PartMoistureKnown, reelLife } from '../../../shared/moisture/reel-life.ts';
import { useApp, useFloor } from '../app.ts';
import { useRefusal } from '../may.ts';
import { AskFeet } from '../ui/Ask.tsx';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { ChoiceField, Field } from '../ui/Field.tsx';
import type { ReelLifeText } from '../words/life-text.ts';
import { moistureWords } from '../words/moisture.ts';
import { say } from '../words/words.ts';
import { readFigure } from './count-model.ts';
import { LetBakeDialog } from './LetBakeDialog.tsx';
import { bakeGrounds, lifeGrounds } from './life-grounds.ts';

interface AirDialogProps {
  /** A reel of the store or a tape on a slot. */
  readonly reel: Pick<Reel, 'reel' | 'part' | 'supplierPart' | 'count' | 'lot' | 'dateCode'>;
  /** The line whose floor's climate counts, null where there is none. */
  readonly line: string | null;
  /** How it stands before, null where nobody knows. */
  readonly before: ReelLifeText | null;
  /** What is known of its part. */
  readonly part: PartMoistureKnown | null;
  /** Since when it stands on a slot at the latest, ms since 1970; absent for a reel off the line. */
  readonly openedMs?: number;
  readonly onClose: () => void;
}

/** Humidities of dry storage that the rules tell apart, % (J-STD-033, from memory). */
const DRY_HUMIDITIES = [5, 10] as const;
/** The air in an oven: as dry as the table asks for, or not. */
type OvenAir = 'dry' | 'moist';
/** From here on, °C, the table asks for no dry air in the oven (J-STD-033). */
const ANY_AIR_CELSIUS = 125;
const HOUR_MS = 3_600_000;

/** What is chosen and typed. */
interface AirForm {
  readonly air: Air;
  readonly hours: string;
  readonly humidity: number;
  readonly celsius: string;
  /** The air in an oven below 125 °C; null while nobody said. */
  readonly ovenAir: OvenAir | null;
  /** Of a level 6 reel: the hours on its bag's label. */
  readonly labelHours: string;
}

const figureOf = (text: string) => readFigure(text) ?? Number.NaN;

export function AirDialog({ reel, line, before, part, openedMs, onClose }: AirDialogProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(moistureWords);
  const [nowMs] = useState(() => app.clock.nowMs());
  const life = reelLife(floor, reel.reel, {
    line,
    part,
    nowMs,
    ...(openedMs === undefined ? {} : { openedMs }),
  });
  const told = floor.labelTimes.get(reel.reel)?.hours;
  const [form, setForm] = useState<AirForm>({
    air: 'floor',
    hours: '0',
    humidity: DRY_HUMIDITIES[0],
    celsius: '40',
    ovenAir: null,
    labelHours: told === undefined ? '' : String(told),
  });
  const refusal = useRefusal('verify-reel');
  const [isLetting, setLetting] = useState(false);
  const isLevel6 = life?.level === '6';
  const change = (part: Partial<AirForm>) => setForm((kept) => ({ ...kept, ...part }));

  function write(): void {
    const aired = airedPayload(reel, form, {
      nowMs: app.clock.nowMs(),
      floorHumidity: lineClimate(floor, line).computed.humidity,
    });
    const onLabel = figureOf(form.labelHours);
    const timed: DraftEntry[] =
      isLevel6 && form.labelHours.trim() !== '' && onLabel !== told
        ? [{ kind: 'reel.timed', payload: { reel: reel.reel, hours: onLabel } }]
        : [];
    app.record([{ kind: 'reel.aired', payload: aired }, ...timed], {
      notice: { tone: 'plain', text: words.written(reel.reel) },
    });
    onClose();
  }

  const bake = before?.bake ?? null;
  if (isLetting && bake) return <LetBakeDialog reel={reel.reel} line={line} bake={bake} onClose={onClose} />;
  return (
    <Dialog title={words.title(reel.reel)} onClose={onClose}>
      <div class="stack">
        <Before before={before} onLet={() => setLetting(true)} />
        <p class="soft" data-testid="air-climate">
          {words.climate(lineClimate(floor, line))}
        </p>
        {life &&
          lifeGrounds(life, moistureRuling(floor)).map((text) => (
            <p key={text} class="soft" data-testid="air-grounds">
              {text}
            </p>
          ))}
        {isLevel6 && (
          <Field
            label={words.labelHours}
            testId="air-label-hours"
            inputMode="decimal"
            value={form.labelHours}
            onInput={(labelHours) => change({ labelHours })}
            help={words.labelHoursHelp}
          />
        )}
        <Where form={form} onChange={change} />
        {form.air === 'bake' && (
          <>
            <Field
              label={words.celsius}
              testId="air-celsius"
              inputMode="decimal"
              value={form.celsius}
              onInput={(celsius) => change({ celsius })}
              help={words.celsiusHelp}
            />
            <Oven form={form} onChange={change} />
            <p class="soft">{words.resetHelp}</p>
            {life &&
              bakeGrounds(life, part, moistureRuling(floor)).map((text) => (
                <p key={text} class="soft" data-testid="air-bake-row">
                  {text}
                </p>
              ))}
            <p class="caution">{words.bakeCaution}</p>
          </>
        )}
        <Field
          label={words.hours}
          testId="air-hours"
          inputMode="decimal"
          value={form.hours}
          onInput={(hours) => change({ hours })}
          help={words.hoursHelp}
        />
        <AskFeet
          testId="air-yes"
          disabledReason={refusal ?? airFault(form, isLevel6)}
          onYes={write}
          onNo={onClose}
        >
          {words.yes}
        </AskFeet>
      </div>
    </Dialog>
  );
}

/** How the reel stands before, and the way to let a bake count that was too short. */
function Before({ before, onLet }: Pick<AirDialogProps, 'before'> & { readonly onLet: () => void }) {
  const refusal = useRefusal('clear-hold');
  if (!before) return null;
  return (
    <>
      <p class={before.tone === null ? 'soft' : `chip ${before.tone}`}>{before.text}</p>
      {before.bake && (
        <div class="row">
          <Button testId="let-bake" disabledReason={refusal} onPress={onLet}>
            {say(moistureWords).letBake}
          </Button>
        </div>
      )}
    </>
  );
}

/** Where it lies, and how dry that is where it is dry storage. */
function Where(props: { readonly form: AirForm; readonly onChange: (part: Partial<AirForm>) => void }) {
  const words = say(moistureWords);
  const { form, onChange } = props;
  return (
    <>
      <ChoiceField
        label={words.where}
        value={form.air}
        choices={airs.map((air) => ({ value: air, text: words.airs[air], testId: `air-${air}` }))}
        onChoose={(air) => onChange({ air })}
      />
      {form.air === 'dry' && (
        <ChoiceField
          label={words.humidity}
          value={form.humidity}
          choices={DRY_HUMIDITIES.map((humidity) => ({
            value: humidity,
            text: words.humidities[humidity],
            testId: `air-humidity-${humidity}`,
          }))}
          onChoose={(humidity) => onChange({ humidity })}
        />
      )}
    </>
  );
}

/** True where the oven's air decides whether the bake counts. */
function asksOvenAir({ air, celsius }: AirForm): boolean {
  return air === 'bake' && !(figureOf(celsius) >= ANY_AIR_CELSIUS);
}

/** How dry the air in the oven is, where the table asks for it. */
function Oven(props: { readonly form: AirForm; readonly onChange: (part: Partial<AirForm>) => void }) {
  const words = say(moistureWords);
  const { form, onChange } = props;
  if (!asksOvenAir(form)) return null;
  return (
    <ChoiceField
      label={words.ovenAir}
      value={form.ovenAir}
      choices={(['dry', 'moist'] as const).map((ovenAir) => ({
        value: ovenAir,
        text: words.ovenAirs[ovenAir],
        testId: `air-oven-${ovenAir}`,
      }))}
      onChoose={(ovenAir) => onChange({ ovenAir })}
      help={words.ovenAirHelp}
    />
  );
}

/** What keeps the form from being written, in a sentence; null where nothing does. */
function airFault(form: AirForm, isLevel6: boolean): string | null {
  const { air, hours, celsius, labelHours } = form;
  const words = say(moistureWords);
  const isWithin = (text: string, least: number, most: number) =>
    figureOf(text) >= least && figureOf(text) <= most;
  if (isLevel6 && labelHours.trim() !== '' && !isWithin(labelHours, 1, 9999)) return words.badLabelHours;
  if (!isWithin(hours, 0, 9999)) return words.badHours;
  if (air === 'bake' && !isWithin(celsius, 30, 150)) return words.badCelsius;
  return asksOvenAir(form) && form.ovenAir === null ? words.ovenAirMissing : null;
}

function airedPayload(
  reel: AirDialogProps['reel'],
  form: AirForm,
  { nowMs, floorHumidity }: { readonly nowMs: number; readonly floorHumidity: number },
): PayloadOf<'reel.aired'> {
  const { part, supplierPart, count, lot, dateCode } = reel;
  const { air, hours, celsius, humidity, ovenAir } = form;
  // Air that nobody dried is no drier than the floor's.
  const inOven = !asksOvenAir(form) ? null : ovenAir === 'dry' ? DRY_HUMIDITIES[0] : floorHumidity;
  return {
    reel: reel.reel,
    part,
    supplierPart,
    quantity: count,
    lot,
    dateCode,
    air,
    via: 'typed',
    from: formatMoment(nowMs - Math.round(figureOf(hours) * HOUR_MS)),
    celsius: air === 'bake' ? figureOf(celsius) : null,
    humidity: air === 'dry' ? humidity : inOven,
  };
}

// Since when does a moisture-sensitive reel lie open, in dry storage or in the oven? One question, for the store and for a slot.

import { useState } from 'preact/hooks';
import type { PayloadOf, Wish } from '../../../shared/floor/kinds.ts';
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
import { moistureWords } from '../words/moisture.ts';
import { say } from '../words/words.ts';
import { readFigure } from './count-model.ts';
import { LetBakeDialog } from './LetBakeDialog.tsx';
import { bakeGrounds, lifeGrounds } from './life-grounds.ts';
import type { ReelLifeText } from './life-text.ts';

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
const HOUR_MS = 3_600_000;

export function AirDialog({ reel, line, before, part, openedMs, onClose }: AirDialogProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(moistureWords);
  const climate = lineClimate(floor, line);
  const [nowMs] = useState(() => app.clock.nowMs());
  const life = reelLife(floor, reel.reel, {
    line,
    part,
    nowMs,
    ...(openedMs === undefined ? {} : { openedMs }),
  });
  const told = floor.labelTimes.get(reel.reel)?.hours;
  const [labelHours, setLabelHours] = useState(told === undefined ? '' : String(told));
  const refusal = useRefusal('verify-reel');
  const leadRefusal = useRefusal('clear-hold');
  const [isLetting, setLetting] = useState(false);
  const [air, setAir] = useState<Air>('floor');
  const [hours, setHours] = useState('0');
  const [humidity, setHumidity] = useState<number>(DRY_HUMIDITIES[0]);
  const [celsius, setCelsius] = useState('40');
  const ago = readFigure(hours) ?? Number.NaN;
  const heat = readFigure(celsius) ?? Number.NaN;
  const isLevel6 = life?.level === '6';
  const onLabel = readFigure(labelHours) ?? Number.NaN;
  const isTimed = isLevel6 && labelHours.trim() !== '';
  const wrong =
    isTimed && !(onLabel >= 1 && onLabel <= 9999)
      ? words.badLabelHours
      : !(ago >= 0 && ago <= 9999)
        ? words.badHours
        : air === 'bake' && !(heat >= 30 && heat <= 150)
          ? words.badCelsius
          : null;

  function write(): void {
    const { part, supplierPart, count, lot, dateCode } = reel;
    const payload: PayloadOf<'reel.aired'> = {
      reel: reel.reel,
      part,
      supplierPart,
      quantity: count,
      lot,
      dateCode,
      air,
      via: 'typed',
      from: formatMoment(app.clock.nowMs() - Math.round(ago * HOUR_MS)),
      celsius: air === 'bake' ? heat : null,
      humidity: air === 'dry' ? humidity : null,
    };
    const timed: Wish[] =
      isTimed && onLabel !== told
        ? [{ kind: 'reel.timed', payload: { reel: reel.reel, hours: onLabel } }]
        : [];
    app.write([{ kind: 'reel.aired', payload }, ...timed]).then(
      () => {
        app.notice.value = { tone: 'plain', text: words.written(reel.reel) };
      },
      () => undefined, // shown by the fault screen
    );
    onClose();
  }

  const bake = before?.bake ?? null;
  if (isLetting && bake) return <LetBakeDialog reel={reel.reel} line={line} bake={bake} onClose={onClose} />;
  return (
    <Dialog title={words.title(reel.reel)} onClose={onClose}>
      <div class="stack">
        {before && <p class={before.tone === null ? 'soft' : `chip ${before.tone}`}>{before.text}</p>}
        {bake && (
          <div class="row">
            <Button testId="let-bake" disabledReason={leadRefusal} onPress={() => setLetting(true)}>
              {words.letBake}
            </Button>
          </div>
        )}
        <p class="soft" data-testid="air-climate">
          {words.climate(climate)}
        </p>
        {life &&
          lifeGrounds(life, moistureRuling(floor)).map((text) => (
            <p key={text} class="soft" data-testid="air-grounds">
              {text}
            </p>
          ))}
        {isLevel6 && (
          <label class="field">
            <span>{words.labelHours}</span>
            <input
              data-typing
              data-testid="air-label-hours"
              inputMode="decimal"
              value={labelHours}
              onInput={(event) => setLabelHours(event.currentTarget.value)}
            />
            <small>{words.labelHoursHelp}</small>
          </label>
        )}
        <div class="field">
          <span>{words.where}</span>
          <div class="choice">
            {airs.map((each) => (
              <button
                type="button"
                key={each}
                aria-pressed={air === each}
                data-testid={`air-${each}`}
                onClick={() => setAir(each)}
              >
                {words.airs[each]}
              </button>
            ))}
          </div>
        </div>
        {air === 'dry' && (
          <div class="field">
            <span>{words.humidity}</span>
            <div class="choice">
              {DRY_HUMIDITIES.map((each) => (
                <button
                  type="button"
                  key={each}
                  aria-pressed={humidity === each}
                  data-testid={`air-humidity-${each}`}
                  onClick={() => setHumidity(each)}
                >
                  {words.humidities[each]}
                </button>
              ))}
            </div>
          </div>
        )}
        {air === 'bake' && (
          <>
            <label class="field">
              <span>{words.celsius}</span>
              <input
                data-typing
                data-testid="air-celsius"
                inputMode="decimal"
                value={celsius}
                onInput={(event) => setCelsius(event.currentTarget.value)}
              />
              <small>{words.celsiusHelp}</small>
            </label>
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
        <label class="field">
          <span>{words.hours}</span>
          <input
            data-typing
            data-testid="air-hours"
            inputMode="decimal"
            value={hours}
            onInput={(event) => setHours(event.currentTarget.value)}
          />
          <small>{words.hoursHelp}</small>
        </label>
        <AskFeet testId="air-yes" disabledReason={refusal ?? wrong} onYes={write} onNo={onClose}>
          {words.yes}
        </AskFeet>
      </div>
    </Dialog>
  );
}

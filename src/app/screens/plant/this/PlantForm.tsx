// What the plant is called, and where it stands.

import { useEffect, useState } from 'preact/hooks';
import { THE_PLANT } from '../../../../../shared/floor/state.ts';
import { isZone } from '../../../../../shared/kit/zone.ts';
import { useApp, useFloor } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { Field } from '../../../ui/Field.tsx';
import { thisPlantWords } from '../../../words/this-plant.ts';
import { say } from '../../../words/words.ts';
import { zoneOfPlant } from '../lines/model.ts';
import { ZoneField } from '../lines/ZoneField.tsx';

/** The form; `isNext`: saving it is the next act on the screen. */
export function PlantForm({ isNext }: { readonly isNext: boolean }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(thisPlantWords);
  const refusal = useRefusal('define-line');
  const known = floor.plant.get(THE_PLANT);
  const [name, setName] = useState(known?.name ?? '');
  const [zone, setZone] = useState(() => zoneOfPlant(floor));
  const connection = app.connection.value;
  // A plant that somebody named where its server was set up is not asked for it again.
  useEffect(() => {
    if (known === undefined)
      connection?.plant().then(
        (plant) => setName((typed) => (typed === '' ? (plant ?? '') : typed)),
        () => undefined, // then it is typed
      );
  }, [connection, known]);
  const [told, read] = [name.trim(), zone.trim()];
  const same = known?.name === told && known.zone === read;
  const obstacle = told === '' ? words.nameMissing : isZone(read) ? null : words.zoneUnknown;
  return (
    <div class="stack" data-testid="plant-form">
      <div class="form">
        <Field
          label={words.name}
          testId="plant-name"
          autocomplete="off"
          maxLength={60}
          value={name}
          onInput={setName}
          help={words.nameHelp}
        />
        <ZoneField testId="plant-zone" help={words.zoneHelp} value={zone} onInput={setZone} />
      </div>
      <div>
        <Button
          tone={isNext ? 'act' : 'plain'}
          large={isNext}
          testId="plant-save"
          disabledReason={refusal ?? obstacle ?? (same ? words.same : null)}
          onPress={() =>
            app.record([{ kind: 'plant.named', payload: { name: told, zone: read } }], {
              notice: { tone: 'go', text: words.saved(told) },
            })
          }
        >
          {words.save}
        </Button>
      </div>
    </div>
  );
}

// The plant itself: its name and zone, a file from which a second plant begins, and beginning from such a file.

import { useState } from 'preact/hooks';
import {
  countPlantFile,
  type PlantFile,
  type PlantFileCount,
  type PlantFileFault,
  plantFileText,
  readPlantFile,
} from '../../../../../shared/floor/plant-file.ts';
import { THE_PLANT } from '../../../../../shared/floor/state.ts';
import type { Result } from '../../../../../shared/kit/result.ts';
import { useApp, useFloor } from '../../../app.ts';
import { nameInFile, saveFile } from '../../../device/save-file.ts';
import { useRefusal } from '../../../may.ts';
import { address, fromHereTo } from '../../../router.ts';
import { Button } from '../../../ui/Button.tsx';
import { FileButton } from '../../../ui/FileButton.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import type { Words } from '../../../words/areas.ts';
import { thisPlantWords } from '../../../words/this-plant.ts';
import { formatCount, say } from '../../../words/words.ts';
import { PlantForm } from './PlantForm.tsx';

export function ThisPlant() {
  const floor = useFloor();
  return (
    <div class="stack">
      <section class="card stack">
        <PlantForm isNext={!floor.plant.has(THE_PLANT)} key={floor.plant.get(THE_PLANT)?.name ?? ''} />
      </section>
      <SaveCard />
      <BeginCard />
    </div>
  );
}

function SaveCard() {
  const app = useApp();
  const floor = useFloor();
  const words = say(thisPlantWords);
  const refusal = useRefusal('define-line');
  return (
    <section class="card stack">
      <h2>{words.fileTitle}</h2>
      <p>{words.fileHelp}</p>
      <div>
        <Button
          testId="plant-file-save"
          disabledReason={refusal ?? (floor.lines.size === 0 ? words.noLine : null)}
          onPress={() => {
            const plant = nameInFile(floor.plant.get(THE_PLANT)?.name ?? '');
            const name = `reelward-plant${plant === '' ? '' : '-'}${plant}.json`;
            saveFile(name, new Blob([plantFileText(floor)], { type: 'application/json' }));
            app.notice.value = { tone: 'go', text: words.fileSaved(name) };
          }}
        >
          <Icon name="save" size={22} /> {words.fileSave}
        </Button>
      </div>
    </section>
  );
}

type Read = Result<PlantFile, PlantFileFault>;

/** What is wrong with a file, and what to do. */
function sayFault(words: Words<'this-plant'>, fault: PlantFileFault): string {
  if (fault.code === 'kind' || fault.code === 'payload')
    return words.faults[fault.code](
      fault.at,
      [fault.kind, fault.where].filter((text) => text !== '').join(' '),
    );
  return words.faults[fault.code];
}

/** Beginning from another plant's file: what it brings is told before it is taken in. */
function BeginCard() {
  const app = useApp();
  const floor = useFloor();
  const words = say(thisPlantWords);
  const refusal = useRefusal('define-line');
  const [read, setRead] = useState<{ readonly file: string; readonly told: Read } | null>(null);
  if (floor.lines.size > 0)
    return (
      <section class="card stack">
        <h2>{words.beginTitle}</h2>
        <p class="soft">{words.notEmpty}</p>
      </section>
    );
  const told = read?.told ?? null;
  const take = ({ drafts }: PlantFile) =>
    app.record(drafts, {
      notice: { tone: 'go', text: words.begun },
      next: fromHereTo('plant', 'begin'),
    });
  return (
    <section class="card stack" data-testid="plant-begin">
      <h2>{words.beginTitle}</h2>
      <p>{words.beginHelp}</p>
      <div>
        <FileButton
          icon="search"
          tone="plain"
          testId="plant-file"
          onFile={(file) => {
            file.text().then(
              (text) => setRead({ file: file.name, told: readPlantFile(text) }),
              () => setRead({ file: file.name, told: { ok: false, error: { code: 'not-json' } } }),
            );
          }}
        >
          {words.choose}
        </FileButton>
      </div>
      {read !== null && told !== null && !told.ok && (
        <div class="caution fault" role="alert" data-testid="plant-file-fault">
          <Icon name="warn" />
          <div>
            <b translate={false}>{read.file}</b>
            <br />
            {sayFault(words, told.error)}
          </div>
        </div>
      )}
      {told?.ok && (
        <div class="stack" data-testid="plant-file-brings">
          <b>{told.value.name === null ? words.brings : words.bringsOf(told.value.name)}</b>
          <ul>
            {Object.entries(countPlantFile(told.value)).map(([what, count]) => (
              <li key={what}>
                {words.counts[what as keyof PlantFileCount]}: {formatCount(count)}
              </li>
            ))}
          </ul>
          <div class="row">
            <Button
              tone="act"
              large
              testId="plant-file-take"
              disabledReason={refusal}
              onPress={() => take(told.value)}
            >
              {words.begin}
            </Button>
            <a class="button large" href={address('plant', 'begin')}>
              {words.toSteps}
            </a>
          </div>
        </div>
      )}
    </section>
  );
}

// A lead gives a station a name that people know it by; its link goes on under its own.

import { useState } from 'preact/hooks';
import type { Station } from '../../../../../shared/floor/station-state.ts';
import { useApp } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import { AskFeet } from '../../../ui/Ask.tsx';
import { Button } from '../../../ui/Button.tsx';
import { Dialog } from '../../../ui/Dialog.tsx';
import { Field } from '../../../ui/Field.tsx';
import { stationWords } from '../../../words/stations.ts';
import { say } from '../../../words/words.ts';

const NAME_MOST = 64;

export function Rename({ station }: { readonly station: Station }) {
  const words = say(stationWords);
  const refusal = useRefusal('keep-stations');
  const [isOpen, setOpen] = useState(false);
  return (
    <div class="row">
      <Button testId={`rename-${station.station}`} disabledReason={refusal} onPress={() => setOpen(true)}>
        {words.rename}
      </Button>
      {isOpen && <RenameDialog station={station} onClose={() => setOpen(false)} />}
    </div>
  );
}

function RenameDialog({ station, onClose }: { readonly station: Station; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(stationWords);
  const before = station.name ?? station.station;
  const [typed, setTyped] = useState(before);
  const name = typed.trim();
  const isReady = name !== '' && name !== before;
  return (
    <Dialog title={words.renameTitle} onClose={onClose}>
      <div class="stack">
        <p class="soft">{words.renameHelp}</p>
        <Field
          label={words.renameName}
          value={typed}
          onInput={setTyped}
          maxLength={NAME_MOST}
          testId="station-name"
        />
        <AskFeet
          testId="station-name-yes"
          disabledReason={isReady ? null : words.renameMissing}
          onYes={() => {
            const payload = { station: station.station, line: station.line, name };
            app.record([{ kind: 'station.named', payload }]);
            onClose();
          }}
          onNo={onClose}
        >
          {words.renameYes}
        </AskFeet>
      </div>
    </Dialog>
  );
}

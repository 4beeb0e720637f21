// Typing is a scan like any other: each line is one code, and all lines are one label.

import { useState } from 'preact/hooks';
import { useApp } from '../app.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { AreaField } from '../ui/Field.tsx';
import { dockWords } from '../words/dock.ts';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';

export function TypeDialog({ onClose }: { readonly onClose: () => void }) {
  const app = useApp();
  const words = say(dockWords);
  const shell = say(shellWords);
  const [text, setText] = useState('');
  const codes = text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  return (
    <Dialog title={words.typeTitle} onClose={onClose}>
      <AreaField
        label={words.typeHelp}
        testId="typed"
        rows={4}
        autocapitalize="off"
        value={text}
        onInput={setText}
      />
      <div class="acts">
        <Button
          tone="act"
          large
          testId="typed-done"
          onPress={() => {
            onClose();
            if (codes.length === 0) return;
            app.scans.push({
              codes: codes.map((code) => ({ text: code, format: null, symbologyId: null })),
              via: 'typed',
              atMs: app.clock.nowMs(),
            });
          }}
        >
          {shell.done}
        </Button>
        <Button large onPress={onClose}>
          {shell.cancel}
        </Button>
      </div>
    </Dialog>
  );
}

// The help of the screen that is open: three small drawings made of the app's own parts, each with its line, and the way to practise it.

import { useApp } from '../app.ts';
import { address, place } from '../router.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { helpWords } from '../words/help.ts';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import { HelpScene, type HelpScreen, helpScenes } from './HelpScene.tsx';
import './help.css';

export function HelpDialog({ onClose }: { readonly onClose: () => void }) {
  const app = useApp();
  const words = say(helpWords);
  const shell = say(shellWords);
  // The wall screen has no frame, and so no help.
  const screen = place.value.screen as HelpScreen;
  const lines = words.lines[screen];
  return (
    <Dialog title={words.title(shell.nav[screen])} onClose={onClose} wide>
      <ol class="help-lines" data-testid={`help-${screen}`}>
        {helpScenes[screen].map((parts, at) => (
          <li key={lines[at]}>
            <HelpScene parts={parts} />
            <p>
              <b aria-hidden="true">{at + 1}</b>
              <span>{lines[at]}</span>
            </p>
          </li>
        ))}
      </ol>
      <div class="acts">
        <Button large onPress={onClose}>
          {shell.close}
        </Button>
        {app.practice === null && (
          <a
            class="button large quiet"
            href={address('plant', 'practice')}
            onClick={onClose}
            data-testid="help-practise"
          >
            {words.practise}
          </a>
        )}
      </div>
    </Dialog>
  );
}

// Over a dialog that somebody left open: who left it goes on with it; anybody else signs in and it is closed, since it was opened by the
// right of another.

import type { Person } from '../../../shared/floor/state.ts';
import { useApp } from '../app.ts';
import { away } from '../person/away.ts';
import { signIn } from '../person/sign-in.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { peopleWords } from '../words/people.ts';
import { say } from '../words/words.ts';
import { ConfirmPerson } from './ConfirmPerson.tsx';

export function AwayDialog({ person }: { readonly person: Person }) {
  const app = useApp();
  const words = say(peopleWords);
  const closeAll = () => {
    if (away.peek() === null) return; // this dialog is among those that are told to close
    away.value = null;
    for (const dialog of document.querySelectorAll('dialog[open]'))
      dialog.dispatchEvent(new Event('cancel', { cancelable: true }));
  };
  return (
    <Dialog title={words.awayTitle(person.name)} onClose={closeAll} tone="care">
      <div class="stack" data-testid="away">
        <p>{words.awayHelp(person.name)}</p>
        <ConfirmPerson
          needs="operator"
          badgeSuffices
          onConfirmed={(someone, confirmed) => {
            signIn(app, someone, confirmed);
            if (someone.person === person.person) away.value = null;
            else closeAll();
          }}
        />
      </div>
      <div class="acts">
        <Button large onPress={closeAll} testId="away-close">
          {words.awayClose}
        </Button>
      </div>
    </Dialog>
  );
}

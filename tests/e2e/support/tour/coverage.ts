// Does the tour see all that there is? Every test id that the source gives to something on a screen must have been met at a stop,
// and every file that opens a dialog must carry one. What no tour can meet stands here with its reason.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Stops } from './stops.ts';

const root = path.resolve(import.meta.dirname, '../../../..');

function views(): readonly { readonly file: string; readonly source: string }[] {
  return readdirSync(path.join(root, 'src/app'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.tsx'))
    .map((name) => path.posix.join('src/app', name.replaceAll(path.sep, '/')))
    .map((file) => ({ file, source: readFileSync(path.join(root, file), 'utf8') }));
}

/** Ids that the tour does not come to, each with why. An entry that is met after all, or is gone from the source, is wrong. */
export const notMet: Readonly<Record<string, string>> = {
  update: 'A newer version of the app must lie on the server.',
  'move-to-${to}':
    'A part must stand on two slots that are fed by feeders, one of them empty: the demo plant has none.',
  'exit-lost': 'The page must lose the keyboard: exit.e2e.ts.',
  'jar-let': 'A jar must have been held, and a lead decide: nobody does on the tour.',
  'list-page': 'The list must come from a workbook of several sheets.',
  'part-picture-gone': 'A part must have got a picture from a file: part-list.e2e.ts.',
  'push-standing': 'The server must be set up to send messages: push.e2e.ts.',
  'push-wrong': 'The server must be set up to send messages: push.e2e.ts.',
  'blocked-show': 'A reel that is blocked must stand on the other line: two-lines.e2e.ts.',
  unanswered: 'A warning must wait on another line that runs: alerts.e2e.ts.',
  'unanswered-go': 'A warning must wait on another line that runs: alerts.e2e.ts.',
  'unanswered-show': 'A warning must wait on another line that runs: alerts.e2e.ts.',
  'stays-${tagOf(person)}':
    'Tablets that were apart must each have taken the other one’s last engineer away.',
  'guide-again-${guide}': 'A guide must have been gone through: guide.e2e.ts.',
  lacks: 'The browser must lack something: npm run engines tells what Firefox and WebKitGTK lack.',
  'label-picture': 'A line must keep pictures and a label be read by camera: pictures.e2e.ts.',
  'picture-open': 'A line must keep pictures: pictures.e2e.ts.',
  'label-picture-none': 'Another tablet must have kept a picture that the server does not have.',
  'export-pictures': 'A line must keep pictures and a label be read by camera: pictures.e2e.ts.',
  'no-key': 'The browser must be one that can make no key.',
  behind: 'A tablet must wait for the history behind the bootstrap snapshot of another one.',
  'log-behind': 'A tablet must wait for the history behind the bootstrap snapshot of another one.',
  'next-none':
    'Of another tablet’s entries, those up to a new line must have come, and not yet that of its first product.',
  aside: 'The server must hold an entry that this version cannot read.',
  'drag-ghost': 'A part must be held while the stop is looked at: board-way.e2e.ts does.',
  'propose-failed': 'The worker that proposes slots must break.',
  'kept-out': 'The server must hand on an entry that is not as its tablet wrote it.',
  'with-stops': 'A machine must have told its stops for an hour: stops-to-come.e2e.ts.',
  'part-away': 'A part of the page must be out of reach: offline.e2e.ts.',
  'part-again': 'A part of the page must be out of reach: offline.e2e.ts.',
  passkey: 'The page must be opened by a name, and the browser have an authenticator: passkeys.e2e.ts.',
  'passkey-add': 'The page must be opened by a name, and the browser have an authenticator: passkeys.e2e.ts.',
  'passkey-remove':
    'The page must be opened by a name, and the browser have an authenticator: passkeys.e2e.ts.',
  'passkey-name':
    'The page must be opened by a name, and the browser have an authenticator: passkeys.e2e.ts.',
  'passkey-make':
    'The page must be opened by a name, and the browser have an authenticator: passkeys.e2e.ts.',
  'use-passkey': 'The page must be opened by a name, and the browser have an authenticator: passkeys.e2e.ts.',
};

/** Ids that come and go by themselves while something is done: a stop may show them or not. */
export const passing: Readonly<Record<string, string>> = {
  reading: 'A sheet is being read.',
  proposing: 'Slots are being looked for.',
};

/** Dialogs whose file has no test id of its own, each with the stop that shows it. */
export const dialogStops: Readonly<Record<string, string>> = {
  'src/app/frame/QuestionDialog.tsx': 'question: is it the feeder',
  'src/app/screens/plant/labels/ApproveDialog.tsx': 'label, approved',
};

/** One test id as the source writes it. */
interface Declared {
  readonly id: string;
  readonly file: string;
  readonly pattern: RegExp;
}

/** Every test id in the source of the screens, the frame and the widgets. */
export function declaredIds(): readonly Declared[] {
  return views().flatMap(({ file, source }) =>
    [...source.matchAll(/(data-testid|testId)=(?:"([^"]+)"|\{`([^`]+)`\})/g)].map(
      ([, by, plain, template]) => {
        const id = plain ?? template ?? '';
        // What is handed to a widget may be the beginning of its parts' ids.
        const end = by === 'testId' ? '(-.+)?' : '';
        const parts = id.split(/\$\{[^}]*\}/).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
        return { id, file, pattern: new RegExp(`^${parts.join('.+')}${end}$`) };
      },
    ),
  );
}

/** What is wrong between the source and the tour. */
export function gaps({ ids, stops }: Stops): readonly string[] {
  const declared = declaredIds();
  const met = ({ pattern }: Declared) => [...ids].some((id) => pattern.test(id));
  const known = new Set(declared.map(({ id }) => id));
  const dialogs = views().filter(
    ({ file, source }) => /<Dialog\b/.test(source) && !file.endsWith('ui/Dialog.tsx'),
  );
  return [
    ...declared
      .filter((each) => !met(each) && !(each.id in notMet) && !(each.id in passing))
      .map(({ id, file }) => `no stop shows "${id}" of ${file}`),
    ...Object.keys(notMet)
      .filter((id) => !known.has(id) || declared.some((each) => each.id === id && met(each)))
      .map((id) => `"${id}" is said not to be met, and is met or gone`),
    ...Object.keys(passing)
      .filter((id) => !known.has(id))
      .map((id) => `"${id}" is said to pass, and is gone`),
    ...dialogs
      .filter(({ file }) => !declared.some((each) => each.file === file))
      .filter(({ file }) => !stops.includes(dialogStops[file] ?? ''))
      .map(({ file }) => `no stop shows the dialog of ${file}`),
  ];
}

// A file on its way out of the app. In practice none leaves: one of made-up entries looks like any other.

import type { App } from './app.ts';
import { saveFile } from './device/save-file.ts';
import { practiceWords } from './words/practice.ts';
import { say } from './words/words.ts';

/** Saves the file, but not in practice. */
export function leave(app: Pick<App, 'practice'>, name: string, blob: Blob): void {
  if (app.practice === null) saveFile(name, blob);
}

/** What the person is told of it: `saved`, or in practice that no file was. */
export function toldOf(app: Pick<App, 'practice'>, name: string, saved: string): string {
  return app.practice === null ? saved : say(practiceWords).notSaved(name);
}

/** Saves the file, which the browser tells by itself; in practice tells that none was saved. */
export function letOut(app: Pick<App, 'practice' | 'notice'>, name: string, blob: Blob): void {
  leave(app, name, blob);
  if (app.practice !== null) app.notice.value = { tone: 'plain', text: toldOf(app, name, '') };
}

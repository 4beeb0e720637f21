// When this tablet calls out, and how: only from the real line, not from a screen that hangs on a wall, not in quiet hours; sound may be off.

import type { App } from './app.ts';
import type { AlarmSettings } from './device/alarm.ts';
import { isQuiet } from './device/quiet.ts';

/** What the alarm of an app asks at each call; quiet hours are those of the tablet's own clock. */
export function mayCallHere({
  practice,
  isScreen,
  preferences,
  clock,
}: Pick<App, 'practice' | 'isScreen' | 'preferences' | 'clock'>): AlarmSettings {
  return {
    mayCall: () =>
      practice === null && !isScreen && !isQuiet(preferences.peek().quiet, new Date(clock.nowMs())),
    hasSound: () => preferences.peek().sound,
  };
}

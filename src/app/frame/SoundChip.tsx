// Warnings of this tablet cannot be heard yet: one touch unlocks the sound, and plays it.

import type { Alarm } from '../device/alarm.ts';
import { Icon } from '../ui/Icon.tsx';
import { warningWords } from '../words/warning.ts';
import { say } from '../words/words.ts';

export function SoundChip({ alarm }: { readonly alarm: Alarm }) {
  const words = say(warningWords);
  return (
    <button
      type="button"
      class="chip care find sound"
      title={words.noSound}
      aria-label={words.noSound}
      onClick={alarm.test}
      data-testid="sound-locked"
    >
      <Icon name="mute" size={20} />
    </button>
  );
}

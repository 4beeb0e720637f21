// A reel's floor life in a few words, and whether it needs somebody's eye.

import type { Exposure } from '../../../shared/floor/exposure.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { hotBakeLimitHours } from '../../../shared/moisture/bake.ts';
import {
  bakeLet,
  type LifeAsked,
  type OpenBake,
  openBake,
  type ReelLife,
  reelLife,
} from '../../../shared/moisture/reel-life.ts';
import { moistureWords } from './moisture.ts';
import { formatDay, formatNumber, formatSpan, say } from './words.ts';

/** Less than this left is shown as something to mind: a shift and the way there, our own choice. */
const SHORT_SECONDS = 12 * 3600;

/** The words; `tone` null where nobody need mind. */
export interface LifeText {
  readonly text: string;
  readonly tone: 'care' | 'stop' | null;
}

/** Says what is left of a floor life. `zone`: the plant's. */
export function lifeText(life: ReelLife, exposure: Exposure | undefined, zone: string): LifeText {
  const words = say(moistureWords);
  const air = exposure?.periods.at(-1)?.air;
  const level = words.level(life.level);
  // A bake counts as told; one that the table calls too short is said with all that follows from it.
  const isShort = life.notes.some(({ code }) => code === 'bakeShort');
  const told = (text: string, tone: LifeText['tone'] = null): LifeText =>
    isShort
      ? { text: `${level} · ${text}, ${words.bakeShort}`, tone: tone ?? 'care' }
      : { text: `${level} · ${text}`, tone };
  if (life.hotBakeHours > hotBakeLimitHours && life.leftSeconds !== 0)
    return told(words.hotOver(formatNumber(Math.round(life.hotBakeHours))), 'care');
  if (life.wantsLabelTime && air !== 'bake') return told(words.labelTime, 'stop');
  if (life.leftSeconds === 0) {
    if (air === 'bake') return told(words.baking, 'care');
    return told(
      life.expiresMs === null ? words.over : words.overSince(formatDay(life.expiresMs, zone)),
      'stop',
    );
  }
  if (life.leftSeconds === null) return told(words.noLimit);
  const span = formatSpan(life.leftSeconds);
  if (!life.isOpened) return told(words.unopened(span));
  if (air === 'bake') return told(words.baking);
  if (!life.running || life.expiresMs === null) return told(`${words.left(span)}, ${words.dry}`);
  const tone = life.leftSeconds < SHORT_SECONDS ? 'care' : null;
  return told(words.leftUntil(span, formatDay(life.expiresMs, zone)), tone);
}

/** The same of a reel of the log, with the bake that a lead may still let count; null where there is none. */
export interface ReelLifeText extends LifeText {
  readonly bake: OpenBake | null;
}

/** The words for a reel of the log; null where its parts bear any time out of the bag. */
export function reelLifeText(
  floor: FloorState,
  reel: string,
  more: LifeAsked & { readonly zone: string },
): ReelLifeText | null {
  const life = reelLife(floor, reel, more);
  if (life === null) return null;
  const exposure = floor.exposures.get(reel);
  const told = lifeText(life, exposure, more.zone);
  const by = bakeLet(exposure, life, more.nowMs)?.by;
  const lead = by === undefined ? '' : `, ${say(moistureWords).bakeLet(floor.people.get(by)?.name ?? by)}`;
  return { tone: told.tone, text: told.text + lead, bake: openBake(exposure, life, more.nowMs) };
}

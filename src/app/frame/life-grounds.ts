// On what a reel's floor life rests, in words: class, climate, edition, and whether the value was compared with a copy; and what a bake must be.

import type { MoistureRuling } from '../../../shared/floor/moisture-rules.ts';
import { bakeOptions, hotBakeLimitHours } from '../../../shared/moisture/bake.ts';
import { isLargeOrStacked } from '../../../shared/moisture/package.ts';
import type { PartMoistureKnown, ReelLife } from '../../../shared/moisture/reel-life.ts';
import { SHIPPED_EDITION, type ValueSource, weakestSource } from '../../../shared/moisture/values.ts';
import { moistureWords } from '../words/moisture.ts';
import { formatNumber, say } from '../words/words.ts';

/** The edition that a value is of: the plant's own copy, or the shipped one; with how well it is known. */
export function sayEdition(source: ValueSource, ruling: MoistureRuling | null): string {
  const words = say(moistureWords);
  const edition = source === 'own' ? (ruling?.ruled.edition ?? '') : SHIPPED_EDITION;
  return edition === '' ? words.sources[source] : `${edition}, ${words.sources[source]}`;
}

/**
 * Sentences on what a floor life rests; the first names class, climate and edition. Level 6 rests on its label alone, which is asked for beside
 * them.
 */
export function lifeGrounds(life: ReelLife, ruling: MoistureRuling | null): readonly string[] {
  const words = say(moistureWords);
  const { packageClasses: classes, climate, hotBakeHours } = life;
  const told: string[] = [];
  if (life.level !== '6') {
    told.push(words.restsOn({ ...climate, classes, edition: sayEdition(life.source, ruling) }));
    if (classes.length > 1) told.push(words.classOpen);
  }
  if (hotBakeHours > 0)
    told.push(
      `${words.hotSoFar(formatNumber(Math.round(hotBakeHours * 10) / 10), formatNumber(hotBakeLimitHours))} (${words.hotLimit})`,
    );
  return told;
}

/** What the table asks of a bake of this reel now; empty where it has no row. */
export function bakeGrounds(
  life: ReelLife,
  part: PartMoistureKnown | null,
  ruling: MoistureRuling | null,
): readonly string[] {
  const words = say(moistureWords);
  const { level, exceededSeconds } = life;
  const isLarge = isLargeOrStacked(life.package);
  const options = bakeOptions({
    level,
    thicknessMm: part?.bodyMm ?? null,
    exceededSeconds,
    isLarge,
    own: ruling,
  });
  if (options === null) return [];
  const listed = options.map(({ hours, celsius }) => words.bakeOption(formatNumber(hours), celsius));
  const source = sayEdition(weakestSource(options.map((option) => option.source)), ruling);
  const told = [words.bakeAdvice({ options: listed.join(` ${words.or} `), source })];
  return isLarge && life.package.family === null ? [...told, words.bakeLarge] : told;
}

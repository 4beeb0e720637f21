// How the shipped templates are written down: a step with its texts, and the cautions that several steps share.

import type {
  ChecklistStep,
  KnownFact,
  ScanWant,
  StepCondition,
  StepKind,
  StepTime,
} from '../floor/checklist.ts';
import type { Role } from '../floor/vocabulary.ts';

/** A text in the languages that ship. */
export type Words = readonly [en: string, es: string];

/** What a step asks beyond its text. */
export interface Extra {
  readonly condition?: StepCondition;
  readonly optional?: boolean;
  readonly caution?: Words;
  readonly least?: number;
  readonly most?: number;
  readonly unit?: string;
  readonly expects?: string;
  readonly options?: readonly string[];
  readonly right?: readonly string[];
  readonly signatures?: number;
  /** The least role of each who signs. */
  readonly roles?: readonly Role[];
  readonly wants?: ScanWant;
  readonly knows?: KnownFact;
}

const texts = ([en, es]: Words) => ({ en, es });

/** One step of a shipped template. */
export function step(
  group: Words,
  name: string,
  asks: readonly [StepKind, StepTime, Words],
  extra: Extra = {},
): ChecklistStep {
  const [kind, time, words] = asks;
  return {
    step: name,
    group: texts(group),
    text: texts(words),
    caution: extra.caution ? texts(extra.caution) : null,
    kind,
    time,
    condition: extra.condition ?? 'always',
    mandatory: !extra.optional,
    least: extra.least ?? null,
    most: extra.most ?? null,
    unit: extra.unit ?? null,
    expects: extra.expects ?? null,
    options: [...(extra.options ?? [])],
    right: [...(extra.right ?? [])],
    signatures: extra.roles?.length ?? extra.signatures ?? 1,
    ...(extra.roles === undefined ? {} : { roles: [...extra.roles] }),
    ...(extra.wants === undefined ? {} : { wants: extra.wants }),
    ...(extra.knows === undefined ? {} : { knows: extra.knows }),
  };
}

/** A caution that several steps share. */
export const hands: Words = [
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.',
  'Pare la máquina y espere a que nada se mueva antes de abrir una cubierta o meter la mano. Siga la regla local de bloqueo.',
];
/** A caution that several steps share. */
export const blades: Words = [
  'Blades and tape cutters cut: keep fingers out and cut away from you.',
  'Las cuchillas cortan: aparte los dedos y corte hacia fuera.',
];
/** A caution that several steps share. */
export const paste: Words = [
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.',
  'Guantes con la pasta, nada de comida, lávese las manos después. Lea la ficha de seguridad.',
];
/** A caution that several steps share. */
export const still: Words = [
  'Wear the wrist strap or the right shoes: parts are sensitive to static.',
  'Lleve la muñequera o el calzado adecuado: los componentes son sensibles a la estática.',
];

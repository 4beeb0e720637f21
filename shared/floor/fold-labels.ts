// From entries to the site's rules for labels: the newest version of each that was not withdrawn.
// An older version that comes in late changes nothing; two tablets that taught the same version end with the later one.

import type { LabelRule } from '../labels/rules.ts';
import type { EntryOf } from './kinds.ts';
import type { FloorState } from './state.ts';

/** Applies one entry to the rules for labels. */
export function foldLabels(state: FloorState, entry: EntryOf<'label.taught' | 'label.withdrawn'>): void {
  if (entry.kind === 'label.withdrawn') {
    state.labelRules.delete(entry.payload.rule);
    return;
  }
  const { rule, definition, by } = entry.payload;
  const there = state.labelRules.get(rule);
  if (there && there.rule.version > definition.version) return;
  state.labelRules.set(rule, { rule: { ...definition, rule }, by, atMs: entry.hlc.ms });
}

/** The site's rules, in the order of their names, as the reader of labels wants them. */
export function siteRules(state: FloorState): readonly LabelRule[] {
  return [...state.labelRules.values()].map(({ rule }) => rule).sort((a, b) => (a.rule < b.rule ? -1 : 1));
}

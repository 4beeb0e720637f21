// Labels to practise with, made for the line as it is: each promises a verdict, so that every answer of the app can be tried
// with a tap or a scan of the printed sheet. A promise is checked by test against the app's own reader and verdict.

import type { SetupSlot } from '../shared/floor/kinds.ts';
import { setupProgress } from '../shared/floor/progress.ts';
import type { FloorState } from '../shared/floor/state.ts';
import { type DueSlot, dueSlots } from './due.ts';
import { carts, type Practice, type PracticeLabel, type PracticeScene } from './practice-label.ts';
import { createMaker, held, noted, refused } from './practice-reels.ts';
import { dialects } from './reels.ts';

/** Reels for slots that run out soon: as many as this. */
const DUE_REELS = 6;

/** All practice labels for the line as it is. What the line's setup offers no case for is left out. */
export function practiceLabels(scene: PracticeScene): readonly Practice[] {
  const due = dueSlots(scene.state, scene.line);
  const missing = setupProgress(scene.state, scene.line).slots.filter((slot) => slot.phase === 'missing');
  const splices = due.slice(0, DUE_REELS);
  const feeders = loadFeeders(
    scene.state,
    missing.map((slot) => slot.wanted),
  );
  const reels = createMaker(scene);
  return [
    ...splices.map((slot, index) =>
      reels.right(slot.wanted, { act: 'splice', dialect: dialects[index % 3] ?? 'envelope' }),
    ),
    ...missing.map(({ wanted }, index) =>
      reels.right(wanted, {
        act: 'load',
        dialect: dialects[(index + 1) % 3] ?? 'words',
        feeder: feeders[index] ?? null,
      }),
    ),
    ...noted(reels, due),
    ...held(reels, scene, due),
    ...refused(reels, scene, due),
    ...placeLabels([...splices.map((slot) => slot.wanted), ...missing.map((slot) => slot.wanted)], due),
    ...feederLabels(scene.state, feeders),
    ...cartLabels(scene.state),
    ...peopleLabels(scene.state),
    ...panelLabels(scene),
  ];
}

function plain(
  id: string,
  group: PracticeLabel['group'],
  shown: { title: string; hint: string; text: string },
): Practice {
  const { title, hint, text } = shown;
  return { label: { id, group, title, hint, codes: [{ text, format: 'Code128' }] }, promise: null };
}

function placeLabels(wanted: readonly SetupSlot[], due: readonly DueSlot[]): Practice[] {
  const all = new Map([...wanted, ...due.map((slot) => slot.wanted)].map((slot) => [slot.slot, slot]));
  return [...all.values()].map((slot) =>
    plain(`slot-${slot.slot}`, 'Slots', { title: slot.slot, hint: `Wants ${slot.part}`, text: slot.slot }),
  );
}

/** A free feeder for each slot that is to be loaded. */
function loadFeeders(state: FloorState, wanted: readonly SetupSlot[]): readonly string[] {
  const used = new Set([...state.slots.values()].map((slot) => slot.feeder));
  return wanted.flatMap((slot) => {
    for (const feeder of state.feeders.values()) {
      const fits = feeder.tapeWidthMm === slot.tapeWidthMm && feeder.pitchesMm.includes(slot.pitchMm ?? 0);
      if (used.has(feeder.feeder) || !fits) continue;
      used.add(feeder.feeder);
      return [feeder.feeder];
    }
    return [];
  });
}

function feederLabels(state: FloorState, fitting: readonly string[]): Practice[] {
  const used = new Set([...fitting, ...[...state.slots.values()].map((slot) => slot.feeder ?? '')]);
  const free = [...state.feeders.values()].filter((feeder) => !used.has(feeder.feeder));
  const old = free.find((feeder) => feeder.pitchesMm.length === 1);
  const wide = free.find((feeder) => feeder.tapeWidthMm === 24);
  const loaded = [...state.slots.values()].find((slot) => slot.feeder !== null);
  const shown = fitting.map((feeder) => ({
    feeder,
    hint: `Free, ${state.feeders.get(feeder)?.tapeWidthMm ?? '?'} mm`,
  }));
  if (old) shown.push({ feeder: old.feeder, hint: `Free, 8 mm, steps ${old.pitchesMm.join(' / ')} mm only` });
  if (wide) shown.push({ feeder: wide.feeder, hint: 'Free, 24 mm: too wide for small parts' });
  if (loaded?.feeder) shown.push({ feeder: loaded.feeder, hint: `Stands on ${loaded.slot}` });
  shown.push({ feeder: 'F-9999', hint: 'Nobody knows this feeder: a lead must decide' });
  return shown.map(({ feeder, hint }) =>
    plain(`feeder-${feeder}`, 'Feeders', { title: feeder, hint, text: feeder }),
  );
}

function cartLabels(state: FloorState): Practice[] {
  return carts.map((cart) => {
    const count = state.carts.get(cart)?.size ?? 0;
    const hint =
      count === 0 ? 'Empty: fill it under Change, Make ready' : `Carries ${count}: scan it in Change to dock`;
    return plain(`cart-${cart}`, 'Carts', { title: cart, hint, text: cart });
  });
}

function peopleLabels(state: FloorState): Practice[] {
  return [...state.people.values()].map(({ person, name, role, badge }) =>
    plain(`badge-${person}`, 'Badges', {
      title: name,
      hint: `${role}, PIN ${badge.replace(/\D/g, '')}`,
      text: badge,
    }),
  );
}

function panelLabels(scene: PracticeScene): Practice[] {
  const run = scene.state.runs.get(scene.state.current.get(scene.line) ?? '');
  if (!run?.panelPrefix) return [];
  return [1, 2, 3].map((step) => {
    const serial = `${run.panelPrefix}${String(run.done + step).padStart(4, '0')}`;
    return plain(`panel-${step}`, 'Panels', { title: serial, hint: 'Counts one panel', text: serial });
  });
}

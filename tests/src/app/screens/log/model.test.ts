// Who acted, as the list says it: a person, the tablet itself, the machine, or somebody whom the tablet did not know.

import { describe, expect, test } from 'vitest';
import { actorOf } from '../../../../../src/app/screens/log/model.ts';
import { beginStory, tellPlant, verified } from '../../../../shared/floor/story.ts';

describe('actorOf()', () => {
  test('names the tablet where the app wrote by itself', () => {
    const story = beginStory();
    const entry = story.tell('tablet.opened', { name: 'T', app: '1', key: null, previous: null });
    expect(actorOf({ ...entry, who: null })).toBe('tablet');
    const due = '2026-03-02T06:00:00+01:00';
    const warning = { line: 'L1', slot: 'M1-F-001', need: 'run-out', level: 'soon', due } as const;
    expect(actorOf({ ...entry, kind: 'warning.raised', payload: warning, who: null })).toBe('tablet');
  });

  test('names the machine where the machine told, and nobody where a person acted unknown', () => {
    const story = beginStory();
    tellPlant(story);
    const entry = story.tell('reel.verified', verified('M1-F-001', 'R-100'));
    expect(actorOf({ ...entry, who: null })).toBe('nobody');
    expect(actorOf({ ...entry, who: 'ana' })).toEqual({ person: 'ana' });
    const counted = { ...entry, kind: 'panels.counted', payload: { via: 'machine' }, who: null };
    expect(actorOf(counted)).toBe('machine');
  });
});

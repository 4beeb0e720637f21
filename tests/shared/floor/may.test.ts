// Who may do what: the whole table, role by role, and why not.

import { describe, expect, test } from 'vitest';
import { type Act, actRoles, mayDo } from '../../../shared/floor/may.ts';
import type { Person } from '../../../shared/floor/state.ts';
import { isAtLeast, roles } from '../../../shared/floor/vocabulary.ts';

const person = (role: Person['role']): Person => ({ person: 'p', name: 'Ana', role, badge: 'B1', pin: null });
const acts = Object.keys(actRoles) as Act[]; // Object.keys forgets the key type

describe('mayDo()', () => {
  test('says yes from the act’s role on, and names that role to whoever is below', () => {
    for (const act of acts) {
      const needs = actRoles[act];
      for (const role of roles) {
        const enough = needs === null || roles.indexOf(role) >= roles.indexOf(needs);
        expect(mayDo(act, person(role), true), `${act} as ${role}`).toEqual(
          enough ? { may: true } : { may: false, why: 'role', needs },
        );
      }
    }
  });

  test('asks for somebody to sign in, except to look', () => {
    expect(mayDo('look', null, true)).toEqual({ may: true });
    expect(mayDo('verify-reel', null, true)).toEqual({
      may: false,
      why: 'nobody-signed-in',
      needs: 'operator',
    });
    expect(mayDo('clear-hold', null, true)).toEqual({ may: false, why: 'nobody-signed-in', needs: 'lead' });
  });

  test('lets everybody do everything in a plant that knows no people yet', () => {
    for (const act of acts) expect(mayDo(act, null, false)).toEqual({ may: true });
  });

  test('keeps from operators what a lead answers for', () => {
    for (const act of [
      'clear-hold',
      'settle-conflict',
      'block-material',
      'export-log',
      'enrol-tablet',
    ] as const)
      expect(mayDo(act, person('operator'), true).may, act).toBe(false);
  });
});

test('`isAtLeast()` grows from operator over lead to engineer', () => {
  expect(roles.map((role) => roles.map((needed) => isAtLeast(role, needed)))).toEqual([
    [true, false, false],
    [true, true, false],
    [true, true, true],
  ]);
});

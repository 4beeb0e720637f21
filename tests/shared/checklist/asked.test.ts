// What the shipped checklists ask, step by step, as an engineer would read them from a sheet of paper. What was opened with a version is read
// by that version, so a step that asks otherwise needs a new version beside the old one (`shippedBefore`); texts may be said better meanwhile.
// Which steps need the line to stand follows SMED (Shingo 1985, from memory); the limits are common practice, to be edited to the site's own.

import { expect, test } from 'vitest';
import { shippedChecklists } from '../../../shared/checklist/shipped.ts';
import { shippedBefore } from '../../../shared/checklist/shipped-before.ts';
import { step as shippedStep } from '../../../shared/checklist/shipped-words.ts';
import type { ChecklistStep, ChecklistTemplate } from '../../../shared/floor/checklist.ts';

/** What a step asks, on one line; what every step has unless it says otherwise (always asked, must be done) is left out. */
function lineOf(step: ChecklistStep): string {
  const { least, most, unit } = step;
  return [
    step.step,
    step.kind,
    step.time === 'stopped' ? '■' : '▶',
    step.condition === 'always' ? '' : step.condition,
    step.mandatory ? '' : 'may be left',
    least === null && most === null ? '' : `${least ?? ''}–${most ?? ''} ${unit}`,
    step.options.length === 0 ? '' : `of ${step.options}: ${step.right}`,
    step.kind === 'sign' ? `${step.signatures} sign` : '',
    step.roles?.join('+') ?? '',
    step.wants ?? '',
    step.knows ?? '',
  ]
    .filter((part) => part !== '')
    .join(' ');
}

const told = ({ template, version, steps }: ChecklistTemplate) => [
  `${template} ${version}`,
  ...steps.map(lineOf),
];
const linesOf = (text: string) =>
  text
    .trim()
    .split('\n')
    .map((line) => line.trim());

/** ▶ beside the running line, ■ while it stands. */
const changeover = linesOf(`
  changeover 2
  documents tick ▶
  reels-pulled tick ▶
  carts-verified tick ▶
  paste-warm tick ▶ product-changes
  stencil-fetched scan ▶ stencil-changes stencil
  count-closed note ■
  panels-out tick ■
  bins-empty tick ■
  labels-out tick ■ product-changes
  stencil-in scan ■ stencil-changes stencil
  squeegee tick ■
  paste-lot scan ■ paste
  print-height measure ■ 80–180 µm
  feeders-done known ■ moves
  slots-verified known ■ slots
  feeders-seated tick ■
  look-alikes sign ■ 2 sign operator+operator
  floor-life tick ■
  rail-width measure ■ product-changes 0.3–1 mm
  pins tick ■ side-changes
  program note ■ program-changes
  oven choice ■ of yes,no: yes
  inspection tick ■ program-changes
  first-placed tick ■
  first-measured known ■ first-panel
  first-picture photo ■ may be left
  released sign ■ 2 sign operator+lead`);
const splice = linesOf(`
  splice 1
  verified tick ▶
  leader-off tick ▶
  cut-square tick ▶
  joined tick ▶
  same-way tick ▶
  watched tick ▶ may be left`);
const exchange = linesOf(`
  exchange 1
  stands tick ▶
  verified tick ▶
  same-way tick ▶
  locked tick ▶
  watched tick ▶ may be left`);
const shift = linesOf(`
  shift-start 2
  handover note ▶
  static tick ▶
  static-strap measure ▶ may be left –35 MΩ
  static-shoes measure ▶ may be left –1000 MΩ
  guards tick ▶
  sweep tick ▶
  paste-age tick ▶
  climate measure ▶ may be left 30–60 % RH
  sound tick ▶`);

test('what ships asks these steps, in this order', () => {
  expect(shippedChecklists.map(told)).toEqual([changeover, splice, exchange, shift]);
});

test('the versions before asked these: any two signed, a tick stood for what is known today, one limit was for strap and shoes', () => {
  const asTick = (line: string) => line.replace(/ known ■.*/, ' tick ■');
  const before = changeover
    .filter((line) => !line.startsWith('slots-verified'))
    .map((line) => asTick(line).replace(/ (operator\+.*|stencil|paste)$/, ''));
  expect(before).toContain('released sign ■ 2 sign');
  expect(before).toContain('paste-lot scan ■');
  expect(before).toContain('feeders-done tick ■');
  expect(shippedBefore.map(told)).toEqual([
    ['changeover 1', ...before.slice(1)],
    [
      'shift-start 1',
      ...shift
        .slice(1)
        .filter((line) => !line.startsWith('static-'))
        .map((line) => (line === 'static tick ▶' ? 'static measure ▶ –35 MΩ' : line)),
    ],
  ]);
});

test('a step as it is written down: what is not said is always asked, must be done, and one person signs', () => {
  const asks = (kind: ChecklistStep['kind'], extra?: Parameters<typeof shippedStep>[3]) =>
    lineOf(shippedStep(['Group', 'Grupo'], 'a', [kind, 'stopped', ['Do it', 'Hágalo']], extra));
  expect(asks('tick')).toBe('a tick ■');
  expect(asks('sign')).toBe('a sign ■ 1 sign');
  expect(asks('sign', { signatures: 3 })).toBe('a sign ■ 3 sign');
  expect(asks('sign', { roles: ['operator', 'lead'] })).toBe('a sign ■ 2 sign operator+lead');
});

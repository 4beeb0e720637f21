// The English sentences: what the first screen says is here at once, the rest is fetched by area. Other languages are typed from them.

import { words as line } from './line.ts';
import { words as shell } from './shell.ts';
import { words as sync } from './sync.ts';

export const first = { line, shell, sync };

export const later = {
  camera: () => import('./camera.ts'),
  change: () => import('./change.ts'),
  checklist: () => import('./checklist.ts'),
  clock: () => import('./clock.ts'),
  count: () => import('./count.ts'),
  demo: () => import('./demo.ts'),
  'feeder-types': () => import('./feeder-types.ts'),
  'first-panel': () => import('./first-panel.ts'),
  held: () => import('./held.ts'),
  'in-line': () => import('./in-line.ts'),
  kit: () => import('./kit.ts'),
  'label-warnings': () => import('./label-warnings.ts'),
  load: () => import('./load.ts'),
  log: () => import('./log.ts'),
  'log-facts': () => import('./log-facts.ts'),
  moisture: () => import('./moisture.ts'),
  'open-work': () => import('./open-work.ts'),
  order: () => import('./order.ts'),
  packages: () => import('./packages.ts'),
  parts: () => import('./parts.ts'),
  people: () => import('./people.ts'),
  plant: () => import('./plant.ts'),
  practice: () => import('./practice.ts'),
  refusal: () => import('./refusal.ts'),
  scanner: () => import('./scanner.ts'),
  server: () => import('./server.ts'),
  sheet: () => import('./sheet.ts'),
  'sheet-problems': () => import('./sheet-problems.ts'),
  stock: () => import('./stock.ts'),
  teach: () => import('./teach.ts'),
  template: () => import('./template.ts'),
  times: () => import('./times.ts'),
  trace: () => import('./trace.ts'),
  verdict: () => import('./verdict.ts'),
  warning: () => import('./warning.ts'),
  week: () => import('./week.ts'),
};

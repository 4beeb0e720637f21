// The Spanish sentences: what the first screen says is here at once, the rest is fetched by area.

import type { Pack } from '../areas.ts';
import { words as shell } from './shell.ts';

export const first: Pack['first'] = { shell };

export const later: Pack['later'] = {
  camera: () => import('./camera.ts'),
  change: () => import('./change.ts'),
  checklist: () => import('./checklist.ts'),
  clock: () => import('./clock.ts'),
  count: () => import('./count.ts'),
  demo: () => import('./demo.ts'),
  'feeder-types': () => import('./feeder-types.ts'),
  dock: () => import('./dock.ts'),
  'first-panel': () => import('./first-panel.ts'),
  held: () => import('./held.ts'),
  'in-line': () => import('./in-line.ts'),
  kit: () => import('./kit.ts'),
  'label-warnings': () => import('./label-warnings.ts'),
  line: () => import('./line.ts'),
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
  stations: () => import('./stations.ts'),
  stock: () => import('./stock.ts'),
  sync: () => import('./sync.ts'),
  teach: () => import('./teach.ts'),
  template: () => import('./template.ts'),
  times: () => import('./times.ts'),
  trace: () => import('./trace.ts'),
  verdict: () => import('./verdict.ts'),
  warning: () => import('./warning.ts'),
  week: () => import('./week.ts'),
};

// The table of commands: one line each, loaded only when called so that `label` does not pay for a database driver.

import type { Command } from './command.ts';

/** Command name to the module that holds it. */
export const commandLoaders: Readonly<Record<string, () => Promise<Command>>> = {
  label: async () => (await import('./commands/label.ts')).command,
  value: async () => (await import('./commands/value.ts')).command,
  floorlife: async () => (await import('./commands/floorlife.ts')).command,
  sheet: async () => (await import('./commands/sheet.ts')).command,
  log: async () => (await import('./commands/log.ts')).command,
  serve: async () => (await import('./commands/serve.ts')).command,
  link: async () => (await import('./commands/link.ts')).command,
  demo: async () => (await import('./commands/demo.ts')).command,
  forecast: async () => (await import('./commands/forecast.ts')).command,
  rounds: async () => (await import('./commands/rounds.ts')).command,
  /** The operator's word for the same thing. */
  walks: async () => (await import('./commands/rounds.ts')).command,
  count: async () => (await import('./commands/count.ts')).command,
  changeover: async () => (await import('./commands/changeover.ts')).command,
  order: async () => (await import('./commands/order.ts')).command,
  assign: async () => (await import('./commands/assign.ts')).command,
  company: async () => (await import('./commands/company.ts')).command,
  plant: async () => (await import('./commands/plant.ts')).command,
  trace: async () => (await import('./commands/trace.ts')).command,
};

import { area, plural } from './words.ts';

/** The warning above every screen. */
export const warningWords = area({
  en: {
    soon: (span: string, clock: string) => `runs out in ${span}, about ${clock}. Bring the next reel.`,
    due: (span: string, clock: string) => `can be spliced now; runs out in ${span}, about ${clock}.`,
    late: (_span: string, clock: string) => `is past its splice window; the tape ends about ${clock}.`,
    over: (clock: string, span: string) => `should have run out at ${clock}, ${span} ago. Go and look.`,
    ifPace: 'Nobody counts: if it kept its pace.',
    ifStarts: 'If it starts again now.',
    backup: (slot: string) => `Then ${slot} feeds, so the line does not stop yet.`,
    more: (count: number) => plural(count, '1 more waits.', `${count} more wait.`),
    show: 'Show',
    acknowledge: 'I go',
  },
  es: {
    soon: (span, clock) => `se acaba en ${span}, sobre las ${clock}. Traiga la bobina siguiente.`,
    due: (span, clock) => `se puede empalmar ya; se acaba en ${span}, sobre las ${clock}.`,
    late: (_span, clock) => `pasó su ventana de empalme; la cinta acaba sobre las ${clock}.`,
    over: (clock, span) => `debía acabarse a las ${clock}, hace ${span}. Vaya a ver.`,
    ifPace: 'Nadie cuenta: si mantuvo su ritmo.',
    ifStarts: 'Si arranca ahora.',
    backup: (slot) => `Después alimenta ${slot}: la línea aún no para.`,
    more: (count) => plural(count, 'Espera 1 más.', `Esperan ${count} más.`),
    show: 'Ver',
    acknowledge: 'Voy',
  },
});

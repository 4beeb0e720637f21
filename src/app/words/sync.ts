import { area, plural } from './words.ts';

/** How sync stands, in a few words for the top bar, and why it does not go on. */
export const syncWords = area({
  en: {
    live: 'In step with the server',
    syncing: 'Syncing…',
    toSend: (count: string) => `${count} to send`,
    unreached: (span: string | null) =>
      span === null ? 'Server not reached' : `Server not reached for ${span}`,
    waits: 'The server asks to wait',
    refused: 'The server says no',
    aside: (count: number) => plural(count, '1 entry kept aside', `${count} entries kept aside`),
  },
  es: {
    live: 'Al día con el servidor',
    syncing: 'Sincronizando…',
    toSend: (count) => `${count} por enviar`,
    unreached: (span) =>
      span === null ? 'Servidor sin respuesta' : `Servidor sin respuesta desde hace ${span}`,
    waits: 'El servidor pide esperar',
    refused: 'El servidor dice que no',
    aside: (count) => plural(count, '1 apunte apartado', `${count} apuntes apartados`),
  },
});

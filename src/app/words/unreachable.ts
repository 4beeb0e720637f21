// The only sentences that come with the page itself, in every language: what stands where no other words could be fetched.

import type { Language } from './words.ts';

export const unreachable: Readonly<Record<Language, { readonly told: string; readonly reload: string }>> = {
  en: {
    told: 'Part of the app could not be loaded. Connect this tablet to the network, then reload.',
    reload: 'Reload',
  },
  es: {
    told: 'No se pudo cargar una parte de la aplicación. Conecte esta tableta a la red y vuelva a cargar.',
    reload: 'Recargar',
  },
};

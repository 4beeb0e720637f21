import { area, plural } from './words.ts';

/** Making ready off the line: pick list and carts. */
export const kitWords = area({
  en: {
    open: 'Pick list and carts',
    list: 'Pick list',
    panels: 'Panels of the next job',
    needed: (count: string) => `${count} parts`,
    short: (count: string) => `${count} short`,
    enough: 'enough',
    onLine: 'on the line already',
    uncounted: (count: number) => plural(count, '1 reel uncounted', `${count} reels uncounted`),
    none: 'no reel known off the line',
    msl: (level: string) => `MSL ${level}: mind the floor life`,
    life: (span: string) =>
      `${span} out of the bag by the standard, full life; time already out is not in the log`,
    shortfalls: (count: number) =>
      plural(count, '1 part is short: tell whoever buys.', `${count} parts are short: tell whoever buys.`),
    carts: 'Carts',
    cart: 'Cart',
    cartHelp: 'Scan or type the cart’s code; then slot, feeder and reel for each place.',
    use: 'Use this cart',
    filling: (cart: string) => `Filling ${cart}`,
    leave: 'Leave the cart',
    wanted: {
      slot: 'Scan the slot it is for',
      feeder: 'Scan the feeder',
      'old-reel': '',
      reel: 'Scan the reel',
    },
    accepted: (slot: string) => `Right: ready for ${slot}.`,
    refused: (why: string) => `Do not put it on: ${why}`,
    held: (why: string) =>
      `Held: ${why}. Set it aside; a lead decides on the Load screen, then it stands on this cart.`,
    twice: (slot: string) => `A cart carries this reel or one for ${slot} already: take it off first.`,
    places: (count: number) => plural(count, '1 place ready', `${count} places ready`),
    empty: 'Take off',
    dock: 'Dock',
    dockable: (count: number) => plural(count, 'loads 1 slot', `loads ${count} slots`),
    blocked: (slots: string) => `Still loaded, take these out first: ${slots}`,
    notStanding: 'Dock once the last panel is built.',
    docked: (cart: string, count: number) =>
      plural(count, `${cart} docked: 1 slot loaded.`, `${cart} docked: ${count} slots loaded.`),
    signIn: 'Scan your badge first.',
  },
  es: {
    open: 'Lista de picking y carros',
    list: 'Lista de picking',
    panels: 'Paneles del siguiente trabajo',
    needed: (count) => `${count} piezas`,
    short: (count) => `faltan ${count}`,
    enough: 'suficiente',
    onLine: 'ya en la línea',
    uncounted: (count) => plural(count, '1 bobina sin contar', `${count} bobinas sin contar`),
    none: 'ninguna bobina conocida fuera de la línea',
    msl: (level) => `MSL ${level}: vigile la vida en planta`,
    life: (span) =>
      `${span} fuera de la bolsa según la norma, vida completa; el tiempo ya gastado no está en el registro`,
    shortfalls: (count) =>
      plural(count, 'Falta 1 componente: avise a compras.', `Faltan ${count} componentes: avise a compras.`),
    carts: 'Carros',
    cart: 'Carro',
    cartHelp: 'Escanee o teclee el código del carro; luego posición, alimentador y bobina de cada sitio.',
    use: 'Usar este carro',
    filling: (cart) => `Llenando ${cart}`,
    leave: 'Dejar el carro',
    wanted: {
      ...{ slot: 'Escanee la posición', feeder: 'Escanee el alimentador' },
      ...{ 'old-reel': '', reel: 'Escanee la bobina' },
    },
    accepted: (slot) => `Correcta: lista para ${slot}.`,
    refused: (why) => `No la ponga: ${why}`,
    held: (why) =>
      `Retenida: ${why}. Apártela; un jefe decide en la pantalla Cargar y entonces queda en este carro.`,
    twice: (slot) => `Un carro ya lleva esta bobina u otra para ${slot}: quítela antes.`,
    places: (count) => plural(count, '1 sitio listo', `${count} sitios listos`),
    empty: 'Quitar',
    dock: 'Acoplar',
    dockable: (count) => plural(count, 'carga 1 posición', `carga ${count} posiciones`),
    blocked: (slots) => `Siguen cargadas, sáquelas antes: ${slots}`,
    notStanding: 'Acople cuando esté hecho el último panel.',
    docked: (cart, count) =>
      plural(
        count,
        `${cart} acoplado: 1 posición cargada.`,
        `${cart} acoplado: ${count} posiciones cargadas.`,
      ),
    signIn: 'Escanee primero su tarjeta.',
  },
});

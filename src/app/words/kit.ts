import { area, plural } from './words.ts';

/** What of a cart does not fit, and the slot that keeps it out. */
interface UnfitFacts {
  readonly thing: string;
  readonly at: string;
}

/** Making ready off the line: pick list and carts. */
export const kitWords = area({
  en: {
    open: 'Pick list and carts',
    list: 'Pick list',
    panels: 'Panels of the next job',
    needed: (count: string) => plural(count, '1 part', `${count} parts`),
    short: (count: string) => `${count} short`,
    enough: 'enough',
    onLine: 'on the line already',
    uncounted: (count: number) => plural(count, '1 reel uncounted', `${count} reels uncounted`),
    none: 'no reel known off the line',
    msl: (level: string) => `MSL ${level}: mind the floor life`,
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
    places: (count: number) => plural(count, '1 place ready', `${count} places ready`),
    empty: 'Take off',
    dock: 'Dock',
    dockTitle: (cart: string) => `Dock ${cart}?`,
    dockCaution:
      'Stop the machine first and wait until everything stands. Keep hands clear of clamp, head and cutter.',
    willLoad: (count: number, product: string) =>
      plural(
        count,
        `1 slot is loaded for ${product}, with the verdict it had:`,
        `${count} slots are loaded for ${product}, with the verdicts they had:`,
      ),
    goesOff: (count: number) =>
      plural(count, 'Stands there now and goes off:', `${count} stand there now and go off:`),
    doesNotFit: (count: number) =>
      plural(count, '1 place does not fit and is left out:', `${count} places do not fit and are left out:`),
    unfit: {
      'feeder-loaded': (f: UnfitFacts) => `Feeder ${f.thing} was put on ${f.at} since.`,
      'reel-loaded': (f: UnfitFacts) => `Reel ${f.thing} was put on ${f.at} since.`,
      neighbour: (f: UnfitFacts) =>
        `Feeder ${f.thing} reaches into the place of ${f.at}. Take one of the two off first.`,
      blocked: (f: UnfitFacts) => `${f.thing} was blocked since. Take it off the cart.`,
    },
    others: (count: number) =>
      plural(
        count,
        '1 place is for another setup and stays.',
        `${count} places are for another setup and stay.`,
      ),
    nothingFits: 'Nothing on this cart can be loaded for this changeover.',
    noChangeover: 'No changeover is open on this line: plan one first.',
    knownCart: (cart: string) => `${cart} is in hand now.`,
    dockable: (count: number) => plural(count, 'loads 1 slot', `loads ${count} slots`),
    notStanding: 'Dock once the last panel is built.',
    docked: (cart: string, count: number) =>
      plural(count, `${cart} docked: 1 slot loaded.`, `${cart} docked: ${count} slots loaded.`),
    signIn: 'Scan your badge first.',
    unknown: (text: string) => `Nobody knows ${text.slice(0, 40)}. To fill a new cart, leave this one first.`,
  },
  es: {
    open: 'Lista de picking y carros',
    list: 'Lista de picking',
    panels: 'Paneles del siguiente trabajo',
    needed: (count) => plural(count, '1 pieza', `${count} piezas`),
    short: (count) => `faltan ${count}`,
    enough: 'suficiente',
    onLine: 'ya en la línea',
    uncounted: (count) => plural(count, '1 bobina sin contar', `${count} bobinas sin contar`),
    none: 'ninguna bobina conocida fuera de la línea',
    msl: (level) => `MSL ${level}: vigile la vida en planta`,
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
    places: (count) => plural(count, '1 sitio listo', `${count} sitios listos`),
    empty: 'Quitar',
    dock: 'Acoplar',
    dockTitle: (cart) => `¿Acoplar ${cart}?`,
    dockCaution:
      'Pare antes la máquina y espere a que todo esté quieto. Manos lejos del anclaje, el cabezal y la cuchilla.',
    willLoad: (count, product) =>
      plural(
        count,
        `Se carga 1 posición para ${product}, con el veredicto que tenía:`,
        `Se cargan ${count} posiciones para ${product}, con los veredictos que tenían:`,
      ),
    goesOff: (count) => plural(count, 'Está ahí ahora y sale:', `${count} están ahí ahora y salen:`),
    doesNotFit: (count) =>
      plural(count, '1 sitio no encaja y queda fuera:', `${count} sitios no encajan y quedan fuera:`),
    unfit: {
      'feeder-loaded': (f) => `El alimentador ${f.thing} se puso entretanto en ${f.at}.`,
      'reel-loaded': (f) => `La bobina ${f.thing} se puso entretanto en ${f.at}.`,
      neighbour: (f) => `El alimentador ${f.thing} invade el sitio de ${f.at}. Quite antes uno de los dos.`,
      blocked: (f) => `${f.thing} se bloqueó entretanto. Quítela del carro.`,
    },
    others: (count) =>
      plural(
        count,
        '1 sitio es para otro montaje y se queda.',
        `${count} sitios son para otro montaje y se quedan.`,
      ),
    nothingFits: 'Nada de este carro se puede cargar para este cambio.',
    noChangeover: 'No hay ningún cambio abierto en esta línea: planee uno antes.',
    knownCart: (cart) => `${cart} está ahora en mano.`,
    dockable: (count) => plural(count, 'carga 1 posición', `carga ${count} posiciones`),
    notStanding: 'Acople cuando esté hecho el último panel.',
    docked: (cart, count) =>
      plural(
        count,
        `${cart} acoplado: 1 posición cargada.`,
        `${cart} acoplado: ${count} posiciones cargadas.`,
      ),
    signIn: 'Escanee primero su tarjeta.',
    unknown: (text) => `Nadie conoce ${text.slice(0, 40)}. Para llenar un carro nuevo, deje antes este.`,
  },
});

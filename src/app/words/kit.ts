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
    short: (count: string) => `${count} more needed`,
    enough: 'enough',
    probably: (chance: string, missing: string) => `probably enough (${chance}): ${missing} more to be sure`,
    readyNow: 'Do this while the line runs',
    readyFetch: (count: number) =>
      count === 0
        ? 'No reels to fetch.'
        : plural(
            count,
            'Fetch reels of 1 part: pick list below.',
            `Fetch reels of ${count} parts: pick list below.`,
          ),
    readyCarts: (count: number) =>
      count === 0
        ? 'Put the next feeders on a cart.'
        : plural(
            count,
            'Put feeders on a cart: 1 place is ready.',
            `Put feeders on a cart: ${count} places are ready.`,
          ),
    readyOpenList: 'Open the checklist: some steps need no stop.',
    readyList: (count: number) =>
      plural(count, 'Checklist: 1 step can be done now.', `Checklist: ${count} steps can be done now.`),
    toChecklist: 'Checklist',
    fetch: (reels: string) => `Fetch ${reels}`,
    stays: (slot: string, count: string) => `stays on ${slot}, ${count}`,
    goesTo: (from: string, to: string, count: string) => `moves from ${from} to ${to}, ${count}`,
    comesOff: (slot: string, count: string) => `spare on ${slot}, ${count}`,
    leftThen: (count: string) => `about ${count} left when this job is done`,
    leftNow: (count: string) => `about ${count} left`,
    onLine: (count: number) =>
      plural(
        count,
        '1 part is on the line: nothing to fetch',
        `${count} parts are on the line: nothing to fetch`,
      ),
    cartFirst: 'Scan or type its code first.',
    leftUnknown: 'not counted',
    maybeShort: 'count it first',
    unsure: (count: number) =>
      plural(
        count,
        '1 part may need more: count its reels.',
        `${count} parts may need more: count their reels.`,
      ),
    uncounted: (count: number) => plural(count, '1 reel not counted', `${count} reels not counted`),
    none: 'no reel found',
    msl: (level: string) => `MSL ${level}: watch the floor life`,
    shortfalls: (count: number) =>
      plural(
        count,
        '1 part needs more than the known reels hold. Fetch more, or tell a lead.',
        `${count} parts need more than the known reels hold. Fetch more, or tell a lead.`,
      ),
    carts: 'Carts',
    cart: 'Cart',
    cartHelp: 'Scan or type the cart’s code. Then scan slot, feeder and reel.',
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
    held: (why: string) => `Held: ${why}. Set it aside. A lead decides on the Load screen.`,
    places: (count: number) => plural(count, '1 place ready', `${count} places ready`),
    empty: 'Take off',
    dock: 'Dock',
    dockTitle: (cart: string) => `Dock ${cart}?`,
    dockCaution:
      'Stop the machine first and wait until nothing moves. Keep hands clear of clamp, head and cutter.',
    willLoad: (count: number, product: string) =>
      plural(count, `1 slot is loaded for ${product}:`, `${count} slots are loaded for ${product}:`),
    goesOff: (count: number) => plural(count, '1 feeder comes off:', `${count} feeders come off:`),
    doesNotFit: (count: number) =>
      plural(count, '1 place does not fit and is left out:', `${count} places do not fit and are left out:`),
    unfit: {
      'feeder-loaded': (f: UnfitFacts) => `Feeder ${f.thing} is now on ${f.at}.`,
      'reel-loaded': (f: UnfitFacts) => `Reel ${f.thing} is now on ${f.at}.`,
      neighbour: (f: UnfitFacts) => `Feeder ${f.thing} overlaps ${f.at}. Take one of the two off first.`,
      blocked: (f: UnfitFacts) => `${f.thing} is blocked now. Take it off the cart.`,
    },
    others: (count: number) =>
      plural(
        count,
        '1 place is for another setup and stays.',
        `${count} places are for another setup and stay.`,
      ),
    nothingFits: 'Nothing on this cart can be loaded for this changeover.',
    noChangeover: 'No changeover is open on this line. Plan one first.',
    knownCart: (cart: string) => `${cart} is selected.`,
    dockable: (count: number) => plural(count, 'loads 1 slot', `loads ${count} slots`),
    notStanding: 'Dock once the last panel is built.',
    docked: (cart: string, count: number) =>
      plural(count, `${cart} docked: 1 slot loaded.`, `${cart} docked: ${count} slots loaded.`),
    signIn: 'Scan your badge first.',
    unknown: (text: string) => `${text.slice(0, 40)} is unknown. To fill a new cart, leave this one first.`,
  },
  es: {
    open: 'Lista de picking y carros',
    list: 'Lista de picking',
    panels: 'Paneles del siguiente trabajo',
    needed: (count) => plural(count, '1 pieza', `${count} piezas`),
    short: (count) => `hacen falta ${count} más`,
    enough: 'suficiente',
    probably: (chance, missing) => `quizá suficiente (${chance}): ${missing} más para estar seguro`,
    readyNow: 'Haga esto con la línea en marcha',
    readyFetch: (count) =>
      count === 0
        ? 'No hay que traer bobinas.'
        : plural(
            count,
            'Traiga bobinas de 1 componente: lista abajo.',
            `Traiga bobinas de ${count} componentes: lista abajo.`,
          ),
    readyCarts: (count) =>
      count === 0
        ? 'Ponga los alimentadores siguientes en un carro.'
        : plural(
            count,
            'Ponga alimentadores en un carro: 1 sitio listo.',
            `Ponga alimentadores en un carro: ${count} sitios listos.`,
          ),
    readyOpenList: 'Abra la lista: algunos pasos no piden parar.',
    readyList: (count) =>
      plural(count, 'Lista: 1 paso se puede hacer ya.', `Lista: ${count} pasos se pueden hacer ya.`),
    toChecklist: 'Lista',
    fetch: (reels) => `Traer ${reels}`,
    stays: (slot, count) => `se queda en ${slot}, ${count}`,
    goesTo: (from, to, count) => `pasa de ${from} a ${to}, ${count}`,
    comesOff: (slot, count) => `sobra en ${slot}, ${count}`,
    leftThen: (count) => `quedarán unas ${count} al acabar este trabajo`,
    leftNow: (count) => `quedan unas ${count}`,
    onLine: (count) =>
      plural(
        count,
        '1 componente ya está en la línea: nada que traer',
        `${count} componentes ya están en la línea: nada que traer`,
      ),
    cartFirst: 'Escanee o teclee antes su código.',
    leftUnknown: 'sin contar',
    maybeShort: 'cuente primero',
    unsure: (count) =>
      plural(
        count,
        'Puede faltar 1 componente: cuente sus bobinas.',
        `Pueden faltar ${count} componentes: cuente sus bobinas.`,
      ),
    uncounted: (count) => plural(count, '1 bobina sin contar', `${count} bobinas sin contar`),
    none: 'ninguna bobina encontrada',
    msl: (level) => `MSL ${level}: vigile la vida en planta`,
    shortfalls: (count) =>
      plural(
        count,
        '1 componente pide más de lo que hay en las bobinas conocidas. Traiga más o avise a un jefe.',
        `${count} componentes piden más de lo que hay en las bobinas conocidas. Traiga más o avise a un jefe.`,
      ),
    carts: 'Carros',
    cart: 'Carro',
    cartHelp: 'Escanee o teclee el código del carro. Luego posición, alimentador y bobina.',
    use: 'Usar este carro',
    filling: (cart) => `Llenando ${cart}`,
    leave: 'Dejar el carro',
    wanted: {
      ...{ slot: 'Escanee la posición', feeder: 'Escanee el alimentador' },
      ...{ 'old-reel': '', reel: 'Escanee la bobina' },
    },
    accepted: (slot) => `Correcta: lista para ${slot}.`,
    refused: (why) => `No la ponga: ${why}`,
    held: (why) => `Retenida: ${why}. Apártela. Un jefe decide en la pantalla Carga.`,
    places: (count) => plural(count, '1 sitio listo', `${count} sitios listos`),
    empty: 'Quitar',
    dock: 'Acoplar',
    dockTitle: (cart) => `¿Acoplar ${cart}?`,
    dockCaution:
      'Pare antes la máquina y espere a que nada se mueva. Manos lejos del anclaje, el cabezal y la cuchilla.',
    willLoad: (count, product) =>
      plural(count, `Se carga 1 posición para ${product}:`, `Se cargan ${count} posiciones para ${product}:`),
    goesOff: (count) => plural(count, 'Sale 1 alimentador:', `Salen ${count} alimentadores:`),
    doesNotFit: (count) =>
      plural(count, '1 sitio no encaja y queda fuera:', `${count} sitios no encajan y quedan fuera:`),
    unfit: {
      'feeder-loaded': (f) => `El alimentador ${f.thing} está ahora en ${f.at}.`,
      'reel-loaded': (f) => `La bobina ${f.thing} está ahora en ${f.at}.`,
      neighbour: (f) => `El alimentador ${f.thing} invade el sitio de ${f.at}. Quite antes uno de los dos.`,
      blocked: (f) => `${f.thing} está ahora bloqueada. Quítela del carro.`,
    },
    others: (count) =>
      plural(
        count,
        '1 sitio es para otro montaje y se queda.',
        `${count} sitios son para otro montaje y se quedan.`,
      ),
    nothingFits: 'Nada de este carro se puede cargar para este cambio.',
    noChangeover: 'No hay ningún cambio abierto en esta línea. Planee uno antes.',
    knownCart: (cart) => `${cart} está elegido.`,
    dockable: (count) => plural(count, 'carga 1 posición', `carga ${count} posiciones`),
    notStanding: 'Acople cuando esté hecho el último panel.',
    docked: (cart, count) =>
      plural(
        count,
        `${cart} acoplado: 1 posición cargada.`,
        `${cart} acoplado: ${count} posiciones cargadas.`,
      ),
    signIn: 'Escanee primero su tarjeta.',
    unknown: (text) => `${text.slice(0, 40)} no es conocido. Para llenar un carro nuevo, deje antes este.`,
  },
});

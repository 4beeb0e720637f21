import type { words as english } from '../en/stations.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  caution:
    'Una ayuda junto a las protecciones de la propia máquina, no una función de seguridad. Escucha, y pregunta o contesta solo donde se ha ajustado. No manda en ninguna máquina.',
  who: (line) => `¿Quién cuenta en ${line}?`,
  whoHelp:
    'Un solo contador por línea. Lo contado a mano junto a una estación se guarda y se muestra, no se suma.',
  hand: 'Personas, a mano',
  handNow: 'Ahora cuentan personas en esta línea.',
  stationNow: (station) => `Ahora cuenta ${station} en esta línea.`,
  checkInLine:
    'Revise «Paneles en la línea» en las reglas de la línea: se calculan desde donde se cuentan los paneles.',
  none: 'Aún no se conoce ninguna estación',
  noneHelp:
    'Arranque esto en un ordenador cerca de las máquinas. La estación aparece aquí cuando su enlace se ha unido.',
  silent: (clock) => `Callada desde las ${clock}`,
  heard: (clock) => `Oída a las ${clock}`,
  never: 'Nunca oída',
  counts: 'Cuenta esta línea',
  line: 'Línea',
  stands: 'Está',
  places: { in: 'antes de la primera máquina', work: 'en una máquina', out: 'tras la última máquina' },
  atMachine: (machine) => `en ${machine}`,
  lastHeard: 'Oída por última vez',
  total: 'Su total',
  boot: (boot) => `desde que se encendió como ${boot}`,
  heardAs: (boot) => `desde que el enlace volvió a oírla, como ${boot}`,
  state: 'Estado',
  recipe: 'Programa',
  noState: 'No lo dice',
  states: {
    1: 'Trabajando',
    2: 'En espera',
    3: 'Ingeniería',
    4: 'Parada prevista',
    5: 'Parada imprevista',
    6: 'Sin turno',
  },
  otherState: 'Un estado propio de su fabricante',
  version: 'Enlace',
  linkOf: (version, tablet) => `versión ${version}, ${tablet}`,
  noticed: 'No entendido o no contado',
  allUnderstood: 'Todo se entendió.',
  notices: {
    'not-understood': 'Mensajes que no se pudieron leer',
    'wrong-secret': 'Mensajes sin el secreto correcto',
    'clock-off': 'Su reloj se desvía más de cinco minutos. Nada se fecha con él',
    'total-fell': 'Su total bajó sin apagarse. Sigue contando desde ahí; lo perdido entretanto no se cuenta',
    'two-devices':
      'Dos aparatos envían con un mismo nombre. Cuenta el primero. Dé al otro un nombre propio y apague y encienda los dos',
    'code-twice': 'Un código de panel llegó dos veces. Nombra solo el primer panel',
    'not-used': 'Mensajes que aquí no se usan',
    'other-handle': 'Envía una máquina para la que no hay estación. Cree una con su nombre (handle)',
    'not-connected': 'No se llegó a su intermediario. Se vuelve a intentar',
    'not-answered': 'No dijo qué tiene cargado. Se le pregunta otra vez',
    'not-offered': 'No dijo qué montaje quiere. Se le pregunta otra vez',
    'loads-cut': 'Nombró más lugares de los que se leen. Solo se comparan los primeros',
    'asked-off': 'Preguntó por materiales y no se le contestó: no está activado',
    'asked-often': 'Preguntó más de 60 veces en un minuto. Al resto no se contestó',
    'not-replied': 'Preguntó y se había ido antes de la respuesta',
    'code-again': 'Un código de panel llegó otra vez. Cuenta una vez por tirada',
    'not-heard':
      'No se oyó un rato: lo que pasó entonces no está en su total. Compare con la línea y ponga «Paneles = …» si no es correcto',
    'no-boards': 'No anuncia placas, así que no cuenta nada. Actívelo en la máquina',
    'other-machine':
      'Placas de otra máquina en la misma conexión. No se cuentan; ponga la correcta en el archivo del enlace (machineId)',
    'wrong-channel':
      'Ese puerto es el canal entre dos máquinas. El enlace ha colgado; ponga en su archivo el puerto de supervisión de la máquina',
    'by-hand': 'Placas puestas o sacadas a mano. No se cuentan; si una se fabricó, ponga «Paneles = …»',
    'failed-board':
      'Placas que la máquina da por fallidas. Tomaron sus componentes y se cuentan; deséchelas si lo son',
    'board-twice': 'Placas anunciadas dos veces. Cada una se cuenta una vez',
    'machine-says': 'La máquina dice',
  },
  other: 'Otra cosa',
  times: (times) => plural(times, 'una vez', `${formatCount(times)} veces`),
  foundTitle: 'La máquina y el registro no coinciden',
  found: {
    'tape-differs': (slot, clock, machine, here) =>
      `${slot}, ${clock}: la máquina sigue con ${machine}, los escaneos dicen ${here}. No se contó nada. Escanee la bobina de la posición.`,
    'told-late': (slot, clock, machine) =>
      `${slot}, ${clock}: la máquina dijo demasiado tarde que había empezado ${machine}. No se contó nada. Cuente la bobina.`,
    'empty-early': (slot, clock, machine, _here, parts) =>
      `${slot}, ${clock}: la máquina dice que ${machine} está vacía. Piezas que quedan según el registro: ${parts}. Cuente la bobina.`,
    'life-expired': (_slot, clock, machine) =>
      `${machine}, ${clock}: la máquina dice que se acabó su vida en planta. Mírela en Almacén.`,
    'life-restored': (_slot, clock, machine) =>
      `${machine}, ${clock}: la máquina dice que vuelve a servir. Anote cómo se horneó o secó.`,
  },
  loads: {
    title: 'Lo que cree la máquina',
    said: (clock, same) =>
      `Dicho ${clock}. ${plural(same, '1 posición es como dicen los escaneos.', `${formatCount(same)} posiciones son como dicen los escaneos.`)}`,
    differs: (slot, machine, here) => `${slot}: la máquina cree ${machine}, los escaneos dicen ${here}.`,
    nothing: 'nada',
    look: 'Abra la posición y escanee la bobina de allí. Si los escaneos son correctos, corríjalo en la máquina.',
    scan: 'Lea la bobina de allí.',
    open: (slot) => `Abrir ${slot}`,
    more: (slots) => plural(slots, 'y 1 más', `y ${formatCount(slots)} más`),
    never: 'No cambia ninguna posición por sí sola.',
    later: (slots) => `Leídas después de que hablara la máquina, quizá aún no lo sepa: ${slots}.`,
    untold: (slots) => `La máquina no nombra componente ni bobina conocida: ${slots}.`,
    unknown: (places) =>
      `Lugares que no son posiciones de esta línea: ${places}. Nómbrelos en el fichero del enlace (slots).`,
  },
  answers: {
    title: 'Cuando la máquina pregunta: ¿es esta la bobina correcta?',
    caution: 'Una ayuda junto a las protecciones de la propia máquina, no una función de seguridad.',
    help: 'Se contesta según los últimos veredictos. Cada respuesta queda en el registro. Lo que la máquina hace con ella se ajusta en la máquina.',
    off: 'No contestar',
    on: { Warning: 'Contestar; si no es seguro, avisar', Failed: 'Contestar; si no es seguro, decir que no' },
    offNow: 'Ya no se contesta a la máquina.',
    onNow: {
      Warning: 'Ahora se contesta a la máquina. Si no es seguro, se le avisa.',
      Failed: 'Ahora se contesta a la máquina. Si no es seguro, oye que no.',
    },
    last: (clock, right, unsure, wrong) =>
      `Última respuesta por puesto, la más nueva ${clock}. Correcta: ${right}, con aviso: ${unsure}, no: ${wrong}.`,
    one: (slot, reel, result, why) => `${slot}, ${reel}: ${result}, ${why}.`,
    results: { Success: 'correcta', Warning: 'aviso', Failed: 'no' },
    whys: {
      verified: 'se verificó ahí',
      refused: 'se rechazó ahí',
      held: 'un veredicto espera a un jefe de turno',
      'other-reel': 'ahí se verificó otra bobina',
      'other-part': 'ahí se verificó otro componente',
      'wrong-feeder': 'el alimentador no es el correcto ahí',
      blocked: 'el material está bloqueado',
      'no-setup': 'no hay montaje elegido',
      'unknown-slot': 'la línea no tiene esa posición',
      'not-in-setup': 'el montaje no pide nada ahí',
      'not-verified': 'ahí no se verificó nada',
      'unknown-reel': 'la bobina nunca se leyó',
      'no-reel-told': 'la máquina no nombró ninguna bobina',
      'out-of-date': 'no se pudo leer el registro',
      'in-conflict': 'dos tabletas dicen cosas distintas de ella',
      unproven: 'nada prueba la palabra que la dejó pasar',
    },
  },
  clear: 'Hecho …',
  clearTitle: '¿Está resuelto este hallazgo?',
  clearHelp: 'Desaparece de esta lista. Lo que dijeron ambos queda en el registro.',
  clearWhy: '¿Qué resultó?',
  clearYes: 'Está resuelto',
  cleared: 'Hecho. Ambas versiones quedan en el registro.',
  ownName: 'Su propio nombre',
  rename: 'Cambiar nombre',
  renameTitle: '¿Cómo se llama esta estación?',
  renameHelp: 'Solo para las personas. Su enlace sigue con su propio nombre.',
  renameName: 'Nombre',
  renameYes: 'Cambiarlo',
  renameMissing: 'Escriba otro nombre.',
  noReel: 'una bobina sin código',
  noScan: 'nada de ello',
  bothTitle: 'Contado por ambos',
  both: {
    machine: (clock, hand, machine) =>
      `${clock}: volvió tras un silencio. A mano ${hand}, por la máquina ${machine}. Vale el número de la máquina.`,
    hand: (clock, hand, machine) =>
      `${clock}: empezó de nuevo tras un silencio. A mano ${hand}, por la máquina ${machine}. Vale el número a mano.`,
  },
  bothHelp: '¿No es correcto? Ponga el número con «Paneles = …» en la pantalla de la línea.',
  beside: (panels) =>
    plural(
      panels,
      '1 panel de esta tirada se contó a mano junto a la estación.',
      `${formatCount(panels)} paneles de esta tirada se contaron a mano junto a la estación.`,
    ),
  outside: (panels) =>
    plural(
      panels,
      '1 panel pasó cuando no se fabricaba nada. No está en ninguna tirada.',
      `${formatCount(panels)} paneles pasaron cuando no se fabricaba nada. No están en ninguna tirada.`,
    ),
  setTitle: 'Qué ajustar en la máquina',
  setHelp:
    'El enlace llama a la máquina ahí, por el canal de los sistemas de supervisión, y solo escucha. Active para él el seguimiento de placas.',
  setAddress: 'Dirección',
  setNever: 'Nunca le dé un puerto del canal entre dos máquinas (50100 más el carril): eso pararía la línea.',
  typeTitle: 'Qué escribir en el aparato',
  typeHelp:
    'Cada vez que pasa un panel, y cada diez segundos, envía su propio total. Nunca «uno más»: lo que se pierde lo repone el mensaje siguiente.',
  typeAddress: 'Dirección',
  typeHeader: 'Cabecera',
  typeSecret: 'SECRETO',
  typeBody: 'Mensaje',
  typeBoot:
    'boot: un texto nuevo cada vez que se enciende. total: paneles desde entonces. at: su reloj, si tiene.',
  machineTitle: 'Qué escribir en la máquina',
  machineHelp:
    'La máquina envía por IPC-2591 (AMQP 1.0), cada mensaje solo o varios juntos, comprimidos o no. Su nombre (handle) debe ser el del fichero del enlace.',
  machineAddress: 'Dirección de su intermediario (network URI)',
  machineTarget: 'Dirección de destino (target address)',
  machineAny: 'cualquiera',
  machineAt: 'Sus mensajes se toman de',
  machineProof: 'Nombre y contraseña: como en el fichero del enlace. Sin ellos allí: ANONYMOUS.',
  typeAnswer:
    'Respuesta 200 con el mayor total guardado. 401: el secreto no es correcto. 400: qué está mal y dónde.',
};

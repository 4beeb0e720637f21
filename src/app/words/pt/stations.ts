import type { words as english } from '../en/stations.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  caution:
    'Uma ajuda ao lado das proteções da própria máquina, não uma função de segurança. Ela escuta, e só pergunta ou responde onde isso foi ativado. Nenhuma máquina é comandada.',
  who: (line) => `Quem conta em ${line}?`,
  whoHelp:
    'Um contador por linha. Contagens à mão ao lado de uma estação são guardadas e mostradas, não somadas.',
  hand: 'Pessoas, à mão',
  handNow: 'Agora as pessoas contam nesta linha.',
  stationNow: (station) => `Esta linha agora é contada por ${station}.`,
  checkInLine:
    'Confira “Painéis na linha” nas regras da linha: são calculados a partir de onde os painéis são contados.',
  none: 'Nenhuma estação conhecida ainda',
  noneHelp:
    'Inicie isto num computador perto das máquinas. A estação aparece aqui quando o link dela tiver entrado.',
  silent: (clock) => `Muda desde ${clock}`,
  heard: (clock) => `Ouvida às ${clock}`,
  never: 'Nunca ouvida',
  counts: 'Conta esta linha',
  line: 'Linha',
  stands: 'Fica',
  places: { in: 'antes da primeira máquina', work: 'numa máquina', out: 'depois da última máquina' },
  atMachine: (machine) => `em ${machine}`,
  lastHeard: 'Ouvida por último',
  total: 'Total dela',
  boot: (boot) => `desde que foi ligada como ${boot}`,
  heardAs: (boot) => `desde que o link começou a ouvi-la por último, como ${boot}`,
  state: 'Estado',
  recipe: 'Programa',
  noState: 'Ela não diz',
  states: {
    1: 'Trabalhando',
    2: 'Em espera',
    3: 'Engenharia',
    4: 'Parada planejada',
    5: 'Parada não planejada',
    6: 'Fora de programação',
  },
  otherState: 'Um estado próprio do fabricante',
  version: 'Link',
  linkOf: (version, tablet) => `versão ${version}, ${tablet}`,
  noticed: 'Não entendido ou não contado',
  allUnderstood: 'Tudo foi entendido.',
  notices: {
    'not-understood': 'Mensagens que não se pôde ler',
    'wrong-secret': 'Mensagens sem o segredo certo',
    'clock-off': 'O relógio dela erra mais de cinco minutos. Nada é datado por ele',
    'total-fell':
      'O total caiu sem ela ser desligada. A contagem segue dali; o que se perdeu no meio não é contado',
    'two-devices':
      'Dois aparelhos enviam com um só nome. O primeiro conta. Dê ao outro um nome próprio e desligue e ligue os dois',
    'code-twice': 'Um código de painel veio duas vezes. Ele nomeia só o primeiro painel',
    'not-used': 'Mensagens que não são usadas aqui',
    'other-handle': 'Uma máquina sem estação definida está enviando. Defina uma, com o handle dela',
    'not-connected': 'O broker dela não foi alcançado. Tenta-se de novo',
    'not-answered': 'Ela não disse o que tem carregado. É perguntada de novo',
    'not-offered': 'Ela não disse que setup quer. É perguntada de novo',
    'loads-cut': 'Ela citou mais lugares do que são lidos. Só os primeiros são comparados',
    'asked-off': 'Ela perguntou sobre materiais e não teve resposta: isso não está ativado',
    'asked-often': 'Ela perguntou mais de 60 vezes em um minuto. O resto não foi respondido',
    'not-replied': 'Ela perguntou e saiu antes da resposta',
    'code-again': 'Um código de painel veio de novo. Conta uma vez por produção',
    'not-heard':
      'Não foi ouvida por um tempo: o que passou então não está no total. Compare com a linha e acerte com “Painéis = …” onde estiver errado',
    'no-boards': 'Ela não informa placas, por isso não conta nada. Ative isso na máquina',
    'other-machine':
      'Placas de outra máquina na mesma conexão. Não são contadas; cite a certa no arquivo do link (machineId)',
    'wrong-channel':
      'Essa porta é o canal entre duas máquinas. O link desligou; ponha no arquivo dele a porta de supervisão da máquina',
    'by-hand': 'Placas postas ou tiradas à mão. Não são contadas; onde uma foi montada, acerte “Painéis = …”',
    'failed-board':
      'Placas que a máquina chama de falhas. Usaram suas peças e são contadas; refugue-as se forem',
    'board-twice': 'Placas informadas duas vezes. Cada uma é contada uma vez',
    'machine-says': 'A máquina diz',
  },
  other: 'Outra coisa',
  times: (times) => (times === 1 ? 'uma vez' : `${formatCount(times)} vezes`),
  foundTitle: 'A máquina e o log divergem',
  found: {
    'tape-differs': (slot, clock, machine, here) =>
      `${slot}, ${clock}: a máquina segue com ${machine}, as leituras dizem ${here}. Nada foi contado. Escaneie o rolo no slot.`,
    'told-late': (slot, clock, machine) =>
      `${slot}, ${clock}: a máquina informou tarde demais que ${machine} tinha começado. Nada foi contado. Conte o rolo.`,
    'empty-early': (slot, clock, machine, _here, parts) =>
      `${slot}, ${clock}: a máquina diz que ${machine} está vazio. Peças restantes pelo log: ${parts}. Conte o rolo.`,
    'life-expired': (_slot, clock, machine) =>
      `${machine}, ${clock}: a máquina diz que o floor life acabou. Veja em Rolos.`,
    'life-restored': (_slot, clock, machine) =>
      `${machine}, ${clock}: a máquina diz que está apto de novo. Registre como foi secado, na estufa ou a seco.`,
  },
  loads: {
    title: 'No que a máquina acredita',
    said: (clock, same) =>
      `Dito às ${clock}. ${plural(same, `${formatCount(same)} slot está como dizem as leituras.`, `${formatCount(same)} slots estão como dizem as leituras.`)}`,
    differs: (slot, machine, here) => `${slot}: a máquina acredita em ${machine}, as leituras dizem ${here}.`,
    nothing: 'nada',
    look: 'Abra o slot e escaneie o rolo ali. Se as leituras estão certas, corrija na máquina.',
    scan: 'Escaneie o rolo ali.',
    open: (slot) => `Abrir ${slot}`,
    more: (slots) => `e mais ${formatCount(slots)}`,
    never: 'Isto não muda nenhum slot por si.',
    later: (slots) => `Escaneados depois que a máquina falou; ela talvez ainda não saiba: ${slots}.`,
    untold: (slots) => `A máquina não cita componente nem rolo conhecido: ${slots}.`,
    unknown: (places) =>
      `Lugares que não são slots desta linha: ${places}. Cite-os no arquivo do link (slots).`,
  },
  answers: {
    title: 'Quando a máquina pergunta: este rolo está certo?',
    caution: 'Uma ajuda ao lado das proteções da própria máquina, não uma função de segurança.',
    help: 'Respondido pelos últimos vereditos. Cada resposta está no log. O que a máquina faz com ela se define na máquina.',
    off: 'Não responder',
    on: { Warning: 'Responder; sem certeza, avisar', Failed: 'Responder; sem certeza, dizer não' },
    offNow: 'A máquina não recebe mais resposta.',
    onNow: {
      Warning: 'A máquina agora recebe resposta. Sem certeza, ela é avisada.',
      Failed: 'A máquina agora recebe resposta. Sem certeza, ela ouve não.',
    },
    last: (clock, right, unsure, wrong) =>
      `Última resposta por lugar, a mais nova ${clock}: ${right} certos, ${unsure} avisados, ${wrong} não.`,
    one: (slot, reel, result, why) => `${slot}, ${reel}: ${result}, ${why}.`,
    results: { Success: 'certo', Warning: 'avisado', Failed: 'não' },
    whys: {
      verified: 'foi verificado ali',
      refused: 'foi recusado ali',
      held: 'um veredito espera um líder',
      'other-reel': 'outro rolo foi verificado ali',
      'other-part': 'outro componente foi verificado ali',
      'wrong-feeder': 'o feeder não está certo ali',
      blocked: 'o material está bloqueado',
      'no-setup': 'nenhum setup está escolhido',
      'unknown-slot': 'a linha não tem esse slot',
      'not-in-setup': 'o setup não pede nada ali',
      'not-verified': 'nada foi verificado ali',
      'unknown-reel': 'o rolo nunca foi escaneado',
      'no-reel-told': 'a máquina não citou rolo',
      'out-of-date': 'não foi possível ler o log',
      'in-conflict': 'dois tablets dizem coisas diferentes sobre isso',
      unproven: 'nada prova a decisão que o deixou entrar',
    },
  },
  clear: 'Resolvido …',
  clearTitle: 'Este achado está resolvido?',
  clearHelp: 'Sai desta lista. O que os dois lados disseram fica no log.',
  clearWhy: 'No que deu?',
  clearYes: 'Está resolvido',
  cleared: 'Resolvido. Os dois lados ficam no log.',
  ownName: 'Nome próprio dela',
  rename: 'Renomear',
  renameTitle: 'Como se chama esta estação?',
  renameHelp: 'Só para as pessoas. O link segue com o nome próprio.',
  renameName: 'Nome',
  renameYes: 'Renomear',
  renameMissing: 'Digite outro nome.',
  noReel: 'um rolo sem código',
  noScan: 'nada sobre isso',
  bothTitle: 'Contado pelos dois',
  both: {
    machine: (clock, hand, machine) =>
      `${clock}: voltou após um silêncio. À mão ${hand}, pela máquina ${machine}. Vale o número da máquina.`,
    hand: (clock, hand, machine) =>
      `${clock}: recomeçou após um silêncio. À mão ${hand}, pela máquina ${machine}. Vale o número à mão.`,
  },
  bothHelp: 'Está errado? Acerte o número com “Painéis = …” na tela da linha.',
  beside: (panels) =>
    plural(
      panels,
      `${formatCount(panels)} painel desta produção foi contado à mão ao lado da estação.`,
      `${formatCount(panels)} painéis desta produção foram contados à mão ao lado da estação.`,
    ),
  outside: (panels) =>
    plural(
      panels,
      `${formatCount(panels)} painel passou enquanto nada era produzido. Não está em nenhuma produção.`,
      `${formatCount(panels)} painéis passaram enquanto nada era produzido. Não estão em nenhuma produção.`,
    ),
  setTitle: 'O que definir na máquina',
  setHelp:
    'O link chama a máquina ali, no canal para sistemas de supervisão, e só escuta. Ative nela o rastreio de placas.',
  setAddress: 'Endereço',
  setNever: 'Nunca lhe dê uma porta do canal entre duas máquinas (50100 e a pista): isso pararia a linha.',
  typeTitle: 'O que digitar no aparelho',
  typeHelp:
    'A cada painel que passa, e a cada dez segundos, ele envia seu próprio total acumulado. Nunca “mais um”: o que se perde é reposto pela próxima mensagem.',
  typeAddress: 'Endereço',
  typeHeader: 'Cabeçalho',
  typeSecret: 'SEGREDO',
  typeBody: 'Mensagem',
  typeBoot:
    'boot: um texto novo a cada vez que é ligado. total: painéis desde então. at: o relógio dele, se houver.',
  machineTitle: 'O que digitar na máquina',
  machineHelp:
    'A máquina envia por IPC-2591 (AMQP 1.0), cada mensagem só ou várias em uma, compactadas ou não. O handle dela deve ser o do arquivo do link.',
  machineAddress: 'Endereço do broker (network URI)',
  machineTarget: 'Endereço de destino',
  machineAny: 'qualquer',
  machineAt: 'As mensagens dela vêm de',
  machineProof: 'Nome e senha: como no arquivo do link. Sem eles ali: ANONYMOUS.',
  typeAnswer:
    'Resposta 200 com o maior total guardado. 401: o segredo está errado. 400: o que está errado, e onde.',
};

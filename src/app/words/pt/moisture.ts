import type { words as english } from '../en/moisture.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  level: (msl) => `MSL ${msl}`,
  left: (span) => `restam ${span} de floor life`,
  leftUntil: (span, clock) => `restam ${span} de floor life, até ${clock}`,
  unopened: (span) => `ainda fechado: ${span} de floor life`,
  noLimit: 'sem limite neste ar',
  over: 'floor life acabou',
  overSince: (clock) => `floor life acabado desde ${clock}`,
  baking: 'na estufa',
  bakeShort: 'secagem mais curta do que diz a tabela',
  bakeLet: (name) => `secagem curta aceita: ${name}`,
  letBake: 'Aceitar a secagem',
  letBakeTitle: (reel) => `Aceitar a secagem de ${reel}?`,
  letBakeWhat: (f) =>
    `Secagem de ${f.hours} h${f.celsius === null ? '' : ` a ${f.celsius} °C`}. ${f.wanted === null ? 'A tabela não tem linha para isso.' : `A tabela pede ${f.wanted} h.`}`,
  letBakeHelp:
    'Se valer, o floor life recomeça no fim dela, e esta secagem não retém mais o rolo. Vale uma vez: outra secagem curta retém de novo.',
  letBakeWhy: 'Por que vale?',
  letBakeDone: (reel) => `${reel}: a secagem vale.`,
  letBakeFor: 'A secagem',
  letBakeOnce: 'Só desta vez',
  letBakeAlways: 'Vale a partir de agora',
  hotOver: (hours) => `${hours} h acima de 90 °C ao todo`,
  labelTime: 'nível 6: seque e depois digite o tempo da etiqueta',
  families: {
    bga: 'BGA',
    lga: 'LGA',
    pqfp: 'PQFP',
    mqfp: 'MQFP',
    qfp: 'QFP',
    tqfp: 'TQFP',
    lqfp: 'LQFP',
    plcc: 'PLCC',
    qfn: 'QFN',
    sop: 'SOP',
    tsop: 'TSOP',
    soic: 'SOIC',
    sot: 'SOT',
    chip: 'Chip',
    other: 'Nenhum destes',
  },
  sources: {
    own: 'a cópia da própria planta',
    copy: 'comparado com uma cópia publicada',
    memory: 'de memória, não comparado',
  },
  restsOn: (f) =>
    `${f.classes.length === 1 ? `Classe ${f.classes[0]}` : `Classe ${[...f.classes].sort().join(' ou ')} (vale a menor)`} · ${f.celsius} °C, ${f.humidity} % · ${f.edition}`,
  classOpen:
    'O encapsulamento não é totalmente conhecido, por isso vale a pior classe. Um engenheiro pode informá-lo em Planta, Componentes.',
  labelHours: 'Tempo na etiqueta, horas',
  labelHoursHelp: 'Nível 6: o floor life impresso na embalagem, contado do fim da secagem.',
  badLabelHours: 'Digite as horas da etiqueta: 1 a 9999.',
  hotSoFar: (hours, most) => `Até agora ${hours} h de secagem acima de 90 °C. O limite é ${most} h ao todo.`,
  hotLimit: 'este limite é de memória',
  bakeAdvice: (f) => `A tabela pede ${f.options} (${f.source}).`,
  bakeOption: (hours, celsius) => `${hours} h a ${celsius} °C`,
  or: 'ou',
  bakeLarge:
    'A linha de 96 h a 125 °C é para BGA grandes e chips empilhados; vale enquanto o encapsulamento não é conhecido.',
  dry: 'em armazenagem seca',
  open: 'Embalagem / estufa',
  title: (reel) => `Floor life de ${reel}`,
  where: 'Onde está?',
  airs: { floor: 'Aberto no chão de fábrica', dry: 'Armário ou embalagem selada', bake: 'Na estufa' },
  hours: 'Há quantas horas?',
  hoursHelp: '0 = agora. Se foi antes: as horas desde então.',
  humidity: 'Umidade relativa ali',
  humidities: { 5: '5 % ou menos', 10: '10 % ou menos' },
  ovenAir: 'Umidade relativa na estufa',
  ovenAirs: { dry: '5 % ou menos', moist: 'Mais, ou ninguém sabe' },
  ovenAirHelp:
    'Abaixo de 125 °C a tabela vale só para ar seco. Em outro ar, um líder precisa aceitar a secagem.',
  ovenAirMissing: 'Escolha quão seca é a estufa',
  celsius: 'Estufa, graus Celsius',
  celsiusHelp: 'Muitas fitas e rolos aguentam 40 °C no máximo: veja a etiqueta da embalagem.',
  bakeCaution: 'Quente: use luvas na estufa. A etiqueta da embalagem e as regras locais vêm primeiro.',
  resetHelp:
    'Registre aqui quando o rolo sair. Uma secagem mais curta do que a tabela pede para o corpo e o nível não restaura o floor life: um líder precisa então decidir.',
  badHours: 'Digite 0 a 9999 horas.',
  badCelsius: 'Digite 30 a 150 °C.',
  climate: (f) =>
    f.computed !== f.entered
      ? `Os ${f.entered.celsius} °C e ${f.entered.humidity} % do chão de fábrica estão fora da tabela. Vale a pior linha dela: ${f.computed.celsius} °C e ${f.computed.humidity} %. Pergunte ao engenheiro de processo.`
      : f.isEntered
        ? `Para um chão de fábrica até ${f.entered.celsius} °C e ${f.entered.humidity} % de umidade, das regras da linha.`
        : `Para um chão de fábrica até ${f.entered.celsius} °C e ${f.entered.humidity} % de umidade: ninguém informou os valores da linha.`,
  yes: 'Salvar',
  written: (reel) => `${reel}: salvo.`,
  ends: (slot, life, out) => `${slot}: o floor life acaba em ${life}, o rolo duraria até ${out}.`,
  isOver: (slot, life) => `${slot}: floor life acabado desde ${life}.`,
  endsAct: 'Ponha outro rolo até lá. Desumidifique este ou seque na estufa, conforme suas regras.',
  overAct: 'Pare de usá-lo. Um líder decide sobre as peças montadas desde então.',
  toBake: (reels) => `floor life acabou, secar antes: ${reels}`,
};

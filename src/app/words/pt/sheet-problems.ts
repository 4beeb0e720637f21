import { type SheetField, sheetFieldNames } from '../../../../shared/sheet/fields.ts';
import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';

type Facts = SheetProblem['facts'];

const fieldsPt: Readonly<Record<SheetField, string>> = {
  slot: 'slot',
  machine: 'máquina',
  bank: 'banco',
  number: 'número do slot',
  part: 'componente',
  perPanel: 'inserções por painel',
  tapeWidth: 'largura da fita',
  pitch: 'passo',
  sharing: 'divisão entre slots',
  alternates: 'alternativos',
  supplierParts: 'PNs do fornecedor',
  description: 'descrição',
  package: 'encapsulamento',
  pins: 'pinos',
  bodySize: 'tamanho do corpo',
  bodyThickness: 'espessura do corpo',
  msl: 'nível de umidade (MSL)',
  polarity: 'polaridade',
  feederType: 'tipo de feeder',
  drive: 'acionamento do feeder',
  pocket: 'profundidade da cavidade',
  critical: 'crítico',
  positions: 'posições ocupadas',
  side: 'lado',
  designators: 'designadores',
  fitted: 'montado',
  notFitted: 'não montado',
  note: 'nota',
};

const namesByEnglish = new Map(
  // The keys of a table by field are its fields.
  (Object.keys(sheetFieldNames) as SheetField[]).map((field) => [sheetFieldNames[field], fieldsPt[field]]),
);

/** Facts that name a field carry its English name. */
function field(name: string | number | undefined): string {
  return namesByEnglish.get(String(name)) ?? String(name);
}

/** A side as the file's reader names it. */
function sidePt(side: string | number | undefined): string {
  return side === 'bottom' ? 'inferior' : 'superior';
}

const pt: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    'O arquivo não é UTF-8, por isso foi lido como Windows-1252. Confira as letras com acento, ou salve como UTF-8.',
  quoteBroken: (f) =>
    `As aspas abertas na linha ${f['row']} não fecham. O que segue pode estar na célula errada. Corrija essa linha.`,
  rowTooLong: (f) =>
    `A linha tem ${f['found']} células, o cabeçalho ${f['wanted']}. Uma célula parece conter o separador: ponha-a entre aspas.`,
  rowUnreadable: (f) =>
    `A linha tem ${f['found']} células, o cabeçalho ${f['wanted']}, e não se alinham. Corrija a linha.`,
  noRows: () => 'Nenhuma linha sob o cabeçalho. Exporte a folha de novo com as linhas dela.',
  moreProblems: (f) => `Mais ${f['count']} problemas não são listados. Corrija estes e leia a folha de novo.`,
  moreErrors: (f) =>
    `Mais ${f['count']} problemas não são listados, alguns são erros. Corrija estes e leia a folha de novo.`,
  columnMissing: (f) =>
    `Nenhuma coluna para ${field(f['wanted'])} entre: ${f['headers']}. Escolha a coluna à mão.`,
  columnAbsent: (f) =>
    `Nenhuma coluna para ${field(f['wanted'])} entre: ${f['headers']}. Escolha a coluna à mão, ou siga sem ela.`,
  columnNotFound: (f) =>
    `Esta folha não tem a coluna “${f['wanted']}” para ${field(f['field'])}. Tem: ${f['headers']}. Escolha a coluna de novo.`,
  columnUnknown: (f) =>
    `A coluna “${f['found']}” não é usada. Se o setup precisa dela, escolha à mão o que ela contém.`,
  columnTwice: (f) =>
    `A coluna “${f['found']}” também parece ser ${field(f['field'])}; “${f['used']}” é usada. Se devia ser a outra, escolha à mão.`,
  usagePerBoard: (f) =>
    `A coluna “${f['found']}” parece contar por placa e é tomada como por painel. Se um painel tem várias placas, multiplique-a.`,
  slotMissing: (f) => `O slot está vazio, mas a linha cita o componente ${f['part']}. Preencha o slot.`,
  textTooLong: (f) => `${field(f['field'])}: “${f['found']}…” passa de ${f['most']} caracteres. Encurte.`,
  textCut: (f) => `O texto passa de ${f['most']} caracteres. O resto fica de fora: encurte.`,
  slotUnclear: (f) =>
    `O slot “${f['found']}” não está escrito como M1-F-014; os vizinhos não podem ser verificados. É tomado como escrito.`,
  slotNumberUnreadable: (f) => `O número de slot “${f['found']}” não é um inteiro a partir de 1. Corrija.`,
  partMissing: (f) => `O slot ${f['slot']} não tem PN, mas outras células estão preenchidas. Preencha.`,
  usageUnreadable: (f) => `Inserções por painel “${f['found']}” não é um inteiro a partir de 0. Corrija.`,
  usageMissing: () =>
    'Faltam as inserções por painel; ninguém sabe dizer quando este slot acaba. Preencha, ou adicione o arquivo de coordenadas.',
  usageZero: () =>
    'Inserções por painel é 0: o slot é carregado mas não usado. Se for isso, marque a linha como não montada.',
  usageFromDesignators: (f) =>
    `Faltam as inserções por painel; os ${f['count']} designadores contam como ${f['count']}. Confira se cobrem o painel inteiro.`,
  designatorsDisagree: (f) =>
    `${f['found']} designadores, mas ${f['wanted']} inserções por painel. Confira qual está certo.`,
  widthUnreadable: (f) => `A largura de fita “${f['found']}” não é um número de mm. Escreva 8 ou 8 mm.`,
  widthUnknown: (f) => `${f['found']} mm não é uma largura de fita da EIA-481 (${f['wanted']} mm). Corrija.`,
  widthMissing: () => 'Sem largura de fita, ninguém pode verificar se o feeder serve. Preencha.',
  notTape: (f) =>
    `“${f['found']}” não é fita, por isso este slot não tem comprimentos de fita nem horários de emenda.`,
  pitchUnreadable: (f) => `O passo “${f['found']}” não é um número de mm acima de 0. Escreva 4 ou 4 mm.`,
  pitchUnusual: (f) =>
    `A EIA-481 não lista passo de ${f['found']} mm para fita de ${f['width']} mm, só ${f['wanted']} mm. Confira; algumas fitas diferem.`,
  pitchMissing: () => 'Sem passo, um comprimento de fita não pode virar número de peças. Preencha.',
  positionsUnreadable: (f) => `Posições ocupadas “${f['found']}” não é um inteiro de 1 a 60. Corrija.`,
  pinsUnreadable: (f) =>
    `O número de pinos “${f['found']}” não é um inteiro de 1 ou mais; fica de fora. Corrija.`,
  bodySizeUnreadable: (f) =>
    `O tamanho do corpo “${f['found']}” não é comprimento e largura em mm; fica de fora. Escreva como 17 x 17.`,
  thicknessUnreadable: (f) =>
    `A espessura do corpo “${f['found']}” não é um número de mm acima de 0, por isso fica de fora. Corrija.`,
  pocketUnreadable: (f) =>
    `A profundidade da cavidade “${f['found']}” não é um número de mm acima de 0; fica de fora. Corrija.`,
  mslUnknown: (f) =>
    `“${f['found']}” não é um nível de umidade (1, 2, 2a, 3, 4, 5, 5a, 6), por isso fica de fora. Corrija.`,
  sharingUnknown: (f) =>
    `“${f['found']}” não diz como os slots dividem este componente. Escreva “split” se cada um monta a sua parte, “in turn” se um alimenta até esvaziar.`,
  turnUsageDiffers: (f) =>
    `O componente ${f['part']} é usado em sequência: o slot que alimenta monta todas as ${f['wanted']}. Esta linha diz ${f['found']}. Escreva o mesmo número em cada linha.`,
  sideUnknown: (f) => `“${f['found']}” não é superior nem inferior, por isso o lado fica de fora. Corrija.`,
  flagUnreadable: (f) =>
    `“${f['found']}” não é sim nem não e conta como ${f['taken'] === 'yes' ? 'sim' : 'não'}. Corrija.`,
  alternateIsPart: (f) => `O componente ${f['part']} é alternativo de si mesmo aqui. Isso fica de fora.`,
  slotTwice: (f) =>
    `O slot ${f['slot']} já está na linha ${f['first']}, com o componente ${f['part']}. Um slot leva um componente: corrija uma das linhas.`,
  noRoom: (f) =>
    `O feeder no slot ${f['slot']} ocupa ${f['wanted']} posições. O slot ${f['next']} (linha ${f['nextRow']}) está só ${f['found']} adiante. Mova um deles.`,
  littleRoom: (f) =>
    `Um feeder de ${f['width']} mm no slot ${f['slot']} costuma ocupar ${f['wanted']} posições. O slot ${f['next']} (linha ${f['nextRow']}) está só ${f['found']} adiante. Confira se cabe, ou preencha as posições ocupadas.`,
  noApprovedReels: (f) =>
    `O componente ${f['part']} não tem PN de fornecedor aprovado; só passam etiquetas com o seu PN interno. Preencha.`,
  partDiffers: (f) =>
    `Componente ${f['part']}: ${field(f['field'])} é ${f['found']} aqui, ${f['wanted']} na linha ${f['first']}. Confira qual está certo.`,
  usageDisagrees: (f) =>
    `Componente ${f['part']}: ${f['found']} inserções por painel na folha, ${f['wanted']} no arquivo de coordenadas. Confira qual está certo.`,
  usageRatio: (f) =>
    `A folha tem ${f['ratio']} vezes as inserções do arquivo de coordenadas em cada componente. O arquivo parece conter uma placa de ${f['ratio']}: informe quantas placas um painel tem.`,
  usageSplitUnknown: (f) =>
    `Componente ${f['part']}: ${f['wanted']} inserções para ${f['found']} slots, e o arquivo de coordenadas não diz quantas cada um. Preencha as inserções por painel.`,
  partNotPlaced: (f) =>
    `O componente ${f['part']} tem slot mas não está no arquivo de coordenadas. Confira o PN nos dois.`,
  partWithoutSlot: (f) =>
    `O componente ${f['part']} é montado ${f['found']} vezes (arquivo de coordenadas, da linha ${f['first']}) mas não tem slot. Dê um slot, ou marque como não montado.`,
  placementPartMissing: (f) => `O designador ${f['designator']} não tem PN, por isso fica de fora. Preencha.`,
  placementTwice: (f) =>
    `O designador ${f['designator']} está no mesmo lugar que na linha ${f['first']}. Conta uma vez.`,
  placementSideMissing: () =>
    'O arquivo de coordenadas não tem coluna de lado. Toda inserção conta como superior.',
  placementSideUnknown: (f) =>
    `“${f['found']}” não é superior nem inferior; a inserção conta como superior. Corrija.`,
  headerGuessed: (f) =>
    `O arquivo não tem cabeçalho conhecido. Pelo que contêm, as colunas são: ${f['wanted']}. Confira.`,
  columnByLook: (f) =>
    `A coluna “${f['found']}” é tomada como ${field(f['field'])} pelo que contém. Confira.`,
  genericParts: (f) =>
    `A coluna “${f['found']}” tem um nome para vários valores: contém tipos e não PNs. Valem os valores. Escolha à mão a coluna dos PNs, se houver.`,
  partsAreDesignators: (f) =>
    `A coluna “${f['found']}” contém designadores, não PNs. Escolha à mão a coluna dos PNs.`,
  sheetAdded: (f) =>
    `As linhas da folha “${f['found']}” têm o mesmo cabeçalho e também são lidas; seguem a partir da linha ${f['first']}.`,
  designatorTwice: (f) =>
    `O designador ${f['designator']} já está na linha ${f['first']}, em outro lugar. Conta uma vez. Dê um nome próprio a cada componente da placa.`,
  designatorSeldom: (f) =>
    `O designador ${f['designator']} está ${f['found']} vezes no arquivo, a maioria dos outros ${f['wanted']} vezes. Confira se cada placa do painel o tem.`,
  placementSideFromName: (f) =>
    `Nada no arquivo diz o lado. Pelo nome “${f['found']}” todas as inserções contam como lado ${sidePt(f['side'])}.`,
  throughHole: (f) =>
    `O designador ${f['designator']} (${f['part']}) vai em furos (PTH), por isso não conta como montado.`,
  oddPlaced: (f) =>
    `O designador ${f['designator']} parece um ponto de teste ou furo, mas tem o componente ${f['part']}. Conta como montado. Se não é, marque como não montado.`,
  valueInPackages: (f) =>
    `O valor ${f['part']} está aqui no encapsulamento ${f['found']}, e na linha ${f['first']} em ${f['wanted']}. Contam como dois componentes. Dê PNs a eles.`,
  partInPackages: (f) =>
    `O componente ${f['part']} está aqui no encapsulamento ${f['found']}, e na linha ${f['first']} em ${f['wanted']}. Confira o PN.`,
  valueWithoutPackage: (f) =>
    `O designador ${f['designator']} tem o valor ${f['part']}, mas sem encapsulamento nem PN. Ninguém sabe dizer qual componente é: preencha.`,
  xmlBroken: (f) =>
    `O XML está quebrado aqui: ${f['found']}. O que segue não é lido. Exporte o arquivo de novo.`,
  noComponents: () => 'O arquivo não contém componentes. Exporte-o com os componentes e os lugares deles.',
  panelOfFile: (f) =>
    `O painel do arquivo tem ${f['found']} placas; uma é contada. Informe quantas placas um painel tem.`,
  billRowWithoutDesignators: (f) =>
    `O componente ${f['part']} não cita designadores, por isso nada é montado desta linha. Preencha se ele é montado.`,
  billPartMissing: (f) => `A linha com ${f['designator']} não tem PN nem valor. Preencha um deles.`,
  billPartByOther: (f) => `A linha não tem PN; o componente se chama ${f['part']}. Preencha o PN.`,
  secondTable: (f) => `Outra tabela começa aqui (${f['headers']}). Não é lida.`,
  boardsInFile: (f) =>
    `O arquivo de coordenadas já tem ${f['found']} placas; as ${f['wanted']} placas não são multiplicadas de novo. Confira quantas placas um painel tem.`,
  quantityDiffers: (f) =>
    `A quantidade é ${f['wanted']}, mas a linha cita ${f['found']} designadores. Confira qual está certo.`,
  quantityUnreadable: (f) => `A quantidade “${f['found']}” não é um número. Valem os designadores. Corrija.`,
  quantityRatio: (f) =>
    `Em cada linha a quantidade é ${f['ratio']} vezes os designadores. A BOM parece contar ${f['ratio']} placas.`,
  billDesignatorTwice: (f) =>
    `O designador ${f['designator']} já está na linha ${f['first']}, com o mesmo componente. Conta uma vez.`,
  billDesignatorDiffers: (f) =>
    `O designador ${f['designator']} já está na linha ${f['first']}, com o componente ${f['wanted']}; aqui é ${f['found']}. Um lugar leva um componente: corrija uma das linhas.`,
  variantOpen: (f) =>
    `As variantes da BOM diferem aqui: ${f['wanted']}. Conta como montado. Diga qual variante se produz, ou traga a BOM dessa variante.`,
  variantNotFound: (f) => `A BOM não tem a variante “${f['found']}”. Tem: ${f['wanted']}.`,
  partDescribedTwice: (f) =>
    `O componente ${f['part']} tem aqui o valor ${f['found']}, e na linha ${f['first']} ${f['wanted']}. Confira o PN.`,
  markInRemark: (f) =>
    `Pela observação “${f['found']}”, nada desta linha é montado. Se isso vale só para alguns designadores, cite-os ali.`,
  blankNotFitted: (f) =>
    `A coluna “${f['found']}” tem uma marca em algumas linhas e está vazia em ${f['count']}. Vazia conta como não montado.`,
  designatorNotInBill: (f) =>
    `O designador ${f['designator']} está no arquivo de coordenadas mas em nenhuma linha da BOM, por isso não é contado. Adicione-o à BOM, ou marque como não montado.`,
  designatorNotPlaced: (f) =>
    `O designador ${f['designator']} (componente ${f['part']}) está na BOM mas não no arquivo de coordenadas, por isso não é contado.`,
  partOfFileDiffers: (f) =>
    `Designador ${f['designator']}: componente ${f['found']} no arquivo de coordenadas, ${f['wanted']} na BOM (linha ${f['first']}). Vale a BOM. Confira qual está certo.`,
  valueOfFileDiffers: (f) =>
    `Designador ${f['designator']}: valor ${f['found']} no arquivo de coordenadas, ${f['wanted']} na BOM (linha ${f['first']}). Vale a BOM. Confira qual está certo.`,
  sideOfFileDiffers: (f) =>
    `O designador ${f['designator']} está no lado ${sidePt(f['found'])} no arquivo de coordenadas; a BOM diz ${sidePt(f['wanted'])}. Vale o arquivo de coordenadas.`,
  sheetDesignatorNotPlaced: (f) =>
    `O designador ${f['designator']} está nesta linha mas não no arquivo de coordenadas. Confira nos dois.`,
  designatorWithoutSlot: (f) =>
    `O designador ${f['designator']} (arquivo de coordenadas, linha ${f['first']}, componente ${f['part']}) não está em nenhuma linha da folha. Adicione-o à linha do slot dele, ou marque como não montado.`,
  sheetPartDiffers: (f) =>
    `Designador ${f['designator']}: componente ${f['found']} nesta linha, ${f['wanted']} no arquivo de coordenadas ou na BOM. Confira qual está certo.`,
  sheetDesignatorTwice: (f) => `O designador ${f['designator']} já está na linha ${f['first']}. Conta lá.`,
  listPartEmpty: () => 'A linha não tem PN, mas outras células estão preenchidas. Preencha.',
  listPackingUnknown: (f) =>
    `“${f['found']}” não é fita, fita cortada, bandeja, tubo nem a granel, por isso é omitido. Corrija.`,
  listAgeUnreadable: (f) =>
    `O limite de idade “${f['found']}” não é um número de meses, por isso é omitido. Escreva 24 ou 2 anos.`,
  listPriceUnreadable: (f) =>
    `O preço "${f['found']}" não é um número acima de 0 e fica de fora. Escreva 0.012 ou 0.012 EUR.`,
  listPriceUnclear: (f) =>
    `"${f['found']}" não diz para quantos componentes é o preço. Escreva Price each ou Price per 1000.`,
  listToleranceUnclear: (f) =>
    `"${f['found']}" tem números soltos abaixo de 1: frações ou por cento? São omitidos. Chame a coluna de Tolerance % ou escreva 1 % nas células.`,
  listReelEmpty: () => 'A linha não tem id do rolo, por isso é omitida. Preencha.',
  listReelTwice: (f) => `O rolo ${f['found']} já está na linha ${f['first']}. Vale a última contagem dele.`,
  listCountUnreadable: (f) =>
    `A quantidade “${f['found']}” não é um número inteiro de peças, por isso a linha é omitida. Corrija.`,
};

export const words: Sentences<typeof english> = { say: (problem) => pt[problem.code](problem.facts) };

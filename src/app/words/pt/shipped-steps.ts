// The shipped checklists in Portuguese: every title, heading, text, caution and option, by its English sentence.

export const words: Readonly<Record<string, string>> = {
  Exchange: 'Troca de embalagem',
  'The machine stands and nothing in it moves.': 'A máquina está parada e nada se move nela.',
  'What goes on was accepted for this slot.': 'O que entra foi aceito para este slot.',
  'First pocket and pin 1 lie as on the one before.':
    'A primeira cavidade e o pino 1 estão como no anterior.',
  'It is in up to the stop and locked.': 'Está encaixado até o batente e travado.',
  'The first picks after it were watched.': 'As primeiras coletas depois da troca foram observadas.',
  Changeover: 'Troca de produto',
  'Make ready while the line runs': 'Preparar com a linha rodando',
  'Job papers, panel drawing and setup are at the line, in the right revision.':
    'Papéis da ordem, desenho do painel e setup estão na linha, na revisão certa.',
  'All reels of the pick list are ready in walking order. The lead knows what is short.':
    'Todos os rolos da lista de coleta estão prontos na ordem do caminho. O líder sabe o que falta.',
  'Wear the wrist strap or the right shoes: parts are sensitive to static.':
    'Use a pulseira antiestática ou o calçado certo: os componentes são sensíveis à eletricidade estática.',
  'Feeders for the next product are loaded and verified off the line.':
    'Os feeders do próximo produto estão carregados e verificados fora da linha.',
  'Blades and tape cutters cut: keep fingers out and cut away from you.':
    'Lâminas e cortadores de fita cortam: mantenha os dedos fora e corte para longe de você.',
  'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.':
    'A pasta do próximo produto chegou à temperatura ambiente, fechada, pelo tempo que a ficha dela diz.',
  'Scan the next stencil: fetched, right revision, clean, no dent.':
    'Escaneie o próximo estêncil: buscado, revisão certa, limpo, sem amassado.',
  'Line clearance': 'Retirada da ordem anterior',
  'Count of good and scrapped panels of the old job.':
    'Contagem de painéis bons e refugados da ordem anterior.',
  'No panel of the old job is left in printer, machines, buffers or oven.':
    'Nenhum painel da ordem anterior ficou na impressora, nas máquinas, nos buffers ou no forno.',
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.':
    'Pare a máquina e espere até nada se mover antes de abrir uma tampa ou pôr a mão dentro. Siga a regra local de bloqueio de energia.',
  'Reject bins and tape waste are emptied; loose parts are off the machine.':
    'Caixas de rejeito e restos de fita esvaziados; sem peças soltas na máquina.',
  'Old labels, papers and reels are off the line.': 'Etiquetas, papéis e rolos antigos estão fora da linha.',
  'Stencil and paste': 'Estêncil e pasta',
  'Scan the stencil in the printer.': 'Escaneie o estêncil na impressora.',
  'Squeegee blades are straight, clean and of the right length.':
    'As lâminas do rodo estão retas, limpas e no comprimento certo.',
  'Scan the paste jar: alloy, lot and date fit.': 'Escaneie o pote de pasta: liga, lote e data conferem.',
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.':
    'Use luvas com a pasta, nada de comida aqui, lave as mãos depois. Leia a ficha de segurança.',
  'Paste height on the first print, middle of five places. Set the limits for your stencil.':
    'Altura da pasta na primeira impressão, mediana de cinco pontos. Defina os limites para o seu estêncil.',
  Feeders: 'Feeders',
  'No moves left: no feeder to take out, move or put in.':
    'Não faltam movimentos: nenhum feeder a retirar, mover ou colocar.',
  'Every slot has its verified reel. No reel waits for a lead.':
    'Todo slot tem seu rolo verificado. Nenhum rolo espera um líder.',
  'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.':
    'Todo feeder está assentado e travado; fitas passadas, fitas de cobertura puxadas.',
  'Two people have compared look-alike parts and polarity marks with the setup.':
    'Duas pessoas compararam componentes parecidos e marcas de polaridade com o setup.',
  'Moisture-sensitive reels are within their floor life for this run.':
    'Os rolos sensíveis à umidade estão dentro do floor life para esta produção.',
  'Rails and support pins': 'Trilhos e pinos de apoio',
  'Rail width: panel width plus play, at both ends. Set the limits for your panel.':
    'Largura do trilho: largura do painel mais folga, nas duas pontas. Defina os limites para o seu painel.',
  'Support pins are set as the drawing shows, none under a part of the other side.':
    'Os pinos de apoio estão como mostra o desenho, nenhum sob um componente do outro lado.',
  'Program and revision': 'Programa e revisão',
  'Program name and revision on every machine, as shown there.':
    'Nome e revisão do programa em cada máquina, como aparecem nela.',
  'Oven profile: loaded, reached, and verified with this product?':
    'Perfil do forno: carregado, atingido e verificado com este produto?',
  'Inspection programs are of this product, side and revision.':
    'Os programas de inspeção são deste produto, lado e revisão.',
  'First panel': 'Primeiro painel',
  'First panel: every part is there and none is shifted.':
    'Primeiro painel: todos os componentes estão lá e nenhum está deslocado.',
  'First panel: critical parts measured within tolerance, polarities looked at and right.':
    'Primeiro painel: componentes críticos medidos dentro da tolerância, polaridades olhadas e certas.',
  'Picture of the first panel.': 'Foto do primeiro painel.',
  Release: 'Liberação',
  'Operator and lead release the run.': 'Operador e líder liberam a produção.',
  Splice: 'Emenda',
  'The new reel was accepted for this slot.': 'O rolo novo foi aceito para este slot.',
  'The new tape’s empty leader is cut off, up to its first part.':
    'A ponta inicial vazia (leader) da fita nova foi cortada, até a primeira peça.',
  'Both tapes are cut square, between pockets, so that the hole pitch runs on.':
    'As duas fitas estão cortadas no esquadro, entre cavidades, para o passo dos furos continuar.',
  'Joined flat, holes in line, same side up, cover tape joined too.':
    'Unidas planas, furos alinhados, mesmo lado para cima, fita de cobertura unida também.',
  'Parts lie the same way in both tapes.': 'As peças estão viradas para o mesmo lado nas duas fitas.',
  'The first picks after the joint were watched.':
    'As primeiras coletas depois do ponto da emenda foram observadas.',
  'Start of shift': 'Início de turno',
  'What the shift before handed over.': 'O que o turno anterior passou.',
  'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).':
    'Pulseira, ou calçado neste piso, aprovados no testador. Cada um tem seu próprio limite (ANSI/ESD S20.20).',
  'Worn with a wrist strap: strap system, below 35 MΩ.':
    'Com pulseira: sistema da pulseira, abaixo de 35 MΩ.',
  'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.':
    'Com calçado: pessoa, calçado e piso, abaixo de 1000 MΩ; o corpo fica abaixo de 100 V.',
  'Covers, guards and emergency stops are whole and free.':
    'Tampas, proteções e paradas de emergência estão inteiras e livres.',
  'The loaded line was swept: every reel scanned once.':
    'A linha carregada foi conferida: cada rolo escaneado uma vez.',
  'Paste on the stencil is within its open time.': 'A pasta no estêncil está dentro do tempo aberto.',
  'Humidity at the line.': 'Umidade na linha.',
  'Sound on this tablet is on and was heard.': 'O som deste tablet está ligado e foi ouvido.',
  'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.':
    'Todos os rolos da lista de coleta estão prontos na ordem do caminho; o que falta foi dito ao líder.',
  'Panels good and scrapped of the old job, as counted.':
    'Painéis bons e refugados da ordem anterior, como contados.',
  'The change list is empty: every slot carries its verified reel.':
    'A lista de trocas está vazia: todo slot tem seu rolo verificado.',
  'Support pins stand as the drawing shows; none under a part of the other side.':
    'Os pinos de apoio ficam como mostra o desenho; nenhum sob um componente do outro lado.',
  'First panel: every part there, polarity and pin 1 as in the drawing.':
    'Primeiro painel: todos os componentes lá, polaridade e pino 1 como no desenho.',
  'Critical parts measured and within tolerance.': 'Componentes críticos medidos e dentro da tolerância.',
  'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).':
    'Pulseira ou calçado no testador. Limite: sistema da pulseira abaixo de 35 MΩ (ANSI/ESD S20.20).',
};

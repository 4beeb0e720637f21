import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Mensagens com o aplicativo fechado',
  promise:
    'Para líderes: avisos sem resposta, rolos bloqueados em uso, linhas paradas. Alguma pode atrasar ou não chegar: deixe um tablet aberto.',
  way: 'Vão cifradas pelo serviço do fabricante deste navegador. O servidor da planta precisa alcançá-lo.',
  noBrowser: 'Este navegador não aceita mensagens.',
  noServer: 'Nenhum servidor responde. Entre nele primeiro, ou tente quando responder.',
  off: 'O servidor da planta não está preparado para isto.',
  unreached: 'O servidor da planta não alcança o serviço. Aqui não há mensagens.',
  denied: 'O navegador bloqueia mensagens. Permita-as nas configurações para esta página.',
  turnOn: 'Ativar mensagens',
  turnOff: 'Desativar mensagens',
  isOn: 'As mensagens chegam aqui.',
  isOff: 'As mensagens estão desativadas aqui.',
  wrong: 'Não funcionou. Tente de novo.',
  first: 'As mensagens chegam aqui.',
  warning: (line, slot) => `${line}: ninguém responde ao aviso de ${slot}.`,
  blocked: (line, slot) => `${line}: há um rolo bloqueado em uso em ${slot}.`,
  stood: (line) => `${line} está parada.`,
};

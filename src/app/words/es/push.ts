import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Mensajes con la aplicación cerrada',
  promise:
    'Para jefes de turno: avisos sin respuesta, bobinas bloqueadas en uso, líneas paradas. Alguno puede llegar tarde o nunca: deje una tableta abierta.',
  way: 'Viajan cifrados por el servicio del fabricante de este navegador. El servidor de la planta debe alcanzarlo.',
  noBrowser: 'Este navegador no acepta mensajes.',
  noServer: 'Ningún servidor responde. Únase primero, o inténtelo cuando responda.',
  off: 'El servidor de la planta no está preparado para esto.',
  unreached: 'El servidor de la planta no alcanza el servicio. Aquí no hay mensajes.',
  denied: 'El navegador bloquea los mensajes. Permítalos en sus ajustes para esta página.',
  turnOn: 'Activar mensajes',
  turnOff: 'Desactivar mensajes',
  isOn: 'Aquí llegan mensajes.',
  isOff: 'Aquí los mensajes están desactivados.',
  wrong: 'No funcionó. Inténtelo de nuevo.',
  first: 'Los mensajes llegan aquí.',
  warning: (line, slot) => `${line}: nadie responde al aviso de ${slot}.`,
  blocked: (line, slot) => `${line}: hay una bobina bloqueada en uso en ${slot}.`,
  stood: (line) => `${line} está parada.`,
};

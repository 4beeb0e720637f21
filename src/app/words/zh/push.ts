import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: '应用关闭时的消息',
  promise: '给班长：无人应答的警告、正在使用的禁用料盘、停着的产线。消息可能迟到或不到：请让一台平板开着。',
  way: '消息加密后经此浏览器厂商的服务传送。工厂服务器必须能连到它。',
  noBrowser: '此浏览器不接收消息。',
  noServer: '没有服务器应答。请先加入，或稍后再试。',
  off: '工厂服务器没有为此设置。',
  unreached: '工厂服务器连不上该服务。这里没有消息。',
  denied: '浏览器阻止了消息。请在其设置中为本页允许。',
  turnOn: '开启消息',
  turnOff: '关闭消息',
  isOn: '消息会到这里。',
  isOff: '这里的消息已关闭。',
  wrong: '没有成功。请再试。',
  first: '消息能到这里。',
  warning: (line, slot) => `${line}：${slot} 的警告无人应答。`,
  blocked: (line, slot) => `${line}：${slot} 上正在使用禁用的料盘。`,
  stood: (line) => `${line} 停着。`,
};

import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'アプリを閉じているときの通知',
  promise:
    '班長向け：応答のない警告、使用禁止なのに使用中のリール、停止中のライン。遅れたり届かなかったりします。タブレットを1台開いておいてください。',
  way: '通知は暗号化され、このブラウザーの提供元のサービスを通ります。工場のサーバーから届く必要があります。',
  noBrowser: 'このブラウザーは通知を受け取りません。',
  noServer: '応答するサーバーがありません。先に参加するか、後でもう一度試してください。',
  off: '工場のサーバーにこの設定がありません。',
  unreached: '工場のサーバーからサービスに届きません。ここに通知はありません。',
  denied: 'ブラウザーが通知を止めています。設定でこのページに許可してください。',
  turnOn: '通知をオンにする',
  turnOff: '通知をオフにする',
  isOn: 'ここに通知が届きます。',
  isOff: 'ここでは通知はオフです。',
  wrong: 'できませんでした。もう一度試してください。',
  first: '通知がここに届きます。',
  warning: (line, slot) => `${line}：${slot}の警告に誰も応答していません。`,
  blocked: (line, slot) => `${line}：${slot}で使用禁止リールを使用中です。`,
  stood: (line) => `${line}が止まっています。`,
};

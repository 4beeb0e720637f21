import type { words as english } from '../en/kit.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: '出庫リストと台車',
  list: '出庫リスト',
  panels: '次のジョブのパネル数',
  needed: (count) => `${count}個`,
  short: (count) => `あと${count}個必要`,
  enough: '足りる',
  probably: (chance, missing) => `たぶん足りる（${chance}）：確実にするにはあと${missing}個`,
  readyNow: 'ラインが動いている間にやること',
  readyFetch: (count) =>
    count === 0
      ? '取りに行くリールはありません。'
      : `部品${count}種のリールを取ってください：出庫リストは下にあります。`,
  readyCarts: (count) =>
    count === 0
      ? '次のフィーダーを台車に載せてください。'
      : `フィーダーを台車に載せてください：${count}か所が準備済み。`,
  readyOpenList: 'チェックリストを開いてください：停止なしでできる手順があります。',
  readyList: (count) => `チェックリスト：今できる手順が${count}件あります。`,
  toChecklist: 'チェックリストを開く',
  fetch: (reels) => `取る：${reels}`,
  stays: (slot, count) => `${slot}のまま、${count}`,
  goesTo: (from, to, count) => `${from}から${to}へ移動、${count}`,
  comesOff: (slot, count) => `${slot}の余り、${count}`,
  leftThen: (count) => `このジョブが終わると残り約${count}個`,
  leftNow: (count) => `残り約${count}個`,
  onLine: (count) => `部品${count}種はライン上にあり、取る必要なし`,
  cartFirst: '先にコードをスキャンか入力してください。',
  leftUnknown: '数えていない',
  maybeShort: '先に数える',
  unsure: (count) => `部品${count}種は足りないかもしれません：リールを数えてください。`,
  uncounted: (count) => `数えていないリール${count}本`,
  none: 'リールなし',
  msl: (level) => `MSL ${level}：フロアライフに注意`,
  shortfalls: (count) =>
    `部品${count}種が、わかっているリールの数では足りません。もっと取ってくるか、班長に伝えてください。`,
  carts: '台車',
  cart: '台車',
  cartHelp: '台車のコードをスキャンか入力し、スロット、フィーダー、リールの順にスキャンしてください。',
  use: 'この台車を使う',
  filling: (cart) => `${cart}に積み込み中`,
  leave: '台車を離れる',
  wanted: {
    slot: '行き先のスロットをスキャン',
    feeder: 'フィーダーをスキャン',
    'old-reel': '',
    reel: 'リールをスキャン',
  },
  accepted: (slot) => `正しい：${slot}用に準備できました。`,
  refused: (why) => `載せないでください：${why}`,
  held: (why) => `保留：${why}。別に置いてください。班長が「セット」画面で判断します。`,
  places: (count) => `${count}か所準備済み`,
  empty: '降ろす',
  dock: '接続する',
  dockTitle: (cart) => `${cart}を接続しますか`,
  dockCaution:
    '先に機械を止め、動きが完全に止まるまで待ってください。クランプ、ヘッド、カッターに手を近づけないでください。',
  willLoad: (count, product) => `${product}用に${count}スロットをセットします：`,
  goesOff: (count) => `フィーダー${count}台を外します：`,
  doesNotFit: (count) => `${count}か所は合わないため除きます：`,
  unfit: {
    'feeder-loaded': (f) => `フィーダー${f.thing}は今${f.at}にあります。`,
    'reel-loaded': (f) => `リール${f.thing}は今${f.at}にあります。`,
    neighbour: (f) => `フィーダー${f.thing}が${f.at}とぶつかります。先にどちらかを外してください。`,
    blocked: (f) => `${f.thing}は現在使用禁止です。台車から降ろしてください。`,
  },
  others: (count) => `${count}か所は別の段取り表用で、そのままです。`,
  nothingFits: 'この台車には、この段取り替えでセットできるものがありません。',
  noChangeover: 'このラインで進行中の段取り替えはありません。先に予定してください。',
  knownCart: (cart) => `${cart}を選択中。`,
  dockable: (count) => `${count}スロットをセット`,
  notStanding: '最後のパネルができてから接続してください。',
  docked: (cart, count) => `${cart}を接続：${count}スロットをセットしました。`,
  signIn: '先にバッジをスキャンしてください。',
  unknown: (text) => `${text.slice(0, 40)}は不明です。新しい台車に積むには、先にこの台車を離れてください。`,
};

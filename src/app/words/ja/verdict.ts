import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, type Sentences } from '../words.ts';
import { moistureReasonsJa, tableJa } from './verdict-moisture.ts';
import { plantReasonsJa } from './verdict-plant.ts';

const reasons: ReasonWords = {
  ...moistureReasonsJa,
  ...plantReasonsJa,
  'unknown-slot': {
    title: 'そのスロットはない',
    say: (f) => `このラインにスロット${f['slot']}はありません。`,
    act: '機械でスロットのコードをスキャンしてください。',
  },
  'slot-not-in-setup': {
    title: '使わないスロット',
    say: (f) => `この段取り表では${f['slot']}に何も要りません。`,
    act: '空のままにして、正しいスロットをスキャンしてください。',
  },
  'slot-loaded': {
    title: 'スロットはセット済み',
    say: (f) => `${f['slot']}にはすでに${f['part']}${f['reel'] ? `（リール${f['reel']}）` : ''}があります。`,
    act: '先にそのリールを取り外してください。',
  },
  'slot-empty': {
    title: 'スロットが空',
    say: (f) => `${f['slot']}には何もセットされていません。`,
    act: 'スプライスではなく、リールをセットしてください。',
  },
  'no-part': {
    title: '品番なし',
    say: (f) => `どの部品かを示すコードがラベルにありません。必要：${f['wanted']}。`,
    act: 'ラベル全体をスキャンするか、印字された品番を入力してください。',
  },
  'wrong-part': {
    title: '部品違い',
    say: (f) =>
      f['goesTo']
        ? `このリールは${f['goesTo']}用です。`
        : 'この段取り表に、この部品を使うスロットはありません。',
    act: '元に戻し、別のリールをスキャンしてください。',
  },
  'wrong-for-lane': {
    title: 'もう一方のレーンに不適合',
    say: (f) => `${f['lane']} はこのスロットから ${f['wanted']} を使います。`,
    act: '戻してください。両方のレーンで使えるリールを読み取ってください。',
  },
  'kept-for-lane': {
    title: 'もう一方のレーン用に残す',
    say: (f) => `${f['slot']}には ${f['lane']} 用の ${f['part']} があります。`,
    act: 'そのリールはそのままにしてください。スプライスするときは、先にもう一方のレーンを選んでください。',
  },
  'not-in-setup': {
    title: 'この段取り表にない',
    say: (f) =>
      f['slot']
        ? `このリールを使うスロットはありません。最も近いのは${f['slot']}です。`
        : 'このリールを使うスロットはありません。',
    act: '台車に置いたままにするか、倉庫に戻してください。',
  },
  'bake-short': {
    title: 'ベーキング不足',
    say: (f) =>
      `ベーキング${f['hours']} h${f['celsius'] ? `、${f['celsius']} °C` : ''}。${f['wanted'] ? `表の要求は${f['wanted']} h` : '表に該当する行がない'}ため、フロアライフは戻りません：残り${f['leftSeconds']}。（${restsOn(f, tableJa)}パッケージ不明なら最も厳しい値で計算。）`,
    act: '班長の判断が必要です。',
  },
  'same-label': {
    title: '同じラベルの2本目',
    say: () => '人が確認しました：ラベルがここで使用中のリールと同じです。',
    act: '',
  },
  'reel-elsewhere': {
    title: 'リールが別のスロットにある',
    say: (f) => `ログではリール${f['reel']}は${f['slot']}にあります。`,
    act: 'もうそこになければ、先にそこで取り外してください。',
  },
  'reel-on-cart': {
    title: 'リールが台車にある',
    say: (f) => `ログではリール${f['reel']}は台車${f['cart']}に${f['slot']}用として準備済みです。`,
    act: '別のリールを使うか、先に「準備」で台車から降ろしてください。',
  },
  'slot-on-cart': {
    title: 'スロットは台車で準備済み',
    say: (f) => `台車${f['cart']}に${f['slot']}用のリールがすでにあります。`,
    act: '別のスロットをスキャンするか、先に台車のその場所から降ろしてください。',
  },
  'reel-here': {
    title: 'リールはすでにここにある',
    say: (f) => `リール${f['reel']}はすでに${f['slot']}にあります。`,
    act: '次のリールをスキャンしてください。',
  },
  'reel-blocked': {
    title: 'リールは使用禁止',
    say: (f) => `使用禁止：${f['reason']}。`,
    act: '別に置き、班長を呼んでください。',
  },
  'feeder-elsewhere': {
    title: 'フィーダーが別のスロットにある',
    say: (f) => `ログではフィーダー${f['feeder']}は${f['slot']}にあります。`,
    act: 'フィーダーのコードを確認するか、先にそこで取り外してください。',
  },
  'feeder-aside': {
    title: '別に置いたフィーダー',
    say: (f) => `フィーダー${f['feeder']}は使えません：${f['why']}。`,
    act: '別のフィーダーを使ってください。整備後はフィーダーの画面で記録します。',
  },
  'feeder-lanes': {
    title: 'フィーダーに空きレーンがない',
    say: (f) => `フィーダー${f['feeder']}のレーン数：${f['lanes']}。ログではすでに${f['slots']}にあります。`,
    act: 'フィーダーのコードを確認するか、型のレーン数を直してください。',
  },
  'feeder-on-cart': {
    title: 'フィーダーが台車にある',
    say: (f) => `ログではフィーダー${f['feeder']}は台車${f['cart']}に${f['slot']}用として準備済みです。`,
    act: 'フィーダーのコードを確認するか、先に「準備」で台車から降ろしてください。',
  },
  'feeder-width': {
    title: 'フィーダーがテープに合わない',
    say: (f) =>
      `フィーダー${f['feeder']}は${f['found']} mm テープ用、このスロットに必要なのは${f['wanted']} mm です。`,
    act: '幅の合うフィーダーを使ってください。',
  },
  'feeder-pitch': {
    title: 'フィーダーのピッチが合わない',
    say: (f) =>
      `フィーダー${f['feeder']}の送りは${f['found']} mm、このテープに必要なのは${f['wanted']} mm です。`,
    act: 'ピッチを設定するか、別のフィーダーを使ってください。ピッチ違いは気づかないうちに部品を捨てます。',
  },
  'floor-life-over': {
    title: 'フロアライフ切れ',
    say: () => 'このリールは防湿袋から出ていた時間が長すぎます。',
    act: '使わないでください。自社の規則でベーキングに回してください。',
  },
  'not-the-loaded-reel': {
    title: 'ログのリールではない',
    say: (f) => `ログでは${f['slot']}に${f['loaded'] || '別のリール'}があります。`,
    act: '誰が替えたか確かめてから、取り外してセットし直してください。',
  },
  'part-contradicts': {
    title: 'ラベルが矛盾している',
    say: (f) => `ラベルは${f['part']}、しかし${f['supplierPart']}は${f['approvedFor']}用に承認されています。`,
    act: '班長の判断が必要です。',
  },
  'alternate-not-approved': {
    title: 'ここでは未承認の代替品',
    say: (f) =>
      `${f['found']}は${f['approvedFor']}では${f['wanted']}の代わりに使えますが、この製品では使えません。`,
    act: '班長の判断が必要です。',
  },
  'supplier-part-not-approved': {
    title: '不明な仕入先品番',
    say: (f) => `${f['supplierPart']}は承認一覧にありません。必要：${f['wanted']}。`,
    act: '班長の判断が必要です。',
  },
  'no-quantity': {
    title: '数量なし',
    say: () => 'ラベルに数量がなく、部品切れの時刻がわかりません。',
    act: '数量を入力するか、班長に判断してもらってください。',
  },
  expired: {
    title: '期限切れ',
    say: (f) => `使用期限${f['expires']}。`,
    act: '班長の判断が必要です。',
  },
  'by-alternate': {
    title: '承認済みの代替品',
    say: (f) => `${f['found']}は${f['wanted']}の承認済みの代替品です。`,
    act: '',
  },
  'by-supplier-part': {
    title: '仕入先品番で一致',
    say: (f) => `${f['supplierPart']}は${f['part']}用に承認済みです。`,
    act: '',
  },
  'by-comparison': {
    title: '同じ品番とみなす',
    say: (f) => `現場の規則（${f['rule']}）により、${f['found']}を${f['wanted']}とみなします。`,
    act: '',
  },
  'mixed-lots': {
    title: '別のロット',
    say: (f) => `ロットが${f['from']}から${f['to']}に変わります。`,
    act: '',
  },
  'quantity-corrected': {
    title: 'ラベルと違う数量',
    say: (f) =>
      f['label'] === ''
        ? `ラベルに数量なし。ログでは${f['quantity']}を使います。`
        : `ラベルは${f['label']}。ログでは${f['quantity']}を使います。`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: '交換用に正しい',
    refill: '補充用に正しい',
    load: '正しいリール',
    splice: 'スプライスに正しいリール',
    sweep: '確認済み',
  },
  refused: '拒否',
  held: '保留、班長待ち',
  wants: (slot) => `${slot}に必要`,
  says: 'リールの表示',
  also: 'ほかに',
  goOn: '続ける',
  nextIs: (slot) => `次：${slot}`,
  another: '別のリールをスキャンする',
  callLead: '班長に判断してもらう',
  typeQuantity: '数量を入力する',
  takeBack: '取り消す',
  parts: (count) => `${formatCount(count)}個`,
  lot: (lot) => `ロット${lot}`,
  reel: (reel) => `リール${reel}`,
  practice: '練習スキャン',
  allLoaded: 'すべてのスロットがセット済みです。',
  spliceCaution:
    'テープをつなぐのは、機械を止めているとき、またはフィーダーがその取扱説明書どおり防護区域の外にあるときだけにしてください。刃は指と反対に向けて切ってください。現場の規則を優先してください。',
  loadCaution: '手を入れる前に機械を止め、ヘッドが止まるまで待ってください。現場の規則を優先してください。',
  reasons,
};

import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';

type Facts = SheetProblem['facts'];

/** Facts that name a field carry its English name, or its own in a placement file. */
const fields: Readonly<Record<string, string>> = {
  slot: 'スロット',
  machine: '機械',
  bank: 'バンク',
  'slot number': 'スロット番号',
  part: '部品',
  'placements per panel': '1パネルの装着数',
  'tape width': 'テープ幅',
  pitch: 'ピッチ',
  'sharing among slots': 'スロット間の分担',
  alternates: '代替品',
  'supplier parts': '仕入先品番',
  description: '説明',
  package: 'パッケージ',
  pins: 'ピン',
  'body size': '本体寸法',
  'body thickness': '本体厚',
  'moisture sensitivity level': '吸湿レベル',
  polarity: '極性',
  'feeder type': 'フィーダーの型',
  'feeder drive': 'フィーダーの駆動',
  'pocket depth': 'ポケット深さ',
  critical: '重要',
  'positions taken': '占有スロット数',
  side: '面',
  'reference designators': '回路記号',
  designator: '回路記号',
  fitted: '実装',
  'not fitted': '未実装',
  notFitted: '未実装',
  note: '備考',
  quantity: '数量',
  'order numbers': '注文番号',
  value: '定数',
  device: 'ライブラリ名',
  variants: 'バリエーション',
  mounting: '実装方式',
  mount: '実装方式',
  mirrored: '反転',
  place: 'X と Y',
  rotation: '角度',
  level: '階層',
  item: '項目番号',
  maker: 'メーカー',
};

function field(name: string | number | undefined): string {
  return fields[String(name)] ?? String(name);
}

/** A side as the file's reader names it. */
function side(name: string | number | undefined): string {
  return name === 'bottom' ? '裏面' : '表面';
}

/** A yes or no as the file's reader names it. */
function flag(name: string | number | undefined): string {
  return name === 'yes' ? 'はい' : 'いいえ';
}

const said: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    'ファイルが UTF-8 ではないため、Windows-1252 として読みました。アクセント付きの文字を確認するか、UTF-8 で保存してください。',
  quoteBroken: (f) =>
    `${f['row']}行目で開いた引用符が閉じていません。以降の内容が違うセルに入っている可能性があります。その行を直してください。`,
  rowTooLong: (f) =>
    `行は${f['found']}セル、見出しは${f['wanted']}セルです。区切り文字を含むセルがあるようです：引用符で囲んでください。`,
  rowUnreadable: (f) =>
    `行は${f['found']}セル、見出しは${f['wanted']}セルで、合いません。行を直してください。`,
  noRows: () => '見出しの下に行がありません。行を含めて書き出し直してください。',
  moreProblems: (f) =>
    `ほかに${f['count']}件の問題があり、表示していません。これらを直してから、表を読み直してください。`,
  moreErrors: (f) =>
    `ほかに${f['count']}件の問題があり、表示していません。誤りも含まれます。これらを直してから、表を読み直してください。`,
  columnMissing: (f) =>
    `「${field(f['wanted'])}」の列がありません。ある列：${f['headers']}。手で列を選んでください。`,
  columnAbsent: (f) =>
    `「${field(f['wanted'])}」の列がありません。ある列：${f['headers']}。手で列を選ぶか、なしで進んでください。`,
  columnNotFound: (f) =>
    `この表に${field(f['field'])}用の列「${f['wanted']}」がありません。ある列：${f['headers']}。列を選び直してください。`,
  columnUnknown: (f) => `列「${f['found']}」は使いません。段取り表に必要なら、内容を手で選んでください。`,
  columnTwice: (f) =>
    `列「${f['found']}」も${field(f['field'])}のようです。使うのは「${f['used']}」です。もう一方なら、手で選んでください。`,
  usagePerBoard: (f) =>
    `列「${f['found']}」は基板1枚あたりの数のようですが、1パネルあたりとして扱います。1パネルに基板が複数あれば、掛けてください。`,
  slotMissing: (f) => `スロットが空ですが、行に部品${f['part']}があります。スロットを入れてください。`,
  textTooLong: (f) =>
    `${field(f['field'])}「${f['found']}…」が${f['most']}文字を超えています。短くしてください。`,
  textCut: (f) => `文字が${f['most']}文字を超えています。残りは省きます：短くしてください。`,
  slotUnclear: (f) =>
    `スロット「${f['found']}」が M1-F-014 の書き方ではなく、隣を確認できません。書かれたまま使います。`,
  slotNumberUnreadable: (f) => `スロット番号「${f['found']}」が1以上の整数ではありません。直してください。`,
  partMissing: (f) =>
    `スロット${f['slot']}に品番がありませんが、ほかのセルには入力があります。入れてください。`,
  usageUnreadable: (f) => `1パネルの装着数「${f['found']}」が0以上の整数ではありません。直してください。`,
  usageMissing: () =>
    '1パネルの装着数が空で、このスロットがいつ部品切れになるかわかりません。入力するか、座標ファイルを追加してください。',
  usageZero: () =>
    '1パネルの装着数が0です：セットしても使いません。そのとおりなら、行を未実装にしてください。',
  usageFromDesignators: (f) =>
    `1パネルの装着数が空なので、回路記号${f['count']}個を${f['count']}と数えます。パネル全体の分か確認してください。`,
  designatorsDisagree: (f) =>
    `回路記号は${f['found']}個ですが、1パネルの装着数は${f['wanted']}です。どちらが正しいか確認してください。`,
  widthUnreadable: (f) => `テープ幅「${f['found']}」が mm の数ではありません。8または8 mm と書いてください。`,
  widthUnknown: (f) =>
    `${f['found']} mm は EIA-481 のテープ幅（${f['wanted']} mm）ではありません。直してください。`,
  widthMissing: () => 'テープ幅がなく、フィーダーが合うか確認できません。入れてください。',
  notTape: (f) => `「${f['found']}」はテープではないため、このスロットにテープ長とスプライス時刻は出ません。`,
  pitchUnreadable: (f) =>
    `ピッチ「${f['found']}」が0より大きい mm の数ではありません。4または4 mm と書いてください。`,
  pitchUnusual: (f) =>
    `EIA-481では${f['width']} mm テープに${f['found']} mm ピッチはなく、${f['wanted']} mm だけです。確認してください。違うテープもまれにあります。`,
  pitchMissing: () => 'ピッチがなく、テープの長さを部品数に換算できません。入れてください。',
  positionsUnreadable: (f) => `占有スロット数「${f['found']}」が1〜60の整数ではありません。直してください。`,
  pinsUnreadable: (f) => `ピン数「${f['found']}」が1以上の整数ではないため、省きます。直してください。`,
  bodySizeUnreadable: (f) =>
    `本体寸法「${f['found']}」が mm の長さと幅ではないため、省きます。17 x 17 のように書いてください。`,
  thicknessUnreadable: (f) =>
    `本体厚「${f['found']}」が0より大きい mm の数ではないため、省きます。直してください。`,
  pocketUnreadable: (f) =>
    `ポケット深さ「${f['found']}」が0より大きい mm の数ではないため、省きます。直してください。`,
  mslUnknown: (f) =>
    `「${f['found']}」は吸湿レベル（1, 2, 2a, 3, 4, 5, 5a, 6）ではないため、省きます。直してください。`,
  sharingUnknown: (f) =>
    `「${f['found']}」では、スロット間の分担がわかりません。それぞれが自分の分を装着するなら「split」、1つが空になるまで供給するなら「in turn」と書いてください。`,
  turnUsageDiffers: (f) =>
    `部品${f['part']}は順番に使います：供給中のスロットが${f['wanted']}個すべてを装着します。この行は${f['found']}です。各行に同じ数を書いてください。`,
  sideUnknown: (f) =>
    `「${f['found']}」は top（表面）でも bottom（裏面）でもないため、面を省きます。直してください。`,
  flagUnreadable: (f) =>
    `「${f['found']}」は yes（はい）でも no（いいえ）でもないため、「${flag(f['taken'])}」とみなします。直してください。`,
  alternateIsPart: (f) => `部品${f['part']}が自分自身の代替品になっています。省きます。`,
  slotTwice: (f) =>
    `スロット${f['slot']}は${f['first']}行目に部品${f['part']}で入っています。1スロットに1部品です：どちらかの行を直してください。`,
  noRoom: (f) =>
    `スロット${f['slot']}のフィーダーは${f['wanted']}スロットを占有します。スロット${f['next']}（${f['nextRow']}行目）まで${f['found']}スロットしかありません。どちらかを移してください。`,
  littleRoom: (f) =>
    `スロット${f['slot']}の${f['width']} mm フィーダーは通常${f['wanted']}スロットを占有します。スロット${f['next']}（${f['nextRow']}行目）まで${f['found']}スロットしかありません。入るか確認するか、占有スロット数を入れてください。`,
  noApprovedReels: (f) =>
    `部品${f['part']}に承認済みの仕入先品番がなく、社内品番のラベルしか通りません。入れてください。`,
  partDiffers: (f) =>
    `部品${f['part']}：${field(f['field'])}がここでは${f['found']}、${f['first']}行目では${f['wanted']}です。どちらが正しいか確認してください。`,
  usageDisagrees: (f) =>
    `部品${f['part']}：1パネルの装着数が表では${f['found']}、座標ファイルでは${f['wanted']}です。どちらが正しいか確認してください。`,
  usageRatio: (f) =>
    `どの部品も、表の装着数が座標ファイルの${f['ratio']}倍です。ファイルは${f['ratio']}枚のうち基板1枚分のようです：1パネルの基板数を入力してください。`,
  usageSplitUnknown: (f) =>
    `部品${f['part']}：${f['found']}スロットに装着点${f['wanted']}個ですが、座標ファイルに内訳がありません。1パネルの装着数を入れてください。`,
  partNotPlaced: (f) =>
    `部品${f['part']}はスロットがありますが、座標ファイルにありません。両方の品番を確認してください。`,
  partWithoutSlot: (f) =>
    `部品${f['part']}は${f['found']}回装着します（座標ファイル、${f['first']}行目から）が、スロットがありません。スロットを決めるか、未実装にしてください。`,
  placementPartMissing: (f) => `回路記号${f['designator']}に品番がないため、省きます。入れてください。`,
  placementTwice: (f) => `回路記号${f['designator']}は${f['first']}行目と同じ位置です。1回だけ数えます。`,
  placementSideMissing: () => '座標ファイルに面の列がありません。装着点はすべて表面とみなします。',
  placementSideUnknown: (f) =>
    `「${f['found']}」は top（表面）でも bottom（裏面）でもないため、この装着点は表面とみなします。直してください。`,
  headerGuessed: (f) =>
    `ファイルに知っている見出しがありません。内容から見た列：${f['wanted']}。確認してください。`,
  columnByLook: (f) => `列「${f['found']}」は、内容から${field(f['field'])}とみなします。確認してください。`,
  genericParts: (f) =>
    `列「${f['found']}」は複数の値に同じ名前があり、品番ではなく種類です。値で数えます。品番の列があれば手で選んでください。`,
  partsAreDesignators: (f) => `列「${f['found']}」は品番ではなく回路記号です。品番の列を手で選んでください。`,
  sheetAdded: (f) =>
    `シート「${f['found']}」の行も見出しが同じなので読みます。${f['first']}行目から続けて番号を付けます。`,
  designatorTwice: (f) =>
    `回路記号${f['designator']}は${f['first']}行目に別の位置であります。1回だけ数えます。基板の部品ごとに別の名前を付けてください。`,
  designatorSeldom: (f) =>
    `回路記号${f['designator']}はファイルに${f['found']}回、ほかの多くは${f['wanted']}回あります。パネルの基板すべてにあるか確認してください。`,
  placementSideFromName: (f) =>
    `ファイルに面の記載がありません。ファイル名「${f['found']}」から、装着点はすべて${side(f['side'])}とみなします。`,
  throughHole: (f) => `回路記号${f['designator']}（${f['part']}）は挿入部品なので、装着に数えません。`,
  oddPlaced: (f) =>
    `回路記号${f['designator']}はテストポイントか穴のようですが、部品${f['part']}があります。装着に数えます。違うなら未実装にしてください。`,
  valueInPackages: (f) =>
    `定数${f['part']}のパッケージがここでは${f['found']}、${f['first']}行目では${f['wanted']}です。2種の部品として数えます。品番を付けてください。`,
  partInPackages: (f) =>
    `部品${f['part']}のパッケージがここでは${f['found']}、${f['first']}行目では${f['wanted']}です。品番を確認してください。`,
  valueWithoutPackage: (f) =>
    `回路記号${f['designator']}には定数${f['part']}がありますが、パッケージも品番もありません。どの部品かわかりません：入れてください。`,
  xmlBroken: (f) =>
    `XML がここで壊れています：${f['found']}。以降は読みません。ファイルを書き出し直してください。`,
  noComponents: () => 'ファイルに部品がありません。部品と位置を含めて書き出してください。',
  panelOfFile: (f) =>
    `ファイルのパネルには基板が${f['found']}枚あり、1枚だけ数えます。1パネルの基板数を入力してください。`,
  billRowWithoutDesignators: (f) =>
    `部品${f['part']}に回路記号がなく、この行からは何も装着しません。装着するなら入れてください。`,
  billPartMissing: (f) => `${f['designator']}の行に品番も定数もありません。どちらかを入れてください。`,
  billPartByOther: (f) => `行に品番がないため、部品を${f['part']}と呼びます。品番を入れてください。`,
  secondTable: (f) => `ここから別の表が始まります（${f['headers']}）。読みません。`,
  boardsInFile: (f) =>
    `座標ファイルにはすでに基板${f['found']}枚分があり、${f['wanted']}枚分を掛けません。1パネルの基板数を確認してください。`,
  quantityDiffers: (f) =>
    `数量は${f['wanted']}ですが、行の回路記号は${f['found']}個です。どちらが正しいか確認してください。`,
  quantityUnreadable: (f) => `数量「${f['found']}」が数ではありません。回路記号で数えます。直してください。`,
  quantityRatio: (f) =>
    `どの行も、数量が回路記号の${f['ratio']}倍です。部品表は基板${f['ratio']}枚分を数えているようです。`,
  billDesignatorTwice: (f) =>
    `回路記号${f['designator']}は${f['first']}行目に同じ部品であります。1回だけ数えます。`,
  billDesignatorDiffers: (f) =>
    `回路記号${f['designator']}は${f['first']}行目では部品${f['wanted']}、ここでは${f['found']}です。1か所に1部品です：どちらかの行を直してください。`,
  variantOpen: (f) =>
    `部品表のバリエーションがここで違います：${f['wanted']}。実装とみなします。生産するバリエーションを選ぶか、その部品表を使ってください。`,
  variantNotFound: (f) => `部品表にバリエーション「${f['found']}」がありません。あるもの：${f['wanted']}。`,
  partDescribedTwice: (f) =>
    `部品${f['part']}の定数がここでは${f['found']}、${f['first']}行目では${f['wanted']}です。品番を確認してください。`,
  markInRemark: (f) =>
    `備考「${f['found']}」により、この行はすべて未実装です。一部の回路記号だけなら、そこに書いてください。`,
  blankNotFitted: (f) =>
    `列「${f['found']}」には印のある行があり、${f['count']}行は空です。空は未実装とみなします。`,
  designatorNotInBill: (f) =>
    `回路記号${f['designator']}は座標ファイルにありますが部品表にないため、数えません。部品表に入れるか、未実装にしてください。`,
  designatorNotPlaced: (f) =>
    `回路記号${f['designator']}（部品${f['part']}）は部品表にありますが座標ファイルにないため、数えません。`,
  partOfFileDiffers: (f) =>
    `回路記号${f['designator']}：部品が座標ファイルでは${f['found']}、部品表（${f['first']}行目）では${f['wanted']}です。部品表を使います。どちらが正しいか確認してください。`,
  valueOfFileDiffers: (f) =>
    `回路記号${f['designator']}：定数が座標ファイルでは${f['found']}、部品表（${f['first']}行目）では${f['wanted']}です。部品表を使います。どちらが正しいか確認してください。`,
  sideOfFileDiffers: (f) =>
    `回路記号${f['designator']}は座標ファイルでは${side(f['found'])}、部品表では${side(f['wanted'])}です。座標ファイルを使います。`,
  sheetDesignatorNotPlaced: (f) =>
    `回路記号${f['designator']}はこの行にありますが、座標ファイルにありません。両方を確認してください。`,
  designatorWithoutSlot: (f) =>
    `回路記号${f['designator']}（座標ファイル${f['first']}行目、部品${f['part']}）が表のどの行にもありません。そのスロットの行に入れるか、未実装にしてください。`,
  sheetPartDiffers: (f) =>
    `回路記号${f['designator']}：部品がこの行では${f['found']}、座標ファイルか部品表では${f['wanted']}です。どちらが正しいか確認してください。`,
  sheetDesignatorTwice: (f) => `回路記号${f['designator']}は${f['first']}行目にあります。そちらで数えます。`,
  listPartEmpty: () => '行に品番がありませんが、ほかのセルに内容があります。入力してください。',
  listPackingUnknown: (f) =>
    `「${f['found']}」はテープ、カットテープ、トレイ、スティック、バラのどれでもないため、取り込みません。tape、cut tape、tray、tube、bulk のどれかに直してください。`,
  listAgeUnreadable: (f) =>
    `古さの上限「${f['found']}」は月数ではないため、取り込みません。24 または 2 years と書いてください。`,
  listPriceUnreadable: (f) =>
    `価格「${f['found']}」は0より大きい数ではないため除きます。0.012または0.012 EURと書いてください。`,
  listPriceUnclear: (f) =>
    `「${f['found']}」では価格が何個分か分かりません。Price eachまたはPrice per 1000と書いてください。`,
  listToleranceUnclear: (f) =>
    `「${f['found']}」には1未満の数字だけがあり、割合かパーセントか分かりません。取り込みません。列名をTolerance %にするか、セルに1 %と書いてください。`,
  listReelEmpty: () => '行にリールIDがないため、取り込みません。入力してください。',
  listReelTwice: (f) => `リール${f['found']}は${f['first']}行目にもあります。最後の数を使います。`,
  listCountUnreadable: (f) => `数「${f['found']}」は整数ではないため、行を取り込みません。直してください。`,
};

export const words: Sentences<typeof english> = {
  say: (problem) => said[problem.code](problem.facts),
};

// The texts of the shipped checklists in Japanese, by their English sentence.

export const words: Readonly<Record<string, string>> = {
  Exchange: '交換',
  'The machine stands and nothing in it moves.': '設備は停止し、何も動いていない。',
  'What goes on was accepted for this slot.': '取り付けるものはこのスロットで合格した。',
  'First pocket and pin 1 lie as on the one before.': '最初のポケットと1番ピンの向きが前と同じ。',
  'It is in up to the stop and locked.': '奥まで入り、ロックされている。',
  'The first picks after it were watched.': '交換後の最初の吸着を見届けた。',
  Splice: 'スプライス',
  'Start of shift': '始業',
  Changeover: '段取り替え',
  'Make ready while the line runs': 'ライン稼働中の準備',
  'Line clearance': 'ラインクリアランス',
  'Stencil and paste': 'メタルマスクとクリームはんだ',
  Feeders: 'フィーダー',
  'Rails and support pins': 'レールとバックアップピン',
  'Program and revision': 'プログラムと改訂',
  'First panel': '初品パネル',
  Release: 'リリース',
  'The new reel was accepted for this slot.': '新しいリールはこのスロット用に合格した。',
  'The new tape’s empty leader is cut off, up to its first part.':
    '新しいテープの空のリーダー部を、最初の部品まで切り落とした。',
  'Both tapes are cut square, between pockets, so that the hole pitch runs on.':
    '両方のテープをポケットの間で直角に切り、穴のピッチが続く。',
  'Joined flat, holes in line, same side up, cover tape joined too.':
    '平らにつなぎ、穴がそろい、同じ面が上で、カバーテープもつないだ。',
  'Parts lie the same way in both tapes.': '両方のテープで部品の向きが同じ。',
  'The first picks after the joint were watched.': 'つなぎ目の後の最初の吸着を見届けた。',
  'What the shift before handed over.': '前のシフトからの引き継ぎ内容。',
  'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).':
    'リストストラップ、またはこの床での靴が、テスターで合格。それぞれに限度がある（ANSI/ESD S20.20）。',
  'Worn with a wrist strap: strap system, below 35 MΩ.': 'リストストラップ着用時：ストラップ系、35 MΩ 未満。',
  'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.':
    '靴の着用時：人・靴・床、1000 MΩ 未満。人体は100 V 未満を保つ。',
  'Covers, guards and emergency stops are whole and free.':
    'カバー、防護装置、非常停止は無事で、ふさがれていない。',
  'The loaded line was swept: every reel scanned once.':
    'セット済みのラインを全数照合した：全リールを1回ずつスキャン。',
  'Paste on the stencil is within its open time.': 'メタルマスク上のクリームはんだは使用可能時間内。',
  'Humidity at the line.': 'ラインの湿度。',
  'Sound on this tablet is on and was heard.': 'このタブレットの音はオンで、聞こえた。',
  'Job papers, panel drawing and setup are at the line, in the right revision.':
    'ジョブの書類、パネル図面、段取り表がラインにあり、改訂が正しい。',
  'All reels of the pick list are ready in walking order. The lead knows what is short.':
    '出庫リストの全リールが歩く順に準備できている。不足は班長が知っている。',
  'Feeders for the next product are loaded and verified off the line.':
    '次の製品のフィーダーをライン外でセットし、照合した。',
  'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.':
    '次の製品のクリームはんだは未開封のまま、説明書の時間だけ置いて室温に戻した。',
  'Scan the next stencil: fetched, right revision, clean, no dent.':
    '次のメタルマスクをスキャン：持ってきてある、改訂が正しい、きれい、へこみなし。',
  'Count of good and scrapped panels of the old job.': '前のジョブの良品と廃棄のパネル数。',
  'No panel of the old job is left in printer, machines, buffers or oven.':
    '印刷機、機械、バッファー、リフロー炉に前のジョブのパネルが残っていない。',
  'Reject bins and tape waste are emptied; loose parts are off the machine.':
    '廃棄ボックスとテープくずを空にし、機械に散らばった部品がない。',
  'Old labels, papers and reels are off the line.': '前のラベル、書類、リールはラインから片付けた。',
  'Scan the stencil in the printer.': '印刷機のメタルマスクをスキャン。',
  'Squeegee blades are straight, clean and of the right length.':
    'スキージはまっすぐで、きれいで、長さが正しい。',
  'Scan the paste jar: alloy, lot and date fit.':
    'クリームはんだの容器をスキャン：合金、ロット、日付が合う。',
  'Paste height on the first print, middle of five places. Set the limits for your stencil.':
    '最初の印刷のはんだ高さ、5か所の中央値。限度は自分のメタルマスクに合わせる。',
  'No moves left: no feeder to take out, move or put in.':
    '残りの移動なし：取り外し、移動、取り付けるフィーダーがない。',
  'Every slot has its verified reel. No reel waits for a lead.':
    '全スロットに照合済みのリールがある。班長待ちのリールはない。',
  'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.':
    '全フィーダーが平らに収まりロックされ、テープは通してあり、カバーテープは引き出してある。',
  'Two people have compared look-alike parts and polarity marks with the setup.':
    '2人で、似た部品と極性マークを段取り表と照合した。',
  'Moisture-sensitive reels are within their floor life for this run.':
    '吸湿に弱いリールは、この生産の間フロアライフ内である。',
  'Rail width: panel width plus play, at both ends. Set the limits for your panel.':
    'レール幅：パネル幅＋すき間、両端で。限度は自分のパネルに合わせる。',
  'Support pins are set as the drawing shows, none under a part of the other side.':
    'バックアップピンは図面どおりで、反対面の部品の下にはない。',
  'Program name and revision on every machine, as shown there.': '全機械に表示されたプログラム名と改訂。',
  'Oven profile: loaded, reached, and verified with this product?':
    'リフロープロファイル：読み込み、到達し、この製品で確認済みか。',
  'Inspection programs are of this product, side and revision.': '検査プログラムはこの製品・面・改訂のもの。',
  'First panel: every part is there and none is shifted.': '初品パネル：全部品があり、ずれがない。',
  'First panel: critical parts measured within tolerance, polarities looked at and right.':
    '初品パネル：重要部品は測定して許容差内、極性は目視して正しい。',
  'Picture of the first panel.': '初品パネルの写真。',
  'Operator and lead release the run.': 'オペレーターと班長が生産をリリースする。',
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.':
    'カバーを開けたり手を入れたりする前に、機械を止め、動きが完全に止まるまで待ってください。現場のロックアウト規則に従ってください。',
  'Blades and tape cutters cut: keep fingers out and cut away from you.':
    '刃やテープカッターで切れます：指を入れず、自分と反対に向けて切ってください。',
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.':
    'クリームはんだには手袋を着用し、ここで飲食せず、後で手を洗ってください。安全データシートを読んでください。',
  'Wear the wrist strap or the right shoes: parts are sensitive to static.':
    'リストストラップか正しい靴を着用してください：部品は静電気に弱いです。',
  'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.':
    '出庫リストの全リールを歩く順に並べ、不足は班長に伝えた。',
  'Panels good and scrapped of the old job, as counted.': '前のジョブの良品と廃棄のパネル、計数どおり。',
  'Support pins stand as the drawing shows; none under a part of the other side.':
    'バックアップピンは図面どおり。反対面の部品の下にはない。',
  'The change list is empty: every slot carries its verified reel.':
    '変更リストは空：全スロットに照合済みのリールがある。',
  'First panel: every part there, polarity and pin 1 as in the drawing.':
    '初品パネル：全部品があり、極性と1ピンが図面どおり。',
  'Critical parts measured and within tolerance.': '重要部品を測定し、許容差内。',
  'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).':
    'テスターでリストストラップまたは靴。限度：ストラップ系35 MΩ 未満（ANSI/ESD S20.20）。',
};

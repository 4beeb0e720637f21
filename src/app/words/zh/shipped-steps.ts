// The texts of the shipped checklists in Chinese, by their English sentence.

export const words: Readonly<Record<string, string>> = {
  Exchange: '更换',
  'The machine stands and nothing in it moves.': '机器已停，内部没有动作。',
  'What goes on was accepted for this slot.': '换上的已通过此站位的核对。',
  'First pocket and pin 1 lie as on the one before.': '首个料穴和第 1 脚方向与前一个相同。',
  'It is in up to the stop and locked.': '已推到底并锁好。',
  'The first picks after it were watched.': '更换后的头几次取料已看过。',
  Splice: '接料',
  'Start of shift': '接班',
  Changeover: '换线',
  'Make ready while the line runs': '产线运行时做准备',
  'Line clearance': '清线',
  'Stencil and paste': '钢网和锡膏',
  Feeders: '飞达',
  'Rails and support pins': '轨道和支撑针',
  'Program and revision': '程序和版本',
  'First panel': '首件拼板',
  Release: '放行',
  'The new reel was accepted for this slot.': '新料盘已被接受用于此站位。',
  'The new tape’s empty leader is cut off, up to its first part.': '新料带的前导空带已剪掉，剪到第一个元件。',
  'Both tapes are cut square, between pockets, so that the hole pitch runs on.':
    '两条料带都在料穴之间垂直剪齐，孔距保持连续。',
  'Joined flat, holes in line, same side up, cover tape joined too.':
    '接得平整，孔对齐，同一面朝上，盖带也已接好。',
  'Parts lie the same way in both tapes.': '两条料带里元件方向相同。',
  'The first picks after the joint were watched.': '接头后的头几次取料已看过。',
  'What the shift before handed over.': '上一班交接了什么。',
  'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).':
    '手腕带，或在此地面上的鞋，已在测试仪上通过。各有各的限值（ANSI/ESD S20.20）。',
  'Worn with a wrist strap: strap system, below 35 MΩ.': '戴手腕带时：腕带系统，低于 35 MΩ。',
  'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.':
    '穿鞋时：人、鞋和地面，低于 1000 MΩ；人体保持在 100 V 以下。',
  'Covers, guards and emergency stops are whole and free.': '护盖、防护装置和急停完好，无遮挡。',
  'The loaded line was swept: every reel scanned once.': '已上料的产线已对料：每盘扫过一次。',
  'Paste on the stencil is within its open time.': '钢网上的锡膏在其开放时间内。',
  'Humidity at the line.': '产线的湿度。',
  'Sound on this tablet is on and was heard.': '本平板声音已开，并已听到。',
  'Job papers, panel drawing and setup are at the line, in the right revision.':
    '任务单、拼板图和站位表都在线边，版本正确。',
  'All reels of the pick list are ready in walking order. The lead knows what is short.':
    '备料单的所有料盘已按行走顺序备好。班长知道缺什么。',
  'Feeders for the next product are loaded and verified off the line.': '下一产品的飞达已在线外上料并核对。',
  'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.':
    '下一产品的锡膏未开封，已按其说明书的时间回温到室温。',
  'Scan the next stencil: fetched, right revision, clean, no dent.':
    '扫描下一张钢网：已取来，版本正确，干净，无凹痕。',
  'Count of good and scrapped panels of the old job.': '旧任务的好拼板数和报废拼板数。',
  'No panel of the old job is left in printer, machines, buffers or oven.':
    '印刷机、机器、缓存和回流炉里没有旧任务的拼板。',
  'Reject bins and tape waste are emptied; loose parts are off the machine.':
    '抛料盒和废料带已清空；机器上没有散落元件。',
  'Old labels, papers and reels are off the line.': '旧标签、文件和料盘已撤离产线。',
  'Scan the stencil in the printer.': '扫描印刷机里的钢网。',
  'Squeegee blades are straight, clean and of the right length.': '刮刀平直、干净，长度正确。',
  'Scan the paste jar: alloy, lot and date fit.': '扫描锡膏罐：合金、批次和日期相符。',
  'Paste height on the first print, middle of five places. Set the limits for your stencil.':
    '首次印刷的锡膏高度，五点的中位值。请按所用钢网设限值。',
  'No moves left: no feeder to take out, move or put in.': '没有剩余移动：没有要取下、移位或装上的飞达。',
  'Every slot has its verified reel. No reel waits for a lead.':
    '每个站位都有核对过的料盘。没有料盘在等班长。',
  'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.':
    '每把飞达都放平并锁紧；料带已穿好，盖带已拉开。',
  'Two people have compared look-alike parts and polarity marks with the setup.':
    '两人已把相似物料和极性标记与站位表核对。',
  'Moisture-sensitive reels are within their floor life for this run.':
    '湿敏料盘在本次生产期间都在车间寿命内。',
  'Rail width: panel width plus play, at both ends. Set the limits for your panel.':
    '轨道宽度：拼板宽度加间隙，两端都量。请按所用拼板设限值。',
  'Support pins are set as the drawing shows, none under a part of the other side.':
    '支撑针按图放置，没有顶在另一面元件下的。',
  'Program name and revision on every machine, as shown there.': '每台机器上显示的程序名和版本。',
  'Oven profile: loaded, reached, and verified with this product?':
    '炉温曲线：已载入、已达到，并用本产品验证过？',
  'Inspection programs are of this product, side and revision.': '检测程序属于本产品、本面和本版本。',
  'First panel: every part is there and none is shifted.': '首件拼板：元件齐全，没有偏移。',
  'First panel: critical parts measured within tolerance, polarities looked at and right.':
    '首件拼板：关键物料测得在公差内，极性已目检且正确。',
  'Picture of the first panel.': '首件拼板的照片。',
  'Operator and lead release the run.': '操作员和班长放行生产。',
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.':
    '打开护盖或伸手之前先停机，等一切停止不动。遵守现场上锁规定。',
  'Blades and tape cutters cut: keep fingers out and cut away from you.':
    '刀片和料带切刀会割伤：手指不要伸入，刀口朝外剪。',
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.':
    '接触锡膏戴手套，此处禁止饮食，之后洗手。阅读安全数据表。',
  'Wear the wrist strap or the right shoes: parts are sensitive to static.':
    '戴手腕带或穿合适的鞋：元件对静电敏感。',
  'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.':
    '备料单的所有料盘已按行走顺序放好；缺料已告诉班长。',
  'Panels good and scrapped of the old job, as counted.': '旧任务的好拼板和报废拼板，按计数。',
  'Support pins stand as the drawing shows; none under a part of the other side.':
    '支撑针按图放置；没有顶在另一面元件下的。',
  'The change list is empty: every slot carries its verified reel.':
    '更换清单为空：每个站位都有核对过的料盘。',
  'First panel: every part there, polarity and pin 1 as in the drawing.':
    '首件拼板：元件齐全，极性和 1 脚与图一致。',
  'Critical parts measured and within tolerance.': '关键物料已测量，在公差内。',
  'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).':
    '在测试仪上测手腕带或鞋。限值：腕带系统低于 35 MΩ（ANSI/ESD S20.20）。',
};

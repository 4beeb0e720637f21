// The shipped checklists in Vietnamese: every title, heading, text, caution and option, by its English sentence.

export const words: Readonly<Record<string, string>> = {
  Exchange: 'Thay',
  'The machine stands and nothing in it moves.': 'Máy đứng yên và không có gì chuyển động.',
  'What goes on was accepted for this slot.': 'Thứ lắp vào đã được chấp nhận cho slot này.',
  'First pocket and pin 1 lie as on the one before.': 'Ô đầu tiên và chân 1 nằm như cái trước.',
  'It is in up to the stop and locked.': 'Đã đẩy hết cỡ và khóa.',
  'The first picks after it were watched.': 'Đã theo dõi các lần hút đầu sau khi thay.',
  Changeover: 'Đổi sản phẩm',
  'Make ready while the line runs': 'Chuẩn bị khi chuyền đang chạy',
  'Job papers, panel drawing and setup are at the line, in the right revision.':
    'Giấy tờ lệnh, bản vẽ panel và setup có ở chuyền, đúng phiên bản.',
  'All reels of the pick list are ready in walking order. The lead knows what is short.':
    'Mọi cuộn của phiếu lấy hàng đã sẵn theo thứ tự đi. Trưởng ca biết thiếu gì.',
  'Wear the wrist strap or the right shoes: parts are sensitive to static.':
    'Đeo vòng tay chống tĩnh điện hoặc đi đúng giày: linh kiện nhạy tĩnh điện.',
  'Feeders for the next product are loaded and verified off the line.':
    'Feeder cho sản phẩm tiếp theo đã lắp liệu và xác nhận ngoài chuyền.',
  'Blades and tape cutters cut: keep fingers out and cut away from you.':
    'Lưỡi dao và dao cắt băng gây đứt tay: để ngón tay ra ngoài và cắt hướng ra xa mình.',
  'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.':
    'Kem hàn cho sản phẩm tiếp theo đã về nhiệt độ phòng, chưa mở, đủ thời gian như tài liệu của nó ghi.',
  'Scan the next stencil: fetched, right revision, clean, no dent.':
    'Quét stencil tiếp theo: đã lấy, đúng phiên bản, sạch, không móp.',
  'Line clearance': 'Dọn chuyền',
  'Count of good and scrapped panels of the old job.': 'Số panel tốt và loại bỏ của lệnh cũ.',
  'No panel of the old job is left in printer, machines, buffers or oven.':
    'Không còn panel nào của lệnh cũ trong máy in kem hàn, các máy, bộ đệm hoặc lò hàn.',
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.':
    'Dừng máy và chờ mọi thứ đứng yên rồi mới mở nắp hoặc thò tay vào. Theo quy định khóa nguồn tại chỗ.',
  'Reject bins and tape waste are emptied; loose parts are off the machine.':
    'Đã đổ hết hộp hàng loại và băng thừa; không còn linh kiện rơi trên máy.',
  'Old labels, papers and reels are off the line.': 'Nhãn, giấy tờ và cuộn cũ đã ra khỏi chuyền.',
  'Stencil and paste': 'Stencil và kem hàn',
  'Scan the stencil in the printer.': 'Quét stencil trong máy in kem hàn.',
  'Squeegee blades are straight, clean and of the right length.': 'Lưỡi gạt thẳng, sạch và đúng chiều dài.',
  'Scan the paste jar: alloy, lot and date fit.': 'Quét hũ kem hàn: hợp kim, lô và ngày đều đúng.',
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.':
    'Đeo găng khi dùng kem hàn, không ăn uống ở đây, rửa tay sau đó. Đọc phiếu an toàn hóa chất.',
  'Paste height on the first print, middle of five places. Set the limits for your stencil.':
    'Độ cao kem hàn ở lần in đầu, trung vị của năm chỗ. Đặt giới hạn theo stencil của mình.',
  Feeders: 'Feeder',
  'No moves left: no feeder to take out, move or put in.':
    'Không còn lần chuyển nào: không feeder nào cần tháo, chuyển hay lắp.',
  'Every slot has its verified reel. No reel waits for a lead.':
    'Mọi slot có cuộn đã xác nhận. Không cuộn nào chờ trưởng ca.',
  'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.':
    'Mọi feeder nằm phẳng và đã khóa; băng đã luồn, màng phủ đã kéo ra.',
  'Two people have compared look-alike parts and polarity marks with the setup.':
    'Hai người đã so linh kiện giống nhau và dấu cực tính với setup.',
  'Moisture-sensitive reels are within their floor life for this run.':
    'Các cuộn nhạy ẩm còn trong hạn ngoài bao cho đợt chạy này.',
  'Rails and support pins': 'Ray và chân đỡ',
  'Rail width: panel width plus play, at both ends. Set the limits for your panel.':
    'Độ rộng ray: bề rộng panel cộng độ hở, ở cả hai đầu. Đặt giới hạn theo panel của mình.',
  'Support pins are set as the drawing shows, none under a part of the other side.':
    'Chân đỡ đặt đúng bản vẽ, không chân nào dưới linh kiện của mặt kia.',
  'Program and revision': 'Chương trình và phiên bản',
  'Program name and revision on every machine, as shown there.':
    'Tên và phiên bản chương trình trên từng máy, đúng như hiện ở đó.',
  'Oven profile: loaded, reached, and verified with this product?':
    'Profile nhiệt lò hàn: đã nạp, đã đạt, và đã xác nhận với sản phẩm này?',
  'Inspection programs are of this product, side and revision.':
    'Chương trình kiểm tra đúng sản phẩm, mặt và phiên bản này.',
  'First panel': 'Panel đầu',
  'First panel: every part is there and none is shifted.':
    'Panel đầu: đủ mọi linh kiện và không con nào bị lệch.',
  'First panel: critical parts measured within tolerance, polarities looked at and right.':
    'Panel đầu: linh kiện trọng yếu đo trong dung sai, cực tính đã nhìn và đúng.',
  'Picture of the first panel.': 'Ảnh của panel đầu.',
  Release: 'Duyệt chạy',
  'Operator and lead release the run.': 'Vận hành viên và trưởng ca duyệt đợt chạy.',
  Splice: 'Nối liệu',
  'The new reel was accepted for this slot.': 'Cuộn mới đã được nhận cho slot này.',
  'The new tape’s empty leader is cut off, up to its first part.':
    'Đoạn băng trống đầu (leader) của băng mới đã cắt, đến con đầu tiên.',
  'Both tapes are cut square, between pockets, so that the hole pitch runs on.':
    'Hai băng cắt vuông, giữa các hốc, để bước lỗ chạy liền nhau.',
  'Joined flat, holes in line, same side up, cover tape joined too.':
    'Nối phẳng, lỗ thẳng hàng, cùng mặt lên trên, màng phủ cũng nối.',
  'Parts lie the same way in both tapes.': 'Linh kiện nằm cùng chiều trong cả hai băng.',
  'The first picks after the joint were watched.': 'Đã theo dõi các lần hút đầu sau mối nối.',
  'Start of shift': 'Đầu ca',
  'What the shift before handed over.': 'Ca trước bàn giao những gì.',
  'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).':
    'Vòng tay, hoặc giày trên sàn này, đã đạt ở máy thử. Mỗi thứ có giới hạn riêng (ANSI/ESD S20.20).',
  'Worn with a wrist strap: strap system, below 35 MΩ.': 'Đeo vòng tay: hệ vòng tay, dưới 35 MΩ.',
  'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.':
    'Đi giày: người, giày và sàn, dưới 1000 MΩ; thân người luôn dưới 100 V.',
  'Covers, guards and emergency stops are whole and free.':
    'Nắp, che chắn và nút dừng khẩn còn nguyên và không bị vướng.',
  'The loaded line was swept: every reel scanned once.': 'Đã rà chuyền đã lắp: mỗi cuộn quét một lần.',
  'Paste on the stencil is within its open time.': 'Kem hàn trên stencil còn trong thời gian mở.',
  'Humidity at the line.': 'Độ ẩm ở chuyền.',
  'Sound on this tablet is on and was heard.': 'Âm thanh trên tablet này đang bật và đã nghe thấy.',
  'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.':
    'Mọi cuộn của phiếu lấy hàng để sẵn theo thứ tự đi; đã báo trưởng ca những gì thiếu.',
  'Panels good and scrapped of the old job, as counted.': 'Panel tốt và loại bỏ của lệnh cũ, như đã đếm.',
  'The change list is empty: every slot carries its verified reel.':
    'Danh sách thay đổi trống: mọi slot có cuộn đã xác nhận.',
  'Support pins stand as the drawing shows; none under a part of the other side.':
    'Chân đỡ đứng đúng bản vẽ; không chân nào dưới linh kiện của mặt kia.',
  'First panel: every part there, polarity and pin 1 as in the drawing.':
    'Panel đầu: đủ mọi linh kiện, cực tính và chân 1 như bản vẽ.',
  'Critical parts measured and within tolerance.': 'Linh kiện trọng yếu đã đo và trong dung sai.',
  'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).':
    'Vòng tay hoặc giày ở máy thử. Giới hạn: hệ vòng tay dưới 35 MΩ (ANSI/ESD S20.20).',
};

// The texts of the shipped checklists in Korean, by their English sentence.

export const words: Readonly<Record<string, string>> = {
  Exchange: '교체',
  'The machine stands and nothing in it moves.': '설비가 멈췄고 안에서 아무것도 움직이지 않습니다.',
  'What goes on was accepted for this slot.': '올리는 것이 이 슬롯에 합격했습니다.',
  'First pocket and pin 1 lie as on the one before.': '첫 포켓과 1번 핀 방향이 앞의 것과 같습니다.',
  'It is in up to the stop and locked.': '끝까지 밀어 넣고 잠갔습니다.',
  'The first picks after it were watched.': '교체 뒤 첫 흡착들을 지켜봤습니다.',
  Splice: '스플라이스',
  'Start of shift': '교대 시작',
  Changeover: '기종 교체',
  'Make ready while the line runs': '라인이 도는 동안 준비',
  'Line clearance': '라인 클리어런스',
  'Stencil and paste': '메탈 마스크와 솔더 페이스트',
  Feeders: '피더',
  'Rails and support pins': '레일과 백업 핀',
  'Program and revision': '프로그램과 리비전',
  'First panel': '첫 패널',
  Release: '승인',
  'The new reel was accepted for this slot.': '새 릴이 이 슬롯용으로 합격했습니다.',
  'The new tape’s empty leader is cut off, up to its first part.':
    '새 테이프의 빈 리더를 첫 부품까지 잘라 냈습니다.',
  'Both tapes are cut square, between pockets, so that the hole pitch runs on.':
    '두 테이프를 포켓 사이에서 직각으로 잘라 구멍 피치가 이어집니다.',
  'Joined flat, holes in line, same side up, cover tape joined too.':
    '평평하게 이었고, 구멍이 맞고, 같은 면이 위이며, 커버 테이프도 이었습니다.',
  'Parts lie the same way in both tapes.': '두 테이프에서 부품 방향이 같습니다.',
  'The first picks after the joint were watched.': '이음매 뒤 첫 흡착들을 지켜봤습니다.',
  'What the shift before handed over.': '앞 교대가 인계한 것.',
  'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).':
    '손목 스트랩 또는 이 바닥에서의 신발이 시험기에서 합격했습니다. 각각 한도가 다릅니다(ANSI/ESD S20.20).',
  'Worn with a wrist strap: strap system, below 35 MΩ.': '손목 스트랩 착용 시: 스트랩 계통, 35 MΩ 미만.',
  'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.':
    '신발 착용 시: 사람, 신발, 바닥, 1000 MΩ 미만. 인체는 100 V 미만을 유지합니다.',
  'Covers, guards and emergency stops are whole and free.':
    '커버, 방호 장치, 비상 정지가 온전하고 막힌 것이 없습니다.',
  'The loaded line was swept: every reel scanned once.':
    '장착된 라인을 전수 확인했습니다: 모든 릴을 한 번씩 스캔.',
  'Paste on the stencil is within its open time.':
    '메탈 마스크 위의 솔더 페이스트가 사용 가능 시간 안에 있습니다.',
  'Humidity at the line.': '라인의 습도.',
  'Sound on this tablet is on and was heard.': '이 태블릿의 소리가 켜져 있고 들렸습니다.',
  'Job papers, panel drawing and setup are at the line, in the right revision.':
    '작업 서류, 패널 도면, 셋업이 라인에 있고 리비전이 맞습니다.',
  'All reels of the pick list are ready in walking order. The lead knows what is short.':
    '불출 목록의 모든 릴이 걷는 순서로 준비되었습니다. 무엇이 부족한지 반장이 압니다.',
  'Feeders for the next product are loaded and verified off the line.':
    '다음 제품의 피더를 라인 밖에서 장착하고 확인했습니다.',
  'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.':
    '다음 제품의 솔더 페이스트를 개봉하지 않고 설명서의 시간만큼 두어 실온이 되었습니다.',
  'Scan the next stencil: fetched, right revision, clean, no dent.':
    '다음 메탈 마스크를 스캔하십시오: 가져왔고, 리비전이 맞고, 깨끗하고, 찌그러짐 없음.',
  'Count of good and scrapped panels of the old job.': '이전 작업의 양품 패널과 폐기 패널 수.',
  'No panel of the old job is left in printer, machines, buffers or oven.':
    '인쇄기, 설비, 버퍼, 오븐에 이전 작업의 패널이 남아 있지 않습니다.',
  'Reject bins and tape waste are emptied; loose parts are off the machine.':
    '불량 통과 테이프 쓰레기를 비웠고, 설비에 흩어진 부품이 없습니다.',
  'Old labels, papers and reels are off the line.': '이전 라벨, 서류, 릴을 라인에서 치웠습니다.',
  'Scan the stencil in the printer.': '인쇄기의 메탈 마스크를 스캔하십시오.',
  'Squeegee blades are straight, clean and of the right length.':
    '스퀴지 날이 곧고 깨끗하며 길이가 맞습니다.',
  'Scan the paste jar: alloy, lot and date fit.':
    '솔더 페이스트 용기를 스캔하십시오: 합금, 로트, 날짜가 맞음.',
  'Paste height on the first print, middle of five places. Set the limits for your stencil.':
    '첫 인쇄의 솔더 페이스트 높이, 다섯 곳의 중앙값. 한계는 쓰는 메탈 마스크에 맞추십시오.',
  'No moves left: no feeder to take out, move or put in.':
    '남은 이동 없음: 빼거나 옮기거나 끼울 피더가 없습니다.',
  'Every slot has its verified reel. No reel waits for a lead.':
    '모든 슬롯에 확인된 릴이 있습니다. 반장을 기다리는 릴이 없습니다.',
  'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.':
    '모든 피더가 평평하게 앉아 잠겼고, 테이프를 끼웠고, 커버 테이프를 당겨 냈습니다.',
  'Two people have compared look-alike parts and polarity marks with the setup.':
    '두 사람이 비슷한 부품과 극성 표시를 셋업과 대조했습니다.',
  'Moisture-sensitive reels are within their floor life for this run.':
    '습기에 민감한 릴이 이 생산 동안 플로어 라이프 안에 있습니다.',
  'Rail width: panel width plus play, at both ends. Set the limits for your panel.':
    '레일 폭: 패널 폭에 여유를 더한 값, 양끝에서. 한계는 쓰는 패널에 맞추십시오.',
  'Support pins are set as the drawing shows, none under a part of the other side.':
    '백업 핀이 도면대로 있고, 반대 면의 부품 밑에는 없습니다.',
  'Program name and revision on every machine, as shown there.': '모든 설비에 표시된 프로그램 이름과 리비전.',
  'Oven profile: loaded, reached, and verified with this product?':
    '오븐 프로파일: 불러왔고, 도달했고, 이 제품으로 확인했습니까?',
  'Inspection programs are of this product, side and revision.':
    '검사 프로그램이 이 제품, 면, 리비전의 것입니다.',
  'First panel: every part is there and none is shifted.': '첫 패널: 모든 부품이 있고 틀어진 것이 없습니다.',
  'First panel: critical parts measured within tolerance, polarities looked at and right.':
    '첫 패널: 중요 부품을 측정해 허용차 안이고, 극성을 눈으로 보아 맞습니다.',
  'Picture of the first panel.': '첫 패널의 사진.',
  'Operator and lead release the run.': '작업자와 반장이 생산을 승인합니다.',
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.':
    '커버를 열거나 손을 넣기 전에 설비를 멈추고 아무것도 움직이지 않을 때까지 기다리십시오. 현장의 잠금 규칙을 따르십시오.',
  'Blades and tape cutters cut: keep fingers out and cut away from you.':
    '칼날과 테이프 커터에 베입니다: 손가락을 넣지 말고 몸 반대쪽으로 자르십시오.',
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.':
    '솔더 페이스트를 다룰 때는 장갑을 끼고, 여기서 음식을 먹지 말고, 나중에 손을 씻으십시오. 안전보건자료를 읽으십시오.',
  'Wear the wrist strap or the right shoes: parts are sensitive to static.':
    '손목 스트랩이나 맞는 신발을 착용하십시오: 부품은 정전기에 민감합니다.',
  'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.':
    '불출 목록의 모든 릴이 걷는 순서로 놓여 있고, 부족한 것은 반장에게 알렸습니다.',
  'Panels good and scrapped of the old job, as counted.': '이전 작업의 양품 패널과 폐기 패널, 센 대로.',
  'Support pins stand as the drawing shows; none under a part of the other side.':
    '백업 핀이 도면대로 서 있습니다. 반대 면의 부품 밑에는 없습니다.',
  'The change list is empty: every slot carries its verified reel.':
    '변경 목록이 비었습니다: 모든 슬롯에 확인된 릴이 있습니다.',
  'First panel: every part there, polarity and pin 1 as in the drawing.':
    '첫 패널: 모든 부품이 있고, 극성과 1번 핀이 도면대로입니다.',
  'Critical parts measured and within tolerance.': '중요 부품을 측정했고 허용차 안입니다.',
  'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).':
    '시험기에서 손목 스트랩이나 신발. 한도: 스트랩 계통 35 MΩ 미만(ANSI/ESD S20.20).',
};

// The checklists that come with the tool, in Hungarian: English sentence -> Hungarian.

export const words: Readonly<Record<string, string>> = {
  Exchange: 'Csere',
  'The machine stands and nothing in it moves.': 'A gép áll, és semmi nem mozog benne.',
  'What goes on was accepted for this slot.': 'Ami felkerül, azt erre a helyre elfogadták.',
  'First pocket and pin 1 lie as on the one before.':
    'Az első fészek és az 1-es láb úgy áll, mint az előzőn.',
  'It is in up to the stop and locked.': 'Ütközésig be van tolva és rögzítve.',
  'The first picks after it were watched.': 'A csere utáni első felszedések megfigyelve.',
  // Titles and headings.
  Changeover: 'Átállás',
  Splice: 'Toldás',
  'Start of shift': 'Műszakkezdés',
  'Make ready while the line runs': 'Előkészítés, amíg a sor megy',
  'Line clearance': 'Sor kiürítése',
  'Stencil and paste': 'Stencil és paszta',
  Feeders: 'Feederek',
  'Rails and support pins': 'Sínek és alátámasztó tüskék',
  'Program and revision': 'Program és revízió',
  'First panel': 'Első panel',
  Release: 'Engedélyezés',
  // Cautions.
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.':
    'Állítsa le a gépet, és várja meg, hogy semmi ne mozogjon, mielőtt burkolatot nyit vagy benyúl. Kövesse a helyi kizárási szabályt.',
  'Blades and tape cutters cut: keep fingers out and cut away from you.':
    'A kések és szalagvágók vágnak: tartsa távol az ujjait, és magától elfelé vágjon.',
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.':
    'Pasztához viseljen kesztyűt, itt ne egyen, utána mosson kezet. Olvassa el a biztonsági adatlapot.',
  'Wear the wrist strap or the right shoes: parts are sensitive to static.':
    'Viseljen csuklópántot vagy megfelelő cipőt: az alkatrészek érzékenyek a sztatikus feltöltődésre.',
  // Changeover.
  'Job papers, panel drawing and setup are at the line, in the right revision.':
    'A munka papírjai, a panelrajz és a setup a sornál van, a megfelelő revízióban.',
  'All reels of the pick list are ready in walking order. The lead knows what is short.':
    'A kiszedési lista minden tekercse készen áll, bejárási sorrendben. A műszakvezető tudja, mi hiányzik.',
  'Feeders for the next product are loaded and verified off the line.':
    'A következő termék feederei a sor mellett fel vannak rakva és ellenőrizve.',
  'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.':
    'A következő termék pasztája bontatlanul szobahőmérsékletre melegedett, annyi ideig, amennyit az adatlapja ír.',
  'Scan the next stencil: fetched, right revision, clean, no dent.':
    'Olvassa be a következő stencilt: kihozva, jó revízió, tiszta, nincs rajta horpadás.',
  'Count of good and scrapped panels of the old job.': 'A régi munka jó és selejtezett paneljeinek száma.',
  'No panel of the old job is left in printer, machines, buffers or oven.':
    'A régi munkából nem maradt panel a pasztanyomtatóban, a gépekben, a pufferekben és a kemencében.',
  'Reject bins and tape waste are emptied; loose parts are off the machine.':
    'A selejtgyűjtők és a szalaghulladék kiürítve; a szabadon heverő alkatrészek eltávolítva a gépről.',
  'Old labels, papers and reels are off the line.':
    'A régi címkék, papírok és tekercsek lekerültek a sorról.',
  'Scan the stencil in the printer.': 'Olvassa be a pasztanyomtatóban lévő stencilt.',
  'Squeegee blades are straight, clean and of the right length.':
    'A rakelkések egyenesek, tiszták és megfelelő hosszúságúak.',
  'Scan the paste jar: alloy, lot and date fit.':
    'Olvassa be a pasztás tégelyt: az ötvözet, a tétel és a dátum megfelel.',
  'Paste height on the first print, middle of five places. Set the limits for your stencil.':
    'Pasztamagasság az első nyomaton, öt pont középső értéke. Állítsa be a határokat a saját stenciljéhez.',
  'No moves left: no feeder to take out, move or put in.':
    'Nincs több mozgatás: nincs kiveendő, áthelyezendő vagy beteendő feeder.',
  'Every slot has its verified reel. No reel waits for a lead.':
    'Minden helyen ott van az ellenőrzött tekercse. Egy tekercs sem vár műszakvezetőre.',
  'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.':
    'Minden feeder síkban ül és rögzítve van; a szalagok befűzve, a fedőfóliák elhúzva.',
  'Two people have compared look-alike parts and polarity marks with the setup.':
    'Két személy összevetette a hasonló kinézetű alkatrészeket és a polaritásjeleket a setuppal.',
  'Moisture-sensitive reels are within their floor life for this run.':
    'A nedvességre érzékeny tekercsek e gyártás alatt a nyitott idejükön belül vannak.',
  'Rail width: panel width plus play, at both ends. Set the limits for your panel.':
    'Síntávolság: panelszélesség plusz játék, mindkét végén. Állítsa be a határokat a saját paneljéhez.',
  'Support pins are set as the drawing shows, none under a part of the other side.':
    'Az alátámasztó tüskék a rajz szerint állnak, egyik sincs a másik oldal alkatrésze alatt.',
  'Program name and revision on every machine, as shown there.':
    'A program neve és revíziója minden gépen, ahogy ott látszik.',
  'Oven profile: loaded, reached, and verified with this product?':
    'Kemenceprofil: betöltve, elérve és ezzel a termékkel ellenőrizve?',
  'Inspection programs are of this product, side and revision.':
    'Az ellenőrző programok ehhez a termékhez, oldalhoz és revízióhoz valók.',
  'First panel: every part is there and none is shifted.':
    'Első panel: minden alkatrész megvan, és egyik sem csúszott el.',
  'First panel: critical parts measured within tolerance, polarities looked at and right.':
    'Első panel: a kritikus alkatrészek mérve, tűrésen belül; a polaritások megnézve és jók.',
  'Picture of the first panel.': 'Fénykép az első panelről.',
  'Operator and lead release the run.': 'Az operátor és a műszakvezető engedélyezi a gyártást.',
  // Changeover as it was asked in version 1.
  'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.':
    'A kiszedési lista minden tekercse bejárási sorrendben készen áll; a hiányokat a műszakvezető megtudta.',
  'Panels good and scrapped of the old job, as counted.':
    'A régi munka jó és selejtezett paneljei, a számolás szerint.',
  'Support pins stand as the drawing shows; none under a part of the other side.':
    'Az alátámasztó tüskék úgy állnak, ahogy a rajz mutatja; egyik sincs a másik oldal alkatrésze alatt.',
  'The change list is empty: every slot carries its verified reel.':
    'Az átállási lista üres: minden helyen ott van az ellenőrzött tekercse.',
  'First panel: every part there, polarity and pin 1 as in the drawing.':
    'Első panel: minden alkatrész megvan, a polaritás és az 1. láb a rajz szerint.',
  'Critical parts measured and within tolerance.': 'A kritikus alkatrészek mérve, tűrésen belül.',
  // Splice.
  'The new reel was accepted for this slot.': 'Az új tekercs erre a helyre el lett fogadva.',
  'The new tape’s empty leader is cut off, up to its first part.':
    'Az új szalag üres előfutója levágva, az első alkatrészéig.',
  'Both tapes are cut square, between pockets, so that the hole pitch runs on.':
    'Mindkét szalag derékszögben, zsebek között elvágva, hogy a lyukosztás folytatódjon.',
  'Joined flat, holes in line, same side up, cover tape joined too.':
    'Síkban illesztve, a lyukak egy vonalban, azonos oldal felül, a fedőfólia is illesztve.',
  'Parts lie the same way in both tapes.': 'Az alkatrészek mindkét szalagban azonos irányban állnak.',
  'The first picks after the joint were watched.': 'A toldás helye utáni első felszedések megfigyelve.',
  // Start of shift.
  'What the shift before handed over.': 'Mit adott át az előző műszak.',
  'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).':
    'A csuklópánt, vagy a cipő ezen a padlón, megfelelt a teszteren. Mindkettőnek saját határa van (ANSI/ESD S20.20).',
  'Worn with a wrist strap: strap system, below 35 MΩ.': 'Csuklópánttal: a pánt rendszere, 35 MΩ alatt.',
  'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.':
    'Cipővel: személy, cipő és padló, 1000 MΩ alatt; a test 100 V alatt marad.',
  'Covers, guards and emergency stops are whole and free.':
    'A burkolatok, védőelemek és vészleállítók épek és szabadon hozzáférhetők.',
  'The loaded line was swept: every reel scanned once.':
    'A felrakott sor bejárása megtörtént: minden tekercs egyszer beolvasva.',
  'Paste on the stencil is within its open time.': 'A stencilen lévő paszta a pasztaidején belül van.',
  'Humidity at the line.': 'Páratartalom a sornál.',
  'Sound on this tablet is on and was heard.': 'A tablet hangja be van kapcsolva, és hallatszott.',
  'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).':
    'Csuklópánt vagy cipő a teszteren. Határ: a pánt rendszere 35 MΩ alatt (ANSI/ESD S20.20).',
};

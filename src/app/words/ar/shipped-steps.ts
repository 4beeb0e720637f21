// The shipped checklists in Arabic: what each English text is called. Keys are the English texts as they ship, older versions too.

export const words: Readonly<Record<string, string>> = {
  Exchange: 'استبدال',
  'The machine stands and nothing in it moves.': 'الآلة متوقفة ولا شيء يتحرك فيها.',
  'What goes on was accepted for this slot.': 'ما يُركّب قُبل لهذا الموضع.',
  'First pocket and pin 1 lie as on the one before.': 'الجيب الأول والطرف 1 كما في السابق.',
  'It is in up to the stop and locked.': 'أُدخل حتى النهاية وأُقفل.',
  'The first picks after it were watched.': 'رُوقبت أول الالتقاطات بعد الاستبدال.',
  // Titles and groups.
  Changeover: 'تبديل المنتج',
  Splice: 'الوصل',
  'Start of shift': 'بدء الوردية',
  'Make ready while the line runs': 'التجهيز والخط يعمل',
  'Line clearance': 'إخلاء الخط',
  'Stencil and paste': 'الاستنسل ومعجون اللحام',
  Feeders: 'المغذيات',
  'Rails and support pins': 'السكك ودبابيس الإسناد',
  'Program and revision': 'البرنامج والمراجعة',
  'First panel': 'اللوحة الأولى',
  Release: 'الإطلاق',

  // Cautions.
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.':
    'أوقف الآلة وانتظر حتى لا يتحرك شيء قبل أن تفتح غطاء أو تُدخل يدك. اتبع قاعدة القفل المحلية.',
  'Blades and tape cutters cut: keep fingers out and cut away from you.':
    'الشفرات وقاطعات الشريط تجرح: أبعد أصابعك واقطع بعيدًا عنك.',
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.':
    'البس قفازين مع معجون اللحام، ولا طعام هنا، واغسل يديك بعده. اقرأ نشرة بيانات السلامة.',
  'Wear the wrist strap or the right shoes: parts are sensitive to static.':
    'البس رباط المعصم أو الحذاء المناسب: القطع حساسة للكهرباء الساكنة.',

  // Changeover.
  'Job papers, panel drawing and setup are at the line, in the right revision.':
    'أوراق العمل ورسم اللوحة والإعداد عند الخط، بالمراجعة الصحيحة.',
  'All reels of the pick list are ready in walking order. The lead knows what is short.':
    'كل بكرات قائمة الإحضار جاهزة بترتيب السير. يعرف المشرف ما ينقص.',
  'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.':
    'كل بكرات قائمة الإحضار جاهزة بترتيب السير؛ أُبلغ المشرف بما ينقص.',
  'Feeders for the next product are loaded and verified off the line.':
    'مغذيات المنتج التالي محمّلة وتُحقق منها خارج الخط.',
  'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.':
    'بلغ معجون المنتج التالي حرارة الغرفة، مغلقًا، المدة التي تقولها نشرته.',
  'Scan the next stencil: fetched, right revision, clean, no dent.':
    'امسح الاستنسل التالي: أُحضر، بالمراجعة الصحيحة، نظيف، بلا انبعاج.',
  'Count of good and scrapped panels of the old job.': 'عدد اللوحات السليمة والمتلفة من أمر العمل السابق.',
  'Panels good and scrapped of the old job, as counted.':
    'اللوحات السليمة والمتلفة من أمر العمل السابق، كما عُدّت.',
  'No panel of the old job is left in printer, machines, buffers or oven.':
    'لم تبق لوحة من أمر العمل السابق في الطابعة أو الآلات أو المخازن الوسيطة أو الفرن.',
  'Reject bins and tape waste are emptied; loose parts are off the machine.':
    'أُفرغت حاويات المرفوضات وبقايا الشريط؛ ولا قطع سائبة على الآلة.',
  'Old labels, papers and reels are off the line.': 'الملصقات والأوراق والبكرات السابقة خارج الخط.',
  'Scan the stencil in the printer.': 'امسح الاستنسل الذي في الطابعة.',
  'Squeegee blades are straight, clean and of the right length.':
    'شفرات الممسحة مستقيمة ونظيفة وبالطول الصحيح.',
  'Scan the paste jar: alloy, lot and date fit.': 'امسح علبة المعجون: السبيكة والدفعة والتاريخ مناسبة.',
  'Paste height on the first print, middle of five places. Set the limits for your stencil.':
    'ارتفاع المعجون في أول طباعة، وسيط خمسة أماكن. اضبط الحدود لاستنسلك.',
  'No moves left: no feeder to take out, move or put in.':
    'لا نقلات باقية: لا مغذٍ للإخراج أو النقل أو التركيب.',
  'The change list is empty: every slot carries its verified reel.':
    'قائمة التغيير فارغة: على كل موضع بكرته التي تُحقق منها.',
  'Every slot has its verified reel. No reel waits for a lead.':
    'لكل موضع بكرته التي تُحقق منها. لا بكرة تنتظر مشرفًا.',
  'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.':
    'كل مغذٍ مستوٍ ومقفل؛ الأشرطة ممررة، وأشرطة التغطية مسحوبة.',
  'Two people have compared look-alike parts and polarity marks with the setup.':
    'قارن شخصان القطع المتشابهة وعلامات القطبية بالإعداد.',
  'Moisture-sensitive reels are within their floor life for this run.':
    'البكرات الحساسة للرطوبة ضمن مهلة التعرض لهذا التشغيل.',
  'Rail width: panel width plus play, at both ends. Set the limits for your panel.':
    'عرض السكة: عرض اللوحة مع الخلوص، عند الطرفين. اضبط الحدود للوحتك.',
  'Support pins are set as the drawing shows, none under a part of the other side.':
    'دبابيس الإسناد كما في الرسم، ولا دبوس تحت قطعة من الوجه الآخر.',
  'Support pins stand as the drawing shows; none under a part of the other side.':
    'دبابيس الإسناد قائمة كما في الرسم؛ ولا دبوس تحت قطعة من الوجه الآخر.',
  'Program name and revision on every machine, as shown there.':
    'اسم البرنامج ومراجعته على كل آلة، كما يظهر هناك.',
  'Oven profile: loaded, reached, and verified with this product?':
    'منحنى الفرن: هل حُمّل، وبُلغ، وتُحقق منه بهذا المنتج؟',
  'Inspection programs are of this product, side and revision.':
    'برامج الفحص لهذا المنتج وهذا الوجه وهذه المراجعة.',
  'First panel: every part is there and none is shifted.': 'اللوحة الأولى: كل القطع موجودة ولا قطعة مزاحة.',
  'First panel: every part there, polarity and pin 1 as in the drawing.':
    'اللوحة الأولى: كل القطع موجودة، والقطبية والطرف 1 كما في الرسم.',
  'First panel: critical parts measured within tolerance, polarities looked at and right.':
    'اللوحة الأولى: القطع الحرجة مقيسة ضمن السماحية، والقطبية منظورة وصحيحة.',
  'Critical parts measured and within tolerance.': 'القطع الحرجة مقيسة وضمن السماحية.',
  'Picture of the first panel.': 'صورة اللوحة الأولى.',
  'Operator and lead release the run.': 'المشغّل والمشرف يطلقان التشغيل.',

  // Splice.
  'The new reel was accepted for this slot.': 'قُبلت البكرة الجديدة لهذا الموضع.',
  'The new tape’s empty leader is cut off, up to its first part.':
    'قُطعت مقدمة الشريط الجديد الفارغة، حتى أول قطعة.',
  'Both tapes are cut square, between pockets, so that the hole pitch runs on.':
    'قُطع الشريطان قطعًا قائمًا، بين الجيوب، لتستمر خطوة الثقوب.',
  'Joined flat, holes in line, same side up, cover tape joined too.':
    'الوصلة مستوية، والثقوب على خط واحد، والوجه نفسه إلى الأعلى، وشريط التغطية موصول أيضًا.',
  'Parts lie the same way in both tapes.': 'القطع في الشريطين بالاتجاه نفسه.',
  'The first picks after the joint were watched.': 'رُوقبت أول الالتقاطات بعد نقطة الوصل.',

  // Start of shift.
  'What the shift before handed over.': 'ما سلّمته الوردية السابقة.',
  'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).':
    'رباط المعصم، أو الحذاء على هذه الأرضية، اجتاز جهاز الاختبار. لكل منهما حدّه (ANSI/ESD S20.20).',
  'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).':
    'رباط المعصم أو الحذاء على جهاز الاختبار. الحد: نظام الرباط أقل من \u206635 MΩ\u2069 (ANSI/ESD S20.20).',
  'Worn with a wrist strap: strap system, below 35 MΩ.':
    'مع رباط المعصم: نظام الرباط، أقل من \u206635 MΩ\u2069.',
  'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.':
    'مع الحذاء: الشخص والحذاء والأرضية، أقل من \u20661000 MΩ\u2069؛ ويبقى الجسم تحت \u2066100 V\u2069.',
  'Covers, guards and emergency stops are whole and free.':
    'الأغطية ووسائل الحماية وأزرار الإيقاف الطارئ سليمة وغير معاقة.',
  'The loaded line was swept: every reel scanned once.': 'فُحص الخط المحمّل: مُسحت كل بكرة مرة.',
  'Paste on the stencil is within its open time.': 'معجون اللحام على الاستنسل ضمن مدة فتحه.',
  'Humidity at the line.': 'الرطوبة عند الخط.',
  'Sound on this tablet is on and was heard.': 'الصوت على هذا الجهاز مفعّل وسُمع.',
};

// The shipped checklists in Polish: every title, heading, text, caution and option, by its English sentence.

export const words: Readonly<Record<string, string>> = {
  Exchange: 'Wymiana',
  'The machine stands and nothing in it moves.': 'Maszyna stoi i nic się w niej nie rusza.',
  'What goes on was accepted for this slot.': 'To, co zakładasz, zostało przyjęte dla tego miejsca.',
  'First pocket and pin 1 lie as on the one before.': 'Pierwsze gniazdo i pin 1 leżą jak poprzednio.',
  'It is in up to the stop and locked.': 'Jest wsunięte do oporu i zablokowane.',
  'The first picks after it were watched.': 'Obserwowano pierwsze pobrania po wymianie.',
  Changeover: 'Przezbrojenie',
  'Make ready while the line runs': 'Przygotuj, gdy linia pracuje',
  'Job papers, panel drawing and setup are at the line, in the right revision.':
    'Dokumenty zlecenia, rysunek panelu i setup są przy linii, we właściwej rewizji.',
  'All reels of the pick list are ready in walking order. The lead knows what is short.':
    'Wszystkie rolki z listy pobrań są gotowe w kolejności obchodu. Lider wie, czego brakuje.',
  'Wear the wrist strap or the right shoes: parts are sensitive to static.':
    'Noś opaskę na nadgarstek albo właściwe buty: komponenty są wrażliwe na ładunki elektrostatyczne.',
  'Feeders for the next product are loaded and verified off the line.':
    'Podajniki następnego produktu są załadowane i zweryfikowane poza linią.',
  'Blades and tape cutters cut: keep fingers out and cut away from you.':
    'Ostrza i noże do taśmy tną: trzymaj palce z dala i tnij od siebie.',
  'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.':
    'Pasta na następny produkt osiągnęła temperaturę pokojową, nieotwarta, przez tyle czasu, ile mówi jej karta.',
  'Scan the next stencil: fetched, right revision, clean, no dent.':
    'Zeskanuj następny szablon: przyniesiony, właściwa rewizja, czysty, bez wgnieceń.',
  'Line clearance': 'Oczyszczenie linii',
  'Count of good and scrapped panels of the old job.':
    'Liczba dobrych i złomowanych paneli poprzedniego zlecenia.',
  'No panel of the old job is left in printer, machines, buffers or oven.':
    'Żaden panel poprzedniego zlecenia nie został w drukarce, maszynach, buforach ani piecu lutowniczym.',
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.':
    'Zatrzymaj maszynę i poczekaj, aż nic się nie rusza, zanim otworzysz osłonę lub sięgniesz do środka. Przestrzegaj lokalnej zasady blokowania energii.',
  'Reject bins and tape waste are emptied; loose parts are off the machine.':
    'Pojemniki na odrzuty i resztki taśmy są opróżnione; na maszynie nie ma luźnych komponentów.',
  'Old labels, papers and reels are off the line.': 'Stare etykiety, dokumenty i rolki są poza linią.',
  'Stencil and paste': 'Szablon i pasta',
  'Scan the stencil in the printer.': 'Zeskanuj szablon w drukarce.',
  'Squeegee blades are straight, clean and of the right length.':
    'Rakle są proste, czyste i właściwej długości.',
  'Scan the paste jar: alloy, lot and date fit.': 'Zeskanuj słoik pasty: stop, partia i data pasują.',
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.':
    'Przy paście noś rękawice, nie jedz tutaj, potem umyj ręce. Przeczytaj kartę charakterystyki.',
  'Paste height on the first print, middle of five places. Set the limits for your stencil.':
    'Wysokość pasty na pierwszym wydruku, mediana z pięciu miejsc. Ustaw granice dla swojego szablonu.',
  Feeders: 'Podajniki',
  'No moves left: no feeder to take out, move or put in.':
    'Nie ma już przestawień: żadnego podajnika do wyjęcia, przestawienia ani włożenia.',
  'Every slot has its verified reel. No reel waits for a lead.':
    'Każdy slot ma swoją zweryfikowaną rolkę. Żadna rolka nie czeka na lidera.',
  'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.':
    'Każdy podajnik leży płasko i jest zablokowany; taśmy są wprowadzone, folie przykrywające odciągnięte.',
  'Two people have compared look-alike parts and polarity marks with the setup.':
    'Dwie osoby porównały podobne komponenty i oznaczenia polaryzacji z setupem.',
  'Moisture-sensitive reels are within their floor life for this run.':
    'Rolki wrażliwe na wilgoć mieszczą się w czasie na hali dla tej serii.',
  'Rails and support pins': 'Szyny i kołki podpierające',
  'Rail width: panel width plus play, at both ends. Set the limits for your panel.':
    'Szerokość szyn: szerokość panelu plus luz, na obu końcach. Ustaw granice dla swojego panelu.',
  'Support pins are set as the drawing shows, none under a part of the other side.':
    'Kołki podpierające są ustawione jak na rysunku, żaden pod komponentem drugiej strony.',
  'Program and revision': 'Program i rewizja',
  'Program name and revision on every machine, as shown there.':
    'Nazwa i rewizja programu na każdej maszynie, tak jak tam pokazano.',
  'Oven profile: loaded, reached, and verified with this product?':
    'Profil pieca lutowniczego: wczytany, osiągnięty i zweryfikowany z tym produktem?',
  'Inspection programs are of this product, side and revision.':
    'Programy inspekcji są dla tego produktu, strony i rewizji.',
  'First panel': 'Pierwszy panel',
  'First panel: every part is there and none is shifted.':
    'Pierwszy panel: każdy komponent jest na miejscu i żaden nie jest przesunięty.',
  'First panel: critical parts measured within tolerance, polarities looked at and right.':
    'Pierwszy panel: krytyczne komponenty zmierzone w tolerancji, polaryzacje obejrzane i dobre.',
  'Picture of the first panel.': 'Zdjęcie pierwszego panelu.',
  Release: 'Zwolnienie',
  'Operator and lead release the run.': 'Operator i lider zwalniają serię.',
  Splice: 'Łączenie',
  'The new reel was accepted for this slot.': 'Nowa rolka została przyjęta dla tego slotu.',
  'The new tape’s empty leader is cut off, up to its first part.':
    'Pusty początek nowej taśmy (leader) jest odcięty, aż do pierwszego komponentu.',
  'Both tapes are cut square, between pockets, so that the hole pitch runs on.':
    'Obie taśmy są ucięte prosto, między kieszeniami, tak by skok otworów biegł dalej.',
  'Joined flat, holes in line, same side up, cover tape joined too.':
    'Połączone płasko, otwory w linii, ta sama strona do góry, folia przykrywająca też połączona.',
  'Parts lie the same way in both tapes.': 'Komponenty leżą w obu taśmach tak samo.',
  'The first picks after the joint were watched.': 'Obserwowano pierwsze pobrania za złączem.',
  'Start of shift': 'Początek zmiany',
  'What the shift before handed over.': 'Co przekazała poprzednia zmiana.',
  'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).':
    'Opaska na nadgarstek albo buty na tej podłodze przeszły test. Każde ma własną granicę (ANSI/ESD S20.20).',
  'Worn with a wrist strap: strap system, below 35 MΩ.':
    'Z opaską na nadgarstek: system opaski, poniżej 35 MΩ.',
  'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.':
    'W butach: osoba, buty i podłoga, poniżej 1000 MΩ; ciało pozostaje poniżej 100 V.',
  'Covers, guards and emergency stops are whole and free.':
    'Pokrywy, osłony i wyłączniki awaryjne są całe i dostępne.',
  'The loaded line was swept: every reel scanned once.':
    'Przejrzano załadowaną linię: każdą rolkę zeskanowano raz.',
  'Paste on the stencil is within its open time.': 'Pasta na szablonie mieści się w czasie otwarcia.',
  'Humidity at the line.': 'Wilgotność przy linii.',
  'Sound on this tablet is on and was heard.': 'Dźwięk na tym tablecie jest włączony i było go słychać.',
  'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.':
    'Wszystkie rolki z listy pobrań leżą gotowe w kolejności obchodu; liderowi powiedziano, czego brakuje.',
  'Panels good and scrapped of the old job, as counted.':
    'Panele dobre i złomowane z poprzedniego zlecenia, jak policzono.',
  'The change list is empty: every slot carries its verified reel.':
    'Lista zmian jest pusta: każdy slot ma swoją zweryfikowaną rolkę.',
  'Support pins stand as the drawing shows; none under a part of the other side.':
    'Kołki podpierające stoją jak na rysunku; żaden pod komponentem drugiej strony.',
  'First panel: every part there, polarity and pin 1 as in the drawing.':
    'Pierwszy panel: każdy komponent na miejscu, polaryzacja i pin 1 jak na rysunku.',
  'Critical parts measured and within tolerance.': 'Krytyczne komponenty zmierzone i w tolerancji.',
  'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).':
    'Opaska na nadgarstek lub buty na testerze. Granica: system opaski poniżej 35 MΩ (ANSI/ESD S20.20).',
};

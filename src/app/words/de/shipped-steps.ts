// The checklists that come with the tool, in German: English sentence -> German.

export const words: Readonly<Record<string, string>> = {
  Exchange: 'Wechsel',
  'The machine stands and nothing in it moves.': 'Die Maschine steht, und nichts in ihr bewegt sich.',
  'What goes on was accepted for this slot.': 'Was aufgesetzt wird, wurde für diesen Platz angenommen.',
  'First pocket and pin 1 lie as on the one before.': 'Erste Tasche und Pin 1 liegen wie beim vorigen.',
  'It is in up to the stop and locked.': 'Es sitzt bis zum Anschlag und ist verriegelt.',
  'The first picks after it were watched.': 'Die ersten Abholungen danach wurden beobachtet.',
  // Titles and headings.
  Changeover: 'Umrüstung',
  Splice: 'Spleiß',
  'Start of shift': 'Schichtbeginn',
  'Make ready while the line runs': 'Vorbereiten, während die Linie läuft',
  'Line clearance': 'Linie räumen',
  'Stencil and paste': 'Schablone und Paste',
  Feeders: 'Feeder',
  'Rails and support pins': 'Schienen und Stützstifte',
  'Program and revision': 'Programm und Revision',
  'First panel': 'Erster Nutzen',
  Release: 'Freigabe',
  // Cautions.
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.':
    'Maschine anhalten und warten, bis sich nichts mehr bewegt, bevor Sie eine Abdeckung öffnen oder hineingreifen. Befolgen Sie die örtliche Regel zum Sichern gegen Einschalten.',
  'Blades and tape cutters cut: keep fingers out and cut away from you.':
    'Klingen und Gurtschneider schneiden: Finger heraushalten und vom Körper weg schneiden.',
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.':
    'Bei Paste Handschuhe tragen, hier nichts essen, danach Hände waschen. Lesen Sie das Sicherheitsdatenblatt.',
  'Wear the wrist strap or the right shoes: parts are sensitive to static.':
    'Tragen Sie das Handgelenkband oder die richtigen Schuhe: Bauteile sind empfindlich gegen elektrostatische Ladung.',
  // Changeover.
  'Job papers, panel drawing and setup are at the line, in the right revision.':
    'Auftragspapiere, Zeichnung des Nutzens und Rüstung sind an der Linie, in der richtigen Revision.',
  'All reels of the pick list are ready in walking order. The lead knows what is short.':
    'Alle Rollen der Entnahmeliste liegen in der Reihenfolge des Ganges bereit. Der Schichtleiter weiß, was fehlt.',
  'Feeders for the next product are loaded and verified off the line.':
    'Feeder für das nächste Produkt sind neben der Linie gerüstet und geprüft.',
  'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.':
    'Die Paste für das nächste Produkt hat Raumtemperatur angenommen, ungeöffnet, so lange, wie ihr Datenblatt es sagt.',
  'Scan the next stencil: fetched, right revision, clean, no dent.':
    'Scannen Sie die nächste Schablone: geholt, richtige Revision, sauber, keine Delle.',
  'Count of good and scrapped panels of the old job.':
    'Zahl der guten und der verschrotteten Nutzen des alten Auftrags.',
  'No panel of the old job is left in printer, machines, buffers or oven.':
    'Kein Nutzen des alten Auftrags ist mehr in Pastendrucker, Maschinen, Puffern oder Lötofen.',
  'Reject bins and tape waste are emptied; loose parts are off the machine.':
    'Abwurfbehälter und Gurtreste sind geleert; lose Bauteile sind von der Maschine entfernt.',
  'Old labels, papers and reels are off the line.': 'Alte Etiketten, Papiere und Rollen sind von der Linie.',
  'Scan the stencil in the printer.': 'Scannen Sie die Schablone im Pastendrucker.',
  'Squeegee blades are straight, clean and of the right length.':
    'Die Rakelklingen sind gerade, sauber und haben die richtige Länge.',
  'Scan the paste jar: alloy, lot and date fit.':
    'Scannen Sie die Pastendose: Legierung, Charge und Datum passen.',
  'Paste height on the first print, middle of five places. Set the limits for your stencil.':
    'Pastenhöhe beim ersten Druck, mittlerer Wert von fünf Stellen. Setzen Sie die Grenzen für Ihre Schablone.',
  'No moves left: no feeder to take out, move or put in.':
    'Keine Handgriffe übrig: kein Feeder herauszunehmen, umzusetzen oder einzusetzen.',
  'Every slot has its verified reel. No reel waits for a lead.':
    'Jeder Platz hat seine geprüfte Rolle. Keine Rolle wartet auf einen Schichtleiter.',
  'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.':
    'Jeder Feeder sitzt plan und verriegelt; Gurte sind eingefädelt, Deckfolien abgezogen.',
  'Two people have compared look-alike parts and polarity marks with the setup.':
    'Zwei Personen haben ähnlich aussehende Bauteile und Polaritätszeichen mit der Rüstung verglichen.',
  'Moisture-sensitive reels are within their floor life for this run.':
    'Feuchteempfindliche Rollen sind für diesen Lauf innerhalb ihrer Offenzeit.',
  'Rail width: panel width plus play, at both ends. Set the limits for your panel.':
    'Schienenweite: Breite des Nutzens plus Spiel, an beiden Enden. Setzen Sie die Grenzen für Ihren Nutzen.',
  'Support pins are set as the drawing shows, none under a part of the other side.':
    'Stützstifte sind gesetzt, wie die Zeichnung zeigt, keiner unter einem Bauteil der anderen Seite.',
  'Program name and revision on every machine, as shown there.':
    'Name und Revision des Programms auf jeder Maschine, wie dort angezeigt.',
  'Oven profile: loaded, reached, and verified with this product?':
    'Ofenprofil: geladen, erreicht und mit diesem Produkt geprüft?',
  'Inspection programs are of this product, side and revision.':
    'Die Inspektionsprogramme sind von diesem Produkt, dieser Seite und Revision.',
  'First panel: every part is there and none is shifted.':
    'Erster Nutzen: Jedes Bauteil ist da und keines verschoben.',
  'First panel: critical parts measured within tolerance, polarities looked at and right.':
    'Erster Nutzen: kritische Bauteile innerhalb der Toleranz gemessen, Polaritäten angesehen und richtig.',
  'Picture of the first panel.': 'Foto des ersten Nutzens.',
  'Operator and lead release the run.': 'Bediener und Schichtleiter geben den Lauf frei.',
  // Changeover as it was asked in version 1.
  'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.':
    'Alle Rollen der Entnahmeliste liegen in der Reihenfolge des Ganges bereit; Fehlendes ist dem Schichtleiter gesagt.',
  'Panels good and scrapped of the old job, as counted.':
    'Gute und verschrottete Nutzen des alten Auftrags, wie gezählt.',
  'Support pins stand as the drawing shows; none under a part of the other side.':
    'Stützstifte stehen, wie die Zeichnung zeigt; keiner unter einem Bauteil der anderen Seite.',
  'The change list is empty: every slot carries its verified reel.':
    'Die Umrüstliste ist leer: Jeder Platz trägt seine geprüfte Rolle.',
  'First panel: every part there, polarity and pin 1 as in the drawing.':
    'Erster Nutzen: jedes Bauteil da, Polarität und Anschluss 1 wie in der Zeichnung.',
  'Critical parts measured and within tolerance.': 'Kritische Bauteile gemessen und innerhalb der Toleranz.',
  // Splice.
  'The new reel was accepted for this slot.': 'Die neue Rolle wurde für diesen Platz angenommen.',
  'The new tape’s empty leader is cut off, up to its first part.':
    'Der leere Vorlauf des neuen Gurts ist abgeschnitten, bis zu seinem ersten Bauteil.',
  'Both tapes are cut square, between pockets, so that the hole pitch runs on.':
    'Beide Gurte sind rechtwinklig geschnitten, zwischen Taschen, sodass die Lochteilung weiterläuft.',
  'Joined flat, holes in line, same side up, cover tape joined too.':
    'Plan verbunden, Löcher in Flucht, gleiche Seite oben, auch die Deckfolie verbunden.',
  'Parts lie the same way in both tapes.': 'Bauteile liegen in beiden Gurten gleich herum.',
  'The first picks after the joint were watched.':
    'Die ersten Abholungen nach der Spleißstelle wurden beobachtet.',
  // Start of shift.
  'What the shift before handed over.': 'Was die Schicht davor übergeben hat.',
  'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).':
    'Handgelenkband, oder Schuhe auf diesem Boden, am Prüfgerät bestanden. Jedes hat seine eigene Grenze (ANSI/ESD S20.20).',
  'Worn with a wrist strap: strap system, below 35 MΩ.':
    'Mit Handgelenkband: System des Handgelenkbands, unter 35 MΩ.',
  'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.':
    'Mit Schuhen: Person, Schuhe und Boden, unter 1000 MΩ; der Körper bleibt unter 100 V.',
  'Covers, guards and emergency stops are whole and free.':
    'Abdeckungen, Schutzeinrichtungen und Not-Halt-Taster sind heil und frei zugänglich.',
  'The loaded line was swept: every reel scanned once.':
    'Kontrollrunde an der gerüsteten Linie gemacht: jede Rolle einmal gescannt.',
  'Paste on the stencil is within its open time.':
    'Die Paste auf der Schablone ist innerhalb ihrer Standzeit.',
  'Humidity at the line.': 'Feuchte an der Linie.',
  'Sound on this tablet is on and was heard.': 'Der Ton dieses Tablets ist eingeschaltet und wurde gehört.',
  'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).':
    'Handgelenkband oder Schuhe am Prüfgerät. Grenze: System des Handgelenkbands unter 35 MΩ (ANSI/ESD S20.20).',
};

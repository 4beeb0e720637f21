// The checklists that come with the tool, in French: English sentence -> French.

export const words: Readonly<Record<string, string>> = {
  Exchange: 'Échange',
  'The machine stands and nothing in it moves.': 'La machine est arrêtée et rien n’y bouge.',
  'What goes on was accepted for this slot.': 'Ce qui est posé a été accepté pour cet emplacement.',
  'First pocket and pin 1 lie as on the one before.':
    'La première alvéole et la broche 1 sont comme sur le précédent.',
  'It is in up to the stop and locked.': 'Il est en butée et verrouillé.',
  'The first picks after it were watched.': 'Les premières prises après l’échange ont été surveillées.',
  // Titles and headings.
  Changeover: 'Changement de série',
  Splice: 'Raccord',
  'Start of shift': 'Prise de poste',
  'Make ready while the line runs': 'Préparer pendant que la ligne tourne',
  'Line clearance': 'Vide de ligne',
  'Stencil and paste': 'Pochoir et pâte',
  Feeders: 'Feeders',
  'Rails and support pins': 'Rails et pions de support',
  'Program and revision': 'Programme et révision',
  'First panel': 'Premier flan',
  Release: 'Libération',
  // Cautions.
  'Stop the machine and wait until nothing moves before you open a cover or reach in. Follow the local lockout rule.':
    'Arrêtez la machine et attendez que plus rien ne bouge avant d’ouvrir un capot ou d’y mettre les mains. Suivez la règle locale de consignation.',
  'Blades and tape cutters cut: keep fingers out and cut away from you.':
    'Lames et coupe-bandes coupent : gardez les doigts dehors et coupez à l’opposé de vous.',
  'Wear gloves with paste, no food here, wash your hands after. Read the safety data sheet.':
    'Portez des gants avec la pâte, pas de nourriture ici, lavez-vous les mains après. Lisez la fiche de données de sécurité.',
  'Wear the wrist strap or the right shoes: parts are sensitive to static.':
    'Portez le bracelet ou les bonnes chaussures : les composants sont sensibles à l’électricité statique.',
  // Changeover.
  'Job papers, panel drawing and setup are at the line, in the right revision.':
    'Papiers du travail, plan du flan et plan de chargement sont à la ligne, à la bonne révision.',
  'All reels of the pick list are ready in walking order. The lead knows what is short.':
    'Toutes les bobines de la liste de prélèvement sont prêtes dans l’ordre de parcours. Le chef d’équipe sait ce qui manque.',
  'Feeders for the next product are loaded and verified off the line.':
    'Les feeders du produit suivant sont chargés et vérifiés hors de la ligne.',
  'Paste for the next product has come to room temperature, unopened, for as long as its sheet says.':
    'La pâte du produit suivant est revenue à température ambiante, non ouverte, aussi longtemps que le dit sa fiche.',
  'Scan the next stencil: fetched, right revision, clean, no dent.':
    'Scannez le pochoir suivant : apporté, bonne révision, propre, sans choc.',
  'Count of good and scrapped panels of the old job.': 'Nombre de flans bons et rebutés de l’ancien travail.',
  'No panel of the old job is left in printer, machines, buffers or oven.':
    'Aucun flan de l’ancien travail ne reste dans la sérigraphie, les machines, les tampons ou le four.',
  'Reject bins and tape waste are emptied; loose parts are off the machine.':
    'Bacs de rejet et chutes de bande vidés ; composants perdus retirés de la machine.',
  'Old labels, papers and reels are off the line.':
    'Anciens papiers, étiquettes et bobines hors de la ligne.',
  'Scan the stencil in the printer.': 'Scannez le pochoir dans la sérigraphie.',
  'Squeegee blades are straight, clean and of the right length.':
    'Les lames de racle sont droites, propres et de la bonne longueur.',
  'Scan the paste jar: alloy, lot and date fit.':
    'Scannez le pot de pâte : alliage, lot et date conviennent.',
  'Paste height on the first print, middle of five places. Set the limits for your stencil.':
    'Hauteur de pâte à la première impression, médiane de cinq endroits. Réglez les limites pour votre pochoir.',
  'No moves left: no feeder to take out, move or put in.':
    'Plus aucun geste : aucun feeder à sortir, à déplacer ou à mettre.',
  'Every slot has its verified reel. No reel waits for a lead.':
    'Chaque emplacement a sa bobine vérifiée. Aucune bobine n’attend un chef d’équipe.',
  'Every feeder sits flat and locked; tapes are threaded, cover tapes pulled away.':
    'Chaque feeder est bien à plat et verrouillé ; bandes enfilées, films de couverture retirés.',
  'Two people have compared look-alike parts and polarity marks with the setup.':
    'Deux personnes ont comparé les composants qui se ressemblent et les marques de polarité au plan.',
  'Moisture-sensitive reels are within their floor life for this run.':
    'Les bobines sensibles à l’humidité sont dans leur durée hors sachet pour cette série.',
  'Rail width: panel width plus play, at both ends. Set the limits for your panel.':
    'Écart des rails : largeur du flan plus jeu, aux deux bouts. Réglez les limites pour votre flan.',
  'Support pins are set as the drawing shows, none under a part of the other side.':
    'Les pions de support sont mis comme au plan, aucun sous un composant de l’autre face.',
  'Program name and revision on every machine, as shown there.':
    'Nom et révision du programme sur chaque machine, comme affichés là.',
  'Oven profile: loaded, reached, and verified with this product?':
    'Profil du four : chargé, atteint et vérifié avec ce produit ?',
  'Inspection programs are of this product, side and revision.':
    'Les programmes d’inspection sont de ce produit, de cette face et de cette révision.',
  'First panel: every part is there and none is shifted.':
    'Premier flan : chaque composant est là et aucun n’est décalé.',
  'First panel: critical parts measured within tolerance, polarities looked at and right.':
    'Premier flan : composants critiques mesurés dans la tolérance, polarités regardées et bonnes.',
  'Picture of the first panel.': 'Photo du premier flan.',
  'Operator and lead release the run.': 'L’opérateur et le chef d’équipe libèrent la série.',
  // Changeover as it was asked in version 1.
  'All reels of the pick list lie ready in walking order; shortfalls are told to the lead.':
    'Toutes les bobines de la liste de prélèvement sont prêtes dans l’ordre de parcours ; ce qui manque est dit au chef d’équipe.',
  'Panels good and scrapped of the old job, as counted.':
    'Flans bons et rebutés de l’ancien travail, tels que comptés.',
  'Support pins stand as the drawing shows; none under a part of the other side.':
    'Les pions de support sont placés comme au plan ; aucun sous un composant de l’autre face.',
  'The change list is empty: every slot carries its verified reel.':
    'La liste de changement est vide : chaque emplacement porte sa bobine vérifiée.',
  'First panel: every part there, polarity and pin 1 as in the drawing.':
    'Premier flan : chaque composant là, polarité et broche 1 comme au plan.',
  'Critical parts measured and within tolerance.': 'Composants critiques mesurés et dans la tolérance.',
  // Splice.
  'The new reel was accepted for this slot.': 'La nouvelle bobine a été acceptée pour cet emplacement.',
  'The new tape’s empty leader is cut off, up to its first part.':
    'L’amorce vide de la nouvelle bande est coupée, jusqu’à son premier composant.',
  'Both tapes are cut square, between pockets, so that the hole pitch runs on.':
    'Les deux bandes sont coupées d’équerre, entre les alvéoles, pour que le pas des trous continue.',
  'Joined flat, holes in line, same side up, cover tape joined too.':
    'Jointes à plat, trous alignés, même face dessus, film de couverture joint aussi.',
  'Parts lie the same way in both tapes.': 'Les composants sont dans le même sens dans les deux bandes.',
  'The first picks after the joint were watched.':
    'Les premières prises après la jonction ont été surveillées.',
  // Start of shift.
  'What the shift before handed over.': 'Ce que le poste précédent a transmis.',
  'Wrist strap, or shoes on this floor, passed at the tester. Each has its own limit (ANSI/ESD S20.20).':
    'Bracelet, ou chaussures sur ce sol, bons au testeur. Chacun a sa propre limite (ANSI/ESD S20.20).',
  'Worn with a wrist strap: strap system, below 35 MΩ.':
    'Avec bracelet : système du bracelet, au-dessous de 35 MΩ.',
  'Worn with shoes: person, shoes and floor, below 1000 MΩ; the body stays below 100 V.':
    'Avec chaussures : personne, chaussures et sol, au-dessous de 1000 MΩ ; le corps reste au-dessous de 100 V.',
  'Covers, guards and emergency stops are whole and free.':
    'Capots, protections et arrêts d’urgence sont entiers et dégagés.',
  'The loaded line was swept: every reel scanned once.':
    'La ronde de la ligne chargée est faite : chaque bobine scannée une fois.',
  'Paste on the stencil is within its open time.': 'La pâte sur le pochoir est dans son temps ouvert.',
  'Humidity at the line.': 'Humidité à la ligne.',
  'Sound on this tablet is on and was heard.': 'Le son de cette tablette est activé et a été entendu.',
  'Wrist strap or shoes at the tester. Limit: strap system below 35 MΩ (ANSI/ESD S20.20).':
    'Bracelet ou chaussures au testeur. Limite : système du bracelet au-dessous de 35 MΩ (ANSI/ESD S20.20).',
};

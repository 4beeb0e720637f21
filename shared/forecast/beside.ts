// How many panels of a line do so many placements of a slot last, where other lanes of its conveyor take from the slot meanwhile?
// Method: each lane takes so much with every panel of the line until it has built all that it wants; what is taken is a line with a bend where a
// lane ends, and its inverse is as exact. Refused: one share a panel for the whole run, since a lane that ends soon was then foretold to take on to the end.

/** What another lane takes from a slot: placements with each panel of the line, for so many of its panels from now on; both above 0, fractions as they come. */
export interface TakenBeside {
  readonly perPanel: number;
  readonly panels: number;
}

/** A slot's use: placements on each panel of the line itself (above 0), and what other lanes take. */
export interface SlotUse {
  readonly perPanel: number;
  readonly beside?: readonly TakenBeside[];
}

/** Placements that the slot gives, to all lanes together, until the line has built so many panels (0 or more). */
export function placementsUntil({ perPanel, beside }: SlotUse, panels: number): number {
  if (!beside) return perPanel * panels;
  return beside.reduce((sum, lane) => sum + lane.perPanel * Math.min(lane.panels, panels), perPanel * panels);
}

/** Panels of the line, fractions as they come, until the slot has given so many placements (0 or more): the inverse of `placementsUntil`. */
export function panelsUntil({ perPanel, beside }: SlotUse, placements: number): number {
  // Most slots serve one lane; a forecast of a long line asks some thousand times.
  if (!beside) return placements / perPanel;
  let rest = placements;
  let panels = 0;
  let rate = beside.reduce((sum, lane) => sum + lane.perPanel, perPanel);
  for (const lane of [...beside].sort((a, b) => a.panels - b.panels)) {
    const until = (lane.panels - panels) * rate;
    if (until >= rest) break;
    rest -= until;
    panels = lane.panels;
    rate -= lane.perPanel;
  }
  return panels + rest / Math.max(rate, perPanel);
}

/** Placements that the slot gives with the panel after so many (0 or more). */
export function perPanelAfter({ perPanel, beside }: SlotUse, panels: number): number {
  if (!beside) return perPanel;
  return beside.reduce((sum, lane) => sum + (lane.panels > panels ? lane.perPanel : 0), perPanel);
}

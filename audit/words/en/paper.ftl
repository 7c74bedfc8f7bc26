# Paper only: shorter notes, and the overlay.

paper-simulated = Simulated walk: nobody walked this.
paper-leg = Leg
paper-azimuth-planned = { -azimuth(form: "start") } planned
paper-walked = walked
paper-error = error
paper-distance-planned = Distance planned
paper-each-note = Strips: offset from the planned line with the receiver’s noise shaded, height, speed. Arrows: planned
    (dashed) and walked { -azimuth }, its 95 % interval shaded. Beside them the parts of the miss, head to tail from
    the { -point } (cross) to the claim (diamond).
paper-map-note = Grid north is up. Drawn lines keep within { $within } of the recording.
paper-overlay-note = Print at actual size (100 %, no fitting) on film or thin paper, and lay the kilometre lines of { $grid }
    on those of the map. Dashed: plan. Whole line: walked. Diamond: claim. Drawn within { $within } of the recording.
paper-ruler = This line is { $length } mm long if the scale of the print is right.
paper-overlay-alt = Plan and walk at { $scale }
paper-distance-walked = walked
paper-distance-error = error
paper-walk-note = From leaving for each leg (numbered) to its claim: offset from the planned line, the receiver’s noise shaded
    ({ $noise } either way); then height and speed of the whole recording.{ $gaps ->
    [0] {""}
   *[other] {" "}Thin dashes: not recorded, drawn straight across.
}{ $reckoned ->
    [0] {""}
   *[other] {" "}Where a leg begins or ends in them, that place is reckoned; such a claim is a hollow diamond.
}

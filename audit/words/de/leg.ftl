# Was von einem Abschnitt gesagt wird, in Wendungen.

leg-walked = gegangen
leg-walked-from-off = gegangen, { $size } neben seinem Anfang begonnen
leg-recorded-from = gegangen, ab { $size } aufgezeichnet
leg-skipped = ausgelassen
leg-before-recording = vor Beginn der Aufzeichnung
leg-after-recording = nach dem Ende der Aufzeichnung
leg-unfinished = nicht beendet
leg-not-started = nicht begonnen

leg-not-found = um { $size } verfehlt, { -point } nicht gefunden (nicht näher als { $nearest } herangekommen)
leg-too-close = um { $size } verfehlt; zu knapp, um zu entscheiden, ob der { -point } gefunden wurde (nicht näher als { $nearest } gesehen)
leg-reckoned-near = nach Berechnung { $size } daneben geendet, nicht näher als { $nearest } gesehen: ob der { -point } gefunden wurde, ist zu knapp, um es zu entscheiden
leg-arrived = erreicht, { $size } daneben
leg-at-edge = am Rand des Ankunftskreises, { $size } daneben
leg-then-found = um { $size } verfehlt, dann gefunden
leg-passed = um { $size } verfehlt; am { -point } vorher in { $nearest } Abstand vorbeigegangen
leg-then-past = { $ended }; nach dem angenommenen Ende bis { $past } über den { -point } hinaus
leg-near-elsewhere = { $ended }; außerhalb des Teils, der für diesen Abschnitt gehalten wird, kommt die Aufzeichnung bis auf { $near } heran
leg-along-line = { $size } längs der Linie

leg-found-no = nein
leg-found-too-close = zu knapp, um es zu entscheiden
leg-found-yes = ja
leg-found-later = ja, später
leg-found-passed = vorher vorbeigegangen

leg-undecided-two = unentschieden: { $causes }
leg-one-of-two = eines von beiden (zusammen { $sure }): { $causes }
leg-undecided-none = unentschieden: keine Ursache ragt heraus ({ $sure })
leg-undecided-length = unentschieden: { $cause }, aber nichts erklärt die Entfernung, { $off }
leg-no-cause = keine herausragende Ursache
leg-carried = übernommen vom Eintrag auf der Karte: { $leg }
leg-cause = { $cause } ({ $sure })
leg-cause-left-over = { $cause }, { $left } von dem, was das voraussagt
leg-left-out = { $point } ausgelassen
leg-inherited = ein Start abseits des { -point(form: "of") }; am Abschnitt selbst übliche Ungenauigkeit

leg-azimuth = Richtung { $error } ({ $interval })
leg-azimuth-unmeasured = Richtung nicht messbar
leg-distance = Entfernung { $error }
leg-began-off = { $size } neben dem { -point } begonnen
leg-recorded-on = ab { $size } aufgezeichnet

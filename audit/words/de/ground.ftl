# Die Legende eines Geländes vor dem Gang.

ground-planned = geplanter Abschnitt
ground-other-leg = die anderen Abschnitte
ground-point = { -point } mit Ankunftskreis, { $radius }
ground-wrong = eine Art, falsch zu gehen
ground-claim = wo die Art mit dieser Nummer in der Tabelle endet
ground-ellipse = darin enden 95 von 100 gewöhnlichen Gängen
ground-window = was das zweite Bild zeigt
ground-no-go = Sperrgebiet
ground-no-go-line = gesperrte Linie
ground-hazard = Gefahr
ground-hazard-line = Gefahr entlang einer Linie
ground-unsafe = von hier führt die Sicherheitsrichtung in ein Sperrgebiet oder eine Gefahr
ground-bounds = Grenze

# Was über einen Plan und seine Marschskizze zu wissen ist.

note-scale-longer = Eine Entfernung im Gitter { $grid } ist hier { $share } länger als im Gelände.
note-scale-shorter = Eine Entfernung im Gitter { $grid } ist hier { $share } kürzer als im Gelände.
note-datum = Zwischen GPS-Positionen und dem Gitter { $grid } ({ $name }) besteht eine Unsicherheit von { $size } m.
note-coarse = Die Koordinate von { $point } nennt ein Quadrat von { $square }, größer als der Ankunftsradius von { $radius }; seine Mitte wird genommen.
note-angle-changes = Über die Bahn ändert sich die Nadelabweichung um bis zu { $most }; die Marschskizze nimmt für jeden Abschnitt die von { $point }.
note-track-date = Der Plan hat kein Datum; das der Aufzeichnung, { $date }, wird genommen.
note-no-date = Weder Plan noch Aufzeichnung haben ein Datum: Die angegebene Nadelabweichung ist nicht geprüft.
note-carried-back = Kein vorhandenes Magnetfeldmodell gilt für { $date }: { $model } wird mit seiner jährlichen Änderung dorthin zurückgerechnet, Standardfehler { $error }. Der Plan gibt keine Richtungen an, die daran hängen; die hier genannten magnetischen sind nicht besser als das.
note-no-model = Kein vorhandenes Magnetfeldmodell gilt für { $date }: Die angegebene Nadelabweichung ist nicht geprüft.
note-angle-computed = Die Nadelabweichung ist berechnet ({ $model }, { $date }): { $angle }, Standardfehler { $error }. Mit der mitgeführten Karte vergleichen.
note-weak-field = Das waagerechte Magnetfeld ist hier schwach ({ $field } nT): Ein Kompass ist träge und kann weit falsch zeigen.
note-other-day = Der Plan ist für { $plan } und die Aufzeichnung vom { $track }: Dazwischen änderte sich die Nadelabweichung um etwa { $change }.
note-paces-for = Abschnitt { $leg } hat keine Entfernung; aus seinen { -pace(form: "to") } ergeben sich { $length }.
note-line-long = Abschnitt { $leg }: Über seine Zwischenpunkte sind es { $along }, in gerader Linie { $straight }. Ist keine Runde gemeint, ihre Koordinaten prüfen.
note-step = { $rate } { $pace ->
    [single] Einfachschritte
   *[double] Doppelschritte
} auf 100 m sind ein Schritt von { $step } m; Menschen gehen mit Schritten von { $shortest } bis { $longest } m. Nachsehen, welche
    gezählt werden: Ein Doppelschritt sind zwei Schritte.

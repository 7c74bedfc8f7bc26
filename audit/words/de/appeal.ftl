# Das Blatt eines Einspruchs.

appeal-title = Einspruch: { $title }
appeal-class = Klasse
appeal-debrief = Auswertung dieses Abschnitts
appeal-where = { $lane }, Abschnitt { $leg }: { $start } bis { $end }. Vorgabe: { $standard }.
appeal-says = Die Aufzeichnung sagt:
appeal-left-out = ; der { -point } zählt in keiner Bewertung
appeal-figure-note = Gitternord ist oben.
appeal-about = Der Weg um { $point }, Gitternord oben.
appeal-key-walked = der Weg, eine Position je zehn Sekunden
appeal-key-ring = gefunden bis { $size } vom { -point }
appeal-key-whole = verfehlt ab { $size } (ganzer Fehler dazugezählt)
appeal-key-cross = der { -point }
appeal-key-claim = gemeldetes Ende
appeal-key-nearest = nächste Annäherung
appeal-east = westlich | östlich des { -point(form: "of") }
appeal-north = südlich | nördlich
appeal-for = Dafür, dass er gefunden wurde
appeal-against = Dagegen
appeal-nothing = Nichts in der Aufzeichnung.
appeal-others = Die anderen an diesem { -point }
appeal-nobody = Niemand sonst ging dorthin.
appeal-others-said = Von { $walks ->
    [one] { $walks } anderen Gang
   *[other] { $walks } anderen Gängen
} der Bahn { $found ->
    [one] fand { $found }
   *[other] fanden { $found }
} den { -point }, { $missed ->
    [one] { $missed } verfehlte ihn
   *[other] { $missed } verfehlten ihn
}, { $doubtful ->
    [one] { $doubtful } ist
   *[other] { $doubtful } sind
} zweifelhaft; von { $unevidenced } gibt es
    keinen Beleg.
appeal-recording = Die Aufzeichnung
appeal-decision = Entscheidung
appeal-limit = Eine Aufzeichnung kann eine Frage aufwerfen; sie entscheidet nicht allein. Ein Beleg von der Markierung (Code, Stempel, jemand, der
    dort saß) geht vor, und der Zweifel spricht für den Gehenden.
appeal-walker-says = Der Gehende sagt:
appeal-decided = Entschieden (gefunden, verfehlt, zählt nicht), und warum:
appeal-made-by = Hergestellt von leg-audit { $version }. Ein Ausbildungsmittel: Positionen sind ungenau, und ein Mensch entscheidet. Prüfsumme

appeal-found-within = Gefunden innerhalb
appeal-found-within-said = { $size } um den { -point }
appeal-missed-beyond = Verfehlt ab
appeal-missed-beyond-said = { $size } (ganzer Fehler dazugezählt)
appeal-nearest = Nächste Annäherung
appeal-nearest-fix = Nächste einzelne Ortung
appeal-nearest-fix-said = { $size }{ $time ->
    [none] {""}
   *[some] , { $time }
}, wie aufgezeichnet, aus der ganzen Aufzeichnung
appeal-nearest-said = { $size }{ $time ->
    [none] {""}
   *[some] , { $time }
}{ $turn ->
    [yes] {""}
   *[no] , nicht an der Reihe
}
appeal-unseen = Ungesehen
appeal-unseen-said = höchstens { $size } näher, in Lücken der Aufzeichnung
appeal-miss = Ablage am angenommenen Ende
appeal-miss-said = { $size } ({ $where })
appeal-proof = Mitgebrachter Beleg
appeal-proof-none = keiner
appeal-proof-right = Code { $code }, der richtige
appeal-proof-wrong = Code { $code }, nicht der des { -point(form: "of") }
appeal-proof-no-key = Code { $code }, kein Schlüssel zum Vergleichen
appeal-recorded = Aufzeichnung
appeal-recorded-said = { $fixes } Ortungen, { $every ->
    [none] ohne Zeiten
   *[some] eine je { $every } s
}, Rauschen des Empfängers { $noise } m
appeal-plan = Plan
appeal-plan-said = { $file }, Gitter { $grid }

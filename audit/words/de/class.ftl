# Die Klasse: ihre Seite, ihr kurzes Bild im Terminal, ihre Tabellen.

class-title = Klasse: { $name }
class-simulated = Simulierte Klasse.
class-simulated-so = Aufzeichnungen sagen von sich selbst, dass sie simuliert sind.
class-day = Tag
class-day-unknown = nicht bekannt
class-walks = Gänge
class-lanes = Bahnen
class-standard = Vorgabe
class-fingerprint = Prüfsumme
class-clocks = Uhren
class-clocks-said = um { $minutes ->
    [0] {""}
   *[other] { $minutes } min{" "}
}{ $seconds } s { $later ->
    [yes] vorgestellt
   *[no] zurückgestellt
}: { $ground }

class-short = Kurz gesagt
class-met = { $met } von { $walks ->
    [one] { $walks } Gang
   *[other] { $walks } Gängen
} auf { $lanes ->
    [one] { $lanes } Bahn
   *[other] { $lanes } Bahnen
} { $met ->
    [one] erfüllte
   *[other] erfüllten
} die Vorgabe{ $rest }.
class-not-met = ; { $count ->
    [one] { $count } erfüllte
   *[other] { $count } erfüllten
} sie nicht
class-too-close = ; { $count ->
    [one] { $count } ist
   *[other] { $count } sind
} zu knapp, um es zu entscheiden
class-untold = ; bei { $count } ist es nicht zu sagen, weil Belege fehlen
class-unevidenced = ; von { $count } gibt es keinen Beleg, was kein Nichtbestehen ist
class-course-fault = { $point } (Abschnitt { $leg } von { $lane }): Der Fehler liegt an der Bahn; der { -point } zählt in keiner Bewertung, siehe unten.
class-plan-angle = { $lane }: Die Nadelabweichung des Plans, { $angle }, hält einer Prüfung nicht stand. Sie
    berichtigen, ehe Gehenden Abweichungen dieser Größe angelastet werden.
class-all-found = Jeder { -point } wurde von allen gefunden, von denen es einen Beleg gibt.
class-caught = { $point } (Abschnitt { $leg } von { $lane }) wurde am häufigsten verfehlt: { $found } von { $walkers } { $found ->
[one] fand
   *[other] fanden
} ihn, { $missed ->
[one] { $missed } verfehlte ihn
   *[other] { $missed } verfehlten ihn
}{ $doubtful ->
[0] {""}
   *[other] , { $doubtful } zweifelhaft
}{ $unevidenced ->
[0] {""}
   *[other] , von { $unevidenced } gibt es keinen Beleg
}.
class-caught-alike = Am häufigsten verfehlt, gleichauf: { $legs }; auf jedem davon verfehlten { $share } der Gehenden den { -point }.
class-leg-of = { $legs ->
    [one] Abschnitt { $names } von { $lane }
   *[other] Abschnitte { $names } von { $lane }
}
class-none-missed = Kein { -point } wurde sicher verfehlt; { $count ->
    [one] { $count } ist
   *[other] { $count } sind
} zweifelhaft.
class-commonest = Der häufigste benannte Fehler ist: { $cause }, auf { $legs ->
    [one] { $legs } Abschnitt
   *[other] { $legs } Abschnitten
} von { $walkers } Gehenden.
class-asked = { $count ->
    [one] { $count } Frage unten wartet
   *[other] { $count } Fragen unten warten
} auf einen Menschen.

class-shows = Was die Klasse zeigt
class-shows-nothing = Nichts fällt auf, was nur eine Klasse zeigen kann.
class-to-ask = Zu fragen
class-matrix = Gehende und { -point(form: "many") }
class-matrix-note = Bahn für Bahn in der Reihenfolge der Liste oder, ohne Liste, der Dateien: Es gibt keine Rangfolge. Ein { -point } ist gefunden, wo die nächste Annäherung innerhalb
    des Radius liegt, nach der ganzen Aufzeichnung (die Auswertung zählt einen { -point } nur auf seinem Abschnitt; wo sich
    beide Zahlen unterscheiden, stehen beide da), verfehlt nur, wo sie um mehr als den ganzen Fehler außerhalb liegt, und dazwischen zweifelhaft. Keine
    Aufzeichnung ist kein Beleg und kein Nichtbestehen. Längen sind die Ablage: vom { -point } bis dorthin, wo die eigene
    Orientierung des Gehenden endete, vor jeder Suche. Jeder { -point } öffnet die Auswertung bei seinem Abschnitt; „Einspruch“
    öffnet, was dafür und dagegen spricht.
class-found = gefunden
class-doubtful = zweifelhaft
class-missed = verfehlt
class-no-evidence = kein Beleg
class-hatched = schraffiert: zählt in keiner Bewertung
class-walker = Gehende
class-leg = Abschnitt { $leg }{ $out ->
    [yes] , zählt nicht
   *[no] {""}
}
class-left-out = { $point } (zählt nicht)
class-appeal = Einspruch
class-attempt = { $name }, Versuch { $number }
class-verdict-pass = Vorgabe erfüllt
class-verdict-fail = Vorgabe nicht erfüllt
class-verdict-doubtful = zu knapp, um es zu entscheiden
class-verdict-untold = nicht zu sagen
class-verdict-no-evidence = kein Beleg
class-result = { $verdict }: { $found } gefunden, { $needed } nötig{ $hours ->
    [none] {""}
   *[some] , { $hours } h
}{ $late ->
    [none] {""}
    [untold] ; die Zeit ist im Zweifel
   *[some] , { $late } zu spät
}
class-own-legs = die Auswertung zählt { $count }, auf dem eigenen Abschnitt

class-caught-all = Abschnitt für Abschnitt
class-caught-points = { -point } für { -point }
class-any-order = keine geplant: { $count } { -point(form: "many") } in jeder Reihenfolge
class-caught-note = Mittlere Ablage aller, die den Abschnitt gingen, mit ihrem doppelten Standardfehler.
class-lane-leg = Bahn, Abschnitt
class-lane-point = Bahn, { -point }
class-ends = Von – bis
class-azimuth = Gitterrichtung
class-distance = Entfernung
class-climb = Anstieg
class-counts = Gefunden, zweifelhaft, verfehlt, kein Beleg
class-mean-miss = Mittlere Ablage
class-mean-miss-said = { $place } (±{ $error })
class-fault-mark = (Fehler der Bahn)

class-tracks = Alle Wege auf einem Abschnitt
class-tracks-note = Jeder Abschnitt ist so gedreht, dass alle nach rechts gehen, beide Achsen im selben Maßstab; wer weiter abseits
    ging, läuft aus dem Bild.
class-key-planned = geplante Linie
class-key-point = { -point } und Ankunftskreis
class-key-found-track = Weg mit gemeldetem Ende dessen, der den { -point } fand
class-key-missed-track = dessen, der ihn nicht fand, mit seiner Nummer
class-key-left = wo jemand zum nächsten Abschnitt aufbrach
class-tracks-said = { $found } von { $walks ->
    [one] { $walks } Gang
   *[other] { $walks } Gängen
} { $found ->
    [one] fand
   *[other] fanden
} den { -point }, { $missed ->
    [one] { $missed } verfehlte ihn
   *[other] { $missed } verfehlten ihn
}, { $doubtful ->
    [one] { $doubtful } ist
   *[other] { $doubtful } sind
} zweifelhaft.
class-picture-title = { $lane }, { $leg }
class-side = rechts | links der Linie

class-side-by-side = Die Bahnen nebeneinander
class-lane = Bahn
class-standard-met = Vorgabe erfüllt
class-of = { $count } von { $all }
class-legs = Abschnitte
class-length = Länge
class-out-of-sight = Ein üblicher Gang endet außer Sicht des { -point(form: "of") }
class-middle-time = Zeit (Median)
class-plan = Plan
class-not-known = nicht bekannt

class-causes = Gezählte Ursachen
class-causes-note = Fehler, die eine Auswertung für wahrscheinlich hält. Eine Ursache ist eine Vermutung; übliche Ungenauigkeit und was die
    Belege nicht entscheiden, sind nicht gezählt.
class-consistent = Passt zu
class-walkers = Gehende
class-legs-drawn = Abschnitte, gezeichnet
class-no-causes = Auf keinem Abschnitt ist ein Fehler benannt.

class-time = Wo die Zeit blieb
class-time-note = Stunden und Minuten vom Verlassen des Starts bis zum letzten angenommenen Ende, mit der Suche danach, wo es eine gab.
    Die Rast davor und danach zählt nicht mit. Es ist nicht die Zeit der Vorgabe: Die steht oben beim Namen und endet innerhalb
    des Radius um den letzten { -point }.
class-moving = in Bewegung
class-searching = auf Suche
class-halted = im Halt
class-moving-begin = In Bewegung
class-searching-begin = Auf Suche
class-halted-begin = Im Halt
class-together = Zusammen
class-drawn = In einem Maßstab gezeichnet

class-the-standard = Die Vorgabe
class-locked = Festgehalten durch die Prüfsumme von Plänen, Vorgabe und Fassung des Programms:
class-asks-points = Zu finden
class-asks-all = alle
class-asks-within = Gefunden innerhalb
class-asks-time = Zeitgrenze
class-asks-late = Je Minute Verspätung
class-asks-late-said = { $off } Abzug von der Wertung
class-asks-azimuth = Richtung auf
class-asks-distance = Entfernung auf
class-asks-order = Reihenfolge
class-asks-planned = wie geplant
class-asks-free = beliebig
class-asks-roads = Straßen
class-figure-points-to-find = die Zahl der { -point(form: "many") }
class-figure-radius-m = der Radius
class-figure-survey-sd-m = die Einmessung der { -point(form: "many") }
class-figure-time-limit-min = die Zeitgrenze
class-figure-late-grace-min = die Nachfrist
class-figure-late-penalty-per-min = der Abzug je Minute Verspätung
class-figure-azimuth-tolerance-deg = die Richtung
class-figure-distance-tolerance-percent = die Entfernung
class-figure-order = die Reihenfolge
class-figure-road-rule = die Regel für Straßen
class-figure-road-distance-m = der Abstand von Straßen
class-figure-weights = die Gewichte der Wertung
class-no-source = Die Vorgabe nennt keine Quelle für: { $figures }.
class-source = { $figure }: { $source }
class-roads-none = nicht verlangt
class-roads-cross-only = nur überqueren
class-roads-keep-off = meiden
class-roads-said = { $rule }{ $by ->
    [none] {""}
   *[some] ; näher als { $by } gilt als auf der Straße
}; ein Mensch urteilt

class-recordings = Zu den Aufzeichnungen
class-notes = Anmerkungen
class-signs = Ein Mensch unterschreibt
class-signs-note = Die Bewertungen oben sind Vorschläge. Ein Beleg von der Markierung geht einer Aufzeichnung vor, und wer unterschreibt, hat sich
    die Fragen angesehen.
class-name = Name
class-signature = Unterschrift
class-sign-day = Tag
class-made-by = Hergestellt von leg-audit { $version }. Die Zahlen sind nach ihrem Standardfehler gerundet; class.json enthält sie
    vollständig.

class-terminal-title = { $name }: { $walkers } Gehende, { $lanes ->
    [one] { $lanes } Bahn
   *[other] { $lanes } Bahnen
}
class-terminal-standard = Vorgabe: { $standard }. Prüfsumme: { $fingerprint }.
class-terminal-key = Ein Vorschlag: Ein Mensch unterschreibt. + gefunden, x verfehlt, ? zweifelhaft, . kein Beleg; (zählt nicht).
class-terminal-asked = Frage: { $message }
class-terminal-found = Befund: { $message }
class-terminal-begun = { $lanes ->
    [one] { $lanes } Bahn
   *[other] { $lanes } Bahnen
} ({ $names }), { $recordings ->
    [one] { $recordings } Aufzeichnung
   *[other] { $recordings } Aufzeichnungen
}, Vorgabe: { $standard }.
class-terminal-not-kept = Nicht in den Unterlagen gespeichert, weil oben gefragt ist, wessen Weg es ist:
    { $walkers }. Liste, Aufzeichnung oder das Datum des Plans berichtigen und noch einmal bewerten.
class-terminal-old = { $folder } enthält { $count }, die nicht zu dieser Klasse gehören, aus einem früheren Lauf. Sie bleiben; vor dem
    Weitergeben des Ordners wegnehmen.
class-terminal-replaced = { $folder } enthält eine andere Klasse, oder diese anders bewertet: { $name }{ $days ->
    [none] {""}
   *[other] {" "}vom { $days }
} ({ $walkers ->
    [one] { $walkers } Gehender
   *[other] { $walkers } Gehende
}, Prüfsumme { $fingerprint }): Diese tritt an ihre Stelle. Mit --out ORDNER bleiben beide.
class-terminal-replaced-unknown = { $file } stand schon da und ist keine lesbare Klasse: Diese tritt an ihre Stelle.
class-terminal-written = Geschrieben nach { $folder }: { $files }, { $sheets ->
    [0] dazu ein Ordner für jeden Gehenden in debriefs
    [one] ein Ordner für jeden Gehenden in debriefs und { $sheets } Blatt in { $appeals }
   *[other] ein Ordner für jeden Gehenden in debriefs und { $sheets } Blätter in { $appeals }
}.
class-terminal-taken = { $file }: als { $kind ->
    [plan] Plan
   *[recording] Aufzeichnung
} genommen; { $why ->
    [both-first] enthält eine Route und eine Spur und steht an erster Stelle
    [route-aside] die Route darin blieb beiseite
    [no-track] enthält Wegpunkte und keine Spur
   *[no-points] enthält gar keine Positionen
}.
class-terminal-aside = { $folder }: genommen wurden die Aufzeichnungen darin, nicht genommen: { $plans }; einen Plan
    selbst oder seinen eigenen Ordner nennen.
class-terminal-looked-through = Durchgesehen: { $done } von { $all }, { $last }, { $rate } je Sekunde, noch { $left } s
class-terminal-graded = Bewertet: { $done } von { $all }, { $last }, { $rate } je Sekunde, noch { $left } s
class-terminal-kept = { $done } von { $all } Gehenden sind schon fertig und wurden behalten.
class-terminal-stopped = Angehalten: { $done } von { $all } Gehenden sind fertig und in { $folder } behalten. Derselbe Befehl macht dort
    weiter.
class-terminal-no-roads = { $file } enthält keine Straße: Straßen als Linien der Art „road“ zeichnen.
class-terminal-no-road-rule = Die Vorgabe { $standard } hat keine Regel für Straßen: Nichts wird über sie gesagt.

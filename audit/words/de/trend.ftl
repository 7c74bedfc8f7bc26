# Die Versuche eines Gehenden über die Zeit.

trend-title = Versuche von { $walker }
trend-attempts = { $count ->
    [one] { $count } Versuch
   *[other] { $count } Versuche
}
trend-legs = { $count ->
    [one] { $count } Abschnitt
   *[other] { $count } Abschnitte
}
trend-walker = { $walker }: { $attempts }
trend-apart = { $attempts }. Tag und Nacht stehen getrennt.
trend-day = Bei Tag
trend-twilight = In der Dämmerung
trend-night = Bei Nacht
trend-unknown = Licht nicht bekannt
trend-light = { $light }: { $attempts }, { $legs }
trend-over = Über die Versuche
trend-figure-note = Von oben: { $figures }. Balken sind 95-%-Bereiche.{ $cut ->
    [yes] {" "}Eine Pfeilspitze: Der Bereich geht über das Bild hinaus; die Tabelle nennt ihn ganz.
   *[no] {""}
}
trend-drawn-bias = Richtungsfehler, rechts ist oben
trend-drawn-scatter = Streuung der Richtung von Abschnitt zu Abschnitt
trend-drawn-distance = Entfernung, zu weit ist oben
trend-drawn-paces = { -pace } auf { $length }
trend-key-day = ein Versuch bei Tag
trend-key-night = bei Nacht
trend-key-twilight = in der Dämmerung
trend-key-unknown = ohne Zeiten
trend-key-mean = Mittel über die Versuche
trend-key-change = eine Änderung, die die Zahlen tragen
trend-picture = Werte über die Versuche
trend-picture-said = Ein Zeichen je Versuch mit seinem 95-%-Bereich: Richtungsabweichung, Streuung der Richtung, Entfernung und, wo es gespeichert ist, das
    Schrittmaß. Die Tabellen darunter haben dieselben Werte.
trend-figures-of = Werte, { $light }
trend-attempts-of = Versuche, { $light }
trend-causes-of = Ursachen, { $light }
trend-each = Jeder Versuch
trend-causes = Ursachen
trend-causes-begin = Ursachen, nach ihren Wahrscheinlichkeiten:
trend-means = Was das bedeutet
trend-in-full = Dasselbe mit --json gibt jeden Wert vollständig aus.
trend-head-figure = Größe
trend-head-value = Wert
trend-head-interval = 95-%-Bereich
trend-head-change = Über die Versuche
trend-head-number = Nr.
trend-head-day = Tag
trend-head-course = Bahn
trend-head-legs = Abschnitte
trend-head-heading = Richtungsabweichung
trend-head-scatter = Streuung
trend-head-distance = Entfernung
trend-head-paces = { -pace } auf { $length }
trend-head-mistakes = Fehler (Abschnitte)
trend-head-cause = Ursache
trend-head-expected = Abschnitte, die damit zu erwarten sind
trend-head-share = Von allen Abschnitten
trend-column-number = Nr.
trend-column-day = Tag
trend-column-course = Bahn
trend-column-legs = Abschnitte
trend-column-heading = Richtung
trend-column-scatter = Streuung
trend-column-distance = Entfernung
trend-column-paces = { -pace }/{ $length }
trend-column-causes = Fehler (Abschnitte)
trend-heading-bias = Richtungsabweichung
trend-heading-scatter = Streuung der Richtung
trend-distance = Entfernung
trend-distance-scatter = Streuung der Entfernung
trend-pace-count = Schrittmaß
trend-of-legs = { $figure } ({ $used } von { $legs })
trend-on-one-side = { $figure }, { $side } bei { $same } von { $told }
trend-side-left = links
trend-side-right = rechts
trend-side-short = zu kurz
trend-side-far = zu weit
trend-too-few = zu wenige Versuche, um von einer Änderung zu sprechen (ab { $least })
trend-changes = ändert sich: um { $moved } je Versuch ({ $low } bis { $high }) über { $attempts } Versuche
trend-no-change = keine Änderung, die die Zahlen belegen ({ $low } bis { $high } je Versuch)
trend-comes = ändert sich: von { $first } auf { $last } über { $attempts } Versuche{ $toward ->
    [nearer] , dem Plan näher
    [farther] , vom Plan weiter ab
   *[none] {""}
} ({ $moved } je Versuch, { $low } bis { $high })
trend-expected = { $legs } Abschnitte
trend-left-out = Weggelassene Abschnitte: { $told }.
trend-left-out-one = { $count } { $reason }
trend-of-heading = Richtung: { $why }
trend-of-distance = Entfernung: { $why }
trend-unsure = nicht sicher zugeordnet
trend-mistaken = ein Fehler genannt
trend-far-off = zu weit daneben für übliche Ungenauigkeit
trend-meaning = Die Richtungsabweichung ist das Mittel über die Versuche, die Streuung die Standardabweichung von Abschnitt zu Abschnitt in einem Versuch.
    In Klammern: Bereiche zu { $coverage }, in denen mitzählt, wie Versuche sich unterscheiden; ± ist ein Standardfehler.
trend-meaning-change = Von einer Änderung ist nur die Rede, wo der Zufall eine so große bei weniger als { $alarm } der Gehenden zeigte, die sich
    nicht ändern, alle { $questions } Größen hier zusammengenommen, und nie bei weniger als { $least } Versuchen.
trend-meaning-legs = Abschnitte, auf denen ein Fehler genannt ist, oder ohne sichere Zuordnung sagen nichts über Richtungsabweichung und Streuung und fehlen dort.
    Die Ursachen zählen alle gegangenen Abschnitte, jeden nach seiner Wahrscheinlichkeit. „3 von 4“ neben einer Zahl: die Abschnitte, auf denen sie ruht, von den gegangenen.
trend-again = { $count ->
    [one] { $count } weiteres Ergebnis ist
   *[other] { $count } weitere Ergebnisse sind
} von Gängen, die noch einmal ausgewertet wurden; von jedem Gang zählt das zuletzt
    gespeicherte.
trend-other-paces = Schrittmaße von { $count ->
    [one] { $count } Versuch sind
   *[other] { $count } Versuchen sind
} auf { $unit ->
    [single] Einfachschritte
   *[double] Doppelschritte
} umgerechnet.
trend-simulated = { $all ->
    [one] Der eine Versuch ist simuliert: Niemand ist ihn gegangen.
   *[other] { $made ->
        [one] { $made } von { $all } Versuchen ist simuliert: Niemand ist ihn gegangen.
       *[other] { $made } von { $all } Versuchen sind simuliert: Niemand ist sie gegangen.
    }
}
trend-axis-attempt = Versuch
trend-axis-bias = Richtungsabweichung ({ $unit })
trend-axis-scatter = Streuung ({ $unit })
trend-axis-distance = Entfernung (%)
trend-axis-paces = { -pace }

trend-kept = In den Unterlagen gespeichert: { $attempts }{ $until ->
    [none] {""}
   *[some] , bis { $until }
}{ $again ->
    [0] {""}
   *[other] ; { $again } schon gespeichert
}.
trend-overdue = Aus den Unterlagen gelöscht, weil die Aufbewahrungsfrist abgelaufen ist: { $attempts }.
trend-forgotten = { $walker }: { $attempts } gelöscht.
trend-forgotten-attempt = { $walker }: Versuch { $number }{ $day ->
    [none] {""}
   *[some] {" "}vom { $day }
} ({ $course }) gelöscht{ $results ->
    [one] {""}
   *[other] , in { $results } Ergebnissen
}. Spätere Versuche rücken um eins auf.
trend-forgotten-before = vor dem { $day } gegangen: { $attempts } gelöscht.
trend-forgotten-of-before = { $walker }, vor dem { $day } gegangen: { $attempts } gelöscht.
trend-forgotten-overdue = Gelöscht ist, was über seine Aufbewahrungsfrist hinaus war; alles andere bleibt.

# Nur auf Papier: kürzere Erklärungen und die Deckfolie.

paper-simulated = Simulierter Gang: Niemand ist das gegangen.
paper-leg = Abschnitt
paper-azimuth-planned = Gitter­richtung geplant
paper-walked = gegan­gen
paper-error = Abwei­chung
paper-distance-planned = Entfer­nung geplant
paper-each-note = Streifen: Abstand von der geplanten Linie mit getöntem Rauschen des Empfängers, Höhe, Geschwindigkeit. Pfeile:
    geplante (gestrichelt) und gegangene Richtung, ihr 95-%-Bereich getönt. Daneben die Teile der Ablage, aneinandergereiht
    vom { -point } (Kreuz) zum angenommenen Ende (Raute).
paper-map-note = Gitternord ist oben. Gezeichnete Linien liegen höchstens { $within } neben der Aufzeichnung.
paper-overlay-note = In wahrer Größe (100 %, ohne Anpassen) auf Folie oder dünnes Papier drucken und die Kilometerlinien von { $grid }
    auf die der Karte legen. Gestrichelt: Plan. Durchgezogen: gegangen. Raute: angenommenes Ende. Auf { $within } genau gezeichnet.
paper-ruler = Diese Linie ist { $length } mm lang, wenn der Maßstab des Drucks stimmt.
paper-overlay-alt = Plan und Weg im Maßstab { $scale }
paper-distance-walked = gegan­gen
paper-distance-error = Abwei­chung
paper-walk-note = Vom Aufbruch zu jedem Abschnitt (mit Nummer) bis zum angenommenen Ende: Abstand von der geplanten Linie, das Rauschen
    des Empfängers getönt ({ $noise } nach beiden Seiten); darunter Höhe und Geschwindigkeit der ganzen Aufzeichnung.{ $gaps ->
    [0] {""}
   *[other] {" "}Dünn gestrichelt: nicht aufgezeichnet, gerade überbrückt.
}{ $reckoned ->
    [0] {""}
   *[other] {" "}Wo ein Abschnitt darin beginnt oder endet, ist der Ort errechnet; ein solches Ende ist eine hohle Raute.
}

# Bei welchem Schritt ein Fehler entstand.

step-none = Kein Schritt fällt auf: Marschskizze, Marschprotokoll und Weg stimmen im Rahmen der üblichen Ungenauigkeit überein.
step-at = { $step }: { $said }
step-ordinary = { $said } Mit allen Abschnitten zusammen gewogen ist das hier üblich.
step-noted = Aufgeschrieben: { $said } Der Weg zeigt nichts davon: Es wurde anders aufgeschrieben, als es getan wurde, oder unterwegs ausgeglichen.
step-ended-by-log = Nach Zählung und Zeit des Marschprotokolls endete der Abschnitt früher, als er hier endet: Der Weg wird nicht neben die Zählung gelegt.
step-other-order = Wie in anderer Reihenfolge gegangen, nach oder von { $point }: Weder Marschskizze noch Marschprotokoll werden daneben gelegt.
step-cannot-tell = Nicht zu unterscheiden, ob { $steps }: { $said }
step-name-given = angegeben
step-begin-given = Angegeben
step-name-plotted = eingetragen
step-begin-plotted = Eingetragen
step-name-measured = gemessen
step-begin-measured = Gemessen
step-name-converted = umgerechnet
step-begin-converted = Umgerechnet
step-name-set = eingestellt
step-begin-set = Eingestellt
step-name-walked = gegangen
step-begin-walked = Gegangen
step-name-distance-measured = Entfernung gemessen
step-begin-distance-measured = Entfernung gemessen
step-name-turned-into-paces = in Schritte umgerechnet
step-begin-turned-into-paces = In Schritte umgerechnet
step-name-paced = abgeschritten
step-begin-paced = Abgeschritten
step-name-recognised = erkannt
step-begin-recognised = Erkannt
step-course-azimuth = die Gitterrichtung der Bahn ({ $azimuth })
step-card-magnetic = die magnetische Richtung der Marschskizze ({ $azimuth })
step-card-grid = die Gitterrichtung der Marschskizze ({ $azimuth })
step-own-references = die Richtung ihrer eigenen Koordinaten ({ $azimuth })
step-set-by-log = die laut Marschprotokoll eingestellte Richtung ({ $azimuth } magnetisch)
step-azimuth-walked = die gegangene Richtung ({ $azimuth } Gitter)
step-turned = { $after } liegt { $size } { $side ->
    [left] links
   *[right] rechts
} gegen { $before }, was { $off } danebenführt.{ $fits }
step-course-length = die { $length } der Bahn
step-length-walked = die gegangenen { $length }
step-card-paces = die { $paces } { -pace } der Marschskizze ({ $length })
step-counted = die gezählten { $paces } { -pace } ({ $length })
step-between-own = { $length } zwischen ihren eigenen Koordinaten
step-card-length = die { $length } der Marschskizze
step-more = { $after } sind { $size } mehr als { $before }.{ $fits }
step-less = { $after } sind { $size } weniger als { $before }.{ $fits }
step-reference = die Koordinate der Marschskizze für { $point }, „{ $given }“, liegt { $off } von der der Bahn.{ $fits }
step-leads-elsewhere = Richtung und Entfernung der Marschskizze führen an einen Ort { $off } von ihrer eigenen Koordinate für das Ende.{ $fits }
step-other-point = der Abschnitt endete { $away } von { $other }, nicht bei { $point }.
step-passed = der Weg führte { $near } an { $point } vorbei, und die Zählung endete { $miss } davon.
step-reached = { $point } wurde erreicht.
step-line-bent = Der Abschnitt hat mehrere Stücke, ein Marschprotokoll nur eine Richtung und eine Zählung: Weder Marschskizze noch Marschprotokoll werden daneben gelegt.
step-line-left = Die geplante Linie wurde nicht eingehalten: Weder Marschskizze noch Marschprotokoll werden daneben gelegt.

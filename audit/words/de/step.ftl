# Bei welchem Schritt ein Fehler entstand.

step-none = Kein Schritt fällt auf: Marschskizze, Marschprotokoll und Weg stimmen im Rahmen der üblichen Ungenauigkeit überein.
step-at = { $step }: { $said }
step-ordinary = { $said } Mit allen Abschnitten zusammen gewogen ist das hier üblich.
step-noted = Aufgeschrieben: { $said } Der Weg zeigt nichts davon: Entweder wurde es anders aufgeschrieben, als es ausgeführt wurde, oder unterwegs ausgeglichen.
step-ended-by-log = Nach Zählung und Zeit des Marschprotokolls endete der Abschnitt früher als hier angenommen: Der Weg wird nicht mit der Zählung verglichen.
step-other-order = Wie in anderer Reihenfolge gegangen, nach oder von { $point }: Weder mit Marschskizze noch mit Marschprotokoll wird verglichen.
step-cannot-tell = Nicht zu unterscheiden, bei welchem Schritt ({ $steps }): { $said }
step-in-sight = { $said } Der Abschnitt endete trotzdem an seinem { -point }: Vielleicht kam er in Sicht, ehe fertig gezählt war, und der Gehende ging geradewegs hin.
step-made-good = { $said } Der Abschnitt endete trotzdem an seinem { -point }: Ein anderer Fehler glich das aus, oder der { -point } wurde gesehen.
step-carried = Übernommen vom Abschnitt davor: { $said }
step-inherited = { $off }, wie es sich ergibt, wenn von dort gemessen wird, wo dessen Ende auf der Karte stand; kein neuer Fehler.
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
step-turned = { $after } liegt, bezogen auf { $before }, { $size } { $side ->
[left] links
   *[right] rechts
}; das führt { $off } daneben.{ $fits }
step-course-length = die { $length } der Bahn
step-length-walked = die gegangenen { $length }
step-card-paces = die { $paces } { -pace } der Marschskizze ({ $length })
step-counted = die gezählten { $paces } { -pace } ({ $length })
step-between-own = { $length } zwischen ihren eigenen Koordinaten
step-card-length = die { $length } der Marschskizze
step-more = { $after } sind { $size } mehr als { $before }.{ $fits }
step-less = { $after } sind { $size } weniger als { $before }.{ $fits }
step-reference = die Koordinate der Marschskizze für { $point }, „{ $given }“, liegt { $off } von der der Bahn entfernt.{ $fits }
step-leads-elsewhere = Richtung und Entfernung der Marschskizze führen an einen Ort, der { $off } von ihrer eigenen Koordinate für das Ende liegt.{ $fits }
step-other-point = der Abschnitt endete { $away } von { $other } entfernt, nicht bei { $point }.
step-passed = der Weg führte in { $near } Abstand an { $point } vorbei, und die Zählung endete { $miss } davon.
step-reached = { $point } wurde erreicht.
step-line-bent = Der Abschnitt hat mehrere Stücke, ein Marschprotokoll nur eine Richtung und eine Zählung: Weder mit Marschskizze noch mit Marschprotokoll wird verglichen.
step-line-left = Die geplante Linie wurde nicht eingehalten: Weder mit Marschskizze noch mit Marschprotokoll wird verglichen.

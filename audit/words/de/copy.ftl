# Was die Kopie eines Plans nicht enthält; beendet „enthält nicht: ...“.

copy-lacks = { $form } enthält nicht: { $lost }.
copy-onto = Die Nadelabweichung wurde um den Unterschied der beiden Meridiankonvergenzen auf { $angle } umgerechnet; trotzdem am Rand der mitgeführten Karte nachsehen.
copy-read = So wird die Datei gelesen: { $command }
copy-angle-date = das Datum der Nadelabweichung
copy-sheet = die Ecken des Kartenblatts
copy-safety = die Sicherheitsrichtung
copy-order = dass die { -point(form: "many") } in beliebiger Reihenfolge angelaufen werden dürfen
copy-unused = { -point(form: "many") } auf keinem Abschnitt: { $names }
copy-listed = die Reihenfolge, in der die { -point(form: "many") } aufgeführt sind
copy-known = wie genau diese { -point(form: "many") } bekannt sind: { $names }
copy-well = wie genau die { -point(form: "many") } bekannt sind
copy-vias = die Zwischenpunkte von { $legs }
copy-vias-well = wie genau die Zwischenpunkte bekannt sind
copy-grid-azimuth = die angegebenen Gitterrichtungen von { $legs }
copy-magnetic-azimuth = die angegebenen magnetischen Richtungen von { $legs }
copy-true-azimuth = die angegebenen geographischen Richtungen von { $legs }
copy-distance-m = die angegebenen Entfernungen von { $legs }
copy-paces = die angegebenen { -pace } von { $legs }
copy-note = die Vermerke zu { $legs }
copy-reckoned = dass das Ende von { $legs } aus Richtung und Entfernung errechnet und kein { -point } ist
copy-names = die Namen der Abschnitte
copy-jumps = dass { $legs } nicht dort beginnt, wo der vorige endet
copy-renamed = den Namen des Endes „{ $old }“, das „{ $new }“ heißt

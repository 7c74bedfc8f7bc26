# Jeder Fehler auf jedem Abschnitt, auf dem Papier gegangen.

rehearse-title = Probe: { $course }
rehearse-heading = { $course }: Probe
rehearse-simulated = SIMULIERT: { $ways } Arten, auf { $legs ->
    [one] { $legs } Abschnitt
   *[other] { $legs } Abschnitten
} falsch zu gehen, aus dem Plan berechnet; niemand ist sie gegangen.
rehearse-resolution = Zwei Enden, die näher als { $resolution } beieinander liegen, sind für eine übliche Aufzeichnung eine Stelle.
rehearse-keep = Für alle, die die Bahn legen und leiten. Den Gehenden nicht zeigen: Jeder { -point } steht darauf.
rehearse-planned = Die Bahn wie geplant: zuerst ansehen
rehearse-harm = Wo ein Fehler Schaden bringen kann
rehearse-no-harm = Kein Fehler führt in die angegebenen Gebiete oder über die angegebene Grenze.
rehearse-harm-unknown = Nicht geprüft: Weder eine Grenze noch Gebiete wurden angegeben.
rehearse-other-point = Wo ein Fehler zu einem anderen { -point } führt
rehearse-none = Keiner.
rehearse-beside = Bahnen neben dieser: { $courses }.
rehearse-leg-via = Abschnitt { $leg }: { $start } bis { $end }, { $length } über seine Zwischenpunkte ({ $azimuth } Gitter in gerader Linie)
rehearse-leg = Abschnitt { $leg }: { $start } bis { $end }, { $azimuth } Gitter, { $length }
rehearse-at-point = Am { -point }
rehearse-picture-said = Wo { $count } Arten, falsch zu gehen, enden, mit den Nummern der Tabelle.
rehearse-figure-note = Gitternord ist oben. Die Nummern der Enden im Rahmen des zweiten Bildes stehen dort; Enden, die weiter weg sind, als der
    Abschnitt lang ist, stehen nur in der Tabelle.
rehearse-alike = Was dieser Abschnitt nicht unterscheiden kann
rehearse-alike-count = { $count ->
    [one] { $count } Paar von Fehlern endet an einer Stelle und verläuft gleich; das wahrscheinlichste:
   *[other] { $count } Paare von Fehlern enden an einer Stelle und verlaufen gleich; die wahrscheinlichsten:
}
rehearse-alike-none = Nichts: Alle Enden liegen auseinander.
rehearse-alike-short = { $count ->
    [one] { $count } Paar
   *[other] { $count } Paare
} von Fehlern, die dieser Abschnitt nicht unterscheiden kann.
rehearse-would-tell = Was sie unterscheiden würde
rehearse-no-change = Keine Änderung des Abschnitts wurde versucht: { $why }.
rehearse-where = Wo jeder Fehler endet
rehearse-column-number = Nr.
rehearse-column-mistake = Fehler
rehearse-column-size = Größe
rehearse-column-ends = Endet bei
rehearse-column-place = Vom { -point } aus
rehearse-column-meets = Kommt zu
rehearse-column-others = Andere Größen und wozu sie kommen
rehearse-not-here = Gezeigt ist die wahrscheinlichste Art jedes Fehlers; alle stehen in rehearsal.csv. Auf diesem Abschnitt nicht gemacht: { $causes }.
rehearse-not-here-none = keiner
rehearse-not-here-one = { $cause }: { $why }
rehearse-in-full = rehearsal.csv und rehearsal.json enthalten jede Art vollständig; die Spuren liegen im Ordner tracks.
rehearse-written = { $files } und { $count } Spuren in { $folder }

rehearse-itself-into = Abschnitt { $leg } selbst, wie geplant gegangen, führt in { $area }: verlegen.
rehearse-itself-out = Abschnitt { $leg } selbst, wie geplant gegangen, führt über die Grenze: verlegen.
rehearse-danger = Abschnitt { $leg } { $what }: { $causes }.
rehearse-ends-in = endet in { $area }
rehearse-leads-through = führt durch { $area }
rehearse-through = durch { $area }
rehearse-ends-out = endet außerhalb der Grenze
rehearse-leaves = überschreitet unterwegs die Grenze
rehearse-leaves-short = überschreitet die Grenze
rehearse-out-of-bounds = außerhalb der Grenze
rehearse-near = Abschnitt { $leg } endet bei { $point }: { $causes }.
rehearse-at = bei { $point }
rehearse-of = { $point } von { $course }
rehearse-cause-way = { $cause } ({ $way })
rehearse-pair = { $first } und { $second }: { $apart } auseinander
rehearse-hidden = Bei jeder Größe in der üblichen Ungenauigkeit verborgen: { $causes }.
rehearse-nothing-tells = Keine versuchte Änderung unterscheidet: { $pairs }. Das täte die eigene Marschskizze oder das Marschprotokoll, oder ein
    anderer Abschnitt: leg-audit guide (englisch) hat für jede Ursache eine Seite.
rehearse-kept-off = Eine Änderung, die sie unterscheiden würde, führt in { $areas } oder zu nahe heran und wird darum nicht
    vorgeschlagen, und keine andere versuchte taugt: { $pairs }.
rehearse-make-longer = { $size } länger
rehearse-make-shorter = { $size } kürzer
rehearse-make-right = um { $size } nach rechts gedreht
rehearse-make-left = um { $size } nach links gedreht
rehearse-then-apart = sie enden dann { $apart } oder mehr auseinander
rehearse-then-nowhere = eines der beiden führt dann nirgends anders hin
rehearse-proposal = { $first } und { $second }: den Abschnitt ändern ({ $moves }), sein { -point } bei { $reference }; { $then }. Paare
    von Fehlern, die der Abschnitt nicht unterscheiden kann: jetzt { $before }, dann { $after }. Der nächste Abschnitt ändert sich mit.
rehearse-more = { $words } und { $count } weitere
rehearse-so-many = { $words } ({ $count } davon)
rehearse-some-more = { $words }; und { $count } weitere
rehearse-beyond = { $size } dahinter
rehearse-short = { $size } davor
rehearse-place-right = { $size } rechts
rehearse-place-left = { $size } links
rehearse-on-point = am { -point }

rehearse-way-place = berechnet für eine Stelle { $where } davon
rehearse-way-east = { $size } östlich
rehearse-way-west = { $size } westlich
rehearse-way-north = { $size } nördlich
rehearse-way-south = { $size } südlich
rehearse-way-right = { $size } rechts
rehearse-way-left = { $size } links
rehearse-way-about = { $size }
rehearse-way-ratio = { $ratio } der Entfernung
rehearse-way-far = { $size } zu weit
rehearse-way-short = { $size } zu kurz
rehearse-way-on = { $size } weiter
rehearse-way-on-piece = { $way } auf Stück { $number } von { $count }
rehearse-way-pieces = Stück für Stück { $turns }
rehearse-way-as-planned = wie geplant
rehearse-way-straight = geradewegs nach { $point }
rehearse-way-first = zuerst nach { $point }
rehearse-way-to-right = nach rechts
rehearse-way-to-left = nach links

rehearse-not-steep = der Abschnitt ist nicht steil genug, oder seine Höhen sind nicht bekannt
rehearse-no-heights = seine Höhen sind nicht bekannt
rehearse-angle-of-day = die Nadelabweichung des Plans ist die des Tages oder für ihn berechnet
rehearse-angles-alike = Missweisung und Nadelabweichung sind hier mit bloßem Auge nicht zu unterscheiden
rehearse-small-angle = die Nadelabweichung ist zu klein, um sichtbar zu werden
rehearse-no-other-point = kein anderer bekannter { -point } ist nahe genug
rehearse-due-north = der Abschnitt verläuft nach magnetisch Nord oder Süd
rehearse-none-follows = kein Abschnitt folgt, der an seinem { -point } beginnt
rehearse-no-other-azimuth = kein anderer Abschnitt hat eine andere Richtung
rehearse-not-straight = der Abschnitt folgt einer Linie, die nicht gerade ist
rehearse-nowhere-else = es führt auf diesem Abschnitt nirgends anders hin
rehearse-is-start = sein { -point } ist der Start der Bahn

rehearse-note-bounds = Keine Grenze angegeben: Nichts wird darüber gesagt, ob sie überschritten wird.
rehearse-note-areas = Keine Sperrgebiete oder Gefahren angegeben: Nichts wird darüber gesagt, ob man in sie gerät.
rehearse-note-heights = Höhen sind nicht bekannt: Was Hänge an einem Gang ändern, ist nicht geprobt.
rehearse-note-datum = Ein falsches Bezugssystem oder eine falsch gesetzte Markierung ist mit einer gewählten Größe geprobt; die mitgeführte Karte und ein
    Besuch am { -point } sagen, wie viel es wirklich ist.

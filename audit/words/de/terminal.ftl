# Anfänge der Zeilen der kurzen Auswertung.

terminal-simulated = SIMULIERT: { $note }
terminal-plan = Plan: { $finding }
terminal-leg = Abschnitt { $leg }: { $sentence }
terminal-keep = beibehalten: { $what }. { $evidence }
terminal-work-on = üben: { $what }. { $evidence } Übung (englisch): leg-audit guide { $cause }
terminal-keep-said = beibehalten: { $said }
terminal-work-on-either = üben: { $what }. { $evidence } Übungen (englisch): leg-audit guide { $one }, leg-audit guide { $other }
terminal-work-on-said = üben: { $said }
terminal-what-remains = was übrig bleibt
terminal-note = Hinweis: { $note }
terminal-written-to = Geschrieben nach { $place }
terminal-written-files = Geschrieben nach { $place }: { $files }
terminal-left-beside = { $folder } enthält auch { $files }, nicht von diesem Lauf; was dort steht, kann Menschen nennen. Vor dem Weitergeben des Ordners { $many ->
    [no] diese Datei
   *[yes] diese Dateien
} wegnehmen.
terminal-open = Die Seite im Browser öffnen: { $page }
terminal-pictures = { $count ->
    [one] { $count } Bild
   *[other] { $count } Bilder
}
terminal-no-heights = { $file } hat keine Höhen für einen Teil von: { $legs }.
terminal-roads = { $count ->
    [one] { $count } Straße in den Gebieten ist für grade --roads da und wird
   *[other] { $count } Straßen in den Gebieten sind für grade --roads da und werden
} hier nicht angesehen.
terminal-demo = Plan, Aufzeichnung und Marschprotokoll der Vorführung sind jetzt in { $folder }. Von Hand ausgewertet werden sie mit:

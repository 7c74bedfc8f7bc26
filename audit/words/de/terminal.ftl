# Anfänge der Zeilen der kurzen Auswertung.

terminal-simulated = SIMULIERT: { $note }
terminal-plan = Plan: { $finding }
terminal-leg = Abschnitt { $leg }: { $sentence }
terminal-keep = beibehalten: { $what }. { $evidence }
terminal-work-on = daran arbeiten: { $what }. { $evidence } Übung (englisch): leg-audit guide { $cause }
terminal-keep-said = beibehalten: { $said }
terminal-work-on-either = daran arbeiten: { $what }. { $evidence } Übungen (englisch): leg-audit guide { $one }, leg-audit guide { $other }
terminal-work-on-said = daran arbeiten: { $said }
terminal-what-remains = als Nächstes anzusehen
terminal-note = Hinweis: { $note }
terminal-written-to = Geschrieben nach { $place }
terminal-written-files = Geschrieben nach { $place }: { $files }
terminal-left-beside = { $folder } enthält auch { $files }, nicht aus diesem Lauf; darin können Personen genannt sein. Vor dem Weitergeben des Ordners { $many ->
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
terminal-demo = Plan, Aufzeichnung und Marschprotokoll der Vorführung liegen jetzt in { $folder }. So wird von Hand ausgewertet:
